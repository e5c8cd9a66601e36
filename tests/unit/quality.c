#include "unit/support/cmocka_rows.h"

#include "nutrition/quality.h"
#include "unit/support/build_recipe.h"

#define NONE (-1.0)

/* Twice the pattern of 1991 in everything but lysine, which is half of it. */
static const double poor_in_lysine[] = {3.8, 5.6, 13.2, 2.9, 5.0, 12.6, 6.8, 2.2, 7.0};
static const double without_tryptophan[] = {3.8, 5.6, 13.2, 2.9, 5.0, 12.6, 6.8, NONE, 7.0};
static const double without_lysine[] = {3.8, 5.6, 13.2, NONE, 5.0, 12.6, 6.8, 2.2, 7.0};

static ingredient *powder(arena *a, const char *name, double protein_g, const double *profile,
                          double digestibility) {
    ingredient *one = food(a, name, FAMILY_PROTEIN_POWDER, "", ORIGIN_PLANT);
    food_holds(one, protein_g, 0, 0, 0);
    if (profile)
        food_amino_acids(one, profile, digestibility);
    return one;
}

static void scores_one_ingredient(void **state) {
    (void)state;
    arena *a = arena_new();
    protein_quality q = quality_of_ingredient(a, powder(a, "p", 80, poor_in_lysine, 0.9));
    expect_bool("known", q.known, true);
    expect_near("covered", q.covered, 1, 1e-12);
    expect_near("score", q.score, 0.5, 1e-12);
    expect_near("PDCAAS", q.pdcaas, 0.45, 1e-12);
    expect_near("2013", q.score_2013, 2.9 / 4.8, 1e-12);
    assert_int_equal(q.limiting, AMINO_LYSINE);
    assert_int_equal(q.without.count, 0);
    arena_free(a);
}

static const struct {
    const char *name;
    double profiled_g, bare_g; /* protein with and without a profile */
    bool known;
    size_t without;
} covers[] = {
    {"all has a profile", 100, 0, true, 0}, {"nine tenths are enough", 90, 10, true, 1},
    {"less is not", 89, 11, false, 1},      {"a hundredth is not worth naming", 99, 1, true, 0},
    {"none has", 0, 50, false, 1},
};

static void takes_profiles_of_nine_tenths(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(covers); i++) {
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, powder(a, "profiled", 100, poor_in_lysine, 0.9), covers[i].profiled_g);
        recipe_add(a, r, powder(a, "bare", 100, NULL, 0), covers[i].bare_g);
        recipe_add(a, r, food_of_nothing(a, "water"), 500);
        recipe_finish(r, 1, 0);
        protein_quality q = quality_of(a, r);
        expect_bool(covers[i].name, q.known, covers[i].known);
        if (q.without.count != covers[i].without)
            fail_msg("%s: %zu without", covers[i].name, q.without.count);
        expect_near(covers[i].name, quality_corrected_g(&q, 20), q.known ? 9 : 0, 1e-9);
    }
    arena_free(a);
}

static void a_profile_needs_what_limits_most(void **state) {
    (void)state;
    arena *a = arena_new();
    const struct {
        const char *name;
        const double *profile;
        double digestibility;
        bool known;
        unsigned unscored;
    } rows[] = {
        {"whole", poor_in_lysine, 0.9, true, 0},
        {"tryptophan may be missing", without_tryptophan, 0.9, true, 1u << AMINO_TRYPTOPHAN},
        {"lysine may not", without_lysine, 0.9, false, 0},
        {"digestibility may not", poor_in_lysine, 0, false, 0},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        protein_quality q = quality_of_ingredient(
            a, powder(a, rows[i].name, 80, rows[i].profile, rows[i].digestibility));
        expect_bool(rows[i].name, q.known, rows[i].known);
        assert_int_equal(q.unscored, rows[i].unscored);
    }
    arena_free(a);
}

static void an_amino_acid_is_scored_from_nine_tenths_on(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double with_g, without_g;
        unsigned unscored;
    } cases[] = {{"nine tenths", 90, 10, 0}, {"less", 89, 11, 1u << AMINO_TRYPTOPHAN}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(cases); i++) {
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, powder(a, "with", 100, poor_in_lysine, 0.9), cases[i].with_g);
        recipe_add(a, r, powder(a, "without", 100, without_tryptophan, 0.9), cases[i].without_g);
        recipe_finish(r, 1, 0);
        if (quality_of(a, r).unscored != cases[i].unscored)
            fail_msg("%s: %#x", cases[i].name, quality_of(a, r).unscored);
    }
    arena_free(a);
}

static void what_may_bring_protein_unseen_makes_it_unknown(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *fine = powder(a, "fine", 80, poor_in_lysine, 0.9);
    ingredient *silent = food(a, "silent", FAMILY_FLOUR, "", ORIGIN_PLANT);
    static const char *const cases[] = {"unweighed", "unknown", "no figure", "to taste"};
    for (size_t i = 0; i < COUNT(cases); i++) {
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, fine, 100);
        if (i == 0)
            recipe_add_unweighed(a, r, food_of_nothing(a, "unweighed"));
        else if (i == 1)
            recipe_add_unknown(a, r, "unknown", 5);
        else if (i == 2)
            recipe_add(a, r, silent, 5);
        else
            recipe_add_to_taste(a, r, silent);
        recipe_finish(r, 1, 0);
        protein_quality q = quality_of(a, r);
        expect_bool(cases[i], q.known, i == 3);
        assert_int_equal(q.without.count, i == 3 ? 0 : 1);
    }
    arena_free(a);
}

static void no_protein_has_no_quality(void **state) {
    (void)state;
    arena *a = arena_new();
    protein_quality q = quality_of_ingredient(a, food_of_nothing(a, "water"));
    expect_bool("known", q.known, false);
    expect_near("covered", q.covered, 0, 0);
    expect_text("percent", quality_daily_value(a, &q, 10), NULL);
    arena_free(a);
}

static void pdcaas_is_cut_at_one(void **state) {
    (void)state;
    arena *a = arena_new();
    static const double rich[] = {3.8, 5.6, 13.2, 11.6, 5.0, 12.6, 6.8, 2.2, 7.0};
    protein_quality q = quality_of_ingredient(a, powder(a, "rich", 80, rich, 0.9));
    expect_near("score is not", q.score, 2, 1e-12);
    expect_near("PDCAAS is", q.pdcaas, 1, 0);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(scores_one_ingredient),
        cmocka_unit_test(takes_profiles_of_nine_tenths),
        cmocka_unit_test(a_profile_needs_what_limits_most),
        cmocka_unit_test(an_amino_acid_is_scored_from_nine_tenths_on),
        cmocka_unit_test(what_may_bring_protein_unseen_makes_it_unknown),
        cmocka_unit_test(no_protein_has_no_quality),
        cmocka_unit_test(pdcaas_is_cut_at_one),
    };
    return cmocka_run_group_tests_name("quality", tests, NULL, NULL);
}
