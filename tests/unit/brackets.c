#include "checks.h"

#include "measure/brackets.h"

static void takes_brackets_out(void **state) {
    (void)state;
    static const struct {
        const char *line, *left;
        bool optional, of_each;
        double low_g, high_g; /* 0: no weight */
        size_t at;
        const char *note;
    } rows[] = {
        {"1 cup oats", "1 cup oats", false, false, 0, 0, 0, ""},
        {"1 cup (46 g) oats", "1 cup        oats", false, false, 46, 46, 6, ""},
        {"oats (45-50 g)", "oats          ", false, false, 45, 50, 5, ""},
        {"(1 lb)", "      ", false, false, 453.59237, 453.59237, 0, ""},
        {"(ca. 46 g)", "          ", false, false, 46, 46, 0, ""},
        {"(~46g)", "      ", false, false, 46, 46, 0, ""},
        {"(400 g each)", "            ", false, true, 400, 400, 0, ""},
        {"(46 g, 1.6 oz)", "              ", false, false, 46, 46, 0, ""},
        {"(46 g drained)", "              ", false, false, 46, 46, 0, "drained"},
        {"(46 g)(50 g)", "            ", false, false, 46, 46, 0, "50 g"},
        {"(optional)", "          ", true, false, 0, 0, 0, ""},
        {"(Optional, ripe)", "                ", true, false, 0, 0, 0, "ripe"},
        {"(46 g; optional)", "                ", true, false, 46, 46, 0, ""},
        {"(ripe) (soft)", "             ", false, false, 0, 0, 0, "ripe, soft"},
        {"(a (b) c)", "         ", false, false, 0, 0, 0, "a (b) c"},
        {"()", "  ", false, false, 0, 0, 0, ""},
        {"(240 ml)", "        ", false, false, 0, 0, 0, "240 ml"},
        {"(70% cocoa)", "           ", false, false, 0, 0, 0, "70% cocoa"},
        {"(70 %)", "      ", false, false, 0, 0, 0, "70 %"},
        {"(2 bananas)", "           ", false, false, 0, 0, 0, "2 bananas"},
        {"(one)", "     ", false, false, 0, 0, 0, "one"},
    };
    arena *a = arena_new();
    problems found = problems_in(a);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *row = rows[i].line;
        char *line = arena_copy(a, span_of(row));
        brackets got;
        if (!brackets_take(a, line, strlen(line), (place){"f", 1, 1}, &got, &found))
            fail_msg("%s: %s", row, found.items[0].message);
        same_text(row, line, rows[i].left);
        same_text(row, got.note ? got.note : "", rows[i].note);
        if (got.optional != rows[i].optional || got.of_each != rows[i].of_each ||
            got.has_weight != (rows[i].low_g > 0))
            fail_msg("%s", row);
        if (got.has_weight) {
            same_number(row, got.weight_g.low, rows[i].low_g, 0);
            same_number(row, got.weight_g.high, rows[i].high_g, 0);
            same_count(row, got.weight_at, rows[i].at);
        }
    }
    arena_free(a);
}

static void says_where_a_bracket_is_wrong(void **state) {
    (void)state;
    static const struct {
        const char *line;
        unsigned column;
    } rows[] = {{"\u00bd (46 g", 13}, {"a) b", 12},    {"(46)", 11},   {"(46 gg)", 11},
                {"(0 g)", 11},        {"(1/0 g)", 11}, {"(-4 g)", 11}, {"((46 g)", 11},
                {"(3-2 g)", 11},      {"(", 11}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        char *line = arena_copy(a, span_of(rows[i].line));
        brackets got;
        if (brackets_take(a, line, strlen(line), (place){"f", 1, 11}, &got, &found))
            fail_msg("%s is taken", rows[i].line);
        same_count(rows[i].line, found.errors, 1);
        same_count(rows[i].line, found.items[0].at.column, rows[i].column);
        arena_free(a);
    }
}

static void a_place_that_is_unknown_stays_so(void **state) {
    (void)state;
    assert_int_equal(place_inside((place){"f", 0, 0}, "abc", 2).column, 0);
    assert_int_equal(place_inside((place){"f", 1, 5}, "\u00bdbc", 3).column, 7);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(takes_brackets_out),
        cmocka_unit_test(says_where_a_bracket_is_wrong),
        cmocka_unit_test(a_place_that_is_unknown_stays_so),
    };
    return cmocka_run_group_tests_name("brackets", tests, NULL, NULL);
}
