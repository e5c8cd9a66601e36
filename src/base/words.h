/* Words as people write them: case, accents, plurals of the table of names, slugs, near misses. */
#ifndef BASE_WORDS_H
#define BASE_WORDS_H

#include "base/arena.h"

/* True when `bytes` is well-formed UTF-8 without a NUL; otherwise `*bad` (may be null) is the
 * offset of the first byte that is not. */
bool words_are_utf8(span bytes, size_t *bad);

/* `words` in lower case, accents and compatibility forms folded (utf8proc NFKD, marks and
 * what is never seen, such as a soft hyphen, dropped),
 * hyphens, apostrophes and runs of white space as one space, trimmed: what names are compared by.
 * In the arena. Bytes that are not UTF-8 are dropped. */
span words_fold(arena *a, span words);

/* A slug for a file or folder: words_fold with everything but letters and digits turned into
 * single hyphens. Letters of other scripts stay as they are, with marks that are part of them;
 * points of Hebrew and Arabic are dropped. Never empty ("x" when nothing is left), never
 * "." or "..", no slash. At most 80 bytes, cut at a character. */
char *words_slug(arena *a, span words);

/* What words_each calls: `word` is good until it returns. */
typedef void word_taker(span word, void *state);

/* Calls `take` for each word that a search goes by: the folded letters and digits of `words`, cut
 * at all else. */
void words_each(span words, word_taker *take, void *state);

/* Edits (insert, delete, replace, swap two neighbours) that turn `a` into `b`, by bytes of the
 * folded words; `most` + 1 when more than `most` are needed. */
size_t words_distance(span a, span b, size_t most);

/* The nearest of `count` candidates to `word`, or null when none is within a third of its
 * length (one edit for short words): for "did you mean". Candidates and result are borrowed. */
const char *words_nearest(span word, const char *const candidates[], size_t count);

/* The place of `word`, byte for byte, in `list`; `count` when it is not there. */
size_t words_index(span word, const char *const list[], size_t count);

/* How many characters (code points) the first `length` bytes hold: bytes to columns. */
unsigned words_columns(const char *bytes, size_t length);

/* How many bytes at `words` (terminated) are one character that is not seen but drives a terminal
 * or breaks a line: controls (Unicode's Cc), line and paragraph separators, and those that turn the
 * direction of what follows (UAX 9, table 3). 0 when the character is none. */
size_t words_unseen(const char *words);

#endif
