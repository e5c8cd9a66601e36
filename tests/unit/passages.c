/* The prose of a file, cut into passages that know their places. */
#include "reading.h"

#include "check/passages.h"

static const char file[] = "---\n"
                           "title: \"Towpath rounds\"\n"
                           "tags: [breakfast, nut-free]\n"
                           "---\n"
                           "First *words*.\n"
                           "\n"
                           "1. Whisk the **egg whites** and\n"
                           "   `salt`; [see](../x/) p\u00e2t\u00e9 here. <!-- not this -->\n"
                           "2. Bake ![done](../../pictures/a.svg) well.\n"
                           "\n"
                           "## Notes\n"
                           "\n"
                           "Fish &amp; chips keep \\*two\\* days.\n"
                           "\n"
                           "    code is no prose\n";

static passages passages_of_file(arena *a) {
    passages all = passages_in(a, "recipes/x.md", span_of(file));
    passages_add_value(&all, PASSAGE_TITLE, "Towpath rounds", (place){"recipes/x.md", 2, 8});
    passages_add_value(&all, PASSAGE_TAG, "nut-free", (place){"recipes/x.md", 3, 7});
    passages_add_value(&all, PASSAGE_SUMMARY, NULL, (place){"recipes/x.md", 3, 7});
    span whole = span_of(file);
    passages_add_markdown(&all, span_from(whole, span_find(whole, "First")));
    return all;
}

static void cuts_a_file(void **state) {
    (void)state;
    static const struct {
        passage_sort sort;
        const char *words;
    } rows[] = {
        {PASSAGE_TITLE, "Towpath rounds"},
        {PASSAGE_TAG, "nut-free"},
        {PASSAGE_NOTE, "First words."},
        {PASSAGE_METHOD, "Whisk the egg whites and salt; see p\u00e2t\u00e9 here. "},
        {PASSAGE_METHOD, "Bake  well."},
        {PASSAGE_HEADING, "Notes"},
        {PASSAGE_NOTE, "Fish & chips keep *two* days."},
    };
    arena *a = arena_new();
    passages all = passages_of_file(a);
    assert_int_equal(all.count, COUNT(rows));
    for (size_t i = 0; i < COUNT(rows); i++) {
        expect_words(rows[i].words, all.items[i].words.at, rows[i].words);
        expect_number(rows[i].words, all.items[i].sort, rows[i].sort);
    }
    arena_free(a);
}

static void knows_where_words_stand(void **state) {
    (void)state;
    static const struct {
        size_t passage;
        const char *word;
        unsigned line, column;
    } rows[] = {
        {0, "Towpath", 2, 9}, {0, "rounds", 2, 17},         {1, "nut-free", 3, 19},
        {1, "free", 3, 23},   {2, "words", 5, 8},           {3, "egg", 7, 16},
        {3, "salt", 8, 5},    {3, "p\u00e2t\u00e9", 8, 25}, {3, "here", 8, 30},
        {4, "well", 9, 39},   {6, "chips", 13, 12},         {6, "days", 13, 31},
    };
    arena *a = arena_new();
    passages all = passages_of_file(a);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const passage *in = &all.items[rows[i].passage];
        place at = passage_place(&all, in, span_find(in->words, rows[i].word));
        expect_number(rows[i].word, at.line, rows[i].line);
        expect_number(rows[i].word, at.column, rows[i].column);
        place again = passages_place(&all, passages_offset(&all, at));
        expect_number("and back", again.column, at.column);
    }
    arena_free(a);
}

static void a_place_past_the_end_is_the_end(void **state) {
    (void)state;
    arena *a = arena_new();
    passages all = passages_in(a, "recipes/x.md", span_of("one\nt\u00e9o"));
    place end = passages_place(&all, 8), past = passages_place(&all, 5000);
    expect_number("line", end.line, 2);
    expect_number("column, in characters", end.column, 4);
    expect_number("line past the end", past.line, end.line);
    expect_number("column past the end", past.column, end.column);
    arena_free(a);
}

static void finds_links_and_pictures(void **state) {
    (void)state;
    arena *a = arena_new();
    passages all = passages_of_file(a);
    assert_int_equal(all.links.count, 2);
    const prose_link *link = &all.links.items[0], *picture = &all.links.items[1];
    assert_false(link->picture);
    expect_words("link", link->target.at, "../x/");
    expect_number("link", passages_place(&all, link->at).column, 12);
    assert_true(picture->picture);
    expect_words("picture", picture->target.at, "../../pictures/a.svg");
    expect_words("its text", picture->text.at, "done");
    arena_free(a);
}

static void finds_sentences(void **state) {
    (void)state;
    static const struct {
        const char *words, *at, *sentence;
    } rows[] = {
        {"One. Two is 1.5 long! Three", "1.5", "Two is 1.5 long"},
        {"One. Two", "One", "One"},
        {"One; two", "two", "two"},
        {"One", "One", "One"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        span words = span_of(rows[i].words);
        span got = sentence_around(words, span_find(words, rows[i].at));
        if (!span_is(got, rows[i].sentence))
            fail_msg("%s: got %.*s", rows[i].words, SPAN(got));
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(cuts_a_file),
        cmocka_unit_test(knows_where_words_stand),
        cmocka_unit_test(a_place_past_the_end_is_the_end),
        cmocka_unit_test(finds_links_and_pictures),
        cmocka_unit_test(finds_sentences),
    };
    return cmocka_run_group_tests_name("passages", tests, NULL, NULL);
}
