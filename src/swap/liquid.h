/* Liquid to add or hold back after a swap, so that the batter pours, drops or rolls as before.
 *
 * What decides is free water in the bowl a gram of dry. Kept as it was by L grams of a liquid of
 * which 1 g brings w of water and d of dry:
 *
 *     free' + w L = free + q (dry' + d L - dry)      so      L = (free + q (dry' - dry) - free')
 *                                                                / (w - q d)
 *
 * with q = free / dry of the batch as written, free' and dry' those of the swapped one. Where the
 * dry things could take up more than there is (free below 0), q is 0: what they lack stays as it
 * was. */
#ifndef SWAP_LIQUID_H
#define SWAP_LIQUID_H

#include "swap/amounts.h"
#include "swap/balance.h"
#include "swap/facts.h"

/* Share of the batch weight past which a liquid change is said to rescue nothing: 0.15, an
 * estimate (common practice, no source). */
#define LIQUID_RESCUES_MOST 0.15

/* Share of the batch weight that a line may fall short of what should be held back before that
 * is said to be past rescue too: 0.02, an estimate. */
#define LIQUID_SHORT_MOST 0.02

typedef struct {
    range grams;     /* to add (+) or hold back (-); low <= typical <= high */
    double needed_g; /* what it would take, whether or not there is as much to hold back */
    size_t line;     /* of the recipe; SIZE_MAX: plain water is added */
    bool rescues;    /* false: no amount of liquid makes up for the swap */
} liquid_change;

/* What takes place: parts go, one comes. */
typedef struct {
    const recipe_facts *about;   /* of the part of the recipe in which it does */
    unsigned long long replaced; /* bits of the lines that go: no liquid is taken from them */
    const balance *before;       /* of that part as written */
    part goes[2];
    size_t goes_count;
    part comes;
} exchange;

/* True when every uptake that a liquid change rests on is known. */
bool exchange_known(const exchange *made);

/* The change that keeps free water a gram of dry. It is made on a line that the recipe has: the
 * heaviest of its drinkable liquids, else of its purées and yogurts, and where neither is there,
 * plain water is added, or egg held back. No more is held back than the line holds. The range
 * carries the published ranges of what goes and comes, and that of UPTAKE_IN_BATTER. No change,
 * which rescues, where an uptake is not known. */
liquid_change liquid_rebalanced(const exchange *made);

/* The line, or SIZE_MAX, that a change of `grams` (+ or -) would be made on. */
size_t liquid_line(const recipe_facts *about, unsigned long long replaced, double grams);

/* What is added or held back: the line's ingredient, or plain water for SIZE_MAX. */
const ingredient *liquid_at(const recipe_facts *about, size_t line);

#endif
