#include "unit/support/cmocka_rows.h"

#include "swap/balance.h"
#include "swap/build_norms.h"
#include "unit/support/build_swaps.h"

/* A sample with one figure, the rest nothing. */
static build_sample sample(const char *title, const char *kind, setting sets, double fat,
                           double portion_g) {
    return (build_sample){.title = title,
                          .kind = kind,
                          .sets = sets,
                          .ratio = {[BUILD_FAT] = fat},
                          .share = {[FAMILY_FAT] = fat},
                          .portion_g = portion_g};
}

/* 20 g of sugar and 4 g of baking powder in 224 g; the rest is the balance's own. */
static void a_sample_is_what_the_mix_holds(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe *r = larder_recipe(
        l, "griddle cake",
        (portion_of[]){{"egg white", 140}, {"oat flour", 60}, {"baking powder", 4}, {"sugar", 20}},
        4);
    r->portions = 4;
    recipe_facts about = larder_facts(l, r);
    build_sample one = build_sample_of(&about);
    balance of = balance_of(r);
    expect_text("kind", one.kind, "griddle cake");
    expect_near("portion", one.portion_g, 56, 1e-9);
    expect_near("bowl", one.ratio[BUILD_BOWL], balance_free_cold_g(&of).typical / of.dry_g, 1e-9);
    expect_near("setting", one.ratio[BUILD_SETTING], of.setting_g / 224, 1e-9);
    expect_near("fat", one.ratio[BUILD_FAT], of.fat_g / 224, 1e-9);
    expect_near("sweetness", one.ratio[BUILD_SWEETNESS], 20.0 / 224, 1e-9);
    expect_near("leavening", one.ratio[BUILD_LEAVENING], 4.0 / 224, 1e-9);
    expect_near("egg", one.share[FAMILY_EGG], 140.0 / 224, 1e-9);
    r->makes = (yield){8, "rounds"};
    expect_near("as many of the same", build_portion_g(l->a, &about, &(yield){6, "round"}, 2),
                224.0 / 8 * 3, 1e-9);
    expect_near("of something else", build_portion_g(l->a, &about, &(yield){6, "bars"}, 2), 56,
                1e-9);
    larder_free(l);
}

/* Of three the lowest and the highest, of five the quartiles: 1 2 3 4 10 has 2, 3 and 4. */
static void medians_and_spread(void **state) {
    (void)state;
    arena *a = arena_new();
    const double fats[] = {4, 1, 10, 3, 2};
    build_samples all = {0};
    for (size_t i = 0; i < COUNT(fats); i++)
        LIST_ADD(a, &all, sample("x", "cake", SETTING_EGG, fats[i], 10 * fats[i]));
    build_norms five = build_norms_of(a, &all, "cake", 1u << SETTING_EGG);
    assert_int_equal(five.count, 5);
    expect_near("low", five.ratio[BUILD_FAT].low, 2, 1e-9);
    expect_near("median", five.ratio[BUILD_FAT].typical, 3, 1e-9);
    expect_near("high", five.ratio[BUILD_FAT].high, 4, 1e-9);
    expect_near("portion", five.portion_g.typical, 30, 1e-9);
    expect_near("most", five.share_most[FAMILY_FAT], 10, 1e-9);
    all.count = 3;
    build_norms three = build_norms_of(a, &all, "cake", 0);
    expect_near("lowest", three.ratio[BUILD_FAT].low, 1, 1e-9);
    expect_near("middle", three.ratio[BUILD_FAT].typical, 4, 1e-9);
    expect_near("highest", three.ratio[BUILD_FAT].high, 10, 1e-9);
    arena_free(a);
}

static void where_too_few_are_set_so_all_of_the_kind_count(void **state) {
    (void)state;
    arena *a = arena_new();
    build_samples all = {0};
    LIST_ADD(a, &all, sample("white", "cake", SETTING_EGG_WHITE, 1, 1));
    LIST_ADD(a, &all, sample("egg", "cake", SETTING_EGG, 2, 1));
    LIST_ADD(a, &all, sample("other", "loaf", SETTING_EGG_WHITE, 3, 1));
    build_norms norms = build_norms_of(a, &all, "cake", 1u << SETTING_EGG_WHITE);
    assert_true(norms.any_setting);
    assert_int_equal(norms.count, 2);
    all.count = 1;
    norms = build_norms_of(a, &all, "cake", 1u << SETTING_EGG_WHITE);
    assert_false(norms.any_setting);
    assert_int_equal(norms.count, 1);
    norms = build_norms_of(a, &all, "waffle", 0);
    assert_int_equal(norms.count, 0);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sample_is_what_the_mix_holds),
        cmocka_unit_test(medians_and_spread),
        cmocka_unit_test(where_too_few_are_set_so_all_of_the_kind_count),
    };
    return cmocka_run_group_tests_name("build_norms", tests, NULL, NULL);
}
