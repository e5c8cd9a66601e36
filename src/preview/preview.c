#include "preview/preview.h"

#include "base/folders.h"
#include "preview/server.h"
#include "preview/watch.h"
#include "read/site_folder.h"

#include <errno.h>
#include <poll.h>
#include <pthread.h>
#include <signal.h>
#include <sys/signalfd.h>
#include <unistd.h>

enum {
    QUIET_MS = 30,  /* without a change: a burst is over */
    BURST_MS = 300, /* the longest a burst can hold a build up */
    TICK_MS = 1000,
    WATCHED = 2 /* changes, signals */
};

typedef struct {
    const preview_request *asked;
    arena *a;     /* as long as the preview */
    arena *round; /* of the last build */
    const char *out;
    server *pages;
    watch changes;
    int signals;
} preview;

static double now_ms(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

/* -- building
 * -------------------------------------------------------------------------------------------- */

static const char *theme_folder(const site_settings *of) {
    return path_is_plain(span_of(of->theme)) && strcmp(of->theme, "plain") != 0 ? of->theme : NULL;
}

/* Watches before it reads: what changes meanwhile is a change. */
static void build(preview *p) {
    const preview_request *asked = p->asked;
    double begun = now_ms();
    arena_reset(p->round);
    problems found = problems_in(p->round);
    site_settings settings = site_folder_settings(p->round, asked->folder);
    watch_renew(&p->changes, theme_folder(&settings));
    build_request request = {.folder = asked->folder, .out = p->out, .workers = asked->workers};
    build_report report = build_site(&request, &found);
    server_publish(p->pages, settings.address, &found);
    asked->built(&report, &found, now_ms() - begun, asked->state);
}

/* -- waiting
 * --------------------------------------------------------------------------------------------- */

/* Waits for something to read, at most `ms`. */
static void wait_for(const preview *p, struct pollfd ready[WATCHED], double ms) {
    ready[0] = (struct pollfd){.fd = p->changes.fd, .events = POLLIN};
    ready[1] = (struct pollfd){.fd = p->signals, .events = POLLIN};
    if (poll(ready, WATCHED, ms > 0 ? (int)(ms + 0.999) : 0) < 0)
        ready[0].revents = ready[1].revents = 0;
}

/* Waits until nothing has changed for QUIET_MS. False when a signal came meanwhile. */
static bool gather(preview *p) {
    struct pollfd ready[WATCHED];
    double end = now_ms() + BURST_MS, quiet = now_ms() + QUIET_MS;
    while (now_ms() < quiet && now_ms() < end) {
        wait_for(p, ready, (quiet < end ? quiet : end) - now_ms());
        if (ready[1].revents)
            return false;
        if (ready[0].revents && watch_read(&p->changes))
            quiet = now_ms() + QUIET_MS;
    }
    return true;
}

static void serve(preview *p) {
    struct pollfd ready[WATCHED];
    double tick = now_ms() + TICK_MS;
    build(p);
    for (;;) {
        wait_for(p, ready, tick - now_ms());
        if (ready[1].revents)
            return;
        if (ready[0].revents && watch_read(&p->changes)) {
            if (!gather(p))
                return;
            build(p);
        }
        if (now_ms() >= tick) {
            server_tick(p->pages);
            tick = now_ms() + TICK_MS;
        }
    }
}

/* -- beginning and ending
 * -------------------------------------------------------------------------------- */

/* Signals are taken by reading `p->signals`, in one place; threads made later inherit that. */
static bool take_signals(preview *p, sigset_t *before) {
    sigset_t ending;
    sigemptyset(&ending);
    sigaddset(&ending, SIGINT);
    sigaddset(&ending, SIGTERM);
    sigaddset(&ending, SIGHUP);
    pthread_sigmask(SIG_BLOCK, &ending, before);
    p->signals = signalfd(-1, &ending, SFD_CLOEXEC | SFD_NONBLOCK);
    return p->signals >= 0;
}

/* Takes those that came, which would end the program once they are let through again. */
static void leave_signals(const preview *p) {
    struct signalfd_siginfo one;
    if (p->signals < 0)
        return;
    while (read(p->signals, &one, sizeof one) > 0)
        continue;
    close(p->signals);
}

static bool make_out(preview *p) {
    const char *temporary = getenv("TMPDIR");
    char *path = arena_format(p->a, "%s/crumbnote-preview-XXXXXX",
                              temporary && temporary[0] ? temporary : "/tmp");
    p->out = mkdtemp(path);
    return p->out != NULL;
}

static bool fail(const char *folder, int why, problems *found) {
    problem_add(found, (place){folder, 0, 0}, NULL, "the preview can't begin: %s", strerror(why));
    return false;
}

static bool begin(preview *p, problems *found) {
    const preview_request *asked = p->asked;
    int why = 0;
    if (!make_out(p))
        return fail(asked->folder, errno, found);
    if (!watch_begin(asked->folder, NULL, &p->changes, &why))
        return fail(asked->folder, why, found);
    server_request request = {p->out, asked->listen, asked->port};
    p->pages = server_start(&request, found);
    if (!p->pages)
        return false;
    bool six = strchr(asked->listen, ':') != NULL;
    asked->listening(arena_format(p->a, "http://%s%s%s:%u/", six ? "[" : "", asked->listen,
                                  six ? "]" : "", server_port(p->pages)),
                     asked->state);
    return true;
}

static void end(preview *p) {
    int why;
    if (p->pages)
        server_stop(p->pages);
    watch_end(&p->changes);
    if (p->out)
        (void)folder_remove(p->out, &why);
}

bool preview_run(const preview_request *asked, problems *found) {
    preview p = {.asked = asked, .a = arena_new(), .round = arena_new(), .signals = -1};
    sigset_t before;
    p.changes.fd = -1;
    bool good = take_signals(&p, &before) ? begin(&p, found) : fail(asked->folder, errno, found);
    if (good)
        serve(&p);
    end(&p);
    leave_signals(&p);
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    arena_free(p.round);
    arena_free(p.a);
    return good;
}
