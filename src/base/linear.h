/* Amounts that come as near as can be to several goals at once, within hard limits.
 *
 *     variables   least <= x <= most, and, where a step is stated, x a whole multiple of it
 *     limits      least <= sum of times x <= most         must hold
 *     goals       the same, but may be missed: what is least is
 *
 *                     sum over goals of  weight x (how far the sum lies outside) / scale
 *
 * which is goal programming with weighted absolute deviations (A. Charnes and W. W. Cooper,
 * Management Models and Industrial Applications of Linear Programming, 1961). `scale` is what
 * counts as one, so that grams of water and kilocalories can be added up.
 *
 * Where the limits and bounds can't all hold, the answer says which must give, and by how much:
 * first the bounds of the variables alone, by so little that the sum is least ("there is not
 * enough butter"); where that does not help, the limits alone; then all of them.
 *
 * Solved by lp_solve 5.5 (LGPL), branch and bound over the simplex method. It has no state between
 * calls, but its LUSOL keeps loop counters in static variables (LU1MXR), so calls take turns:
 * workers may call at once and get the same answer, each in tens of microseconds for the handful
 * of variables of a swap. */
#ifndef BASE_LINEAR_H
#define BASE_LINEAR_H

#include "base/arena.h"

typedef struct {
    double least, most;               /* -INFINITY and INFINITY: none; least <= most */
    double step;                      /* 0: any amount */
    bool least_is_firm, most_is_firm; /* never the one to give */
} linear_variable;

typedef struct {
    const double *times; /* borrowed: one a variable */
    double least, most;  /* one of them finite; equal for one target */
    double weight;       /* of a goal: 0 or more. Not asked of a limit */
    double scale;        /* above 0 */
} linear_row;

typedef struct {
    const linear_variable *variables;
    size_t variable_count;
    const linear_row *limits;
    size_t limit_count;
    const linear_row *goals;
    size_t goal_count;
    double gap; /* an answer whose cost is within this share of the least is good enough; 0: the
                   least itself. Only whole steps take the search that this cuts short */
} linear_problem;

typedef enum {
    LINEAR_MET,        /* limits and bounds hold, goals as near as can be */
    LINEAR_IMPOSSIBLE, /* limits and bounds can't all hold; `values` are of the nearest that can */
    LINEAR_GAVE_UP     /* the search grew too long or too inexact: no values */
} linear_outcome;

typedef struct {
    linear_outcome outcome;
    double *values;      /* one a variable */
    double *goals_off;   /* one a goal: how far its sum lies above most (+) or below least (-) */
    double *bounds_give; /* one a variable: how far above its most (+) or below its least (-) it
                            must go; 0 for those that do not stand in the way */
    double *limits_give; /* one a limit, likewise */
    double cost;         /* what is least: see above */
} linear_answer;

/* Solves `of`. The answer's arrays are in `a`, zeroed where nothing is to say. Same problem, same
 * answer, bit for bit. Never fails for want of memory: see base/memory.h. */
linear_answer linear_solve(arena *a, const linear_problem *of);

#endif
