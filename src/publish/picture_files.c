#include "publish/picture_files.h"

#include "base/number.h"
#include "base/words.h"

#include <errno.h>
#include <fcntl.h>
#include <spawn.h>
#include <strings.h>
#include <sys/wait.h>
#include <unistd.h>

extern char **environ;

/* Pictures that one call of the other program makes. */
enum { BATCH_MOST = 32 };

/* What all the work shares. */
typedef struct {
    arena *home;
    const char *from;
    const outputs *to;
    problems *found;
    bool failed;
} picture_run;

/* -- names ----------------------------------------------------------------------------------- */

static span without_ending(const char *name) {
    const char *dot = strrchr(name, '.');
    return dot && dot != name ? (span){name, (size_t)(dot - name)} : span_of(name);
}

const char **picture_stems(arena *a, const file_list *files) {
    const char **stems = ARENA_ARRAY(a, const char *, files->count + 1);
    names taken = names_in(a);
    for (size_t i = 0; i < files->count; i++) {
        const char *name = files->items[i].name;
        stems[i] = words_slug(a, without_ending(name));
        for (unsigned more = 1; !names_add(&taken, span_of(stems[i]), i, NULL); more++)
            stems[i] = more == 1 ? words_slug(a, span_of(name))
                                 : arena_format(a, "%s-%u", words_slug(a, span_of(name)), more);
    }
    return stems;
}

/* -- sizes ----------------------------------------------------------------------------------- */

/* Reads "800x600" from the front of `words`; how many bytes it took. */
static size_t read_size(span words, picture_size *out) {
    double width, height;
    size_t first = number_read(words, &width);
    if (!first || first >= words.length || words.at[first] != 'x')
        return 0;
    size_t second = number_read(span_from(words, first + 1), &height);
    if (!second || width < 1 || height < 1 || width > UINT16_MAX || height > UINT16_MAX)
        return 0;
    *out = (picture_size){.width = (unsigned)width, .height = (unsigned)height};
    return first + 1 + second;
}

static void add_size(site_picture *to, picture_size size) {
    if (to->count < PICTURE_SIZES_MOST)
        to->sizes[to->count++] = size;
}

static int compare_sizes(const void *left, const void *right) {
    const picture_size *a = left, *b = right;
    return (a->width > b->width) - (a->width < b->width);
}

void picture_sizes_of(const made *kept, const char *stem, site_picture *out) {
    out->count = 0;
    out->drawn = false;
    size_t skipped = strlen("pictures/") + strlen(stem) + 1;
    for (size_t i = 0; i < kept->files.count; i++) {
        const written_file *file = &kept->files.items[i];
        span path = span_of(file->path);
        picture_size size;
        bool drawn = span_ends(path, ".svg");
        if ((drawn || span_ends(path, ".jpg")) && path.length > skipped &&
            read_size(span_from(path, skipped), &size)) {
            size.bytes = (uint64_t)file->stamp.bytes;
            add_size(out, size);
            out->drawn = drawn;
        }
    }
    qsort(out->sizes, out->count, sizeof out->sizes[0], compare_sizes);
}

/* -- the other program ----------------------------------------------------------------------- */

/* The program beside this one; null where there is none. */
static char *maker_path(arena *a) {
    enum { PATH_MOST = 4096 };
    char own[PATH_MOST];
    ssize_t length = readlink("/proc/self/exe", own, sizeof own);
    if (length <= 0 || length == sizeof own)
        return NULL;
    const char *path = arena_copy(a, (span){own, (size_t)length});
    char *beside = path_join(a, path_folder(a, path), "crumbnote-pictures");
    return access(beside, X_OK) == 0 ? beside : NULL;
}

/* One call of it. */
typedef struct {
    picture_work *items[BATCH_MOST];
    size_t count;
    pid_t process;
    int said; /* where its answers are read from; -1: it could not be called */
} batch;

static char **words_of(const picture_run *run, const char *maker, const batch *of) {
    char **words = ARENA_ARRAY(run->home, char *, 2 * of->count + 3);
    size_t count = 0;
    words[count++] = arena_copy(run->home, span_of(maker));
    words[count++] = path_join(run->home, run->to->folder, "pictures");
    for (size_t i = 0; i < of->count; i++) {
        words[count++] = path_join(run->home, run->from, of->items[i]->shown.name);
        words[count++] = arena_copy(run->home, span_of(of->items[i]->shown.stem));
    }
    return words;
}

static void batch_start(const picture_run *run, const char *maker, batch *of) {
    int ends[2];
    posix_spawn_file_actions_t actions;
    of->said = -1;
    if (pipe2(ends, O_CLOEXEC) != 0)
        return;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    if (posix_spawn(&of->process, maker, &actions, NULL, words_of(run, maker, of), environ) == 0)
        of->said = ends[0];
    else
        close(ends[0]);
    close(ends[1]);
    posix_spawn_file_actions_destroy(&actions);
}

static void hear(int from, text *said) {
    char bytes[4096];
    ssize_t got;
    while ((got = read(from, bytes, sizeof bytes)) > 0 || (got < 0 && errno == EINTR))
        if (got > 0)
            text_add_span(said, (span){bytes, (size_t)got});
    close(from);
}

/* -- what was made --------------------------------------------------------------------------- */

static void complain_of_machine(picture_run *run, const picture_work *of, span why) {
    run->failed = true;
    problem_add(run->found, (place){arena_format(run->home, "pictures/%s", of->shown.name), 0, 0},
                "mind space and permissions of the output folder",
                "its pictures can't be made: %.*s", SPAN(why));
}

static void complain(picture_run *run, const picture_work *of, span why) {
    problem_add(run->found, (place){arena_format(run->home, "pictures/%s", of->shown.name), 0, 0},
                "open it in a picture program and save it anew, as JPEG, PNG, WebP or SVG", "%.*s",
                SPAN(why));
}

static void note_file(picture_run *run, picture_work *of, outputs *to, picture_size size,
                      const char *ending) {
    output_note(to, picture_path(run->home, &of->shown, size, ending), run->found);
}

/* `sizes`: " 320x240 800x600". */
static void note_files(picture_run *run, picture_work *of, span sizes) {
    outputs to = *run->to;
    to.files = (written_files){0};
    bool drawn = strcasecmp(of->shown.name + strlen(of->shown.name) - 4, ".svg") == 0;
    picture_size size;
    of->shown.drawn = drawn;
    for (span rest = span_trim(sizes); rest.length; rest = span_trim(rest)) {
        size_t took = read_size(rest, &size);
        if (!took)
            break;
        rest = span_from(rest, took);
        add_size(&of->shown, size);
        note_file(run, of, &to, size, drawn ? "svg" : "jpg");
        if (!drawn)
            note_file(run, of, &to, size, "webp");
    }
    of->kept.files = to.files;
    run->failed = run->failed || to.failed;
}

static void settle_one(picture_run *run, picture_work *of, span said) {
    static const char fine[] = "fine", machine[] = "machine ";
    arena *a = arena_new();
    span bytes;
    int why;
    if (span_begins(said, fine)) {
        note_files(run, of, span_from(said, strlen(fine)));
        if (file_read(a, path_join(a, run->from, of->shown.name), &bytes, &why))
            of->kept.content = digest_of(bytes);
    } else if (span_begins(said, machine)) {
        complain_of_machine(run, of, span_from(said, strlen(machine)));
    } else if (said.length) {
        complain(run, of, said);
    } else {
        complain_of_machine(run, of, span_of("crumbnote-pictures ended early"));
    }
    arena_free(a);
}

static void batch_settle(picture_run *run, batch *of) {
    text said = TEXT_EMPTY;
    int status;
    if (of->said >= 0) {
        hear(of->said, &said);
        while (waitpid(of->process, &status, 0) < 0 && errno == EINTR)
            ;
    }
    span rest = text_span(&said);
    for (size_t i = 0; i < of->count; i++) {
        span line = {0};
        (void)span_next_line(&rest, &line);
        settle_one(run, of->items[i], line);
    }
    text_free(&said);
}

static size_t batch_fill(picture_work work[], size_t count, size_t next, batch *of) {
    of->count = 0;
    for (; next < count && of->count < BATCH_MOST; next++)
        if (!work[next].stays)
            of->items[of->count++] = &work[next];
    return next;
}

static void make_all(picture_run *run, const char *maker, picture_work work[], size_t count,
                     unsigned workers) {
    batch *batches = ARENA_ARRAY(run->home, batch, workers);
    for (size_t next = 0; next < count;) {
        for (unsigned i = 0; i < workers; i++) {
            next = batch_fill(work, count, next, &batches[i]);
            if (batches[i].count)
                batch_start(run, maker, &batches[i]);
        }
        for (unsigned i = 0; i < workers; i++)
            if (batches[i].count)
                batch_settle(run, &batches[i]);
    }
}

/* -- without it ------------------------------------------------------------------------------ */

static void copy_one(picture_run *run, picture_work *of) {
    outputs to = *run->to;
    to.files = (written_files){0};
    output_copy(&to, arena_format(run->home, "pictures/%s", of->shown.name),
                path_join(run->home, run->from, of->shown.name), &of->kept.content, run->found);
    of->kept.files = to.files;
    run->failed = run->failed || to.failed;
}

static void copy_all(picture_run *run, picture_work work[], size_t count) {
    problem_warn(run->found, (place){"pictures", 0, 0},
                 "install crumbnote-pictures beside crumbnote: it makes them small and takes out "
                 "where they were taken",
                 "the pictures are published as they are");
    for (size_t i = 0; i < count; i++)
        if (!work[i].stays)
            copy_one(run, &work[i]);
}

/* -- the whole ------------------------------------------------------------------------------- */

static bool any_to_make(const picture_work work[], size_t count) {
    for (size_t i = 0; i < count; i++)
        if (!work[i].stays)
            return true;
    return false;
}

void picture_files_make(picture_work work[], size_t count, const char *from, unsigned workers,
                        const outputs *to, problems *found, bool *machine_failed) {
    picture_run run = {.home = to->home, .from = from, .to = to, .found = found};
    if (!any_to_make(work, count))
        return;
    int why = 0;
    if (!folder_make(path_join(run.home, to->folder, "pictures"), &why)) {
        problem_add(found, (place){"pictures", 0, 0}, NULL, "can't be written: %s", strerror(why));
        *machine_failed = true;
        return;
    }
    const char *maker = maker_path(run.home);
    if (maker)
        make_all(&run, maker, work, count, workers ? workers : 1);
    else
        copy_all(&run, work, count);
    *machine_failed = *machine_failed || run.failed;
}
