#include "checks.h"

#include "pantry/ingredient.h"

static void words_and_values_agree(void **state) {
    (void)state;
    for (int i = 0; i < FAMILY_COUNT; i++) {
        family got;
        assert_true(family_named(span_of(family_word((family)i)), &got));
        assert_int_equal(got, i);
    }
    for (int i = 0; i < ORIGIN_COUNT; i++) {
        origin got;
        assert_true(origin_named(span_of(origin_word((origin)i)), &got));
        assert_int_equal(got, i);
    }
    for (int i = 0; i < HEAT_SET_COUNT; i++) {
        heat_set got;
        assert_true(heat_set_named(span_of(heat_set_word((heat_set)i)), &got));
        assert_int_equal(got, i);
    }
    for (int i = 0; i < CERTAINTY_COUNT; i++) {
        certainty got;
        assert_true(certainty_named(span_of(certainty_word((certainty)i)), &got));
        assert_int_equal(got, i);
    }
}

static void an_unknown_word_names_nothing(void **state) {
    (void)state;
    static const char *const rows[] = {"", "flours", "Flour", "powder", "firmly"};
    for (size_t i = 0; i < COUNT(rows); i++) {
        span word = span_of(rows[i]);
        family in = FAMILY_SALT;
        origin from;
        heat_set sets;
        polyol which;
        certainty sure;
        if (family_named(word, &in) || origin_named(word, &from) || heat_set_named(word, &sets) ||
            polyol_named(word, &which) || certainty_named(word, &sure))
            fail_msg("\"%s\" names something", rows[i]);
        assert_int_equal(in, FAMILY_SALT);
    }
}

static void some_words_have_their_own_row(void **state) {
    (void)state;
    family in;
    polyol which;
    assert_true(family_named(span_of("fruit puree"), &in)); /* folded: without its accent */
    assert_int_equal(in, FAMILY_FRUIT_PUREE);
    assert_true(polyol_named(span_of("erythritol"), &which));
    assert_int_equal(which, POLYOL_ERYTHRITOL);
    assert_string_equal(amino_acid_key(AMINO_SULPHUR), "methionine-cystine");
    assert_string_equal(amino_acid_key(AMINO_VALINE), "valine");
}

static void a_kind_matches_by_leading_words(void **state) {
    (void)state;
    static const struct {
        const char *kind, *of;
        bool matches;
    } rows[] = {{"whey", "whey", true},
                {"whey", "whey isolate", true},
                {"whey isolate", "whey", false},
                {"whey", "wheybread", false},
                {"isolate", "whey isolate", false},
                {"pea", "peanut", false}};
    for (size_t i = 0; i < COUNT(rows); i++)
        if (kind_matches(rows[i].kind, rows[i].of) != rows[i].matches)
            fail_msg("%s of %s", rows[i].kind, rows[i].of);
}

/* 1 cup = 16 tbsp = 48 tsp: NIST SP 430. */
static void vessels_follow_from_one_another(void **state) {
    (void)state;
    static const struct {
        const char *stated;
        double grams;
        const char *asked;
        double low, typical, high; /* 0: none */
    } rows[] = {{"cup", 96, "cup", 90, 96, 108},    {"cup", 96, "tbsp", 5.625, 6, 6.75},
                {"cup", 96, "tsp", 1.875, 2, 2.25}, {"tbsp", 6, "cup", 90, 96, 108},
                {"tsp", 2, "tbsp", 5.625, 6, 6.75}, {"scoop", 30, "scoop", 28.125, 30, 33.75},
                {"scoop", 30, "cup", 0, 0, 0},      {"cup", 96, "large", 0, 0, 0},
                {"cup", 96, "fl oz", 0, 0, 0}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        double g = rows[i].grams;
        household_measure stated = {rows[i].stated, {g * 90 / 96, g, g * 108 / 96}};
        ingredient what = {.measures = {&stated, 1, 1}};
        range room;
        const range *got = ingredient_measure(&what, span_of(rows[i].asked), &room);
        same_count(rows[i].asked, got != NULL, rows[i].typical > 0);
        if (got) {
            same_number(rows[i].asked, got->low, rows[i].low, 0);
            same_number(rows[i].asked, got->typical, rows[i].typical, 0);
            same_number(rows[i].asked, got->high, rows[i].high, 0);
        }
    }
}

/* A stated spoon is taken as stated, not worked out from the cup. */
static void a_stated_spoon_wins(void **state) {
    (void)state;
    household_measure stated[] = {{"cup", {96, 96, 96}}, {"tbsp", {7, 7, 7}}};
    ingredient what = {.measures = {stated, COUNT(stated), COUNT(stated)}};
    range room;
    same_number("tbsp", ingredient_measure(&what, span_of("tbsp"), &room)->typical, 7, 0);
    same_number("tsp", ingredient_measure(&what, span_of("tsp"), &room)->typical, 2, 0);
}

static void an_amount_is_known_or_not(void **state) {
    (void)state;
    nutrients n = {0};
    assert_false(nutrient_known(&n, NUTRIENT_FIBRE));
    nutrient_set(&n, NUTRIENT_FIBRE, 0);
    assert_true(nutrient_known(&n, NUTRIENT_FIBRE));
    assert_false(nutrient_known(&n, NUTRIENT_SUGARS));
    assert_string_equal(nutrient_key(NUTRIENT_ADDED_SUGARS), "added-sugars");
    assert_string_equal(nutrient_unit(NUTRIENT_SODIUM), "mg");
    assert_string_equal(nutrient_json(NUTRIENT_ENERGY), "energy_kcal");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_and_values_agree),
        cmocka_unit_test(an_unknown_word_names_nothing),
        cmocka_unit_test(some_words_have_their_own_row),
        cmocka_unit_test(a_kind_matches_by_leading_words),
        cmocka_unit_test(vessels_follow_from_one_another),
        cmocka_unit_test(a_stated_spoon_wins),
        cmocka_unit_test(an_amount_is_known_or_not),
    };
    return cmocka_run_group_tests_name("ingredient", tests, NULL, NULL);
}
