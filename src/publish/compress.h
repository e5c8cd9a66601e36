/* Files compressed ahead of time, beside the files themselves, for a web server that sends them
 * as they are: x.html.gz (gzip, RFC 1952) and x.html.br (Brotli, RFC 7932).
 *
 * The bytes depend on the file alone: no time, no name. */
#ifndef PUBLISH_COMPRESS_H
#define PUBLISH_COMPRESS_H

#include "base/arena.h"

typedef struct {
    const char *suffix; /* ".gz" */
    /* Compresses `bytes` into the arena. False when the library can't. */
    bool (*squeeze)(arena *a, span bytes, span *out);
} compression;

extern const compression compression_gzip, compression_brotli;

/* True for files worth it: text of a site, by the end of the name, and not tiny. */
bool compress_is_worth(const char *path, size_t bytes);

/* Writes the file at `path` compressed by `with` beside it. False, with `*why`, when that fails.
 * `*written` is false when the result would be no smaller: then there is none. */
bool compress_file(const char *path, const compression *with, bool *written, int *why);

#endif
