/* Percent-encoding of addresses, RFC 3986, section 2.1. */
#ifndef BASE_PERCENT_H
#define BASE_PERCENT_H

#include "base/arena.h"

/* `bytes` with %41 made A, in the arena, terminated. False for a broken escape and for an escaped
 * NUL. */
bool percent_decode(arena *a, span bytes, span *out);

/* `path` with all but letters, digits, "-._~" and slashes escaped, in the arena. */
char *percent_encode(arena *a, const char *path);

#endif
