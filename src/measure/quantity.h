/* The front of an ingredient line: an amount, a unit, and the measures joined to them. */
#ifndef MEASURE_QUANTITY_H
#define MEASURE_QUANTITY_H

#include "measure/reading.h"

/* Reads AMOUNT UNIT, and a second measure behind "+", "to" or "/", off the front of the rest into
 * `r->line`. Nothing is set when no amount stands there. False, with a problem, when there is one
 * that can't be read. */
bool quantity_read(reading *r);

/* The first AMOUNT UNIT that begins a word of `words`, or empty. */
span quantity_stray(span words);

#endif
