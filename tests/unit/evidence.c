/* Which trials count for a swap, and what they say together. The rules are ours. */
#include "unit/support/cmocka_rows.h"

#include "swap/note.h"
#include "swap/recipe_build.h"
#include "unit/support/build_swaps.h"

static const char pea[] = "pea protein isolate", whey[] = "whey protein isolate";
static const portion_of rounds[] = {{pea, 60}, {"egg white", 140}};

/* -- builds ---------------------------------------------------------------------------------- */

static void which_builds_are_alike(void **state) {
    (void)state;
    const recipe_build here = {"cookie", SETTING_EGG, MOISTURE_EGG, true, true, false};
    const struct {
        const char *name;
        recipe_build other;
        bool alike;
    } rows[] = {
        {"the same", here, true},
        {"one kind, otherwise moistened",
         {"cookie", SETTING_EGG, MOISTURE_NUT_BUTTER, false, true, false},
         true},
        {"another kind, mixed alike", {"bar", SETTING_EGG, MOISTURE_EGG, true, true, false}, true},
        {"another kind, otherwise moistened",
         {"bar", SETTING_EGG, MOISTURE_DAIRY, true, true, false},
         false},
        {"another kind, not leavened",
         {"bar", SETTING_EGG, MOISTURE_EGG, false, true, false},
         false},
        {"one kind, set by something else",
         {"cookie", SETTING_STARCH, MOISTURE_EGG, true, true, false},
         false},
        {"not baked", {"cookie", SETTING_EGG, MOISTURE_EGG, true, false, false}, false},
        {"beside a mix", {"cookie", SETTING_EGG, MOISTURE_EGG, true, true, true}, false},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        expect_bool(rows[i].name, builds_alike(&here, &rows[i].other), rows[i].alike);
        expect_bool(rows[i].name, builds_alike(&rows[i].other, &here), rows[i].alike);
    }
    const recipe_build none = {"", SETTING_EGG, MOISTURE_EGG, true, true, false},
                       other = {"", SETTING_EGG, MOISTURE_DAIRY, true, true, false};
    expect_bool("no kind is no kind in common", builds_alike(&none, &other), false);
}

static void a_build_is_that_of_the_part(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe *r = larder_recipe(l, "muffin",
                              (portion_of[]){{pea, 60}, {"egg white", 140}, {"yogurt", 100}}, 3);
    larder_group(l, r, "Icing", 2);
    recipe_facts about = larder_facts(l, r);
    recipe_build mix = build_of(&about), beside = build_of(about.beside);
    expect_text("kind", mix.kind, "muffin");
    assert_int_equal(mix.sets, SETTING_EGG_WHITE);
    assert_true(mix.baked && !mix.beside && beside.beside && !beside.baked);
    expect_text("an icing has no kind", beside.kind, "");
    larder_free(l);
}

/* -- ingredients and verdicts ---------------------------------------------------------------- */

static void which_ingredients_are_alike(void **state) {
    (void)state;
    arena *a = arena_new();
    const struct {
        const char *one, *other;
        bool same_family, alike;
    } rows[] = {
        {"whey isolate", "whey isolate", true, true},
        {"whey isolate", "whey concentrate", true, true},
        {"pea isolate", "pea", true, true},
        {"peanut", "peanut salted", true, true},
        {"whey isolate", "whey hydrolysate", true, false},
        {"whey", "blend whey", true, false},
        {"pea", "peanut", true, false},
        {"almond", "almond", false, false}, /* a flour and a butter */
        {"", "", true, false},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const ingredient *one = food(a, "one", FAMILY_PROTEIN_POWDER, rows[i].one, ORIGIN_PLANT);
        const ingredient *other =
            food(a, "other", rows[i].same_family ? FAMILY_PROTEIN_POWDER : FAMILY_FLOUR,
                 rows[i].other, ORIGIN_PLANT);
        expect_bool(rows[i].one, ingredients_alike(one, other), rows[i].alike);
        expect_bool(rows[i].other, ingredients_alike(other, one), rows[i].alike);
        expect_bool("itself", ingredients_alike(one, one), true);
    }
    arena_free(a);
}

static void which_verdicts_contradict(void **state) {
    (void)state;
    static const char *const rows[VERDICT_COUNT] = {/* works adjust different avoid untried */
                                                    "00110", "00010", "10000", "11000", "00000"};
    for (verdict one = 0; one < VERDICT_COUNT; one++)
        for (verdict other = 0; other < VERDICT_COUNT; other++)
            expect_bool(verdict_word(one), verdicts_contradict(one, other),
                        rows[one][other] == '1');
}

/* -- what counts ----------------------------------------------------------------------------- */

static const recipe_build griddle = {
    "griddle cake", SETTING_EGG_WHITE, MOISTURE_EGG_WHITE, false, true, false};
static const recipe_build cracker = {"cracker", SETTING_STARCH, MOISTURE_WATER, false, true, false};

/* A bake of whey for pea that came out `says`. */
static trial *bake(larder *l, const char *slug, const char *date, verdict says,
                   const recipe_build *build) {
    LIST_ADD(l->a, &l->book.log,
             (trial){.at = {"trials/test.yaml", (unsigned)l->book.log.count + 1, 3},
                     .recipe = slug,
                     .replaced.what = larder_find(l, pea),
                     .with.what = larder_find(l, whey),
                     .date = date,
                     .outcome = says,
                     .build = build,
                     .title = slug});
    return &l->book.log.items[l->book.log.count - 1];
}

/* A second whey, which the tests' pantry lacks. */
static void add_concentrate(larder *l) {
    ingredient *one = food(l->a, "whey protein concentrate", FAMILY_PROTEIN_POWDER,
                           "whey concentrate", ORIGIN_DAIRY);
    food_holds(one, 80, 7, 8, 0);
    pantry_add(&l->shelf, one, &l->found);
}

/* The note on whey for pea in rounds, of which a rule says `says` (untried: none does). */
static swap_note asked(larder *l, verdict says) {
    l->book.rules.count = 0;
    if (says != VERDICT_UNTRIED)
        larder_rule(l, "whey-for-pea", by_kind(l, FAMILY_PROTEIN_POWDER, "pea"),
                    by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), says);
    recipe_facts about = larder_facts(l, larder_recipe(l, "griddle cake", rounds, 2));
    return note_of(l->a, &l->book, &about, 0, larder_find(l, whey));
}

static void expect_evidence(const char *name, const evidence *got, size_t count, size_t recipes,
                            size_t agree) {
    if (got->count != count || got->recipes != recipes || got->agree != agree)
        fail_msg("%s: %zu trials, %zu recipes, %zu agree; expected %zu, %zu, %zu", name, got->count,
                 got->recipes, got->agree, count, recipes, agree);
}

static void trials_of_like_recipes_count(void **state) {
    (void)state;
    larder *l = larder_new();
    bake(l, "scones", "2026-01-01", VERDICT_AVOID, &griddle);
    bake(l, "pikelets", "2026-01-02", VERDICT_WORKS, &griddle);
    bake(l, "crackers", "2026-01-03", VERDICT_AVOID, &cracker);
    bake(l, "unread", "2026-01-04", VERDICT_AVOID, NULL);
    swap_note note = asked(l, VERDICT_AVOID);
    expect_evidence("avoid", &note.tried, 2, 2, 1);
    assert_int_equal(note.tried.contradict, 1);
    note = asked(l, VERDICT_ADJUST);
    expect_evidence("adjust", &note.tried, 2, 2, 0);
    assert_int_equal(note.tried.contradict, 1); /* works and adjust are neighbours */
    note = asked(l, VERDICT_UNTRIED);
    expect_evidence("untried", &note.tried, 2, 2, 0);
    assert_true(note.says == VERDICT_UNTRIED && note.to_g == 0);
    larder_free(l);
}

static void pairs_of_the_same_kinds_count(void **state) {
    (void)state;
    larder *l = larder_new();
    add_concentrate(l);
    const struct {
        const char *name, *from, *to;
        size_t count;
    } rows[] = {{"the pair", pea, whey, 1},
                {"another whey", pea, "whey protein concentrate", 1},
                {"casein is no whey", pea, "micellar casein", 0},
                {"rice is no pea", "brown rice protein", whey, 0},
                {"the other way round", whey, pea, 0}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        l->book.log.count = 0;
        trial *one = bake(l, "scones", "2026-01-01", VERDICT_AVOID, &griddle);
        one->replaced.what = larder_find(l, rows[i].from);
        one->with.what = larder_find(l, rows[i].to);
        swap_note note = asked(l, VERDICT_AVOID);
        expect_evidence(rows[i].name, &note.tried, rows[i].count, rows[i].count, rows[i].count);
    }
    larder_free(l);
}

static void of_one_recipe_the_latest_counts(void **state) {
    (void)state;
    larder *l = larder_new();
    bake(l, "scones", "2026-01-01", VERDICT_AVOID, &griddle);
    bake(l, "scones", "2026-02-01", VERDICT_ADJUST, &griddle);
    bake(l, "scones", "2026-01-15", VERDICT_AVOID, &griddle);
    swap_note note = asked(l, VERDICT_AVOID);
    expect_evidence("the latest says adjust", &note.tried, 3, 1, 0);
    expect_text("shown first", note.tried.items[0].bake->date, "2026-02-01");
    assert_true(note.tried.items[0].counts && !note.tried.items[1].counts &&
                !note.tried.items[2].counts);
    bake(l, "scones", "2026-02-01", VERDICT_AVOID, &griddle);
    note = asked(l, VERDICT_AVOID);
    expect_evidence("of one day the more cautious", &note.tried, 4, 1, 1);
    larder_free(l);
}

/* The rounds' slug in these tests is "test". */
static void a_trial_that_decides_is_no_evidence_for_itself(void **state) {
    (void)state;
    larder *l = larder_new();
    bake(l, "test", "2026-01-01", VERDICT_WORKS, &griddle);
    bake(l, "test", "2026-02-01", VERDICT_AVOID, &griddle);
    bake(l, "scones", "2026-01-01", VERDICT_AVOID, &griddle);
    swap_note note = asked(l, VERDICT_WORKS);
    assert_int_equal(note.by.by, SAID_BY_TRIAL);
    assert_int_equal(note.says, VERDICT_AVOID);
    expect_evidence("the other recipe, and the earlier bake beside it", &note.tried, 2, 1, 1);
    expect_text("its own earlier one", note.tried.items[1].bake->recipe, "test");
    assert_false(note.tried.items[1].counts);
    larder_free(l);
}

static void a_like_powder_tried_here_counts_without_a_build(void **state) {
    (void)state;
    larder *l = larder_new();
    add_concentrate(l);
    bake(l, "test", "2026-01-01", VERDICT_AVOID, NULL)->with.what =
        larder_find(l, "whey protein concentrate");
    swap_note note = asked(l, VERDICT_AVOID);
    assert_int_equal(note.by.by, SAID_BY_REFERENCE);
    expect_evidence("this very recipe", &note.tried, 1, 1, 1);
    larder_free(l);
}

/* Oat flour for pea: no rule speaks of it, and it is of another family. */
static void what_was_tried_elsewhere_is_listed_untried(void **state) {
    (void)state;
    larder *l = larder_new();
    const ingredient *oats = larder_find(l, "oat flour");
    bake(l, "scones", "2026-01-01", VERDICT_WORKS, &griddle)->with.what = oats;
    bake(l, "scones", "2026-02-01", VERDICT_AVOID, &griddle)->with.what = oats;
    bake(l, "crackers", "2026-01-01", VERDICT_WORKS, &cracker)->with.what =
        larder_find(l, "coconut flour");
    recipe_facts about = larder_facts(l, larder_recipe(l, "griddle cake", rounds, 2));
    swap_notes all = notes_of(l->a, &l->book, &about, true);
    size_t seen = 0;
    for (size_t i = 0; i < all.count; i++) {
        if (all.items[i].to->in != FAMILY_FLOUR)
            continue;
        seen++;
        assert_ptr_equal(all.items[i].to, oats);
        assert_int_equal(all.items[i].says, VERDICT_UNTRIED);
        expect_evidence("oats", &all.items[i].tried, 2, 1, 0);
    }
    assert_int_equal(seen, 1);
    assert_int_equal(notes_of(l->a, &l->book, &about, false).count, 0);
    larder_free(l);
}

static void the_order_of_the_log_changes_nothing(void **state) {
    (void)state;
    const char *slugs[] = {"scones", "pikelets", "blinis", "scones"};
    const char *dates[] = {"2026-01-01", "2026-01-02", "2026-01-03", "2026-01-04"};
    for (size_t first = 0; first < COUNT(slugs); first++) {
        larder *l = larder_new();
        for (size_t i = 0; i < COUNT(slugs); i++) {
            size_t k = (first + i) % COUNT(slugs);
            bake(l, slugs[k], dates[k], VERDICT_AVOID, &griddle);
        }
        swap_note note = asked(l, VERDICT_AVOID);
        expect_evidence("four trials of three", &note.tried, 4, 3, 3);
        expect_text("by recipe", note.tried.items[0].bake->recipe, "blinis");
        expect_text("the latest first", note.tried.items[2].bake->date, "2026-01-04");
        larder_free(l);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(which_builds_are_alike),
        cmocka_unit_test(a_build_is_that_of_the_part),
        cmocka_unit_test(which_ingredients_are_alike),
        cmocka_unit_test(which_verdicts_contradict),
        cmocka_unit_test(trials_of_like_recipes_count),
        cmocka_unit_test(pairs_of_the_same_kinds_count),
        cmocka_unit_test(of_one_recipe_the_latest_counts),
        cmocka_unit_test(a_trial_that_decides_is_no_evidence_for_itself),
        cmocka_unit_test(a_like_powder_tried_here_counts_without_a_build),
        cmocka_unit_test(what_was_tried_elsewhere_is_listed_untried),
        cmocka_unit_test(the_order_of_the_log_changes_nothing),
    };
    return cmocka_run_group_tests_name("evidence", tests, NULL, NULL);
}
