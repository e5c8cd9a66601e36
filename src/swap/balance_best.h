/* The amounts that come closest to the batch as written: how much of the replacement, and how
 * much liquid to add or hold back.
 *
 * With x g of the replacement and L g of liquid every quantity of the batch is linear in x and L:
 *
 *     minimise   sum over quantities of  weight x ((after - wanted) / step)^2
 *     over       x, L within bounds
 *
 * Steps and weights: swap/balance_quantities.h. `wanted` of the dry solids, setting protein, fat
 * and sweetness is what the batch as written has. Of free water, in the bowl and in the bake, it
 * is as much a gram of dry as before; of a dry dough, as large a share of what could be taken up
 * (the two cases of swap/liquid.h). All the water of the batch counts by itself too, in steps of
 * free water: the less a second line must change the better. What is never baked is not judged by
 * the bake. Two unknowns, bounded: the minimum lies inside, where the two normal equations hold, or
 * on one of the four edges, where one does. */
#ifndef SWAP_BALANCE_BEST_H
#define SWAP_BALANCE_BEST_H

#include "swap/liquid.h"

/* The replacement may be from an eighth (dried egg white for the liquid one) to eight times the
 * weight of what goes; liquid within LIQUID_RESCUES_MOST of the batch, besides what only gives back
 * the water that left or makes room for what comes; and never more than half of a line held back,
 * since a batter without its milk is another batter, unless a liquid comes. Where a liquid comes
 * for a liquid, its own amount is all there is to find. Estimates. */
#define BEST_LEAST          0.125
#define BEST_MOST           8
#define BEST_HELD_BACK_MOST 0.5

/* What a step of the batch's water counts beside the quantities (an estimate). */
#define BEST_WATER_WEIGHT 0.1

typedef struct {
    range comes_g;  /* of the replacement */
    range liquid_g; /* to add (+) or hold back (-) */
    size_t line;    /* of the recipe; SIZE_MAX: plain water is added */
} best_amounts;

/* Finds them for an exchange whose `comes.grams` is ignored: equal weight is what the bounds go by.
 * The ranges carry the published ranges of what goes and comes, cold and heated, and that of
 * UPTAKE_IN_BATTER. False (`*out` untouched) where an uptake is not known, or nothing goes. */
bool balance_best(const exchange *made, best_amounts *out);

#endif
