#include "base/folders.h"

#include "base/list.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

enum { FOLDERS_DEEP_MOST = 64 };

static bool failed(int *why) {
    *why = errno;
    return false;
}

static int compare_entries(const void *left, const void *right) {
    return strcmp(((const file_entry *)left)->name, ((const file_entry *)right)->name);
}

static void sort(file_list *list) {
    if (list->count > 1)
        qsort(list->items, list->count, sizeof list->items[0], compare_entries);
}

static bool is_dots(const char *name) {
    return strcmp(name, ".") == 0 || strcmp(name, "..") == 0;
}

bool folder_entries(arena *a, const char *path, file_list *out, int *why) {
    *out = (file_list){0};
    DIR *folder = opendir(path);
    if (!folder)
        return failed(why);
    struct dirent *entry;
    while (errno = 0, (entry = readdir(folder)) != NULL)
        if (!is_dots(entry->d_name))
            LIST_ADD(a, out, (file_entry){.name = arena_copy(a, span_of(entry->d_name))});
    *why = errno;
    closedir(folder);
    sort(out);
    return *why == 0;
}

/* Adds the files of `top`/`below` to `out`. */
static bool walk(arena *a, const char *top, const char *below, int deep, file_list *out, int *why) {
    file_list here;
    if (deep > FOLDERS_DEEP_MOST) {
        *why = ELOOP;
        return false;
    }
    if (!folder_entries(a, path_join(a, top, below), &here, why))
        return false;
    for (size_t i = 0; i < here.count; i++) {
        struct stat about;
        const char *name = path_join(a, below, here.items[i].name);
        if (lstat(path_join(a, top, name), &about) != 0)
            return failed(why);
        if (S_ISREG(about.st_mode))
            LIST_ADD(a, out, (file_entry){.name = name});
        else if (S_ISDIR(about.st_mode) && !walk(a, top, name, deep + 1, out, why))
            return false;
    }
    return true;
}

bool folder_walk(arena *a, const char *path, file_list *out, int *why) {
    *out = (file_list){0};
    bool good = walk(a, path, "", 0, out, why);
    sort(out);
    return good;
}

bool folder_remove(const char *path, int *why) {
    struct stat about;
    if (lstat(path, &about) != 0 || !S_ISDIR(about.st_mode))
        return unlink(path) == 0 || errno == ENOENT ? true : failed(why);
    arena *a = arena_new();
    file_list here;
    bool good = folder_entries(a, path, &here, why);
    for (size_t i = 0; i < here.count && good; i++)
        good = folder_remove(path_join(a, path, here.items[i].name), why);
    if (good && rmdir(path) != 0)
        good = failed(why);
    arena_free(a);
    return good;
}

bool folder_remove_empty(const char *path) {
    arena *a = arena_new();
    file_list here;
    struct stat about;
    int why;
    if (folder_entries(a, path, &here, &why))
        for (size_t i = 0; i < here.count; i++) {
            const char *inner = path_join(a, path, here.items[i].name);
            if (lstat(inner, &about) == 0 && S_ISDIR(about.st_mode))
                (void)folder_remove_empty(inner);
        }
    arena_free(a);
    return rmdir(path) == 0;
}

/* One call for thousands of files; it reports the failures of any write among them. */
bool folder_sync(const char *path, int *why) {
    int fd = open(path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (fd < 0)
        return failed(why);
    bool good = syncfs(fd) == 0 ? true : failed(why);
    close(fd);
    return good;
}

bool file_link(const char *from, const char *to, int *why) {
    if (link(from, to) == 0)
        return true;
    if (errno != ENOENT)
        return failed(why);
    arena *a = arena_new();
    bool made = folder_make(path_folder(a, to), why);
    arena_free(a);
    return made && (link(from, to) == 0 ? true : failed(why));
}

bool file_is_same(const char *one, const char *other) {
    struct stat left, right;
    return lstat(one, &left) == 0 && lstat(other, &right) == 0 && left.st_dev == right.st_dev &&
           left.st_ino == right.st_ino;
}
