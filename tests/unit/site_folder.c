/* Whole site folders: the reference alone, a small site, and what is missing or unreadable. */
#include "reading.h"

#include "read/site_folder.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

/* A folder of its own for each test, removed after it. */
typedef struct {
    arena *a;
    char *path;
} scratch;

static int scratch_up(void **state) {
    const char *parent = getenv("TMPDIR") ? getenv("TMPDIR") : "/tmp";
    arena *a = arena_new();
    scratch *s = ARENA_NEW(a, scratch);
    *s = (scratch){a, path_join(a, parent, "crumbnote-XXXXXX")};
    *state = s;
    return mkdtemp(s->path) ? 0 : -1;
}

static int scratch_down(void **state) {
    scratch *s = *state;
    int code = system(arena_format(s->a, "rm -rf '%s'", s->path));
    arena_free(s->a);
    return code;
}

static void put(const scratch *s, const char *file, const char *bytes) {
    int why;
    if (!file_write(path_join(s->a, s->path, file), span_of(bytes), &why))
        fail_msg("can't write %s: %d", file, why);
}

#define SITE "title: T\naddress: https://example.org/\n"
#define BARS                                                                                       \
    "---\ntitle: Bars\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients: [60 g oat flour]\n---\n"

static void read_site(const scratch *s, site_folder *site, problems *found, bool *machine_failed) {
    *found = problems_in(s->a);
    if (!site_folder_read(s->a, s->path, site, found, machine_failed))
        fail_msg("not read: %s", printed(s->a, found));
}

static void test_reference_alone(void **state) {
    scratch *s = *state;
    problems found = problems_in(s->a);
    site_folder site;
    bool machine_failed = true;
    assert_true(site_folder_read(s->a, NULL, &site, &found, &machine_failed));
    expect_words("problems", printed(s->a, &found), "");
    assert_false(machine_failed);
    assert_null(site.settings.folder);
    assert_true(site.shelf.count >= 160);
    assert_true(site.book.rules.count >= 60);
    assert_ptr_equal(site.book.shelf->items, site.shelf.items);
    assert_int_equal(site.recipe_files.count, 0);
}

static void test_whole(void **state) {
    scratch *s = *state;
    problems found;
    bool machine_failed;
    site_folder site;
    put(s, "site.yaml", SITE "cups: metric\n");
    put(s, "recipes/bars.md", BARS);
    put(s, "recipes/more.md", BARS);
    put(s, "pantry/own.yaml",
        "- name: club flour\n  family: flour\n  kind: club\n  origin: plant\n"
        "  label: {serving: 30 g, protein: 4}\n"
        "  water-uptake: {cold: 1, heated: 1, source: label}\n");
    put(s, "rules/own.yaml",
        "- rule: own\n  replace: {name: club flour}\n  with: {name: oat flour}\n  verdict: works\n"
        "  because: So.\n  basis: trial\n");
    put(s, "trials/log.yaml",
        "- {recipe: bars, replace: oat flour, with: club flour, date: 2026-03-01, verdict: "
        "works}\n");
    put(s, "pages/b.md", "---\ntitle: B\norder: 1\n---\n");
    put(s, "pages/a.md", "---\ntitle: A\n---\n");
    put(s, "pages/c.md", "---\ntitle: C\norder: 1\n---\n");
    put(s, "pictures/bars.svg", "<svg/>");
    read_site(s, &site, &found, &machine_failed);
    expect_words("problems", printed(s->a, &found), "");
    assert_int_equal(site.settings.cups, CUPS_METRIC);
    expect_words("folder", site.settings.folder, s->path);
    assert_true(pantry_find(&site.shelf, span_of("club flour"), s->a)->hers);
    expect_words("her rules stand first", site.book.rules.items[0].id, "own");
    assert_int_equal(site.book.rules.items[0].by, SAID_BY_OWN_RULE);
    assert_int_equal(site.book.rules.items[1].by, SAID_BY_REFERENCE);
    assert_int_equal(site.book.log.count, 1);
    assert_int_equal(site.recipe_files.count, 2);
    expect_words("recipe", site.recipe_files.items[0].name, "bars.md");
    assert_int_equal(site.page_count, 3);
    expect_words("first by order, then title", site.pages[0]->title, "B");
    expect_words("second", site.pages[1]->title, "C");
    expect_words("last: no order", site.pages[2]->title, "A");
    assert_int_equal(site.pictures.count, 1);
    recipe *bars = site_folder_recipe(s->a, &site, "bars.md", &found, &machine_failed);
    expect_words("title", bars->title, "Bars");
    expect_words("file", bars->file, "recipes/bars.md");
    assert_int_equal(found.count, 0);
}

static void test_missing(void **state) {
    scratch *s = *state;
    problems found = problems_in(s->a);
    site_folder site;
    bool machine_failed = true;
    assert_false(site_folder_read(s->a, s->path, &site, &found, &machine_failed));
    assert_false(machine_failed);
    expect_words("no site.yaml", found.items[0].message, "there is no site.yaml in this folder");
    const char *nowhere = path_join(s->a, s->path, "nowhere");
    assert_false(site_folder_read(s->a, nowhere, &site, &found, &machine_failed));
    assert_false(machine_failed);
    expect_words("no folder", found.items[1].message, "there is no such folder");
}

static void test_unreadable(void **state) {
    scratch *s = *state;
    problems found;
    bool machine_failed;
    site_folder site;
    put(s, "site.yaml", SITE);
    put(s, "pantry", "a file where a folder is meant");
    put(s, "rules/own.yml", "");
    read_site(s, &site, &found, &machine_failed);
    expect_words("problems", printed(s->a, &found),
                 "pantry: error: can't read it: Not a directory\n"
                 "rules/own.yml: warning: not read: its name does not end in .yaml\n"
                 "  hint: rename it or move it elsewhere\n");
    assert_false(machine_failed);
    assert_null(site_folder_recipe(s->a, &site, "gone.md", &found, &machine_failed));
    assert_true(machine_failed); /* it was listed a moment ago: the next time all is well */
    expect_words("gone", found.items[2].message, "can't read it: No such file or directory");
}

static void test_path_too_long(void **state) {
    scratch *s = *state;
    problems found = problems_in(s->a);
    site_folder site;
    bool machine_failed = false;
    char *path = arena_alloc(s->a, 6000);
    memset(path, 'x', 5999);
    assert_false(site_folder_read(s->a, path, &site, &found, &machine_failed));
    assert_true(machine_failed);
    expect_words("problem", printed(s->a, &found),
                 "site.yaml: error: can't read it: File name too long\n");
}

static void test_what_only_the_whole_shows(void **state) {
    scratch *s = *state;
    problems found;
    bool machine_failed;
    site_folder site;
    put(s, "site.yaml", SITE);
    put(s, "recipes/bars.md", BARS);
    put(s, "trials/log.yaml",
        "- {recipe: bras, replace: oat flour, with: rice flour, date: 2026-03-01, verdict: "
        "works}\n");
    put(s, "pages/about.md", "---\ntitle: A\n---\n");
    put(s, "pages/About!.md", "---\ntitle: B\n---\n");
    read_site(s, &site, &found, &machine_failed);
    expect_words("problems", printed(s->a, &found),
                 "trials/log.yaml:1:3: error: \"bras\" is not a recipe of this site\n"
                 "  hint: did you mean \"bars\"?\n"
                 "pages/about.md:1:1: error: pages/About!.md has the same page, pages/about/\n"
                 "  hint: rename one of the two files\n");
    assert_int_equal(site.page_count, 1);
}

static void test_site_folder_of(void **state) {
    scratch *s = *state;
    put(s, "site.yaml", SITE);
    put(s, "recipes/bars.md", BARS);
    put(s, "recipes/deeper/still/x.md", BARS);
    char *real = realpath(s->path, NULL);
    static const char *const inside[] = {"site.yaml", "recipes/bars.md", "recipes/gone.md",
                                         "recipes/deeper/still/x.md"};
    for (size_t i = 0; i < COUNT(inside); i++)
        expect_words(inside[i], site_folder_of(s->a, path_join(s->a, s->path, inside[i])), real);
    assert_null(site_folder_of(s->a, path_join(s->a, s->path, "no/such/folder/x.md")));
    assert_null(site_folder_of(s->a, "/x.md"));
    free(real);
}

int main(void) {
#define WITH_SCRATCH(test) cmocka_unit_test_setup_teardown(test, scratch_up, scratch_down)
    const struct CMUnitTest tests[] = {
        WITH_SCRATCH(test_reference_alone), WITH_SCRATCH(test_whole),
        WITH_SCRATCH(test_missing),         WITH_SCRATCH(test_unreadable),
        WITH_SCRATCH(test_path_too_long),   WITH_SCRATCH(test_what_only_the_whole_shows),
        WITH_SCRATCH(test_site_folder_of),
    };
    return cmocka_run_group_tests_name("site_folder", tests, NULL, NULL);
}
