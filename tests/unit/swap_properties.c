/* What holds of every swap, whatever the recipe: tried on recipes of each build with every
 * ingredient of the test's pantry. */
#include "unit/support/cmocka_rows.h"

#include "swap/note.h"
#include "swap/swapped.h"
#include "unit/support/build_swaps.h"

#include <stdint.h>

enum { LINES = 7 };

static const struct {
    const char *kind;
    portion_of lines[LINES];
} builds[] = {
    {"griddle cake", {{"pea protein isolate", 60}, {"egg white", 140}, {"baking powder", 2}}},
    {"cake",
     {{"pea protein isolate", 60},
      {"egg white", 150},
      {"almond meal", 100},
      {"sugar", 80},
      {"baking powder", 6}}},
    {"crust", {{"brown rice protein", 90}, {"almond butter", 125}, {"water", 75}}},
    {"brownie",
     {{"whey protein isolate", 90},
      {"apple purée", 244},
      {"almond butter", 125},
      {"cocoa powder", 30},
      {"sugar", 60}}},
    {"cookie",
     {{"whey protein isolate", 90},
      {"apple purée", 122},
      {"coconut flour", 28},
      {"sugar", 36},
      {"baking powder", 4}}},
    {"muffin",
     {{"oat flour", 150},
      {"whey protein isolate", 30},
      {"egg", 100},
      {"oat milk", 200},
      {"maple syrup", 60},
      {"oat flour", 20},
      {"baking powder", 8}}},
    {"no-bake",
     {{"oat flour", 120}, {"micellar casein", 60}, {"almond butter", 120}, {"maple syrup", 80}}},
    {"loaf", {{"all-purpose flour", 400}, {"water", 270}, {"instant yeast", 5}, {"butter", 20}}},
};

/* A rule for everything, at the rank of nothing stated. */
static swap_rule *rule_for_all(larder *l, amount_rule amount, double ratio) {
    const selector anything = {0};
    l->book.rules.count = 0;
    swap_rule *rule = larder_rule(l, "all", anything, anything, VERDICT_ADJUST);
    rule->amount = amount;
    rule->ratio = ratio;
    return rule;
}

/* Called with every swap of every build that promises an amount. */
typedef void each_note(larder *l, const recipe_facts *about, const swap_note *note);

static void for_all_swaps(larder *l, each_note *check) {
    size_t seen = 0;
    for (size_t b = 0; b < COUNT(builds); b++) {
        const recipe *r = larder_recipe(l, builds[b].kind, builds[b].lines, LINES);
        recipe_facts about = larder_facts(l, r);
        swap_notes notes = notes_of(l->a, &l->book, &about, false);
        for (size_t i = 0; i < notes.count; i++) {
            seen += notes.items[i].to_g > 0;
            check(l, &about, &notes.items[i]);
        }
    }
    assert_true(seen > 5);
}

static const char *named(larder *l, const recipe_facts *about, const swap_note *note) {
    return arena_format(l->a, "%s for %s in a %s", note->to->name,
                        about->of->lines.items[note->line].what->name, about->kind);
}

/* -- no second arithmetic -------------------------------------------------------------------- */

/* The recipe as a reader would bake it: lines of the old replaced, liquid added or held back. */
static recipe *swapped(larder *l, const recipe *of, const swap_note *note) {
    recipe *r = recipe_new(l->a, of->kind);
    const ingredient *old = of->lines.items[note->line].what;
    recipe_add(l->a, r, note->to, note->to_g);
    for (size_t i = 0; i < of->lines.count; i++) {
        double liquid_g = i == note->liquid_line ? note->liquid_change_g : 0;
        if (of->lines.items[i].what != old)
            recipe_add(l->a, r, of->lines.items[i].what, of->weights[i].grams + liquid_g);
    }
    if (note->liquid_line == SIZE_MAX && note->liquid_change_g > 0)
        recipe_add(l->a, r, larder_find(l, "water"), note->liquid_change_g);
    recipe_finish(r, of->portions, of->bake_loss);
    return r;
}

static void as_the_swapped_recipe(larder *l, const recipe_facts *about, const swap_note *note) {
    const char *row = named(l, about, note);
    const recipe *after = swapped(l, about->of, note);
    recipe_macros was = macros_of(about->of), is = macros_of(after);
    macros change = macros_difference(&is.portion, &was.portion);
    bool dry_anyway = is.portion.of.of[NUTRIENT_WATER] == 0; /* more is lost than there is */
    expect_near(row, note->change.weight_g, change.weight_g, 1e-9);
    for (nutrient n = 0; n < NUTRIENT_COUNT; n++)
        if (nutrient_known(&note->change.of, n) && !(n == NUTRIENT_WATER && dry_anyway))
            expect_near(row, note->change.of.of[n], change.of.of[n], 1e-6);
    const recipe *ours = recipe_swapped(l->a, about->of, note, larder_find(l, "water"));
    recipe_macros same = macros_of(ours);
    expect_near(row, same.portion.weight_g, is.portion.weight_g, 1e-9);
    for (nutrient n = 0; n < NUTRIENT_COUNT; n++)
        expect_near(row, same.portion.of.of[n], is.portion.of.of[n], 1e-6);
    expect_near(row, allergens_of(ours), allergens_of(after), 0);
    balance sum = balance_of(after);
    expect_near(row, note->after.water_g, sum.water_g, 1e-6);
    expect_near(row, note->after.dry_g, sum.dry_g, 1e-6);
    expect_near(row, note->after.fat_g, sum.fat_g, 1e-6);
    expect_near(row, note->after.setting_g, sum.setting_g, 1e-6);
    expect_near(row, note->after.sweetness_g, sum.sweetness_g, 1e-6);
    expect_near(row, note->after.lost_g, sum.lost_g, 1e-6);
    expect_near(row, note->after.taken_cold_g.high, sum.taken_cold_g.high, 1e-6);
    expect_near(row, note->after.held_heated_g.low, sum.held_heated_g.low, 1e-6);
    expect_near(row, note->gained, allergens_of(after) & ~allergens_of(about->of), 0);
    expect_near(row, note->lost, allergens_of(about->of) & ~allergens_of(after), 0);
    expect_near(row, note->diets_lost, diets_of(about->of) & ~diets_of(after), 0);
    expect_near(row, note->diets_gained, diets_of(after) & ~diets_of(about->of), 0);
}

static void a_note_says_what_the_swapped_recipe_says(void **state) {
    (void)state;
    larder *l = larder_new();
    rule_for_all(l, AMOUNT_WEIGHT, 0.8);
    for_all_swaps(l, as_the_swapped_recipe);
    larder_free(l);
}

/* -- free water ------------------------------------------------------------------------------ */

/* Free water that the swapped batch must have: as much a gram of dry, up to FREE_PER_DRY_MOST;
 * where there is none, what is lacking is the same share of what could be taken up. */
static double wanted_free_g(const recipe_facts *about, const swap_note *note) {
    double before_g = balance_free_cold_g(&note->before).typical;
    if (before_g < 0)
        return before_g * note->after.taken_cold_g.typical / note->before.taken_cold_g.typical;
    balance liquid = balance_of_ingredient(liquid_at(about, note->liquid_line), 1);
    double more_g = note->after.dry_g - note->before.dry_g;
    const exchange made = {.goes = {{about->of->lines.items[note->line].what, 1}},
                           .goes_count = 1,
                           .comes = {note->to, 1}};
    if (exchange_of_liquids(&made)) /* what they carry asks for none */
        more_g = liquid.dry_g * note->liquid_change_g;
    return before_g + liquid_free_per_dry(before_g, note->before.dry_g) * more_g;
}

/* Unless the liquid line could not give as much. */
static void free_water_is_kept(larder *l, const recipe_facts *about, const swap_note *note) {
    double line_g = note->liquid_line == SIZE_MAX ? 0 : about->of->weights[note->liquid_line].grams;
    if (note->liquid_change_g <= -line_g)
        return;
    expect_near(named(l, about, note), balance_free_cold_g(&note->after).typical,
                wanted_free_g(about, note), 1);
}

static void rebalancing_keeps_free_water(void **state) {
    (void)state;
    larder *l = larder_new();
    static const amount_rule rules[] = {AMOUNT_WEIGHT, AMOUNT_VOLUME, AMOUNT_MATCH_WATER_UPTAKE,
                                        AMOUNT_MATCH_PROTEIN};
    for (size_t i = 0; i < COUNT(rules); i++) {
        rule_for_all(l, rules[i], 1);
        for_all_swaps(l, free_water_is_kept);
    }
    larder_free(l);
}

static void expect_ordered(const char *row, range r) {
    const double rounding = 1e-9;
    expect_bool(row, r.low <= r.typical + rounding && r.typical <= r.high + rounding, true);
}

static void ranges_hold_their_typical(larder *l, const recipe_facts *about, const swap_note *note) {
    const char *row = named(l, about, note);
    expect_ordered(row, (range){note->to_low_g, note->to_g, note->to_high_g});
    expect_ordered(row, (range){note->liquid_low_g, note->liquid_change_g, note->liquid_high_g});
    expect_ordered(row, balance_free_cold_g(&note->after));
    expect_ordered(row, balance_free_heated_g(&note->after));
}

static void low_typical_and_high_stand_in_order(void **state) {
    (void)state;
    larder *l = larder_new();
    for (amount_rule by = AMOUNT_UNSTATED; by <= AMOUNT_MATCH_BALANCE; by++) {
        const selector anything = {0};
        swap_rule *rule = rule_for_all(l, by, 0.5);
        if (by == AMOUNT_MATCH_BALANCE)
            LIST_ADD(l->a, &rule->replace, anything);
        for_all_swaps(l, ranges_hold_their_typical);
    }
    larder_free(l);
}

/* -- there and back, larger and smaller ------------------------------------------------------ */

static swap_note answered(larder *l, const recipe *r, const ingredient *from,
                          const ingredient *to) {
    recipe_facts about = larder_facts(l, r);
    return note_of(l->a, &l->book, &about, larder_line(l, r, from->name), to);
}

/* Swaps the powder or flour of a two-line batter and back, by each rule of amounts. */
static void a_swap_and_its_reverse_return_the_amount(void **state) {
    (void)state;
    larder *l = larder_new();
    size_t seen = 0;
    for (amount_rule by = AMOUNT_WEIGHT; by <= AMOUNT_MATCH_SWEETNESS; by++)
        for (size_t i = 0; i < l->shelf.count; i++)
            for (size_t k = 0; k < l->shelf.count; k++) {
                const ingredient *from = l->shelf.items[i], *to = l->shelf.items[k];
                if (from == to)
                    continue;
                rule_for_all(l, by, 0.5);
                swap_note there = answered(
                    l, larder_recipe(l, "cake", (portion_of[]){{from->name, 60}}, 1), from, to);
                if (there.to_g == 0)
                    continue;
                rule_for_all(l, by, 2);
                portion_of came = {to->name, there.to_g};
                swap_note back = answered(l, larder_recipe(l, "cake", &came, 1), to, from);
                expect_near(to->name, back.to_g, 60, 1e-6);
                seen++;
            }
    assert_true(seen > 1000);
    larder_free(l);
}

/* The liquid of a swap and of its reverse cancel: the first recipe comes back. */
static void the_liquid_comes_back_too(void **state) {
    (void)state;
    larder *l = larder_new();
    rule_for_all(l, AMOUNT_WEIGHT, 1);
    static const char *const powders[] = {"pea protein isolate", "whey protein isolate",
                                          "brown rice protein", "micellar casein"};
    for (size_t i = 0; i < COUNT(powders); i++)
        for (size_t k = 0; k < COUNT(powders); k++) {
            if (i == k)
                continue;
            const ingredient *from = larder_find(l, powders[i]), *to = larder_find(l, powders[k]);
            const recipe *r = larder_recipe(
                l, "muffin",
                (portion_of[]){{powders[i], 30}, {"oat flour", 150}, {"egg", 100}, {"water", 200}},
                4);
            swap_note there = answered(l, r, from, to);
            swap_note back = answered(l, swapped(l, r, &there), to, from);
            expect_near(powders[k], there.liquid_change_g + back.liquid_change_g, 0, 1e-6);
        }
    larder_free(l);
}

static void scaled_with_the_recipe(larder *l, const recipe_facts *about, const swap_note *note) {
    const double times = 2.5;
    recipe *large = recipe_new(l->a, about->of->kind);
    for (size_t i = 0; i < about->of->lines.count; i++)
        recipe_add(l->a, large, about->of->lines.items[i].what,
                   about->of->weights[i].grams * times);
    recipe_finish(large, about->of->portions * times, about->of->bake_loss);
    recipe_facts more = facts_of(l->a, large, &l->shelf);
    swap_note scaled = note_of(l->a, &l->book, &more, note->line, note->to);
    const char *row = named(l, about, note);
    expect_text(row, verdict_word(scaled.says), verdict_word(note->says));
    expect_near(row, scaled.to_g, note->to_g * times, 1e-6);
    if (scaled.liquid_line ==
        note->liquid_line) { /* a line of 4 g is too small, one of 10 is not */
        expect_near(row, scaled.liquid_change_g, note->liquid_change_g * times, 1e-6);
        expect_near(row, scaled.liquid_low_g, note->liquid_low_g * times, 1e-6);
        expect_near(row, scaled.change.of.of[NUTRIENT_PROTEIN],
                    note->change.of.of[NUTRIENT_PROTEIN], 1e-6);
        expect_bool(row, scaled.past_rescue, note->past_rescue);
    }
}

static void scaling_a_recipe_scales_its_swaps(void **state) {
    (void)state;
    larder *l = larder_new();
    rule_for_all(l, AMOUNT_MATCH_PROTEIN, 1);
    for_all_swaps(l, scaled_with_the_recipe);
    larder_free(l);
}

/* -- verdicts -------------------------------------------------------------------------------- */

/* Rules that forbid, from the vaguest to the most specific, under every authority. */
static void a_rule_that_forbids_never_improves_a_verdict(void **state) {
    (void)state;
    larder *l = larder_new();
    const family powder = FAMILY_PROTEIN_POWDER;
    const selector froms[] = {by_family(powder), with_origin(by_family(powder), ORIGIN_PLANT),
                              by_kind(l, powder, "pea"), by_name(l, "pea protein isolate")};
    const selector tos[] = {by_family(powder), by_kind(l, powder, "whey"),
                            by_name(l, "whey protein isolate")};
    const recipe *r = larder_recipe(l, builds[0].kind, builds[0].lines, LINES);
    const ingredient *pea = larder_find(l, "pea protein isolate");
    for (size_t i = 0; i < COUNT(froms) * COUNT(tos) * 2; i++)
        for (int facts = 0; facts < 3; facts++)
            for (verdict says = VERDICT_WORKS; says <= VERDICT_AVOID; says++) {
                l->book.rules.count = 0;
                larder_rule(l, "first", froms[1], tos[1], says)->when.count = 1;
                larder_facts(l, r);
                size_t before[COUNT(larder_rows)];
                for (size_t k = 0; k < l->shelf.count; k++)
                    before[k] = answered(l, r, pea, l->shelf.items[k]).says;
                swap_rule *forbids = larder_rule(l, "forbids", froms[i / 2 % COUNT(froms)],
                                                 tos[i / 2 / COUNT(froms)], VERDICT_AVOID);
                forbids->by = i % 2 ? SAID_BY_OWN_RULE : SAID_BY_REFERENCE;
                forbids->when.count = facts;
                for (size_t k = 0; k < l->shelf.count; k++) {
                    verdict now = answered(l, r, pea, l->shelf.items[k]).says;
                    if (before[k] != VERDICT_UNTRIED && now < before[k])
                        fail_msg("%s got better", l->shelf.items[k]->name);
                }
            }
    larder_free(l);
}

/* Notes whole, not only their verdicts, are the same in whatever order rules were read. */
static void the_order_of_rule_files_changes_no_note(void **state) {
    (void)state;
    larder *l = larder_new();
    selector powder = by_family(FAMILY_PROTEIN_POWDER);
    larder_rule(l, "a", powder, powder, VERDICT_ADJUST);
    larder_rule(l, "b", powder, powder, VERDICT_WORKS)->ratio = 0.7; /* a tie */
    larder_rule(l, "c", powder, by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), VERDICT_DIFFERENT);
    larder_rule(l, "d", powder, by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), VERDICT_DIFFERENT)
        ->ratio = 0.5; /* one verdict, two amounts: the name decides */
    swap_notes first = {0};
    for (size_t turn = 0; turn < l->book.rules.count; turn++) {
        recipe_facts about = larder_facts(l, larder_recipe(l, "muffin", builds[5].lines, LINES));
        swap_notes notes = notes_of(l->a, &l->book, &about, false);
        if (turn == 0)
            first = notes;
        assert_int_equal(notes.count, first.count);
        for (size_t i = 0; i < notes.count; i++) {
            expect_text("to", notes.items[i].to->name, first.items[i].to->name);
            expect_text("says", verdict_word(notes.items[i].says),
                        verdict_word(first.items[i].says));
            expect_near(notes.items[i].to->name, notes.items[i].to_g, first.items[i].to_g, 0);
        }
        swap_rule moved = l->book.rules.items[0];
        memmove(l->book.rules.items, l->book.rules.items + 1,
                (l->book.rules.count - 1) * sizeof moved);
        l->book.rules.items[l->book.rules.count - 1] = moved;
    }
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_note_says_what_the_swapped_recipe_says),
        cmocka_unit_test(rebalancing_keeps_free_water),
        cmocka_unit_test(low_typical_and_high_stand_in_order),
        cmocka_unit_test(a_swap_and_its_reverse_return_the_amount),
        cmocka_unit_test(the_liquid_comes_back_too),
        cmocka_unit_test(scaling_a_recipe_scales_its_swaps),
        cmocka_unit_test(a_rule_that_forbids_never_improves_a_verdict),
        cmocka_unit_test(the_order_of_rule_files_changes_no_note),
    };
    return cmocka_run_group_tests_name("swap_properties", tests, NULL, NULL);
}
