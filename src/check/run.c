#include "check/run.h"

#include "check/checks.h"
#include "pantry/borrowed.h"
#include "publish/rule_report.h"
#include "publish/workers.h"
#include "read/recipe_files.h"
#include "read/silence.h"
#include "read/trial_builds.h"
#include "site/theme.h"
#include "swap/note.h"

#include <pthread.h>
#include <stdatomic.h>

/* -- one recipe -------------------------------------------------------------------------------- */

/* A recipe file being checked: `errors` there were before it was read. */
typedef struct {
    const check_site *site;
    arena *a;
    const char *name; /* inside recipes/ */
    size_t errors;
    rule_tally *tally; /* what rules do in it is added here */
    problems *found;
} file_work;

/* What is wrong with `of`, as read. What can't be read right is not judged. */
static void check_read(const file_work *w, const recipe *of) {
    recipe_files_check(w->site->folder, &w->site->recipe_slugs, of, w->name, w->found);
    bool good = w->found->errors == w->errors;
    if (good) {
        recipe_facts about = facts_of(w->a, of, &w->site->folder->shelf);
        notes_check(w->a, &w->site->folder->book, &about, w->found);
        if (of->publish) /* a draft speaks for nobody's kitchen yet */
            rule_report_recipe(w->a, w->tally, &about, w->found);
        check_recipe(w->site, w->a, of, &about, w->found);
    }
    silence_known known = {w->site->names, checks_count, good};
    silence_apply(w->a, of->file, of->source, &known, w->found);
}

/* -- workers ----------------------------------------------------------------------------------- */

typedef struct {
    const check_site *site;
    progress *seen;
    atomic_size_t next; /* the recipe file to take */
} shared_work;

typedef struct {
    shared_work *shared;
    arena *keep;
    problems found;
    rule_tally tally;
    pthread_t thread;
    bool started, machine_failed;
} worker;

static void check_file(worker *w, arena *a, const char *name) {
    const check_site *site = w->shared->site;
    file_work one = {site, a, name, w->found.errors, &w->tally, &w->found};
    bool failed;
    const recipe *of = site_folder_recipe(a, site->folder, name, &w->found, &failed);
    w->machine_failed = w->machine_failed || failed;
    if (of)
        check_read(&one, of);
}

static void *work(void *state) {
    worker *w = state;
    const file_list *files = &w->shared->site->folder->recipe_files;
    arena *a = arena_new();
    size_t i;
    while ((i = atomic_fetch_add(&w->shared->next, 1)) < files->count) {
        arena_reset(a);
        check_file(w, a, files->items[i].name);
        progress_step(w->shared->seen);
    }
    arena_free(a);
    return NULL;
}

static void worker_start(worker *w, shared_work *shared) {
    *w = (worker){.shared = shared, .keep = arena_new()};
    w->found = problems_in(w->keep);
    w->tally = rule_tally_new(w->keep, &shared->site->folder->book);
    w->started = pthread_create(&w->thread, NULL, work, w) == 0;
    if (!w->started)
        work(w); /* no thread to be had: the work is done here, just later */
}

static bool check_recipes(const check_site *site, unsigned asked, progress *seen, problems *found) {
    worker workers[WORKERS_MOST];
    shared_work shared = {.site = site, .seen = seen};
    unsigned count = workers_for(asked, site->folder->recipe_files.count);
    arena *home = arena_new();
    rule_tally all = rule_tally_new(home, &site->folder->book);
    bool good = true;
    progress_begin(seen, site->folder->recipe_files.count);
    for (unsigned i = 0; i < count; i++)
        worker_start(&workers[i], &shared);
    for (unsigned i = 0; i < count; i++) {
        if (workers[i].started)
            pthread_join(workers[i].thread, NULL);
        problems_join(found, &workers[i].found);
        rule_tally_join(&all, &workers[i].tally);
        good = good && !workers[i].machine_failed;
    }
    rule_report_site(&all, found);
    for (unsigned i = 0; i < count; i++)
        arena_free(workers[i].keep);
    arena_free(home);
    return good;
}

/* -- the site ---------------------------------------------------------------------------------- */

check_report check_folder(const char *folder, unsigned workers, progress *seen, problems *found) {
    check_report report = {0};
    site_folder site;
    theme look;
    arena *home = arena_new();
    /* The places of these borrow file names from `home`; joining copies them out. */
    problems own = problems_in(home);
    if (site_folder_read(home, folder, &site, &own, &report.machine_failed)) {
        bool baked = trial_builds_read(&site, &own);
        (void)site_folder_speak(&site, &own);
        (void)theme_read(home, site.settings.theme, folder, site.settings.language, &look, &own);
        check_site about = check_site_of(home, &site);
        report.recipes = site.recipe_files.count;
        report.machine_failed =
            !check_recipes(&about, workers, seen, &own) || !baked || report.machine_failed;
        check_pages(&about, &own);
        pantry_borrowed_report(&site.shelf, &own);
        silence_site(&site, &(silence_known){about.names, checks_count, true}, &own);
    }
    problems_join(found, &own);
    arena_free(home);
    return report;
}

/* -- one text ---------------------------------------------------------------------------------- */

/* The path inside the site folder ("recipes/x.md"), of its last two parts. */
static char *path_inside(arena *a, const char *path) {
    char *folder = path_folder(a, path);
    return path_join(a, path_name(folder), path_name(path));
}

bool check_takes(const char *path) {
    arena *a = arena_new();
    span inside = span_of(path_inside(a, path));
    bool takes = span_ends(inside, ".md") &&
                 (span_begins(inside, "recipes/") || span_begins(inside, "pages/"));
    arena_free(a);
    return takes;
}

static bool is_of_another(const problem *p, void *state) {
    return p->at.file && strcmp(p->at.file, state) != 0;
}

static void check_bytes(const check_site *site, arena *a, const char *file, span bytes,
                        problems *found) {
    if (span_begins(span_of(file), "pages/")) {
        const plain_page *page = page_read(a, file, bytes, found);
        if (page)
            check_page(site, a, page, found);
        silence_apply(a, file, bytes, &(silence_known){site->names, checks_count, page != NULL},
                      found);
        return;
    }
    const recipe *of =
        recipe_read(a, file, bytes, &site->folder->shelf, site->folder->settings.cups, found);
    rule_tally tally = rule_tally_new(a, &site->folder->book);
    file_work one = {site, a, path_name(file), 0, &tally, found};
    if (of)
        check_read(&one, of);
}

check_report check_text(const char *path, span bytes, problems *found) {
    check_report report = {.recipes = 1};
    site_folder site;
    arena *home = arena_new();
    problems of_site = problems_in(home), own = problems_in(home);
    char *file = path_inside(home, path);
    if (site_folder_read(home, site_folder_of(home, path), &site, &of_site,
                         &report.machine_failed)) {
        check_site about = check_site_of(home, &site);
        check_bytes(&about, home, file, bytes, &own);
        problems_drop(&own, is_of_another, file);
        problems_join(found, &own);
    } else {
        problems_join(found, &of_site);
    }
    arena_free(home);
    return report;
}
