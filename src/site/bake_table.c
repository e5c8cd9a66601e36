#include "site/bake_table.h"

bool bake_is_asked_for(const ingredient *what) {
    const unsigned asked = 1u << FAMILY_PROTEIN_POWDER | 1u << FAMILY_FLOUR | 1u << FAMILY_MEAL |
                           1u << FAMILY_NUT_BUTTER;
    return asked >> what->in & 1u;
}

/* The best way of each ingredient in the row at hand. */
typedef struct {
    uint8_t *way; /* BAKE_WAYS: none */
    uint16_t *from;
    uint16_t *touched; /* pantry indexes with a way */
    size_t touched_count;
} row_ways;

static void offer(row_ways *best, uint16_t what, uint8_t way, uint16_t from) {
    if (best->way[what] == BAKE_WAYS)
        best->touched[best->touched_count++] = what;
    if (way >= best->way[what])
        return;
    best->way[what] = way;
    best->from[what] = from;
}

static void look_at(row_ways *best, const recipe_row *row, const pantry *shelf) {
    for (size_t i = 0; i < row->use_count; i++)
        if (bake_is_asked_for(shelf->items[row->uses[i].what]))
            offer(best, row->uses[i].what, BAKE_AS_WRITTEN, NO_SWAP);
    for (size_t i = 0; i < row->swap_count; i++) {
        const row_swap *swap = &row->swaps[i];
        if (swap->says < VERDICT_AVOID && bake_is_asked_for(shelf->items[swap->to]))
            offer(best, swap->to, (uint8_t)(BAKE_AS_WRITTEN + 1 + swap->says), swap->from);
    }
}

/* Moves the ways of row `row` to the table and forgets them. */
static void settle(arena *a, row_ways *best, uint32_t row, bake_table *table) {
    for (size_t i = 0; i < best->touched_count; i++) {
        uint16_t what = best->touched[i];
        bake_list *list = &table->of[what][best->way[what]];
        bake_way one = {row, best->from[what]};
        if (list->all++ < BAKES_LISTED)
            LIST_ADD(a, list, one);
        best->way[what] = BAKE_WAYS;
    }
    best->touched_count = 0;
}

bake_table bake_table_of(arena *a, const recipe_rows *rows, const pantry *shelf) {
    bake_table table = {arena_alloc(a, shelf->count * sizeof *table.of)};
    row_ways best = {ARENA_ARRAY(a, uint8_t, shelf->count), ARENA_ARRAY(a, uint16_t, shelf->count),
                     ARENA_ARRAY(a, uint16_t, shelf->count), 0};
    for (size_t i = 0; i < shelf->count; i++)
        best.way[i] = BAKE_WAYS;
    for (size_t i = 0; i < rows->count; i++) {
        look_at(&best, &rows->items[i], shelf);
        settle(a, &best, (uint32_t)i, &table);
    }
    return table;
}

size_t bake_count(const bake_table *table, size_t which) {
    size_t all = 0;
    for (size_t way = 0; way < BAKE_WAYS; way++)
        all += table->of[which][way].all;
    return all;
}
