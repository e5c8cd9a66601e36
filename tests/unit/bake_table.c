/* site/bake_table.h: recipes by what they can be baked with. */
#include "support/cmocka_rows.h"

#include "site/bake_table.h"
#include "small_shelf.h"

enum { OTHERS = BAKES_LISTED + 3 };

static size_t place_of(const pantry *shelf, const char *name, arena *a) {
    return pantry_index(shelf, pantry_find(shelf, span_of(name), a));
}

static const bake_list *list_of(const bake_table *table, size_t what, size_t way) {
    return &table->of[what][way];
}

static void a_recipe_counts_once_in_its_best_way(void **state) {
    (void)state;
    arena *a = arena_new();
    pantry shelf = small_shelf(a);
    uint16_t flour = (uint16_t)place_of(&shelf, "coconut flour", a),
             whey = (uint16_t)place_of(&shelf, "whey protein isolate", a),
             almond = (uint16_t)place_of(&shelf, "almond butter", a),
             egg = (uint16_t)place_of(&shelf, "egg white", a);
    row_use floured[] = {{flour, false, 100}}, eggs[] = {{egg, false, 50}};
    row_swap to_whey[] = {{flour, whey, VERDICT_ADJUST},
                          {almond, whey, VERDICT_WORKS},
                          {egg, flour, VERDICT_WORKS},
                          {egg, almond, VERDICT_AVOID},
                          {egg, egg, VERDICT_WORKS}};
    recipe_row all[] = {
        {.slug = "a",
         .uses = floured,
         .use_count = 1,
         .swaps = to_whey,
         .swap_count = COUNT(to_whey)},
        {.slug = "b", .uses = eggs, .use_count = 1, .swaps = &to_whey[2], .swap_count = 1}};
    recipe_rows rows = {all, COUNT(all), COUNT(all)};
    bake_table table = bake_table_of(a, &rows, &shelf);
    const struct {
        const char *name;
        size_t what, way, all;
        uint16_t from; /* of the first */
    } cases[] = {{"as written, though it could stand in too", flour, BAKE_AS_WRITTEN, 1, NO_SWAP},
                 {"stands in elsewhere", flour, BAKE_AS_WRITTEN + 1 + VERDICT_WORKS, 1, egg},
                 {"the better of two", whey, BAKE_AS_WRITTEN + 1 + VERDICT_WORKS, 1, almond},
                 {"not the worse too", whey, BAKE_AS_WRITTEN + 1 + VERDICT_ADJUST, 0, 0},
                 {"nobody asks for egg", egg, BAKE_AS_WRITTEN, 0, 0}};
    for (size_t i = 0; i < COUNT(cases); i++) {
        const bake_list *list = list_of(&table, cases[i].what, cases[i].way);
        expect_near(cases[i].name, (double)list->all, (double)cases[i].all, 0);
        if (list->all)
            expect_near(cases[i].name, list->items[0].from, cases[i].from, 0);
    }
    assert_int_equal(bake_count(&table, flour), 2);
    assert_int_equal(bake_count(&table, almond), 0); /* to be avoided: no way */
    arena_free(a);
}

static void what_is_past_the_list_is_still_counted(void **state) {
    (void)state;
    arena *a = arena_new();
    pantry shelf = small_shelf(a);
    row_use floured = {(uint16_t)place_of(&shelf, "coconut flour", a), false, 100};
    recipe_rows rows = {ARENA_ARRAY(a, recipe_row, OTHERS), OTHERS, OTHERS};
    for (size_t i = 0; i < OTHERS; i++)
        rows.items[i] = (recipe_row){.slug = "a", .uses = &floured, .use_count = 1};
    bake_table table = bake_table_of(a, &rows, &shelf);
    const bake_list *list = list_of(&table, floured.what, BAKE_AS_WRITTEN);
    assert_int_equal(list->count, BAKES_LISTED);
    assert_int_equal(list->all, OTHERS);
    assert_int_equal(list->items[BAKES_LISTED - 1].row, BAKES_LISTED - 1);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_recipe_counts_once_in_its_best_way),
        cmocka_unit_test(what_is_past_the_list_is_still_counted),
    };
    return cmocka_run_group_tests_name("bake_table", tests, NULL, NULL);
}
