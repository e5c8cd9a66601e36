#include "base/fresh_folder.h"

#include "base/folders.h"
#include "base/list.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

static bool failed(int *why) {
    *why = errno;
    return false;
}

static bool is_dots(const char *name) {
    return strcmp(name, ".") == 0 || strcmp(name, "..") == 0;
}

static const char stage_lead[] = ".start-";
enum { STAGE_MORE = 6 }; /* what mkdtemp makes of "XXXXXX" */

/* A stage that was left when the program was killed. */
static bool is_leftover(const char *name) {
    return span_begins(span_of(name), stage_lead) &&
           strlen(name) == strlen(stage_lead) + STAGE_MORE;
}

static void clear_leftovers(arena *a, const char *path) {
    file_list all;
    int why;
    if (folder_entries(a, path, &all, &why))
        for (size_t i = 0; i < all.count; i++)
            if (is_leftover(all.items[i].name))
                (void)folder_remove(path_join(a, path, all.items[i].name), &why);
}

/* True when a folder is at `path` that is empty but for leftovers. */
static bool holds_nothing(const char *path, int *why) {
    DIR *folder = opendir(path);
    if (!folder) {
        *why =
            errno == ENOTDIR || errno == ENOENT ? EEXIST : errno; /* a file, or a link to nothing */
        return false;
    }
    bool empty = true;
    for (struct dirent *entry; empty && (entry = readdir(folder)) != NULL;)
        empty = is_dots(entry->d_name) || is_leftover(entry->d_name);
    closedir(folder);
    if (!empty)
        *why = ENOTEMPTY;
    return empty;
}

static const char *without_slashes(arena *a, const char *path) {
    span plain = span_of(path);
    while (plain.length > 1 && plain.at[plain.length - 1] == '/')
        plain.length--;
    return arena_copy(a, plain);
}

/* What mkdtemp makes is its owner's alone; a site folder is like any other. */
static bool open_up(const char *folder) {
    mode_t masked = umask(0);
    umask(masked);
    return chmod(folder, 0777 & ~masked) == 0;
}

static bool make_stage(fresh_folder *out, int *why) {
    char *stage = out->exists ? path_join(out->home, out->path, ".start-XXXXXX")
                              : arena_format(out->home, "%s.start-XXXXXX", out->path);
    out->stage = stage;
    if (!mkdtemp(stage))
        return failed(why);
    if (open_up(stage))
        return true;
    *why = errno;
    rmdir(stage);
    return false;
}

bool fresh_folder_begin(arena *home, const char *path, fresh_folder *out, int *why) {
    struct stat about;
    *out = (fresh_folder){.home = home, .path = without_slashes(home, path)};
    if (lstat(out->path, &about) == 0) {
        out->exists = true;
        if (!holds_nothing(out->path, why))
            return false;
        clear_leftovers(home, out->path);
    } else if (errno != ENOENT) {
        return failed(why);
    } else if (!folder_make(path_folder(home, out->path), why)) {
        return false;
    }
    return make_stage(out, why);
}

bool fresh_folder_write(fresh_folder *to, const char *name, span bytes, int *why) {
    const char *path = path_join(to->home, to->stage, name);
    LIST_ADD(to->home, &to->names, (file_entry){.name = arena_copy(to->home, span_of(name))});
    if (!file_write(path, bytes, why))
        return false;
    return !span_begins(bytes, "#!") || chmod(path, 0755) == 0 || failed(why);
}

/* Moves `from` to `to`, where nothing may be. */
static bool move_new(const char *from, const char *to, int *why) {
    struct stat about;
    if (renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE) == 0)
        return true;
    if (errno != EINVAL && errno != ENOSYS) /* not every file system can promise it */
        return failed(why);
    if (lstat(to, &about) == 0) {
        *why = EEXIST;
        return false;
    }
    return rename(from, to) == 0 || failed(why);
}

/* The entries right in the folder, each once. */
static file_list top_entries(const fresh_folder *of) {
    file_list top = {0};
    for (size_t i = 0; i < of->names.count; i++) {
        span name = span_of(of->names.items[i].name);
        span first = span_first(name, span_find(name, "/"));
        bool known = false;
        for (size_t k = 0; k < top.count; k++)
            known = known || span_is(first, top.items[k].name);
        if (!known)
            LIST_ADD(of->home, &top, (file_entry){.name = arena_copy(of->home, first)});
    }
    return top;
}

static bool move_entries(const fresh_folder *from, int *why) {
    arena *a = from->home;
    file_list top = top_entries(from);
    size_t moved = 0;
    while (moved < top.count && move_new(path_join(a, from->stage, top.items[moved].name),
                                         path_join(a, from->path, top.items[moved].name), why))
        moved++;
    bool all = moved == top.count;
    while (!all && moved-- > 0)
        (void)rename(path_join(a, from->path, top.items[moved].name),
                     path_join(a, from->stage, top.items[moved].name));
    return all;
}

bool fresh_folder_finish(fresh_folder *from, int *why) {
    if (!from->exists)
        return move_new(from->stage, from->path, why);
    return move_entries(from, why) && (rmdir(from->stage) == 0 || failed(why));
}

void fresh_folder_abandon(fresh_folder *from) {
    arena *a = from->home;
    for (size_t i = from->names.count; i-- > 0;) {
        const char *path = path_join(a, from->stage, from->names.items[i].name);
        unlink(path);
        do
            path = path_folder(a, path);
        while (strcmp(path, from->stage) != 0 && rmdir(path) == 0);
    }
    rmdir(from->stage);
}

bool file_write_new(const char *path, span bytes, int *why) {
    struct stat about;
    if (lstat(path, &about) == 0) {
        *why = EEXIST;
        return false;
    }
    arena *a = arena_new();
    const char *beside = arena_format(a, "%s.start-%ld", path, (long)getpid());
    bool good = file_write(beside, bytes, why);
    if (good && !move_new(beside, path, why)) {
        unlink(beside);
        good = false;
    }
    arena_free(a);
    return good;
}
