#include "checks.h"

#include "base/problems.h"

static void collects_errors_and_warnings(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    char hint[] = "write 1/2";
    problem_add(&found, (place){"a.md", 3, 5}, hint, "can't read \"%s\"", "x");
    problem_warn(&found, (place){"a.md", 4, 0}, NULL, "odd");
    hint[0] = '?';
    assert_int_equal(found.count, 2);
    assert_int_equal(found.errors, 1);
    assert_int_equal(found.warnings, 1);
    assert_string_equal(found.items[0].message, "can't read \"x\"");
    assert_string_equal(found.items[0].hint, "write 1/2");
    assert_null(found.items[1].hint);
    arena_free(a);
}

static void prints_place_level_and_hint(void **state) {
    (void)state;
    static const struct {
        problem p;
        const char *printed;
    } rows[] = {
        {{{"r.md", 14, 5}, PROBLEM_ERROR, "bad", "write 1/2", NULL},
         "r.md:14:5: error: bad\n  hint: write 1/2\n"},
        {{{"r.md", 14, 0}, PROBLEM_WARNING, "odd", NULL, NULL}, "r.md:14: warning: odd\n"},
        {{{"r.md", 0, 7}, PROBLEM_ERROR, "bad", NULL, NULL}, "r.md: error: bad\n"},
        {{{NULL, 0, 0}, PROBLEM_ERROR, "bad", NULL, NULL}, "crumbnote: error: bad\n"},
        {{{"r.md", 1, 1}, PROBLEM_ERROR, "a\nb\x1b[2J", "c\rd", NULL},
         "r.md:1:1: error: a b [2J\n  hint: c d\n"},
        {{{"r.md", 2, 3}, PROBLEM_WARNING, "odd", "mend it", "portion"},
         "r.md:2:3: warning: odd [portion]\n  hint: mend it\n"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        text t = TEXT_EMPTY;
        problem_print(&rows[i].p, &t);
        same_text(rows[i].p.message, t.bytes, rows[i].printed);
        text_free(&t);
    }
}

/* The colours stand around the word and its colon, and nothing else changes. */
static void prints_in_colours(void **state) {
    (void)state;
    const problem_colours with = {"<e>", "<w>", "</>"};
    const problem bad = {{"r.md", 14, 5}, PROBLEM_ERROR, "bad", "mend it", NULL};
    const problem odd = {{"r.md", 14, 5}, PROBLEM_WARNING, "odd", NULL, NULL};
    text t = TEXT_EMPTY;
    problem_print_coloured(&bad, &with, &t);
    problem_print_coloured(&odd, &with, &t);
    same_text("colours", t.bytes,
              "r.md:14:5: <e>error:</> bad\n  hint: mend it\nr.md:14:5: <w>warning:</> odd\n");
    text_free(&t);
}

static void sorts_by_place_and_message(void **state) {
    (void)state;
    static const struct {
        place at;
        const char *message;
    } rows[] = {{{"b.md", 1, 1}, "f"}, {{"a.md", 2, 1}, "d"}, {{"a.md", 1, 9}, "c"},
                {{"a.md", 1, 2}, "b"}, {{"a.md", 1, 2}, "a"}, {{"a.md", 10, 1}, "e"}};
    arena *a = arena_new();
    problems found = problems_in(a);
    problems_sort(&found);
    for (size_t i = 0; i < COUNT(rows); i++)
        problem_add(&found, rows[i].at, NULL, "%s", rows[i].message);
    problems_sort(&found);
    for (size_t i = 0; i < found.count; i++)
        assert_int_equal(found.items[i].message[0], "abcdef"[i]);
    arena_free(a);
}

static void joins_copies(void **state) {
    (void)state;
    arena *a = arena_new(), *worker = arena_new();
    problems all = problems_in(a), part = problems_in(worker);
    const char *file = arena_copy(worker, span_of("a.md"));
    problem_add(&part, (place){file, 1, 2}, "hint", "bad");
    problem_warn(&part, (place){NULL, 0, 0}, NULL, "odd");
    problems_join(&all, &part);
    arena_free(worker);
    assert_int_equal(all.count, 2);
    assert_int_equal(all.errors, 1);
    assert_int_equal(all.warnings, 1);
    assert_string_equal(all.items[0].at.file, "a.md");
    assert_string_equal(all.items[0].message, "bad");
    assert_string_equal(all.items[0].hint, "hint");
    assert_null(all.items[1].at.file);
    arena_free(a);
}

static bool is_odd(const problem *p, void *state) {
    return strcmp(p->message, state) == 0;
}

static void drops_and_counts_anew(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    char odd[] = "odd";
    problem_add(&found, (place){"a.md", 1, 1}, NULL, "bad");
    problem_note(&found, "portion", PROBLEM_WARNING, (place){"a.md", 1, 2}, NULL, "odd");
    problem_note(&found, "dates", PROBLEM_WARNING, (place){"a.md", 1, 3}, "hint", "late %d", 2);
    problems_drop(&found, is_odd, odd);
    assert_int_equal(found.count, 2);
    assert_int_equal(found.errors, 1);
    assert_int_equal(found.warnings, 1);
    same_text("kept", found.items[1].message, "late 2");
    same_text("its check", found.items[1].check, "dates");
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(collects_errors_and_warnings),
        cmocka_unit_test(prints_place_level_and_hint),
        cmocka_unit_test(prints_in_colours),
        cmocka_unit_test(sorts_by_place_and_message),
        cmocka_unit_test(joins_copies),
        cmocka_unit_test(drops_and_counts_anew),
    };
    return cmocka_run_group_tests_name("problems", tests, NULL, NULL);
}
