/* publish/address.h: where links lead. */
#include "support/cmocka_rows.h"

#include "publish/address.h"

/* RFC 3986, section 5.4: reference resolution examples. The base there is http://a/b/c/d;p?q; a
 * query is no part of a path. */
static void the_examples_of_the_standard(void **state) {
    static const struct {
        const char *href, *path, *fragment;
    } rows[] = {
        /* 5.4.1, normal examples */
        {"g", "b/c/g", NULL},
        {"./g", "b/c/g", NULL},
        {"g/", "b/c/g/", NULL},
        {"/g", "g", NULL},
        {"?y", "b/c/d;p", NULL},
        {"g?y", "b/c/g", NULL},
        {"#s", "b/c/d;p", "s"},
        {"g#s", "b/c/g", "s"},
        {"g?y#s", "b/c/g", "s"},
        {";x", "b/c/;x", NULL},
        {"g;x", "b/c/g;x", NULL},
        {"g;x?y#s", "b/c/g;x", "s"},
        {"", "b/c/d;p", NULL},
        {".", "b/c/", NULL},
        {"./", "b/c/", NULL},
        {"..", "b/", NULL},
        {"../", "b/", NULL},
        {"../g", "b/g", NULL},
        {"../..", "", NULL},
        {"../../", "", NULL},
        {"../../g", "g", NULL},
        /* 5.4.2, abnormal examples */
        {"../../../g", "g", NULL},
        {"../../../../g", "g", NULL},
        {"/./g", "g", NULL},
        {"/../g", "g", NULL},
        {"g.", "b/c/g.", NULL},
        {".g", "b/c/.g", NULL},
        {"g..", "b/c/g..", NULL},
        {"..g", "b/c/..g", NULL},
        {"./../g", "b/g", NULL},
        {"./g/.", "b/c/g/", NULL},
        {"g/./h", "b/c/g/h", NULL},
        {"g/../h", "b/c/h", NULL},
        {"g;x=1/./y", "b/c/g;x=1/y", NULL},
        {"g;x=1/../y", "b/c/y", NULL},
        {"g?y/./x", "b/c/g", NULL},
        {"g?y/../x", "b/c/g", NULL},
        {"g#s/./x", "b/c/g", "s/./x"},
        {"g#s/../x", "b/c/g", "s/../x"},
    };
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        destination to = destination_of(a, "http://a/", "b/c/d;p", span_of(rows[i].href));
        expect_bool(rows[i].href, to.to == LEADS_INSIDE, true);
        expect_text(rows[i].href, to.path, rows[i].path);
        expect_text(rows[i].href, to.fragment, rows[i].fragment);
    }
    arena_free(a);
}

static void links_by_where_they_lead(void **state) {
    static const struct {
        const char *address, *page, *href;
        leads to;
        const char *path;
    } rows[] = {
        {"https://x.example/", "index.html", "recipes/", LEADS_INSIDE, "recipes/"},
        {"https://x.example/", "index.html", "./", LEADS_INSIDE, ""},
        {"https://x.example/", "index.html", "https://x.example/feed.xml", LEADS_INSIDE,
         "feed.xml"},
        {"https://x.example/", "index.html", "https://X.Example/", LEADS_INSIDE, ""},
        {"https://x.example/", "index.html", "//x.example/a", LEADS_INSIDE, "a"},
        {"https://x.example/", "index.html", "http://x.example/", LEADS_ELSEWHERE, NULL},
        {"https://x.example/", "index.html", "https://x.example.org/", LEADS_ELSEWHERE, NULL},
        {"https://x.example/", "index.html", "https://x.example:8080/", LEADS_ELSEWHERE, NULL},
        {"https://x.example/", "index.html", "https://x.example", LEADS_INSIDE, ""},
        {"https://x.example/", "index.html", "mailto:maren@x.example", LEADS_ELSEWHERE, NULL},
        {"https://x.example/", "index.html", "data:image/png;base64,AAAA", LEADS_ELSEWHERE, NULL},
        {"https://x.example/", "index.html", " a ", LEADS_INSIDE, "a"},
        {"https://x.example/", "index.html", "caf%C3%A9/", LEADS_INSIDE, "caf\xc3\xa9/"},
        {"https://x.example/", "index.html", "a%2", LEADS_NOWHERE, NULL},
        {"https://x.example/", "index.html", "a%zz", LEADS_NOWHERE, NULL},
        {"https://x.example/", "index.html", "a%00b", LEADS_NOWHERE, NULL},
        {"https://x.example/", "index.html", "#%", LEADS_NOWHERE, NULL},
        {"https://x.example/kitchen/", "a/index.html", "../b", LEADS_INSIDE, "b"},
        {"https://x.example/kitchen/", "a/index.html", "/kitchen/b", LEADS_INSIDE, "b"},
        {"https://x.example/kitchen/", "a/index.html", "/b", LEADS_ELSEWHERE, NULL},
        {"https://x.example/kitchen/", "a/index.html", "../../b", LEADS_ELSEWHERE, NULL},
        {"https://x.example/kitchen/", "index.html", "https://x.example/kitchen/", LEADS_INSIDE,
         ""},
        {"https://x.example/kitchen/", "index.html", "https://x.example/kitchens/", LEADS_ELSEWHERE,
         NULL},
    };
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        destination to = destination_of(a, rows[i].address, rows[i].page, span_of(rows[i].href));
        expect_bool(rows[i].href, to.to == rows[i].to, true);
        expect_text(rows[i].href, to.path, rows[i].path);
    }
    arena_free(a);
}

static void a_way_above_the_top_is_noticed(void **state) {
    static const struct {
        const char *path, *clean;
        bool above;
    } rows[] = {
        {"/a/../b", "b", false},
        {"/..", "", true},
        {"/../a", "a", true},
        {"a/../../etc/passwd", "etc/passwd", true},
        {"/a/..", "", false},
        {"/...", "...", false},
        {"/a//b", "a//b", false},
        {"", "", false},
        {"/", "", false},
        {"/./././", "", false},
        {"/a/b/../../../c", "c", true},
    };
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        bool above;
        expect_text(rows[i].path, path_without_dots(a, span_of(rows[i].path), &above),
                    rows[i].clean);
        expect_bool(rows[i].path, above, rows[i].above);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_examples_of_the_standard),
        cmocka_unit_test(links_by_where_they_lead),
        cmocka_unit_test(a_way_above_the_top_is_noticed),
    };
    return cmocka_run_group_tests_name("address", tests, NULL, NULL);
}
