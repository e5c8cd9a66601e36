#include "base/format.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

typedef struct {
    char *room;
    size_t size, length;
} writer;

static inline void put(writer *w, const char *bytes, size_t length) {
    if (length && w->length < w->size) { /* the bytes of an empty span may be null */
        size_t left = w->size - w->length;
        memcpy(w->room + w->length, bytes, length < left ? length : left);
    }
    w->length += length;
}

size_t format_digits(char digits[DIGITS_MOST], unsigned long long value) {
    char reversed[DIGITS_MOST];
    size_t count = 0;
    do {
        reversed[count++] = (char)('0' + value % 10);
        value /= 10;
    } while (value);
    for (size_t i = 0; i < count; i++)
        digits[i] = reversed[count - 1 - i];
    return count;
}

static void put_unsigned(writer *w, unsigned long long value) {
    char digits[DIGITS_MOST];
    put(w, digits, format_digits(digits, value));
}

static void put_signed(writer *w, int value) {
    if (value < 0)
        put(w, "-", 1);
    put_unsigned(w, value < 0 ? 0u - (unsigned)value : (unsigned)value);
}

static void put_words(writer *w, const char *words) {
    put(w, words ? words : "(null)", words ? strlen(words) : strlen("(null)"));
}

/* Writes the value of the conversion at `*at`, behind its %, and moves past it; false when it is
 * none of ours. */
static bool put_conversion(writer *w, const char **at, va_list *values) {
    const char *c = *at;
    *at = c + 1;
    switch (*c) {
    case 's':
        put_words(w, va_arg(*values, const char *));
        return true;
    case 'u':
        put_unsigned(w, va_arg(*values, unsigned));
        return true;
    case 'd':
        put_signed(w, va_arg(*values, int));
        return true;
    case 'c':
        put(w, &(char){(char)va_arg(*values, int)}, 1);
        return true;
    case '%':
        put(w, "%", 1);
        return true;
    default:
        break;
    }
    if (strncmp(c, "zu", 2) == 0) {
        *at = c + 2;
        put_unsigned(w, va_arg(*values, size_t));
        return true;
    }
    if (strncmp(c, ".*s", 3) == 0) {
        int most = va_arg(*values, int);
        const char *bytes = va_arg(*values, const char *);
        *at = c + 3;
        put(w, bytes, bytes && most > 0 ? strnlen(bytes, (size_t)most) : 0);
        return true;
    }
    return false;
}

/* False when the format holds a conversion that is none of ours. */
static bool put_all(writer *w, const char *format, va_list *values) {
    for (;;) {
        const char *percent = format; /* the words between are short */
        while (*percent && *percent != '%')
            percent++;
        put(w, format, (size_t)(percent - format));
        if (!*percent)
            return true;
        format = percent + 1;
        if (!put_conversion(w, &format, values))
            return false;
    }
}

static size_t put_otherwise(writer *w, const char *format, va_list *values) {
    int length = vsnprintf(w->room, w->size, format, *values);
    return length < 0 ? 0 : (size_t)length;
}

size_t format_into(char *room, size_t size, const char *format, va_list values) {
    writer w = {room, size, 0};
    va_list own, again;
    va_copy(own, values);
    va_copy(again, values);
    if (!put_all(&w, format, &own))
        w.length = put_otherwise(&w, format, &again);
    else if (size)
        room[w.length < size ? w.length : size - 1] = '\0';
    va_end(again);
    va_end(own);
    return w.length;
}
