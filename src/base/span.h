/* A view of bytes that somebody else owns: a pointer and a length, not terminated.
 *
 * Everything that reads text takes spans, so that a line can be cut into words without a copy.
 * A span borrows: it is good for as long as the bytes it points at. The empty span has length 0
 * and may have any pointer, a null one included. */
#ifndef BASE_SPAN_H
#define BASE_SPAN_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

typedef struct {
    const char *at;
    size_t length;
} span;

/* What a span with a length is: what looks for faults without running does not know it. */
#ifdef __clang_analyzer__
#define SPAN_HOLDS(s) ((s).length && !(s).at ? __builtin_unreachable() : (void)0)
#else
#define SPAN_HOLDS(s) ((void)0)
#endif

/* For printf: printf("%.*s", SPAN(word)). */
#define SPAN(s) (int)(s).length, (s).at

/* The span of a C string. Borrows `bytes`, which may be null (empty span). */
static inline span span_of(const char *bytes) {
    return (span){bytes, bytes ? strlen(bytes) : 0};
}

/* Byte for byte equality. */
static inline bool span_equal(span a, span b) {
    SPAN_HOLDS(a);
    SPAN_HOLDS(b);
    return a.length == b.length && (a.length == 0 || memcmp(a.at, b.at, a.length) == 0);
}

/* Equality with a C string. */
static inline bool span_is(span a, const char *word) {
    return span_equal(a, span_of(word));
}

/* Byte order, shorter first among equals: negative, 0 or positive, as for qsort. */
int span_compare(span a, span b);

/* `s` without white space (space, tab, line ends) at both its ends. */
span span_trim(span s);

/* The part of `s` from byte `from` on; empty when `from` is past the end. */
static inline span span_from(span s, size_t from) {
    SPAN_HOLDS(s);
    if (from >= s.length)
        return (span){s.at ? s.at + s.length : NULL, 0};
    return (span){s.at + from, s.length - from};
}

/* The first `length` bytes of `s`, or all of it when it is shorter. */
static inline span span_first(span s, size_t length) {
    SPAN_HOLDS(s);
    return (span){s.at, length < s.length ? length : s.length};
}

/* True when `s` begins with `start`. */
static inline bool span_begins(span s, const char *start) {
    size_t length = strlen(start);
    SPAN_HOLDS(s);
    return s.length >= length && (length == 0 || memcmp(s.at, start, length) == 0);
}

/* True when `s` ends with `end`. */
bool span_ends(span s, const char *end);

/* Where `needle` first occurs in `s`, or `s.length` when it does not. */
size_t span_find(span s, const char *needle);

/* Cuts the next word (run of bytes that are not white space) off the front of `*rest` and
 * returns it; empty when nothing but white space is left. */
span span_next_word(span *rest);

/* Cuts the next line (without its \n or \r\n) off the front of `*rest` into `*line`. False at
 * the end. */
bool span_next_line(span *rest, span *line);

#endif
