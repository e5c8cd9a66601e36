/* How long a step takes, as written: "5 minutes", "55 to 58 minutes", "an hour and a half". */
#ifndef MEASURE_STEP_TIME_H
#define MEASURE_STEP_TIME_H

#include "base/span.h"

typedef struct {
    size_t at, length; /* its bytes in the words */
    double seconds;    /* of a range the shorter: that is when to look */
} step_time;

/* The first time in `words` that begins at byte `from` or later and that somebody waits for, up to
 * a day. Passed over: what comes again ("every 5 minutes"), what keeps ("keeps 2 hours"), what is
 * at most ("within an hour", "up to 2 hours") or counts from the end ("the last 5 minutes"), what
 * compares ("2 minutes too long") and days. False when there is none; then `*out` is untouched. */
bool step_time_next(span words, size_t from, step_time *out);

#endif
