#include "site/balance_table.h"

#include "site/balance_words.h"

#include <stdint.h>

/* -- for programs ---------------------------------------------------------------------------- */

static void put_range(arena *a, view *to, const char *key, range grams) {
    view *put = view_put_object(a, to, key);
    view_put_number(a, put, "low", grams.low, 1);
    view_put_number(a, put, "typical", grams.typical, 1);
    view_put_number(a, put, "high", grams.high, 1);
}

static void put_figures(arena *a, view *to, const balance *of, bool known) {
    if (known) {
        view_put_number(a, to, "free_water_bowl_g", balance_free_cold_g(of).typical, 1);
        view_put_number(a, to, "free_water_bake_g", balance_free_heated_g(of).typical, 1);
    } else {
        view_put_text(a, to, "free_water_bowl_g", NULL);
        view_put_text(a, to, "free_water_bake_g", NULL);
    }
    view_put_number(a, to, "firm_setting_protein_g", of->firm_g, 1);
    view_put_number(a, to, "soft_setting_protein_g", of->soft_g, 1);
    view_put_number(a, to, "bulk_g", of->dry_g, 1);
    view_put_number(a, to, "fat_g", of->fat_g, 1);
    view_put_number(a, to, "sweetness_g", of->sweetness_g, 1);
}

view *view_of_balance_data(arena *a, const balance_comparison *of) {
    view *all = view_object(a), *put = view_put_object(a, all, "before");
    put_figures(a, put, &of->before, of->uptake_known);
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        const balance_at *at = &of->at[p];
        if (!at->there) {
            view_put_text(a, all, balance_point_key(p), NULL);
            continue;
        }
        put = view_put_object(a, all, balance_point_key(p));
        put_range(a, put, "to_g", at->to_g);
        if (at->also_to_g > 0)
            view_put_number(a, put, "also_to_g", at->also_to_g, 1);
        put_range(a, put, "liquid_change_g", at->liquid_g);
        put_figures(a, put, &at->after, of->uptake_known);
        if (!of->uptake_known)
            continue;
        put_range(a, put, "free_water_bowl_change_g", at->bowl_change_g);
        put_range(a, put, "free_water_bake_change_g", at->bake_change_g);
    }
    return all;
}

/* -- for a terminal -------------------------------------------------------------------------- */

/* A line of the table: what, then a cell a column, each filled up to its width. */
static void add_cells(text *t, const char *name, const char *const cells[], size_t count) {
    enum { NAME_WIDTH = 26, CELL_WIDTH = 24 };
    text_format(t, "  %-*s", NAME_WIDTH, name);
    for (size_t i = 0; i < count; i++) {
        /* a minus sign is three bytes and takes one place */
        int wider = 0;
        for (const char *at = cells[i]; (at = strstr(at, "\u2212")); at++)
            wider += 2;
        text_format(t, "%-*s", i + 1 < count ? CELL_WIDTH + wider : 0, cells[i]);
    }
    text_add(t, "\n");
}

/* "+20 g": a minus sign stands already. */
static const char *signed_text(arena *a, const language *in, double grams) {
    const char *plain = balance_grams_text(a, in, grams);
    return grams >= 0.5 ? arena_format(a, "+%s", plain) : plain;
}

typedef const char *grams_teller(arena *a, const language *in, double grams);

/* "84 g", "84 g, 60 g to 99 g". */
static const char *amount_cell(arena *a, const language *in, range grams, grams_teller *tell) {
    if (grams.high - grams.low < 1)
        return tell(a, in, grams.typical);
    return arena_format(a, "%s, %s to %s", tell(a, in, grams.typical), tell(a, in, grams.low),
                        tell(a, in, grams.high));
}

/* "84 g, -20 to +5 g". */
static const char *quantity_cell(arena *a, const language *in, range grams, double was) {
    const char *change = balance_range_text(a, in, grams, was);
    return arena_format(a, "%s%s%s", balance_grams_text(a, in, grams.typical), change ? ", " : "",
                        change ? change : "");
}

typedef enum { ROW_REPLACEMENT, ROW_SECOND, ROW_LIQUID } amount_row;

static const char *cell_of(arena *a, const language *in, const balance_at *at, amount_row row) {
    if (row == ROW_LIQUID)
        return amount_cell(a, in, at->liquid_g, signed_text);
    return row == ROW_SECOND ? balance_grams_text(a, in, at->also_to_g)
                             : amount_cell(a, in, at->to_g, balance_grams_text);
}

static void add_amounts(arena *a, const language *in, text *t, const balance_comparison *of,
                        amount_row row) {
    static const char *const heads[] = {"  replacement", "  second replacement", "  liquid"};
    const char *cells[POINT_COUNT + 1] = {""};
    size_t count = 1;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            cells[count++] = cell_of(a, in, &of->at[p], row);
    add_cells(t, heads[row], cells, count);
}

static void add_quantity(arena *a, const language *in, text *t, const balance_comparison *of,
                         balance_quantity q) {
    double was = balance_quantity_g(&of->before, q).typical;
    const char *cells[POINT_COUNT + 1] = {quantity_cell(a, in, (range){was, was, was}, was)};
    size_t count = 1;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            cells[count++] = quantity_cell(a, in, balance_quantity_at(of, p, q), was);
    add_cells(t, arena_format(a, "  %s", in->quantities[q]), cells, count);
}

void balance_table_add(text *t, arena *a, const language *in, const balance_comparison *of) {
    const char *cells[POINT_COUNT + 1] = {in->points[0]};
    size_t count = 1;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            cells[count++] = in->points[p + 1];
    add_cells(t, "Balance", cells, count);
    add_amounts(a, in, t, of, ROW_REPLACEMENT);
    if (of->at[POINT_EQUAL_WEIGHT].also_to_g > 0)
        add_amounts(a, in, t, of, ROW_SECOND);
    add_amounts(a, in, t, of, ROW_LIQUID);
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (balance_is_shown(of, q))
            add_quantity(a, in, t, of, q);
}
