/* preview/notices.h: what is added to a page as it is served. */
#include "support/cmocka_rows.h"

#include "preview/notices.h"

#include <jansson.h>

static void the_script_stands_at_the_end_of_the_head(void **state) {
    (void)state;
    text out = TEXT_EMPTY;
    notices_add_script(span_of("<html><head><title>x</title></head><body>y</body></html>"), "0a1b",
                       &out);
    expect_holds_text("script", out.bytes, "<script src=\"/.preview/refresh.js\"");
    expect_holds_text("token", out.bytes, "data-token=\"0a1b\"");
    expect_holds_text("end of the head", out.bytes, "></script>\n</head><body>y</body></html>");
    text_clear(&out);
    notices_add_script(span_of("no head at all"), "0a1b", &out);
    expect_holds_text("a page without a head", out.bytes, "no head at all<link");
    text_free(&out);
}

static void addresses_of_the_site_become_local(void **state) {
    (void)state;
    text out = TEXT_EMPTY;
    notices_make_local(span_of("<a href=\"https://x.example/k/a/\">a</a> "
                               "<a href=\"https://x.example/k/\">b</a> "
                               "<a href=\"https://y.example/k/\">c</a>"),
                       "https://x.example/k/", &out);
    expect_text("links", out.bytes,
                "<a href=\"/a/\">a</a> <a href=\"/\">b</a> "
                "<a href=\"https://y.example/k/\">c</a>");
    text_free(&out);
}

static void problems_as_json_errors_first(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    text out = TEXT_EMPTY;
    problem_warn(&found, (place){"pages/a.md", 1, 2}, NULL, "a warning");
    problem_add(&found, (place){"recipes/b.md", 3, 4}, "mend \"it\"", "</script> & \"quotes\"");
    notices_add_problems(&found, &out);
    json_t *document = json_loads(out.bytes, 0, NULL);
    assert_int_equal(json_integer_value(json_object_get(document, "errors")), 1);
    assert_int_equal(json_integer_value(json_object_get(document, "warnings")), 1);
    const json_t *list = json_object_get(document, "problems");
    assert_int_equal(json_array_size(list), 2);
    const json_t *first = json_array_get(list, 0), *second = json_array_get(list, 1);
    expect_text("level", json_string_value(json_object_get(first, "level")), "error");
    expect_text("file", json_string_value(json_object_get(first, "file")), "recipes/b.md");
    assert_int_equal(json_integer_value(json_object_get(first, "line")), 3);
    assert_int_equal(json_integer_value(json_object_get(first, "column")), 4);
    expect_text("message", json_string_value(json_object_get(first, "message")),
                "</script> & \"quotes\"");
    expect_text("hint", json_string_value(json_object_get(first, "hint")), "mend \"it\"");
    expect_text("no hint", json_string_value(json_object_get(second, "hint")), "");
    json_decref(document);
    text_free(&out);
    arena_free(a);
}

static void no_more_than_a_page_can_show(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    text out = TEXT_EMPTY;
    notices_add_problems(&found, &out);
    expect_text("none", out.bytes, "{\"errors\":0,\"warnings\":0,\"problems\":[]}");
    for (int i = 0; i < 1000; i++)
        problem_add(&found, (place){"a.md", 1, 1}, NULL, "number %d", i);
    text_clear(&out);
    notices_add_problems(&found, &out);
    json_t *document = json_loads(out.bytes, 0, NULL);
    assert_int_equal(json_array_size(json_object_get(document, "problems")), 100);
    assert_int_equal(json_integer_value(json_object_get(document, "errors")), 1000);
    json_decref(document);
    text_free(&out);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_script_stands_at_the_end_of_the_head),
        cmocka_unit_test(addresses_of_the_site_become_local),
        cmocka_unit_test(problems_as_json_errors_first),
        cmocka_unit_test(no_more_than_a_page_can_show),
    };
    return cmocka_run_group_tests_name("notices", tests, NULL, NULL);
}
