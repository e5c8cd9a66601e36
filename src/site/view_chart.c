#include "site/view_chart.h"

#include "site/say.h"
#include "site/view_verdict.h"

/* The families of one table. */
static const struct {
    sentence_key heading;
    unsigned families;
} tables[] = {{SAY_CHART_POWDERS, 1u << FAMILY_PROTEIN_POWDER},
              {SAY_CHART_FLOURS, 1u << FAMILY_FLOUR | 1u << FAMILY_MEAL},
              {SAY_CHART_BUTTERS, 1u << FAMILY_NUT_BUTTER}};

typedef struct {
    const page_maker *by;
    const recipe_rows *rows;
    const swap_table *swaps;
    unsigned families;
    size_t *columns; /* pantry indexes of the replacements */
    size_t column_count;
} chart;

static bool in_table(const chart *c, size_t which) {
    return c->families >> c->by->folder->shelf.items[which]->in & 1u;
}

static void find_columns(arena *a, chart *c) {
    const pantry *shelf = &c->by->folder->shelf;
    bool *wanted = ARENA_ARRAY(a, bool, shelf->count);
    for (size_t i = 0; i < c->swaps->count; i++) {
        const pair_answer *one = &c->swaps->items[i];
        if (in_table(c, one->from) && in_table(c, one->to))
            wanted[one->to] = true;
    }
    c->columns = ARENA_ARRAY(a, size_t, shelf->count);
    c->column_count = 0;
    for (size_t i = 0; i < shelf->count; i++)
        if (wanted[i])
            c->columns[c->column_count++] = i;
}

static void put_cell(arena *a, view *cells, const chart *c, const pair_answer *of) {
    view *cell = view_put_object(a, cells, NULL);
    if (!of) {
        view_put_bool(a, cell, "is_none", true);
        return;
    }
    const pantry *shelf = &c->by->folder->shelf;
    const language *in = page_language(c->by);
    verdict says = pair_verdict(of);
    const ingredient *from = shelf->items[of->from], *to = shelf->items[of->to];
    view_put_verdict(a, in, cell, says);
    view_put_text(a, cell, "to", to->name);
    view_put_text(a, cell, "href", path_of_note(a, c->rows->items[of->row[says]].slug, from, to));
    view_put_text(a, cell, "title",
                  SAY(a, in, CHART_CELL, to->name, from->name, in->verdicts[says],
                      say_figure(a, in, of->says[says], 0),
                      say_figure(a, in, (double)pair_count(of), 0)));
}

/* The row whose answers stand at `first`; returns where the next row's begin. */
static size_t put_row(arena *a, view *list, const chart *c, size_t first) {
    const pair_answer *items = c->swaps->items, *head = &items[first];
    size_t end = first;
    while (end < c->swaps->count && items[end].from == head->from &&
           strcmp(items[end].kind ? items[end].kind : "", head->kind ? head->kind : "") == 0)
        end++;
    if (!in_table(c, head->from))
        return end;
    const ingredient *from = c->by->folder->shelf.items[head->from];
    view *row = view_object(a);
    view_put_text(a, row, "name", from->name);
    view_put_text(a, row, "href", path_of_ingredient(a, from));
    view_put_text(a, row, "kind", head->kind);
    view *cells = view_put_list(a, row, "cells");
    bool any = false;
    for (size_t k = 0; k < c->column_count; k++) {
        const pair_answer *of = NULL;
        for (size_t i = first; i < end; i++)
            if (items[i].to == c->columns[k])
                of = &items[i];
        put_cell(a, cells, c, of);
        any = any || of;
    }
    if (any)
        view_put(list, NULL, row);
    return end;
}

static void put_table(arena *a, view *list, const char *heading, chart *c) {
    find_columns(a, c);
    if (!c->column_count)
        return;
    view *table = view_put_object(a, list, NULL);
    view_put_text(a, table, "heading", heading);
    view *columns = view_put_list(a, table, "columns");
    for (size_t k = 0; k < c->column_count; k++) {
        const ingredient *what = c->by->folder->shelf.items[c->columns[k]];
        view *column = view_put_object(a, columns, NULL);
        view_put_text(a, column, "name", what->name);
        view_put_text(a, column, "href", path_of_ingredient(a, what));
    }
    view *rows = view_put_list(a, table, "rows");
    for (size_t i = 0; i < c->swaps->count;)
        i = put_row(a, rows, c, i);
}

view *view_of_chart(arena *a, const page_maker *by, const recipe_rows *rows,
                    const swap_table *swaps) {
    const language *in = page_language(by);
    view *page =
        page_view(a, by, "chart", "swaps/", SAID(in, CHART_TITLE), SAID(in, CHART_SUMMARY));
    view *list = view_put_list(a, page, "tables");
    for (size_t i = 0; i < COUNT(tables); i++) {
        chart c = {.by = by, .rows = rows, .swaps = swaps, .families = tables[i].families};
        put_table(a, list, say(a, in, tables[i].heading, NULL), &c);
    }
    view *legend = view_put_list(a, page, "legend");
    for (size_t i = 0; i < VERDICT_COUNT; i++)
        view_put_verdict(a, in, view_put_object(a, legend, NULL), (verdict)i);
    return page;
}
