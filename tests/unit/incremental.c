/* publish/build.h: after any sequence of edits, a build that does only what changed leaves the
 * same bytes as one that begins with nothing, and reports the same problems.
 *
 *     SEQUENCES=1000 FIRST_SEED=1 tests/unit/incremental */
#include "support/cmocka_rows.h"
#include "support/random_site.h"

#include "publish/build.h"
#include "publish/record.h"

#include <ftw.h>

enum { STEPS_MOST = 3, EDITS_MOST = 2, PATH_MOST = 512 };

typedef struct {
    random_site site;
    const char *out, *fresh; /* built step by step, and anew each time */
    unsigned seed, step;
    size_t recipes, made; /* in all builds after the first: looked at, and worked on */
    bool record_damaged;  /* then nothing is deleted, since nobody knows what was written */
} run;

static int remove_one(const char *path, const struct stat *about, int kind, struct FTW *at) {
    (void)about, (void)kind, (void)at;
    return remove(path);
}

static void remove_tree(const char *path) {
    (void)nftw(path, remove_one, 16, FTW_DEPTH | FTW_PHYS);
}

/* -- comparing ------------------------------------------------------------------------------- */

typedef struct {
    const char **items;
    size_t count, capacity;
} found_files;

/* nftw has no argument of its own for what it calls. */
static found_files *listing;
static arena *listing_home;

static int list_one(const char *path, const struct stat *about, int kind, struct FTW *at) {
    (void)about, (void)at;
    if (kind == FTW_F && strcmp(path_name(path), RECORD_NAME) != 0)
        LIST_ADD(listing_home, listing, arena_copy(listing_home, span_of(path)));
    return 0;
}

static found_files files_in(arena *a, const char *folder) {
    found_files found = {0};
    listing = &found;
    listing_home = a;
    (void)nftw(folder, list_one, 16, FTW_PHYS);
    return found;
}

static bool is_broken(const run *r, unsigned i) {
    const random_recipe *of = &r->site.recipes[i];
    bool missing = of->picture && !r->site.pictures[of->picture - 1].there;
    return of->there && (of->broken || missing);
}

/* The pages of a broken recipe stay as they were, and in the sitemap; a fresh build has none. */
static bool is_of_broken(const run *r, const char *path) {
    for (unsigned i = 0; i < RECIPES_MOST; i++) {
        const char *folder = arena_format(r->site.a, "/recipes/recipe-%u/", i);
        if (is_broken(r, i) && (strstr(path, folder) || strstr(path, "/sitemap.xml")))
            return true;
    }
    return false;
}

static void expect_same_file(const run *r, const char *path, const char *other) {
    arena *a = arena_new();
    span one, two;
    int why;
    if (!file_read(a, path, &one, &why))
        fail_msg("seed %u, step %u: can't read %s", r->seed, r->step, path);
    if (!file_read(a, other, &two, &why))
        fail_msg("seed %u, step %u: there is no %s", r->seed, r->step, other);
    if (!span_equal(one, two))
        fail_msg("seed %u, step %u: %s and %s differ", r->seed, r->step, path, other);
    arena_free(a);
}

static void expect_all_in(const run *r, const char *from, const char *in) {
    arena *a = arena_new();
    found_files files = files_in(a, from);
    for (size_t i = 0; i < files.count; i++)
        if (!is_of_broken(r, files.items[i]))
            expect_same_file(r, files.items[i],
                             arena_format(a, "%s%s", in, files.items[i] + strlen(from)));
    arena_free(a);
}

/* -- what happens to the output folder ------------------------------------------------------- */

/* One of the files in it. */
static const char *any_output(run *r) {
    found_files files = files_in(r->site.a, r->out);
    return files.count ? files.items[below(&r->site, (unsigned)files.count)] : "";
}

static void delete_output(run *r) {
    unlink(any_output(r));
}

/* Puts other bytes in the place of one, the length kept. */
static void damage(random_site *s, const char *path) {
    struct stat about;
    if (stat(path, &about) != 0 || about.st_size == 0)
        return;
    FILE *f = fopen(path, "r+");
    long at = (long)below(s, (unsigned)about.st_size);
    fseek(f, at, SEEK_SET);
    int was = fgetc(f);
    fseek(f, at, SEEK_SET);
    fputc(was ^ 1, f);
    fclose(f);
}

static void alter_output(run *r) {
    damage(&r->site, any_output(r));
}

static void cut_output(run *r) {
    const char *path = any_output(r);
    if (path[0] && truncate(path, (off_t)below(&r->site, 100)) != 0)
        fail_msg("can't cut %s", path);
}

static void damage_record(run *r) {
    const char *path = path_join(r->site.a, r->out, RECORD_NAME);
    if (below(&r->site, 2))
        damage(&r->site, path);
    else
        unlink(path);
    r->record_damaged = true;
}

typedef void output_change(run *r);
static output_change *const output_changes[] = {delete_output, alter_output, alter_output,
                                                cut_output, damage_record};

/* -- one sequence ---------------------------------------------------------------------------- */

static void change_something(run *r) {
    unsigned which = below(&r->site, COUNT(site_edits) + 2);
    if (which < COUNT(site_edits))
        site_edits[which](&r->site);
    else
        output_changes[below(&r->site, COUNT(output_changes))](r);
}

static build_report build_into(run *r, const char *out, problems *found) {
    build_request asked = {.folder = r->site.folder, .out = out, .workers = 1 + below(&r->site, 3)};
    build_report report = build_site(&asked, found);
    expect_bool("the machine failed", report.machine_failed, false);
    return report;
}

static void expect_same_problems(const run *r, problems *one, problems *two) {
    problems_sort(one);
    problems_sort(two);
    if (one->count != two->count)
        fail_msg("seed %u, step %u: %zu problems, not %zu", r->seed, r->step, one->count,
                 two->count);
    for (size_t i = 0; i < one->count; i++)
        expect_text("problem", one->items[i].message, two->items[i].message);
}

static void build_and_compare(run *r) {
    problems found = problems_in(r->site.a), found_fresh = problems_in(r->site.a);
    build_report report = build_into(r, r->out, &found);
    r->recipes += report.recipes;
    r->made += report.made;
    remove_tree(r->fresh);
    (void)build_into(r, r->fresh, &found_fresh);
    expect_same_problems(r, &found, &found_fresh);
    expect_all_in(r, r->fresh, r->out);
    if (!r->record_damaged)
        expect_all_in(r, r->out, r->fresh);
    else /* files may be left that nobody knows of: begin anew */
        remove_tree(r->out);
    r->record_damaged = false;
}

/* Returns the share of recipes that were worked on. */
static double run_sequence(const char *base, unsigned seed) {
    run r = {.seed = seed};
    r.site.a = arena_new();
    r.site.state = seed * 2654435769u + 1;
    r.site.folder = path_join(r.site.a, base, "site");
    r.out = path_join(r.site.a, base, "out");
    r.fresh = path_join(r.site.a, base, "fresh");
    site_fill(&r.site);
    unsigned steps = 1 + below(&r.site, STEPS_MOST);
    build_and_compare(&r);
    r.recipes = r.made = 0;
    while (r.step++ < steps) {
        for (unsigned edits = 1 + below(&r.site, EDITS_MOST); edits > 0; edits--)
            change_something(&r);
        build_and_compare(&r);
    }
    remove_tree(base);
    arena_free(r.site.a);
    return r.recipes ? (double)r.made / (double)r.recipes : 0;
}

static unsigned from_environment(const char *name, unsigned usual) {
    const char *value = getenv(name);
    return value ? (unsigned)strtoul(value, NULL, 10) : usual;
}

static void doing_only_what_changed_leaves_the_same_bytes(void **state) {
    (void)state;
    unsigned first = from_environment("FIRST_SEED", 1), count = from_environment("SEQUENCES", 60);
    char base[PATH_MOST];
    double worked_on = 0;
    for (unsigned seed = first; seed < first + count; seed++) {
        snprintf(base, sizeof base, "%s/crumbnote-incremental-XXXXXX",
                 folder_exists("/dev/shm") ? "/dev/shm" : "/tmp");
        assert_non_null(mkdtemp(base));
        worked_on += run_sequence(base, seed);
    }
    print_message("# %.0f %% of the recipes were worked on\n", 100 * worked_on / count);
    expect_bool("some recipes were left alone", worked_on < 0.9 * count, true);
}

/* -- how much is done ------------------------------------------------------------------------ */

static void change_nothing(random_site *s) {
    (void)s;
}

static void touch(random_site *s) {
    put_recipe(s, 1);
}

static void change_method(random_site *s) {
    s->recipes[1].method++;
    put_recipe(s, 1);
}

static void change_rule_of_pea(random_site *s) {
    s->rules[0] = (random_entry){true, 0, 0, 7};
    put_rules(s);
}

static void change_rule_of_spelt(random_site *s) {
    s->rules[1] = (random_entry){true, 2, 0, 7};
    put_rules(s);
}

static void change_page_off_the_menu(random_site *s) {
    s->pages[0].words++;
    put_page(s, 0);
}

static void change_settings(random_site *s) {
    s->title++;
    put_settings(s);
}

static void bake_pea(random_site *s) {
    s->trials[0] = (random_entry){true, 0, 0, 7}; /* by the first recipe */
    put_trials(s);
}

static void say_more_of_that_bake(random_site *s) {
    s->trials[0].words++;
    put_trials(s);
}

static void bake_what_it_has_not(random_site *s) {
    s->trials[1] = (random_entry){true, 4, 12, 7}; /* casein, by the fifth */
    put_trials(s);
}

static void forget_that_bake(random_site *s) {
    s->trials[1].there = false;
    put_trials(s);
}

static void draw_otherwise(random_site *s) {
    s->pictures[0].words++;
    put_picture(s, 0);
}

static void take_the_picture_away(random_site *s) {
    s->pictures[0].there = false;
    put_picture(s, 0);
}

static const struct {
    const char *name;
    site_edit *change;
    size_t made; /* recipes worked on, of six */
} amounts[] = {{"nothing changed", change_nothing, 0},
               {"a file written anew with the same words", touch, 0},
               {"the words of one recipe", change_method, 1},
               {"a rule for pea protein powder, which two use", change_rule_of_pea, 2},
               {"a rule for spelt flour, which nobody uses", change_rule_of_spelt, 0},
               {"a page that is not in the menu", change_page_off_the_menu, 0},
               {"a trial of replacing pea protein powder", bake_pea, 2},
               {"other remarks on it", say_more_of_that_bake, 2},
               {"a trial on one recipe of what nobody uses", bake_what_it_has_not, 1},
               {"and it taken away", forget_that_bake, 1},
               {"a picture in the words of one, drawn anew", draw_otherwise, 0},
               {"and taken away", take_the_picture_away, 1},
               {"the title of the site", change_settings, 6}};

static void no_more_is_done_than_it_takes(void **state) {
    (void)state;
    char base[PATH_MOST] = "/tmp/crumbnote-incremental-XXXXXX";
    assert_non_null(mkdtemp(base));
    run r = {.site.a = arena_new(), .site.state = 1};
    r.site.folder = path_join(r.site.a, base, "site");
    for (unsigned i = 0; i < RECIPES_MOST; i++) {
        r.site.recipes[i] =
            (random_recipe){.there = true, .powder = i < 2 ? 0 : 1, .flour = i % 2, .grams = 50};
        put_recipe(&r.site, i);
    }
    r.site.recipes[3].shown = 1;
    put_recipe(&r.site, 3);
    r.site.pictures[0] = (random_entry){true, 0, 0, 1};
    put_picture(&r.site, 0);
    r.site.pages[0] = (random_entry){true, 1, 0, 1};
    put_page(&r.site, 0);
    put_settings(&r.site);
    problems found = problems_in(r.site.a);
    const char *out = path_join(r.site.a, base, "out");
    (void)build_into(&r, out, &found);
    for (size_t i = 0; i < COUNT(amounts); i++) {
        amounts[i].change(&r.site);
        size_t worked_on = build_into(&r, out, &found).made;
        if (worked_on != amounts[i].made)
            fail_msg("%s: %zu recipes were worked on, not %zu", amounts[i].name, worked_on,
                     amounts[i].made);
    }
    assert_int_equal(found.errors, 0);
    remove_tree(base);
    arena_free(r.site.a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_more_is_done_than_it_takes),
        cmocka_unit_test(doing_only_what_changed_leaves_the_same_bytes)};
    return cmocka_run_group_tests_name("incremental", tests, NULL, NULL);
}
