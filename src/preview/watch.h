/* Notices when something in a site folder changes (inotify). Bursts, as an editor that saves by
 * renaming makes them, count once. */
#ifndef PREVIEW_WATCH_H
#define PREVIEW_WATCH_H

#include "base/problems.h"

typedef struct {
    int fd;
    const char *folder, *theme; /* borrowed */
} watch;

/* Begins to watch the site in `folder`; `theme` is the folder of its theme inside it, or null.
 * False, with `*why`, when that can't be done. */
bool watch_begin(const char *folder, const char *theme, watch *out, int *why);

/* Watches what has come since: new subfolders, another `theme`. */
void watch_renew(watch *of, const char *theme);

/* Reads what happened (does not wait). True when any of it touches the site: not for hidden
 * files and editors' backups. */
bool watch_read(watch *of);

void watch_end(watch *of);

#endif
