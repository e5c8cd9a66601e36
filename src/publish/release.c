#include "publish/release.h"

#include "base/list.h"
#include "publish/build.h"
#include "publish/compress.h"
#include "publish/outputs.h"
#include "publish/record.h"
#include "publish/release_folder.h"
#include "publish/verify.h"
#include "read/site_folder.h"

#include <pthread.h>
#include <stdatomic.h>
#include <sys/stat.h>
#include <unistd.h>

/* One release being made. */
typedef struct {
    const release_request *asked;
    release_folder *at;
    const char *path;    /* where it is made */
    const char *earlier; /* the live one's folder; null when there is none */
    release_report *report;
    problems *found;
} release_maker;

static bool machine_failed(const release_maker *with) {
    with->report->machine_failed = true;
    return false;
}

/* -- what stays as it was
 * -------------------------------------------------------------------------------- */

static bool is_compressed(const char *name) {
    return span_ends(span_of(name), compression_gzip.suffix) ||
           span_ends(span_of(name), compression_brotli.suffix);
}

static bool share(arena *a, const release_maker *with, const char *name) {
    int why;
    return file_link(path_join(a, with->earlier, name), path_join(a, with->path, name), &why);
}

/* The live release's files under their names in the new folder too: the build leaves those alone
 * that would hold the same bytes and replaces the others. The record first: without it the build
 * would not know which to take away. A disk without hard links just builds all of them. */
static void share_earlier(const release_maker *with) {
    arena *a = arena_new();
    file_list files = {0};
    if (share(a, with, RECORD_NAME))
        files = release_files(a, with->at, with->at->live);
    for (size_t i = 0; i < files.count; i++)
        if (!is_compressed(files.items[i].name) && strcmp(files.items[i].name, RECORD_NAME) != 0)
            (void)share(a, with, files.items[i].name);
    arena_free(a);
}

/* -- compressing
 * ----------------------------------------------------------------------------------------- */

typedef struct {
    const release_maker *with;
    const file_list *files;
    atomic_size_t next;
    atomic_int why; /* 0, or the errno value of a failure */
} compress_work;

/* Compresses one file, or shares the earlier result when the file itself is shared. */
static bool compress_one(arena *a, const compress_work *work, const char *name,
                         const compression *by, int *why) {
    const release_maker *with = work->with;
    const char *path = path_join(a, with->path, name);
    bool written;
    if (with->earlier && file_is_same(path, path_join(a, with->earlier, name))) {
        const char *squeezed = arena_format(a, "%s%s", name, by->suffix);
        if (file_link(path_join(a, with->earlier, squeezed), path_join(a, with->path, squeezed),
                      why))
            return true;
    }
    return compress_file(path, by, &written, why);
}

static void *compress_files(void *state) {
    compress_work *work = state;
    const release_request *asked = work->with->asked;
    arena *a = arena_new();
    for (;;) {
        size_t i = atomic_fetch_add(&work->next, 1);
        if (i >= work->files->count || atomic_load(&work->why))
            break;
        const char *name = work->files->items[i].name;
        int why = 0;
        arena_reset(a);
        if ((asked->gzip && !compress_one(a, work, name, &compression_gzip, &why)) ||
            (asked->brotli && !compress_one(a, work, name, &compression_brotli, &why)))
            atomic_store(&work->why, why);
    }
    arena_free(a);
    return NULL;
}

static bool compress_all(const release_maker *with) {
    pthread_t threads[WORKERS_MOST];
    unsigned count = workers_for(with->asked->workers, WORKERS_MOST), started = 0;
    arena *a = arena_new();
    file_list files;
    int why = 0;
    bool good = folder_walk(a, with->path, &files, &why);
    compress_work work = {.with = with, .files = &files};
    while (good && started + 1 < count &&
           pthread_create(&threads[started], NULL, compress_files, &work) == 0)
        started++;
    if (good)
        (void)compress_files(&work);
    for (unsigned i = 0; i < started; i++)
        pthread_join(threads[i], NULL);
    arena_free(a);
    why = good ? atomic_load(&work.why) : why;
    if (why == 0)
        return true;
    problem_add(with->found, (place){with->path, 0, 0}, "mind the space on the disk",
                "can't be compressed: %s", strerror(why));
    return machine_failed(with);
}

/* -- building and verifying
 * ------------------------------------------------------------------------------ */

static bool build(const release_maker *with) {
    build_request asked = {.folder = with->asked->folder, .out = with->path};
    asked.workers = with->asked->workers;
    asked.seen = with->asked->seen;
    build_report report = build_site(&asked, with->found);
    with->report->recipes = report.written;
    if (report.machine_failed)
        return machine_failed(with);
    return with->found->errors == 0;
}

static bool verify(const release_maker *with) {
    verify_report seen;
    arena *a = arena_new();
    verify_request asked = {.folder = with->path,
                            .address = site_folder_settings(a, with->asked->folder).address,
                            .earlier = with->earlier,
                            .workers = with->asked->workers};
    bool good = verify_site(&asked, &seen, with->found);
    arena_free(a);
    with->report->pages = seen.pages;
    with->report->links = seen.links;
    if (!good)
        return machine_failed(with);
    return with->found->errors == 0;
}

/* A file for readers, not one of the program's own notes. */
static bool is_for_readers(const char *name) {
    return name[0] != '.';
}

/* Counts the files and those that are the earlier release's own. True when nothing differs. */
static bool is_unchanged(const release_maker *with) {
    arena *a = arena_new();
    file_list now, before = release_files(a, with->at, with->at->live);
    size_t shared = 0, files = 0, earlier = 0;
    int why;
    if (!folder_walk(a, with->path, &now, &why))
        now = (file_list){0};
    for (size_t i = 0; i < now.count; i++) {
        const char *name = now.items[i].name;
        if (!is_for_readers(name))
            continue;
        files++;
        shared += with->earlier &&
                  file_is_same(path_join(a, with->path, name), path_join(a, with->earlier, name));
    }
    for (size_t i = 0; i < before.count; i++)
        earlier += is_for_readers(before.items[i].name);
    arena_free(a);
    with->report->files = files;
    with->report->shared = shared;
    return with->earlier && shared == files && files == earlier;
}

/* -- the whole
 * ------------------------------------------------------------------------------------------- */

static bool publish(release_maker *with) {
    with->report->before = with->at->live;
    if (!release_complete(with->at, with->found))
        return machine_failed(with);
    if (!release_switch(with->at, with->at->newest, with->found))
        return machine_failed(with);
    with->report->switched = true;
    with->report->removed += release_prune(with->at, with->asked->keep, with->found);
    return true;
}

static void make(release_maker *with) {
    if (with->at->live && folder_exists(release_path(with->at, with->at->live, "")))
        with->earlier = release_path(with->at, with->at->live, "");
    with->path = release_begin(with->at, with->found);
    if (!with->path) {
        release_abandon(with->at);
        machine_failed(with);
        return;
    }
    if (with->earlier)
        share_earlier(with);
    bool good = build(with) && verify(with) && compress_all(with);
    if (!good || is_unchanged(with) || !publish(with))
        release_abandon(with->at);
}

static void make_next(release_maker *with) {
    /* What was gone back from is no base and no candidate for anything. */
    with->report->removed = release_prune(with->at, with->at->kept.count, with->found);
    make(with);
}

static void go_back(release_maker *with) {
    unsigned to = release_before(with->at);
    with->report->before = with->at->live;
    if (!to)
        problem_add(with->found, (place){with->asked->to, 0, 0},
                    "crumbnote release --keep N keeps N earlier ones",
                    "no earlier release is kept here");
    else if (release_switch(with->at, to, with->found))
        with->report->switched = true;
    else
        machine_failed(with);
}

/* Does `work` on the folder of releases while nobody else can. */
static release_report in_folder(const release_request *asked, bool make_folder,
                                void (*work)(release_maker *), problems *found) {
    release_report report = {0};
    release_folder at;
    arena *a = arena_new();
    release_maker with = {.asked = asked, .at = &at, .report = &report, .found = found};
    if (release_folder_open(a, asked->to, make_folder, asked->waiting, &at, found)) {
        work(&with);
        report.live = at.live;
        release_folder_close(&at);
    } else {
        machine_failed(&with);
    }
    arena_free(a);
    return report;
}

release_report release_site(const release_request *asked, problems *found) {
    return in_folder(asked, true, make_next, found);
}

release_report release_back(const release_request *asked, problems *found) {
    return in_folder(asked, false, go_back, found);
}
