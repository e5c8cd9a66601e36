#include "unit/support/cmocka_rows.h"

#include "swap/match_combined.h"
#include "unit/support/build_swaps.h"

#include <stdint.h>

static const portion_of rounds[] = {{"pea protein isolate", 60}, {"egg white", 140}};

static const char *decided_by(decision by) {
    if (by.rule)
        return by.rule->id;
    return by.bake ? by.bake->date : "nobody";
}

/* Asks for whey in the rounds' stead of pea. */
static decision whey_for_pea(larder *l, const recipe *r, const swap_rule **tied) {
    recipe_facts about = larder_facts(l, r);
    return decide(&l->book, &about, 0, larder_find(l, "whey protein isolate"), tied);
}

/* Two rules, each by what it says of the two sides and how many facts it states: which decides? */
typedef struct {
    selector replace, with;
    int facts;
} spoken;

static void the_more_specific_rule_decides(void **state) {
    (void)state;
    larder *l = larder_new();
    const family powder = FAMILY_PROTEIN_POWDER;
    selector all = by_family(powder), plants = with_origin(all, ORIGIN_PLANT),
             pea = by_kind(l, powder, "pea"), pea_plant = with_origin(pea, ORIGIN_PLANT),
             pea_name = by_name(l, "pea protein isolate"), whey = by_kind(l, powder, "whey");
    const struct {
        const char *name;
        spoken wins, loses;
    } rows[] = {
        {"name before kind with origin", {pea_name, whey, 0}, {pea_plant, whey, 0}},
        {"kind with origin before kind", {pea_plant, whey, 0}, {pea, whey, 0}},
        {"kind before family with origin", {pea, whey, 0}, {plants, whey, 0}},
        {"family with origin before family", {plants, whey, 0}, {all, whey, 0}},
        {"the side that comes counts too", {all, whey, 0}, {all, all, 0}},
        {"selectors before facts", {pea, whey, 0}, {plants, whey, 3}},
        {"then the number of facts", {pea, whey, 2}, {pea, whey, 1}},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        for (int swapped = 0; swapped < 2; swapped++) {
            l->book.rules.count = 0;
            const spoken *order[] = {swapped ? &rows[i].loses : &rows[i].wins,
                                     swapped ? &rows[i].wins : &rows[i].loses};
            for (int k = 0; k < 2; k++) {
                bool wins = order[k] == &rows[i].wins;
                swap_rule *rule = larder_rule(l, wins ? "wins" : "loses", order[k]->replace,
                                              order[k]->with, wins ? VERDICT_WORKS : VERDICT_AVOID);
                rule->when.count = order[k]->facts;
            }
            const swap_rule *tied;
            const recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
            expect_text(rows[i].name, decided_by(whey_for_pea(l, r, &tied)), "wins");
            expect_bool(rows[i].name, tied != NULL, false);
        }
    larder_free(l);
}

static trial bake(larder *l, const char *slug, const char *from, const char *to, const char *date) {
    return (trial){.recipe = slug,
                   .replaced.what = larder_find(l, from),
                   .with.what = larder_find(l, to),
                   .date = date,
                   .outcome = VERDICT_DIFFERENT};
}

/* Takes the authorities away one by one, the highest first. */
static void authority_goes_recipe_trial_own_reference_nobody(void **state) {
    (void)state;
    larder *l = larder_new();
    selector pea = by_kind(l, FAMILY_PROTEIN_POWDER, "pea"),
             whey = by_kind(l, FAMILY_PROTEIN_POWDER, "whey");
    larder_rule(l, "reference, by name", by_name(l, "pea protein isolate"),
                by_name(l, "whey protein isolate"), VERDICT_WORKS);
    larder_rule(l, "her own, by kind", pea, whey, VERDICT_AVOID)->by = SAID_BY_OWN_RULE;
    LIST_ADD(l->a, &l->book.log,
             bake(l, "test", "pea protein isolate", "whey protein isolate", "2026-03-01"));
    swap_rules own = {0};
    LIST_ADD(l->a, &own,
             rule_of(l, "the recipe's own", by_name(l, "pea protein isolate"),
                     by_name(l, "whey protein isolate"), VERDICT_ADJUST));
    own.items[0].by = SAID_BY_RECIPE;
    recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
    r->own_swaps = &own;
    expect_text("recipe", decided_by(whey_for_pea(l, r, NULL)), "the recipe's own");
    assert_int_equal(whey_for_pea(l, r, NULL).by, SAID_BY_RECIPE);
    r->own_swaps = NULL;
    expect_text("trial", decided_by(whey_for_pea(l, r, NULL)), "2026-03-01");
    assert_int_equal(decision_says(whey_for_pea(l, r, NULL)), VERDICT_DIFFERENT);
    l->book.log.count = 0;
    expect_text("own rule", decided_by(whey_for_pea(l, r, NULL)), "her own, by kind");
    l->book.rules.count = 1;
    expect_text("reference", decided_by(whey_for_pea(l, r, NULL)), "reference, by name");
    l->book.rules.count = 0;
    expect_text("nobody", decided_by(whey_for_pea(l, r, NULL)), "nobody");
    assert_int_equal(decision_says(whey_for_pea(l, r, NULL)), VERDICT_UNTRIED);
    larder_free(l);
}

static void only_trials_of_this_recipe_and_pair_count_and_the_latest_first(void **state) {
    (void)state;
    larder *l = larder_new();
    const char *pea = "pea protein isolate", *whey = "whey protein isolate";
    const trial log[] = {bake(l, "test", pea, whey, "2026-01-05"),
                         bake(l, "test", pea, whey, "2026-03-01"),
                         bake(l, "test", pea, whey, "2026-02-01"),
                         bake(l, "test", pea, "micellar casein", "2026-04-01"),
                         bake(l, "test", "egg white", whey, "2026-05-01"),
                         bake(l, "tart", pea, whey, "2026-06-01"),
                         bake(l, "west", pea, whey, "2026-07-01")};
    for (size_t i = 0; i < COUNT(log); i++)
        LIST_ADD(l->a, &l->book.log, log[i]);
    recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
    expect_text("the latest", decided_by(whey_for_pea(l, r, NULL)), "2026-03-01");
    r->slug = "zest";
    expect_text("a recipe without trials", decided_by(whey_for_pea(l, r, NULL)), "nobody");
    r->slug = NULL;
    expect_text("a recipe without a slug", decided_by(whey_for_pea(l, r, NULL)), "nobody");
    LIST_ADD(l->a, &l->book.log, bake(l, "test", pea, whey, "2026-03-01"));
    l->book.log.items[l->book.log.count - 1].outcome = VERDICT_AVOID;
    r->slug = "test";
    assert_int_equal(decision_says(whey_for_pea(l, r, NULL)), VERDICT_AVOID); /* of one day */
    larder_free(l);
}

static void rules_that_do_not_hold_are_passed_over(void **state) {
    (void)state;
    larder *l = larder_new();
    selector pea = by_kind(l, FAMILY_PROTEIN_POWDER, "pea"),
             whey = by_kind(l, FAMILY_PROTEIN_POWDER, "whey");
    swap_rule *loaf = larder_rule(l, "only in loaves", pea, whey, VERDICT_WORKS);
    LIST_ADD(l->a, &loaf->when.kinds, span_of("loaf"));
    loaf->when.count = 1;
    larder_rule(l, "anywhere", pea, whey, VERDICT_AVOID);
    const recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
    expect_text("griddle cake", decided_by(whey_for_pea(l, r, NULL)), "anywhere");
    r = larder_recipe(l, "loaf", rounds, 2);
    expect_text("loaf", decided_by(whey_for_pea(l, r, NULL)), "only in loaves");
    larder_free(l);
}

/* Oat flour of the mill for oat flour; a rule on kinds does not come before, one on names does. */
static void another_make_is_of_the_same_family_and_kind(void **state) {
    (void)state;
    larder *l = larder_new();
    larder_add(l, &(larder_row){.name = "mill oats", .kind = "oat", .in = FAMILY_FLOUR});
    larder_add(l, &(larder_row){.name = "oat meal", .kind = "oat", .in = FAMILY_MEAL});
    larder_add(l, &(larder_row){.name = "nameless flour", .kind = "", .in = FAMILY_FLOUR});
    selector flours = by_family(FAMILY_FLOUR), oats = by_kind(l, FAMILY_FLOUR, "oat");
    flours.families |= 1u << FAMILY_MEAL;
    larder_rule(l, "another make", flours, (selector){.same_kind = true}, VERDICT_WORKS);
    larder_rule(l, "oats for oats", oats, oats, VERDICT_ADJUST);
    const recipe *r =
        larder_recipe(l, "cake", (portion_of[]){{"oat flour", 60}, {"nameless flour", 10}}, 2);
    const struct {
        const char *name;
        size_t from;
        const char *to, *by;
    } rows[] = {{"same family and kind", 0, "mill oats", "another make"},
                {"another family", 0, "oat meal", "nobody"},
                {"another kind", 0, "coconut flour", "nobody"},
                {"no kind at all", 1, "oat flour", "nobody"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe_facts about = larder_facts(l, r);
        const ingredient *to = larder_find(l, rows[i].to);
        expect_text(rows[i].name, decided_by(decide(&l->book, &about, rows[i].from, to, NULL)),
                    rows[i].by);
    }
    larder_rule(l, "by name", by_name(l, "oat flour"), by_name(l, "mill oats"), VERDICT_AVOID);
    recipe_facts about = larder_facts(l, r);
    expect_text("by name",
                decided_by(decide(&l->book, &about, 0, larder_find(l, "mill oats"), NULL)),
                "by name");
    larder_free(l);
}

static void a_tie_is_reported_and_the_cautious_verdict_stands(void **state) {
    (void)state;
    const struct {
        const char *name;
        verdict first, second;
        int facts; /* of the second */
        const char *decides, *tied;
    } rows[] = {
        {"two verdicts of one rank", VERDICT_WORKS, VERDICT_AVOID, 0, "second", "first"},
        {"the other way round", VERDICT_AVOID, VERDICT_WORKS, 0, "first", "second"},
        {"one verdict twice", VERDICT_ADJUST, VERDICT_ADJUST, 0, "first", NULL},
        {"another rank", VERDICT_AVOID, VERDICT_WORKS, 1, "second", NULL},
    };
    larder *l = larder_new();
    selector pea = by_kind(l, FAMILY_PROTEIN_POWDER, "pea"),
             whey = by_kind(l, FAMILY_PROTEIN_POWDER, "whey");
    recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
    for (size_t i = 0; i < COUNT(rows); i++)
        for (int own_words = 0; own_words < 2; own_words++) {
            l->book.rules.count = 0;
            larder_rule(l, "first", pea, whey, rows[i].first);
            larder_rule(l, "second", pea, whey, rows[i].second)->when.count = rows[i].facts;
            swap_rules own = l->book.rules;
            if (own_words)
                l->book.rules.count = 0;
            r->own_swaps = own_words ? &own : NULL;
            const swap_rule *tied;
            expect_text(rows[i].name, decided_by(whey_for_pea(l, r, &tied)), rows[i].decides);
            expect_text(rows[i].name, tied ? tied->id : NULL, rows[i].tied);
        }
    larder_free(l);
}

static void nothing_is_replaced_by_itself(void **state) {
    (void)state;
    larder *l = larder_new();
    selector powder = by_family(FAMILY_PROTEIN_POWDER);
    larder_rule(l, "all powders", powder, powder, VERDICT_WORKS);
    recipe_facts about = larder_facts(l, larder_recipe(l, "griddle cake", rounds, 2));
    decision by = decide(&l->book, &about, 0, larder_find(l, "pea protein isolate"), NULL);
    assert_int_equal(by.by, SAID_BY_NOBODY);
    larder_free(l);
}

/* -- two for one ----------------------------------------------------------------------------- */

static swap_rule *meal_for_flour_and_puree(larder *l, const char *id, verdict says) {
    swap_rule *rule = larder_rule(l, id, by_kind(l, FAMILY_FLOUR, "coconut"),
                                  by_kind(l, FAMILY_MEAL, "almond"), says);
    LIST_ADD(l->a, &rule->replace, by_family(FAMILY_FRUIT_PUREE));
    return rule;
}

static const portion_of cookies[] = {{"apple purée", 120},
                                     {"coconut flour", 30},
                                     {"whey protein isolate", 60},
                                     {"coconut flour", 6}};

static void two_are_replaced_in_either_order(void **state) {
    (void)state;
    larder *l = larder_new();
    const swap_rule *tied;
    meal_for_flour_and_puree(l, "two", VERDICT_ADJUST);
    recipe_facts about = larder_facts(l, larder_recipe(l, "cookie", cookies, 4));
    const ingredient *almond = larder_find(l, "almond meal");
    expect_text("flour, purée", decided_by(decide_two(&l->book, &about, 1, 0, almond, NULL)),
                "two");
    expect_text("purée, flour", decided_by(decide_two(&l->book, &about, 0, 1, almond, &tied)),
                "two");
    assert_null(tied);
    expect_text("powder, purée", decided_by(decide_two(&l->book, &about, 2, 0, almond, NULL)),
                "nobody");
    expect_text(
        "by one of the two",
        decided_by(decide_two(&l->book, &about, 1, 0, larder_find(l, "coconut flour"), NULL)),
        "nobody");
    expect_text("one alone", decided_by(decide(&l->book, &about, 1, almond, NULL)), "nobody");
    meal_for_flour_and_puree(l, "a", VERDICT_AVOID);
    rule_book_index(l->a, &l->book);
    expect_text("a tie", decided_by(decide_two(&l->book, &about, 1, 0, almond, &tied)), "a");
    expect_text("its other side", tied ? tied->id : NULL, "two");
    larder_free(l);
}

static void all_two_for_ones_are_found_once(void **state) {
    (void)state;
    larder *l = larder_new();
    meal_for_flour_and_puree(l, "two", VERDICT_ADJUST);
    meal_for_flour_and_puree(l, "again", VERDICT_ADJUST);
    recipe_facts about = larder_facts(l, larder_recipe(l, "cookie", cookies, 4));
    decided_list all = {.home = l->a};
    decide_all_twos(&l->book, &about, &all);
    assert_int_equal(all.count, 1);
    assert_int_equal(all.items[0].first, 1); /* the flour: the rule's first selector */
    assert_int_equal(all.items[0].second, 0);
    larder_free(l);
}

/* -- all of them ----------------------------------------------------------------------------- */

/* Rules of every shape and authority over the larder, one for each row. */
static void add_many_rules(larder *l) {
    const family powder = FAMILY_PROTEIN_POWDER;
    selector all = by_family(powder), whey = by_kind(l, powder, "whey");
    larder_rule(l, "powder for powder", all, all, VERDICT_ADJUST);
    larder_rule(l, "whey for plants", with_origin(all, ORIGIN_PLANT), whey, VERDICT_AVOID);
    larder_rule(l, "flour for powder", all, by_family(FAMILY_FLOUR), VERDICT_DIFFERENT);
    swap_rule *cakes =
        larder_rule(l, "casein in cakes", all, by_kind(l, powder, "casein"), VERDICT_WORKS);
    LIST_ADD(l->a, &cakes->when.kinds, span_of("cake"));
    cakes->when.count = 1;
    larder_rule(l, "her rice", by_name(l, "pea protein isolate"), by_kind(l, powder, "rice"),
                VERDICT_WORKS)
        ->by = SAID_BY_OWN_RULE;
    LIST_ADD(l->a, &l->book.log,
             bake(l, "test", "pea protein isolate", "coconut flour", "2026-01-01"));
}

/* decide_all is decide, asked for every ingredient in the pantry. */
static void all_at_once_is_one_by_one(void **state) {
    (void)state;
    larder *l = larder_new();
    add_many_rules(l);
    recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
    swap_rules own = {0};
    LIST_ADD(
        l->a, &own,
        rule_of(l, "own", by_name(l, "pea protein isolate"), by_family(FAMILY_GUM), VERDICT_AVOID));
    r->own_swaps = &own;
    recipe_facts about = larder_facts(l, r);
    decided_list all = {.home = l->a};
    decide_all(&l->book, &about, 0, false, &all);
    size_t expected = 0;
    for (size_t i = 0; i < l->shelf.count; i++) {
        decision by = decide(&l->book, &about, 0, l->shelf.items[i], NULL);
        expected += by.by != SAID_BY_NOBODY;
        size_t found = 0;
        for (size_t k = 0; k < all.count; k++)
            if (all.items[k].to == l->shelf.items[i]) {
                found++;
                expect_text(l->shelf.items[i]->name, decided_by(all.items[k].by), decided_by(by));
                assert_true(all.items[k].second == SIZE_MAX);
            }
        if (found != (by.by != SAID_BY_NOBODY))
            fail_msg("%s is answered %zu times", l->shelf.items[i]->name, found);
    }
    assert_int_equal(all.count, expected);
    assert_true(expected > 8);
    larder_free(l);
}

static void the_untried_of_the_family_are_added_when_asked_for(void **state) {
    (void)state;
    larder *l = larder_new();
    larder_rule(l, "whey", by_family(FAMILY_PROTEIN_POWDER),
                by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), VERDICT_AVOID);
    recipe_facts about = larder_facts(l, larder_recipe(l, "griddle cake", rounds, 2));
    decided_list known = {.home = l->a}, all = {.home = l->a};
    decide_all(&l->book, &about, 0, false, &known);
    decide_all(&l->book, &about, 0, true, &all);
    assert_int_equal(known.count, 2); /* isolate and hydrolysate */
    assert_int_equal(all.count, 5);   /* rice, casein and dried egg white besides */
    larder_free(l);
}

/* The same answers whatever the order in which rules were read. */
static void the_order_of_rules_changes_nothing(void **state) {
    (void)state;
    larder *l = larder_new();
    add_many_rules(l);
    larder_rule(l, "whey after all", with_origin(by_family(FAMILY_PROTEIN_POWDER), ORIGIN_PLANT),
                by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), VERDICT_WORKS); /* ties with avoid */
    const recipe *r = larder_recipe(l, "cake", rounds, 2);
    const char *first[COUNT(larder_rows)];
    for (size_t turn = 0; turn < l->book.rules.count; turn++) {
        recipe_facts about = larder_facts(l, r);
        for (size_t i = 0; i < l->shelf.count; i++) {
            const char *by = decided_by(decide(&l->book, &about, 0, l->shelf.items[i], NULL));
            if (turn == 0)
                first[i] = by;
            expect_text(l->shelf.items[i]->name, by, first[i]);
        }
        swap_rule moved = l->book.rules.items[0]; /* the first goes last */
        memmove(l->book.rules.items, l->book.rules.items + 1,
                (l->book.rules.count - 1) * sizeof moved);
        l->book.rules.items[l->book.rules.count - 1] = moved;
    }
    larder_free(l);
}

static void rules_of_no_usable_shape_answer_nothing(void **state) {
    (void)state;
    larder *l = larder_new();
    selector all = by_family(FAMILY_PROTEIN_POWDER);
    larder_rule(l, "one by two", all, all, VERDICT_WORKS);
    LIST_ADD(l->a, &l->book.rules.items[0].with, by_family(FAMILY_FLOUR));
    larder_rule(l, "by nothing", all, all, VERDICT_WORKS)->with.count = 0;
    larder_rule(l, "nothing", all, all, VERDICT_WORKS)->replace.count = 0;
    const recipe *r = larder_recipe(l, "griddle cake", rounds, 2);
    expect_text("none", decided_by(whey_for_pea(l, r, NULL)), "nobody");
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_more_specific_rule_decides),
        cmocka_unit_test(authority_goes_recipe_trial_own_reference_nobody),
        cmocka_unit_test(only_trials_of_this_recipe_and_pair_count_and_the_latest_first),
        cmocka_unit_test(rules_that_do_not_hold_are_passed_over),
        cmocka_unit_test(another_make_is_of_the_same_family_and_kind),
        cmocka_unit_test(a_tie_is_reported_and_the_cautious_verdict_stands),
        cmocka_unit_test(nothing_is_replaced_by_itself),
        cmocka_unit_test(two_are_replaced_in_either_order),
        cmocka_unit_test(all_two_for_ones_are_found_once),
        cmocka_unit_test(all_at_once_is_one_by_one),
        cmocka_unit_test(the_untried_of_the_family_are_added_when_asked_for),
        cmocka_unit_test(the_order_of_rules_changes_nothing),
        cmocka_unit_test(rules_of_no_usable_shape_answer_nothing),
    };
    return cmocka_run_group_tests_name("match", tests, NULL, NULL);
}
