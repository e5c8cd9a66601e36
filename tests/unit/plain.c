/* Plain words from mark-up, entities and odd characters. */
#include "checks.h"

#include "draft/html.h"
#include "draft/plain.h"

static void leaves_the_words(void **state) {
    (void)state;
    static const struct {
        const char *written, *plain;
    } rows[] = {
        {"two eggs", "two eggs"},
        {"  two \t eggs \n", "two eggs"},
        {"one\n\n two", "one\ntwo"},
        {"one\r\ntwo", "one\ntwo"},
        {"&frac12; cup", "\u00bd cup"}, /* HTML Living Standard, 13.5: named character references */
        {"&#189; cup", "\u00bd cup"},
        {"&#xBD; cup", "\u00bd cup"},
        {"&amp;frac12; cup", "\u00bd cup"},
        {"salt &amp; pepper", "salt & pepper"},
        {"salt & pepper", "salt & pepper"},
        {"3 < 4 > 2", "3 < 4 > 2"},
        {"<b>two</b> <i>eggs</i>", "two eggs"},
        {"<p>one</p><p>two</p>", "one\ntwo"},
        {"<p>one</p>\n<p>two</p>", "one\ntwo"},
        {"one<br>two<br/>three", "one\ntwo\nthree"},
        {"<h3>Crust</h3>bake", "Crust:\nbake"},
        {"<h3>Crust:</h3>bake", "Crust:\nbake"},
        {"&lt;p&gt;one&lt;/p&gt;", "one"},
        {"1<sup>1</sup>/<sub>2</sub> cups", "1 1/2 cups"},
        {"a<script>alert(1)</script>b", "ab"},
        {"a<style>p{}</style>b", "ab"},
        {"a<!-- no -->b", "ab"},
        {"a\u00a0b\u202fc", "a b c"},
        {"a\u200bb\u00adc\ufeff", "abc"},
        {"\u202eevil\u202c", "evil"}, /* turned writing */
        {"bell\x07 and \x1b[31m", "bell and [31m"},
        {"one\u2028two", "one\ntwo"},
        {"", ""},
        {"<p></p>", ""},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        span got = plain_words(a, span_of(rows[i].written));
        same_span(rows[i].written, got, rows[i].plain);
        arena_free(a);
    }
}

static void puts_all_on_one_line(void **state) {
    (void)state;
    arena *a = arena_new();
    same_text("two paragraphs", plain_line(a, span_of("<p>one</p><p>two</p>")), "one two");
    arena_free(a);
}

static void walks_in_the_order_of_the_page(void **state) {
    (void)state;
    arena *a = arena_new();
    text names = TEXT_EMPTY;
    const html_node *page = html_read(
        a, span_of("<div class='one two' id=x><p>words<b>bold</b></p></div><p class=two>end</p>"));
    for (const html_node *at = page; at; at = html_next(at, page))
        if (html_has_word(at, "class", "two"))
            text_add(&names, html_is(at, "div") ? "div " : "p ");
    same_text("elements of a class", names.bytes, "div p ");
    text_free(&names);
    arena_free(a);
}

/* Past a limit a page is refused, not cut. */
static void refuses_what_is_too_much(void **state) {
    (void)state;
    arena *a = arena_new();
    text page = TEXT_EMPTY;
    for (size_t i = 0; i < 200 * 1000; i++)
        text_add(&page, "<i>");
    assert_null(html_read(a, text_span(&page)));
    text_clear(&page);
    for (size_t i = 0; i <= HTML_BYTES_MOST; i++)
        text_add_char(&page, ' ');
    assert_null(html_read(a, text_span(&page)));
    text_free(&page);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(leaves_the_words),
        cmocka_unit_test(puts_all_on_one_line),
        cmocka_unit_test(walks_in_the_order_of_the_page),
        cmocka_unit_test(refuses_what_is_too_much),
    };
    return cmocka_run_group_tests_name("plain", tests, NULL, NULL);
}
