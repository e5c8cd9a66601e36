#include "publish/unfinished.h"

#include "base/folders.h"
#include "base/names.h"
#include "publish/record.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

/* The folder, locked until it is closed. Some file systems know no locks: then it is not. */
static int lock(const char *folder) {
    int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    while (fd >= 0 && flock(fd, LOCK_EX) != 0 && errno == EINTR)
        ;
    return fd;
}

/* False when the mark is there already. */
static bool set(const char *mark) {
    int fd = open(mark, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0644);
    bool was_there = fd < 0 && errno == EEXIST;
    if (fd >= 0)
        close(fd);
    return !was_there;
}

unfinished unfinished_begin(const char *folder) {
    unfinished of = {.folder = folder, .lock = -1};
    arena *a = arena_new();
    const char *mark = path_join(a, folder, UNFINISHED_NAME);
    int why;
    if (folder_make(folder, &why)) {
        of.lock = lock(folder);
        of.found = !set(mark);
    }
    arena_free(a);
    return of;
}

static void add_all(names *to, const written_files *files) {
    for (size_t i = 0; i < files->count; i++)
        names_add(to, span_of(files->items[i].path), 0, NULL);
}

void unfinished_clear(unfinished *of, const written_files *earlier, const written_files *now) {
    file_list all;
    int why;
    if (!of->found)
        return;
    arena *a = arena_new();
    names known = names_in(a);
    names_add(&known, span_of(RECORD_NAME), 0, NULL);
    add_all(&known, earlier);
    add_all(&known, now);
    of->found = !folder_walk(a, of->folder, &all, &why);
    for (size_t i = 0; i < all.count; i++) {
        span whole;
        size_t value;
        if (file_is_unfinished(span_of(all.items[i].name), &whole) &&
            names_find(&known, whole, &value))
            (void)unlink(path_join(a, of->folder, all.items[i].name));
    }
    arena_free(a);
}

void unfinished_end(const unfinished *of) {
    arena *a = arena_new();
    if (!of->found)
        (void)unlink(path_join(a, of->folder, UNFINISHED_NAME));
    arena_free(a);
    if (of->lock >= 0)
        close(of->lock);
}
