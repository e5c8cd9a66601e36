#include "site/view_bake.h"

#include "site/say.h"
#include "site/view_verdict.h"

char *path_of_bake(arena *a, const ingredient *of) {
    return arena_format(a, "bake-with/%s/", of->slug);
}

/* -- the cupboard ---------------------------------------------------------------------------- */

static void put_family(arena *a, view *groups, const page_maker *by, family in,
                       const bake_table *bakes) {
    const pantry *shelf = &by->folder->shelf;
    view *group = view_object(a);
    view_put_text(a, group, "name", page_language(by)->families[in]);
    view *items = view_put_list(a, group, "items");
    for (size_t i = 0; i < shelf->count; i++) {
        size_t count = bake_count(bakes, i);
        if (shelf->items[i]->in != in || !count)
            continue;
        view *one = view_put_object(a, items, NULL);
        view_put_text(a, one, "name", shelf->items[i]->name);
        view_put_text(a, one, "href", path_of_bake(a, shelf->items[i]));
        view_put_number(a, one, "count", (double)count, 0);
    }
    if (items->count)
        view_put(groups, NULL, group);
}

view *view_of_cupboard(arena *a, const page_maker *by, const bake_table *bakes) {
    const language *in = page_language(by);
    view *page = page_view(a, by, "cupboard", "bake-with/", SAID(in, CUPBOARD_TITLE),
                           SAID(in, CUPBOARD_SUMMARY));
    view *groups = view_put_list(a, page, "groups");
    for (size_t i = 0; i < FAMILY_COUNT; i++)
        put_family(a, groups, by, (family)i, bakes);
    return page;
}

/* -- one ingredient -------------------------------------------------------------------------- */

static void put_grams(arena *a, const language *in, view *to, const recipe_row *row, size_t what) {
    for (size_t u = 0; u < row->use_count; u++)
        if (row->uses[u].what == what && row->uses[u].grams > 0)
            view_put_text(a, to, "grams_text", say_weight(a, in, (double)row->uses[u].grams));
}

static void put_bake(arena *a, view *items, const page_maker *by, size_t which,
                     const recipe_row *row, uint16_t from) {
    const pantry *shelf = &by->folder->shelf;
    view *one = view_put_object(a, items, NULL);
    view_put_text(a, one, "title", row->title);
    view_put_text(a, one, "href", path_of_recipe(a, row->slug));
    view_put_text(a, one, "kind", row->kind);
    put_grams(a, page_language(by), one, row, from == NO_SWAP ? which : from);
    if (from == NO_SWAP)
        return;
    view_put_text(a, one, "from", shelf->items[from]->name);
    view_put_text(a, one, "note_href",
                  path_of_note(a, row->slug, shelf->items[from], shelf->items[which]));
}

/* The recipes that one way of baking with an ingredient leads to. */
typedef struct {
    size_t which, way;
    const recipe_rows *rows;
    const bake_list *list;
} shown_way;

static void put_way(arena *a, view *ways, const page_maker *by, const shown_way *of) {
    const language *in = page_language(by);
    const bake_list *list = of->list;
    if (!list->all)
        return;
    view *put = view_put_object(a, ways, NULL);
    view_put_bool(a, put, "as_written", of->way == BAKE_AS_WRITTEN);
    if (of->way != BAKE_AS_WRITTEN)
        view_put_verdict(a, in, put, (verdict)(of->way - BAKE_AS_WRITTEN - 1));
    view_put_text(a, put, "count_text", SAY_NUMBER(a, in, RECIPES, list->all));
    view *items = view_put_list(a, put, "items");
    for (size_t i = 0; i < list->count; i++)
        put_bake(a, items, by, of->which, &of->rows->items[list->items[i].row],
                 list->items[i].from);
    if (list->all > list->count)
        view_put_number(a, put, "more", (double)(list->all - list->count), 0);
}

view *view_of_bake(arena *a, const page_maker *by, size_t which, const recipe_rows *rows,
                   const bake_table *bakes) {
    const language *in = page_language(by);
    const ingredient *of = by->folder->shelf.items[which];
    size_t count = bake_count(bakes, which);
    const char *title = SAY(a, in, BAKE_TITLE, of->name);
    const char *summary =
        SAY_COUNT(a, in, BAKE_SUMMARY, count, say_figure(a, in, (double)count, 0), of->name);
    view *page = page_view(a, by, "bake", path_of_bake(a, of), title, summary);
    view_put_text(a, page, "name", of->name);
    view_put_text(a, page, "family", in->families[of->in]);
    view_put_text(a, page, "ingredient_href", path_of_ingredient(a, of));
    view *ways = view_put_list(a, page, "ways");
    for (size_t way = 0; way < BAKE_WAYS; way++)
        put_way(a, ways, by, &(shown_way){which, way, rows, &bakes->of[which][way]});
    return page;
}
