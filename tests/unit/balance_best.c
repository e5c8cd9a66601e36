#include "unit/support/cmocka_rows.h"

#include "swap/balance_best.h"
#include "swap/balance_quantities.h"
#include "unit/support/build_swaps.h"

enum { LINES = 5 };

static best_amounts best_of(larder *l, const recipe *r, const char *from, const char *to) {
    recipe_facts about = larder_facts(l, r);
    balance before = balance_of(r);
    size_t line = larder_line(l, r, from);
    exchange made = {.about = &about,
                     .replaced = facts_same_lines(&about, line),
                     .before = &before,
                     .goes = {{r->lines.items[line].what, r->weights[line].grams}},
                     .goes_count = 1,
                     .comes = {larder_find(l, to), 0}};
    best_amounts best = {0};
    expect_bool(to, balance_best(&made, &best), true);
    return best;
}

/* What the header promises to make small, worked out anew from whole balances. */
static double squares(larder *l, const recipe *r, const char *from, const char *to, double to_g,
                      size_t liquid_line, double liquid_g) {
    recipe_facts about = larder_facts(l, r);
    balance before = balance_of(r);
    size_t line = larder_line(l, r, from);
    exchange made = {.about = &about,
                     .before = &before,
                     .goes = {{r->lines.items[line].what, r->weights[line].grams}},
                     .goes_count = 1,
                     .comes = {larder_find(l, to), to_g}};
    balance after = exchange_balance(&made, liquid_at(&about, liquid_line), liquid_g);
    double sum = BEST_WATER_WEIGHT *
                 pow((after.water_g - before.water_g) / balance_step_g(&before, BALANCE_BOWL), 2);
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++) {
        double wanted = balance_quantity_g(&before, q).typical;
        if ((q == BALANCE_BOWL || q == BALANCE_BAKE) && wanted >= 0)
            wanted += fmin(wanted / before.dry_g, FREE_PER_DRY_MOST) * (after.dry_g - before.dry_g);
        else if (q == BALANCE_BOWL)
            wanted *= after.taken_cold_g.typical / before.taken_cold_g.typical;
        else if (q == BALANCE_BAKE)
            wanted *= after.held_heated_g.typical / before.held_heated_g.typical;
        double off = (balance_quantity_g(&after, q).typical - wanted) / balance_step_g(&before, q);
        sum += balance_quantity_facts(q)->weight * off * off;
    }
    return sum;
}

static const struct {
    const char *kind, *from, *to;
    portion_of lines[LINES];
} swaps[] = {
    {"griddle cake",
     "pea protein isolate",
     "whey protein isolate",
     {{"pea protein isolate", 60}, {"egg white", 140}, {"water", 120}}},
    {"griddle cake",
     "whey protein isolate",
     "pea protein isolate",
     {{"whey protein isolate", 60}, {"egg white", 140}, {"oat flour", 40}}},
    {"muffin",
     "oat flour",
     "coconut flour",
     {{"oat flour", 150}, {"egg", 100}, {"oat milk", 200}, {"sugar", 60}}},
    {"muffin",
     "coconut flour",
     "oat flour",
     {{"coconut flour", 60}, {"egg", 150}, {"oat milk", 200}, {"sugar", 60}}},
    {"crust",
     "brown rice protein",
     "pea protein isolate",
     {{"brown rice protein", 90}, {"almond butter", 125}, {"water", 75}}},
    {"cookie",
     "sugar",
     "erythritol",
     {{"oat flour", 150}, {"egg", 50}, {"almond butter", 100}, {"sugar", 80}}},
};

/* No other amounts within the bounds come nearer: looked for on a fine grid. */
static void nothing_in_the_box_comes_nearer(void **state) {
    (void)state;
    larder *l = larder_new();
    for (size_t i = 0; i < COUNT(swaps); i++) {
        const recipe *r = larder_recipe(l, swaps[i].kind, swaps[i].lines, LINES);
        best_amounts best = best_of(l, r, swaps[i].from, swaps[i].to);
        double from_g = r->weights[larder_line(l, r, swaps[i].from)].grams;
        double least = squares(l, r, swaps[i].from, swaps[i].to, best.comes_g.typical, best.line,
                               best.liquid_g.typical);
        bool adds = best.liquid_g.typical > 0;
        double line_g = best.line == SIZE_MAX ? 0 : r->weights[best.line].grams;
        double most_g = LIQUID_RESCUES_MOST * r->batch_g;
        double low_g = adds ? 0 : -fmin(BEST_HELD_BACK_MOST * line_g, most_g);
        for (double x = BEST_LEAST; x <= 2; x += 0.03125)
            for (double share = 0; share <= 1; share += 0.03125) {
                double liquid_g = adds ? share * most_g : share * low_g;
                double other =
                    squares(l, r, swaps[i].from, swaps[i].to, x * from_g, best.line, liquid_g);
                if (other < least - 1e-6)
                    fail_msg("%s for %s: %.1f g and %+.1f g give %.4f, the best gives %.4f",
                             swaps[i].to, swaps[i].from, x * from_g, liquid_g, other, least);
            }
    }
    larder_free(l);
}

/* A thing for itself stays as it is. */
static void the_same_thing_keeps_its_amount(void **state) {
    (void)state;
    larder *l = larder_new();
    for (size_t i = 0; i < COUNT(swaps); i++) {
        const recipe *r = larder_recipe(l, swaps[i].kind, swaps[i].lines, LINES);
        best_amounts best = best_of(l, r, swaps[i].from, swaps[i].from);
        expect_near(swaps[i].from, best.comes_g.typical,
                    r->weights[larder_line(l, r, swaps[i].from)].grams, 1e-6);
        expect_near(swaps[i].from, best.liquid_g.typical, 0, 1e-6);
    }
    larder_free(l);
}

/* Common practice, no source: less whey than plant powder and liquid held back; more liquid for a
 * plant powder in place of whey; clearly less coconut flour than oat flour, and liquid with it. */
static void the_best_amounts_go_where_bakers_go(void **state) {
    (void)state;
    larder *l = larder_new();
    best_amounts whey = best_of(l, larder_recipe(l, swaps[0].kind, swaps[0].lines, LINES),
                                swaps[0].from, swaps[0].to);
    assert_true(whey.comes_g.typical < 55 && whey.liquid_g.typical < -10);
    best_amounts coconut = best_of(l, larder_recipe(l, swaps[2].kind, swaps[2].lines, LINES),
                                   swaps[2].from, swaps[2].to);
    assert_true(coconut.comes_g.typical < 0.85 * 150 && coconut.liquid_g.typical > 10);
    /* 2.5 to 7 g/g of coconut flour must leave a wide range */
    assert_true(coconut.comes_g.high - coconut.comes_g.low > 30);
    larder_free(l);
}

static void the_bounds_hold(void **state) {
    (void)state;
    larder *l = larder_new();
    for (size_t b = 0; b < COUNT(swaps); b++) {
        const recipe *r = larder_recipe(l, swaps[b].kind, swaps[b].lines, LINES);
        double from_g = r->weights[larder_line(l, r, swaps[b].from)].grams;
        for (size_t i = 0; i < l->shelf.count; i++) {
            const ingredient *to = l->shelf.items[i];
            if (!balance_known(to) || to->sweetness > 0)
                continue;
            best_amounts best = best_of(l, r, swaps[b].from, to->name);
            double line_g = best.line == SIZE_MAX ? 0 : r->weights[best.line].grams;
            expect_bool(to->name, best.comes_g.low >= BEST_LEAST * from_g - 1e-9, true);
            expect_bool(to->name, best.comes_g.high <= BEST_MOST * from_g + 1e-9, true);
            double most = balance_water_per_g(to) > 0.5 ? 1 : BEST_HELD_BACK_MOST;
            expect_bool(to->name, best.liquid_g.low >= -most * line_g - 1e-9, true);
            expect_bool(to->name,
                        best.comes_g.low <= best.comes_g.typical + 1e-9 &&
                            best.comes_g.typical <= best.comes_g.high + 1e-9,
                        true);
        }
    }
    larder_free(l);
}

/* USDA SR28 01124 and 01173: 10.9 g of protein and 87.57 g of water in 100 g of white, 81.1 and 5.8
 * dried. So 80 g of white is 10 to 11 g dried and 70 g of water, and the other way round. */
static void dried_egg_is_wetted_again_and_liquid_egg_makes_room(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *liquid = larder_recipe(
        l, "muffin",
        (portion_of[]){{"oat flour", 150}, {"egg white", 80}, {"water", 120}, {"sugar", 60}}, 4);
    best_amounts dried = best_of(l, liquid, "egg white", "egg white powder");
    expect_near("powder", dried.comes_g.typical, 10.5, 3);
    expect_near("water", dried.liquid_g.typical, 70, 10);
    const recipe *dry = larder_recipe(
        l, "muffin",
        (portion_of[]){{"oat flour", 150}, {"egg white powder", 10}, {"water", 190}, {"sugar", 60}},
        4);
    best_amounts wet = best_of(l, dry, "egg white powder", "egg white");
    if (wet.comes_g.typical < 30 || wet.comes_g.typical + wet.liquid_g.typical > 20)
        fail_msg("%.0f g of white and %+.0f g of water", wet.comes_g.typical, wet.liquid_g.typical);
    larder_free(l);
}

static void nothing_is_found_without_uptakes(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(l, swaps[0].kind, swaps[0].lines, LINES);
    recipe_facts about = larder_facts(l, r);
    balance before = balance_of(r);
    exchange made = {.about = &about,
                     .before = &before,
                     .goes = {{r->lines.items[0].what, 60}},
                     .goes_count = 1,
                     .comes = {food(l->a, "hers", FAMILY_PROTEIN_POWDER, "whey", ORIGIN_DAIRY), 0}};
    best_amounts best = {.line = 7};
    expect_bool("a powder without uptake", balance_best(&made, &best), false);
    assert_int_equal(best.line, 7);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_in_the_box_comes_nearer),
        cmocka_unit_test(the_same_thing_keeps_its_amount),
        cmocka_unit_test(the_best_amounts_go_where_bakers_go),
        cmocka_unit_test(the_bounds_hold),
        cmocka_unit_test(dried_egg_is_wetted_again_and_liquid_egg_makes_room),
        cmocka_unit_test(nothing_is_found_without_uptakes),
    };
    return cmocka_run_group_tests_name("balance_best", tests, NULL, NULL);
}
