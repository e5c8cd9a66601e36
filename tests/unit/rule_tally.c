/* What becomes of rules over several recipes, and which swaps nobody answers. The rules are ours.
 */
#include "unit/support/cmocka_rows.h"

#include "swap/recipe_build.h"
#include "swap/rule_tally.h"
#include "swap/unanswered.h"
#include "unit/support/build_swaps.h"

static const char pea[] = "pea protein isolate", whey[] = "whey protein isolate";
static const portion_of rounds[] = {{pea, 60}, {"egg white", 140}},
                        cookies[] = {{whey, 60}, {"oat flour", 60}, {"water", 90}},
                        crackers[] = {{"coconut flour", 60}, {"apple purée", 90}};
static const recipe_build griddle = {
    "griddle cake", SETTING_EGG_WHITE, MOISTURE_EGG_WHITE, false, true, false};

static swap_rule *own_rule(larder *l, const char *id, selector replace, selector with,
                           verdict says) {
    swap_rule *rule = larder_rule(l, id, replace, with, says);
    rule->by = SAID_BY_OWN_RULE;
    return rule;
}

static void bake(larder *l, const char *slug, const char *to, verdict says) {
    LIST_ADD(l->a, &l->book.log,
             (trial){.at = {"trials/test.yaml", (unsigned)l->book.log.count + 1, 3},
                     .recipe = slug,
                     .replaced.what = larder_find(l, pea),
                     .with.what = larder_find(l, to),
                     .date = "2026-03-01",
                     .outcome = says,
                     .build = &griddle,
                     .title = slug});
}

typedef struct {
    const char *slug, *kind;
    const portion_of *lines;
    size_t count;
} baked;

static const baked kitchen[] = {{"rounds", "griddle cake", rounds, 2},
                                {"cookies", "cookie", cookies, 3},
                                {"crackers", "cracker", crackers, 2}};

/* The rules of `l` over the recipes of the kitchen whose bits are set. */
static rule_tally tallied(larder *l, unsigned which) {
    rule_book_index(l->a, &l->book);
    rule_tally tally = rule_tally_new(l->a, &l->book);
    for (size_t i = 0; i < COUNT(kitchen); i++) {
        if (!(which >> i & 1u))
            continue;
        recipe *r = larder_recipe(l, kitchen[i].kind, kitchen[i].lines, kitchen[i].count);
        r->slug = kitchen[i].slug;
        recipe_facts about = facts_of(l->a, r, &l->shelf);
        rule_tally_recipe(&tally, l->a, &about);
    }
    return tally;
}

static selector powder(larder *l, const char *kind) {
    return by_kind(l, FAMILY_PROTEIN_POWDER, kind);
}

static void what_holds_decides_and_hides(void **state) {
    (void)state;
    larder *l = larder_new();
    selector powders = by_family(FAMILY_PROTEIN_POWDER);
    own_rule(l, "any for any", powders, powders, VERDICT_ADJUST);
    own_rule(l, "whey for pea", powder(l, "pea"), powder(l, "whey"), VERDICT_AVOID);
    own_rule(l, "whey for plants", with_origin(powders, ORIGIN_PLANT), powder(l, "whey"),
             VERDICT_AVOID);
    own_rule(l, "butters", by_family(FAMILY_NUT_BUTTER), by_family(FAMILY_NUT_BUTTER),
             VERDICT_WORKS);
    swap_rule *loaves =
        own_rule(l, "in loaves", powder(l, "pea"), powder(l, "rice"), VERDICT_WORKS);
    LIST_ADD(l->a, &loaves->when.kinds, span_of("loaf"));
    loaves->when.count = 1;
    larder_rule(l, "reference", powder(l, "pea"), powder(l, "rice"), VERDICT_WORKS);
    const struct {
        bool has_replaced, holds, decides;
        const char *hidden_by;
    } rows[] = {{true, true, true, "whey for pea"},
                {true, true, true, NULL},
                {true, true, false, "whey for pea"},
                {false, false, false, NULL},
                {true, false, false, NULL},
                {false, false, false, NULL}}; /* the reference is not asked */
    rule_tally tally = tallied(l, 7);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *name = l->book.rules.items[i].id;
        expect_bool(name, tally.of[i].has_replaced, rows[i].has_replaced);
        expect_bool(name, tally.of[i].holds, rows[i].holds);
        expect_bool(name, tally.of[i].decides, rows[i].decides);
        if (!rows[i].decides)
            expect_text(name, tally.of[i].hidden_by ? tally.of[i].hidden_by->id : "nobody",
                        rows[i].hidden_by ? rows[i].hidden_by : "nobody");
    }
    larder_free(l);
}

static size_t counted(const rule_tally *tally, const unsigned long long *set) {
    const trial *first;
    return rule_tally_count(tally, set, &first);
}

static void bakes_agree_or_contradict(void **state) {
    (void)state;
    larder *l = larder_new();
    own_rule(l, "whey for pea", powder(l, "pea"), powder(l, "whey"), VERDICT_WORKS);
    bake(l, "rounds", whey, VERDICT_AVOID);                        /* on it: it decides there */
    bake(l, "scones", whey, VERDICT_WORKS);                        /* so this need not speak */
    bake(l, "blinis", "whey protein hydrolysate", VERDICT_ADJUST); /* of another powder */
    rule_tally tally = tallied(l, 1);
    const trial *first;
    assert_int_equal(rule_tally_count(&tally, tally.of[0].contradict, &first), 1);
    expect_text("the bake on it", first->recipe, "rounds");
    assert_int_equal(counted(&tally, tally.of[0].agree), 1); /* hydrolysate for pea, by blinis */
    larder_free(l);
}

/* The reference is doubted only for recipes that go by it, not for the one that was baked. */
static void the_reference_is_doubted_elsewhere(void **state) {
    (void)state;
    larder *l = larder_new();
    larder_rule(l, "whey for pea", powder(l, "pea"), powder(l, "whey"), VERDICT_WORKS);
    bake(l, "rounds", whey, VERDICT_AVOID);
    rule_tally tally = tallied(l, 7);
    assert_int_equal(counted(&tally, tally.of[0].contradict), 0);
    l->book.log.count = 0;
    bake(l, "scones", whey, VERDICT_AVOID);
    tally = tallied(l, 7);
    assert_int_equal(counted(&tally, tally.of[0].contradict), 1);
    expect_text("where", tally.of[0].against.recipe, "rounds");
    expect_text("of what", tally.of[0].against.to->name, whey);
    larder_free(l);
}

static void expect_same(const char *name, const rule_tally *one, const rule_tally *other) {
    for (size_t i = 0; i < one->book->rules.count; i++) {
        const rule_fate *a = &one->of[i], *b = &other->of[i];
        bool same = a->has_replaced == b->has_replaced && a->holds == b->holds &&
                    a->decides == b->decides && a->hidden_by == b->hidden_by &&
                    counted(one, a->agree) == counted(other, b->agree) &&
                    counted(one, a->contradict) == counted(other, b->contradict);
        expect_bool(name, same, true);
        expect_text(name, a->against.recipe ? a->against.recipe : "none",
                    b->against.recipe ? b->against.recipe : "none");
    }
}

/* However the recipes are shared out among workers, and in whatever order they are joined. */
static void workers_do_not_show(void **state) {
    (void)state;
    larder *l = larder_new();
    selector powders = by_family(FAMILY_PROTEIN_POWDER);
    own_rule(l, "any for any", powders, powders, VERDICT_ADJUST);
    own_rule(l, "whey for pea", powder(l, "pea"), powder(l, "whey"), VERDICT_WORKS);
    own_rule(l, "flours", by_family(FAMILY_FLOUR), by_family(FAMILY_FLOUR), VERDICT_WORKS);
    bake(l, "rounds", whey, VERDICT_AVOID);
    bake(l, "scones", whey, VERDICT_AVOID);
    rule_tally whole = tallied(l, 7);
    for (unsigned first = 0; first < 8; first++) {
        rule_tally one = tallied(l, first), other = tallied(l, 7 & ~first);
        rule_tally joined = rule_tally_new(l->a, &l->book);
        rule_tally_join(&joined, &other);
        rule_tally_join(&joined, &one);
        expect_same("joined", &joined, &whole);
    }
    larder_free(l);
}

/* -- questions without an answer ------------------------------------------------------------- */

static void what_nobody_answers(void **state) {
    (void)state;
    larder *l = larder_new();
    const portion_of lines[] = {
        {"egg", 100}, {"coconut flour", 60}, {pea, 60}, {"oat flour", 5}, {"almond butter", 80}};
    recipe *r = larder_recipe(l, "muffin", lines, 5);
    larder_group(l, r, "On top", 4);
    bool any = true;
    recipe_facts about = larder_facts(l, r);
    assert_int_equal(unanswered_next(l->a, &l->book, &about, 0, &any), 1);
    assert_false(any);
    assert_int_equal(unanswered_next(l->a, &l->book, &about, 2, &any), 2);
    /* a pinch of oat flour and the butter on top are not asked for */
    assert_int_equal(unanswered_next(l->a, &l->book, &about, 3, &any), 5);
    larder_rule(l, "flour", by_family(FAMILY_FLOUR), by_kind(l, FAMILY_FLOUR, "oat"),
                VERDICT_AVOID);
    larder_rule(l, "hydrolysate", powder(l, "pea"), powder(l, "whey hydrolysate"), VERDICT_WORKS);
    about = larder_facts(l, r);
    /* "avoid" is an answer; a powder that few own is none */
    assert_int_equal(unanswered_next(l->a, &l->book, &about, 0, &any), 2);
    assert_true(any);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_holds_decides_and_hides),
        cmocka_unit_test(bakes_agree_or_contradict),
        cmocka_unit_test(the_reference_is_doubted_elsewhere),
        cmocka_unit_test(workers_do_not_show),
        cmocka_unit_test(what_nobody_answers),
    };
    return cmocka_run_group_tests_name("rule_tally", tests, NULL, NULL);
}
