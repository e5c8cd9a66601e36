/* Claims that the figures bear out, and those they do not, with the rule and the reason. */
#ifndef NUTRITION_CLAIMS_H
#define NUTRITION_CLAIMS_H

#include "nutrition/macros.h"
#include "nutrition/quality.h"

typedef struct {
    const char *claim; /* "high protein" */
    const char *rule;  /* "Regulation (EC) 1924/2006, Annex" */
    bool holds;
    const char *because; /* "24 % of the energy is from protein; the rule asks for 20 %" */
} claim;

typedef struct {
    claim *items;
    size_t count, capacity;
} claims;

/* Every claim we can test under `law`, held or not. US protein claims use the figure corrected
 * by PDCAAS per reference amount (21 CFR 101.54, 101.9(c)(7)) and are left untested, with the
 * reason, where the quality is unknown; EU ones the share of energy. `kind` gives the US
 * reference amount (nutrition/reference_amount.h). */
claims claims_of(arena *a, const recipe *of, const recipe_macros *figures,
                 const protein_quality *quality, label_law law);

/* US reference amount customarily consumed, g, for a recipe kind (21 CFR 101.12, 2016); 0 when
 * the table has none. */
double reference_amount_g(const char *kind);

#endif
