/* site/feeds.h: the feed, the sitemap and robots.txt, with words that would break them. */
#include "support/cmocka_rows.h"

#include "site/feeds.h"

static recipe_row all_rows[] = {
    {.slug = "old", .title = "Old", .date = "2025-01-01"},
    {.slug = "undated", .title = "Undated"},
    {.slug = "changed", .title = "Changed", .date = "2024-05-05", .changed = "2026-06-06"},
    {.slug = "sharp", .title = "Nuts & <b>seeds</b>", .date = "2026-02-02", .summary = "a < b"}};
static const recipe_rows rows = {all_rows, COUNT(all_rows), COUNT(all_rows)};

static site_folder folder = {
    .settings = {.title = "Tom & Ada's galley", .address = "https://g.example/"}};
static const page_maker by = {.folder = &folder};

/* Fails unless `parts` stand in `whole` in this order. */
static void expect_order(const char *whole, const char *const parts[], size_t count) {
    const char *at = whole;
    for (size_t i = 0; i < count; i++) {
        at = strstr(at, parts[i]);
        if (!at)
            fail_msg("\"%s\" is missing or out of order", parts[i]);
    }
}

static void the_feed_has_the_newest_change_first(void **state) {
    text out = TEXT_EMPTY;
    feed_write(*state, &by, &rows, &out);
    static const char *const order[] = {"<updated>2026-06-06T00:00:00Z</updated>",
                                        "https://g.example/recipes/changed/",
                                        "<published>2024-05-05T00:00:00Z</published>",
                                        "https://g.example/recipes/sharp/",
                                        "https://g.example/recipes/old/",
                                        "</feed>"};
    expect_order(out.bytes, order, COUNT(order));
    assert_null(strstr(out.bytes, "undated"));
    text_free(&out);
}

static void words_are_escaped(void **state) {
    text out = TEXT_EMPTY;
    feed_write(*state, &by, &rows, &out);
    expect_holds_text("title", out.bytes, "<title>Nuts &amp; &lt;b&gt;seeds&lt;/b&gt;</title>");
    expect_holds_text("summary", out.bytes, "<summary>a &lt; b</summary>");
    expect_holds_text("site", out.bytes, "<title>Tom &amp; Ada&#39;s galley</title>");
    text_free(&out);
}

/* RFC 4287, 4.2.7: length in octets, type a media type, title for people. */
static void a_picture_comes_with_its_entry(void **state) {
    site_picture items[] = {
        {.name = "a.jpg", .stem = "a", .sizes = {{320, 240, 900}, {800, 600, 4321}}, .count = 2},
        {.name = "b.gif", .stem = "b"},
        {.name = "c.svg", .stem = "c", .drawn = true, .sizes = {{80, 60, 77}}, .count = 1}};
    static const struct {
        const char *picture, *link;
    } cases[] = {
        {"a.jpg",
         "<link rel=\"enclosure\" type=\"image/jpeg\" length=\"4321\" title=\"A &lt;b&gt;\" "
         "href=\"https://g.example/pictures/a-800x600.jpg\"/>"},
        {"b.gif", "<link rel=\"enclosure\" type=\"image/gif\" title=\"A &lt;b&gt;\" "
                  "href=\"https://g.example/pictures/b.gif\"/>"},
        {"c.svg", "type=\"image/svg+xml\" length=\"77\""}};
    site_pictures pictures = {items, COUNT(items), COUNT(items)};
    page_maker with = {.folder = &folder, .pictures = &pictures};
    for (size_t i = 0; i < COUNT(cases); i++) {
        recipe_row row = {.slug = "a",
                          .title = "A",
                          .date = "2026-01-01",
                          .picture = cases[i].picture,
                          .picture_text = "A <b>"};
        text out = TEXT_EMPTY;
        feed_write(*state, &with, &(recipe_rows){&row, 1, 1}, &out);
        expect_holds_text(cases[i].picture, out.bytes, cases[i].link);
        text_free(&out);
    }
}

static void a_site_without_dates_has_a_whole_feed(void **state) {
    text out = TEXT_EMPTY;
    recipe_rows undated = {&all_rows[1], 1, 1};
    feed_write(*state, &by, &undated, &out);
    expect_holds_text("updated", out.bytes, "<updated>1970-01-01T00:00:00Z</updated>");
    assert_null(strstr(out.bytes, "<entry>"));
    text_free(&out);
}

static void the_sitemap_has_every_address(void **state) {
    text out = TEXT_EMPTY;
    static const char *const paths[] = {"", "recipes/a&b/"};
    sitemap_write(*state, &folder, paths, COUNT(paths), &out);
    expect_holds_text("top", out.bytes, "<loc>https://g.example/</loc>");
    expect_holds_text("page", out.bytes, "<loc>https://g.example/recipes/a&amp;b/</loc>");
    text_clear(&out);
    robots_write(*state, &folder, &out);
    expect_holds_text("robots", out.bytes, "Sitemap: https://g.example/sitemap.xml\n");
    text_free(&out);
}

static int open_arena(void **state) {
    *state = arena_new();
    return 0;
}

static int close_arena(void **state) {
    arena_free(*state);
    return 0;
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_feed_has_the_newest_change_first),
                                       cmocka_unit_test(words_are_escaped),
                                       cmocka_unit_test(a_picture_comes_with_its_entry),
                                       cmocka_unit_test(a_site_without_dates_has_a_whole_feed),
                                       cmocka_unit_test(the_sitemap_has_every_address)};
    return cmocka_run_group_tests_name("feeds", tests, open_arena, close_arena);
}
