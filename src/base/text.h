/* A growing string: never null, always terminated, length known.
 *
 * Life cycle: `text page = TEXT_EMPTY;` … text_add… … text_free(&page). text_clear keeps the
 * room for the next page, so that a worker allocates once. What is mostly short begins in room on
 * the stack: `char room[64]; text words = text_on(room, sizeof room);` and so on. */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include "base/span.h"

#include <stdarg.h>

typedef struct {
    char *bytes; /* terminated; points at a constant empty string until something is added */
    size_t length;
    size_t room;   /* bytes there are, 0 while nothing was added */
    bool borrowed; /* they are not from the heap */
} text;

extern char text_nothing[1]; /* what an empty text points at */
#define TEXT_EMPTY                                                                                 \
    { text_nothing, 0, 0, false }

/* An empty text that begins in `room`, which it borrows, and moves to the heap when it grows out of
 * it. */
static inline text text_on(char *room, size_t size) {
    room[0] = '\0';
    return (text){room, 0, size, true};
}

/* Frees the bytes; the text is empty and usable again. */
void text_free(text *t);

/* Empties `t` but keeps its room. */
void text_clear(text *t);

/* Cuts `t` back to its first `length` bytes. */
void text_cut(text *t, size_t length);

/* Makes room for `more` bytes. Adding does so by itself. */
void text_reserve(text *t, size_t more);

static inline void text_add_span(text *t, span bytes) {
    if (bytes.length == 0)
        return;
    if (t->room - t->length <= bytes.length)
        text_reserve(t, bytes.length);
    memcpy(t->bytes + t->length, bytes.at, bytes.length);
    t->length += bytes.length;
    t->bytes[t->length] = '\0';
}

static inline void text_add(text *t, const char *bytes) {
    text_add_span(t, span_of(bytes));
}

static inline void text_add_char(text *t, char c) {
    text_add_span(t, (span){&c, 1});
}

/* printf onto the end. No %f or %g: see base/number.h. */
void text_format(text *t, const char *format, ...) __attribute__((format(printf, 2, 3)));

void text_format_values(text *t, const char *format, va_list values)
    __attribute__((format(printf, 2, 0)));

/* Adds `bytes` with & < > " ' written as HTML character references: safe in an element and in a
 * quoted attribute, in HTML and XML alike. */
void text_add_html(text *t, span bytes);

/* Adds `bytes` as a JSON string with its quotes. <, > and & are written as \u escapes, so that
 * the result may stand inside a script element. `bytes` must be UTF-8. */
void text_add_json(text *t, span bytes);

/* The whole as a span; borrows, good until the next change. */
static inline span text_span(const text *t) {
    return (span){t->bytes, t->length};
}

#endif
