#include "shelf.h"

#include "measure/weigh.h"

typedef struct {
    arena *a;
    problems found;
    bool weighed;
    weight got;
} weighing;

static weighing weigh_it(const char *written, cup_standard cups) {
    weighing w = {.a = arena_new()};
    w.found = problems_in(w.a);
    pantry shelf = shelf_filled(w.a, &w.found);
    recipe_line line;
    place at = {"recipes/rounds.md", 9, 5};
    if (!line_read(w.a, (located){span_of(written), at}, &shelf, &line, &w.found))
        fail_msg("%s is not read", written);
    w.weighed = weigh_line(&line, cups, &w.got, &w.found);
    return w;
}

static void weighs_lines(void **state) {
    (void)state;
    static const struct {
        const char *written;
        weight_way way;
        double grams, low_g, high_g;
        const char *source;
    } rows[] = {
        {"60 g oat flour", WEIGHT_WRITTEN, 60, 60, 60, "as written"},
        {"2 oz oat flour", WEIGHT_WRITTEN, 56.69904625, 56.69904625, 56.69904625, "as written"},
        {"60 g dragon scales", WEIGHT_WRITTEN, 60, 60, 60, "as written"},
        {"50-60 g oat flour", WEIGHT_WRITTEN, 55, 50, 60, "as written"},
        {"1 lb and 2 oz butter", WEIGHT_WRITTEN, 510.29141625, 510.29141625, 510.29141625,
         "as written"},
        {"1/2 cup (46 g) oat flour", WEIGHT_AUTHOR, 46, 46, 46, "the author's own weight"},
        {"1/2 cup (45-50 g) oat flour", WEIGHT_AUTHOR, 47.5, 45, 50, "the author's own weight"},
        {"(46 g) dragon scales", WEIGHT_AUTHOR, 46, 46, 46, "the author's own weight"},
        {"3/4 cup oat flour", WEIGHT_MEASURED, 78, 67.5, 90, "USDA SR28 20132"},
        {"1-2 cups oat flour", WEIGHT_MEASURED, 156, 90, 240, "USDA SR28 20132"},
        {"16 tbsp oat flour", WEIGHT_MEASURED, 104, 90, 120, "USDA SR28 20132"},
        {"1 cup + 2 tbsp oat flour", WEIGHT_MEASURED, 117, 101.25, 135, "USDA SR28 20132"},
        {"1 cup almond butter", WEIGHT_MEASURED, 256, 256, 256, "USDA SR28 12195"},
        {"100 ml milk", WEIGHT_DENSITY, 24400 / 236.5882365, 24400 / 236.5882365,
         24400 / 236.5882365, "USDA SR28 01077"},
        {"1 pint milk", WEIGHT_DENSITY, 488, 488, 488, "USDA SR28 01077"},
        {"1 cup + 100 ml milk", WEIGHT_DENSITY, 244 + 24400 / 236.5882365,
         244 + 24400 / 236.5882365, 244 + 24400 / 236.5882365, "USDA SR28 01077"},
        {"2 large eggs", WEIGHT_MEASURED, 100, 100, 100, "USDA SR28 01123"},
        {"2 small eggs", WEIGHT_MEASURED, 76, 76, 76, "USDA SR28 01123"},
        {"2 eggs", WEIGHT_MEASURED, 100, 100, 100, "USDA SR28 01123"},
        {"2 whole eggs", WEIGHT_MEASURED, 100, 100, 100, "USDA SR28 01123"},
        {"1 banana", WEIGHT_MEASURED, 118, 118, 118, "the pantry's household weight"},
        {"1 lemon", WEIGHT_MEASURED, 84, 84, 84, "the pantry's household weight"},
        {"2 wedges lemon", WEIGHT_MEASURED, 14, 14, 14, "the pantry's household weight"},
        {"2 scoops pea protein", WEIGHT_MEASURED, 60, 56, 66, "the pantry's household weight"},
        {"1 stick butter", WEIGHT_MEASURED, 113, 113, 113, "the pantry's household weight"},
        {"a dash of salt", WEIGHT_MEASURED, 0.4, 0.4, 0.4, "the pantry's household weight"},
        {"a pinch of salt", WEIGHT_MEASURED, 0.375, 0.1875, 0.75, "the pantry's household weight"},
        {"salt to taste", WEIGHT_NONE, 0, 0, 0, "no amount"},
        {"60 g oat flour (optional)", WEIGHT_WRITTEN, 60, 60, 60, "as written"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *row = rows[i].written;
        weighing w = weigh_it(row, CUPS_US);
        if (!w.weighed || w.got.way != rows[i].way)
            fail_msg("%s: %s", row, weight_way_word(w.got.way));
        same_number(row, w.got.grams, rows[i].grams, 1e-6);
        same_number(row, w.got.low_g, rows[i].low_g, 1e-6);
        same_number(row, w.got.high_g, rows[i].high_g, 1e-6);
        same_text(row, w.got.source, rows[i].source);
        arena_free(w.a);
    }
}

static void names_the_measure_that_is_missing(void **state) {
    (void)state;
    static const struct {
        const char *written, *message, *hint;
    } rows[] = {
        {"1 cup chia seeds",
         "can't weigh \"1 cup chia seeds\": the pantry has no weight for one cup of chia seed",
         "add `measures: {cup: \u2026}` to the pantry entry of chia seed, or write a weight in "
         "brackets"},
        {"20 ml chia seeds",
         "can't weigh \"20 ml chia seeds\": the pantry has no weight for one ml of chia seed",
         "add `measures: {cup: \u2026}`"},
        {"2 extra large eggs",
         "can't weigh \"2 extra large eggs\": the pantry has no weight for one extra large egg",
         "add `measures: {extra large: \u2026}` to the pantry entry of egg, or write a weight in "
         "brackets; it has small, medium, large, cup"},
        {"1 can chickpeas",
         "can't weigh \"1 can chickpeas\": the pantry has no weight for one can of chickpea",
         "add `measures: {can: \u2026}`"},
        {"3 chickpeas", "can't weigh \"3 chickpeas\": the pantry has no weight for one chickpea",
         "add `measures: {each: \u2026}`"},
        {"60 pea protein",
         "can't weigh \"60 pea protein\": the pantry has no weight for one pea protein powder",
         "add `measures: {each: \u2026}`"},
        {"a pinch of pea protein",
         "can't weigh \"a pinch of pea protein\": the pantry has no weight for one pinch of pea "
         "protein powder",
         "add `measures: {tsp: \u2026}`"},
        {"1 lb + 1 cup chia seeds",
         "can't weigh \"1 lb + 1 cup chia seeds\": the pantry has no weight for one cup of chia "
         "seed",
         "add `measures: {cup: \u2026}`"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        weighing w = weigh_it(rows[i].written, CUPS_US);
        assert_false(w.weighed);
        assert_int_equal(w.got.way, WEIGHT_UNKNOWN);
        same_count(rows[i].written, w.found.errors, 1);
        same_text(rows[i].written, w.found.items[0].message, rows[i].message);
        same_count(rows[i].written, w.found.items[0].at.line, 9);
        if (!span_begins(span_of(w.found.items[0].hint), rows[i].hint))
            fail_msg("%s: hint \"%s\"", rows[i].written, w.found.items[0].hint);
        arena_free(w.a);
    }
}

/* What is not in the pantry was reported when the line was read: once is enough. */
static void an_unknown_ingredient_is_reported_once(void **state) {
    (void)state;
    static const char *const rows[] = {"1 cup dragon scales", "2 dragon scales",
                                       "a pinch of dragon scales"};
    for (size_t i = 0; i < COUNT(rows); i++) {
        weighing w = weigh_it(rows[i], CUPS_US);
        assert_false(w.weighed);
        same_count(rows[i], w.found.count, 1);
        arena_free(w.a);
    }
}

static void a_forgotten_amount_is_not_silent(void **state) {
    (void)state;
    weighing w = weigh_it("oat flour, sifted", CUPS_US);
    assert_true(w.weighed);
    assert_int_equal(w.got.way, WEIGHT_NONE);
    assert_int_equal(w.found.warnings, 1);
    assert_string_equal(w.found.items[0].message,
                        "\"oat flour, sifted\" has no amount and counts for nothing");
    arena_free(w.a);
}

/* Pantry weights are of US customary vessels; another cup weighs in proportion to its volume. */
static void weighs_with_the_cups_of_the_site(void **state) {
    (void)state;
    static const struct {
        const char *written;
        double us, us_label, metric, australian;
    } rows[] = {
        {"1 cup oat flour", 104, 104 * 240 / 236.5882365, 104 * 250 / 236.5882365,
         104 * 250 / 236.5882365},
        {"1 tbsp milk", 15.25, 244 * 15 / 236.5882365, 244 * 15 / 236.5882365,
         244 * 20 / 236.5882365},
        {"1 tsp salt", 6, 6 * 5 / 4.92892159375, 6 * 5 / 4.92892159375, 6 * 5 / 4.92892159375},
        {"100 ml milk", 24400 / 236.5882365, 24400 / 236.5882365, 24400 / 236.5882365,
         24400 / 236.5882365},
        {"60 g oat flour", 60, 60, 60, 60},
        {"1 large egg", 50, 50, 50, 50},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const double wanted[] = {[CUPS_US] = rows[i].us,
                                 [CUPS_US_LABEL] = rows[i].us_label,
                                 [CUPS_METRIC] = rows[i].metric,
                                 [CUPS_AUSTRALIAN] = rows[i].australian};
        for (size_t k = 0; k < COUNT(wanted); k++) {
            weighing w = weigh_it(rows[i].written, (cup_standard)k);
            same_number(rows[i].written, w.got.grams, wanted[k], 1e-6);
            arena_free(w.a);
        }
    }
}

static void finds_what_a_bare_count_means(void **state) {
    (void)state;
    static const char *const rows[][2] = {{"lemon", "each"},       {"egg", "large"},
                                          {"banana", "medium"},    {"butter", "stick"},
                                          {"oat flour", "(none)"}, {"salt", "(none)"}};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = shelf_filled(a, &found);
    static const shelf_row two = {
        "tofu", NULL, FAMILY_LEGUME, {{"block", 400, 400, 400}, {"slice", 40, 40, 40}}, NULL};
    shelf_add(&shelf, &two, &found);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *called = "(none)";
        const range *one = weigh_one(pantry_find(&shelf, span_of(rows[i][0]), a), &called);
        same_text(rows[i][0], one ? called : "(none)", rows[i][1]);
    }
    const char *called;
    assert_null(weigh_one(pantry_find(&shelf, span_of("tofu"), a), &called));
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(weighs_lines),
        cmocka_unit_test(names_the_measure_that_is_missing),
        cmocka_unit_test(an_unknown_ingredient_is_reported_once),
        cmocka_unit_test(a_forgotten_amount_is_not_silent),
        cmocka_unit_test(weighs_with_the_cups_of_the_site),
        cmocka_unit_test(finds_what_a_bare_count_means),
    };
    return cmocka_run_group_tests_name("weigh", tests, NULL, NULL);
}
