#include "unit/support/cmocka_rows.h"

#include "swap/formula.h"
#include "unit/support/build_swaps.h"

static const double NONE = INFINITY;

static void add_part(larder *l, formula_brief *to, const char *name, double least_g,
                     double most_g) {
    LIST_ADD(l->a, &to->parts,
             (formula_part){.what = larder_find(l, name), .least_g = least_g, .most_g = most_g});
}

static void add_target(larder *l, formula_brief *to, nutrient which, double least, double most) {
    LIST_ADD(l->a, &to->targets,
             (formula_target){.key = nutrient_key(which),
                              .unit = nutrient_unit(which),
                              .which = which,
                              .times = 1,
                              .least = least,
                              .most = most});
}

static formula_brief rounds(larder *l) {
    formula_brief of = {.title = "Rounds", .portions = 4};
    add_part(l, &of, "pea protein isolate", 0, 90);
    add_part(l, &of, "egg white", 0, 300);
    add_part(l, &of, "oat flour", 0, NONE);
    add_part(l, &of, "water", 0, NONE);
    return of;
}

/* Of a build with a quarter of the batch fat-free dry and the rest water: nothing is asked. */
static build_norms norms_of_rounds(void) {
    return (build_norms){.count = 3,
                         .ratio = {[BUILD_BOWL] = {0.9, 1.2, 1.5},
                                   [BUILD_BAKE] = {0.3, 0.7, 1},
                                   [BUILD_SETTING] = {0.10, 0.12, 0.14},
                                   [BUILD_FAT] = {0, 0.02, 0.05}},
                         .share_most = {[FAMILY_FLOUR] = 0.45, [FAMILY_EGG] = 0.45},
                         .portion_g = {80, 95, 110}};
}

static double protein_g(larder *l, const formula_brief *of, const formula_answer *by) {
    double sum = 0;
    (void)l;
    for (size_t i = 0; i < of->parts.count; i++)
        sum += by->grams[i] * of->parts.items[i].what->per_100_g.of[NUTRIENT_PROTEIN] / 100;
    return sum / of->portions;
}

static void targets_and_bounds_are_kept_in_whole_steps(void **state) {
    (void)state;
    larder *l = larder_new();
    formula_brief of = rounds(l);
    add_target(l, &of, NUTRIENT_PROTEIN, 18, NONE);
    build_norms norms = norms_of_rounds();
    formula_answer by = formula_solve(l->a, &of, &norms);
    assert_true(by.found && by.met && by.obstacle_count == 0);
    expect_near("protein", by.reached[0], protein_g(l, &of, &by), 1e-6);
    assert_true(by.reached[0] >= 18 - 1e-6);
    for (size_t i = 0; i < of.parts.count; i++) {
        const formula_part *one = &of.parts.items[i];
        range room;
        const range *spoon = ingredient_measure(one->what, span_of("tsp"), &room);
        assert_true(by.grams[i] >= one->least_g && by.grams[i] <= one->most_g + 1e-6);
        if (spoon)
            expect_near(one->what->name, by.grams[i] / spoon->typical * 4,
                        round(by.grams[i] / spoon->typical * 4), 1e-6);
    }
    for (build_quantity q = 0; q <= BUILD_SETTING; q++)
        if (by.ratio[q] < norms.ratio[q].low - 0.02 || by.ratio[q] > norms.ratio[q].high + 0.02)
            fail_msg("%s: %f", build_quantity_key(q), by.ratio[q]);
    larder_free(l);
}

/* What the brief does not bound keeps to what recipes of the build have of its family, by their
 * own most times FORMULA_SHARE_OFF, as far as the targets let it. */
static void nothing_fills_the_batch_past_the_builds_habits(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double protein_g; /* a portion, at least */
        bool beyond;
    } rows[] = {{"within", 10, false}, {"no other way", 26, true}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        larder *l = larder_new();
        formula_brief of = {.title = "Rounds", .portions = 4};
        add_part(l, &of, "egg white", 0, NONE);
        add_part(l, &of, "oat flour", 0, NONE);
        add_part(l, &of, "water", 0, NONE);
        add_part(l, &of, "baking powder", 0, NONE);
        add_target(l, &of, NUTRIENT_PROTEIN, rows[i].protein_g, NONE);
        build_norms norms = norms_of_rounds();
        formula_answer by = formula_solve(l->a, &of, &norms);
        assert_true(by.found);
        double most = formula_share_most(&norms, FAMILY_EGG);
        expect_near(rows[i].name, most, 0.45 * FORMULA_SHARE_OFF, 1e-9);
        expect_bool(rows[i].name, formula_share(&of, &by, FAMILY_EGG) > most + 0.02,
                    rows[i].beyond);
        assert_true(by.grams[3] <= 0.02 * 4 * norms.portion_g.typical + 1e-6);
        larder_free(l);
    }
}

/* 90 g of pea isolate and 300 g of egg white have 0.8 x 90 + 0.109 x 300 = 104.7 g of protein, 26.2
 * a portion; the rest must come from flour, which dries it. */
static void a_bound_in_the_way_is_named(void **state) {
    (void)state;
    larder *l = larder_new();
    formula_brief of = rounds(l);
    of.parts.items[0].most_g = 40;
    of.parts.items[1].most_g = 100;
    add_target(l, &of, NUTRIENT_PROTEIN, 24, NONE);
    build_norms norms = norms_of_rounds();
    formula_answer by = formula_solve(l->a, &of, &norms);
    assert_true(by.found && !by.met && by.obstacle_count > 0);
    assert_int_equal(by.obstacles[0].sort, OBSTACLE_PART);
    assert_true(by.obstacles[0].which <= 1 && by.obstacles[0].by > 0);
    assert_true(by.reached[0] < 24 && by.reached[0] > 8); /* what comes nearest */
    assert_true(by.grams[0] <= 40 + 1e-6 && by.grams[1] <= 100 + 1e-6);
    larder_free(l);
}

/* Pure protein has 4 kcal a gram: 24 g in 90 kcal is out of reach of these whatever the amounts. */
static void a_target_out_of_reach_is_named(void **state) {
    (void)state;
    larder *l = larder_new();
    formula_brief of = rounds(l);
    of.parts.items[0].most_g = of.parts.items[1].most_g = NONE;
    add_target(l, &of, NUTRIENT_PROTEIN, 24, NONE);
    add_target(l, &of, NUTRIENT_ENERGY_ATWATER, -NONE, 90);
    build_norms norms = norms_of_rounds();
    formula_answer by = formula_solve(l->a, &of, &norms);
    assert_true(!by.met && by.obstacle_count > 0);
    for (size_t i = 0; i < by.obstacle_count; i++)
        assert_int_equal(by.obstacles[i].sort, OBSTACLE_TARGET);
    larder_free(l);
}

static void a_stated_batch_is_kept(void **state) {
    (void)state;
    larder *l = larder_new();
    formula_brief of = rounds(l);
    of.batch_g = 500;
    build_norms none = {0};
    formula_answer by = formula_solve(l->a, &of, &none);
    assert_true(by.met);
    expect_near("batch", by.batch_g, 500, 500 * FORMULA_BATCH_OFF);
    larder_free(l);
}

/* A figure that is not known brings nothing, and is said to be lacking. */
static void what_is_not_known_is_lacking(void **state) {
    (void)state;
    larder *l = larder_new();
    const formula_target cost = {.key = "cost", .unit = "", .is_cost = true};
    const ingredient *oats = larder_find(l, "oat flour");
    assert_true(formula_lacks(&cost, oats) && formula_brings(&cost, oats) == 0);
    const formula_target protein = {.which = NUTRIENT_PROTEIN, .times = 1};
    assert_false(formula_lacks(&protein, oats));
    expect_near("protein of oat flour", formula_brings(&protein, oats), 0.1466, 1e-9); /* 20132 */
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(targets_and_bounds_are_kept_in_whole_steps),
        cmocka_unit_test(nothing_fills_the_batch_past_the_builds_habits),
        cmocka_unit_test(a_bound_in_the_way_is_named),
        cmocka_unit_test(a_target_out_of_reach_is_named),
        cmocka_unit_test(a_stated_batch_is_kept),
        cmocka_unit_test(what_is_not_known_is_lacking),
    };
    return cmocka_run_group_tests_name("formula", tests, NULL, NULL);
}
