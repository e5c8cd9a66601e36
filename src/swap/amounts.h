/* How much of the new ingredient stands in for the old.
 *
 * Every rule of amounts but one keeps a total: the weight, the cups, the water taken up, the
 * protein or the sweetness of what goes is what the new one must bring, so
 *
 *     new g = ratio x sum(old g x measure a gram of the old) / measure a gram of the new
 *
 * The measures are ranges, and their uncertainties are independent of each other; as in any
 * quotient, relative uncertainties add up by their squares (JCGM 100:2008, 5.1.6), here on a
 * logarithmic scale, so that a swap and its reverse are each other's reciprocal, range and all. */
#ifndef SWAP_AMOUNTS_H
#define SWAP_AMOUNTS_H

#include "swap/rule.h"

/* Some grams of an ingredient. */
typedef struct {
    const ingredient *what;
    double grams;
} part;

/* Sets `*grams` of `to` that stand in for the `count` (1 or more) parts of `old`. False when the
 * pantry lacks the figure that `by` goes by, for one of them (`*grams` untouched), and always for
 * AMOUNT_MATCH_BALANCE. A ratio of 0 counts as 1. */
bool amount_in_place(amount_rule by, double ratio, const part old[], size_t count,
                     const ingredient *to, range *grams);

/* Most of a line of flour, meal or purée that AMOUNT_MATCH_BALANCE replaces: a part, so that what
 * is left still binds and moistens. An estimate (common practice, no source). Of other things the
 * whole line may go. */
#define BALANCED_PART_MOST 0.5

typedef struct {
    double goes_g[2]; /* of each of the two replaced */
    range comes_g;    /* of the new one */
} balanced_amounts;

/* Replaces a part of each of two ingredients, one drier and one wetter than `to`, so that
 *
 *     weight:      x + y = z                          x, y of the old and z of the new, in g
 *     free water:  fx x + fy y = fz z                 f: water less cold uptake in batter, g/g
 *
 * hold; of the solutions, the one that replaces most within what the two lines may lose. False
 * (`*out` untouched) when there is none: `to` is not between the two, a line is empty or an uptake
 * is not known. */
bool amounts_balanced(const part old[2], const ingredient *to, balanced_amounts *out);

#endif
