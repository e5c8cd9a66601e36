/* site/swap_table.h: answers of many recipes gathered by pair and kind. */
#include "support/cmocka_rows.h"

#include "site/swap_table.h"

static row_swap first_swaps[] = {{1, 2, VERDICT_WORKS}, {1, 3, VERDICT_AVOID}};
static row_swap second_swaps[] = {{1, 2, VERDICT_WORKS}};
static row_swap third_swaps[] = {{1, 2, VERDICT_ADJUST}, {4, 2, VERDICT_DIFFERENT}};
static row_swap fourth_swaps[] = {{1, 2, VERDICT_AVOID}};

static recipe_row all_rows[] = {
    {.slug = "a", .kind = "cookie", .swaps = first_swaps, .swap_count = COUNT(first_swaps)},
    {.slug = "b", .kind = "cookie", .swaps = second_swaps, .swap_count = COUNT(second_swaps)},
    {.slug = "c", .kind = "cookie", .swaps = third_swaps, .swap_count = COUNT(third_swaps)},
    {.slug = "d", .kind = "cake", .swaps = fourth_swaps, .swap_count = COUNT(fourth_swaps)}};

static const pair_answer *find(const swap_table *table, uint16_t from, uint16_t to,
                               const char *kind) {
    for (size_t i = 0; i < table->count; i++)
        if (table->items[i].from == from && table->items[i].to == to &&
            strcmp(table->items[i].kind, kind) == 0)
            return &table->items[i];
    fail_msg("no answer for %u to %u in a %s", from, to, kind);
    return NULL;
}

static void answers_are_gathered_by_pair_and_kind(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe_rows rows = {all_rows, COUNT(all_rows), COUNT(all_rows)};
    swap_table table = swap_table_of(a, &rows);
    assert_int_equal(table.count, 4);
    const pair_answer *cookies = find(&table, 1, 2, "cookie");
    assert_int_equal(pair_count(cookies), 3);
    assert_int_equal(cookies->says[VERDICT_WORKS], 2);
    expect_text("what most say", verdict_word(pair_verdict(cookies)), "works");
    expect_text("the first that says so", rows.items[cookies->row[VERDICT_WORKS]].slug, "a");
    expect_text("another kind answers for itself",
                verdict_word(pair_verdict(find(&table, 1, 2, "cake"))), "avoid");
    arena_free(a);
}

static void pairs_are_found_by_either_side(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe_rows rows = {all_rows, COUNT(all_rows), COUNT(all_rows)};
    swap_table table = swap_table_of(a, &rows);
    static const struct {
        size_t which;
        pair_side side;
        size_t count;
    } wanted[] = {{1, SIDE_FROM, 3}, {4, SIDE_FROM, 1}, {2, SIDE_FROM, 0}, {2, SIDE_TO, 3},
                  {3, SIDE_TO, 1},   {0, SIDE_TO, 0},   {99, SIDE_TO, 0}};
    for (size_t i = 0; i < COUNT(wanted); i++) {
        pair_places pairs = swap_table_pairs(&table, wanted[i].which, wanted[i].side);
        assert_int_equal(pairs.count, wanted[i].count);
        for (size_t k = 0; k < pairs.count; k++) {
            const pair_answer *one = &table.items[pairs.items[k]];
            assert_int_equal(wanted[i].side == SIDE_FROM ? one->from : one->to, wanted[i].which);
        }
    }
    arena_free(a);
}

static void among_equals_the_more_cautious(void **state) {
    (void)state;
    static const struct {
        const char *name;
        uint32_t says[VERDICT_COUNT];
        verdict wanted;
    } rows[] = {{"works and avoid", {1, 0, 0, 1, 0}, VERDICT_AVOID},
                {"works and adjust", {2, 2, 0, 0, 0}, VERDICT_ADJUST},
                {"adjust and different", {0, 1, 1, 0, 0}, VERDICT_DIFFERENT},
                {"one more works", {2, 0, 0, 1, 0}, VERDICT_WORKS}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        pair_answer of = {0};
        memcpy(of.says, rows[i].says, sizeof of.says);
        expect_text(rows[i].name, verdict_word(pair_verdict(&of)), verdict_word(rows[i].wanted));
    }
}

static void rows_are_sorted_by_slug(void **state) {
    (void)state;
    recipe_row items[] = {{.slug = "weir"}, {.slug = "bow"}, {.slug = "lock"}};
    recipe_rows rows = {items, COUNT(items), COUNT(items)};
    rows_sort(&rows);
    expect_text("first", items[0].slug, "bow");
    expect_text("last", items[2].slug, "weir");
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(answers_are_gathered_by_pair_and_kind),
                                       cmocka_unit_test(pairs_are_found_by_either_side),
                                       cmocka_unit_test(among_equals_the_more_cautious),
                                       cmocka_unit_test(rows_are_sorted_by_slug)};
    return cmocka_run_group_tests_name("swap_table", tests, NULL, NULL);
}
