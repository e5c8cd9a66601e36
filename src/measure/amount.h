/* Amounts as a baker writes them: 60, 1/2, 1 1/2, ½, 1½, 0,5, 2-3, 2 to 3. */
#ifndef MEASURE_AMOUNT_H
#define MEASURE_AMOUNT_H

#include "base/text.h"

/* low = high unless a range was written. Never negative, never above 100,000. */
typedef struct {
    double low, high;
} amount_range;

/* The middle of the range: what is weighed. */
static inline double amount_middle(amount_range of) {
    return (of.low + of.high) / 2;
}

/* Reads an amount from the front of `s`; returns how many bytes it took, 0 when there is none
 * (then `*out` is untouched). Fractions are n/d or one of the Unicode vulgar fractions, with
 * U+2044 as a slash too; a mixed number has a space ("1 1/2", "1 ½"), no join at all ("1½"), or
 * the hyphen of American print ("1-1/2"); a range is joined by "-", an en dash, "to" or "or"; the
 * decimal mark is a point or a comma. The words one to twelve, a, an, half, quarter, dozen and
 * what they make together ("half a", "one and a half") are amounts too. None: a range that goes
 * down, a fraction over nothing, two amounts run together ("½½", "1/2/3"), more than 100,000. */
size_t amount_read(span s, amount_range *out);

/* True when `s` begins like a figure (a digit, a fraction, a sign or mark before a digit): where
 * amount_read finds none there, the author meant one. */
bool amount_is_meant(span s);

/* The bytes of "about", "approx.", "~" and the like at the front of `s`, with the spaces after
 * them; 0: none. An amount may follow. */
size_t amount_about(span s);

/* Adds `value` as kitchens print it: whole numbers plain, and the usual fractions (1/8, 1/4, 1/3,
 * 1/2, 2/3, 3/4) as "1 1/2" when `value` is within `tolerance` of one, else up to two decimals.
 * Read back, it is within `tolerance`, or half a hundredth, of `value`. */
void amount_add(text *t, double value, double tolerance);

#endif
