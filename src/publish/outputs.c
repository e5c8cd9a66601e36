#include "publish/outputs.h"

#include "base/names.h"

#include <errno.h>
#include <unistd.h>

static bool is_of_whole_disk(int why) {
    return why == ENOSPC || why == EDQUOT || why == EROFS;
}

static void complain(outputs *to, const char *path, int why, problems *found) {
    to->failed = true;
    to->full = to->full || is_of_whole_disk(why);
    output_keep(to, path);
    problem_add(found, (place){path, 0, 0}, "mind space and permissions of the output folder",
                "can't be written: %s", strerror(why));
}

static void add(outputs *to, const char *path, const file_stamp *stamp, digest content) {
    path = arena_copy(to->home, span_of(path));
    LIST_ADD(to->home, &to->files, (written_file){path, *stamp, content});
}

/* True when an earlier build wrote just this, and it still stands. */
static bool stands_already(const outputs *to, const char *path, digest content, file_stamp *stamp) {
    const written_file *earlier = to->earlier ? written_find(to->earlier, path) : NULL;
    if (!earlier || earlier->content != content)
        return false;
    written_file now = *earlier;
    bool holds = written_holds(&now, to->folder, to->at, to->settled_ns);
    *stamp = now.stamp;
    return holds;
}

void output_write(outputs *to, const char *path, span bytes, problems *found) {
    if (to->full) {
        output_keep(to, path);
        return;
    }
    int why = 0;
    arena *a = arena_new();
    file_stamp stamp;
    digest content = digest_of(bytes);
    if (to->mark && !(to->earlier && written_find(to->earlier, path)))
        unfinished_expect(to->mark, span_of(arena_format(a, "%s\n", path)));
    const char *whole = path_join(a, to->folder, path);
    bool good = stands_already(to, path, content, &stamp) ||
                (file_write(whole, bytes, &why) && file_stamp_of(whole, &stamp));
    if (good)
        add(to, path, &stamp, content);
    else
        complain(to, path, why, found);
    arena_free(a);
}

void output_copy(outputs *to, const char *path, const char *from, digest *content,
                 problems *found) {
    int why = 0;
    arena *a = arena_new();
    span bytes;
    if (file_read(a, from, &bytes, &why)) {
        *content = digest_of(bytes);
        output_write(to, path, bytes, found);
    } else {
        complain(to, path, why, found);
    }
    arena_free(a);
}

void output_note(outputs *to, const char *path, problems *found) {
    arena *a = arena_new();
    const char *whole = path_join(a, to->folder, path);
    file_stamp stamp;
    span bytes;
    int why = 0;
    if (file_read(a, whole, &bytes, &why) && file_stamp_of(whole, &stamp))
        add(to, path, &stamp, digest_of(bytes));
    else
        complain(to, path, why, found);
    arena_free(a);
}

void output_keep(outputs *to, const char *path) {
    arena *a = arena_new();
    file_stamp stamp;
    if (file_stamp_of(path_join(a, to->folder, path), &stamp))
        add(to, path, &stamp, 0);
    arena_free(a);
}

void outputs_join(outputs *to, const outputs *more) {
    for (size_t i = 0; i < more->files.count; i++) {
        const written_file *one = &more->files.items[i];
        add(to, one->path, &one->stamp, one->content);
    }
    to->failed = to->failed || more->failed;
}

bool outputs_hold(const outputs *to, written_files *files) {
    for (size_t i = 0; i < files->count; i++)
        if (!written_holds(&files->items[i], to->folder, to->at, to->settled_ns))
            return false;
    return true;
}

/* Removes the folders above `path` that are empty now, up to the output folder. */
static void remove_empty_folders(arena *a, const char *top, const char *path) {
    for (const char *folder = path_folder(a, path); strcmp(folder, ".") != 0;
         folder = path_folder(a, folder))
        if (rmdir(path_join(a, top, folder)) != 0)
            return;
}

/* A path that leads out of the folder is not followed, whoever wrote the record. */
static void remove_one(outputs *to, const written_file *one, problems *found) {
    arena *a = arena_new();
    if (path_is_plain(span_of(one->path))) {
        if (unlink(path_join(a, to->folder, one->path)) == 0 || errno == ENOENT) {
            remove_empty_folders(a, to->folder, one->path);
        } else if (errno != ENOTDIR) {
            to->failed = true;
            problem_add(found, (place){one->path, 0, 0},
                        "mind the permissions of the output folder", "can't be deleted: %s",
                        strerror(errno));
            LIST_ADD(to->home, &to->files, *one);
        }
    }
    arena_free(a);
}

void outputs_remove(outputs *to, const written_files *earlier, problems *found) {
    arena *a = arena_new();
    names kept = names_in(a);
    size_t value;
    for (size_t i = 0; earlier->count && i < to->files.count; i++)
        names_add(&kept, span_of(to->files.items[i].path), i, NULL);
    for (size_t i = 0; i < earlier->count; i++)
        if (!names_find(&kept, span_of(earlier->items[i].path), &value))
            remove_one(to, &earlier->items[i], found);
    arena_free(a);
}
