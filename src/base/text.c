#include "base/text.h"

#include "base/format.h"
#include "base/memory.h"

#include <stdarg.h>
#include <stdint.h>

char text_nothing[1] = "";

void text_free(text *t) {
    if (t->room && !t->borrowed)
        free(t->bytes);
    *t = (text)TEXT_EMPTY;
}

void text_clear(text *t) {
    text_cut(t, 0);
}

void text_cut(text *t, size_t length) {
    if (length >= t->length)
        return;
    t->length = length;
    t->bytes[length] = '\0';
}

void text_reserve(text *t, size_t more) {
    size_t needed = t->length + more + 1; /* with the terminator */
    if (needed <= t->room)
        return;
    size_t room = t->room ? t->room * 2 : 256;
    while (room < needed)
        room *= 2;
    char *bytes = memory_resize(t->room && !t->borrowed ? t->bytes : NULL, room);
    if (t->borrowed)
        memcpy(bytes, t->bytes, t->length);
    t->bytes = bytes;
    t->room = room;
    t->borrowed = false;
    t->bytes[t->length] = '\0';
}

void text_format_values(text *t, const char *format, va_list values) {
    size_t room = t->room ? t->room - t->length : 0;
    size_t length = format_into(t->bytes + t->length, room, format, values);
    if (length >= room) {
        text_reserve(t, length);
        format_into(t->bytes + t->length, length + 1, format, values);
    }
    t->length += length;
}

void text_format(text *t, const char *format, ...) {
    va_list values;
    va_start(values, format);
    text_format_values(t, format, values);
    va_end(values);
}

/* The bytes that stand for something else in HTML or JSON; looked at one by one in every page. */
enum { HTML_SPECIAL = 1, JSON_SPECIAL = 2 };
static const unsigned char special[256] = {['&'] = HTML_SPECIAL | JSON_SPECIAL,
                                           ['<'] = HTML_SPECIAL | JSON_SPECIAL,
                                           ['>'] = HTML_SPECIAL | JSON_SPECIAL,
                                           ['"'] = HTML_SPECIAL | JSON_SPECIAL,
                                           ['\''] = HTML_SPECIAL,
                                           ['\\'] = JSON_SPECIAL,
                                           [0x7f] = JSON_SPECIAL};

/* Control characters are special in JSON too. */
static bool is_special(unsigned char c, unsigned kind) {
    return c < ' ' ? kind == JSON_SPECIAL : special[c] & kind;
}

/* Sixteen bytes at once, for which most processors have instructions; a comparison makes a byte all
 * ones where it holds. */
enum { SEVERAL = 16 };
typedef unsigned char several __attribute__((vector_size(SEVERAL)));

static bool any_special(several of, unsigned kind) {
    several hit = (several)((of == '&') | (of == '<') | (of == '>') | (of == '"'));
    if (kind == HTML_SPECIAL)
        hit |= (several)(of == '\'');
    else
        hit |= (several)((of == '\\') | (of == 0x7f) | (of < ' '));
    uint64_t halves[2];
    memcpy(halves, &hit, sizeof halves);
    return (halves[0] | halves[1]) != 0;
}

static bool sixteen_special(const char *at, unsigned kind) {
    several of;
    memcpy(&of, at, sizeof of);
    return any_special(of, kind);
}

/* Of 4 to 16 bytes: the first and the last eight or four, which may be some of the same. */
static bool up_to_sixteen_special(const char *at, size_t length, unsigned kind) {
    several of;
    if (length >= 8) {
        uint64_t ends[2];
        memcpy(&ends[0], at, sizeof ends[0]);
        memcpy(&ends[1], at + length - sizeof ends[1], sizeof ends[1]);
        memcpy(&of, ends, sizeof of);
    } else {
        uint32_t first, last;
        memcpy(&first, at, sizeof first);
        memcpy(&last, at + length - sizeof last, sizeof last);
        memcpy(&of, &(uint32_t[]){first, last, first, last}, sizeof of);
    }
    return any_special(of, kind);
}

/* Where the first byte of a kind is in `bytes` from `from` on; its length when there is none. */
static size_t find_special(span bytes, size_t from, unsigned kind) {
    while (from + SEVERAL <= bytes.length && !sixteen_special(bytes.at + from, kind))
        from += SEVERAL;
    size_t left = bytes.length - from;
    if (left >= 4 && left <= SEVERAL && !up_to_sixteen_special(bytes.at + from, left, kind))
        return bytes.length;
    while (from < bytes.length && !is_special((unsigned char)bytes.at[from], kind))
        from++;
    return from;
}

static const char *html_reference(char c) {
    switch (c) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    default:
        return "&#39;";
    }
}

void text_add_html(text *t, span bytes) {
    for (size_t plain = 0, i;; plain = i + 1) {
        i = find_special(bytes, plain, HTML_SPECIAL);
        text_add_span(t, (span){bytes.at + plain, i - plain});
        if (i == bytes.length)
            return;
        text_add(t, html_reference(bytes.at[i]));
    }
}

static void add_json_escape(text *t, unsigned char c) {
    if (c == '"' || c == '\\')
        text_format(t, "\\%c", c);
    else if (c == '\n')
        text_add(t, "\\n");
    else
        text_format(t, "\\u%04x", c);
}

/* `bytes` in quotes, as they are. */
static void add_quoted(text *t, span bytes) {
    size_t needed = bytes.length + 2;
    text_reserve(t, needed);
    char *at = t->bytes + t->length;
    *at = '"';
    if (bytes.length)
        memcpy(at + 1, bytes.at, bytes.length);
    at[needed - 1] = '"';
    at[needed] = '\0';
    t->length += needed;
}

void text_add_json(text *t, span bytes) {
    size_t plain = 0, i = find_special(bytes, 0, JSON_SPECIAL);
    if (i == bytes.length) { /* most are */
        add_quoted(t, bytes);
        return;
    }
    text_add_char(t, '"');
    for (; i < bytes.length; i = find_special(bytes, plain, JSON_SPECIAL)) {
        text_add_span(t, (span){bytes.at + plain, i - plain});
        add_json_escape(t, (unsigned char)bytes.at[i]);
        plain = i + 1;
    }
    text_add_span(t, span_from(bytes, plain));
    text_add_char(t, '"');
}
