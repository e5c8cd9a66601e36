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

/* -- chance, the same each time -------------------------------------------------------------- */

typedef struct {
    uint64_t state;
} chance;

/* 0 to `below` - 1. A linear congruential generator (Knuth, MMIX), its high bits. */
static size_t chance_below(chance *c, size_t below) {
    c->state = c->state * 6364136223846793005u + 1442695040888963407u;
    return (size_t)(c->state >> 33) % below;
}

/* Three to six different ingredients, 5 to 254 g of each, of a kind of the builds. */
static const recipe *random_recipe(larder *l, chance *c) {
    portion_of lines[LINES - 1] = {{NULL, 0}};
    size_t count = 3 + chance_below(c, COUNT(lines) - 2), first = chance_below(c, l->shelf.count);
    /* steps of a number prime to the shelf's count never meet the same one twice */
    for (size_t i = 0; i < count; i++)
        lines[i] = (portion_of){l->shelf.items[(first + 7 * i) % l->shelf.count]->name,
                                (double)(5 + chance_below(c, 250))};
    return larder_recipe(l, builds[chance_below(c, COUNT(builds))].kind, lines, count);
}

/* -- rules for everything -------------------------------------------------------------------- */

/* A rule for everything, at the rank of nothing stated. */
static swap_rule *rule_for_all(larder *l, amount_rule amount, double ratio) {
    const selector anything = {0};
    l->book.rules.count = 0;
    swap_rule *rule = larder_rule(l, "all", anything, anything, VERDICT_ADJUST);
    rule->amount = amount;
    rule->by = SAID_BY_OWN_RULE; /* its own amounts, whatever the figures say */
    rule->ratio = ratio;
    return rule;
}

/* Called with every swap of every build that promises an amount. */
typedef void each_note(larder *l, const recipe_facts *about, const swap_note *note);

/* Checks every swap of `r`; returns how many promise an amount. */
static size_t check_swaps(larder *l, const recipe *r, each_note *check) {
    size_t seen = 0;
    recipe_facts about = larder_facts(l, r);
    swap_notes notes = notes_of(l->a, &l->book, &about, false);
    for (size_t i = 0; i < notes.count; i++) {
        seen += notes.items[i].to_g > 0;
        check(l, &about, &notes.items[i]);
    }
    return seen;
}

/* The builds, and recipes that nobody would bake. */
static void for_all_swaps(larder *l, each_note *check) {
    enum { RANDOM_RECIPES = 24 };
    size_t seen = 0;
    for (size_t b = 0; b < COUNT(builds); b++)
        seen += check_swaps(l, larder_recipe(l, builds[b].kind, builds[b].lines, LINES), check);
    for (uint64_t seed = 1; seed <= RANDOM_RECIPES; seed++) {
        chance c = {seed};
        seen += check_swaps(l, random_recipe(l, &c), check);
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
    /* more is lost in the bake than there is */
    bool dry_anyway =
        is.portion.of.of[NUTRIENT_WATER] == 0 || was.portion.of.of[NUTRIENT_WATER] == 0;
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

/* Unless the liquid line could not give as much, or is hardly wetter than the batch itself. */
static void free_water_is_kept(larder *l, const recipe_facts *about, const swap_note *note) {
    double line_g = note->liquid_line == SIZE_MAX ? 0 : about->of->weights[note->liquid_line].grams;
    balance liquid = balance_of_ingredient(liquid_at(about, note->liquid_line), 1);
    double per_dry = liquid_free_per_dry(fmax(balance_free_cold_g(&note->before).typical, 0),
                                         note->before.dry_g);
    bool thins = liquid.water_g - per_dry * liquid.dry_g >= liquid.water_g / 2;
    if (note->liquid_change_g <= -line_g || !thins)
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
    /* a line of 4 g is too small, one of 10 is not; where nothing is promised there is none */
    if (scaled.liquid_line == note->liquid_line && note->to_g > 0) {
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

/* -- rules by chance ------------------------------------------------------------------------- */

static selector random_selector(larder *l, chance *c) {
    const ingredient *what = l->shelf.items[chance_below(c, l->shelf.count)];
    switch (chance_below(c, 5)) {
    case 0:
        return by_name(l, what->name);
    case 1:
        return by_kind(l, what->in, what->kind);
    case 2:
        return with_origin(by_family(what->in), what->from);
    case 3:
        return (selector){0};
    default:
        return by_family(what->in);
    }
}

/* One or two facts; none of them need hold. */
static void add_random_facts(larder *l, chance *c, conditions *when) {
    when->count = 1;
    switch (chance_below(c, 5)) {
    case 0:
        when->baked = ANSWER_YES;
        break;
    case 1:
        when->settings = 1u << chance_below(c, SETTING_COUNT);
        break;
    case 2:
        when->moistures = 1u << chance_below(c, MOISTURE_COUNT);
        break;
    case 3:
        LIST_ADD(l->a, &when->has, random_selector(l, c));
        break;
    default:
        when->has_replaced_share = true;
        when->replaced_over = (double)chance_below(c, 40) / 100;
        when->replaced_under = 1;
        break;
    }
}

static swap_rule *random_rule(larder *l, chance *c, verdict says) {
    static const char *const ids[] = {"a", "b", "c", "d", "e", "f", "g", "h"};
    swap_rule *rule = larder_rule(l, ids[chance_below(c, COUNT(ids))], random_selector(l, c),
                                  random_selector(l, c), says);
    rule->by = chance_below(c, 3) ? SAID_BY_REFERENCE : SAID_BY_OWN_RULE;
    if (chance_below(c, 2))
        add_random_facts(l, c, &rule->when);
    return rule;
}

enum { SHELF_MOST = COUNT(larder_rows) };

/* The verdict on replacing each line by each ingredient. */
static void all_verdicts(larder *l, const recipe *r, verdict says[LINES][SHELF_MOST]) {
    recipe_facts about = larder_facts(l, r);
    for (size_t line = 0; line < r->lines.count; line++)
        for (size_t k = 0; k < l->shelf.count; k++)
            says[line][k] = note_of(l->a, &l->book, &about, line, l->shelf.items[k]).says;
}

static void expect_no_better(uint64_t seed, larder *l, const recipe *r,
                             verdict before[LINES][SHELF_MOST], verdict after[LINES][SHELF_MOST]) {
    for (size_t line = 0; line < r->lines.count; line++)
        for (size_t k = 0; k < l->shelf.count; k++)
            if (before[line][k] != VERDICT_UNTRIED && after[line][k] < before[line][k])
                fail_msg("seed %u: %s for %s went from %s to %s", (unsigned)seed,
                         l->shelf.items[k]->name, r->lines.items[line].name,
                         verdict_word(before[line][k]), verdict_word(after[line][k]));
}

/* Whatever other rules there are, and whether or not its facts hold: one rule more that forbids
 * never improves a verdict. */
static void forbidding_never_improves_a_verdict_whatever_the_rules(void **state) {
    enum { SEEDS = 150, RULES_MOST = 6 };
    static verdict before[LINES][SHELF_MOST], after[LINES][SHELF_MOST];
    size_t forbidden = 0;
    (void)state;
    for (uint64_t seed = 1; seed <= SEEDS; seed++) {
        chance c = {seed};
        larder *l = larder_new();
        const recipe *r = random_recipe(l, &c);
        larder_rule(l, "all", (selector){0}, (selector){0},
                    (verdict)chance_below(&c, VERDICT_AVOID));
        for (size_t i = chance_below(&c, RULES_MOST); i > 0; i--)
            random_rule(l, &c, (verdict)chance_below(&c, VERDICT_AVOID + 1));
        all_verdicts(l, r, before);
        random_rule(l, &c, VERDICT_AVOID);
        all_verdicts(l, r, after);
        expect_no_better(seed, l, r, before, after);
        for (size_t line = 0; line < r->lines.count; line++)
            for (size_t k = 0; k < l->shelf.count; k++)
                forbidden += before[line][k] < VERDICT_AVOID && after[line][k] == VERDICT_AVOID;
        larder_free(l);
    }
    assert_true(forbidden > 50); /* the rules that forbid did speak */
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
        cmocka_unit_test(forbidding_never_improves_a_verdict_whatever_the_rules),
        cmocka_unit_test(the_order_of_rule_files_changes_no_note),
    };
    return cmocka_run_group_tests_name("swap_properties", tests, NULL, NULL);
}
