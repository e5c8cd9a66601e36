/* Checks a whole site folder with several workers, or one text in its site: what `crumbnote check`
 * does. Writes nothing.
 *
 *     site.yaml, pantry/, rules/, trials/, pages/   read once, constant
 *     recipes/x.md                                  a worker: read, weigh, ties of rules, checks
 *     comments that allow something                 last of all (read/silence.h) */
#ifndef CHECK_RUN_H
#define CHECK_RUN_H

#include "base/problems.h"
#include "base/progress.h"

typedef struct {
    size_t recipes; /* read, broken ones included */
    bool machine_failed;
} check_report;

/* Checks the site in `folder` with as many workers (0: as many as there are processors). All
 * problems are in `found`; messages live in its arena. `seen` is moved with each recipe; may be
 * null. */
check_report check_folder(const char *folder, unsigned workers, progress *seen, problems *found);

/* True when check_text can check a file of this path: recipes/x.md or pages/x.md in a site. */
bool check_takes(const char *path);

/* Checks `bytes` as if they stood in the file at `path` (recipes/x.md or pages/x.md of the site
 * folder around it; the file need not be there), in the site's pantry and rules. Only the problems
 * of that file, and errors that keep the site from being read, are in `found`. */
check_report check_text(const char *path, span bytes, problems *found);

#endif
