/* The folder a site is written to: what was written this time, what an earlier time wrote and is
 * gone now.
 *
 * Files are written beside and renamed; one that already holds the same bytes is left alone. The
 * record of what was written, RECORD_NAME inside the folder, is what lets pages of removed
 * recipes vanish: only files named there are ever deleted. A missing or damaged record deletes
 * nothing. */
#ifndef PUBLISH_OUTPUTS_H
#define PUBLISH_OUTPUTS_H

#include "base/files.h"
#include "base/list.h"
#include "base/problems.h"
#include "base/text.h"

#define RECORD_NAME ".crumbnote-record"

typedef struct {
    const char **items;
    size_t count, capacity;
} path_list;

/* One writer's part: each worker has its own, joined at the end. */
typedef struct {
    arena *home;        /* borrowed: paths are kept there */
    const char *folder; /* borrowed; null: nothing is written (check) */
    path_list written;  /* relative to the folder */
    bool failed;        /* the disk or a permission refused; a problem says what */
} outputs;

/* Writes `bytes` at `path` (relative, plain). A failure is a problem in `found` and sets
 * `failed`. */
void output_write(outputs *to, const char *path, span bytes, problems *found);

/* Copies the file at `from` to `path`. */
void output_copy(outputs *to, const char *path, const char *from, problems *found);

/* Notes `path` as written, so that it is kept, without writing it. */
void output_keep(outputs *to, const char *path);

/* Notes what an earlier time wrote below `folder` (ends with /) and is still there. */
void output_keep_earlier(outputs *to, const char *folder);

/* Adds the paths of `more` to `to`. */
void outputs_join(outputs *to, const outputs *more);

/* Deletes what the record of an earlier time names and this time did not write, then writes the
 * new record. */
void outputs_settle(outputs *to, problems *found);

#endif
