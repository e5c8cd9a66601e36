/* Comments that allow a problem, with a reason. */
#include "reading.h"

#include "read/silence.h"

#define OVER "a.md:1:3: warning: over [portion]\n"

static const char *const checks_known[] = {"portion", "dates", "link"};

static void allows_what_a_comment_names(void **state) {
    (void)state;
    static const struct {
        const char *name, *bytes;
        unsigned line; /* of the problem "portion" */
        bool all_checked;
        const char *left;
    } rows[] = {
        {"on the line", "x: 3 # crumbnote: allow portion because so\n", 1, true, ""},
        {"on the line above", "# crumbnote: allow portion because so\nx: 3\n", 2, true, ""},
        {"in Markdown", "<!-- crumbnote: allow portion because so -->\n1. Bake\n", 2, true, ""},
        {"at the end of a step", "1. Bake <!-- crumbnote: allow portion because so -->\n", 1, true,
         ""},
        {"two comments above one line",
         "# crumbnote: allow dates because so\n# crumbnote: allow portion because so\nx: 3\n", 3,
         false, ""},
        {"two names", "x: 3 # crumbnote: allow dates, portion because so\n", 1, false, ""},
        {"CRLF", "x: 3 # crumbnote: allow portion because so\r\n", 1, true, ""},
        {"another line", "x: 3 # crumbnote: allow portion because so\ny: 4\nz: 5\n", 3, false,
         "a.md:3:3: warning: over [portion]\n"},
        {"another check", "x: 3 # crumbnote: allow dates because so\n", 1, false, OVER},
        {"used for nothing", "x: 3 # crumbnote: allow dates because so\n", 1, true,
         OVER "a.md:1:25: warning: nothing is found that \"dates\" would allow [allow]\n"
              "  hint: take it out, or put it on the line it is for\n"},
        {"no comment", "x: crumbnote: allow portion because so\n", 1, true, OVER},
        {"no reason", "x: 3 # crumbnote: allow portion\n", 1, true,
         OVER "a.md:1:8: warning: an allowance needs a reason, behind \"because\" [allow]\n"
              "  hint: for example: crumbnote: allow portion because the cook eats two\n"},
        {"an empty reason", "<!-- crumbnote: allow portion because -->\n", 2, true,
         "a.md:2:3: warning: over [portion]\n"
         "a.md:1:6: warning: an allowance needs a reason, behind \"because\" [allow]\n"
         "  hint: for example: crumbnote: allow portion because the cook eats two\n"},
        {"no such check", "x: 3 # crumbnote: allow everything because so\n", 1, true,
         OVER "a.md:1:25: warning: there is no check \"everything\" [allow]\n"
              "  hint: crumbnote check --help lists the checks\n"},
        {"nothing to do with us", "x: 3 # allow portion\n", 1, true, OVER},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        problem_note(&found, "portion", PROBLEM_WARNING, (place){"a.md", rows[i].line, 3}, NULL,
                     "over");
        silence_known known = {checks_known, COUNT(checks_known), rows[i].all_checked};
        silence_apply(a, "a.md", span_of(rows[i].bytes), &known, &found);
        expect_words(rows[i].name, printed(a, &found), rows[i].left);
        arena_free(a);
    }
}

static void leaves_others_alone(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    problem_add(&found, (place){"a.md", 1, 3}, NULL, "can't be read");
    problem_note(&found, "portion", PROBLEM_WARNING, (place){"b.md", 1, 3}, NULL, "over");
    silence_apply(a, "a.md", span_of("x: 3 # crumbnote: allow portion because so\n"), false,
                  &found);
    assert_int_equal(found.count, 2);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(allows_what_a_comment_names),
        cmocka_unit_test(leaves_others_alone),
    };
    return cmocka_run_group_tests_name("silence", tests, NULL, NULL);
}
