/* preview/request.h: which hosts and paths the preview answers for. */
#include "support/cmocka_rows.h"

#include "base/percent.h"
#include "base/text.h"
#include "preview/request.h"

static void only_names_of_this_machine(void **state) {
    static const struct {
        const char *host, *listening;
        unsigned port;
        bool served;
    } rows[] = {
        {"127.0.0.1:4060", "127.0.0.1", 4060, true},
        {"localhost:4060", "127.0.0.1", 4060, true},
        {"LocalHost:4060", "127.0.0.1", 4060, true},
        {"127.0.0.2:4060", "127.0.0.1", 4060, true}, /* RFC 1122: all of 127/8 is loopback */
        {"[::1]:4060", "::1", 4060, true},
        {"[0:0:0:0:0:0:0:1]:4060", "::1", 4060, true},
        {"127.0.0.1", "127.0.0.1", 80, true},
        {"localhost", "127.0.0.1", 80, true},
        {"127.0.0.1:4061", "127.0.0.1", 4060, false},
        {"127.0.0.1", "127.0.0.1", 4060, false},
        {"127.0.0.1:", "127.0.0.1", 4060, false},
        {"127.0.0.1:04060", "127.0.0.1", 4060, true},
        {"127.0.0.1:99999999999999", "127.0.0.1", 4060, false},
        {"evil.example:4060", "127.0.0.1", 4060, false},
        {"localhost.evil.example:4060", "127.0.0.1", 4060, false},
        {"127.0.0.1.evil.example:4060", "127.0.0.1", 4060, false},
        {"evil.example", "127.0.0.1", 80, false},
        {"192.168.1.5:4060", "127.0.0.1", 4060, false},
        {"2130706433:4060", "127.0.0.1", 4060, false},
        {"0x7f.1:4060", "127.0.0.1", 4060, false},
        {"::1:4060", "::1", 4060, false},
        {"[::1", "::1", 4060, false},
        {"[::1]x:4060", "::1", 4060, false},
        {"[127.0.0.1]:4060", "127.0.0.1", 4060, false},
        {"[localhost]:4060", "127.0.0.1", 4060, false},
        {"a@127.0.0.1:4060", "127.0.0.1", 4060, false},
        {" 127.0.0.1:4060", "127.0.0.1", 4060, false},
        {"", "127.0.0.1", 80, false},
        {":4060", "127.0.0.1", 4060, false},
        /* Told to listen elsewhere: that address, and where it is all of them any address; but
         * never a foreign name. */
        {"192.168.1.5:4060", "192.168.1.5", 4060, true},
        {"192.168.1.6:4060", "192.168.1.5", 4060, false},
        {"192.168.1.5:4060", "0.0.0.0", 4060, true},
        {"[fe80::1]:4060", "::", 4060, true},
        {"evil.example:4060", "0.0.0.0", 4060, false},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].host,
                    host_is_served(span_of(rows[i].host), rows[i].listening, rows[i].port),
                    rows[i].served);
}

static void a_host_of_any_length(void **state) {
    (void)state;
    text t = TEXT_EMPTY;
    for (int i = 0; i < 5000; i++)
        text_add(&t, "1");
    text_add(&t, ":4060");
    expect_bool("long", host_is_served(text_span(&t), "127.0.0.1", 4060), false);
    expect_bool("NUL", host_is_served((span){"127.0.0.1\0x:4060", 16}, "127.0.0.1", 4060), false);
    text_free(&t);
}

static void paths_are_plain_or_refused(void **state) {
    static const struct {
        const char *target;
        asks what;
        const char *path;
    } rows[] = {
        {"/", ASKS_PATH, ""},
        {"/recipes/rounds/", ASKS_PATH, "recipes/rounds/"},
        {"/recipes", ASKS_PATH, "recipes"},
        {"/theme/style.css", ASKS_PATH, "theme/style.css"},
        {"/caf%C3%A9/", ASKS_PATH, "caf\xc3\xa9/"},
        {"/a%20b", ASKS_PATH, "a b"},
        {"/a/../b", ASKS_PATH, "b"},
        {"/a/./b", ASKS_PATH, "a/b"},
        {"/a/%2e%2e/b", ASKS_PATH, "b"},
        {"/%61", ASKS_PATH, "a"},
        {"/%2561", ASKS_PATH, "%61"}, /* decoded once, never twice */
        {"/..", ASKS_NONSENSE, NULL},
        {"/../../etc/passwd", ASKS_NONSENSE, NULL},
        {"/%2e%2e/%2e%2e/etc/passwd", ASKS_NONSENSE, NULL},
        {"/..%2f..%2fetc/passwd", ASKS_NONSENSE, NULL},
        {"/a/..%2f..%2fetc/passwd", ASKS_NONSENSE, NULL},
        {"/%00", ASKS_NONSENSE, NULL},
        {"/a%00.html", ASKS_NONSENSE, NULL},
        {"/a%0d%0aX:1", ASKS_NONSENSE, NULL},
        {"/%7f", ASKS_NONSENSE, NULL},
        {"/%", ASKS_NONSENSE, NULL},
        {"/%4", ASKS_NONSENSE, NULL},
        {"/%u0041", ASKS_NONSENSE, NULL},
        {"", ASKS_NONSENSE, NULL},
        {"*", ASKS_NONSENSE, NULL},
        {"http://evil.example/", ASKS_NONSENSE, NULL},
        {"/.crumbnote-record", ASKS_NOTHING_THERE, NULL},
        {"/%2ecrumbnote-record", ASKS_NOTHING_THERE, NULL},
        {"/a/.hidden/b", ASKS_NOTHING_THERE, NULL},
        {"/...", ASKS_NOTHING_THERE, NULL},
        {"//evil.example/", ASKS_NOTHING_THERE, NULL},
        {"/a//b", ASKS_NOTHING_THERE, NULL},
        {"/a//", ASKS_NOTHING_THERE, NULL},
        {"/..%5c..%5cetc", ASKS_NOTHING_THERE, NULL},
        {"/a\\b", ASKS_NOTHING_THERE, NULL},
    };
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *path = NULL;
        asks what = request_path(a, span_of(rows[i].target), &path);
        if (what != rows[i].what)
            fail_msg("%s: got %d, wanted %d", rows[i].target, (int)what, (int)rows[i].what);
        if (what == ASKS_PATH)
            expect_text(rows[i].target, path, rows[i].path);
    }
    arena_free(a);
}

static void escaped_paths_come_back(void **state) {
    static const char *const rows[] = {"recipes/x", "caf\xc3\xa9", "a b\"<>?#%41", ""};
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *back = NULL, *escaped = percent_encode(a, rows[i]);
        assert_int_equal(request_path(a, span_of(arena_format(a, "/%s", escaped)), &back),
                         ASKS_PATH);
        expect_text(rows[i], back, rows[i]);
        expect_bool(rows[i], strpbrk(escaped, "\"<>?# \r\n") == NULL, true);
    }
    arena_free(a);
}

/* The types as IANA registers them; for feeds RFC 4287, for scripts RFC 9239. */
static void media_types(void **state) {
    static const struct {
        const char *path, *type;
    } rows[] = {
        {"index.html", "text/html; charset=utf-8"},
        {"theme/style.css", "text/css; charset=utf-8"},
        {"theme/script.js", "text/javascript; charset=utf-8"},
        {"search/index.json", "application/json"},
        {"feed.xml", "application/atom+xml"},
        {"sitemap.xml", "application/xml"},
        {"robots.txt", "text/plain; charset=utf-8"},
        {"pictures/a.svg", "image/svg+xml"},
        {"pictures/a.webp", "image/webp"},
        {"pictures/a.jpg", "image/jpeg"},
        {"pictures/a.jpeg", "image/jpeg"},
        {"pictures/a.png", "image/png"},
        {"theme/a.woff2", "font/woff2"},
        {"html", "application/octet-stream"},
        {"a.unknown", "application/octet-stream"},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_text(rows[i].path, media_type_of(rows[i].path), rows[i].type);
}

static void loopback_or_not(void **state) {
    static const struct {
        const char *address;
        bool loopback;
    } rows[] = {{"127.0.0.1", true}, {"127.9.9.9", true}, {"::1", true},        {"0.0.0.0", false},
                {"::", false},       {"10.0.0.1", false}, {"localhost", false}, {"", false}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].address, address_is_loopback(rows[i].address), rows[i].loopback);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(only_names_of_this_machine),
        cmocka_unit_test(a_host_of_any_length),
        cmocka_unit_test(paths_are_plain_or_refused),
        cmocka_unit_test(escaped_paths_come_back),
        cmocka_unit_test(media_types),
        cmocka_unit_test(loopback_or_not),
    };
    return cmocka_run_group_tests_name("request", tests, NULL, NULL);
}
