#include "site/swap_table.h"

#include "base/list.h"
#include "base/names.h"

/* Gathering asks for a pair some million times on a large site, so the pairs known are found by
 * numbers, not by words: slots hold 1 + the place of a pair in the table, 0 where they are free. */
typedef struct {
    arena *home;
    swap_table *table;
    uint32_t *slots;
    size_t room;      /* a power of two */
    names kinds;      /* to their numbers; null is number 0 */
    word_list called; /* the kinds by number, each spelt by one pointer */
} gathering;

/* The number of the row's kind. */
static size_t kind_number(gathering *g, const char *kind) {
    size_t number = g->called.count;
    if (!kind)
        return 0;
    if (names_add(&g->kinds, span_of(kind), number, &number))
        LIST_ADD(g->home, &g->called, kind);
    return number;
}

static size_t slot_of(const gathering *g, const pair_answer *pair, size_t kind) {
    /* Odd factors spread each number over the high bits, which are then brought down. */
    uint64_t key = pair->from * 0x9E3779B97F4A7C15u ^ pair->to * 0xC2B2AE3D27D4EB4Fu ^
                   kind * 0x165667B19E3779F9u;
    size_t i = (size_t)(key >> 32) & (g->room - 1);
    for (; g->slots[i]; i = (i + 1) & (g->room - 1)) {
        const pair_answer *known = &g->table->items[g->slots[i] - 1];
        if (known->from == pair->from && known->to == pair->to && known->kind == pair->kind)
            break;
    }
    return i;
}

static void make_room(gathering *g) {
    g->room = g->room ? g->room * 2 : 1024;
    g->slots = ARENA_ARRAY(g->home, uint32_t, g->room);
    for (size_t i = 0; i < g->table->count; i++) {
        const pair_answer *pair = &g->table->items[i];
        g->slots[slot_of(g, pair, kind_number(g, pair->kind))] = (uint32_t)i + 1;
    }
}

static pair_answer *answer_of(gathering *g, const row_swap *one, size_t kind) {
    pair_answer pair = {.from = one->from, .to = one->to, .kind = g->called.items[kind]};
    if (g->table->count * 2 >= g->room)
        make_room(g);
    uint32_t *slot = &g->slots[slot_of(g, &pair, kind)];
    if (!*slot) {
        LIST_ADD(g->home, g->table, pair);
        *slot = (uint32_t)g->table->count;
    }
    return &g->table->items[*slot - 1];
}

static void gather(gathering *g, const recipe_row *row, size_t at) {
    size_t kind = kind_number(g, row->kind);
    for (size_t i = 0; i < row->swap_count; i++) {
        pair_answer *pair = answer_of(g, &row->swaps[i], kind);
        if (pair->says[row->swaps[i].says]++ == 0)
            pair->row[row->swaps[i].says] = (uint32_t)at;
    }
}

static int compare_answers(const void *left, const void *right) {
    const pair_answer *a = left, *b = right;
    if (a->from != b->from)
        return a->from < b->from ? -1 : 1;
    int order = strcmp(a->kind ? a->kind : "", b->kind ? b->kind : "");
    if (order)
        return order;
    return a->to < b->to ? -1 : a->to > b->to;
}

static uint16_t on_side(const pair_answer *of, pair_side side) {
    return side == SIDE_FROM ? of->from : of->to;
}

/* Counts the pairs of each ingredient, then puts each pair behind those before it. */
static void file_side(arena *a, swap_table *table, pair_side side) {
    uint32_t *first = ARENA_ARRAY(a, uint32_t, table->ingredients + 1);
    uint32_t *next = ARENA_ARRAY(a, uint32_t, table->ingredients + 1);
    uint32_t *order = ARENA_ARRAY(a, uint32_t, table->count + 1);
    for (size_t i = 0; i < table->count; i++)
        first[on_side(&table->items[i], side) + 1]++;
    for (size_t i = 0; i < table->ingredients; i++)
        next[i + 1] = first[i + 1] += first[i];
    for (size_t i = 0; i < table->count; i++)
        order[next[on_side(&table->items[i], side)]++] = (uint32_t)i;
    table->first[side] = first;
    table->order[side] = order;
}

static void file_sides(arena *a, swap_table *table) {
    for (size_t i = 0; i < table->count; i++)
        for (pair_side side = SIDE_FROM; side <= SIDE_TO; side++)
            if (on_side(&table->items[i], side) >= table->ingredients)
                table->ingredients = (size_t)on_side(&table->items[i], side) + 1;
    file_side(a, table, SIDE_FROM);
    file_side(a, table, SIDE_TO);
}

pair_places swap_table_pairs(const swap_table *of, size_t which, pair_side side) {
    if (which >= of->ingredients)
        return (pair_places){0};
    const uint32_t *first = of->first[side] + which;
    return (pair_places){of->order[side] + first[0], first[1] - first[0]};
}

swap_table swap_table_of(arena *a, const recipe_rows *rows) {
    swap_table table = {0};
    gathering g = {.home = a, .table = &table, .kinds = names_in(a)};
    LIST_ADD(a, &g.called, NULL);
    for (size_t i = 0; i < rows->count; i++)
        gather(&g, &rows->items[i], i);
    if (table.count > 1)
        qsort(table.items, table.count, sizeof table.items[0], compare_answers);
    file_sides(a, &table);
    return table;
}

verdict pair_verdict(const pair_answer *of) {
    size_t best = VERDICT_AVOID;
    for (size_t i = VERDICT_UNTRIED; i-- > 0;)
        if (of->says[i] > of->says[best])
            best = i;
    return (verdict)best;
}

size_t pair_count(const pair_answer *of) {
    size_t count = 0;
    for (size_t i = 0; i < VERDICT_COUNT; i++)
        count += of->says[i];
    return count;
}
