/* printf into memory, for the few conversions that pages are made of: %s, %.*s, %c, %d, %u, %zu
 * and %%. Anything else (widths, hexadecimal) goes through vsnprintf: it is right, but slower, and
 * pages put together some ten thousand words each. */
#ifndef BASE_FORMAT_H
#define BASE_FORMAT_H

#include <stdarg.h>
#include <stddef.h>

/* Writes at most `size` bytes, the terminating zero included, to `room`, and returns how many bytes
 * the whole is without it, as vsnprintf does. `values` may be used again after. No %f or %g: see
 * base/number.h. */
size_t format_into(char *room, size_t size, const char *format, va_list values);

/* The digits of `value` at `digits`, not terminated; returns how many. */
enum { DIGITS_MOST = 20 };
size_t format_digits(char digits[DIGITS_MOST], unsigned long long value);

#endif
