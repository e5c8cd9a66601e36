/* site/template: filling templates from a view. The rules are those of the Mustache specification
 * (mustache(5) and its specification texts); the published suite itself runs in
 * site/mustache.test. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/list.h"
#include "site/template.h"

/* title: "Rye & seed", none: null, no: false, yes: true, zero: 0, empty: "", nothing: [],
 * grams: 46.5, loaf: {name: "tin", crust: {}}, name: "outer", lines: ["a", "b"],
 * pairs: [["x", "y"], []], tree: {word: "1", twigs: [{word: "2", twigs: []}]} */
static view *sample(arena *a) {
    view *page = view_object(a);
    view_put_text(a, page, "title", "Rye & seed");
    view_put_text(a, page, "none", NULL);
    view_put_bool(a, page, "no", false);
    view_put_bool(a, page, "yes", true);
    view_put_number(a, page, "zero", 0, 0);
    view_put_text(a, page, "empty", "");
    view_put_list(a, page, "nothing");
    view_put_number(a, page, "grams", 46.5, 1);
    view *loaf = view_put_object(a, page, "loaf");
    view_put_text(a, loaf, "name", "tin");
    view_put_object(a, loaf, "crust");
    view_put_text(a, page, "name", "outer");
    view *lines = view_put_list(a, page, "lines");
    view_put_text(a, lines, NULL, "a");
    view_put_text(a, lines, NULL, "b");
    view *pairs = view_put_list(a, page, "pairs");
    view *pair = view_put_list(a, pairs, NULL);
    view_put_text(a, pair, NULL, "x");
    view_put_text(a, pair, NULL, "y");
    view_put_list(a, pairs, NULL);
    view *tree = view_put_object(a, page, "tree");
    view_put_text(a, tree, "word", "1");
    view *twig = view_put_object(a, view_put_list(a, tree, "twigs"), NULL);
    view_put_text(a, twig, "word", "2");
    view_put_list(a, twig, "twigs");
    return page;
}

static const struct {
    const char *name, *bytes;
} partials[] = {
    {"title", "<h1>{{title}}</h1>"},
    {"two-lines", "one\n{{name}}\n"},
    {"with-gap", "one\n\nthree\n"},
    {"section", "{{#yes}}\nin\n{{/yes}}\nout\n"},
    {"outer", "(\n  {{>two-lines}}\n)\n"},
    {"inline", "[{{>two-lines}}]\n"},
    {"twig", "{{word}}{{#twigs}}({{>twig}}){{/twigs}}"},
    {"endless", "x{{>endless}}"},
    {"branching", "{{#lines}}x{{>branching}}{{/lines}}"},
    {"doubling", "{{#yes}}{{>doubling}}{{>doubling}}{{/yes}}"},
    {"other-marks", "{{=<% %>=}}<%title%> {{title}}"},
};

static template_set *sample_set(arena *a, const char *source) {
    template_set *set = template_set_new(a);
    problems found = problems_in(a);
    for (size_t i = 0; i < COUNT(partials); i++)
        assert_true(template_add(set, partials[i].name, partials[i].name,
                                 span_of(partials[i].bytes), &found));
    assert_true(template_add(set, "t", "t.mustache", span_of(source), &found));
    return set;
}

static const struct {
    const char *name, *source, *filled;
} rows[] = {
    {"text alone", "plain { text }", "plain { text }"},
    {"empty template", "", ""},
    {"escaped", "{{title}}", "Rye &amp; seed"},
    {"not escaped", "{{{title}}} {{&title}}", "Rye & seed Rye & seed"},
    {"padding", "{{ title }}|{{{ title }}}", "Rye &amp; seed|Rye & seed"},
    {"number", "{{grams}} {{zero}}", "46.5 0"},
    {"boolean", "{{yes}} {{no}}", "true false"},
    {"missing and null", "[{{missing}}{{none}}{{loaf}}{{lines}}]", "[]"},
    {"dotted", "{{loaf.name}}", "tin"},
    {"broken chain", "[{{loaf.crust.name}}{{loaf.missing.name}}]", "[]"},
    {"inside wins", "{{#loaf}}{{name}} {{title}}{{/loaf}}", "tin Rye &amp; seed"},
    {"found first decides", "{{#loaf}}[{{crust.title}}]{{/loaf}}", "[]"},
    {"list", "{{#lines}}{{.}},{{/lines}}", "a,b,"},
    {"list in list", "{{#pairs}}<{{#.}}{{.}}{{/.}}>{{/pairs}}", "<xy><>"},
    {"text as context", "{{#title}}{{{.}}}{{/title}}", "Rye & seed"},
    {"number as context", "{{#grams}}{{.}} g{{/grams}}", "46.5 g"},
    {"falsy",
     "{{#none}}1{{/none}}{{#no}}2{{/no}}{{#zero}}3{{/zero}}{{#empty}}4{{/empty}}"
     "{{#nothing}}5{{/nothing}}{{#missing}}6{{/missing}}",
     ""},
    {"inverted",
     "{{^none}}1{{/none}}{{^no}}2{{/no}}{{^zero}}3{{/zero}}{{^empty}}4{{/empty}}"
     "{{^nothing}}5{{/nothing}}{{^missing}}6{{/missing}}{{^yes}}7{{/yes}}",
     "123456"},
    {"empty object is there", "{{#loaf.crust}}yes{{/loaf.crust}}", "yes"},
    {"section alone on its lines", "a\n  {{#yes}}  \nb\n\t{{/yes}}\nc\n", "a\nb\nc\n"},
    {"section inside a line", "a {{#yes}}b{{/yes}}\nc\n", "a b\nc\n"},
    {"two tags on a line stay", " {{#yes}}{{/yes}}\n", " \n"},
    {"carriage returns", "a\r\n{{#yes}}\r\nb\r\n{{/yes}}\r\nc", "a\r\nb\r\nc"},
    {"comment over lines", "a\n {{! x\n y }}\nb{{!c}}d", "a\nbd"},
    {"delimiters", "{{=<% %>=}}<%title%> {{title}} <%={{ }}=%>{{grams}}",
     "Rye &amp; seed {{title}} 46.5"},
    {"triple with other delimiters", "{{=<% %>=}}<%{title}%>", "Rye & seed"},
    {"delimiters end with the partial", "{{>other-marks}} {{grams}}",
     "Rye &amp; seed {{title}} 46.5"},
    {"partial", "{{>title}}{{> title }}", "<h1>Rye &amp; seed</h1><h1>Rye &amp; seed</h1>"},
    {"partial indented", "<\n  {{>two-lines}}\n>\n", "<\n  one\n  outer\n>\n"},
    {"partial inside a line is not", "  {{>two-lines}}>", "  one\nouter\n>"},
    {"no blanks on an empty line", "  {{>with-gap}}\n", "  one\n\n  three\n"},
    {"standalone tags in it take no blanks", "  {{>section}}\n", "  in\n  out\n"},
    {"indentation adds up", " {{>outer}}\n", " (\n   one\n   outer\n )\n"},
    {"but not through a tag in a line", " {{>inline}}\n", " [one\nouter\n]\n"},
    {"partial in the nearest context", "{{#loaf}}{{>two-lines}}{{/loaf}}", "one\ntin\n"},
    {"recursion", "{{#tree}}{{>twig}}{{/tree}}", "1(2)"},
};

static void templates_are_filled(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        text out = TEXT_EMPTY;
        assert_true(template_fill(sample_set(a, rows[i].source), "t", sample(a), &out));
        if (strcmp(out.bytes, rows[i].filled) != 0)
            fail_msg("%s: expected \"%s\", got \"%s\"", rows[i].name, rows[i].filled, out.bytes);
        text_free(&out);
        arena_free(a);
    }
}

static void endless_templates_end(void **state) {
    (void)state;
    static const struct {
        const char *source;
        size_t length_most;
    } endless[] = {
        {"{{>endless}}", TEMPLATE_DEPTH_MOST},
        {"{{>doubling}}", 0},       /* twice itself at every level: 2^64 without a limit */
        {"{{>branching}}", 100000}, /* for each of a list, which is found again */
    };
    for (size_t i = 0; i < COUNT(endless); i++) {
        arena *a = arena_new();
        text out = TEXT_EMPTY;
        if (template_fill(sample_set(a, endless[i].source), "t", sample(a), &out))
            fail_msg("%s: taken for whole", endless[i].source);
        if (out.length > endless[i].length_most)
            fail_msg("%s: %zu bytes", endless[i].source, out.length);
        text_free(&out);
        arena_free(a);
    }
}

/* What calls itself in a section may end; outside of one it never does. */
static void a_partial_that_always_calls_itself_is_reported(void **state) {
    (void)state;
    static const struct {
        const char *name, *t, *part;
        bool ends;
    } calls[] = {
        {"one that calls another", "{{>part}}{{>part}}", "x", true},
        {"itself in a section", "{{>part}}", "{{#tree}}{{>part}}{{/tree}}", true},
        {"itself where nothing is", "{{>part}}", "{{^tree}}{{>part}}{{/tree}}", true},
        {"itself", "x", "{{>part}}", false},
        {"each the other", "{{>part}}", "{{>t}}", false},
        {"each the other, behind a section", "{{>part}}", "{{#a}}{{/a}}{{>t}}", false},
    };
    for (size_t i = 0; i < COUNT(calls); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        template_set *set = template_set_new(a);
        assert_true(template_add(set, "t", "t.mustache", span_of(calls[i].t), &found));
        assert_true(template_add(set, "part", "part.mustache", span_of(calls[i].part), &found));
        template_check(set, &found);
        if ((found.errors == 0) != calls[i].ends)
            fail_msg("%s: %zu errors", calls[i].name, found.errors);
        arena_free(a);
    }
}

static void a_partial_that_is_not_there_is_reported(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    template_set *set = template_set_new(a);
    assert_true(template_add(set, "t", "t.mustache", span_of("a\n b {{>gone}}{{>foot}}"), &found));
    assert_true(template_add(set, "foot", "foot.mustache", span_of("foot"), &found));
    template_check(set, &found);
    text report = TEXT_EMPTY;
    for (size_t i = 0; i < found.count; i++)
        problem_print(&found.items[i], &report);
    assert_string_equal(report.bytes, "t.mustache:2:4: error: there is no template \"gone\"\n"
                                      "  hint: add it to the theme, or take the tag out\n");
    text_clear(&report);
    assert_true(template_fill(set, "t", view_object(a), &report));
    assert_string_equal(report.bytes, "a\n b foot");
    assert_false(template_fill(set, "gone", view_object(a), &report));
    assert_false(template_fill(set, "never", view_object(a), &report));
    text_free(&report);
    arena_free(a);
}

static void a_broken_template_leaves_the_set_usable(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    template_set *set = template_set_new(a);
    assert_false(template_add(set, "t", "t.mustache", span_of("x{{#a}}{{>b}}"), &found));
    assert_int_equal(found.errors, 1);
    template_check(set, &found);
    text out = TEXT_EMPTY;
    assert_true(template_fill(set, "t", view_object(a), &out));
    assert_int_equal(out.length, 0);
    text_free(&out);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(templates_are_filled),
        cmocka_unit_test(endless_templates_end),
        cmocka_unit_test(a_partial_that_always_calls_itself_is_reported),
        cmocka_unit_test(a_partial_that_is_not_there_is_reported),
        cmocka_unit_test(a_broken_template_leaves_the_set_usable),
    };
    return cmocka_run_group_tests_name("template", tests, NULL, NULL);
}
