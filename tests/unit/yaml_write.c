/* Texts written as YAML are read back as they were. */
#include "reading.h"

#include "read/yaml.h"
#include "read/yaml_write.h"

static const struct {
    const char *name, *words, *alone, *in_list;
} rows[] = {
    {"plain words", "thin batter", "thin batter", "thin batter"},
    {"an amount", "1/2 cup (46 g) oat flour", "1/2 cup (46 g) oat flour",
     "1/2 cup (46 g) oat flour"},
    {"less", "-15 g", "-15 g", "-15 g"},
    {"a comma", "ran, met", "ran, met", "\"ran, met\""},
    {"half", "½ cup", "½ cup", "½ cup"},
    {"purée", "apple purée", "apple purée", "apple purée"},
    {"nothing", "", "\"\"", "\"\""},
    {"a colon", "so: thin", "\"so: thin\"", "\"so: thin\""},
    {"a number sign", "no #2", "\"no #2\"", "\"no #2\""},
    {"quotes", "\"thin\"", "\"\\\"thin\\\"\"", "\"\\\"thin\\\"\""},
    {"an apostrophe", "Ines's", "Ines's", "Ines's"},
    {"in apostrophes", "'thin'", "\"'thin'\"", "\"'thin'\""},
    {"a backslash", "a\\n", "\"a\\\\n\"", "\"a\\\\n\""},
    {"a hyphen at the front", "- thin", "\"- thin\"", "\"- thin\""},
    {"lines", "one\ntwo", "\"one\\ntwo\"", "\"one\\ntwo\""},
    {"a tab", "a\tb", "\"a\\x09b\"", "\"a\\x09b\""},
    {"a blank at the end", "thin ", "\"thin \"", "\"thin \""},
    {"a word of YAML", "null", "\"null\"", "\"null\""},
    {"a star", "*thin", "\"*thin\"", "\"*thin\""},
    {"brackets", "a [b]", "\"a [b]\"", "\"a [b]\""},
    {"a line separator", "a\u2028b", "\"a\\Lb\"", "\"a\\Lb\""},
    {"next line",
     "a\xC2\x85"
     "b",
     "\"a\\x85b\"", "\"a\\x85b\""},
};

static const char *written(arena *a, const char *words, bool in_list) {
    text t = TEXT_EMPTY;
    yaml_add_scalar(&t, span_of(words), in_list);
    const char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}

static void test_rows(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        expect_words(rows[i].name, written(a, rows[i].words, false), rows[i].alone);
        expect_words(rows[i].name, written(a, rows[i].words, true), rows[i].in_list);
    }
    arena_free(a);
}

/* The scalar that reading gives back for `words`; null when it can't be read. */
static const yaml_node *read_back(arena *a, const char *words, bool in_list) {
    const char *value = written(a, words, in_list);
    const char *yaml = in_list ? arena_format(a, "- k: [x, %s, y]\n  l: z\n", value)
                               : arena_format(a, "- k: %s\n  l: z\n", value);
    problems found = problems_in(a);
    const yaml_node *list = yaml_read(a, "t.yaml", span_of(yaml), 1, &found);
    if (!list || found.count || list->count != 1 || list->items[0]->count != 2)
        return NULL;
    const yaml_node *k = yaml_get(list->items[0], "k");
    return in_list ? k && k->count == 3 ? k->items[1] : NULL : k;
}

static void expect_back(arena *a, const char *words) {
    for (int in_list = 0; in_list < 2; in_list++) {
        const yaml_node *node = read_back(a, words, in_list);
        if (!node || node->sort != YAML_SCALAR || !span_is(node->scalar, words))
            fail_msg("not read back: %s", written(a, words, in_list));
    }
}

/* What YAML gives a meaning to, put together at random; the seed is fixed. */
static void test_any_text_is_read_back(void **state) {
    (void)state;
    static const char *const pieces[] = {"a",        "9",      " ",          ":",
                                         "#",        "-",      "\n",         "\t",
                                         "\r",       "'",      "\"",         "\\",
                                         ",",        "[",      "]",          "{",
                                         "}",        "&",      "*",          "!",
                                         "|",        ">",      "%",          "@",
                                         "`",        "?",      "~",          "null",
                                         "é",        "½",      "\u2028",     "\u2029",
                                         "\xC2\x85", "\u00a0", "\ufeff",     "=",
                                         "<",        "---",    "..",         "yes",
                                         "\x01",     "\x7f",   "\U0001f9c1", "\xEF\xBF\xBE",
                                         "- ",       ": "};
    unsigned seed = 20260301;
    arena *a = arena_new();
    for (int round = 0; round < 20000; round++) {
        const char *words = "";
        seed = seed * 1664525u + 1013904223u;
        for (unsigned i = 0, length = seed >> 29; i < length; i++) {
            seed = seed * 1664525u + 1013904223u;
            words = arena_format(a, "%s%s", words, pieces[(seed >> 16) % COUNT(pieces)]);
        }
        expect_back(a, words);
        arena_reset(a);
    }
    arena_free(a);
}

static void test_every_character_is_read_back(void **state) {
    (void)state;
    arena *a = arena_new();
    for (int c = 1; c < 0x80; c++) {
        const char one[] = {(char)c, 0}, inside[] = {'a', (char)c, 'b', 0};
        expect_back(a, one);
        expect_back(a, inside);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_rows),
        cmocka_unit_test(test_any_text_is_read_back),
        cmocka_unit_test(test_every_character_is_read_back),
    };
    return cmocka_run_group_tests_name("yaml_write", tests, NULL, NULL);
}
