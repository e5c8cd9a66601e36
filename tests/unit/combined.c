#include "unit/support/cmocka_rows.h"

#include "swap/combined.h"
#include "swap/note.h"
#include "unit/support/build_swaps.h"
#include "unit/support/in_english.h"

#include <stdint.h>

/* 1 in `keeps` for each of these. */
enum {
    FAT_AND_BULK = 1 << KEPT_FAT | 1 << KEPT_BULK,
    WATER_AND_FAT = 1 << KEPT_FREE_WATER | 1 << KEPT_FAT
};

static combination two_by_one(larder *l, const char *first, double first_g, const char *second,
                              double second_g, const char *to) {
    return (combination){
        .goes = {{larder_find(l, first), first_g}, {larder_find(l, second), second_g}},
        .to = {larder_find(l, to)},
        .goes_count = 2,
        .comes_count = 1,
        .batch_g = 500,
        .exactly = true};
}

static combination one_by_two(larder *l, const char *from, double grams, const char *to,
                              const char *also) {
    return (combination){.goes = {{larder_find(l, from), grams}},
                         .to = {larder_find(l, to), larder_find(l, also)},
                         .goes_count = 1,
                         .comes_count = 2,
                         .batch_g = 500,
                         .exactly = true};
}

/* Worked by hand from the larder's figures. An egg has 76.15 % water and 9.51 % fat, white 87.57 %
 * and 0.17 %, butter 15.87 % and 81.11 %:
 *     0.8757 w + 0.1587 b = 38.075
 *     0.0017 w + 0.8111 b = 4.755        b = (4.755 - 0.0017 w) / 0.8111, w = 42.43, b = 5.773 */
static void an_egg_is_white_and_butter(void **state) {
    (void)state;
    larder *l = larder_new();
    combination of = one_by_two(l, "egg", 50, "egg white", "butter");
    of.keeps = WATER_AND_FAT;
    combined_amounts by = combined_amounts_of(l->a, &of);
    assert_true(by.possible && !by.in_the_way);
    expect_near("egg", by.goes_g[0], 50, 1e-9);
    expect_near("egg white", by.comes_g[0].typical, 42.43, 0.02);
    expect_near("butter", by.comes_g[1].typical, 5.773, 0.005);
    larder_free(l);
}

/* Half of the flour may go, all of the butter; the butter's 40 g of 0.8111 fat bind: with x flour
 * (0.0912 fat, 0.8233 dry), y = 40 butter (0.8111, 0.0272) and z almond meal (0.4993, 0.4566):
 *     0.0912 x + 32.444 = 0.4993 z
 *     0.8233 x +  1.088 = 0.4566 z       x = 38.63, z = 72.03 */
static void as_much_goes_as_the_scarcer_of_two_lets(void **state) {
    (void)state;
    larder *l = larder_new();
    combination of = two_by_one(l, "oat flour", 100, "butter", 40, "almond meal");
    of.keeps = FAT_AND_BULK;
    combined_amounts by = combined_amounts_of(l->a, &of);
    assert_true(by.possible);
    expect_near("butter", by.goes_g[1], 40, 1e-6);
    expect_near("flour", by.goes_g[0], 38.63, 0.02);
    expect_near("almond meal", by.comes_g[0].typical, 72.03, 0.02);
    of.most[1] = 0.25;
    combined_amounts less = combined_amounts_of(l->a, &of);
    expect_near("a quarter of the butter", less.goes_g[1], 10, 1e-6);
    expect_near("the flour with it", less.goes_g[0], by.goes_g[0] / 4, 1e-6);
    larder_free(l);
}

static void what_is_kept_is_kept(larder *l, const combination *of, const combined_amounts *by,
                                 const char *name) {
    balance goes = {0}, comes = {0}, one;
    for (size_t i = 0; i < of->goes_count; i++) {
        one = balance_of_ingredient(of->goes[i].what, by->goes_g[i]);
        goes = balance_sum(&goes, &one);
    }
    for (size_t i = 0; i < of->comes_count; i++) {
        one = balance_of_ingredient(of->to[i], by->comes_g[i].typical);
        comes = balance_sum(&comes, &one);
    }
    const double kept_g[KEPT_COUNT][2] = {
        [KEPT_WEIGHT] = {goes.batch_g, comes.batch_g},
        [KEPT_FREE_WATER] = {balance_free_cold_g(&goes).typical,
                             balance_free_cold_g(&comes).typical},
        [KEPT_BULK] = {goes.batch_g - goes.water_g - goes.fat_g,
                       comes.batch_g - comes.water_g - comes.fat_g},
        [KEPT_FAT] = {goes.fat_g, comes.fat_g},
        [KEPT_SETTING] = {goes.setting_g, comes.setting_g},
        [KEPT_SWEETNESS] = {goes.sweetness_g, comes.sweetness_g},
    };
    for (size_t k = 0; k < KEPT_COUNT; k++)
        if (of->keeps >> k & 1u)
            expect_near(arena_format(l->a, "%s: %s", name, kept_word((kept_thing)k)), kept_g[k][1],
                        kept_g[k][0], kept_noticed((kept_thing)k) * of->batch_g + 1e-6);
}

static void times(combination *of, double by) {
    of->batch_g *= by;
    for (size_t i = 0; i < of->goes_count; i++)
        of->goes[i].grams *= by;
}

static const char *const foods[] = {"oat flour", "coconut flour", "almond meal", "almond butter",
                                    "butter",    "egg",           "egg white",   "apple purée",
                                    "sugar",     "water",         "maple syrup", "oat milk"};

/* Every two by every one of the larder's, and every one by every two. */
typedef void each_combination(larder *l, combination *of, const char *name);

static void for_all(larder *l, each_combination *check) {
    static const unsigned keeps[] = {KEPT_USUALLY, FAT_AND_BULK, WATER_AND_FAT,
                                     1 << KEPT_SWEETNESS | 1 << KEPT_FREE_WATER};
    for (size_t n = 0; n < COUNT(foods) * COUNT(foods) * COUNT(foods) * COUNT(keeps); n++) {
        size_t i = n % COUNT(foods), j = n / COUNT(foods) % COUNT(foods),
               k = n / COUNT(foods) / COUNT(foods) % COUNT(foods);
        if (i == j || j == k || i == k)
            continue;
        combination two = two_by_one(l, foods[i], 80, foods[j], 60, foods[k]);
        combination one = one_by_two(l, foods[i], 80, foods[j], foods[k]);
        two.keeps = one.keeps = keeps[n / COUNT(foods) / COUNT(foods) / COUNT(foods)];
        const char *name = arena_format(l->a, "%s, %s, %s", foods[i], foods[j], foods[k]);
        check(l, &two, name);
        check(l, &one, name);
    }
}

static size_t possible, impossible;

static void holds(larder *l, combination *of, const char *name) {
    combined_amounts by = combined_amounts_of(l->a, of);
    if (by.possible == (by.in_the_way != NULL))
        fail_msg("%s: neither amounts nor a reason", name);
    by.possible ? possible++ : impossible++;
    if (!by.possible)
        return;
    what_is_kept_is_kept(l, of, &by, name);
    for (size_t i = 0; i < of->goes_count; i++)
        if (by.goes_g[i] <= 0 || by.goes_g[i] > of->goes[i].grams * (1 + 1e-9))
            fail_msg("%s: %f g go", name, by.goes_g[i]);
    of->exactly = false;
    by = combined_amounts_of(l->a, of);
    what_is_kept_is_kept(l, of, &by, name);
}

static void amounts_keep_what_is_to_be_kept_or_say_why_not(void **state) {
    (void)state;
    larder *l = larder_new();
    possible = impossible = 0;
    for_all(l, holds);
    assert_true(possible > 500 && impossible > 500);
    larder_free(l);
}

/* Some of what comes is the gram that each must at least be. */
static bool is_at_least(const combination *of, const combined_amounts *by) {
    for (size_t i = 0; i < of->comes_count; i++)
        if (by->comes_g[i].typical < 1.001)
            return true;
    return false;
}

/* Where the two kept things say as much of the same, there are no two equations, and the program
 * answers: water in two bottles. */
static void what_no_equations_give_the_program_does(void **state) {
    (void)state;
    larder *l = larder_new();
    combination of = one_by_two(l, "water", 80, "water", "oat milk");
    of.keeps = 1u << KEPT_WEIGHT | 1u << KEPT_FREE_WATER | 1u << KEPT_BULK;
    combined_amounts by = combined_amounts_of(l->a, &of);
    assert_true(by.possible);
    expect_near("weight", by.comes_g[0].typical + by.comes_g[1].typical, 80, 1);
    assert_true(by.comes_g[1].typical < 3); /* oat milk brings bulk that is not to be there */
    larder_free(l);
}

/* Before moving to spoons. */
static void scales(larder *l, combination *of, const char *name) {
    combined_amounts by = combined_amounts_of(l->a, of);
    times(of, 3);
    combined_amounts thrice = combined_amounts_of(l->a, of);
    if (!by.possible || !thrice.possible || is_at_least(of, &by))
        return;
    for (size_t i = 0; i < of->goes_count; i++)
        expect_near(name, thrice.goes_g[i], 3 * by.goes_g[i], 1e-3);
    for (size_t i = 0; i < of->comes_count; i++)
        expect_near(name, thrice.comes_g[i].typical, 3 * by.comes_g[i].typical, 1e-3);
}

static void a_larger_recipe_has_larger_amounts(void **state) {
    (void)state;
    larder *l = larder_new();
    for_all(l, scales);
    larder_free(l);
}

/* By whole teaspoons, or quarters; the weight misses by no more than half of each. */
static void amounts_are_measured_in_spoons(void **state) {
    (void)state;
    larder *l = larder_new();
    combination of = two_by_one(l, "coconut flour", 60, "apple purée", 120, "almond meal");
    of.keeps = KEPT_USUALLY;
    of.exactly = false;
    combined_amounts by = combined_amounts_of(l->a, &of);
    const ingredient *things[] = {of.goes[0].what, of.goes[1].what, of.to[0]};
    const double grams[] = {by.goes_g[0], by.goes_g[1], by.comes_g[0].typical};
    assert_true(by.possible);
    for (size_t i = 0; i < COUNT(things); i++) {
        range room;
        const range *spoon = ingredient_measure(things[i], span_of("tsp"), &room);
        assert_non_null(spoon);
        double spoons = grams[i] / spoon->typical;
        if (i || grams[i] < 30) /* half of the flour, 30 g, may go whole */
            expect_near(things[i]->name, spoons * 4, round(spoons * 4), 1e-6);
    }
    expect_near("weight", grams[2], grams[0] + grams[1], 4);
    assert_true(by.comes_g[0].low < grams[2] && grams[2] < by.comes_g[0].high);
    larder_free(l);
}

static void what_stands_in_the_way_is_said(void **state) {
    (void)state;
    larder *l = larder_new();
    combination of = two_by_one(l, "oat flour", 100, "butter", 0.2, "almond meal");
    of.keeps = FAT_AND_BULK;
    of.batch_g = 20;
    combined_amounts by = combined_amounts_of(l->a, &of);
    assert_false(by.possible);
    expect_text("too little butter", in_english(l->a, by.in_the_way),
                "There is not enough butter in the recipe to make up the fat: it would take 3.4 g "
                "more than may go.");
    of = one_by_two(l, "almond butter", 80, "coconut flour", "egg white");
    of.keeps = FAT_AND_BULK;
    by = combined_amounts_of(l->a, &of);
    expect_text(
        "neither is fat", in_english(l->a, by.in_the_way),
        "No amount of coconut flour with egg white keeps the fat of what goes: 37 g would be "
        "missing.");
    larder_free(l);
}

/* -- in a recipe ------------------------------------------------------------------------------ */

static swap_rule *egg_rule(larder *l) {
    swap_rule *rule = larder_rule(l, "white-and-fat-for-egg", by_name(l, "egg"),
                                  by_name(l, "egg white"), VERDICT_ADJUST);
    LIST_ADD(l->a, &rule->with, by_family(FAMILY_FAT));
    rule->amount = AMOUNT_MATCH_BALANCE;
    rule->keeps = WATER_AND_FAT;
    return rule;
}

static void one_by_two_takes_the_fat_that_the_recipe_has(void **state) {
    (void)state;
    larder *l = larder_new();
    egg_rule(l);
    recipe_facts about = larder_facts(
        l, larder_recipe(l, "cake",
                         (portion_of[]){{"egg", 100}, {"oat flour", 100}, {"butter", 30}}, 3));
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    assert_int_equal(notes.count, 1);
    const swap_note *note = &notes.items[0];
    assert_ptr_equal(note->to, larder_find(l, "egg white"));
    assert_ptr_equal(note->also_to, larder_find(l, "butter"));
    expect_near("egg", note->from_g, 100, 0);
    assert_true(note->to_g > 80 && note->to_g < 90 && note->also_to_g > 10 && note->also_to_g < 13);
    assert_int_equal(note->gained, 0); /* milk and egg are there already */
    expect_near("free water", balance_free_cold_g(&note->after).typical,
                balance_free_cold_g(&note->before).typical, 2);
    decided asked = {0, SIZE_MAX, note->also_to, note->to, {0}};
    swap_note same = note_of_combined(l->a, &l->book, &about, &asked);
    assert_int_equal(same.says, VERDICT_ADJUST);
    larder_free(l);
}

static void what_no_amounts_make_possible_is_not_advised(void **state) {
    (void)state;
    larder *l = larder_new();
    swap_rule *rule = larder_rule(l, "water-for-sugar-and-butter", by_name(l, "sugar"),
                                  by_name(l, "water"), VERDICT_WORKS);
    LIST_ADD(l->a, &rule->replace, by_name(l, "butter"));
    rule->amount = AMOUNT_MATCH_BALANCE;
    rule->keeps = FAT_AND_BULK;
    recipe_facts about =
        larder_facts(l, larder_recipe(l, "cake", (portion_of[]){{"sugar", 10}, {"butter", 10}}, 2));
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    assert_int_equal(notes.count, 1);
    assert_int_equal(notes.items[0].says, VERDICT_AVOID);
    assert_non_null(notes.items[0].in_the_way);
    assert_true(notes.items[0].to_g == 0 && !notes.items[0].past_rescue);
    larder_free(l);
}

/* The author's word on the recipe goes before the rules, two by one and one by two alike. */
static void the_authors_own_word_goes_first(void **state) {
    (void)state;
    larder *l = larder_new();
    egg_rule(l);
    swap_rules own = {0};
    swap_rule two =
        rule_of(l, "swap-1", by_name(l, "oat flour"), by_name(l, "almond meal"), VERDICT_DIFFERENT);
    LIST_ADD(l->a, &two.replace, by_name(l, "butter"));
    swap_rule split =
        rule_of(l, "swap-2", by_name(l, "egg"), by_name(l, "egg white"), VERDICT_WORKS);
    LIST_ADD(l->a, &split.with, by_name(l, "butter"));
    two.by = split.by = SAID_BY_RECIPE;
    two.amount = split.amount = AMOUNT_MATCH_BALANCE;
    two.keeps = FAT_AND_BULK;
    split.keeps = WATER_AND_FAT;
    LIST_ADD(l->a, &own, two);
    LIST_ADD(l->a, &own, split);
    recipe *r = larder_recipe(l, "cake",
                              (portion_of[]){{"egg", 100}, {"butter", 40}, {"oat flour", 100}}, 3);
    r->own_swaps = &own;
    recipe_facts about = larder_facts(l, r);
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    assert_int_equal(notes.count, 2);
    for (size_t i = 0; i < notes.count; i++) {
        assert_int_equal(notes.items[i].by.by, SAID_BY_RECIPE);
        assert_true(notes.items[i].to_g > 0);
    }
    decided asked = {.first = 1, .second = 2, .to = larder_find(l, "almond meal")};
    assert_int_equal(note_of_combined(l->a, &l->book, &about, &asked).says, VERDICT_DIFFERENT);
    larder_free(l);
}

/* Any two by anything would be hundreds of notes. */
static void a_wide_rule_does_not_fill_the_page(void **state) {
    (void)state;
    larder *l = larder_new();
    const selector anything = {0};
    swap_rule *rule = larder_rule(l, "wide", anything, anything, VERDICT_ADJUST);
    LIST_ADD(l->a, &rule->replace, anything);
    rule->amount = AMOUNT_MATCH_BALANCE;
    rule->keeps = FAT_AND_BULK;
    recipe_facts about = larder_facts(
        l, larder_recipe(
               l, "cake",
               (portion_of[]){{"sugar", 50}, {"butter", 50}, {"oat flour", 90}, {"egg", 50}}, 4));
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    assert_int_equal(notes.count, 60);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_egg_is_white_and_butter),
        cmocka_unit_test(as_much_goes_as_the_scarcer_of_two_lets),
        cmocka_unit_test(amounts_keep_what_is_to_be_kept_or_say_why_not),
        cmocka_unit_test(what_no_equations_give_the_program_does),
        cmocka_unit_test(a_larger_recipe_has_larger_amounts),
        cmocka_unit_test(amounts_are_measured_in_spoons),
        cmocka_unit_test(what_stands_in_the_way_is_said),
        cmocka_unit_test(one_by_two_takes_the_fat_that_the_recipe_has),
        cmocka_unit_test(what_no_amounts_make_possible_is_not_advised),
        cmocka_unit_test(the_authors_own_word_goes_first),
        cmocka_unit_test(a_wide_rule_does_not_fill_the_page),
    };
    return cmocka_run_group_tests_name("combined", tests, NULL, NULL);
}
