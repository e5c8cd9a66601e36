/* One build at a time in an output folder, and what is left there of one that was killed.
 *
 * A file that was being written then stands beside its place under a name of its own. So that not
 * every build has to look for such, a mark stands in the folder from the beginning of a build to
 * its end. In it stand the paths that no record names yet, noted before they are written: when the
 * build is killed before its record is there, the next one knows what is left of it. */
#ifndef PUBLISH_UNFINISHED_H
#define PUBLISH_UNFINISHED_H

#include "publish/written.h"

#define UNFINISHED_NAME ".crumbnote-unfinished"

typedef struct {
    const char *folder; /* borrowed */
    int lock;           /* the folder, held; -1: it can't be */
    int mark;           /* the mark, open; -1: it can't be */
    bool found;         /* a build before this one was killed */
} unfinished;

/* Waits until no other program builds into `folder` and sets the mark. Where that can't be done, as
 * in a folder that is not there yet and can't be made, whatever is written next will say so. */
unfinished unfinished_begin(const char *folder);

/* Notes paths that may be written, a line each, its end included: a file, or, with a / at its end,
 * the pages of a folder. Workers may note a line at the same time. A disk that has no room for it
 * has none for the file either. */
void unfinished_expect(const unfinished *of, span lines);

/* Removes what a killed build left of writing files of `earlier` or `now`, and of what it noted all
 * that is in neither. */
void unfinished_clear(unfinished *of, const written_files *earlier, const written_files *now);

/* Takes the mark away, unless there is still something to clear. */
void unfinished_end(const unfinished *of);

#endif
