/* Plain pages. */
#include "reading.h"

#include "read/page.h"

static plain_page *read_from(arena *a, const char *file, const char *bytes, problems *found) {
    *found = problems_in(a);
    return page_read(a, file, span_of(bytes), found);
}

static void test_whole(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    plain_page *page = read_from(a, "pages/About us.md",
                                 "---\ntitle: About us\nsummary: Who bakes.\ndate: 2026-03-01\n"
                                 "order: 2.5\nmenu: no\n---\nWe row.\n",
                                 &found);
    expect_words("problems", printed(a, &found), "");
    expect_words("file", page->file, "pages/About us.md");
    expect_words("slug", page->slug, "about-us");
    expect_words("title", page->title, "About us");
    expect_words("summary", page->summary, "Who bakes.");
    expect_words("date", page->date, "2026-03-01");
    expect_number("order", page->order, 2.5);
    assert_false(page->in_menu);
    expect_words("body", arena_copy(a, page->body), "We row.\n");
    assert_int_equal(page->body_line, 8);
    arena_free(a);
}

static void test_least(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    plain_page *page = read_from(a, "pages/a.md", "---\ntitle: A\n---", &found);
    expect_words("problems", printed(a, &found), "");
    assert_null(page->summary);
    assert_null(page->date);
    assert_true(page->in_menu);
    expect_number("order", page->order, PAGE_ORDER_LAST);
    assert_int_equal(page->body.length, 0);
    arena_free(a);
}

static const struct {
    const char *name, *bytes;
    bool read;
    const char *report;
} faults[] = {
    {"no title", "---\nmenu: no\n---\n", false,
     "p.md:2:1: error: a page needs \"title\"\n"
     "  hint: for example: title: Towpath griddle rounds\n"},
    {"empty front matter", "---\n---\n", false,
     "p.md:2:1: error: a page has nothing in it\n  hint: write each part as \"key: value\"\n"},
    {"front matter of prose", "---\nHello\n---\n", false,
     "p.md:2:1: error: a page is made of keys and values\n"
     "  hint: write each part as \"key: value\"\n"},
    {"a strange key", "---\ntitle: A\nordr: 1\n---\n", true,
     "p.md:3:1: error: a page has no key \"ordr\"\n  hint: did you mean \"order\"?\n"},
    {"order that is no number", "---\ntitle: A\norder: first\n---\n", true,
     "p.md:3:8: error: \"order\" must be a number\n  hint: for example: order: 10\n"},
    {"broken YAML", "---\ntitle: \"A\n---\n", false,
     "p.md:2:8: error: this quote is never closed\n  hint: close it with the same quote mark\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found;
        plain_page *page = read_from(a, "p.md", faults[i].bytes, &found);
        if ((page != NULL) != faults[i].read)
            fail_msg("%s: %s", faults[i].name, page ? "was read" : "was not read");
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_whole),
        cmocka_unit_test(test_least),
        cmocka_unit_test(test_faults),
    };
    return cmocka_run_group_tests_name("page", tests, NULL, NULL);
}
