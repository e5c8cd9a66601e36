/* The files that a record names, and those that a next one may do without. */
#ifndef PUBLISH_RECORD_FILES_H
#define PUBLISH_RECORD_FILES_H

#include "publish/record.h"

/* All of them, in `a`; paths are borrowed. */
written_files record_files(arena *a, const record *of);

size_t record_file_count(const record *of);

/* Those of `was` that may be gone in `now`: of each input that is gone or has other files now.
 * Mostly none, and no list of all is needed. Likewise in `a`. */
written_files record_doubtful_files(arena *a, const record *was, const record *now);

#endif
