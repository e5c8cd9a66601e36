#include "publish/release_folder.h"

#include "base/list.h"
#include "base/mapped.h"
#include "publish/record.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

enum { NUMBER_DIGITS_MOST = 9 };

static const char prefix[] = "release-", making[] = ".making", going[] = ".going",
                  live_new[] = "live.new";

static bool complain(const char *path, const char *doing, int why, problems *found) {
    problem_add(found, (place){path, 0, 0}, "mind space and permissions of the release folder",
                "%s: %s", doing, strerror(why));
    return false;
}

/* Reads "release-0007.making" into 7 and ".making"; 0 when `name` is no such name. */
static unsigned number_of(const char *name, const char **suffix) {
    if (!span_begins(span_of(name), prefix))
        return 0;
    const char *digit = name + strlen(prefix);
    unsigned number = 0;
    size_t i = 0;
    for (; digit[i] >= '0' && digit[i] <= '9' && i < NUMBER_DIGITS_MOST; i++)
        number = number * 10 + (unsigned)(digit[i] - '0');
    *suffix = digit + i;
    return i > 0 ? number : 0;
}

char *release_path(const release_folder *of, unsigned number, const char *suffix) {
    return arena_format(of->home, "%s/%s%04u%s", of->path, prefix, number, suffix);
}

/* -- deleting
 * -------------------------------------------------------------------------------------------- */

static bool read_manifest(arena *a, const char *folder, file_list *out) {
    span bytes, rest, line;
    int why;
    *out = (file_list){0};
    if (!file_map(path_join(a, folder, MANIFEST_NAME), &bytes, &why))
        return false;
    rest = bytes;
    while (span_next_line(&rest, &line))
        if (path_is_plain(line) || span_is(line, RECORD_NAME))
            LIST_ADD(a, out, (file_entry){.name = arena_copy(a, line)});
    file_unmap(bytes);
    return true;
}

/* Deletes the files in the manifest of `folder`, then the folders that are empty. */
static bool remove_listed(const char *folder) {
    arena *a = arena_new();
    file_list files;
    if (read_manifest(a, folder, &files))
        for (size_t i = 0; i < files.count; i++)
            (void)unlink(path_join(a, folder, files.items[i].name));
    /* Last: after a crash in between the rest is still known. */
    (void)unlink(path_join(a, folder, MANIFEST_NAME));
    arena_free(a);
    return folder_remove_empty(folder);
}

/* Removes a folder that release_begin made. It holds nothing of others: it bears a manifest from
 * the first moment (or what came of one when the program was killed then), and nobody else was told
 * its name. The manifest goes last, so that after a crash in between it can still be told. */
static void remove_made(const char *path) {
    arena *a = arena_new();
    file_clear_unfinished(path_join(a, path, MANIFEST_NAME));
    file_list entries;
    int why;
    bool ours = rmdir(path) != 0 && file_exists(path_join(a, path, MANIFEST_NAME)) &&
                folder_entries(a, path, &entries, &why);
    for (size_t i = 0; ours && i < entries.count; i++)
        if (strcmp(entries.items[i].name, MANIFEST_NAME) != 0)
            ours = folder_remove(path_join(a, path, entries.items[i].name), &why);
    if (ours)
        (void)folder_remove(path, &why);
    arena_free(a);
}

void release_abandon(release_folder *of) {
    remove_made(release_path(of, of->newest, making));
}

static void clear_leftover(release_folder *of, const char *name, const char *suffix) {
    const char *path = path_join(of->home, of->path, name);
    if (strcmp(suffix, going) == 0)
        (void)remove_listed(path);
    else if (strcmp(suffix, making) == 0)
        remove_made(path);
}

/* -- opening
 * --------------------------------------------------------------------------------------------- */

static bool lock(release_folder *of, void (*waiting)(void), problems *found) {
    of->lock = open(of->path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (of->lock < 0)
        return complain(of->path, "can't be opened", errno, found);
    if (flock(of->lock, LOCK_EX | LOCK_NB) == 0)
        return true;
    if (errno == EWOULDBLOCK && waiting)
        waiting();
    while (flock(of->lock, LOCK_EX) != 0)
        if (errno != EINTR)
            return complain(of->path, "can't be locked", errno, found);
    return true;
}

/* The release that `live` points at. A folder or a link to elsewhere in its place is not ours to
 * replace. */
static bool read_live(release_folder *of, problems *found) {
    char target[64] = "";
    const char *suffix = NULL, *path = path_join(of->home, of->path, LIVE_NAME);
    ssize_t length = readlink(path, target, sizeof target - 1);
    if (length < 0 && errno == ENOENT)
        return true;
    target[length > 0 ? length : 0] = '\0';
    of->live = number_of(target, &suffix);
    of->newest = of->live;
    if (of->live && !suffix[0])
        return true;
    problem_add(found, (place){path, 0, 0},
                "name an empty folder, or move what stands there elsewhere",
                "crumbnote did not make this; it will not be replaced");
    return false;
}

static void read_entry(release_folder *of, const char *name) {
    const char *suffix;
    unsigned number = number_of(name, &suffix);
    if (!number)
        return;
    if (number > of->newest)
        of->newest = number;
    const char *path = path_join(of->home, of->path, name);
    if (!suffix[0] && file_exists(path_join(of->home, path, MANIFEST_NAME)))
        LIST_ADD(of->home, &of->kept, number);
    else
        clear_leftover(of, name, suffix);
}

static int compare_numbers(const void *left, const void *right) {
    unsigned a = *(const unsigned *)left, b = *(const unsigned *)right;
    return (a > b) - (a < b);
}

static bool read_entries(release_folder *of, problems *found) {
    file_list entries;
    int why;
    if (!folder_entries(of->home, of->path, &entries, &why))
        return complain(of->path, "can't be read", why, found);
    for (size_t i = 0; i < entries.count; i++)
        read_entry(of, entries.items[i].name);
    if (of->kept.count > 1)
        qsort(of->kept.items, of->kept.count, sizeof of->kept.items[0], compare_numbers);
    return true;
}

bool release_folder_open(arena *a, const char *path, bool make, void (*waiting)(void),
                         release_folder *out, problems *found) {
    int why;
    *out = (release_folder){.home = a, .path = path, .lock = -1};
    if (make && !folder_make(path, &why))
        return complain(path, "can't be made", why, found);
    if (lock(out, waiting, found) && read_live(out, found) && read_entries(out, found))
        return true;
    release_folder_close(out);
    return false;
}

void release_folder_close(release_folder *of) {
    if (of->lock >= 0)
        close(of->lock);
    of->lock = -1;
}

/* -- making
 * ---------------------------------------------------------------------------------------------- */

static bool write_manifest(const char *folder, span lines, problems *found) {
    int why;
    arena *a = arena_new();
    const char *path = path_join(a, folder, MANIFEST_NAME);
    bool good = file_write(path, lines, &why) || complain(path, "can't be written", why, found);
    arena_free(a);
    return good;
}

const char *release_begin(release_folder *of, problems *found) {
    const char *path = release_path(of, ++of->newest, making);
    if (mkdir(path, 0755) != 0) {
        complain(path, "can't be made", errno, found);
        return NULL;
    }
    return write_manifest(path, span_of(""), found) ? path : NULL;
}

static bool list_files(const char *folder, problems *found) {
    arena *a = arena_new();
    file_list files;
    text lines = TEXT_EMPTY;
    int why;
    bool good =
        folder_walk(a, folder, &files, &why) || complain(folder, "can't be read", why, found);
    for (size_t i = 0; good && i < files.count; i++)
        if (strcmp(files.items[i].name, MANIFEST_NAME) != 0)
            text_format(&lines, "%s\n", files.items[i].name);
    good = good && write_manifest(folder, text_span(&lines), found);
    text_free(&lines);
    arena_free(a);
    return good;
}

bool release_complete(release_folder *of, problems *found) {
    int why;
    const char *path = release_path(of, of->newest, making);
    const char *whole = release_path(of, of->newest, "");
    if (!list_files(path, found))
        return false;
    if (!folder_sync(path, &why))
        return complain(path, "can't be put on the disk", why, found);
    if (rename(path, whole) != 0)
        return complain(path, "can't be renamed", errno, found);
    LIST_ADD(of->home, &of->kept, of->newest);
    return true;
}

bool release_switch(release_folder *of, unsigned number, problems *found) {
    const char *target = path_name(release_path(of, number, ""));
    const char *path = path_join(of->home, of->path, LIVE_NAME);
    (void)unlinkat(of->lock, live_new, 0); /* of a crash */
    if (fsync(of->lock) != 0 || symlinkat(target, of->lock, live_new) != 0 ||
        renameat(of->lock, live_new, of->lock, LIVE_NAME) != 0 || fsync(of->lock) != 0)
        return complain(path, "can't be switched", errno, found);
    of->live = number;
    return true;
}

/* -- going back and clearing up
 * -------------------------------------------------------------------------- */

unsigned release_before(const release_folder *of) {
    for (size_t i = of->kept.count; i-- > 0;)
        if (of->kept.items[i] < of->live)
            return of->kept.items[i];
    return 0;
}

/* Out of the way under another name first: what is half gone never looks whole. */
static bool take_away(release_folder *of, unsigned number, problems *found) {
    const char *path = release_path(of, number, ""), *leaving = release_path(of, number, going);
    if (rename(path, leaving) != 0)
        return complain(path, "can't be renamed", errno, found);
    if (!remove_listed(leaving))
        problem_warn(found, (place){leaving, 0, 0}, "look at what it holds and delete it by hand",
                     "kept, since it holds files that crumbnote did not write");
    return true;
}

size_t release_prune(release_folder *of, size_t keep, problems *found) {
    release_numbers all = of->kept;
    size_t before = 0;
    while (before < all.count && all.items[before] < of->live)
        before++;
    of->kept = (release_numbers){0};
    for (size_t i = 0; i < all.count; i++) {
        bool stays = all.items[i] == of->live || (i < before && i + keep >= before);
        if (stays || !take_away(of, all.items[i], found))
            LIST_ADD(of->home, &of->kept, all.items[i]);
    }
    return all.count - of->kept.count;
}

file_list release_files(arena *a, const release_folder *of, unsigned number) {
    file_list files = {0};
    if (number)
        (void)read_manifest(a, release_path(of, number, ""), &files);
    return files;
}
