/* site/say.h and site/phrase.h: figures as the pages say them, in English. */
#include "support/cmocka_rows.h"

#include "site/phrase.h"
#include "site/say.h"
#include "unit/support/build_recipe.h"

static void changes_have_a_sign(void **state) {
    arena *a = *state;
    assert_string_equal(say_change(a, language_english(a), 2.14, 1, "g"), "+2.1 g");
    assert_string_equal(say_change(a, language_english(a), -4, 0, "kcal"), "\u22124 kcal");
    assert_string_equal(say_change(a, language_english(a), 0.04, 1, "g"), "unchanged");
    assert_string_equal(say_change(a, language_english(a), -0.04, 1, "g"), "unchanged");
}

static void amounts_keep_what_matters(void **state) {
    arena *a = *state;
    assert_string_equal(say_amount(a, language_english(a), 24.4, "g"), "24 g");
    assert_string_equal(say_amount(a, language_english(a), 0.44, "g"), "0.4 g");
    assert_string_equal(say_amount(a, language_english(a), 9.96, "g"), "10 g");
    assert_string_equal(say_grams_range(a, language_english(a), 16.2, 33.4), "16\u201333 g");
    assert_string_equal(say_grams_range(a, language_english(a), 16.2, 16.4), "16 g");
}

static void wide_ranges_are_told_roughly(void **state) {
    assert_string_equal(say_wide_range(*state, language_english(*state), 31.7, 64.2),
                        "30\u201365 g");
    assert_string_equal(say_wide_range(*state, language_english(*state), 31.7, 38.2),
                        "32\u201338 g");
    assert_string_equal(say_wide_range(*state, language_english(*state), 31.7, 31.9), "32 g");
}

/* A cup of 240 g: a tablespoon is 15 g, a teaspoon 5 g. */
static void an_amount_is_no_more_exact_than_its_range(void **state) {
    static const struct {
        range grams;
        const char *words;
    } rows[] = {{{42, 43, 44}, "43 g (2 tbsp + 2 1/2 tsp)"},
                {{20, 43, 70}, "about 45 g (3 tbsp)"},
                {{39, 43, 47}, "about 45 g (3 tbsp)"},
                {{42, 43.5, 46.5}, "44 g (2 tbsp + 2 1/2 tsp)"},
                {{130, 151, 190}, "about 160 g (2/3 cup)"},
                {{57, 100, 152}, "about 100 g (1/3 cup + 1 tbsp)"},
                {{-20, 7, 30}, "about 8 g (1 1/2 tsp)"}};
    ingredient *water = food(*state, "water", FAMILY_LIQUID, "water", ORIGIN_MINERAL);
    LIST_ADD(*state, &water->measures, (household_measure){"cup", {240, 240, 240}});
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_text(
            rows[i].words,
            say_about(*state, (saying){language_english(*state), CUPS_US}, water, rows[i].grams),
            rows[i].words);
    assert_string_equal(
        say_about(*state, (saying){language_english(*state), CUPS_US}, NULL, (range){20, 43, 70}),
        "about 45 g");
    assert_string_equal(phrase_capitalised(*state, "sets firmer"), "Sets firmer");
}

static void times_in_words_and_iso_8601(void **state) {
    static const struct {
        double minutes;
        const char *words, *iso;
    } rows[] = {{12, "12 min", "PT12M"},
                {60, "1 h", "PT1H"},
                {80, "1 h 20 min", "PT1H20M"},
                {1440, "24 h", "PT24H"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        assert_string_equal(say_minutes(*state, language_english(*state), rows[i].minutes),
                            rows[i].words);
        assert_string_equal(phrase_minutes_iso(*state, rows[i].minutes), rows[i].iso);
    }
}

static void dates_in_words(void **state) {
    assert_string_equal(say_date(*state, language_english(*state), "2026-05-02"), "2 May 2026");
    assert_string_equal(say_date(*state, language_english(*state), "2026-12-31"),
                        "31 December 2026");
    assert_string_equal(say_date(*state, language_english(*state), "some day"), "some day");
    assert_null(say_date(*state, language_english(*state), NULL));
}

static void yields_as_bakers_say_them(void **state) {
    static const struct {
        yield of;
        const char *words;
    } rows[] = {{{8, "rounds"}, "8 rounds"},  {{1.5, "loaves"}, "1 1/2 loaves"},
                {{0.1, "loaf"}, "1/10 loaf"}, {{1.0 / 12, "cake"}, "1/12 cake"},
                {{0.5, "bar"}, "1/2 bar"},    {{0.75, "bar"}, "3/4 bar"}};
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_text(rows[i].words, say_yield(*state, language_english(*state), &rows[i].of),
                    rows[i].words);
}

static void lists_end_in_and(void **state) {
    const char *const words[] = {"milk", "egg", "almond"};
    assert_string_equal(say_list(*state, language_english(*state), words, 1), "milk");
    assert_string_equal(say_list(*state, language_english(*state), words, 2), "milk and egg");
    assert_string_equal(say_list(*state, language_english(*state), words, 3),
                        "milk, egg and almond");
    assert_string_equal(phrase_count(*state, 1, "recipe"), "1 recipe");
    assert_string_equal(phrase_count(*state, 0, "recipe"), "0 recipes");
}

static int open_arena(void **state) {
    *state = arena_new();
    return 0;
}

static int close_arena(void **state) {
    arena_free(*state);
    return 0;
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(changes_have_a_sign),
                                       cmocka_unit_test(amounts_keep_what_matters),
                                       cmocka_unit_test(times_in_words_and_iso_8601),
                                       cmocka_unit_test(dates_in_words),
                                       cmocka_unit_test(yields_as_bakers_say_them),
                                       cmocka_unit_test(lists_end_in_and),
                                       cmocka_unit_test(wide_ranges_are_told_roughly),
                                       cmocka_unit_test(an_amount_is_no_more_exact_than_its_range)};
    return cmocka_run_group_tests_name("phrase", tests, open_arena, close_arena);
}
