/* site/mustache: what a template may not be, and where the problem is said to stand. How templates
 * are filled is tested in template.c and, after the published suite, in site/mustache.test. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/list.h"
#include "site/mustache.h"

static void broken_templates_are_reported_with_their_place(void **state) {
    (void)state;
    static const struct {
        const char *source, *report;
    } rows[] = {
        {"a {{name", "t:1:3: error: a tag is left open: \"{{name\"\n"
                     "  hint: close it on the same line\n"},
        {"\n {{{name}}", "t:2:2: error: a tag is left open: \"{{{name}}\"\n"
                         "  hint: close it on the same line\n"},
        {"{{#a}}\nx", "t:1:1: error: section \"a\" is never closed\n"
                      "  hint: close it with {{/name}}\n"},
        {"x\ny {{/a}}", "t:2:3: error: \"a\" is closed but was never opened\n"},
        {"{{#a}}{{#b}}{{/a}}{{/b}}",
         "t:1:13: error: \"a\" is closed inside another section\n  hint: close \"b\" first\n"
         "t:1:19: error: \"b\" is closed inside another section\n  hint: close \"a\" first\n"},
        {"{{}}", "t:1:1: error: a tag without a name\n"
                 "  hint: write a name between the braces\n"},
        {"{{# }}{{/ }}", "t:1:1: error: a tag without a name\n"
                         "  hint: write a name between the braces\n"},
        {"{{two words}}", "t:1:1: error: can't read the tag name \"two words\"\n"
                          "  hint: a name holds no white space\n"},
        {"{{=one=}}", "t:1:1: error: can't read the delimiters \"one\"\n"
                      "  hint: write two, for example {{=<% %>=}}\n"},
        {"{{=a b c=}}", "t:1:1: error: can't read the delimiters \"a b c\"\n"
                        "  hint: write two, for example {{=<% %>=}}\n"},
        {"{{== ==}}", "t:1:1: error: can't read the delimiters \"= =\"\n"
                      "  hint: write two, for example {{=<% %>=}}\n"},
        /* Columns count characters: é is one, of two bytes. */
        {"\xc3\xa9\xc3\xa9{{/a}}", "t:1:3: error: \"a\" is closed but was never opened\n"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        mustache_nodes nodes = {0};
        bool fine = mustache_read(a, "t", span_of(rows[i].source), &nodes, &found);
        text report = TEXT_EMPTY;
        for (size_t p = 0; p < found.count; p++)
            problem_print(&found.items[p], &report);
        if (fine || strcmp(report.bytes, rows[i].report) != 0)
            fail_msg("%s: %s\n%s", rows[i].source, fine ? "accepted" : "refused", report.bytes);
        text_free(&report);
        arena_free(a);
    }
}

static bool reads_nested(int levels) {
    arena *a = arena_new();
    problems found = problems_in(a);
    mustache_nodes nodes = {0};
    text source = TEXT_EMPTY;
    for (int i = 0; i < levels; i++)
        text_add(&source, "{{#a}}");
    for (int i = 0; i < levels; i++)
        text_add(&source, "{{/a}}");
    bool fine = mustache_read(a, "t", text_span(&source), &nodes, &found);
    text_free(&source);
    arena_free(a);
    return fine;
}

static void nesting_has_an_end(void **state) {
    (void)state;
    assert_true(reads_nested(MUSTACHE_NESTING_MOST));
    assert_false(reads_nested(MUSTACHE_NESTING_MOST + 1));
    assert_false(reads_nested(100000));
}

static void a_template_becomes_a_flat_list(void **state) {
    (void)state;
    static const struct {
        mustache_sort sort;
        const char *bytes;
        size_t part_count, past;
    } rows[] = {{NODE_TEXT, "Hi ", 0, 0},    {NODE_SECTION, "you", 1, 3},
                {NODE_VALUE, "a.b.c", 3, 0}, {NODE_TEXT, "!", 0, 0},
                {NODE_INVERTED, ".", 0, 6},  {NODE_RAW, "raw", 1, 0},
                {NODE_PARTIAL, "foot", 0, 0}};
    arena *a = arena_new();
    problems found = problems_in(a);
    mustache_nodes nodes = {0};
    const char *source = "Hi {{#you}}{{a.b.c}}{{/you}}!{{^.}}{{{raw}}}{{/.}}{{>foot}}";
    assert_true(mustache_read(a, "t", span_of(source), &nodes, &found));
    assert_int_equal(nodes.count, COUNT(rows));
    for (size_t i = 0; i < COUNT(rows); i++) {
        const mustache_node *node = &nodes.items[i];
        bool same = node->sort == rows[i].sort && span_is(node->bytes, rows[i].bytes) &&
                    node->part_count == rows[i].part_count && node->past == rows[i].past;
        if (!same)
            fail_msg("node %zu (%s)", i, rows[i].bytes);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(broken_templates_are_reported_with_their_place),
        cmocka_unit_test(nesting_has_an_end),
        cmocka_unit_test(a_template_becomes_a_flat_list),
    };
    return cmocka_run_group_tests_name("mustache", tests, NULL, NULL);
}
