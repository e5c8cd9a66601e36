/* One swap at three points beside the batch as written: at equal weight with nothing else
 * changed, at the amounts that the rule, the author or a trial states, and at the best amounts. */
#ifndef SWAP_BALANCE_POINTS_H
#define SWAP_BALANCE_POINTS_H

#include "swap/note.h"

typedef enum {
    POINT_EQUAL_WEIGHT,
    POINT_AS_RULED, /* only where an amount is promised */
    POINT_BEST,     /* only where every uptake is known and one comes: swap/balance_best.h */
    POINT_COUNT
} balance_point;

typedef struct {
    bool there;                     /* false: this point has no amounts, and the rest is not set */
    range to_g;                     /* of the replacement */
    double also_to_g;               /* of the second that comes, where two do */
    range liquid_g;                 /* added (+) or held back (-) */
    size_t liquid_line;             /* of the recipe; SIZE_MAX: plain water, or `liquid_apart` */
    const ingredient *liquid_apart; /* as swap_note has it */
    balance after;
    /* More (+) or less free water than as written, in the bowl and in the bake. Far narrower than
     * the ranges of the two apart, since what stays in the batch is uncertain in both alike. */
    range bowl_change_g, bake_change_g;
} balance_at;

typedef struct {
    double from_g;     /* what goes, in all */
    bool heated;       /* false: never baked, so the bake and what sets there say nothing */
    bool uptake_known; /* false: the two waters say nothing */
    balance before;    /* as written */
    balance_at at[POINT_COUNT];
} balance_comparison;

/* "equal_weight", "as_ruled", "best". */
const char *balance_point_key(balance_point which);

/* Compares what `note` (of the recipe that `about` is of) swaps. Figures are of the part of the
 * recipe in which the swap is judged: what is mixed, or what stands beside it. Amounts are those
 * of the whole recipe. */
balance_comparison balance_compare(const recipe_facts *about, const swap_note *note);

#endif
