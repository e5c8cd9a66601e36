#include "publish/build.h"

#include "publish/picture_files.h"
#include "publish/recipe_pages.h"
#include "publish/record_files.h"
#include "publish/site_pages.h"
#include "publish/unchanged.h"
#include "publish/unfinished.h"
#include "read/recipe_files.h"
#include "read/silence.h"
#include "read/trial_builds.h"

/* One worker: its own arenas, problems and outputs. */
typedef struct {
    arena *a, *keep; /* for one recipe; for rows, problems, paths */
    problems found;
    outputs to;
    recipe_maker maker;
    bool changed; /* something differs from the earlier record */
    size_t made;  /* recipes worked on */
} worker;

/* One build: what is read, what an earlier one left, what this one makes. */
typedef struct {
    const build_request *asked;
    page_maker by;
    arena *home;
    ground now;
    unfinished mark;
    record earlier, next;
    site_pictures pictures;
    bool has_earlier;
    bool changed; /* the record has to be written */
    bool machine_failed;
    int out_at;  /* the output folder open */
    size_t made; /* recipes worked on */
    worker workers[WORKERS_MOST];
    unsigned worker_count;
    problems *found;
} build;

/* -- pictures -------------------------------------------------------------------------------- */

static outputs outputs_for(build *b, const written_files *earlier) {
    return (outputs){.home = b->home,
                     .folder = b->asked->out,
                     .at = b->out_at,
                     .earlier = earlier,
                     .settled_ns = b->earlier.settled_ns};
}

static const made *earlier_picture(const build *b, const char *name) {
    return b->has_earlier ? made_find(&b->earlier.pictures, name) : NULL;
}

/* One that is copied as it is is tried again each time: the other program may be there now. */
static void plan_picture(build *b, const comparison *with, const file_entry *file,
                         const outputs *to, picture_work *work) {
    work->shown.name = file->name;
    work->stays = picture_stays(with, earlier_picture(b, file->name), file, to, &work->kept);
    if (work->stays)
        picture_sizes_of(&work->kept, work->shown.stem, &work->shown);
    work->stays = work->shown.count > 0;
    if (!work->stays)
        work->kept = (made){.name = file->name, .stamp = file->stamp};
}

static void keep_picture(build *b, comparison *with, picture_work *work) {
    const made *was = earlier_picture(b, work->shown.name);
    comparison_note_picture(with, was, &work->kept);
    if (work->shown.count) /* how many bytes a file has is known only now */
        picture_sizes_of(&work->kept, work->shown.stem, &work->shown);
    for (size_t i = 0; !work->stays && i < work->kept.files.count; i++)
        unfinished_expect(&b->mark,
                          span_of(arena_format(b->home, "%s\n", work->kept.files.items[i].path)));
    b->changed = b->changed || !work->stays || !made_equal(&work->kept, was);
    LIST_ADD(b->home, &b->next.pictures, work->kept);
    if (work->kept.files.count)
        LIST_ADD(b->home, &b->pictures, work->shown);
}

/* Makes the pictures that have changed, before the pages, which say how large they are. */
static void make_pictures(build *b, comparison *with) {
    const file_list *files = &b->by.folder->pictures;
    const char **stems = picture_stems(b->home, files);
    picture_work *work = ARENA_ARRAY(b->home, picture_work, files->count + 1);
    outputs to = outputs_for(b, NULL);
    for (size_t i = 0; i < files->count; i++) {
        work[i].shown.stem = stems[i];
        plan_picture(b, with, &files->items[i], &to, &work[i]);
    }
    picture_files_make(work, files->count, path_join(b->home, b->asked->folder, "pictures"),
                       workers_for(b->asked->workers, files->count), &to, b->found,
                       &b->machine_failed);
    for (size_t i = 0; i < files->count; i++)
        keep_picture(b, with, &work[i]);
    for (size_t i = 0; b->has_earlier && i < b->earlier.pictures.count; i++)
        if (!made_find(&b->next.pictures, b->earlier.pictures.items[i].name))
            comparison_note_picture(with, &b->earlier.pictures.items[i], NULL);
}

/* -- recipes --------------------------------------------------------------------------------- */

/* What the workers share; constant but for each one's places in `recipes`. */
typedef struct {
    build *b;
    const comparison *with;
    made *recipes; /* one for each recipe file, in their order */
} recipe_work;

/* Makes the recipe at place `i`, unless it may stay. */
static void work_on(void *state, unsigned which, size_t i) {
    recipe_work *work = state;
    worker *w = &work->b->workers[which];
    const file_entry *file = &work->b->by.folder->recipe_files.items[i];
    const record *earlier = work->with->earlier;
    const made *was = earlier ? made_find(&earlier->recipes, file->name) : NULL;
    made *now = &work->recipes[i];
    bool stays = recipe_stays(work->with, was, file, &w->to, now);
    if (!stays) {
        arena_reset(w->a);
        *now = recipe_make(&w->maker, file, was);
    }
    w->made += !stays;
    w->changed = w->changed || !stays || !made_equal(now, was);
    progress_step(work->b->asked->seen);
}

static void worker_open(build *b, worker *w, const names *slugs) {
    w->a = arena_new();
    w->keep = arena_new();
    w->found = problems_in(w->keep);
    w->to = outputs_for(b, NULL);
    w->to.home = w->keep;
    w->maker = (recipe_maker){.by = &b->by,
                              .slugs = slugs,
                              .a = w->a,
                              .keep = w->keep,
                              .to = &w->to,
                              .found = &w->found,
                              .page = TEXT_EMPTY};
}

/* Joins what the worker found and did; what it kept stays. */
static void worker_close(build *b, worker *w) {
    problems_join(b->found, &w->found);
    b->made += w->made;
    b->changed = b->changed || w->changed;
    b->machine_failed = b->machine_failed || w->maker.machine_failed || w->to.failed;
    text_free(&w->maker.page);
    arena_free(w->a);
}

static void make_recipes(build *b, const comparison *with) {
    const file_list *files = &b->by.folder->recipe_files;
    recipe_work work = {b, with, ARENA_ARRAY(b->home, made, files->count)};
    b->worker_count = workers_for(b->asked->workers, files->count);
    for (unsigned i = 0; i < b->worker_count; i++)
        worker_open(b, &b->workers[i], with->slugs);
    progress_begin(b->asked->seen, files->count);
    workers_run(b->worker_count, files->count, work_on, &work);
    for (unsigned i = 0; i < b->worker_count; i++)
        worker_close(b, &b->workers[i]);
    b->next.recipes = (made_list){work.recipes, files->count, files->count};
}

/* -- what needs them all --------------------------------------------------------------------- */

static recipe_rows rows_of(arena *a, const made_list *recipes) {
    recipe_rows rows = {.items = ARENA_ARRAY(a, recipe_row, recipes->count),
                        .capacity = recipes->count};
    for (size_t i = 0; i < recipes->count; i++)
        if (recipes->items[i].row)
            rows.items[rows.count++] = *recipes->items[i].row;
    rows_sort(&rows);
    return rows;
}

/* A picture's bytes count too: the feed says how many there are. */
static digest picture_digest(digest all, const written_file *of) {
    return digest_join(digest_join_words(all, of->path), of->content);
}

/* The rows' digests are added up, since their order follows from what they say; of the recipe that
 * is worked through all counts. */
static digest whole_of(const ground *now, const record *of, const pantry *shelf) {
    const made_list *recipes = &of->recipes, *pictures = &of->pictures;
    const made *shown = water_example_of(recipes, shelf);
    digest rows = shown ? shown->content : 0;
    for (size_t i = 0; i < recipes->count; i++)
        rows += recipes->items[i].listed;
    for (size_t i = 0; i < pictures->count; i++)
        for (size_t k = 0; k < pictures->items[i].files.count; k++)
            rows = picture_digest(rows, &pictures->items[i].files.items[k]);
    return digest_join(now->tables, rows);
}

/* True when they need not be made again. */
static bool site_pages_stay(build *b, const outputs *to) {
    if (!b->has_earlier || !b->now.program || b->earlier.whole != b->next.whole)
        return false;
    made was = {.files = b->earlier.files}, now = was;
    now.files.items = ARENA_ARRAY(b->home, written_file, was.files.count);
    for (size_t i = 0; i < was.files.count; i++)
        now.files.items[i] = was.files.items[i];
    if (!outputs_hold(to, &now.files))
        return false;
    b->next.files = now.files;
    b->changed = b->changed || !made_equal(&now, &was);
    return true;
}

static void make_site_pages(build *b) {
    outputs to = outputs_for(b, &b->earlier.files);
    to.mark = &b->mark;
    b->next.whole = whole_of(&b->now, &b->next, &b->by.folder->shelf);
    if (site_pages_stay(b, &to))
        return;
    if (b->machine_failed) { /* they would leave out what could not be read or written */
        b->changed = true;
        b->next.whole = 0;
        b->next.files = b->earlier.files;
        return;
    }
    recipe_rows rows = rows_of(b->home, &b->next.recipes);
    site_pages_make(&(site_pages){&b->by, &rows, &b->next.recipes}, b->asked->workers, &to,
                    b->found);
    b->changed = true;
    b->machine_failed = b->machine_failed || to.failed;
    b->next.files = to.files;
    b->next.whole = to.failed ? 0 : b->next.whole;
    written_sort(&b->next.files);
}

/* -- the record ------------------------------------------------------------------------------ */

static void write_record(build *b) {
    int why = 0;
    b->next.settled_ns = file_clock_ns();
    if (record_write(&b->next, b->asked->out, &why))
        return;
    b->machine_failed = true;
    problem_add(b->found, (place){RECORD_NAME, 0, 0},
                "mind space and permissions of the output folder", "can't be written: %s",
                strerror(why));
}

/* Adds to the record those of `earlier` that are no part of the site now: what still stands. */
static void keep_rest(arena *a, build *b, const written_files *earlier, const written_files *now) {
    names kept = names_in(a);
    size_t value;
    for (size_t i = 0; i < now->count; i++)
        names_add(&kept, span_of(now->items[i].path), i, NULL);
    for (size_t i = 0; i < earlier->count; i++)
        if (!names_find(&kept, span_of(earlier->items[i].path), &value))
            LIST_ADD(b->home, &b->next.files, earlier->items[i]);
    written_sort(&b->next.files);
    b->next.whole = 0; /* so that the next build makes that list anew */
}

/* Takes away what is no longer part of the site; nothing when the build failed, since pages that
 * stand may lead there. */
static void take_away(arena *a, build *b, const written_files *earlier, const written_files *now) {
    outputs rest = outputs_for(b, NULL);
    if (b->machine_failed) {
        keep_rest(a, b, earlier, now);
        return;
    }
    rest.home = a;
    rest.files = *now;
    outputs_remove(&rest, earlier, b->found);
    if (rest.failed) {
        b->machine_failed = true;
        keep_rest(a, b, &rest.files, now);
    }
}

/* Takes away first, then writes the record. Were it the other way round, a build that is stopped in
 * between would leave files that nobody knows of. */
static void settle(build *b) {
    unfinished *mark = &b->mark;
    bool gone = b->earlier.recipes.count != b->next.recipes.count ||
                b->earlier.pictures.count != b->next.pictures.count;
    if (!b->changed && !gone && !mark->found)
        return;
    arena *a = arena_new();
    written_files doubtful = b->machine_failed ? record_files(a, &b->earlier)
                                               : record_doubtful_files(a, &b->earlier, &b->next);
    written_files now = {0};
    if (doubtful.count || mark->found)
        now = record_files(a, &b->next);
    if (doubtful.count)
        take_away(a, b, &doubtful, &now);
    if (mark->found) {
        written_files earlier = record_files(a, &b->earlier);
        unfinished_clear(mark, &earlier, &now);
    }
    write_record(b);
    arena_free(a);
}

/* -- the whole ------------------------------------------------------------------------------- */

static void read_earlier(build *b) {
    b->now = ground_of(b->home, &b->by);
    b->next.program = b->now.program;
    b->next.common = b->now.common;
    b->next.ground = b->now.items;
    b->next.ground_count = b->now.count;
    b->out_at = folder_open(b->asked->out);
    int why;
    b->has_earlier = record_read(b->home, b->asked->out, b->now.program, &b->earlier, &why);
    if (!b->has_earlier)
        b->earlier = (record){0};
    if (why) { /* a build that took it for none would forget what is no longer of the site */
        b->machine_failed = true;
        problem_add(b->found, (place){RECORD_NAME, 0, 0},
                    "mind the permissions of the output folder", "can't be read: %s",
                    strerror(why));
    }
}

static build_report report_of(build *b) {
    build_report report = {
        .recipes = b->next.recipes.count, .made = b->made, .machine_failed = b->machine_failed};
    for (size_t i = 0; i < b->next.recipes.count; i++)
        report.written += b->next.recipes.items[i].row != NULL;
    report.files = record_file_count(&b->next);
    return report;
}

/* Notes where the pages of recipes go that no record names. */
static void expect_recipes(const build *b) {
    arena *a = arena_new();
    text lines = TEXT_EMPTY;
    const file_list *files = &b->by.folder->recipe_files;
    for (size_t i = 0; i < files->count; i++)
        if (!b->has_earlier || !made_find(&b->earlier.recipes, files->items[i].name))
            text_format(&lines, "%s\n", path_of_recipe(a, page_slug(a, files->items[i].name)));
    unfinished_expect(&b->mark, text_span(&lines));
    text_free(&lines);
    arena_free(a);
}

/* Pictures, then pages, which say how large the pictures are. */
static void make_all(build *b, comparison *with) {
    if (!b->machine_failed)
        make_pictures(b, with);
    if (b->machine_failed)
        return;
    expect_recipes(b);
    make_recipes(b, with);
    make_site_pages(b);
    settle(b);
}

static build_report build_with(build *b) {
    b->mark = unfinished_begin(b->asked->out);
    read_earlier(b);
    names slugs = recipe_slugs_of(b->home, b->by.folder);
    comparison with =
        comparison_of(b->home, b->has_earlier ? &b->earlier : NULL, &b->now, b->by.folder, &slugs);
    make_all(b, &with);
    unfinished_end(&b->mark);
    folder_close(b->out_at);
    build_report report = report_of(b);
    for (unsigned i = 0; i < b->worker_count; i++)
        arena_free(b->workers[i].keep);
    return report;
}

build_report build_site(const build_request *asked, problems *found) {
    build_report report = {0};
    site_folder folder;
    theme look;
    arena *home = arena_new();
    /* The places of these borrow file names from `home`; joining copies them out. */
    problems own = problems_in(home);
    int64_t started_ns = file_clock_ns();
    bool readable = site_folder_read(home, asked->folder, &folder, &own, &report.machine_failed);
    /* What was not read because of the machine must not be missed on the pages. */
    readable = readable && !report.machine_failed;
    if (readable) {
        report.machine_failed = !trial_builds_read(&folder, &own);
        silence_site(&folder, NULL, &own);
        readable = site_folder_speak(&folder, &own) && !report.machine_failed;
    }
    if (readable && theme_read(home, folder.settings.theme, asked->folder, folder.settings.language,
                               &look, &own)) {
        build *b = ARENA_NEW(home, build);
        *b = (build){.asked = asked,
                     .by = {&folder, &look, asked->show_views, &b->pictures},
                     .home = home,
                     .next.started_ns = started_ns,
                     .machine_failed = report.machine_failed,
                     .found = &own};
        report = build_with(b);
    }
    problems_join(found, &own);
    arena_free(home);
    return report;
}
