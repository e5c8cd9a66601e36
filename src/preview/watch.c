#include "preview/watch.h"

#include "base/files.h"
#include "base/list.h"

#include <errno.h>
#include <stdalign.h>
#include <sys/inotify.h>
#include <sys/stat.h>
#include <unistd.h>

static const char *const subfolders[] = {"recipes", "pantry", "rules",
                                         "trials",  "pages",  "pictures"};

/* A file is taken when it is complete, not when it is made; a folder or link when it is made. */
enum {
    EVENTS = IN_CLOSE_WRITE | IN_MOVED_TO | IN_MOVED_FROM | IN_CREATE | IN_DELETE | IN_ATTRIB |
             IN_ONLYDIR
};

static void add(const watch *of, const char *name) {
    arena *a = arena_new();
    (void)inotify_add_watch(of->fd, path_join(a, of->folder, name), EVENTS);
    arena_free(a);
}

void watch_renew(watch *of, const char *theme) {
    of->theme = theme;
    add(of, ".");
    for (size_t i = 0; i < COUNT(subfolders); i++)
        add(of, subfolders[i]);
    if (theme)
        add(of, theme);
}

bool watch_begin(const char *folder, const char *theme, watch *out, int *why) {
    *out = (watch){.fd = inotify_init1(IN_NONBLOCK | IN_CLOEXEC), .folder = folder};
    *why = errno;
    if (out->fd < 0)
        return false;
    watch_renew(out, theme);
    return true;
}

void watch_end(watch *of) {
    if (of->fd >= 0)
        close(of->fd);
    of->fd = -1;
}

static bool touches_site(const struct inotify_event *event) {
    if (event->mask & (IN_Q_OVERFLOW | IN_IGNORED))
        return true;
    span name = span_of(event->len ? event->name : "");
    if (span_begins(name, ".") || span_ends(name, "~"))
        return false;
    bool made = event->mask & IN_CREATE, folder = event->mask & IN_ISDIR;
    return !made || folder;
}

bool watch_read(watch *of) {
    alignas(struct inotify_event) char room[16 * 1024];
    bool touched = false;
    ssize_t got;
    while ((got = read(of->fd, room, sizeof room)) > 0 || (got < 0 && errno == EINTR))
        for (char *at = room; got > 0 && at < room + got;) {
            const struct inotify_event *event = (const struct inotify_event *)(void *)at;
            touched = touches_site(event) || touched;
            at += sizeof *event + event->len;
        }
    return touched;
}
