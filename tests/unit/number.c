#include "checks.h"

#include "base/number.h"

#include <locale.h>

static void reads_decimals(void **state) {
    (void)state;
    static const struct {
        const char *written;
        size_t took;
        double value;
    } rows[] = {{"60", 2, 60},
                {"0.5", 3, 0.5},
                {"0,5", 3, 0.5},
                {".5", 2, 0.5},
                {"-1.25", 5, -1.25},
                {"+2", 2, 2},
                {"60 g", 2, 60},
                {"60g", 2, 60},
                {"1.", 1, 1},
                {"1.2.3", 3, 1.2},
                {"1,2.3", 3, 1.2},
                {"1e5", 1, 1},
                {"007", 3, 7},
                {"0.1", 3, 0.1},
                {"2.675", 5, 2.675},
                {"123456789012345", 15, 123456789012345.0},
                {"1234567890123456", 0, 0},
                {"", 0, 0},
                {"-", 0, 0},
                {"+.", 0, 0},
                {".", 0, 0},
                {"x", 0, 0},
                {"--5", 0, 0},
                {"inf", 0, 0},
                {"nan", 0, 0}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        double got = 0;
        same_count(rows[i].written, number_read(span_of(rows[i].written), &got), rows[i].took);
        same_number(rows[i].written, got, rows[i].value, 0);
    }
}

static void takes_the_whole_or_nothing(void **state) {
    (void)state;
    double got = 7;
    assert_true(number_is(span_of("0,25"), &got));
    same_number("0,25", got, 0.25, 0);
    static const char *const rows[] = {"", "0.25 g", " 1", "1 ", "1.2.3", "one"};
    for (size_t i = 0; i < COUNT(rows); i++)
        if (number_is(span_of(rows[i]), &got))
            fail_msg("\"%s\" is no number", rows[i]);
    same_number("untouched", got, 0.25, 0);
}

static void writes_the_shortest_form(void **state) {
    (void)state;
    static const struct {
        double value;
        int decimals;
        const char *plain, *fixed;
    } rows[] = {{78, 2, "78", "78.00"},
                {0.5, 2, "0.5", "0.50"},
                {-1.25, 2, "-1.25", "-1.25"},
                {1.5, 0, "2", "2"},
                {2.5, 0, "3", "3"},
                {-2.5, 0, "-3", "-3"},
                {2.675, 2, "2.68", "2.68"},
                {1.005, 2, "1.01", "1.01"},
                {0.001, 2, "0", "0.00"},
                {-0.001, 2, "0", "0.00"},
                {100, 0, "100", "100"},
                {0.07, 1, "0.1", "0.1"},
                {1.0 / 3, 6, "0.333333", "0.333333"},
                {1.0 / 3, 9, "0.333333", "0.333333"},
                {999.995, 2, "1000", "1000.00"},
                {1e13, 0, "?", "?"},
                {INFINITY, 1, "?", "?"},
                {NAN, 1, "?", "?"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        text t = TEXT_EMPTY;
        number_add_fixed(&t, rows[i].value, rows[i].decimals);
        same_text(rows[i].fixed, t.bytes, rows[i].fixed);
        same_text(rows[i].plain, number_copy(a, rows[i].value, rows[i].decimals), rows[i].plain);
        text_free(&t);
    }
    arena_free(a);
}

static void adds_behind_what_is_there(void **state) {
    (void)state;
    text t = TEXT_EMPTY;
    text_add(&t, "1.50 and ");
    number_add(&t, 20, 1);
    assert_string_equal(t.bytes, "1.50 and 20");
    text_free(&t);
}

static void rounds_half_away_from_zero(void **state) {
    (void)state;
    static const struct {
        double value, step, rounded;
    } rows[] = {{47, 5, 45},    {47.5, 5, 50},       {52.4, 10, 50},
                {55, 10, 60},   {-47.5, 5, -50},     {0.25, 0.5, 0.5},
                {0.24, 0.5, 0}, {1.005, 0.01, 1.01}, {0, 5, 0}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_number("rounded", number_round(rows[i].value, rows[i].step), rows[i].rounded, 1e-12);
}

/* What is written with enough decimals reads back as itself. */
static void what_is_written_reads_back(void **state) {
    (void)state;
    for (int i = -5000; i <= 5000; i++) {
        double value = i * 0.000731, got = 99;
        text t = TEXT_EMPTY;
        number_add(&t, value, 6);
        assert_true(number_is(text_span(&t), &got));
        same_number(t.bytes, got, value, 5.1e-7);
        text_free(&t);
    }
}

static void a_locale_changes_nothing(void **state) {
    (void)state;
    double got;
    text t = TEXT_EMPTY;
    (void)setlocale(LC_ALL, "de_DE.UTF-8"); /* where it is installed */
    number_add(&t, 1234.5, 1);
    assert_string_equal(t.bytes, "1234.5");
    assert_int_equal(number_read(span_of("0.5"), &got), 3);
    (void)setlocale(LC_ALL, "C");
    text_free(&t);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_decimals),
        cmocka_unit_test(takes_the_whole_or_nothing),
        cmocka_unit_test(writes_the_shortest_form),
        cmocka_unit_test(adds_behind_what_is_there),
        cmocka_unit_test(rounds_half_away_from_zero),
        cmocka_unit_test(what_is_written_reads_back),
        cmocka_unit_test(a_locale_changes_nothing),
    };
    return cmocka_run_group_tests_name("number", tests, NULL, NULL);
}
