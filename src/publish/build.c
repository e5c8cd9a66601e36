#include "publish/build.h"

#include "publish/recipe_pages.h"
#include "publish/site_pages.h"
#include "read/trial_builds.h"

#include <pthread.h>
#include <stdatomic.h>

/* What the workers share; constant but for the counter. */
typedef struct {
    const page_maker *by;
    const char *out;
    atomic_size_t next; /* the recipe file to take */
} shared_work;

/* One worker: its own arenas, problems, outputs and rows. */
typedef struct {
    shared_work *shared;
    arena *keep; /* rows, problems, paths */
    problems found;
    outputs to;
    recipe_rows rows;
    pthread_t thread;
    bool started, machine_failed;
} worker;

static void *work(void *state) {
    worker *w = state;
    arena *a = arena_new();
    recipe_maker maker = recipe_maker_new(w->shared->by, a, w->keep, &w->to, &w->found);
    const file_list *files = &w->shared->by->folder->recipe_files;
    for (;;) {
        size_t i = atomic_fetch_add(&w->shared->next, 1);
        if (i >= files->count)
            break;
        arena_reset(a);
        recipe_make(&maker, files->items[i].name, &w->rows);
    }
    w->machine_failed = maker.machine_failed;
    recipe_maker_free(&maker);
    arena_free(a);
    return NULL;
}

static void worker_start(worker *w, shared_work *shared) {
    w->shared = shared;
    w->keep = arena_new();
    w->found = problems_in(w->keep);
    w->to = (outputs){.home = w->keep, .folder = shared->out};
    w->started = pthread_create(&w->thread, NULL, work, w) == 0;
    if (!w->started)
        work(w); /* no thread to be had: the work is done here, just later */
}

static void worker_join(worker *w, recipe_rows *rows, arena *home, outputs *to, problems *found) {
    if (w->started)
        pthread_join(w->thread, NULL);
    for (size_t i = 0; i < w->rows.count; i++)
        LIST_ADD(home, rows, w->rows.items[i]);
    outputs_join(to, &w->to);
    problems_join(found, &w->found);
}

/* Makes all recipes and leaves their rows, which live in the workers' arenas, in `rows`. */
static bool make_recipes(worker workers[], unsigned count, shared_work *shared, recipe_rows *rows,
                         outputs *to, problems *found) {
    bool good = true;
    for (unsigned i = 0; i < count; i++)
        worker_start(&workers[i], shared);
    for (unsigned i = 0; i < count; i++) {
        worker_join(&workers[i], rows, to->home, to, found);
        good = good && !workers[i].machine_failed;
    }
    rows_sort(rows);
    return good;
}

static build_report build_with(const page_maker *by, const build_request *asked, arena *home,
                               problems *found) {
    worker workers[WORKERS_MOST] = {0};
    shared_work shared = {.by = by, .out = asked->out};
    outputs to = {.home = home, .folder = asked->out};
    recipe_rows rows = {0};
    unsigned count = workers_for(asked->workers, by->folder->recipe_files.count);
    bool good = make_recipes(workers, count, &shared, &rows, &to, found);
    site_pages_make(by, &rows, &to, found);
    outputs_settle(&to, found);
    build_report report = {.recipes = by->folder->recipe_files.count,
                           .written = rows.count,
                           .files = to.written.count,
                           .machine_failed = !good || to.failed};
    for (unsigned i = 0; i < count; i++)
        arena_free(workers[i].keep);
    return report;
}

build_report build_site(const build_request *asked, problems *found) {
    build_report report = {0};
    site_folder folder;
    theme look;
    arena *home = arena_new();
    /* The places of these borrow file names from `home`; joining copies them out. */
    problems own = problems_in(home);
    bool readable = site_folder_read(home, asked->folder, &folder, &own, &report.machine_failed);
    if (readable)
        trial_builds_read(&folder);
    if (readable && theme_read(home, folder.settings.theme, asked->folder, &look, &own)) {
        page_maker by = {&folder, &look, asked->show_views};
        bool failed = report.machine_failed;
        report = build_with(&by, asked, home, &own);
        report.machine_failed = report.machine_failed || failed;
    }
    problems_join(found, &own);
    arena_free(home);
    return report;
}
