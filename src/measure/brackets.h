/* What stands in brackets in an ingredient line: the author's own weight, "optional", or a note. */
#ifndef MEASURE_BRACKETS_H
#define MEASURE_BRACKETS_H

#include "base/problems.h"
#include "measure/amount.h"

typedef struct {
    bool optional;
    bool has_weight;
    bool of_each;          /* the weight is said to be of one: "(400 g each)" */
    amount_range weight_g; /* set when has_weight */
    size_t weight_at;      /* where its bracket opens, in bytes */
    const char *note;      /* what else was in brackets, joined by commas; null when nothing */
} brackets;

/* Takes the brackets out of `line` (`length` bytes, changed in place): blanks are left, so that
 * what stays keeps its offset. `at` is the place of its first byte. False with a problem when a
 * bracket is not closed or not opened, or a weight in one can't be read. */
bool brackets_take(arena *a, char *line, size_t length, place at, brackets *out, problems *found);

/* `at` moved on by the first `offset` bytes of `line`: a place inside it. */
place place_inside(place at, const char *line, size_t offset);

#endif
