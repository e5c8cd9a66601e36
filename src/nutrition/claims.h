/* Claims that the figures bear out, and those they do not, with the rule and the reason.
 *
 * Home bakes are not sold by these rules; they say which words a dietitian would let stand.
 * Amounts are compared unrounded. A lower bound (an ingredient lacks the figure) can bear out "at
 * least" and refute "at most", never the other way round; what it leaves open is not tested. */
#ifndef NUTRITION_CLAIMS_H
#define NUTRITION_CLAIMS_H

#include "base/message.h"
#include "nutrition/macros.h"
#include "nutrition/quality.h"
#include "nutrition/reference_amount.h"

/* How many claims each law has; the UK kept those of the EU. */
enum { CLAIMS_EU = 13, CLAIMS_US = 12 };

/* What claim number `which` of `law` is called: "high protein". */
const char *claim_name(label_law law, size_t which);

typedef struct {
    const char *claim; /* "high protein" */
    const char *rule;  /* "Regulation (EC) 1924/2006, Annex" */
    bool holds;
    bool tested; /* false: `because` says what is not known; `holds` is false then */
    const message
        *because; /* 24 % of the energy is from protein; the rule asks for at least 20 % */
} claim;

typedef struct {
    claim *items;
    size_t count, capacity;
} claims;

/* Every claim we know under `law`, held, not held or not tested. US protein claims use the figure
 * corrected by PDCAAS per reference amount (21 CFR 101.54, 101.9(c)(7)) and are left untested,
 * with the reason, where the quality is unknown; EU ones the share of energy. `of`'s kind gives
 * the US reference amount (nutrition/reference_amount.h). No claim is tested while a line has no
 * weight. */
claims claims_of(arena *a, const recipe *of, const recipe_macros *figures,
                 const protein_quality *quality, label_law law);

/* The same outcomes without the reasons, which are not to be said: for the many recipes that swaps
 * make. */
claims claims_brief_of(arena *a, const recipe *of, const recipe_macros *figures,
                       const protein_quality *quality, label_law law);

/* Names of the claims that hold in `now` and not in `then` (both under one law): what a swap
 * gains; with the arguments changed about, what it loses. */
word_list claims_gained(arena *a, const claims *then, const claims *now);

#endif
