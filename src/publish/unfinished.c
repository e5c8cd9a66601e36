#include "publish/unfinished.h"

#include "base/folders.h"
#include "base/names.h"
#include "publish/record.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

enum { NOTED_MOST = 256 * 1024 * 1024 };

/* The folder, locked until it is closed. Some file systems know no locks: then it is not. */
static int lock(const char *folder) {
    int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    while (fd >= 0 && flock(fd, LOCK_EX) != 0 && errno == EINTR)
        ;
    return fd;
}

/* Opens the mark; `*found`: it is there already. */
static int set(const char *mark, bool *found) {
    int fd = open(mark, O_RDWR | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, 0644);
    *found = fd < 0 && errno == EEXIST;
    return *found ? open(mark, O_RDWR | O_APPEND | O_NOFOLLOW | O_CLOEXEC) : fd;
}

unfinished unfinished_begin(const char *folder) {
    unfinished of = {.folder = folder, .lock = -1, .mark = -1};
    arena *a = arena_new();
    const char *mark = path_join(a, folder, UNFINISHED_NAME);
    int why;
    if (folder_make(folder, &why)) {
        of.lock = lock(folder);
        of.mark = set(mark, &of.found);
    }
    arena_free(a);
    return of;
}

static void add_all(names *to, const written_files *files) {
    for (size_t i = 0; i < files->count; i++)
        names_add(to, span_of(files->items[i].path), 0, NULL);
}

void unfinished_expect(const unfinished *of, span lines) {
    /* A line goes in one call, so that workers do not write into each other's. */
    while (of->mark >= 0 && lines.length) {
        ssize_t wrote = write(of->mark, lines.at, lines.length);
        if (wrote < 0 && errno != EINTR)
            return;
        lines = span_from(lines, wrote > 0 ? (size_t)wrote : 0);
    }
}

/* The lines of the mark. One that was cut short names nothing. */
static names noted_in(arena *a, const unfinished *of) {
    names noted = names_in(a);
    span rest = {0};
    int why;
    if (!file_read_up_to(a, path_join(a, of->folder, UNFINISHED_NAME), NOTED_MOST, &rest, &why))
        return noted;
    for (size_t end; (end = span_find(rest, "\n")) < rest.length; rest = span_from(rest, end + 1))
        names_add(&noted, span_first(rest, end), 0, NULL);
    return noted;
}

/* A page is noted by its own path, or by a folder that it is in. */
static bool is_noted(const names *noted, span path) {
    static const char *const pages[] = {"/index.html", "/recipe.json", "/view.json"};
    size_t value;
    bool page = names_find(noted, path, &value);
    for (size_t i = 0; i < COUNT(pages) && !page; i++)
        page = span_ends(path, pages[i]);
    for (size_t i = path.length; page && i > 0; i--)
        if ((i == path.length || path.at[i - 1] == '/') &&
            names_find(noted, span_first(path, i), &value))
            return true;
    return false;
}

static void remove_file(arena *a, const char *folder, const char *path) {
    (void)unlink(path_join(a, folder, path));
    for (const char *above = path_folder(a, path); strcmp(above, ".") != 0;
         above = path_folder(a, above))
        if (rmdir(path_join(a, folder, above)) != 0)
            return;
}

void unfinished_clear(unfinished *of, const written_files *earlier, const written_files *now) {
    file_list all;
    int why;
    if (!of->found)
        return;
    arena *a = arena_new();
    names known = names_in(a), noted = noted_in(a, of);
    names_add(&known, span_of(RECORD_NAME), 0, NULL);
    add_all(&known, earlier);
    add_all(&known, now);
    of->found = !folder_walk(a, of->folder, &all, &why);
    for (size_t i = 0; i < all.count; i++) {
        span path = span_of(all.items[i].name), whole;
        size_t value;
        bool half = file_is_unfinished(path, &whole);
        bool ours = half && (names_find(&known, whole, &value) || is_noted(&noted, whole));
        if (ours || (!half && !names_find(&known, path, &value) && is_noted(&noted, path)))
            remove_file(a, of->folder, all.items[i].name);
    }
    arena_free(a);
}

void unfinished_end(const unfinished *of) {
    arena *a = arena_new();
    if (!of->found)
        (void)unlink(path_join(a, of->folder, UNFINISHED_NAME));
    arena_free(a);
    if (of->mark >= 0)
        close(of->mark);
    if (of->lock >= 0)
        close(of->lock);
}
