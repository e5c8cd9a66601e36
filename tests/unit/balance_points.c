/* swap/balance_points.h and swap/exchange.h: one swap at three points. */
#include "unit/support/cmocka_rows.h"

#include "swap/balance_points.h"
#include "swap/balance_quantities.h"
#include "unit/support/build_swaps.h"

#include <stdint.h>

enum { LINES = 6 };

static const portion_of muffins[LINES] = {
    {"pea protein isolate", 60}, {"oat flour", 100}, {"egg", 100},
    {"oat milk", 150},           {"sugar", 60},      {"baking powder", 6}};

static swap_note ruled(larder *l, const recipe_facts *about, const char *from, const char *to,
                       verdict says) {
    l->book.rules.count = 0;
    larder_rule(l, "all", (selector){0}, (selector){0}, says)->ratio = 0.8;
    rule_book_index(l->a, &l->book);
    return note_of(l->a, &l->book, about, larder_line(l, about->of, from), larder_find(l, to));
}

static void expect_same_balance(const char *row, const balance *got, const balance *wanted) {
    expect_near(row, got->water_g, wanted->water_g, 1e-9);
    expect_near(row, got->taken_cold_g.typical, wanted->taken_cold_g.typical, 1e-9);
    expect_near(row, got->held_heated_g.typical, wanted->held_heated_g.typical, 1e-9);
    expect_near(row, got->dry_g, wanted->dry_g, 1e-9);
    expect_near(row, got->lost_g, wanted->lost_g, 1e-9);
    expect_near(row, got->batch_g, wanted->batch_g, 1e-9);
}

/* What is compared is what the note itself says, where all of the recipe is mixed. */
static void the_ruled_point_is_that_of_the_note(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe_facts about = larder_facts(l, larder_recipe(l, "muffin", muffins, LINES));
    swap_note note =
        ruled(l, &about, "pea protein isolate", "whey protein isolate", VERDICT_ADJUST);
    balance_comparison of = balance_compare(&about, &note);
    expect_same_balance("before", &of.before, &note.before);
    expect_same_balance("as ruled", &of.at[POINT_AS_RULED].after, &note.after);
    expect_near("amount", of.at[POINT_AS_RULED].to_g.typical, 48, 1e-9);
    expect_near("equal weight", of.at[POINT_EQUAL_WEIGHT].to_g.typical, 60, 1e-9);
    expect_near("no liquid", of.at[POINT_EQUAL_WEIGHT].liquid_g.typical, 0, 0);
    assert_true(of.at[POINT_BEST].there);
    larder_free(l);
}

static void nothing_is_promised_where_it_is_to_be_avoided(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe_facts about = larder_facts(l, larder_recipe(l, "muffin", muffins, LINES));
    swap_note note = ruled(l, &about, "pea protein isolate", "whey protein isolate", VERDICT_AVOID);
    balance_comparison of = balance_compare(&about, &note);
    assert_false(of.at[POINT_AS_RULED].there);
    assert_true(of.at[POINT_EQUAL_WEIGHT].there && of.at[POINT_BEST].there);
    expect_same_balance("the note's is at equal weight", &of.at[POINT_EQUAL_WEIGHT].after,
                        &note.after);
    larder_free(l);
}

/* What is put beside a bake is not of its balance: neither its weight nor its loss. The mix loses
 * its share before the swap as after it. */
static void a_part_has_its_own_balance(void **state) {
    (void)state;
    larder *l = larder_new();
    static const portion_of lines[] = {{"pea protein isolate", 60},
                                       {"oat flour", 100},
                                       {"egg", 100},
                                       {"oat milk", 150},
                                       {"almond butter", 80}};
    recipe *r = larder_recipe(l, "muffin", lines, COUNT(lines));
    larder_group(l, r, "To serve", 4);
    recipe_facts about = larder_facts(l, r);
    swap_note note = ruled(l, &about, "pea protein isolate", "brown rice protein", VERDICT_ADJUST);
    balance_comparison of = balance_compare(&about, &note);
    expect_near("the mix alone", of.before.batch_g, 410, 1e-9);
    expect_near("loses its share", of.before.lost_g, 41, 1e-9);
    expect_near("and after", of.at[POINT_EQUAL_WEIGHT].after.lost_g, 41, 1e-9);
    /* by hand: heated uptakes 3.2 and 2.5, water 6 and 5 % of 60 g */
    expect_near("in the bake", of.at[POINT_EQUAL_WEIGHT].bake_change_g.typical,
                UPTAKE_IN_BATTER * 60 * (3.2 - 2.5) - 0.6, 1e-9);
    note = ruled(l, &about, "almond butter", "cashew butter", VERDICT_WORKS);
    of = balance_compare(&about, &note);
    expect_near("the topping alone", of.before.batch_g, 80, 1e-9);
    expect_near("loses nothing", of.before.lost_g, 0, 0);
    expect_bool("and is not baked", of.heated, false);
    larder_free(l);
}

/* The range of a change: only what goes, what comes and the share of uptakes that counts are moved.
 * By hand, 60 g of rice (1.5, 2.3, 3.9) for 60 g of pea (1.2, 3, 6), cold, 0.6 g less water:
 * -0.6 - 0.375 x 60 x (2.3 - 3) = 15.15. Rice at its low: 33.15, at its high: -20.85; pea at its
 * low: -25.35, at its high: 82.65; the share at 0.25: 9.9, at 0.5: 20.4. */
static void a_change_carries_the_ranges_of_what_moves(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe_facts about = larder_facts(l, larder_recipe(l, "muffin", muffins, LINES));
    swap_note note = ruled(l, &about, "pea protein isolate", "brown rice protein", VERDICT_ADJUST);
    range change = balance_compare(&about, &note).at[POINT_EQUAL_WEIGHT].bowl_change_g;
    expect_near("typical", change.typical, 15.15, 1e-9);
    expect_near("high", change.high, 15.15 + sqrt(18 * 18 + 67.5 * 67.5 + 5.25 * 5.25), 1e-9);
    expect_near("low", change.low, 15.15 - sqrt(36 * 36 + 40.5 * 40.5 + 5.25 * 5.25), 1e-9);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_ruled_point_is_that_of_the_note),
        cmocka_unit_test(nothing_is_promised_where_it_is_to_be_avoided),
        cmocka_unit_test(a_part_has_its_own_balance),
        cmocka_unit_test(a_change_carries_the_ranges_of_what_moves),
    };
    return cmocka_run_group_tests_name("balance_points", tests, NULL, NULL);
}
