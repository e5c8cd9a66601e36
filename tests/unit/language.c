/* read/language.h, base/sentence.h, base/plural.h, site/say.h: words by language. */
#include "support/cmocka_rows.h"

#include "base/files.h"
#include "read/language.h"
#include "site/say.h"

#include <stdlib.h>
#include <unistd.h>

static int open_arena(void **state) {
    *state = arena_new();
    return 0;
}

static int close_arena(void **state) {
    arena_free(*state);
    return 0;
}

/* Forms of counts as Unicode's CLDR 44 samples them ("Language Plural Rules" chart): the rule as
 * its data has it, counts, and the form of each. From memory. */
static void counts_take_the_form_of_the_language(void **state) {
    arena *a = *state;
    static const struct {
        const char *row, *one, *two, *few, *many, *zero;
        size_t counts[6];
        const char *forms[6];
    } rows[] = {
        {"English",
         "i = 1 and v = 0",
         NULL,
         NULL,
         NULL,
         NULL,
         {0, 1, 2, 11, 21, 101},
         {"other", "one", "other", "other", "other", "other"}},
        {"French",
         "i = 0,1",
         NULL,
         NULL,
         NULL,
         NULL,
         {0, 1, 2, 11, 21, 101},
         {"one", "one", "other", "other", "other", "other"}},
        {"Polish",
         "i = 1 and v = 0",
         NULL,
         "v = 0 and i % 10 = 2..4 and i % 100 != 12..14",
         "v = 0 and i != 1 and i % 10 = 0..1 or v = 0 and i % 10 = 5..9 or v = 0 and i % 100 = "
         "12..14",
         NULL,
         {0, 1, 2, 12, 22, 25},
         {"many", "one", "few", "many", "few", "many"}},
        {"Slovene",
         "v = 0 and i % 100 = 1",
         "v = 0 and i % 100 = 2",
         "v = 0 and i % 100 = 3..4 or v != 0",
         NULL,
         NULL,
         {1, 2, 3, 5, 101, 103},
         {"one", "two", "few", "other", "one", "few"}},
        {"Arabic",
         "n = 1",
         "n = 2",
         "n % 100 = 3..10",
         "n % 100 = 11..99",
         "n = 0",
         {0, 1, 2, 103, 111, 100},
         {"zero", "one", "two", "few", "many", "other"}},
        {"Japanese",
         NULL,
         NULL,
         NULL,
         NULL,
         NULL,
         {0, 1, 2, 3, 4, 5},
         {"other", "other", "other", "other", "other", "other"}},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *const written[PLURAL_OTHER] = {rows[i].zero, rows[i].one, rows[i].two,
                                                   rows[i].few, rows[i].many};
        plural_rules rules = {0};
        size_t offset;
        for (size_t f = 0; f < PLURAL_OTHER; f++)
            if (written[f] && !plural_rule_read(a, span_of(written[f]), &rules.of[f], &offset))
                fail_msg("%s: not read from byte %zu on", rows[i].row, offset);
        for (size_t c = 0; c < COUNT(rows[i].counts); c++)
            expect_text(rows[i].row, plural_names[plural_of(&rules, rows[i].counts[c])],
                        rows[i].forms[c]);
    }
}

static void what_is_no_rule_is_refused(void **state) {
    static const char *const rows[] = {
        "",        "n",      "n =",       "x = 1",  "n = 1 and",
        "n = 1 2", "n = 1.", "n % 0 = 1", "n == 1", "n = 1 or or n = 2"};
    for (size_t i = 0; i < COUNT(rows); i++) {
        plural_rule rule;
        size_t offset;
        if (plural_rule_read(*state, span_of(rows[i]), &rule, &offset))
            fail_msg("\"%s\" was read", rows[i]);
    }
}

static void sentences_are_cut_and_filled(void **state) {
    arena *a = *state;
    static const struct {
        const char *words, *filled;
    } rows[] = {{"Hold back {amount} of the {line}", "Hold back 15 g of the milk"},
                {"{line}: {amount}", "milk: 15 g"},
                {"{amount}{amount}{line}", "15 g15 gmilk"},
                {"{line}", "milk"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        cut_sentence cut;
        span fault;
        if (!sentence_cut(a, span_of(rows[i].words), "amount line", &cut, &fault))
            fail_msg("%s: %.*s", rows[i].words, SPAN(fault));
        expect_text(rows[i].words, sentence_fill(a, &cut, (const char *const[]){"15 g", "milk"}),
                    rows[i].filled);
    }
}

static void strange_places_are_found(void **state) {
    static const struct {
        const char *words, *fault;
    } rows[] = {{"of {what}", "{what}"},
                {"a } b", "}"},
                {"a {amount", "{"},
                {"{}", "{}"},
                {"} {amount}", "}"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        cut_sentence cut;
        span fault;
        if (sentence_cut(*state, span_of(rows[i].words), "amount line", &cut, &fault))
            fail_msg("%s", rows[i].words);
        expect_text(rows[i].words, arena_copy(*state, fault), rows[i].fault);
    }
}

/* -- files ------------------------------------------------------------------------------------ */

/* Reads language `tag` of a site folder that holds `words` as its file; what was found, as text. */
static const char *problems_of(arena *a, const char *tag, const char *words, language *out) {
    char folder[] = "/tmp/crumbnote-language.XXXXXX";
    problems found = problems_in(a);
    text all = TEXT_EMPTY;
    if (!mkdtemp(folder))
        fail_msg("no folder");
    const char *file = path_join(a, folder, arena_format(a, "language-%s.yaml", tag));
    int why;
    if (words && !file_write(file, span_of(words), &why))
        fail_msg("not written");
    (void)language_read(a, folder, tag, out, &found);
    unlink(file);
    rmdir(folder);
    for (size_t i = 0; i < found.count; i++)
        problem_print(&found.items[i], &all);
    const char *said = arena_copy(a, text_span(&all));
    text_free(&all);
    return said;
}

static void english_lacks_nothing(void **state) {
    language in;
    expect_text("English", problems_of(*state, "en", NULL, &in), "");
    expect_text("of a region", problems_of(*state, "en-GB", NULL, &in), "");
}

static void a_site_changes_one_sentence(void **state) {
    arena *a = *state;
    language in;
    expect_text("nothing found",
                problems_of(a, "en", "sentences: {about: \"some {amount}\"}\n", &in), "");
    expect_text("its own", SAY(a, &in, ABOUT, "5 g"), "some 5 g");
    expect_text("the others", SAID(&in, UNCHANGED), "unchanged");
}

static void mistakes_are_told_with_their_place(void **state) {
    static const struct {
        const char *words, *found;
    } rows[] = {
        {"sentences: {abuot: x}\n",
         "language-en.yaml:1:13: error: \"abuot\" is not asked for in \"sentences\"\n  hint: did "
         "you mean \"about\"?\n"},
        {"sentences:\n  about: \"{amuont}\"\n",
         "language-en.yaml:2:10: error: \"about\" has no place {amuont}\n  hint: its places: "
         "amount\n"},
        {"sentences:\n  about: about\n",
         "language-en.yaml:2:10: error: \"about\" lacks the place {amount}\n"},
        {"sentences:\n  about: {amount}\n",
         "language-en.yaml:2:10: error: \"about\" must be words\n"},
        {"sentences:\n  recipes: \"{count} recipes\"\n",
         "language-en.yaml:2:12: error: \"recipes\" must have a form for each way of counting\n"},
        {"sentences:\n  recipes: {one: one, few: few, other: \"{count}\"}\n",
         "language-en.yaml:2:23: error: \"recipes\" has no key \"few\"\n"},
        {"sentences:\n  recipes: {other: \"{count}\"}\n",
         "language-en.yaml:2:12: error: \"recipes\" lacks the form \"one\"\n"},
        {"months: {janury: x}\n",
         "language-en.yaml:1:10: error: \"months\" has no key \"janury\"\n"},
        {"plural-rules: {one: n is 1}\n",
         "language-en.yaml:1:21: error: this is no rule of counting\n"},
        {"words: x\n", "language-en.yaml:1:1: error: a language has no key \"words\"\n"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        language in;
        expect_holds_text(rows[i].words, problems_of(*state, "en", rows[i].words, &in),
                          rows[i].found);
    }
}

static void a_language_of_her_own_must_be_whole(void **state) {
    language in;
    const char *found =
        problems_of(*state, "tlh", "sentences: {about: \"{amount} x\"}\nmonths: {may: x}\n", &in);
    expect_holds_text("sentence", found,
                      "language-tlh.yaml:1:1: error: \"sentences\" lack \"unchanged\"\n  hint: in "
                      "English: \"unchanged\"\n");
    expect_holds_text("list", found, "error: \"months\" lack \"june\"\n");
    if (strstr(found, "\"about\"") || strstr(found, "\"may\""))
        fail_msg("%s", found);
}

static void kinds_have_a_word_or_are_as_written(void **state) {
    language in;
    expect_text("nothing found",
                problems_of(*state, "en", "kinds: {no-bake: unbaked, pea: garden pea}\n", &in), "");
    expect_text("a word", language_kind(&in, "no-bake"), "unbaked");
    expect_text("none", language_kind(&in, "pea isolate"), "pea isolate");
    assert_null(language_kind(&in, NULL));
    expect_text("of the program", problems_of(*state, "de", "kinds: {pea: Gartenerbse}\n", &in),
                "");
    expect_text("its own goes first", language_kind(&in, "pea"), "Gartenerbse");
    expect_text("the rest", language_kind(&in, "griddle cake"), "Pfannkuchen");
}

static void an_unknown_language_is_told(void **state) {
    language in;
    expect_holds_text("unknown", problems_of(*state, "tlh", NULL, &in),
                      "site.yaml: error: there is no language \"tlh\"\n");
}

/* -- saying ----------------------------------------------------------------------------------- */

static void numbers_bear_the_marks_of_the_language(void **state) {
    arena *a = *state;
    language in;
    static const struct {
        const char *plain, *said;
    } rows[] = {{"0.25 g", "0,25 g"},     {"1214 kJ / 290 kcal", "1214 kJ / 290 kcal"},
                {"<0.5 g", "<0,5 g"},     {"12345.5", "12.345,5"},
                {"1234567", "1.234.567"}, {"1 1/2 cups", "1 1/2 cups"},
                {"1. Mix", "1. Mix"},     {"", ""}};
    expect_text("marks", problems_of(a, "en", "numbers: {decimal: \",\", group: \".\"}\n", &in),
                "");
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_text(rows[i].plain, say_figures(a, &in, rows[i].plain), rows[i].said);
    expect_text("change", say_change(a, &in, -2.14, 1, "g"), "\u22122,1 g");
    expect_text("percent", say_percent(a, &in, 0.125, 1), "12,5 %");
}

static void english_is_as_it_was(void **state) {
    arena *a = *state;
    const language *in = language_english(a);
    expect_text("one", SAY_NUMBER(a, in, RECIPES, 1u), "1 recipe");
    expect_text("none", SAY_NUMBER(a, in, RECIPES, 0u), "0 recipes");
    expect_text("date", say_date(a, in, "2026-05-02"), "2 May 2026");
    expect_text("no date", say_date(a, in, "May"), "May");
    expect_text("minutes", say_minutes(a, in, 80), "1 h 20 min");
    expect_text("hours", say_minutes(a, in, 120), "2 h");
    expect_text("list", say_list(a, in, (const char *const[]){"a", "b", "c"}, 3), "a, b and c");
    expect_text("change", say_change(a, in, 0.04, 1, "g"), "unchanged");
    expect_text("range", say_wide_range(a, in, 31.7, 64.2), "30\u201365 g");
    for (size_t i = 0; i < VERDICT_COUNT; i++)
        expect_text("verdict", in->verdicts[i], verdict_word((verdict)i));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(counts_take_the_form_of_the_language),
        cmocka_unit_test(what_is_no_rule_is_refused),
        cmocka_unit_test(sentences_are_cut_and_filled),
        cmocka_unit_test(strange_places_are_found),
        cmocka_unit_test(english_lacks_nothing),
        cmocka_unit_test(a_site_changes_one_sentence),
        cmocka_unit_test(mistakes_are_told_with_their_place),
        cmocka_unit_test(a_language_of_her_own_must_be_whole),
        cmocka_unit_test(kinds_have_a_word_or_are_as_written),
        cmocka_unit_test(an_unknown_language_is_told),
        cmocka_unit_test(numbers_bear_the_marks_of_the_language),
        cmocka_unit_test(english_is_as_it_was),
    };
    return cmocka_run_group_tests_name("language", tests, open_arena, close_arena);
}
