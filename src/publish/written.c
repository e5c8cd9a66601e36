#include "publish/written.h"

#include "base/list.h"

static int compare_written(const void *left, const void *right) {
    return strcmp(((const written_file *)left)->path, ((const written_file *)right)->path);
}

void written_sort(written_files *files) {
    if (files->count > 1)
        qsort(files->items, files->count, sizeof files->items[0], compare_written);
}

const written_file *written_find(const written_files *files, const char *path) {
    if (files->count == 0)
        return NULL;
    return bsearch(&(written_file){.path = path}, files->items, files->count,
                   sizeof files->items[0], compare_written);
}

/* Reads the file again. */
static bool holds_same_bytes(const char *folder, const char *path, digest content) {
    arena *a = arena_new();
    span bytes;
    int why;
    bool same = file_read_up_to(a, path_join(a, folder, path), SIZE_MAX / 4, &bytes, &why) &&
                digest_of(bytes) == content;
    arena_free(a);
    return same;
}

bool written_holds(written_file *of, const char *folder, int at, int64_t settled_ns) {
    file_stamp now;
    bool there = file_stamp_at(at, of->path, &now);
    bool sure = there && file_stamps_equal(&now, &of->stamp) && now.changed_ns < settled_ns;
    bool holds = sure || (there && now.bytes == of->stamp.bytes &&
                          holds_same_bytes(folder, of->path, of->content));
    of->stamp = now;
    return holds;
}
