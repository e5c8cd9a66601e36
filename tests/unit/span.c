#include "checks.h"

static void compares_in_byte_order(void **state) {
    (void)state;
    static const struct {
        const char *a, *b;
        int order;
    } rows[] = {{"", "", 0},     {"a", "a", 0},  {"a", "b", -1}, {"b", "a", 1},
                {"a", "ab", -1}, {"ab", "a", 1}, {"Z", "a", -1}, {"z", "\u00e9", -1}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        int order = span_compare(span_of(rows[i].a), span_of(rows[i].b));
        if ((order > 0) - (order < 0) != rows[i].order)
            fail_msg("%s and %s", rows[i].a, rows[i].b);
        assert_int_equal(span_equal(span_of(rows[i].a), span_of(rows[i].b)), rows[i].order == 0);
    }
    assert_true(span_equal((span){NULL, 0}, span_of("")));
    assert_int_equal(span_compare((span){NULL, 0}, span_of(NULL)), 0);
}

static void trims_blanks(void **state) {
    (void)state;
    static const char *const rows[][2] = {
        {"", ""}, {"  ", ""}, {" a ", "a"}, {"\t\r\na b\n", "a b"}, {"a", "a"}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_span(rows[i][0], span_trim(span_of(rows[i][0])), rows[i][1]);
}

static void cuts_ends_off(void **state) {
    (void)state;
    const span s = span_of("flour");
    same_span("from 2", span_from(s, 2), "our");
    same_span("from the end", span_from(s, 5), "");
    same_span("from beyond", span_from(s, 50), "");
    same_span("first 2", span_first(s, 2), "fl");
    same_span("first of more", span_first(s, 50), "flour");
    assert_null(span_from((span){NULL, 0}, 3).at);
    assert_true(span_begins(s, "fl") && span_begins(s, "") && !span_begins(s, "flours"));
    assert_true(span_ends(s, "our") && span_ends(s, "") && !span_ends(s, "oat flour"));
}

static void finds_a_needle(void **state) {
    (void)state;
    static const struct {
        const char *hay, *needle;
        size_t at;
    } rows[] = {{"oat flour", "flour", 4},
                {"oat flour", "o", 0},
                {"oat", "oats", 3},
                {"aab", "ab", 1},
                {"", "a", 0},
                {"oat", "", 0},
                {"oat", "x", 3}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_count(rows[i].needle, span_find(span_of(rows[i].hay), rows[i].needle), rows[i].at);
}

static void cuts_words(void **state) {
    (void)state;
    span rest = span_of("  1/2 cup\toat\nflour ");
    static const char *const words[] = {"1/2", "cup", "oat", "flour", "", ""};
    for (size_t i = 0; i < COUNT(words); i++)
        same_span("word", span_next_word(&rest), words[i]);
    span nothing = {NULL, 0};
    assert_int_equal(span_next_word(&nothing).length, 0);
}

static void cuts_lines(void **state) {
    (void)state;
    span rest = span_of("one\r\n\ntwo\rthree\n"), line;
    static const char *const lines[] = {"one", "", "two\rthree"};
    for (size_t i = 0; i < COUNT(lines); i++) {
        assert_true(span_next_line(&rest, &line));
        same_span("line", line, lines[i]);
    }
    assert_false(span_next_line(&rest, &line));
    rest = span_of("no end");
    assert_true(span_next_line(&rest, &line));
    same_span("last line", line, "no end");
    assert_false(span_next_line(&rest, &line));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(compares_in_byte_order),
        cmocka_unit_test(trims_blanks),
        cmocka_unit_test(cuts_ends_off),
        cmocka_unit_test(finds_a_needle),
        cmocka_unit_test(cuts_words),
        cmocka_unit_test(cuts_lines),
    };
    return cmocka_run_group_tests_name("span", tests, NULL, NULL);
}
