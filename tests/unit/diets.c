#include "unit/support/cmocka_rows.h"

#include "nutrition/diets.h"
#include "unit/support/build_recipe.h"

#define HOLDS(allergen) (1u << ALLERGEN_##allergen)
#define ALLOWS(diet)    (1u << DIET_##diet)
#define ALL                                                                                        \
    (ALLOWS(VEGAN) | ALLOWS(VEGETARIAN) | ALLOWS(NO_DAIRY) | ALLOWS(NO_EGG) | ALLOWS(NO_GLUTEN))

static const struct {
    const char *name;
    origin from;
    allergen_set allergens;
    gluten has_gluten;
    diet_set allows;
} foods[] = {
    {"pea protein", ORIGIN_PLANT, 0, GLUTEN_NONE, ALL},
    {"salt", ORIGIN_MINERAL, 0, GLUTEN_NONE, ALL},
    {"almond butter", ORIGIN_PLANT, HOLDS(ALMOND), GLUTEN_NONE, ALL},
    {"whey", ORIGIN_DAIRY, HOLDS(MILK), GLUTEN_NONE,
     ALLOWS(VEGETARIAN) | ALLOWS(NO_EGG) | ALLOWS(NO_GLUTEN)},
    {"egg white", ORIGIN_EGG, HOLDS(EGG), GLUTEN_NONE,
     ALLOWS(VEGETARIAN) | ALLOWS(NO_DAIRY) | ALLOWS(NO_GLUTEN)},
    {"collagen", ORIGIN_ANIMAL, 0, GLUTEN_NONE,
     ALLOWS(NO_DAIRY) | ALLOWS(NO_EGG) | ALLOWS(NO_GLUTEN)},
    {"honey", ORIGIN_BEE, 0, GLUTEN_NONE,
     ALLOWS(VEGETARIAN) | ALLOWS(NO_DAIRY) | ALLOWS(NO_EGG) | ALLOWS(NO_GLUTEN)},
    {"milk chocolate, a plant's by origin", ORIGIN_PLANT, HOLDS(MILK), GLUTEN_NONE,
     ALLOWS(VEGETARIAN) | ALLOWS(NO_EGG) | ALLOWS(NO_GLUTEN)},
    {"wafer with egg", ORIGIN_PLANT, HOLDS(EGG) | HOLDS(WHEAT), GLUTEN_YES,
     ALLOWS(VEGETARIAN) | ALLOWS(NO_DAIRY)},
    {"anchovy paste", ORIGIN_PLANT, HOLDS(FISH), GLUTEN_NONE,
     ALLOWS(NO_DAIRY) | ALLOWS(NO_EGG) | ALLOWS(NO_GLUTEN)},
    {"oat flour", ORIGIN_PLANT, HOLDS(OATS), GLUTEN_OATS, ALL & ~ALLOWS(NO_GLUTEN)},
    {"oats without the allergen", ORIGIN_PLANT, 0, GLUTEN_OATS, ALL & ~ALLOWS(NO_GLUTEN)},
    {"wheat without the word", ORIGIN_PLANT, HOLDS(WHEAT), GLUTEN_NONE, ALL & ~ALLOWS(NO_GLUTEN)},
    {"spelt", ORIGIN_PLANT, HOLDS(SPELT), GLUTEN_YES, ALL & ~ALLOWS(NO_GLUTEN)},
    {"barley malt", ORIGIN_PLANT, HOLDS(BARLEY), GLUTEN_YES, ALL & ~ALLOWS(NO_GLUTEN)},
    {"rye", ORIGIN_PLANT, HOLDS(RYE), GLUTEN_YES, ALL & ~ALLOWS(NO_GLUTEN)},
};

static ingredient *food_at(arena *a, size_t i) {
    ingredient *one = food(a, foods[i].name, FAMILY_FLOUR, "", foods[i].from);
    one->allergens = foods[i].allergens;
    one->has_gluten = foods[i].has_gluten;
    return one;
}

static void one_ingredient(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(foods); i++) {
        diet_set got = diets_of_ingredient(food_at(a, i));
        if (got != foods[i].allows)
            fail_msg("%s: got %#x, wanted %#x", foods[i].name, got, foods[i].allows);
    }
    arena_free(a);
}

/* A recipe allows what both its ingredients allow, however they are weighed. */
static void a_recipe_allows_what_all_allow(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(foods); i++)
        for (size_t j = 0; j < COUNT(foods); j++) {
            recipe *r = recipe_new(a, "bar");
            recipe_add(a, r, food_at(a, i), 10);
            recipe_add_to_taste(a, r, food_at(a, j));
            if (diets_of(r) != (foods[i].allows & foods[j].allows))
                fail_msg("%s with %s", foods[i].name, foods[j].name);
        }
    arena_free(a);
}

static void an_unknown_ingredient_allows_none(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = recipe_new(a, "bar");
    assert_int_equal(diets_of(r), 0);
    recipe_add(a, r, food_at(a, 0), 10);
    assert_int_equal(diets_of(r), ALL);
    recipe_add_unknown(a, r, "mystery", 1);
    assert_int_equal(diets_of(r), 0);
    arena_free(a);
}

static void words(void **state) {
    (void)state;
    static const struct {
        diet which;
        const char *word, *schema;
    } rows[] = {{DIET_VEGAN, "vegan", "VeganDiet"}, /* schema.org RestrictedDiet */
                {DIET_VEGETARIAN, "vegetarian", "VegetarianDiet"},
                {DIET_NO_DAIRY, "no dairy", NULL},
                {DIET_NO_EGG, "no egg", NULL},
                {DIET_NO_GLUTEN, "no gluten ingredient", NULL}};
    assert_int_equal(COUNT(rows), DIET_COUNT);
    for (size_t i = 0; i < COUNT(rows); i++) {
        expect_text(rows[i].word, diet_word(rows[i].which), rows[i].word);
        expect_text(rows[i].word, diet_schema(rows[i].which), rows[i].schema);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_ingredient),
        cmocka_unit_test(a_recipe_allows_what_all_allow),
        cmocka_unit_test(an_unknown_ingredient_allows_none),
        cmocka_unit_test(words),
    };
    return cmocka_run_group_tests_name("diets", tests, NULL, NULL);
}
