/* Yields and portions as pages state them. */
#include "checks.h"

#include "draft/stated_yield.h"

static void chooses_among_what_is_stated(void **state) {
    (void)state;
    static const struct {
        const char *stated[3];
        const char *makes;
        bool remarked;
    } rows[] = {
        {{"8 rounds"}, "8 rounds", false},
        {{"8"}, "8 pieces", true},
        {{"8", "8 rounds"}, "8 rounds", true},
        {{"12 servings", "24 cookies"}, "24 cookies", true},
        {{"Serves 4"}, "4 servings", true},
        {{"4 people"}, "4 servings", true},
        {{"Servings: 4"}, "4 servings", true},
        {{"4-6 servings"}, "4-6 servings", false},
        {{"Makes about 20 small cookies"}, "20 small cookies", true},
        {{"Yield: 1 loaf (12 slices)"}, "1 loaf", true},
        {{"one loaf"}, "one loaf", false},
        {{"2 dozen bars"}, "2 dozen bars", false},
        {{"6 cups"}, "6 cups", false},
        {{"500 g"}, "1 batch", true},
        {{"1 litre"}, "1 batch", true},
        {{"plenty"}, "1 batch", true},
        {{"0"}, "1 batch", true},
        {{""}, "1 batch", true},
        {{NULL}, "1 batch", true},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        word_list stated = {0};
        for (size_t k = 0; k < 3 && rows[i].stated[k]; k++)
            LIST_ADD(a, &stated, rows[i].stated[k]);
        const char *row = rows[i].stated[0] ? rows[i].stated[0] : "nothing stated";
        stated_yield got = yield_stated(a, &stated);
        same_text(row, got.makes, rows[i].makes);
        if ((got.remark != NULL) != rows[i].remarked)
            fail_msg("%s: %s", row, got.remark ? got.remark : "no remark");
        arena_free(a);
    }
}

static void takes_a_portion_of_the_same_things(void **state) {
    (void)state;
    static const struct {
        const char *makes, *serving, *portion;
    } rows[] = {
        {"12 slices", "2 slices (80 g)", "2 slices"},
        {"12 slices", "1 slice", "1 slice"},
        {"1 loaf", "1/10 loaf (88 g)", "1/10 loaf"},
        {"12 slices", "80 g", NULL},
        {"12 slices", "2", NULL},
        {"12 slices", "2 bars", NULL},
        {"12 slices", "5 slices", NULL}, /* leaves two over */
        {"12 slices", "24 slices", NULL},
        {"12 slices", "", NULL},
        {"12 slices", NULL, NULL},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        const char *got = portion_stated(a, rows[i].makes, rows[i].serving);
        same_text(rows[i].serving ? rows[i].serving : "none", got ? got : "-",
                  rows[i].portion ? rows[i].portion : "-");
        arena_free(a);
    }
}

static void asks_for_a_portion(void **state) {
    (void)state;
    static const struct {
        const char *makes, *stated, *holds;
    } rows[] = {
        {"1 loaf", "1 loaf (12 slices)", "portion: 1/12, if one of \"12 slices\""},
        {"1 loaf", "Makes 1 loaf, 10 slices", "portion: 1/10, if one of \"10 slices\""},
        {"one cake", "one cake, cut into 16 squares", "portion: 1/16"},
        {"1 loaf", "1 loaf (9 inches)", "for example 1/12"},
        {"1 loaf", "1 loaf", "for example 1/12"},
        {"12 bars", "12 bars", "how many are one"},
        {"4 servings", "Serves 4", NULL},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        word_list stated = {0};
        LIST_ADD(a, &stated, rows[i].stated);
        const char *got = portion_asked(a, rows[i].makes, &stated);
        bool right =
            got && rows[i].holds ? strstr(got, rows[i].holds) != NULL : got == rows[i].holds;
        if (!right)
            fail_msg("%s: %s", rows[i].stated, got ? got : "nothing asked");
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(chooses_among_what_is_stated),
        cmocka_unit_test(takes_a_portion_of_the_same_things),
        cmocka_unit_test(asks_for_a_portion),
    };
    return cmocka_run_group_tests_name("stated_yield", tests, NULL, NULL);
}
