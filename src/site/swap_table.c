#include "site/swap_table.h"

#include "base/list.h"
#include "base/names.h"

/* A key of plain bytes for the table of names: pair and kind. */
static span pair_key(char room[], size_t size, const row_swap *of, const char *kind) {
    int length = snprintf(room, size, "%u/%u/%s", of->from, of->to, kind ? kind : "");
    size_t whole = length < 0 ? 0 : (size_t)length;
    return (span){room, whole < size ? whole : size - 1};
}

static void gather(arena *a, names *known, swap_table *table, const recipe_row *row, size_t at) {
    char room[160];
    for (size_t i = 0; i < row->swap_count; i++) {
        const row_swap *one = &row->swaps[i];
        size_t index = table->count;
        if (names_add(known, pair_key(room, sizeof room, one, row->kind), index, &index))
            LIST_ADD(a, table, (pair_answer){.from = one->from, .to = one->to, .kind = row->kind});
        pair_answer *known_pair = &table->items[index];
        if (known_pair->says[one->says]++ == 0)
            known_pair->row[one->says] = (uint32_t)at;
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

swap_table swap_table_of(arena *a, const recipe_rows *rows) {
    names known = names_in(a);
    swap_table table = {0};
    for (size_t i = 0; i < rows->count; i++)
        gather(a, &known, &table, &rows->items[i], i);
    if (table.count > 1)
        qsort(table.items, table.count, sizeof table.items[0], compare_answers);
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
