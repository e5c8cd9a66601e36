#include "publish/outputs.h"

#include "base/names.h"

#include <errno.h>
#include <unistd.h>

static void complain(outputs *to, const char *path, int why, problems *found) {
    to->failed = true;
    problem_add(found, (place){path, 0, 0}, "mind space and permissions of the output folder",
                "can't be written: %s", strerror(why));
}

void output_keep(outputs *to, const char *path) {
    LIST_ADD(to->home, &to->written, arena_copy(to->home, span_of(path)));
}

void output_write(outputs *to, const char *path, span bytes, problems *found) {
    if (!to->folder)
        return;
    int why = 0;
    arena *a = arena_new();
    if (file_write(path_join(a, to->folder, path), bytes, &why))
        output_keep(to, path);
    else
        complain(to, path, why, found);
    arena_free(a);
}

void output_copy(outputs *to, const char *path, const char *from, problems *found) {
    if (!to->folder)
        return;
    int why = 0;
    arena *a = arena_new();
    if (file_copy(from, path_join(a, to->folder, path), &why))
        output_keep(to, path);
    else
        complain(to, path, why, found);
    arena_free(a);
}

void output_keep_earlier(outputs *to, const char *folder) {
    if (!to->folder)
        return;
    arena *a = arena_new();
    span record, line;
    int why = 0;
    if (!file_read(a, path_join(a, to->folder, RECORD_NAME), &record, &why))
        record = (span){NULL, 0};
    while (span_next_line(&record, &line))
        if (span_begins(line, folder) && path_is_plain(line) &&
            file_exists(path_join(a, to->folder, arena_copy(a, line))))
            output_keep(to, arena_copy(a, line));
    arena_free(a);
}

void outputs_join(outputs *to, const outputs *more) {
    for (size_t i = 0; i < more->written.count; i++)
        output_keep(to, more->written.items[i]);
    to->failed = to->failed || more->failed;
}

static int compare_paths(const void *left, const void *right) {
    return strcmp(*(const char *const *)left, *(const char *const *)right);
}

/* Removes the folders above `path` that are empty now, up to the output folder. */
static void remove_empty_folders(arena *a, const outputs *to, const char *path) {
    for (const char *folder = path_folder(a, path); strcmp(folder, ".") != 0;
         folder = path_folder(a, folder))
        if (rmdir(path_join(a, to->folder, folder)) != 0)
            return;
}

/* Deletes the files an earlier record names and `now` does not. */
static void remove_stale(arena *a, const outputs *to, const names *now, span record) {
    span line;
    while (span_next_line(&record, &line)) {
        size_t value;
        if (!path_is_plain(line) || names_find(now, line, &value))
            continue;
        const char *path = arena_copy(a, line);
        if (unlink(path_join(a, to->folder, path)) == 0)
            remove_empty_folders(a, to, path);
    }
}

void outputs_settle(outputs *to, problems *found) {
    if (!to->folder)
        return;
    arena *a = arena_new();
    names now = names_in(a);
    text record = TEXT_EMPTY;
    span earlier;
    int why = 0;
    if (to->written.count > 1)
        qsort(to->written.items, to->written.count, sizeof to->written.items[0], compare_paths);
    for (size_t i = 0; i < to->written.count; i++)
        if (names_add(&now, span_of(to->written.items[i]), i, NULL))
            text_format(&record, "%s\n", to->written.items[i]);
    const char *path = path_join(a, to->folder, RECORD_NAME);
    if (file_read(a, path, &earlier, &why))
        remove_stale(a, to, &now, earlier);
    if (!file_write(path, text_span(&record), &why))
        complain(to, RECORD_NAME, why, found);
    text_free(&record);
    arena_free(a);
}
