/* site.yaml. */
#include "reading.h"

#include "read/site_settings.h"
#include "swap/main_swaps.h"

static const char start[] = "title: T\naddress: https://example.org/\n";

static void test_whole(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    site_settings s;
    assert_true(site_settings_read(
        a, "site.yaml",
        span_of("title: The Boathouse Galley\naddress: https://example.org/galley\n"
                "language: en-GB\ncups: metric\nenergy: eu\nlabel: eu\ntheme: plain\n"
                "currency: EUR\nauthor: Maren Holt\nsummary: From the galley.\n"
                "cautions:\n  - Our kitchen handles nuts.\n  - And eggs.\n"
                "swap-pages: no\nreference: no\n"),
        &s, &found));
    expect_words("problems", printed(a, &found), "");
    assert_false(s.reference);
    expect_words("title", s.title, "The Boathouse Galley");
    expect_words("address", s.address, "https://example.org/galley/");
    expect_words("language", s.language, "en-GB");
    expect_words("theme", s.theme, "plain");
    expect_words("currency", s.currency, "EUR");
    expect_words("author", s.author, "Maren Holt");
    expect_words("summary", s.summary, "From the galley.");
    assert_int_equal(s.cups, CUPS_METRIC);
    assert_int_equal(s.energy, ENERGY_BY_EU);
    assert_int_equal(s.label, LABEL_EU);
    assert_int_equal(s.cautions.count, 2);
    expect_words("caution", s.cautions.items[1], "And eggs.");
    assert_int_equal(s.swap_pages, 0);
    arena_free(a);
}

static void test_least(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    site_settings s, plain = site_settings_default();
    assert_true(site_settings_read(a, "site.yaml", span_of(start), &s, &found));
    assert_int_equal(found.count, 0);
    expect_words("language", s.language, plain.language);
    expect_words("theme", s.theme, "plain");
    assert_null(s.currency);
    assert_null(s.author);
    assert_int_equal(s.cups, CUPS_US);
    assert_int_equal(s.energy, ENERGY_BY_SOURCE);
    assert_int_equal(s.label, LABEL_US);
    assert_int_equal(s.swap_pages, MAIN_SWAPS_USUAL);
    arena_free(a);
}

static const struct {
    const char *address;
    bool fine;
} addresses[] = {
    {"https://example.org", true},
    {"http://localhost:8000/", true},
    {"https://[::1]:80/a/", true},
    {"https://example.org/a-b_c~d/", true},
    {"example.org", false},
    {"ftp://example.org/", false},
    {"https://", false},
    {"https:///galley/", false},
    {"https://example.org/a b/", false},
    {"https://example.org/?q=1", false},
    {"'https://example.org/#x'", false},
    {"https://me@example.org/", false},
    {"\"https://example.org/\\\"><b>\"", false},
};

static void test_addresses(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(addresses); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        site_settings s;
        char *bytes = arena_format(a, "title: T\naddress: %s\n", addresses[i].address);
        bool fine = site_settings_read(a, "site.yaml", span_of(bytes), &s, &found);
        if (fine != addresses[i].fine || (found.errors == 0) != fine)
            fail_msg("%s: should be %s", addresses[i].address, fine ? "wrong" : "fine");
        arena_free(a);
    }
}

static const struct {
    const char *name, *more, *report;
} faults[] = {
    {"misspelt cups", "cups: metrics\n",
     "site.yaml:3:7: error: \"metrics\" is not a value of \"cups\"\n"
     "  hint: did you mean \"metric\"?\n"},
    {"no such energy", "energy: guess\n",
     "site.yaml:3:9: error: \"guess\" is not a value of \"energy\"\n"
     "  hint: it is one of: source, atwater, eu\n"},
    {"no language tag", "language: english please\n",
     "site.yaml:3:11: error: \"english please\" is not a language tag\n"
     "  hint: for example: language: en\n"},
    {"a theme elsewhere", "theme: ../mine\n",
     "site.yaml:3:8: error: \"../mine\" is not the name of a theme\n"
     "  hint: for example: theme: plain\n"},
    {"a strange key", "adress: x\n",
     "site.yaml:3:1: error: a site has no key \"adress\"\n  hint: did you mean \"address\"?\n"},
    {"cautions of mappings", "cautions: [{a: 1}]\n",
     "site.yaml:3:12: error: \"cautions\" must be a list of words\n"
     "  hint: for example: cautions: [Our kitchen handles nuts.]\n"},
    {"too many pages of swaps", "swap-pages: 13\n",
     "site.yaml:3:13: error: \"swap-pages\" must be a number from 0 to 12, and a whole one\n"
     "  hint: for example: swap-pages: 3\n"},
    {"half a page of a swap", "swap-pages: 2.5\n",
     "site.yaml:3:13: error: \"swap-pages\" must be a number from 0 to 12, and a whole one\n"
     "  hint: for example: swap-pages: 3\n"},
    {"some pages of swaps", "swap-pages: some\n",
     "site.yaml:3:13: error: \"swap-pages\" must be yes or no\n"},
};

static void test_swap_pages(void **state) {
    static const struct {
        const char *written;
        size_t count;
    } rows[] = {{"0", 0}, {"no", 0}, {"yes", MAIN_SWAPS_USUAL}, {"5", 5}, {"12", 12}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        site_settings s;
        char *bytes = arena_format(a, "%sswap-pages: %s\n", start, rows[i].written);
        assert_true(site_settings_read(a, "site.yaml", span_of(bytes), &s, &found));
        if (found.count || s.swap_pages != rows[i].count)
            fail_msg("%s: %zu pages", rows[i].written, s.swap_pages);
        arena_free(a);
    }
}

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        site_settings s;
        char *bytes = arena_format(a, "%s%s", start, faults[i].more);
        if (!site_settings_read(a, "site.yaml", span_of(bytes), &s, &found))
            fail_msg("%s: title and address were right", faults[i].name);
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        arena_free(a);
    }
}

static void test_missing(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    site_settings s;
    assert_false(site_settings_read(a, "site.yaml", span_of("cups: us\n"), &s, &found));
    expect_words("both missing", printed(a, &found),
                 "site.yaml:1:1: error: a site needs \"title\"\n"
                 "  hint: for example: title: Towpath griddle rounds\n"
                 "site.yaml:1:1: error: a site needs \"address\"\n"
                 "  hint: for example: address: https://example.org/galley/\n");
    assert_string_equal(s.theme, "plain");
    arena_free(a);
}

static const struct {
    const char *tag;
    bool fine;
} tags[] = {{"en", true},     {"de-AT", true}, {"zh-Hant-TW", true},   {"es-419", true},
            {"e", false},     {"engl", false}, {"en-", false},         {"-en", false},
            {"en_GB", false}, {"12", false},   {"en-abcdefghi", false}};

static void test_languages(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(tags); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        site_settings s;
        char *bytes = arena_format(a, "%slanguage: %s\n", start, tags[i].tag);
        assert_true(site_settings_read(a, "site.yaml", span_of(bytes), &s, &found));
        if ((found.errors == 0) != tags[i].fine)
            fail_msg("%s: should be %s", tags[i].tag, tags[i].fine ? "fine" : "wrong");
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_whole),      cmocka_unit_test(test_least),
        cmocka_unit_test(test_addresses),  cmocka_unit_test(test_faults),
        cmocka_unit_test(test_missing),    cmocka_unit_test(test_languages),
        cmocka_unit_test(test_swap_pages),
    };
    return cmocka_run_group_tests_name("site_settings", tests, NULL, NULL);
}
