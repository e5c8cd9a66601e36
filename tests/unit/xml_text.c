/* publish/xml_text.h: well-formed or not, and what elements say. */
#include "support/cmocka_rows.h"

#include "publish/xml_text.h"

static void well_formed_or_not(void **state) {
    static const struct {
        const char *xml;
        bool good;
        unsigned line;
    } rows[] = {
        {"<a/>", true, 0},
        {"<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<a><b>x &amp; y</b></a>", true, 0},
        {"<a>\n<b></a>", false, 2},
        {"<a>\n\n&nbsp;</a>", false, 3},
        {"<a>x & y</a>", false, 1},
        {"<a/><b/>", false, 1},
        {"", false, 1},
        {"<!DOCTYPE a [<!ENTITY b \"c\">]>\n<a>&b;</a>", false, 1},
        {"<a>\xff</a>", false, 1},
    };
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        problems found = problems_in(a);
        xml_texts none = {0};
        expect_bool(rows[i].xml, xml_read(a, "f.xml", span_of(rows[i].xml), "loc", &none, &found),
                    rows[i].good);
        expect_bool(rows[i].xml, found.errors == 0, rows[i].good);
        if (!rows[i].good)
            assert_int_equal(found.items[0].at.line, rows[i].line);
    }
    arena_free(a);
}

static void texts_of_elements(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    xml_texts out = {0};
    assert_true(xml_read(a, "s.xml",
                         span_of("<urlset>\n<url><loc>https://x.example/a&amp;b</loc></url>\n"
                                 "<url><lastmod>2026</lastmod><loc>c</loc></url></urlset>"),
                         "loc", &out, &found));
    assert_int_equal(out.count, 2);
    expect_text("first", arena_copy(a, out.items[0].words), "https://x.example/a&b");
    expect_text("second", arena_copy(a, out.items[1].words), "c");
    assert_int_equal(out.items[1].line, 3);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(well_formed_or_not),
        cmocka_unit_test(texts_of_elements),
    };
    return cmocka_run_group_tests_name("xml_text", tests, NULL, NULL);
}
