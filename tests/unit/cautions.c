#include "unit/support/cmocka_rows.h"

#include "nutrition/cautions.h"
#include "unit/support/build_recipe.h"
#include "unit/support/in_english.h"

typedef enum { UNCOOKED, MINUTES, OVEN, GRIDDLE, TIN_ONLY } cooking;

typedef struct {
    const char *name;
    raw_state raw;
    origin from;
    double polyols_of_100_g, protein_g;
    cooking how;
    const char *says[2]; /* part of each caution, in order; null: no more */
} caution_row;

static const caution_row rows[] = {
    {"plain", RAW_READY, ORIGIN_PLANT, 0, 20, OVEN, {NULL, NULL}},
    {"raw egg, not cooked", RAW_EGG, ORIGIN_EGG, 0, 20, UNCOOKED, {"raw egg that is not", NULL}},
    {"a tin alone does not cook", RAW_EGG, ORIGIN_EGG, 0, 20, TIN_ONLY, {"raw egg that is", NULL}},
    {"raw egg in the oven", RAW_EGG, ORIGIN_EGG, 0, 20, OVEN, {"71 \u00b0C (160 \u00b0F)", NULL}},
    {"raw egg on the griddle", RAW_EGG, ORIGIN_EGG, 0, 20, GRIDDLE, {"71 \u00b0C", NULL}},
    {"raw egg with minutes to bake", RAW_EGG, ORIGIN_EGG, 0, 20, MINUTES, {"71 \u00b0C", NULL}},
    {"raw flour, not cooked", RAW_FLOUR, ORIGIN_PLANT, 0, 20, UNCOOKED, {"raw flour", NULL}},
    {"raw flour, baked", RAW_FLOUR, ORIGIN_PLANT, 0, 20, OVEN, {NULL, NULL}},
    {"honey, baked too", RAW_READY, ORIGIN_BEE, 0, 20, OVEN, {"infants under 12 months", NULL}},
    {"30 g of protein", RAW_READY, ORIGIN_PLANT, 0, 30, OVEN, {NULL, NULL}},
    {"more of it", RAW_READY, ORIGIN_PLANT, 0, 30.1, OVEN, {"kidney disease", NULL}},
    {"10 % polyols", RAW_READY, ORIGIN_PLANT, 10, 20, OVEN, {NULL, NULL}},
    {"more of them", RAW_READY, ORIGIN_PLANT, 10.1, 20, OVEN, {"laxative", NULL}},
    {"two of them", RAW_EGG, ORIGIN_EGG, 0, 40, UNCOOKED, {"raw egg", "kidney disease"}},
};

static void set_cooking(recipe *r, cooking how) {
    r->minutes.bake = how == MINUTES ? 12 : 0;
    r->oven_c = how == OVEN ? 180 : 0;
    r->baked_in.shape = how == GRIDDLE ? PAN_GRIDDLE : how == TIN_ONLY ? PAN_LOAF : PAN_NONE;
}

static void cautions_where_there_is_cause(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        ingredient *one = food(a, "thing", FAMILY_FLOUR, "", rows[i].from);
        one->raw = rows[i].raw;
        food_set(one, NUTRIENT_POLYOLS, rows[i].polyols_of_100_g);
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, one, 100);
        recipe_finish(r, 1, 0);
        set_cooking(r, rows[i].how);
        word_list got = cautions_in_english(a, cautions_of(r, rows[i].protein_g));
        size_t wanted = rows[i].says[1] ? 2 : rows[i].says[0] ? 1 : 0;
        if (got.count != wanted)
            fail_msg("%s: %zu cautions: %s", rows[i].name, got.count,
                     got.count ? got.items[0] : "");
        for (size_t j = 0; j < wanted; j++)
            expect_holds_text(rows[i].name, got.items[j], rows[i].says[j]);
    }
    arena_free(a);
}

/* Polyols are a share of what is eaten: 9 g in 100 g mixed are more than a tenth once 15 g of
 * water have gone. */
static void polyols_count_as_baked(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *one = food_of_nothing(a, "mix");
    food_set(one, NUTRIENT_POLYOLS, 9);
    recipe *r = recipe_new(a, "cookie");
    recipe_add(a, r, one, 100);
    recipe_add_unknown(a, r, "mystery", 0);
    recipe_finish(r, 1, 0);
    r->oven_c = 180;
    assert_int_equal(cautions_of(r, 0), 0);
    recipe_finish(r, 1, 0.15);
    assert_int_equal(cautions_of(r, 0), 1u << CAUTION_MUCH_POLYOLS);
    arena_free(a);
}

static void sentences_defer_and_end(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *egg = food_of_nothing(a, "egg"), *flour = food_of_nothing(a, "flour");
    egg->raw = RAW_EGG;
    egg->from = ORIGIN_BEE;
    flour->raw = RAW_FLOUR;
    food_set(flour, NUTRIENT_POLYOLS, 50);
    recipe *r = recipe_new(a, "dough");
    recipe_add(a, r, egg, 10);
    recipe_add(a, r, flour, 10);
    recipe_finish(r, 1, 0);
    word_list got = cautions_in_english(a, cautions_of(r, 50));
    assert_int_equal(got.count, 5);
    for (size_t i = 0; i < got.count; i++) {
        span sentence = span_of(got.items[i]);
        expect_bool(got.items[i], span_ends(sentence, "."), true);
        expect_bool(got.items[i], span_find(sentence, " safe ") == sentence.length, true);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(cautions_where_there_is_cause),
        cmocka_unit_test(polyols_count_as_baked),
        cmocka_unit_test(sentences_defer_and_end),
    };
    return cmocka_run_group_tests_name("cautions", tests, NULL, NULL);
}
