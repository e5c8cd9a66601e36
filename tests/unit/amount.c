#include "checks.h"

#include "base/number.h"
#include "measure/amount.h"

static void reads_what_bakers_write(void **state) {
    (void)state;
    static const struct {
        const char *written;
        size_t took;
        double low, high;
    } rows[] = {
        {"60", 2, 60, 60},
        {"60 g", 2, 60, 60},
        {"60g", 2, 60, 60},
        {"0.5", 3, 0.5, 0.5},
        {"0,5", 3, 0.5, 0.5},
        {".5", 2, 0.5, 0.5},
        {"60, sifted", 2, 60, 60},
        {"1/2", 3, 0.5, 0.5},
        {"1\u20442", 5, 0.5, 0.5},
        {"1 1/2", 5, 1.5, 1.5},
        {"1  1/2", 6, 1.5, 1.5},
        {"1-1/2", 5, 1.5, 1.5},
        {"1 and 1/2", 9, 1.5, 1.5},
        {"1 \u00bd", 4, 1.5, 1.5},
        {"1\u00bd", 3, 1.5, 1.5},
        {"10\u00be", 4, 10.75, 10.75},
        {"2-3", 3, 2, 3},
        {"2 - 3", 5, 2, 3},
        {"2\u20133", 5, 2, 3},
        {"2 \u2013 3", 7, 2, 3},
        {"2 to 3", 6, 2, 3},
        {"2 or 3", 6, 2, 3},
        {"2-2", 3, 2, 2},
        {"1/2-3/4", 7, 0.5, 0.75},
        {"\u00bd\u2013\u00be", 7, 0.5, 0.75},
        {"1-1 1/2", 7, 1, 1.5},
        {"1 to 1\u00bd", 8, 1, 1.5},
        {"one", 3, 1, 1},
        {"Twelve eggs", 6, 12, 12},
        {"a", 1, 1, 1},
        {"an egg", 2, 1, 1},
        {"one or two", 10, 1, 2},
        {"half a cup", 6, 0.5, 0.5},
        {"half an egg", 7, 0.5, 0.5},
        {"half cup", 4, 0.5, 0.5},
        {"a quarter of a cup", 14, 0.25, 0.25},
        {"three quarters of a cup", 19, 0.75, 0.75},
        {"a half", 6, 0.5, 0.5},
        {"one and a half cups", 14, 1.5, 1.5},
        {"a dozen", 7, 12, 12},
        {"half a dozen", 12, 6, 6},
        {"2 dozen", 7, 24, 24},
        {"a couple of eggs", 8, 2, 2},
        {"2 to taste", 1, 2, 2},
        {"2 to a tin", 1, 2, 2},
        {"1 14 oz", 1, 1, 1},
        {"100000", 6, 100000, 100000},
        {"0", 1, 0, 0},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        amount_range got = {-1, -1};
        same_count(rows[i].written, amount_read(span_of(rows[i].written), &got), rows[i].took);
        same_number(rows[i].written, got.low, rows[i].low, 0);
        same_number(rows[i].written, got.high, rows[i].high, 0);
    }
}

static void reads_every_vulgar_fraction(void **state) {
    (void)state;
    static const struct {
        const char *sign;
        double above, below;
    } rows[] = {/* the Unicode Character Database, numeric values */
                {"\u00bc", 1, 4}, {"\u00bd", 1, 2},  {"\u00be", 3, 4}, {"\u2150", 1, 7},
                {"\u2151", 1, 9}, {"\u2152", 1, 10}, {"\u2153", 1, 3}, {"\u2154", 2, 3},
                {"\u2155", 1, 5}, {"\u2156", 2, 5},  {"\u2157", 3, 5}, {"\u2158", 4, 5},
                {"\u2159", 1, 6}, {"\u215a", 5, 6},  {"\u215b", 1, 8}, {"\u215c", 3, 8},
                {"\u215d", 5, 8}, {"\u215e", 7, 8}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        amount_range got;
        same_count(rows[i].sign, amount_read(span_of(rows[i].sign), &got), strlen(rows[i].sign));
        same_number(rows[i].sign, got.low, rows[i].above / rows[i].below, 0);
    }
}

static void what_is_no_amount_gives_none(void **state) {
    (void)state;
    static const char *const rows[] = {"",
                                       " ",
                                       "g",
                                       "-5",
                                       "+5",
                                       "\u00bd\u00bd",
                                       "1/0",
                                       "1/2/3",
                                       "1//2",
                                       "1.2.3",
                                       "1/",
                                       "/2",
                                       "3-2",
                                       "1.5\u00bd",
                                       "100001",
                                       "1-200000",
                                       "one-two",
                                       "apple",
                                       "ate",
                                       "halfway",
                                       "half and half",
                                       "a few",
                                       "a little",
                                       "a bit of",
                                       "12345678901234567",
                                       "1/2\u20443",
                                       "\u00bd1",
                                       "1\u00bd\u00bd"};
    for (size_t i = 0; i < COUNT(rows); i++) {
        amount_range got = {-1, -1};
        same_count(rows[i], amount_read(span_of(rows[i]), &got), 0);
        same_number(rows[i], got.low, -1, 0);
    }
}

static void tells_what_was_meant(void **state) {
    (void)state;
    static const struct {
        const char *written;
        bool meant;
    } rows[] = {{"\u00bd\u00bd", true}, {"-5", true},  {".5", true}, {"1/0", true},
                {"/2", true},           {"", false},   {"g", false}, {"-", false},
                {"half", false},        {"+ a", false}};
    for (size_t i = 0; i < COUNT(rows); i++)
        if (amount_is_meant(span_of(rows[i].written)) != rows[i].meant)
            fail_msg("%s", rows[i].written);
}

static void passes_over_about(void **state) {
    (void)state;
    static const struct {
        const char *written;
        size_t took;
    } rows[] = {{"about 46 g", 6}, {"approx. 46", 8}, {"ca. 46", 4},   {"~46", 1},
                {"\u2248 46", 4},  {"46", 0},         {"aboutness", 0}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_count(rows[i].written, amount_about(span_of(rows[i].written)), rows[i].took);
}

static const struct {
    double value, tolerance;
    const char *printed;
} printed_rows[] = {
    {1, 0.01, "1"},
    {0.5, 0.01, "1/2"},
    {1.5, 0.01, "1 1/2"},
    {1.0 / 3, 0, "1/3"},
    {2 + 2.0 / 3, 0.01, "2 2/3"},
    {0.125, 0.01, "1/8"},
    {3.75, 0.01, "3 3/4"},
    {0.4583, 0.01, "0.46"},
    {1.999, 0.01, "2"},
    {0.34, 0.01, "1/3"},
    {0.34, 0.001, "0.34"},
    {60, 0.01, "60"},
    {0.004, 0.01, "0"},
    {0, 0.01, "0"},
    {99999.5, 0.01, "99999 1/2"},
    {0.01, 0.001, "0.01"},
    {12.3456, 0.001, "12.35"},
};

static void prints_kitchen_fractions(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(printed_rows); i++) {
        text t = TEXT_EMPTY;
        amount_add(&t, printed_rows[i].value, printed_rows[i].tolerance);
        same_text(printed_rows[i].printed, t.bytes, printed_rows[i].printed);
        text_free(&t);
    }
}

/* What is printed reads back as the same amount, within the tolerance or half a hundredth. */
static void printed_amounts_read_back(void **state) {
    (void)state;
    static const double tolerances[] = {0.001, 0.01, 0.05};
    for (size_t k = 0; k < COUNT(tolerances); k++)
        for (int i = 1; i <= 4000; i++) {
            double value = i / 96.0;
            text t = TEXT_EMPTY;
            amount_range got;
            amount_add(&t, value, tolerances[k]);
            same_count(t.bytes, amount_read(text_span(&t), &got), t.length);
            same_number(t.bytes, got.low, value, fmax(tolerances[k], 0.005) + 1e-9);
            text_free(&t);
        }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_what_bakers_write),
        cmocka_unit_test(reads_every_vulgar_fraction),
        cmocka_unit_test(what_is_no_amount_gives_none),
        cmocka_unit_test(tells_what_was_meant),
        cmocka_unit_test(passes_over_about),
        cmocka_unit_test(prints_kitchen_fractions),
        cmocka_unit_test(printed_amounts_read_back),
    };
    return cmocka_run_group_tests_name("amount", tests, NULL, NULL);
}
