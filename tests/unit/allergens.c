#include "unit/support/cmocka_rows.h"

#include "nutrition/allergens.h"
#include "unit/support/build_recipe.h"

#define HOLDS(allergen) (1u << ALLERGEN_##allergen)

static ingredient *carrying(arena *a, const char *name, allergen_set set, allergen_set may) {
    ingredient *one = food_of_nothing(a, name);
    one->allergens = set;
    one->may_contain = may;
    return one;
}

static recipe *flapjack(arena *a) {
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, carrying(a, "oats", HOLDS(OATS), HOLDS(WHEAT) | HOLDS(BARLEY)), 100);
    recipe_add(a, r, carrying(a, "almond butter", HOLDS(ALMOND), HOLDS(PEANUT)), 50);
    recipe_add(a, r, carrying(a, "whey", HOLDS(MILK), 0), 30);
    recipe_add_to_taste(a, r, carrying(a, "almond", HOLDS(ALMOND), 0));
    recipe_add_unweighed(a, r, carrying(a, "wheat flour", HOLDS(WHEAT), 0));
    recipe_add(a, r, carrying(a, "whey", HOLDS(MILK), 0), 5);
    recipe_finish(r, 8, 0);
    return r;
}

static void every_line_counts(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = flapjack(a);
    r->lines.items[2].optional = true;
    assert_int_equal(allergens_of(r), HOLDS(OATS) | HOLDS(ALMOND) | HOLDS(MILK) | HOLDS(WHEAT));
    expect_bool("all known", allergens_complete(r), true);
    recipe_add_unknown(a, r, "mystery", 5);
    expect_bool("one unknown", allergens_complete(r), false);
    assert_int_equal(allergens_of(r), HOLDS(OATS) | HOLDS(ALMOND) | HOLDS(MILK) | HOLDS(WHEAT));
    arena_free(a);
}

static void may_contain_leaves_out_what_is_contained(void **state) {
    (void)state;
    arena *a = arena_new();
    assert_int_equal(allergens_may_contain(flapjack(a)), HOLDS(BARLEY) | HOLDS(PEANUT));
    arena_free(a);
}

typedef struct {
    allergen what;
    const char *because;
} cause_row;

static void expect_causes(arena *a, const allergen_causes *causes, const cause_row rows[],
                          size_t count) {
    assert_int_equal(causes->count, count);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(causes->items[i].what, rows[i].what);
        const word_list *behind = &causes->items[i].because;
        text joined = TEXT_EMPTY;
        for (size_t j = 0; j < behind->count; j++)
            text_format(&joined, j ? ", %s" : "%s", behind->items[j]);
        expect_text(allergen_word(rows[i].what), arena_copy(a, text_span(&joined)),
                    rows[i].because);
        text_free(&joined);
    }
}

static void causes_are_named_once_in_list_order(void **state) {
    (void)state;
    static const cause_row contained[] = {{ALLERGEN_MILK, "whey"},
                                          {ALLERGEN_WHEAT, "wheat flour"},
                                          {ALLERGEN_OATS, "oats"},
                                          {ALLERGEN_ALMOND, "almond butter, almond"}};
    static const cause_row may[] = {{ALLERGEN_BARLEY, "oats"}, {ALLERGEN_PEANUT, "almond butter"}};
    arena *a = arena_new();
    recipe *r = flapjack(a);
    allergen_causes causes = allergen_causes_of(a, r);
    expect_causes(a, &causes, contained, COUNT(contained));
    causes = allergen_may_contain_causes_of(a, r);
    expect_causes(a, &causes, may, COUNT(may));
    arena_free(a);
}

static void statements_join_groups(void **state) {
    (void)state;
    static const struct {
        const char *name;
        allergen_set set;
        const char *us, *eu;
    } rows[] = {
        {"none", 0, "", ""},
        {"milk and a nut", HOLDS(MILK) | HOLDS(ALMOND), "milk; tree nuts (almond)",
         "milk; nuts (almond)"},
        {"oats, wheat, egg", HOLDS(OATS) | HOLDS(WHEAT) | HOLDS(EGG), "egg; wheat",
         "eggs; cereals containing gluten (wheat, oats)"},
        {"wheat and spelt", HOLDS(WHEAT) | HOLDS(SPELT), "wheat (wheat, spelt)",
         "cereals containing gluten (wheat, spelt)"},
        {"coconut beside pine nut", HOLDS(COCONUT) | HOLDS(PINE_NUT), "tree nuts (pine nut)", ""},
        {"peanut is no tree nut", HOLDS(PEANUT) | HOLDS(PECAN), "peanuts; tree nuts (pecan)",
         "peanuts; nuts (pecan)"},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        expect_text(rows[i].name, allergen_statement(a, rows[i].set, LAW_US), rows[i].us);
        expect_text(rows[i].name, allergen_statement(a, rows[i].set, LAW_EU), rows[i].eu);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_line_counts),
        cmocka_unit_test(may_contain_leaves_out_what_is_contained),
        cmocka_unit_test(causes_are_named_once_in_list_order),
        cmocka_unit_test(statements_join_groups),
    };
    return cmocka_run_group_tests_name("allergens", tests, NULL, NULL);
}
