/* Which recipes something holds of, as the shards of the search index write it: recipes are
 * numbers, in the order of their slugs.
 *
 *     few     [3,4,1]         the first, then the step to each next one: 3, 7, 8
 *     many    "iAE"           a bit for each recipe, the lowest of a digit first, six to a digit of
 *                             the base64 alphabet (RFC 4648), digits that are zero at the end left
 * off
 *
 * whichever is shorter. */
#ifndef SITE_POSTING_H
#define SITE_POSTING_H

#include "base/text.h"

#include <stdint.h>

/* Adds the `count` growing numbers `ids`. */
void posting_add(text *t, const uint32_t ids[], size_t count);

/* Adds `value` in `width` digits of the base64 alphabet, the lowest first: a column of the index
 * has one such number a recipe. What does not fit is cut to the largest that does. */
void posting_add_digits(text *t, uint64_t value, unsigned width);

/* Digits that the numbers up to `most` take; at least 1. */
unsigned posting_digits_for(uint64_t most);

#endif
