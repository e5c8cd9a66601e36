/* A bake put behind what a file of the log holds: nothing in it changes. */
#include "reading.h"
#include "small_shelf.h"

#include "publish/trial_log.h"
#include "read/trials.h"

#define ONE                                                                                        \
    "- recipe: x\n  replace: egg white\n  with: almond butter\n  date: 2026-01-01\n  verdict: "    \
    "works\n"
#define ADDED                                                                                      \
    "- recipe: rounds\n  replace: 60 g pea protein powder\n  with: whey isolate\n"                 \
    "  date: 2026-03-01\n  verdict: avoid\n  texture: [dry, \"so: rubbery\"]\n"                    \
    "  measured: {height: 9 mm, as-written: {height: 11 mm}}\n  remarks: \"Thin: it ran.\"\n"

static view *entry_of(arena *a) {
    view *entry = view_object(a);
    view_put_text(a, entry, "recipe", "rounds");
    view_put_text(a, entry, "replace", "60 g pea protein powder");
    view_put_text(a, entry, "with", "whey isolate");
    view_put_text(a, entry, "date", "2026-03-01");
    view_put_text(a, entry, "verdict", "avoid");
    view *texture = view_put_list(a, entry, "texture");
    view_put_text(a, texture, NULL, "dry");
    view_put_text(a, texture, NULL, "so: rubbery");
    view *measured = view_put_object(a, entry, "measured");
    view_put_text(a, measured, "height", "9 mm");
    view_put_text(a, view_put_object(a, measured, "as-written"), "height", "11 mm");
    view_put_text(a, entry, "remarks", "Thin: it ran.");
    return entry;
}

/* The whole file after adding; null when it was refused. */
static const char *compose(arena *a, const char *existing, unsigned *line, problems *found) {
    pantry shelf = small_shelf(a);
    trial_addition add = {.entry = entry_of(a), .whole = TEXT_EMPTY};
    *found = problems_in(a);
    located was = {span_of(existing), {"trials/t.yaml", 1, 1}};
    bool good = trial_log_compose(a, was, &shelf, &add, found);
    const char *whole = good ? arena_copy(a, text_span(&add.whole)) : NULL;
    *line = add.line;
    text_free(&add.whole);
    return whole;
}

static const struct {
    const char *name, *existing, *whole;
    unsigned line;
} kept[] = {
    {"a new file", "", ADDED, 1},
    {"only a comment", "# Spring.\n", "# Spring.\n" ADDED, 2},
    {"another bake", ONE, ONE "\n" ADDED, 7},
    {"no line end",
     "# c\n- {recipe: x, replace: egg white, with: almond butter, date: 2026-01-01, "
     "verdict: works}",
     "# c\n- {recipe: x, replace: egg white, with: almond butter, date: 2026-01-01, verdict: "
     "works}\n\n" ADDED,
     4},
    {"a comment at the end", ONE "# more to come", ONE "# more to come\n\n" ADDED, 8},
    {"a document mark", "---\n" ONE, "---\n" ONE "\n" ADDED, 8},
    {"a byte-order mark", "\xEF\xBB\xBF" ONE, "\xEF\xBB\xBF" ONE "\n" ADDED, 7},
    {"a text of lines at the end", ONE "  remarks: |\n    One.\n    Two.\n",
     ONE "  remarks: |\n    One.\n    Two.\n\n" ADDED, 10},
};

static void test_what_was_there_stays(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(kept); i++) {
        arena *a = arena_new();
        problems found;
        unsigned line = 0;
        expect_words(kept[i].name, compose(a, kept[i].existing, &line, &found), kept[i].whole);
        expect_words(kept[i].name, printed(a, &found), "");
        expect_number(kept[i].name, line, kept[i].line);
        arena_free(a);
    }
}

/* The layout of the file is taken over. */
static void test_layouts(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    unsigned line;
    const char *whole =
        compose(a,
                "# c\r\n  - recipe: x\r\n    replace: egg white\r\n    with: almond butter\r\n"
                "    date: 2026-01-01\r\n    verdict: works\r\n",
                &line, &found);
    assert_non_null(whole);
    assert_non_null(strstr(whole, "\r\n\r\n  - recipe: rounds\r\n    replace: 60 g"));
    whole = compose(a,
                    "  -\n    recipe: x\n    replace: egg white\n    with: almond butter\n"
                    "    date: 2026-01-01\n    verdict: works\n",
                    &line, &found);
    assert_non_null(whole);
    assert_non_null(strstr(whole, "works\n\n  - recipe: rounds\n    replace: 60 g"));
    arena_free(a);
}

static const struct {
    const char *name, *existing, *report;
} refused[] = {
    {"a fault in it", "- recipe: x\n  replace: egg white\n",
     "trials/t.yaml:1:3: error: a trial needs \"with\"\n"
     "  hint: for example: with: {family: protein powder, kind: whey}\n"
     "trials/t.yaml:1:3: error: a trial needs \"date\"\n"
     "  hint: for example: date: 2026-05-02\n"
     "trials/t.yaml:1:3: error: a trial needs \"verdict\"\n"},
    {"an end mark", ONE "...\n",
     "trials/t.yaml:1:1: error: nothing can be put behind what this file ends with; it was left as "
     "it is\n  hint: name another file with --file\n"},
    {"a list in brackets", "[]\n",
     "trials/t.yaml:1:1: error: nothing can be put behind what this file ends with; it was left as "
     "it is\n  hint: name another file with --file\n"},
    {"no list", "recipe: x\n",
     "trials/t.yaml:1:1: error: this must be a list, each item a trial\n"
     "  hint: begin each item with \"- \"\n"},
};

static void test_refused(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(refused); i++) {
        arena *a = arena_new();
        problems found;
        unsigned line;
        if (compose(a, refused[i].existing, &line, &found))
            fail_msg("%s: not refused", refused[i].name);
        expect_words(refused[i].name, printed(a, &found), refused[i].report);
        arena_free(a);
    }
}

/* Bakes put behind each other are read as they were given, whatever is in their words. */
static void test_many_are_read_back(void **state) {
    (void)state;
    static const char *const remarks[] = {"- thin: #1, \"so\" she said",
                                          "one\ntwo\n\nthree",
                                          "''' [x] {y}",
                                          "½ of it ran — 🧁",
                                          "yes",
                                          "# no comment",
                                          "a\\b\ttab",
                                          "> folded",
                                          "null"};
    arena *a = arena_new();
    pantry shelf = small_shelf(a);
    trial_addition add = {.whole = TEXT_EMPTY};
    problems found = problems_in(a);
    for (size_t i = 0; i < COUNT(remarks); i++) {
        located was = {arena_copy_span(a, text_span(&add.whole)), {"t.yaml", 1, 1}};
        view *entry = view_object(a);
        view_put_text(a, entry, "recipe", "rounds");
        view_put_text(a, entry, "replace", "pea protein powder");
        view_put_text(a, entry, "with", "whey isolate");
        view_put_text(a, entry, "date", "2026-03-01");
        view_put_text(a, entry, "verdict", "works");
        view_put_text(a, view_put_list(a, entry, "texture"), NULL, remarks[i]);
        view_put_text(a, entry, "remarks", remarks[i]);
        text_clear(&add.whole);
        add.entry = entry;
        if (!trial_log_compose(a, was, &shelf, &add, &found))
            fail_msg("%s: refused", remarks[i]);
    }
    trials all = {0};
    trials_read(a, "t.yaml", text_span(&add.whole), &shelf, &all, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(all.count, COUNT(remarks));
    for (size_t i = 0; i < COUNT(remarks); i++) {
        expect_words("remarks", all.items[i].remarks, remarks[i]);
        expect_words("texture", all.items[i].texture.items[0], remarks[i]);
    }
    text_free(&add.whole);
    arena_free(a);
}

static void test_names_by_season(void **state) {
    (void)state;
    static const struct {
        const char *date, *name;
    } rows[] = {{"2026-01-04", "2026-winter.yaml"}, {"2026-02-28", "2026-winter.yaml"},
                {"2026-03-01", "2026-spring.yaml"}, {"2026-05-31", "2026-spring.yaml"},
                {"2026-06-01", "2026-summer.yaml"}, {"2026-08-23", "2026-summer.yaml"},
                {"2026-09-01", "2026-autumn.yaml"}, {"2026-11-25", "2026-autumn.yaml"},
                {"2026-12-31", "2026-winter.yaml"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_words(rows[i].date, trial_log_name(a, rows[i].date), rows[i].name);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_what_was_there_stays),
        cmocka_unit_test(test_layouts),
        cmocka_unit_test(test_refused),
        cmocka_unit_test(test_many_are_read_back),
        cmocka_unit_test(test_names_by_season),
    };
    return cmocka_run_group_tests_name("trial_log", tests, NULL, NULL);
}
