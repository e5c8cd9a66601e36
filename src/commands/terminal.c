#include "commands/terminal.h"

#include "base/memory.h"
#include "base/text.h"

#include <pthread.h>
#include <unistd.h>

/* -- what there is ---------------------------------------------------------------------------- */

static bool is_moving_terminal(void) {
    const char *sort = getenv("TERM");
    return isatty(STDERR_FILENO) && sort && sort[0] && strcmp(sort, "dumb") != 0;
}

const problem_colours *terminal_colours(void) {
    /* ECMA-48, 8.3.117: 1 bold, 31 red, 33 yellow, 0 as before. The word stays. */
    static const problem_colours colours = {"\x1b[1;31m", "\x1b[1;33m", "\x1b[0m"};
    const char *unwanted = getenv("NO_COLOR");
    return is_moving_terminal() && !(unwanted && unwanted[0]) ? &colours : NULL;
}

/* -- the line --------------------------------------------------------------------------------- */

enum { FIRST_MS = 500, EACH_MS = 100 };

struct progress_line {
    const progress *of;
    const char *doing;
    pthread_t watcher;
    pthread_mutex_t lock;
    pthread_cond_t ended_signal;
    bool started, ended;
    text shown; /* what stands on the terminal */
};

/* "12,345" */
static void add_grouped(text *t, size_t number) {
    if (number >= 1000) {
        add_grouped(t, number / 1000);
        text_format(t, ",%03zu", number % 1000);
    } else {
        text_format(t, "%zu", number);
    }
}

/* Blanks over what stands there: works on any terminal. */
static void erase(progress_line *line) {
    if (line->shown.length)
        fprintf(stderr, "\r%*s\r", (int)line->shown.length, "");
    text_clear(&line->shown);
}

static void show(progress_line *line) {
    size_t total = atomic_load(&line->of->total), done = atomic_load(&line->of->done);
    if (total == 0)
        return;
    erase(line);
    text_format(&line->shown, "%s ", line->doing);
    add_grouped(&line->shown, done < total ? done : total);
    text_add(&line->shown, " of ");
    add_grouped(&line->shown, total);
    text_add(&line->shown, " recipes");
    fputs(line->shown.bytes, stderr);
    fflush(stderr);
}

static void add_ms(struct timespec *at, long ms) {
    at->tv_nsec += ms * 1000 * 1000;
    at->tv_sec += at->tv_nsec / 1000000000;
    at->tv_nsec %= 1000000000;
}

static void *watch(void *state) {
    progress_line *line = state;
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    add_ms(&at, FIRST_MS);
    pthread_mutex_lock(&line->lock);
    while (!line->ended) {
        if (pthread_cond_timedwait(&line->ended_signal, &line->lock, &at) == 0)
            continue; /* ended, or woken for nothing */
        show(line);
        add_ms(&at, EACH_MS);
    }
    pthread_mutex_unlock(&line->lock);
    return NULL;
}

progress_line *progress_show(const progress *of, const char *doing) {
    progress_line *line = memory_get(sizeof *line);
    *line = (progress_line){.of = of, .doing = doing, .shown = TEXT_EMPTY};
    if (!is_moving_terminal())
        return line;
    pthread_condattr_t monotonic;
    pthread_condattr_init(&monotonic);
    pthread_condattr_setclock(&monotonic, CLOCK_MONOTONIC);
    pthread_mutex_init(&line->lock, NULL);
    pthread_cond_init(&line->ended_signal, &monotonic);
    pthread_condattr_destroy(&monotonic);
    line->started = pthread_create(&line->watcher, NULL, watch, line) == 0;
    return line;
}

void progress_hide(progress_line *line) {
    if (line->started) {
        pthread_mutex_lock(&line->lock);
        line->ended = true;
        pthread_cond_signal(&line->ended_signal);
        pthread_mutex_unlock(&line->lock);
        pthread_join(line->watcher, NULL);
        erase(line);
        fflush(stderr);
    }
    text_free(&line->shown);
    free(line);
}
