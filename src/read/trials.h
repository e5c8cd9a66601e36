/* Reads the log of trial bakes. */
#ifndef READ_TRIALS_H
#define READ_TRIALS_H

#include "swap/match.h"

/* Adds every trial of `bytes` to `into`, in `a`. */
void trials_read(arena *a, const char *file, span bytes, const pantry *shelf, trials *into,
                 problems *found);

#endif
