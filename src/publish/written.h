/* Files of the site as they were written: their stamps and digests tell whether somebody has
 * changed or deleted them since. */
#ifndef PUBLISH_WRITTEN_H
#define PUBLISH_WRITTEN_H

#include "base/digest.h"
#include "base/files.h"

typedef struct {
    const char *path; /* relative to the output folder */
    file_stamp stamp;
    digest content;
} written_file;

typedef struct {
    written_file *items;
    size_t count, capacity;
} written_files;

void written_sort(written_files *files); /* by path */

/* The one at `path` of sorted files, or null. */
const written_file *written_find(const written_files *files, const char *path);

/* True when the file in `folder`, which is open as `at`, still has the content that `of` states.
 * Its bytes are read only where the stamp differs or is not older than `settled_ns`; `of->stamp` is
 * brought up to date. */
bool written_holds(written_file *of, const char *folder, int at, int64_t settled_ns);

#endif
