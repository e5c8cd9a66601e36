/* site/view: building, finding, writing as JSON. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/list.h"
#include "site/view.h"

#include <math.h>

static const char *json_of(arena *a, const view *of, bool indent) {
    text t = TEXT_EMPTY;
    view_write_json(of, indent, &t);
    const char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}

static void numbers_are_written_without_a_locale(void **state) {
    (void)state;
    static const struct {
        double value;
        int decimals;
        const char *json;
    } rows[] = {{0, 0, "0"},           {1.21, 2, "1.21"},   {1.5, 0, "2"},
                {-0.04, 1, "0"},       {-2.25, 2, "-2.25"}, {404, 3, "404"},
                {INFINITY, 1, "null"}, {NAN, 1, "null"},    {2e12, 0, "null"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        view *list = view_list(a);
        view_put_number(a, list, NULL, rows[i].value, rows[i].decimals);
        const char *expected = arena_format(a, "[%s]", rows[i].json);
        if (strcmp(json_of(a, list, false), expected) != 0)
            fail_msg("%s: got %s", expected, json_of(a, list, false));
    }
    arena_free(a);
}

static view *sample(arena *a) {
    view *page = view_object(a);
    view_put_text(a, page, "title", "Rye & <seed> \"loaf\"\n");
    view_put_text(a, page, "picture", NULL);
    view_put_bool(a, page, "optional", true);
    view *groups = view_put_list(a, page, "groups");
    view_put_object(a, groups, NULL);
    view_put_list(a, groups, NULL);
    view_put_bool(a, groups, NULL, false);
    view_put_span(a, groups, NULL, (span){"oats", 3});
    return page;
}

/* RFC 8259; < > & as escapes, so that it may stand in a script element. */
static void json_is_compact_or_indented(void **state) {
    (void)state;
    arena *a = arena_new();
    assert_string_equal(
        json_of(a, sample(a), false),
        "{\"title\":\"Rye \\u0026 \\u003cseed\\u003e \\\"loaf\\\"\\n\",\"picture\":null,"
        "\"optional\":true,\"groups\":[{},[],false,\"oat\"]}");
    assert_string_equal(json_of(a, sample(a), true),
                        "{\n  \"title\": \"Rye \\u0026 \\u003cseed\\u003e \\\"loaf\\\"\\n\",\n"
                        "  \"picture\": null,\n  \"optional\": true,\n  \"groups\": [\n    {},\n"
                        "    [],\n    false,\n    \"oat\"\n  ]\n}");
    arena_free(a);
}

static void the_first_of_two_equal_keys_is_found(void **state) {
    (void)state;
    arena *a = arena_new();
    view *page = view_object(a);
    const view *first = view_put_text(a, page, "kind", "cookie");
    view_put_text(a, page, "kind", "crust");
    view_put_text(a, page, "kinds", "all");
    assert_ptr_equal(view_get(page, view_key_named("kind")), first);
    assert_int_equal(page->count, 3);
    assert_null(view_get(page, view_key_named("kin")));
    assert_null(view_get(page, view_key_named("")));
    assert_null(view_get(first, view_key_named("kind")));
    assert_null(view_get(NULL, view_key_named("kind")));
    arena_free(a);
}

static void a_shared_part_hangs_in_many_pages(void **state) {
    (void)state;
    arena *a = arena_new();
    view *words = view_object(a);
    view_put_text(a, words, "portion", "portion");
    for (int i = 0; i < 2; i++) {
        view *page = view_object(a);
        view_put_shared(a, page, "words", words);
        view_put_number(a, page, "number", i, 0);
        const char *expected =
            arena_format(a, "{\"words\":{\"portion\":\"portion\"},\"number\":%d}", i);
        assert_string_equal(json_of(a, page, false), expected);
    }
    assert_null(words->next);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_written_without_a_locale),
        cmocka_unit_test(json_is_compact_or_indented),
        cmocka_unit_test(the_first_of_two_equal_keys_is_found),
        cmocka_unit_test(a_shared_part_hangs_in_many_pages),
    };
    return cmocka_run_group_tests_name("view", tests, NULL, NULL);
}
