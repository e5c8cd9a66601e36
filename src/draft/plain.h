/* Plain words from what pages and JSON hold: entities decoded (twice-escaped ones too), mark-up
 * taken out, characters that YAML, Markdown or a terminal could trip over dropped. */
#ifndef DRAFT_PLAIN_H
#define DRAFT_PLAIN_H

#include "base/arena.h"

enum { PLAIN_BYTES_MOST = 64 * 1024 };

/* The words of `written` (UTF-8), trimmed, in the arena; a line end where a block or a line of the
 * source ends. Empty when nothing is left, or it is longer than PLAIN_BYTES_MOST. */
span plain_words(arena *a, span written);

/* The same on one line. */
const char *plain_line(arena *a, span written);

#endif
