/* publish/page_links.h: what a page refers to, as a browser would read it. */
#include "support/cmocka_rows.h"

#include "base/text.h"
#include "publish/page_links.h"

#include <stdio.h>

static void links_are_found_where_browsers_find_them(void **state) {
    static const struct {
        const char *html, *href; /* null: no link */
    } rows[] = {
        {"<a href=\"x/\">x</a>", "x/"},
        {"<A HREF='x?a=1&amp;b=2'>x</a>", "x?a=1&b=2"},
        {"<a href=x>x", "x"},
        {"<link rel=stylesheet href=s.css>", "s.css"},
        {"<script src=s.js></script>", "s.js"},
        {"<img src=p.svg alt=''>", "p.svg"},
        {"<form action=search/></form>", "search/"},
        {"<video poster=p.png></video>", "p.png"},
        {"<object data=p.svg></object>", "p.svg"},
        {"<meta property=og:image content=https://x.example/p.png>", "https://x.example/p.png"},
        {"<svg><use href=\"#part\"/></svg>", "#part"},
        {"<div data=x poster=y action=z></div>", NULL},
        {"<meta name=description content=x>", NULL},
        {"<!-- <a href=x> -->", NULL},
        {"<script>var a = '<a href=\"x\">';</script>", NULL},
        {"<textarea><a href=x></textarea>", NULL},
        {"<p data-href=x>x</p>", NULL},
        {"", NULL},
    };
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        page_links of = page_links_of(a, span_of(rows[i].html));
        expect_bool(rows[i].html, of.links.count == 1, rows[i].href != NULL);
        if (rows[i].href)
            expect_text(rows[i].html, arena_copy(a, of.links.items[0].href), rows[i].href);
    }
    arena_free(a);
}

static void a_set_of_pictures_is_several_links(void **state) {
    (void)state;
    arena *a = arena_new();
    page_links of =
        page_links_of(a, span_of("<img src=a.png srcset=\"b.png 2x, c.png 800w,\n d.png\">"));
    static const char *const wanted[] = {"a.png", "b.png", "c.png", "d.png"};
    assert_int_equal(of.links.count, COUNT(wanted));
    for (size_t i = 0; i < COUNT(wanted); i++)
        expect_text(wanted[i], arena_copy(a, of.links.items[i].href), wanted[i]);
    arena_free(a);
}

static void places_and_anchors(void **state) {
    (void)state;
    arena *a = arena_new();
    page_links of = page_links_of(
        a, span_of("<!DOCTYPE html>\n<title>t</title>\n<h1 id=one>x</h1>\n  <a name=two>y</a>\n"
                   "<p>\xc3\xa9\xc3\xa9 <a href=\"z\">z</a>"));
    assert_int_equal(of.anchors.count, 2);
    expect_text("id", arena_copy(a, of.anchors.items[0]), "one");
    expect_text("name of an anchor", arena_copy(a, of.anchors.items[1]), "two");
    assert_int_equal(of.links.items[0].line, 5);
    assert_int_equal(of.links.items[0].column, 15);
    arena_free(a);
}

static void depth_is_no_matter(void **state) {
    (void)state;
    arena *a = arena_new();
    text page = TEXT_EMPTY;
    for (int i = 0; i < 20000; i++)
        text_add(&page, "<b>");
    text_add(&page, "<a href=x>x");
    page_links of = page_links_of(a, text_span(&page));
    assert_int_equal(of.links.count, 1);
    text_free(&page);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(links_are_found_where_browsers_find_them),
        cmocka_unit_test(a_set_of_pictures_is_several_links),
        cmocka_unit_test(places_and_anchors),
        cmocka_unit_test(depth_is_no_matter),
    };
    return cmocka_run_group_tests_name("page_links", tests, NULL, NULL);
}
