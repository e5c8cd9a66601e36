/* Liquid to add or hold back after a swap, so that the batter pours, drops or rolls as before.
 *
 * What decides is free water in the bowl. Before the swap and after it (dashed), with L grams of a
 * liquid of which 1 g brings w of water and d of dry:
 *
 *     free >= 0, a batter:      free' + w L = free + r (dry' + d L - dry),  r = free / dry
 *                               free water a gram of dry stays what it was; in a wet batch (a
 *                               custard, a cheese cake) what is dry is carried rather than wetted,
 *                               so r is FREE_PER_DRY_MOST at the most
 *     free < 0, a dry dough:    free' + w L = free x taken' / taken
 *                               its dry things could take up more water than there is; what they
 *                               lack stays the same share of what they could take up
 */
#ifndef SWAP_LIQUID_H
#define SWAP_LIQUID_H

#include "swap/exchange.h"

/* Most free water that a gram of dry asks for: 1.5, as in a batter that pours (an estimate). */
#define FREE_PER_DRY_MOST 1.5

/* Share of the weight that the water of a batch may rise or fall by; past it no liquid change is
 * said to rescue the swap. Water that only makes up for what went (dried egg for egg) does not
 * count. 0.15, an estimate (common practice, no source). */
#define LIQUID_RESCUES_MOST 0.15

/* Share of the weight that a line may fall short of what should be held back before that is said
 * to be past rescue too: 0.05, an estimate. */
#define LIQUID_SHORT_MOST 0.05

typedef struct {
    range grams;     /* to add (+) or hold back (-); low <= typical <= high */
    double needed_g; /* what it would take, whether or not there is as much to hold back */
    size_t line;     /* of the recipe; SIZE_MAX: plain water is added */
    bool rescues;    /* false: no amount of liquid makes up for the swap */
} liquid_change;

/* r above: `free_g` (0 or more) of free water to `dry_g`, 0 where nothing is dry. */
double liquid_free_per_dry(double free_g, double dry_g);

/* True when liquids (milks, purées, yogurts, eggs) go and one comes: then only their water counts,
 * since what a milk carries asks for no water beside its own. */
bool exchange_of_liquids(const exchange *made);

/* The change that keeps free water as above. It is made on a line that the recipe has: the
 * heaviest of its drinkable liquids, else of its purées and yogurts, and where neither is there,
 * plain water is added, or egg held back; what mostly wets a dried thing again is plain water. No
 * more is held back than the line holds. The range
 * carries the published ranges of what goes and comes, and that of UPTAKE_IN_BATTER. No change,
 * which rescues, where an uptake is not known. */
liquid_change liquid_rebalanced(const exchange *made);

/* The line, or SIZE_MAX, that a change of `grams` (+ or -) would be made on. */
size_t liquid_line(const recipe_facts *about, unsigned long long replaced, double grams);

/* What is added or held back: the line's ingredient, or plain water for SIZE_MAX. */
const ingredient *liquid_at(const recipe_facts *about, size_t line);

#endif
