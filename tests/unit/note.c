#include "unit/support/cmocka_rows.h"

#include "swap/balance_points.h"
#include "swap/note.h"
#include "unit/support/build_swaps.h"

#include <stdint.h>

static const portion_of muffins[] = {{"pea protein isolate", 60},
                                     {"oat flour", 100},
                                     {"egg", 100},
                                     {"oat milk", 200},
                                     {"pea protein isolate", 30}};

/* One rule for whey in the place of pea; good until another is added. */
static swap_rule *whey_rule(larder *l, verdict says) {
    swap_rule *rule = larder_rule(l, "whey-for-pea", by_kind(l, FAMILY_PROTEIN_POWDER, "pea"),
                                  by_kind(l, FAMILY_PROTEIN_POWDER, "whey isolate"), says);
    rule->expect = "A thinner batter.";
    rule->because = "Whey takes up little water cold.";
    rule->also = "Bake it shorter.";
    return rule;
}

static swap_note whey_for_pea(larder *l, const recipe *r) {
    recipe_facts about = larder_facts(l, r);
    return note_of(l->a, &l->book, &about, larder_line(l, r, "pea protein isolate"),
                   larder_find(l, "whey protein isolate"));
}

static void a_note_holds_the_rules_word_and_amounts(void **state) {
    (void)state;
    larder *l = larder_new();
    swap_rule *rule = whey_rule(l, VERDICT_ADJUST);
    rule->ratio = 0.9;
    rule->by = SAID_BY_OWN_RULE;
    swap_note note = whey_for_pea(l, larder_recipe(l, "muffin", muffins, 5));
    assert_int_equal(note.says, VERDICT_ADJUST);
    assert_int_equal(note.by.by, SAID_BY_OWN_RULE);
    expect_near("both lines of pea", note.from_g, 90, 1e-9);
    expect_near("nine tenths", note.to_g, 81, 1e-9);
    assert_true(note.second_line == SIZE_MAX && note.second_from_g == 0);
    assert_true(note.liquid_change_g < -50 && note.liquid_low_g < note.liquid_change_g);
    assert_int_equal(note.liquid_line, 3);
    assert_true(note.uptake_known);
    expect_near("batch as written", note.before.batch_g, 490, 1e-9);
    expect_near("batch swapped", note.after.batch_g, 490 - 90 + 81 + note.liquid_change_g, 1e-9);
    expect_text("expect", note.expect, "A thinner batter.");
    expect_text("because", note.because, "Whey takes up little water cold.");
    expect_text("also", note.also, "Bake it shorter.");
    expect_text("basis", note.basis, "common practice");
    larder_free(l);
}

static void liquid_is_kept_where_the_rule_says_so(void **state) {
    (void)state;
    larder *l = larder_new();
    whey_rule(l, VERDICT_WORKS)->keep_liquid = true;
    swap_note note = whey_for_pea(l, larder_recipe(l, "muffin", muffins, 5));
    assert_true(note.liquid_change_g == 0 && note.liquid_high_g == 0);
    assert_true(note.liquid_line == SIZE_MAX && !note.past_rescue);
    assert_true(balance_free_cold_g(&note.after).typical >
                balance_free_cold_g(&note.before).typical + 50);
    larder_free(l);
}

/* What is advised against, untried or lacks a figure promises no amount, but shows the balance and
 * macros at equal weight. */
static void without_a_promise_the_weight_is_equal(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(l, "muffin", muffins, 5);
    const struct {
        const char *name;
        bool ruled;
        verdict says;
        amount_rule amount;
    } rows[] = {{"avoid", true, VERDICT_AVOID, AMOUNT_WEIGHT},
                {"untried", false, VERDICT_UNTRIED, AMOUNT_WEIGHT},
                {"a figure is missing", true, VERDICT_WORKS, AMOUNT_MATCH_SWEETNESS}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        l->book.rules.count = 0;
        if (rows[i].ruled)
            whey_rule(l, rows[i].says)->amount = rows[i].amount;
        swap_note note = whey_for_pea(l, r);
        expect_text(rows[i].name, verdict_word(note.says), verdict_word(rows[i].says));
        expect_near(rows[i].name, note.from_g, 90, 1e-9);
        expect_near(rows[i].name, note.to_g + note.to_high_g + note.to_low_g, 0, 1e-12);
        expect_near(rows[i].name, note.liquid_change_g, 0, 1e-12);
        expect_near(rows[i].name, note.after.batch_g, 490, 1e-9);
        expect_near(rows[i].name, note.change.of.of[NUTRIENT_PROTEIN], 0.9 * (84.5 - 80) / 4, 1e-9);
    }
    larder_free(l);
}

/* 60 g of whey in 195 g of cookie: plant powder would want a quarter of the batch in water. */
static void past_rescue_is_said_of_a_swap_to_avoid_too(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(l, "cookie",
                                    (portion_of[]){{"whey protein isolate", 60},
                                                   {"apple purée", 120},
                                                   {"coconut flour", 15},
                                                   {"baking powder", 3}},
                                    4);
    larder_rule(l, "plant-for-whey", by_kind(l, FAMILY_PROTEIN_POWDER, "whey"),
                with_origin(by_family(FAMILY_PROTEIN_POWDER), ORIGIN_PLANT), VERDICT_AVOID);
    recipe_facts about = larder_facts(l, r);
    swap_note pea = note_of(l->a, &l->book, &about, 0, larder_find(l, "pea protein isolate"));
    assert_true(pea.says == VERDICT_AVOID && pea.past_rescue && pea.liquid_change_g == 0);
    assert_true(pea.liquid_needed_g > 45); /* to add, not to hold back */
    assert_true(balance_free_cold_g(&pea.after).typical <
                balance_free_cold_g(&pea.before).typical - 40);
    larder_free(l);
}

/* Muffins with yogurt to serve: whey for pea holds back egg of the batter, not the yogurt, and what
 * the yogurt holds counts for nothing in it. */
static void nothing_is_held_back_from_what_stands_on_top(void **state) {
    (void)state;
    larder *l = larder_new();
    whey_rule(l, VERDICT_ADJUST);
    const portion_of lines[] = {
        {"pea protein isolate", 30}, {"oat flour", 100}, {"egg white", 200}, {"yogurt", 400}};
    recipe *plain = larder_recipe(l, "muffin", lines, 3);
    recipe *topped = larder_recipe(l, "muffin", lines, 4);
    larder_group(l, topped, "To serve", 3);
    swap_note alone = whey_for_pea(l, plain), served = whey_for_pea(l, topped);
    assert_true(alone.liquid_change_g < -20);
    expect_near("as without it", served.liquid_change_g, alone.liquid_change_g, 1e-9);
    expect_near("range too", served.liquid_low_g, alone.liquid_low_g, 1e-9);
    assert_int_equal(served.liquid_line, 2);
    expect_near("but the batch is all of it", served.before.batch_g, 730, 1e-9);
    larder_free(l);
}

static void a_topping_is_not_thinned(void **state) {
    (void)state;
    larder *l = larder_new();
    larder_rule(l, "dairy", by_family(FAMILY_DAIRY), by_family(FAMILY_DAIRY), VERDICT_ADJUST);
    recipe *r = larder_recipe(l, "muffin", (portion_of[]){{"egg", 100}, {"yogurt", 200}}, 2);
    larder_group(l, r, "On top", 1);
    recipe_facts about = larder_facts(l, r);
    swap_note note = note_of(l->a, &l->book, &about, 1, larder_find(l, "whole milk"));
    assert_true(note.to_g == 200 && note.liquid_needed_g == 0 && !note.past_rescue);
    larder_free(l);
}

/* Butter and egg white by egg: the butter goes whole and its milk with it, egg stays. */
static void of_two_the_one_that_goes_whole_takes_its_allergens(void **state) {
    (void)state;
    larder *l = larder_new();
    swap_rule *rule =
        larder_rule(l, "two", by_name(l, "egg white"), by_name(l, "egg"), VERDICT_ADJUST);
    LIST_ADD(l->a, &rule->replace, by_family(FAMILY_FAT));
    rule->amount = AMOUNT_MATCH_BALANCE;
    rule->keeps = KEPT_USUALLY;
    recipe_facts about = larder_facts(
        l, larder_recipe(l, "cake", (portion_of[]){{"egg white", 200}, {"butter", 10}}, 2));
    swap_note note = notes_of(l->a, &l->book, &about, false).items[0];
    expect_near("butter", note.second_from_g, 10, 0);
    assert_true(note.from_g < 200);
    assert_int_equal(note.lost, HOLDS(MILK));
    assert_int_equal(note.diets_gained, 1u << DIET_NO_DAIRY);
    larder_free(l);
}

/* 90 g of pea for whey is more than the batter bears: of a rule for many recipes the figures'
 * amounts are taken, of this kitchen's own rule its own. */
static void figures_stand_in_for_a_general_rule_past_rescue(void **state) {
    (void)state;
    static const struct {
        const char *name;
        authority by;
        double ratio;
        bool stands_in;
    } rows[] = {
        {"a reference rule", SAID_BY_REFERENCE, 0.9, true},
        {"her own rule", SAID_BY_OWN_RULE, 0.9, false},
        {"what is near already", SAID_BY_REFERENCE, 0.47, false},
        {"more than twice as much", SAID_BY_REFERENCE, 2, false},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        larder *l = larder_new();
        swap_rule *rule = whey_rule(l, VERDICT_ADJUST);
        rule->ratio = rows[i].ratio;
        rule->by = rows[i].by;
        recipe *of = larder_recipe(l, "muffin", muffins, 5);
        swap_note note = whey_for_pea(l, of);
        recipe_facts about = larder_facts(l, of);
        balance_comparison compared = balance_compare(&about, &note);
        expect_bool(rows[i].name, note.ruled_g > 0, rows[i].stands_in);
        expect_near(rows[i].name, rows[i].stands_in ? note.ruled_g : note.to_g, 90 * rows[i].ratio,
                    1e-9);
        if (rows[i].stands_in) {
            const balance_at *best = &compared.at[POINT_BEST];
            expect_near(rows[i].name, note.to_g, best->to_g.typical, 1e-6);
            expect_near(rows[i].name, note.liquid_change_g, best->liquid_g.typical, 1e-6);
            assert_true(note.past_rescue && note.says == VERDICT_ADJUST);
        }
        larder_free(l);
    }
}

/* 20 g of the flour is on top: only the other 100 g change the dough's water. */
static void of_an_ingredient_in_both_only_the_mixed_part_moves_liquid(void **state) {
    (void)state;
    larder *l = larder_new();
    larder_rule(l, "coconut", by_kind(l, FAMILY_FLOUR, "oat"), by_kind(l, FAMILY_FLOUR, "coconut"),
                VERDICT_ADJUST)
        ->by = SAID_BY_OWN_RULE;
    const portion_of lines[] = {
        {"oat flour", 100}, {"egg", 100}, {"water", 150}, {"oat flour", 20}};
    recipe *plain = larder_recipe(l, "muffin", lines, 3),
           *both = larder_recipe(l, "muffin", lines, 4);
    larder_group(l, both, "For dusting", 3);
    recipe_facts about = larder_facts(l, plain), dusted = larder_facts(l, both);
    const ingredient *coconut = larder_find(l, "coconut flour");
    swap_note alone = note_of(l->a, &l->book, &about, 0, coconut);
    swap_note with = note_of(l->a, &l->book, &dusted, 0, coconut);
    expect_near("all of it is replaced", with.to_g, 120, 1e-9);
    expect_near("liquid", with.liquid_change_g, alone.liquid_change_g, 1e-9);
    larder_free(l);
}

static void no_two_for_one_reaches_from_the_dough_to_the_top(void **state) {
    (void)state;
    larder *l = larder_new();
    selector flour = by_kind(l, FAMILY_FLOUR, "coconut");
    swap_rule *rule =
        larder_rule(l, "two", flour, by_kind(l, FAMILY_MEAL, "almond"), VERDICT_ADJUST);
    LIST_ADD(l->a, &rule->replace, by_family(FAMILY_FRUIT_PUREE));
    recipe *r =
        larder_recipe(l, "cookie", (portion_of[]){{"coconut flour", 40}, {"apple purée", 90}}, 2);
    recipe_facts about = larder_facts(l, r);
    assert_int_equal(notes_of(l->a, &l->book, &about, false).count, 1);
    larder_group(l, r, "On top", 1);
    about = larder_facts(l, r);
    assert_int_equal(notes_of(l->a, &l->book, &about, false).count, 0);
    larder_free(l);
}

static void allergens_and_diets_are_those_of_the_whole_recipe(void **state) {
    (void)state;
    larder *l = larder_new();
    const portion_of bar[] = {{"pea protein isolate", 60},
                              {"oat flour", 90},
                              {"almond meal", 20},
                              {"almond butter", 100},
                              {"maple syrup", 60}};
    recipe_facts about = larder_facts(l, larder_recipe(l, "no-bake", bar, 5));
    const struct {
        const char *name, *to;
        size_t line;
        allergen_set gained, lost;
        diet_set diets_lost, diets_gained;
    } rows[] = {
        {"whey for pea", "whey protein isolate", 0, HOLDS(MILK), 0,
         1u << DIET_VEGAN | 1u << DIET_NO_DAIRY, 0},
        {"rice for pea", "brown rice protein", 0, 0, 0, 0, 0},
        {"wheat for oats", "all-purpose flour", 1, HOLDS(WHEAT), HOLDS(OATS), 0, 0},
        {"cashew butter, almond stays in the meal", "cashew butter", 3, HOLDS(CASHEW), 0, 0, 0},
        {"coconut for oats", "coconut flour", 1, HOLDS(COCONUT), HOLDS(OATS), 0,
         1u << DIET_NO_GLUTEN},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        swap_note note = note_of(l->a, &l->book, &about, rows[i].line, larder_find(l, rows[i].to));
        expect_near(rows[i].name, note.gained, rows[i].gained, 0);
        expect_near(rows[i].name, note.lost, rows[i].lost, 0);
        expect_near(rows[i].name, note.diets_lost, rows[i].diets_lost, 0);
        expect_near(rows[i].name, note.diets_gained, rows[i].diets_gained, 0);
    }
    larder_free(l);
}

/* -- trials ---------------------------------------------------------------------------------- */

static trial *whey_trial(larder *l, double replaced_g, double with_g, double liquid_g) {
    static const unit gram = {"g", UNIT_MASS, 1};
    trial bake = {.recipe = "test",
                  .replaced = {.what = larder_find(l, "pea protein isolate"),
                               .has_amount = replaced_g > 0,
                               .quantity = {replaced_g, replaced_g},
                               .in = &gram},
                  .with = {.what = larder_find(l, "whey protein isolate"),
                           .has_amount = with_g > 0,
                           .quantity = {with_g, with_g},
                           .in = &gram},
                  .has_amounts = replaced_g > 0 || with_g > 0,
                  .liquid_g = liquid_g,
                  .date = "2026-03-01",
                  .outcome = VERDICT_DIFFERENT,
                  .remarks = "Ran over the griddle."};
    LIST_ADD(l->a, &l->book.log, bake);
    return &l->book.log.items[l->book.log.count - 1];
}

static void a_trial_gives_its_amounts_in_proportion(void **state) {
    (void)state;
    larder *l = larder_new();
    const struct {
        const char *name;
        double replaced_g, with_g, liquid_g, to_g, change_g;
    } rows[] = {
        {"as tried", 90, 80, -20, 80, -20},
        {"half a batch was tried", 45, 40, -10, 80, -20},
        {"only the new was weighed", 0, 80, 15, 80, 15},
        {"only the old was weighed", 45, 0, 0, 90, 0},
        {"neither was", 0, 0, 0, 90, 0},
    };
    const recipe *r = larder_recipe(l, "muffin", muffins, 5);
    for (size_t i = 0; i < COUNT(rows); i++) {
        l->book.log.count = 0;
        whey_trial(l, rows[i].replaced_g, rows[i].with_g, rows[i].liquid_g);
        swap_note note = whey_for_pea(l, r);
        expect_near(rows[i].name, note.to_g, rows[i].to_g, 1e-9);
        expect_near(rows[i].name, note.liquid_change_g, rows[i].change_g, 1e-9);
        expect_bool(rows[i].name, note.liquid_line == 3, rows[i].change_g != 0);
        expect_text(rows[i].name, note.basis, "trial");
    }
    l->book.log.count = 0;
    whey_trial(l, 90, 80, -20)->outcome = VERDICT_AVOID;
    swap_note note = whey_for_pea(l, r);
    assert_true(note.to_g == 0 && note.liquid_change_g == 0);
    larder_free(l);
}

static void a_trial_tells_what_came_out(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(l, "muffin", muffins, 5);
    trial *bake = whey_trial(l, 90, 90, 0);
    expect_text("remarks alone", whey_for_pea(l, r).expect, "Ran over the griddle.");
    LIST_ADD(l->a, &bake->texture, "rubbery");
    LIST_ADD(l->a, &bake->texture, "dry");
    expect_text("with texture", whey_for_pea(l, r).expect,
                "Came out rubbery and dry. Ran over the griddle.");
    bake->remarks = NULL;
    expect_text("texture alone", whey_for_pea(l, r).expect, "Came out rubbery and dry.");
    larder_free(l);
}

/* Held back in the trial, but this recipe has nothing to hold back from. */
static void a_trials_liquid_needs_a_line(void **state) {
    (void)state;
    larder *l = larder_new();
    whey_trial(l, 90, 90, -20);
    swap_note note = whey_for_pea(
        l, larder_recipe(l, "bar", (portion_of[]){{"pea protein isolate", 90}, {"sugar", 90}}, 2));
    assert_true(note.liquid_change_g == 0 && note.liquid_line == SIZE_MAX);
    larder_free(l);
}

/* -- two for one ----------------------------------------------------------------------------- */

static const portion_of cookies[] = {
    {"whey protein isolate", 60}, {"apple purée", 120}, {"coconut flour", 40}, {"sugar", 40}};

static swap_rule *meal_rule(larder *l, amount_rule amount) {
    swap_rule *rule =
        larder_rule(l, "meal-for-flour-and-puree", by_kind(l, FAMILY_FLOUR, "coconut"),
                    by_kind(l, FAMILY_MEAL, "almond"), VERDICT_ADJUST);
    LIST_ADD(l->a, &rule->replace, by_family(FAMILY_FRUIT_PUREE));
    rule->amount = amount;
    rule->keeps = KEPT_USUALLY;
    return rule;
}

static void two_for_one_by_balance_keeps_weight_and_free_water(void **state) {
    (void)state;
    larder *l = larder_new();
    meal_rule(l, AMOUNT_MATCH_BALANCE);
    recipe_facts about = larder_facts(l, larder_recipe(l, "cookie", cookies, 4));
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    assert_int_equal(notes.count, 1);
    const swap_note *note = &notes.items[0];
    assert_true(note->line == 2 && note->second_line == 1);
    expect_near("flour that goes", note->from_g, 20, 1e-9);
    /* to what whole teaspoons leave */
    expect_near("weight", note->to_g, note->from_g + note->second_from_g, 1.5);
    expect_near("batch", note->after.batch_g, note->before.batch_g, 1.5);
    expect_near("free water", balance_free_cold_g(&note->after).typical,
                balance_free_cold_g(&note->before).typical, 1.5);
    assert_true(note->liquid_change_g == 0 && !note->past_rescue);
    /* a part of the old stays, and so does what it holds */
    assert_int_equal(note->gained, HOLDS(ALMOND));
    assert_int_equal(note->lost, 0);
    larder_free(l);
}

static void two_for_one_by_weight_takes_both_whole(void **state) {
    (void)state;
    larder *l = larder_new();
    meal_rule(l, AMOUNT_WEIGHT)->ratio = 0.5;
    recipe_facts about = larder_facts(l, larder_recipe(l, "cookie", cookies, 4));
    swap_note note = notes_of(l->a, &l->book, &about, false).items[0];
    expect_near("flour", note.from_g, 40, 1e-9);
    expect_near("purée", note.second_from_g, 120, 1e-9);
    expect_near("meal", note.to_g, 80, 1e-9);
    assert_int_equal(note.lost, HOLDS(COCONUT));
    assert_true(note.liquid_change_g > 0);
    assert_true(note.liquid_line == SIZE_MAX); /* the purée goes: plain water */
    larder_free(l);
}

/* -- all notes ------------------------------------------------------------------------------- */

static const portion_of cake[] = {
    {"sugar", 80},       {"egg white", 150},          {"almond butter", 60}, {"oat flour", 100},
    {"almond meal", 50}, {"pea protein isolate", 60}, {"oat flour", 20}};

static void add_cake_rules(larder *l) {
    selector powder = by_family(FAMILY_PROTEIN_POWDER);
    larder_rule(l, "powders", powder, powder, VERDICT_ADJUST);
    larder_rule(l, "whey", powder, by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), VERDICT_AVOID);
    larder_rule(l, "casein", powder, by_kind(l, FAMILY_PROTEIN_POWDER, "casein"), VERDICT_WORKS);
    larder_rule(l, "flours", by_family(FAMILY_FLOUR), by_family(FAMILY_FLOUR), VERDICT_DIFFERENT);
    larder_rule(l, "butters", by_family(FAMILY_NUT_BUTTER), by_family(FAMILY_NUT_BUTTER),
                VERDICT_WORKS);
    larder_rule(l, "eggs", by_family(FAMILY_EGG), by_family(FAMILY_EGG), VERDICT_DIFFERENT);
    larder_rule(l, "sweet", by_family(FAMILY_SWEETENER), by_family(FAMILY_SWEETENER),
                VERDICT_ADJUST)
        ->amount = AMOUNT_MATCH_SWEETNESS;
    swap_rule *two =
        larder_rule(l, "two", by_family(FAMILY_FLOUR), by_family(FAMILY_NUT_BUTTER), VERDICT_AVOID);
    LIST_ADD(l->a, &two->replace, by_family(FAMILY_SWEETENER));
}

static void notes_come_in_the_order_they_are_asked_for(void **state) {
    (void)state;
    larder *l = larder_new();
    add_cake_rules(l);
    recipe_facts about = larder_facts(l, larder_recipe(l, "cake", cake, 7));
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    static const char *const wanted[] = {
        "pea protein isolate: micellar casein",
        "pea protein isolate: brown rice protein",
        "pea protein isolate: egg white powder",
        "pea protein isolate: whey protein hydrolysate",
        "pea protein isolate: whey protein isolate",
        "oat flour: all-purpose flour",
        "oat flour: coconut flour",
        "oat flour: self-raising flour",
        "almond butter: cashew butter",
        "egg white: egg",
        "sugar: erythritol",
        "sugar: maple syrup",
        "oat flour: almond butter", /* with sugar: two for one */
        "oat flour: cashew butter",
    };
    for (size_t i = 0; i < COUNT(wanted) && i < notes.count; i++) {
        const char *from = about.of->lines.items[notes.items[i].line].what->name;
        expect_text(wanted[i], arena_format(l->a, "%s: %s", from, notes.items[i].to->name),
                    wanted[i]);
    }
    assert_int_equal(notes.count, COUNT(wanted));
    expect_near("both lines of oat flour", notes.items[5].from_g, 120, 1e-9);
    larder_free(l);
}

static void every_note_is_that_of_its_pair(void **state) {
    (void)state;
    larder *l = larder_new();
    add_cake_rules(l);
    recipe_facts about = larder_facts(l, larder_recipe(l, "cake", cake, 7));
    swap_notes notes = notes_of(l->a, &l->book, &about, true);
    size_t untried = 0;
    for (size_t i = 0; i < notes.count; i++) {
        const swap_note *note = &notes.items[i];
        untried += note->says == VERDICT_UNTRIED;
        if (note->second_line != SIZE_MAX)
            continue;
        swap_note alone = note_of(l->a, &l->book, &about, note->line, note->to);
        expect_text(note->to->name, verdict_word(note->says), verdict_word(alone.says));
        expect_near(note->to->name, note->to_g, alone.to_g, 0);
        expect_near(note->to->name, note->liquid_change_g, alone.liquid_change_g, 0);
        expect_near(note->to->name, note->after.water_g, alone.after.water_g, 0);
    }
    assert_int_equal(untried, 1); /* flaxseed meal for almond meal: no rule knows meals */
    larder_free(l);
}

static void lines_without_weight_or_ingredient_get_no_notes(void **state) {
    (void)state;
    larder *l = larder_new();
    add_cake_rules(l);
    recipe *r = larder_recipe(l, "cake", (portion_of[]){{"egg", 100}}, 1);
    recipe_add_to_taste(l->a, r, larder_find(l, "sugar"));
    recipe_add_unweighed(l->a, r, larder_find(l, "oat flour"));
    recipe_add_unknown(l->a, r, "moon dust", 40);
    recipe_finish(r, 2, 0);
    recipe_facts about = larder_facts(l, r);
    swap_notes notes = notes_of(l->a, &l->book, &about, true);
    assert_int_equal(notes.count, 1);
    expect_text("egg", notes.items[0].to->name, "egg white");
    larder_free(l);
}

static void a_long_recipe_is_answered_past_its_sixty_fourth_line(void **state) {
    (void)state;
    larder *l = larder_new();
    add_cake_rules(l);
    recipe *r = larder_recipe(l, "cake", (portion_of[]){{"egg", 100}}, 1);
    for (size_t i = 0; i < 70; i++)
        recipe_add(l->a, r, larder_find(l, "water"), 1);
    recipe_add(l->a, r, larder_find(l, "pea protein isolate"), 60);
    recipe_finish(r, 1, 0);
    recipe_facts about = larder_facts(l, r);
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    assert_true(notes.count > 3 && notes.items[0].line == 71);
    expect_near("pea", notes.items[0].from_g, 60, 1e-9);
    larder_free(l);
}

/* -- ties ------------------------------------------------------------------------------------ */

static void each_tie_is_reported_once(void **state) {
    (void)state;
    larder *l = larder_new();
    add_cake_rules(l);
    recipe_facts about = larder_facts(l, larder_recipe(l, "cake", cake, 7));
    notes_check(l->a, &l->book, &about, &l->found);
    assert_int_equal(l->found.count, 0);
    selector powder = by_family(FAMILY_PROTEIN_POWDER);
    larder_rule(l, "powders-again", powder, powder, VERDICT_DIFFERENT)->at.line = 9;
    swap_rule *two = larder_rule(l, "two-again", by_family(FAMILY_FLOUR),
                                 by_family(FAMILY_NUT_BUTTER), VERDICT_WORKS);
    LIST_ADD(l->a, &two->replace, by_family(FAMILY_SWEETENER));
    rule_book_index(l->a, &l->book);
    notes_check(l->a, &l->book, &about, &l->found);
    assert_int_equal(l->found.errors, 2);
    expect_text("the rule that decides", l->found.items[0].message,
                "\"powders-again\" says different and \"powders\" says adjust of brown rice "
                "protein for pea protein isolate in test: neither goes before the other");
    assert_int_equal(l->found.items[0].at.line, 9);
    expect_holds_text("two for one", l->found.items[1].message, "\"two\" says avoid");
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_note_holds_the_rules_word_and_amounts),
        cmocka_unit_test(liquid_is_kept_where_the_rule_says_so),
        cmocka_unit_test(without_a_promise_the_weight_is_equal),
        cmocka_unit_test(past_rescue_is_said_of_a_swap_to_avoid_too),
        cmocka_unit_test(figures_stand_in_for_a_general_rule_past_rescue),
        cmocka_unit_test(nothing_is_held_back_from_what_stands_on_top),
        cmocka_unit_test(a_topping_is_not_thinned),
        cmocka_unit_test(of_two_the_one_that_goes_whole_takes_its_allergens),
        cmocka_unit_test(of_an_ingredient_in_both_only_the_mixed_part_moves_liquid),
        cmocka_unit_test(no_two_for_one_reaches_from_the_dough_to_the_top),
        cmocka_unit_test(allergens_and_diets_are_those_of_the_whole_recipe),
        cmocka_unit_test(a_trial_gives_its_amounts_in_proportion),
        cmocka_unit_test(a_trial_tells_what_came_out),
        cmocka_unit_test(a_trials_liquid_needs_a_line),
        cmocka_unit_test(two_for_one_by_balance_keeps_weight_and_free_water),
        cmocka_unit_test(two_for_one_by_weight_takes_both_whole),
        cmocka_unit_test(notes_come_in_the_order_they_are_asked_for),
        cmocka_unit_test(every_note_is_that_of_its_pair),
        cmocka_unit_test(lines_without_weight_or_ingredient_get_no_notes),
        cmocka_unit_test(a_long_recipe_is_answered_past_its_sixty_fourth_line),
        cmocka_unit_test(each_tie_is_reported_once),
    };
    return cmocka_run_group_tests_name("note", tests, NULL, NULL);
}
