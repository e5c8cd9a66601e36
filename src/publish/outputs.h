/* The folder a site is written to: what is written this time, and what of an earlier time still
 * stands as it was.
 *
 * Files are written beside and renamed; one that already holds the same bytes is left alone. Only
 * files that the record of an earlier build names (publish/record.h) are ever deleted. */
#ifndef PUBLISH_OUTPUTS_H
#define PUBLISH_OUTPUTS_H

#include "base/list.h"
#include "base/problems.h"
#include "base/text.h"
#include "publish/unfinished.h"

/* One writer's part: each worker has its own. */
typedef struct {
    arena *home;                  /* borrowed: paths are kept there */
    const char *folder;           /* borrowed */
    int at;                       /* the folder open: folder_open */
    const written_files *earlier; /* sorted; what an earlier build wrote here; may be null */
    int64_t settled_ns;           /* when it had done */
    const unfinished *mark;       /* borrowed: new files are noted there; may be null */
    written_files files;          /* this time's */
    bool failed;                  /* the disk or a permission refused; a problem says what */
    bool full;                    /* and will refuse all that follows, so it is not tried */
} outputs;

/* Writes `bytes` at `path` (relative, plain). A failure is a problem in `found` and sets `failed`;
 * what an earlier build wrote there stays. */
void output_write(outputs *to, const char *path, span bytes, problems *found);

/* Copies the file at `from` to `path`; `*content` is the digest of its bytes. */
void output_copy(outputs *to, const char *path, const char *from, digest *content, problems *found);

/* Notes the file at `path`, which another program has just written, with its content. */
void output_note(outputs *to, const char *path, problems *found);

/* Notes the file at `path` as one of the site's, without writing it: what can't be made now stays
 * as it is. Nothing where there is no such file. */
void output_keep(outputs *to, const char *path);

/* Adds the files of `more`, another worker's, to those of `to`. */
void outputs_join(outputs *to, const outputs *more);

/* True when all of `files` still stand as they were written; their stamps are brought up to date.
 */
bool outputs_hold(const outputs *to, written_files *files);

/* Deletes from the folder those of `earlier` that are not in `to->files`, and the folders that are
 * empty then. One that can't be deleted is a problem in `found`, sets `failed`, and is added to
 * `to->files`, so that it is not forgotten. */
void outputs_remove(outputs *to, const written_files *earlier, problems *found);

#endif
