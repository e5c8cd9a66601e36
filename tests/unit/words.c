#include "checks.h"

#include "base/text.h"
#include "base/words.h"

static void tells_utf8(void **state) {
    (void)state;
    static const struct {
        const char *name;
        span bytes;
        bool good;
        size_t bad;
    } rows[] = {{"empty", {"", 0}, true, 0},
                {"plain", {"oat", 3}, true, 0},
                {"two, three and four bytes", {"\u00e9\u20ac\U0001F95A", 9}, true, 0},
                {"a NUL", {"a\0b", 3}, false, 1},
                {"a lone trailing byte", {"ab\x80", 3}, false, 2},
                {"cut short", {"a\xc3", 2}, false, 1},
                {"overlong slash", {"\xc0\xaf", 2}, false, 0},
                {"a surrogate", {"\xed\xa0\x80", 3}, false, 0},
                {"beyond Unicode", {"\xf4\x90\x80\x80", 4}, false, 0},
                {"latin-1", {"caf\xe9 ", 5}, false, 3}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        size_t bad = 99;
        if (words_are_utf8(rows[i].bytes, &bad) != rows[i].good)
            fail_msg("%s", rows[i].name);
        same_count(rows[i].name, bad, rows[i].good ? 99 : rows[i].bad);
        assert_int_equal(words_are_utf8(rows[i].bytes, NULL), rows[i].good);
    }
}

static void folds_what_people_write(void **state) {
    (void)state;
    static const char *const rows[][2] = {{"", ""},
                                          {"oat flour", "oat flour"},
                                          {"  Oat   FLOUR ", "oat flour"},
                                          {"oat-flour", "oat flour"},
                                          {"oat \u2013 flour", "oat flour"},
                                          {"cow's milk", "cow s milk"},
                                          {"cow\u2019s milk", "cow s milk"},
                                          {"Cr\u00e8me Fra\u00eeche", "creme fraiche"},
                                          {"cre\u0300me", "creme"},
                                          {"pur\u00e9e", "puree"},
                                          {"Stra\u00dfe", "strasse"},
                                          {"\ufb02our", "flour"},
                                          {"oat\u00a0flour", "oat flour"},
                                          {"oat\u00adflour", "oatflour"},
                                          {"\ufeffoat", "oat"},
                                          {"\u00bd", "1\u20442"},
                                          {"\u041c\u0423\u041a\u0410", "\u043c\u0443\u043a\u0430"},
                                          {"oat\tflour\n", "oat flour"},
                                          {"oat\xff"
                                           "flour",
                                           "oatflour"},
                                          {"-", ""},
                                          {"  a", "a"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        span folded = words_fold(a, span_of(rows[i][0]));
        same_span(rows[i][0], folded, rows[i][1]);
        same_span("folded twice", words_fold(a, folded), rows[i][1]);
    }
    arena_free(a);
}

/* U+FDFA decomposes to 18 characters, the most of all: nothing of a row of them is lost. */
static void folds_the_longest_decomposition(void **state) {
    (void)state;
    arena *a = arena_new();
    size_t one = words_fold(a, span_of("\ufdfa")).length;
    assert_true(one > 18);
    same_count("four of them", words_fold(a, span_of("\ufdfa\ufdfa\ufdfa\ufdfa")).length, 4 * one);
    arena_free(a);
}

static void makes_slugs(void **state) {
    (void)state;
    static const char *const rows[][2] = {
        {"Towpath griddle rounds", "towpath-griddle-rounds"},
        {"Cr\u00e8me fra\u00eeche (light)", "creme-fraiche-light"},
        {"../../etc/passwd", "etc-passwd"},
        {".", "x"},
        {"", "x"},
        {"--a--b--", "a-b"},
        {"\u041c\u0443\u043a\u0430 2", "\u043c\u0443\u043a\u0430-2"},
        {"Größe \u00bd", "grosse-1-2"},
        {"\u62b9\u8336\u3069\u3089\u713c\u304d", "\u62b9\u8336\u3069\u3089\u713c\u304d"},
        {"\u0915\u093f\u0924\u093e\u092c", "\u0915\u093f\u0924\u093e\u092c"},
        {"\ubc14\uac8c\ud2b8", "\ubc14\uac8c\ud2b8"},
        {"\u05de\u05b7\u05e6\u05bc\u05b8\u05d4", "\u05de\u05e6\u05d4"},
        {"\u10ee\u10d0\u10ed\u10d0\u10de\u10e3\u10e0\u10d8",
         "\u10ee\u10d0\u10ed\u10d0\u10de\u10e3\u10e0\u10d8"},
        {"50 % oats", "50-oats"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i][0], words_slug(a, span_of(rows[i][0])), rows[i][1]);
    arena_free(a);
}

/* A long slug ends at a character and takes nothing from behind the cut. */
static void cuts_long_slugs(void **state) {
    (void)state;
    arena *a = arena_new();
    text longest = TEXT_EMPTY;
    for (int i = 0; i < 79; i++)
        text_add_char(&longest, 'a');
    text_add(&longest, "\u0436z");
    const char *slug = words_slug(a, text_span(&longest));
    assert_int_equal(strlen(slug), 79);
    assert_null(strchr(slug, 'z'));
    text_clear(&longest);
    for (int i = 0; i < 60; i++)
        text_add(&longest, "\u0436");
    slug = words_slug(a, text_span(&longest));
    assert_int_equal(strlen(slug), 80);
    assert_true(words_are_utf8(span_of(slug), NULL));
    text_free(&longest);
    arena_free(a);
}

static void counts_edits(void **state) {
    (void)state;
    static const struct {
        const char *a, *b;
        size_t most, distance;
    } rows[] = {{"oat", "oat", 3, 0}, {"oat", "ot", 3, 1},         {"oat", "oats", 3, 1},
                {"oat", "eat", 3, 1}, {"oat", "aot", 3, 1},        {"", "oat", 3, 3},
                {"oat", "", 3, 3},    {"kitten", "sitting", 9, 3}, {"oat", "wheat", 1, 2},
                {"ca", "abc", 9, 3},  {"flour", "fluor", 3, 1}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_count(rows[i].b, words_distance(span_of(rows[i].a), span_of(rows[i].b), rows[i].most),
                   rows[i].distance);
    char endless[100];
    memset(endless, 'a', sizeof endless);
    same_count("too long", words_distance((span){endless, 100}, span_of("a"), 5), 6);
}

static void offers_the_nearest_word(void **state) {
    (void)state;
    static const char *const known[] = {"oven", "ingredients", "title", "summary", "oat flour"};
    static const char *const rows[][2] = {{"ovn", "oven"},
                                          {"ingredient", "ingredients"},
                                          {"titel", "title"},
                                          {"ot fluor", "oat flour"},
                                          {"oven", "oven"},
                                          {"cat", NULL},
                                          {"summer", "summary"},
                                          {"dragon", NULL},
                                          {"", NULL}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *near = words_nearest(span_of(rows[i][0]), known, COUNT(known));
        same_text(rows[i][0], near ? near : "(none)", rows[i][1] ? rows[i][1] : "(none)");
    }
    assert_null(words_nearest(span_of("oven"), known, 0));
}

static void counts_characters(void **state) {
    (void)state;
    assert_int_equal(words_columns("\u00bd cup", 6), 5);
    assert_int_equal(words_columns("\U0001F95A", 4), 1);
    assert_int_equal(words_columns("", 0), 0);
}

static void finds_a_word_in_a_list(void **state) {
    (void)state;
    static const char *const list[] = {"plant", "dairy", "egg"};
    assert_int_equal(words_index(span_of("plant"), list, COUNT(list)), 0);
    assert_int_equal(words_index(span_of("egg"), list, COUNT(list)), 2);
    assert_int_equal(words_index(span_of("eggs"), list, COUNT(list)), COUNT(list));
    assert_int_equal(words_index(span_of(""), list, COUNT(list)), COUNT(list));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tells_utf8),
        cmocka_unit_test(folds_what_people_write),
        cmocka_unit_test(folds_the_longest_decomposition),
        cmocka_unit_test(makes_slugs),
        cmocka_unit_test(cuts_long_slugs),
        cmocka_unit_test(counts_edits),
        cmocka_unit_test(offers_the_nearest_word),
        cmocka_unit_test(counts_characters),
        cmocka_unit_test(finds_a_word_in_a_list),
    };
    return cmocka_run_group_tests_name("words", tests, NULL, NULL);
}
