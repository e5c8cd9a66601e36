/* A site folder seen in the browser while it is being written: built into a folder of its own,
 * served on loopback, built anew whenever something in it changes.
 *
 *     change (inotify) -> 30 ms of quiet -> build what it touches -> pages that changed reload
 *
 * A recipe with errors keeps its last good page; its problems are shown on every page and on
 * standard error. */
#ifndef PREVIEW_PREVIEW_H
#define PREVIEW_PREVIEW_H

#include "publish/build.h"

typedef struct {
    const char *folder; /* the site folder */
    const char *listen; /* an address */
    unsigned port;      /* 0: any that is free */
    unsigned workers;   /* as for a build */
    /* Called once it listens, with the address to open. */
    void (*listening)(const char *url, void *state);
    /* Called after each build with what it found, in how many milliseconds. */
    void (*built)(const build_report *report, problems *found, double ms, void *state);
    void *state;
} preview_request;

/* Serves until SIGINT, SIGTERM or SIGHUP. False, with problems, when it can't begin. The folder
 * of pages is removed at the end. */
bool preview_run(const preview_request *asked, problems *found);

#endif
