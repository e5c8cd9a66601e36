/* Combined swaps: two ingredients by one, and one by two.
 *
 * A nut meal is flour and fat at once; peanut butter is peanut flour and oil. What takes the place
 * of the other must keep what the rule says (swap/rule.h, KEPT_LIST): of each kept thing
 *
 *     sum of what comes = sum of what goes,  both linear in the amounts
 *
 * holds as nearly as can be, and never misses by more than a baker notices. Where two go, two
 * things at the most are kept, which leaves open how much goes, and as much goes as may: of flours,
 * meals and purées a part, so that what is left still binds and moistens. Where one goes, all of it
 * does. Two equations where two things can be kept exactly, else a small goal program
 * (base/linear.h), which also tells what stands in the way. The amounts are then moved to spoons,
 * or to grams that scales show, where that still keeps what is to be kept. */
#ifndef SWAP_COMBINED_H
#define SWAP_COMBINED_H

#include "base/message.h"
#include "swap/amounts.h"

typedef struct {
    unsigned keeps; /* bit 1u << kept_thing */
    part goes[2];   /* all that there is of each */
    double most[2]; /* share of it that may go; 0: as usual */
    const ingredient *to[2];
    size_t goes_count, comes_count; /* 1 and 2, or 2 and 1 */
    double batch_g;                 /* what a difference is noticed in */
    bool exactly;                   /* amounts as they come out, not moved to spoons */
} combination;

typedef struct {
    bool possible;
    double goes_g[2];
    range comes_g[2];
    const message *in_the_way; /* a sentence on why there are no amounts; null when possible */
} combined_amounts;

/* Share of the batch from which on a difference is noticed, and may not be: of setting protein
 * 0.005, of the others 0.03; estimates (common practice, no source). */
double kept_noticed(kept_thing which);

/* Works the amounts out. The ranges are those of the water uptakes where free water is kept for two
 * that go, else the figure itself. In `a`. */
combined_amounts combined_amounts_of(arena *a, const combination *of);

#endif
