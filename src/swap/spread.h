/* How uncertain a worked-out figure is: each figure it rests on is moved to its low and to its
 * high, one at a time, and the changes are added up by their squares on the side to which they
 * lead (JCGM 100:2008, 5.1.2, evaluated numerically). */
#ifndef SWAP_SPREAD_H
#define SWAP_SPREAD_H

#include "pantry/ingredient.h"

#include <math.h>

typedef struct {
    double typical, below_squared, above_squared;
} spread;

/* Counts in what the figure would be with one of its grounds moved. */
static inline void spread_add(spread *s, double moved) {
    double change = moved - s->typical;
    if (change < 0)
        s->below_squared += change * change;
    else
        s->above_squared += change * change;
}

static inline range spread_range(const spread *s) {
    return (range){s->typical - sqrt(s->below_squared), s->typical,
                   s->typical + sqrt(s->above_squared)};
}

/* A figure worked out from uncertain ones, `at` some values of them; `on` is what else it needs. */
typedef double spread_figure(const void *on, const double at[]);

enum { SPREAD_MOST = 8 };

/* The range of `figure` over `count` (SPREAD_MOST at most) uncertain figures. */
static inline range spread_over(spread_figure *figure, const void *on, const range uncertain[],
                                size_t count) {
    double at[SPREAD_MOST];
    for (size_t i = 0; i < count; i++)
        at[i] = uncertain[i].typical;
    spread s = {.typical = figure(on, at)};
    for (size_t i = 0; i < count; i++) {
        at[i] = uncertain[i].low;
        spread_add(&s, figure(on, at));
        at[i] = uncertain[i].high;
        spread_add(&s, figure(on, at));
        at[i] = uncertain[i].typical;
    }
    return spread_range(&s);
}

#endif
