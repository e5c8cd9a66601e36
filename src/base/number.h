/* Numbers read and written without a locale: the same bytes everywhere. */
#ifndef BASE_NUMBER_H
#define BASE_NUMBER_H

#include "base/arena.h"
#include "base/text.h"

/* Reads a decimal number (digits, at most one '.' or ',' as the decimal mark, an optional sign)
 * from the front of `s`. Returns how many bytes it took, 0 when there is none. No exponent, no
 * infinity: a kitchen writes neither. More than 15 digits: none. */
size_t number_read(span s, double *out);

/* The whole of `s` is a number. */
bool number_is(span s, double *out);

/* Adds `value` rounded half away from zero to `decimals` (0 to 6) places, trailing zeros and
 * mark dropped: 78, 0.5, -1.25. What rounds to nothing is written 0, never -0. Not finite: "?". */
void number_add(text *t, double value, int decimals);

/* The same with exactly `decimals` places: 1.50. */
void number_add_fixed(text *t, double value, int decimals);

/* number_add into an arena. */
char *number_copy(arena *a, double value, int decimals);

/* `value` rounded half up (away from zero) to a multiple of `step`. */
double number_round(double value, double step);

#endif
