#include "unit/support/cmocka_rows.h"

#include "swap/balance.h"
#include "unit/support/build_swaps.h"

static void expect_range(const char *row, range got, range wanted) {
    expect_near(row, got.low, wanted.low, 1e-9);
    expect_near(row, got.typical, wanted.typical, 1e-9);
    expect_near(row, got.high, wanted.high, 1e-9);
}

/* 100 g of each; composition and uptakes stand in build_swaps.h. */
static void an_ingredient_brings_what_its_figures_say(void **state) {
    (void)state;
    larder *l = larder_new();
    balance whey = balance_of_ingredient(larder_find(l, "whey protein isolate"), 100);
    expect_near("water", whey.water_g, 4.4, 1e-9);
    expect_range("taken cold: a quarter of the low, a half of the high", whey.taken_cold_g,
                 (range){0.5 * 0.25 * 100, 0.8 * 0.375 * 100, 1.2 * 0.5 * 100});
    expect_range("held heated", whey.held_heated_g,
                 (range){5.3 * 0.25 * 100, 6.1 * 0.375 * 100, 7 * 0.5 * 100});
    expect_near("fat", whey.fat_g, 1.4, 1e-9);
    expect_near("dry: the fat in a powder is part of it", whey.dry_g, 100 - 4.4, 1e-9);
    expect_near("sets firm: all of its protein", whey.setting_g, 84.5, 1e-9);
    expect_near("weight", whey.batch_g, 100, 1e-9);
    balance pea = balance_of_ingredient(larder_find(l, "pea protein isolate"), 50);
    expect_near("sets soft: half of its protein", pea.setting_g, 20, 1e-9);
    balance casein = balance_of_ingredient(larder_find(l, "micellar casein"), 50);
    expect_near("does not set", casein.setting_g, 0, 1e-9);
    balance sweet = balance_of_ingredient(larder_find(l, "erythritol"), 40);
    expect_near("sweetness, as sugar", sweet.sweetness_g, 26, 1e-9);
    expect_range("takes nothing up", sweet.taken_cold_g, (range){0, 0, 0});
    balance butter = balance_of_ingredient(larder_find(l, "butter"), 100);
    expect_near("dry: the fat of butter runs", butter.dry_g + butter.fat_g + butter.water_g, 100,
                1e-9);
    expect_near("firm", whey.firm_g, 84.5, 1e-9);
    expect_near("soft", pea.soft_g, 40, 1e-9);
    expect_near("firm is not soft", whey.soft_g + pea.firm_g, 0, 1e-9);
    larder_free(l);
}

/* A pack label states no water: what the macros leave of 100 g. */
static void water_is_worked_out_where_it_is_not_stated(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *labelled = food(a, "her powder", FAMILY_PROTEIN_POWDER, "whey", ORIGIN_DAIRY);
    assert_true(balance_water_per_g(labelled) == 0); /* nothing is known */
    food_holds(labelled, 77, 5, 9, 1);
    expect_near("by difference", balance_water_per_g(labelled), 0.09, 1e-12);
    food_holds(labelled, 77, 20, 9, 1);
    expect_near("never below none", balance_water_per_g(labelled), 0, 1e-12);
    food_set(labelled, NUTRIENT_WATER, 4);
    expect_near("as stated", balance_water_per_g(labelled), 0.04, 1e-12);
    arena_free(a);
}

static void an_uptake_must_be_known_only_where_there_is_one(void **state) {
    (void)state;
    larder *l = larder_new();
    ingredient *hers = food(l->a, "her powder", FAMILY_PROTEIN_POWDER, "whey", ORIGIN_DAIRY);
    expect_bool("a powder without", balance_known(hers), false);
    expect_bool("a powder with", balance_known(larder_find(l, "pea protein isolate")), true);
    expect_bool("butter", balance_known(larder_find(l, "butter")), true);
    expect_range("none", balance_cold_uptake(hers), (range){0, 0, 0});
    larder_free(l);
}

static void a_batch_is_the_sum_of_its_lines(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe *r = larder_recipe(
        l, "cake",
        (portion_of[]){{"whey protein isolate", 60}, {"oat flour", 100}, {"whole milk", 200}}, 3);
    recipe_add_unknown(l->a, r, "moon dust", 40);
    recipe_finish(r, 4, 0.1);
    balance sum = balance_of(r);
    double water_g = 0.6 * 4.4 + 8.55 + 2 * 88.13;
    range cold = {60 * 0.5 * 0.25 + 100 * 1.2 * 0.25, 60 * 0.8 * 0.375 + 100 * 2.2 * 0.375,
                  60 * 1.2 * 0.5 + 100 * 2.4 * 0.5};
    expect_near("water", sum.water_g, water_g, 1e-9);
    expect_near("what the pantry does not know weighs too", sum.batch_g, 400, 1e-9);
    expect_near("lost in the bake", sum.lost_g, 40, 1e-9);
    expect_range("free in the bowl", balance_free_cold_g(&sum),
                 (range){water_g - cold.high, water_g - cold.typical, water_g - cold.low});
    double heated = 60 * 6.1 * 0.375 + 100 * 2.6 * 0.375;
    expect_near("free in the bake", balance_free_heated_g(&sum).typical, water_g - 40 - heated,
                1e-9);
    larder_free(l);
}

static void what_is_taken_out_leaves_the_rest(void **state) {
    (void)state;
    larder *l = larder_new();
    balance oat = balance_of_ingredient(larder_find(l, "oat flour"), 100);
    balance pea = balance_of_ingredient(larder_find(l, "pea protein isolate"), 60);
    balance both = balance_sum(&oat, &pea), rest = balance_difference(&both, &pea);
    expect_range("taken cold", rest.taken_cold_g, oat.taken_cold_g);
    expect_range("held heated", rest.held_heated_g, oat.held_heated_g);
    expect_near("water", rest.water_g, oat.water_g, 1e-9);
    expect_near("dry", rest.dry_g, oat.dry_g, 1e-9);
    expect_near("setting", rest.setting_g, oat.setting_g, 1e-9);
    balance less = balance_difference(&oat, &both);
    assert_true(less.taken_cold_g.low <= less.taken_cold_g.typical &&
                less.taken_cold_g.typical <= less.taken_cold_g.high);
    larder_free(l);
}

/* Why whey for plant runs in the bowl and bakes dry, and plant for whey stays crumbs. */
static void whey_for_plant_is_wetter_in_the_bowl_and_drier_in_the_bake(void **state) {
    (void)state;
    larder *l = larder_new();
    balance pea = balance_of_ingredient(larder_find(l, "pea protein isolate"), 60);
    balance whey = balance_of_ingredient(larder_find(l, "whey protein isolate"), 60);
    balance change = balance_difference(&whey, &pea);
    assert_true(balance_free_cold_g(&change).typical > 20);
    assert_true(balance_free_heated_g(&change).typical < -20);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_ingredient_brings_what_its_figures_say),
        cmocka_unit_test(water_is_worked_out_where_it_is_not_stated),
        cmocka_unit_test(an_uptake_must_be_known_only_where_there_is_one),
        cmocka_unit_test(a_batch_is_the_sum_of_its_lines),
        cmocka_unit_test(what_is_taken_out_leaves_the_rest),
        cmocka_unit_test(whey_for_plant_is_wetter_in_the_bowl_and_drier_in_the_bake),
    };
    return cmocka_run_group_tests_name("balance", tests, NULL, NULL);
}
