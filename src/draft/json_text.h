/* JSON as pages have it, which is not always JSON. Put right before it is read, because it can't
 * be misread: a byte-order mark, an HTML comment or CDATA section around the whole, a semicolon
 * behind it, line ends and tabs inside strings, commas before a closing bracket. Anything else is
 * refused. */
#ifndef DRAFT_JSON_TEXT_H
#define DRAFT_JSON_TEXT_H

#include "base/arena.h"

#include <jansson.h>

enum { JSON_TEXT_BYTES_MOST = 4 * 1024 * 1024 };

/* Reads `bytes`; the caller owns the result. Null when it can't be read; `*why` then says so in a
 * few words, in the arena. */
json_t *json_text_read(arena *a, span bytes, const char **why);

#endif
