/* Pages in the Western encoding that came before UTF-8. */
#include "checks.h"

#include "draft/western.h"

#include "base/words.h"

static void reads_what_a_page_declares(void **state) {
    (void)state;
    static const struct {
        const char *page;
        bool western;
    } rows[] = {
        {"<meta charset=windows-1252>", true},
        {"<META CHARSET=\"ISO-8859-1\">", true},
        {"<meta charset='latin1'>", true},
        {"<meta http-equiv=Content-Type content=\"text/html; charset=iso-8859-1\">", true},
        {"<meta charset=utf-8>", false},
        {"<meta charset=shift_jis>", false},
        {"<p>windows-1252</p>", false},
        {"", false},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        if (western_is_declared(a, span_of(rows[i].page)) != rows[i].western)
            fail_msg("%s", rows[i].page);
    arena_free(a);
}

/* Encoding Standard, index windows-1252. */
static void turns_bytes_into_utf8(void **state) {
    (void)state;
    static const struct {
        const char *bytes, *utf8;
    } rows[] = {
        {"plain", "plain"}, {"\xbd", "\u00bd"}, {"\xe9", "\u00e9"},           {"\xff", "\u00ff"},
        {"\xa0", "\u00a0"}, {"\x80", "\u20ac"}, {"\x96", "\u2013"},           {"\x92", "\u2019"},
        {"\x9f", "\u0178"}, {"\x81", "\ufffd"}, {"\xc3\xa9", "\u00c3\u00a9"},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        same_span(rows[i].bytes, western_to_utf8(a, span_of(rows[i].bytes)), rows[i].utf8);
    char all[256];
    for (size_t i = 0; i < sizeof all; i++)
        all[i] = (char)i;
    assert_true(words_are_utf8(western_to_utf8(a, (span){all, sizeof all}), NULL));
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_what_a_page_declares),
        cmocka_unit_test(turns_bytes_into_utf8),
    };
    return cmocka_run_group_tests_name("western", tests, NULL, NULL);
}
