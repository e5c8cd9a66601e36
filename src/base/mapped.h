/* A file seen as bytes without reading it into memory first: for files of any size that this
 * program wrote itself and nobody shortens meanwhile. What others write is read with file_read,
 * which has a limit. */
#ifndef BASE_MAPPED_H
#define BASE_MAPPED_H

#include "base/span.h"

/* Maps the regular file at `path`. False, with `*why` an errno value, when that fails. The caller
 * ends it with file_unmap. */
bool file_map(const char *path, span *bytes, int *why);

/* Ends what file_map began. */
void file_unmap(span bytes);

#endif
