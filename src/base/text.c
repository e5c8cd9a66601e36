#include "base/text.h"

#include "base/format.h"
#include "base/memory.h"

#include <stdarg.h>

char text_nothing[1] = "";

void text_free(text *t) {
    if (t->room)
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

/* Makes room for `more` bytes and the terminator. */
static void reserve(text *t, size_t more) {
    size_t needed = t->length + more + 1;
    if (needed <= t->room)
        return;
    size_t room = t->room ? t->room * 2 : 256;
    while (room < needed)
        room *= 2;
    t->bytes = memory_resize(t->room ? t->bytes : NULL, room);
    t->room = room;
    t->bytes[t->length] = '\0';
}

void text_add(text *t, const char *bytes) {
    text_add_span(t, span_of(bytes));
}

void text_add_span(text *t, span bytes) {
    if (bytes.length == 0)
        return;
    reserve(t, bytes.length);
    memcpy(t->bytes + t->length, bytes.at, bytes.length);
    t->length += bytes.length;
    t->bytes[t->length] = '\0';
}

void text_add_char(text *t, char c) {
    text_add_span(t, (span){&c, 1});
}

void text_format(text *t, const char *format, ...) {
    va_list values;
    va_start(values, format);
    size_t room = t->room ? t->room - t->length : 0;
    size_t length = format_into(t->bytes + t->length, room, format, values);
    if (length >= room) {
        reserve(t, length);
        format_into(t->bytes + t->length, length + 1, format, values);
    }
    t->length += length;
    va_end(values);
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
    case '\'':
        return "&#39;";
    default:
        return NULL;
    }
}

void text_add_html(text *t, span bytes) {
    size_t plain = 0; /* start of the run that needs no reference */
    for (size_t i = 0; i < bytes.length; i++) {
        const char *reference = html_reference(bytes.at[i]);
        if (!reference)
            continue;
        text_add_span(t, (span){bytes.at + plain, i - plain});
        text_add(t, reference);
        plain = i + 1;
    }
    text_add_span(t, span_from(bytes, plain));
}

static bool json_plain(unsigned char c) {
    return c >= 0x20 && c != '"' && c != '\\' && c != '<' && c != '>' && c != '&' && c != 0x7f;
}

static void add_json_escape(text *t, unsigned char c) {
    if (c == '"' || c == '\\')
        text_format(t, "\\%c", c);
    else if (c == '\n')
        text_add(t, "\\n");
    else
        text_format(t, "\\u%04x", c);
}

void text_add_json(text *t, span bytes) {
    text_add_char(t, '"');
    size_t plain = 0;
    for (size_t i = 0; i < bytes.length; i++) {
        if (json_plain((unsigned char)bytes.at[i]))
            continue;
        text_add_span(t, (span){bytes.at + plain, i - plain});
        add_json_escape(t, (unsigned char)bytes.at[i]);
        plain = i + 1;
    }
    text_add_span(t, span_from(bytes, plain));
    text_add_char(t, '"');
}
