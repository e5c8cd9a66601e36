/* The conditions of each nutrition claim, as a table: what is measured, by what, and the limit. */
#ifndef NUTRITION_CLAIM_RULES_H
#define NUTRITION_CLAIM_RULES_H

#include "pantry/allergen.h"
#include "pantry/nutrients.h"

/* What an amount is measured by. */
typedef enum {
    PER_100_G,
    PER_100_KCAL, /* of EU energy */
    SHARE_OF_EU_ENERGY,
    SHARE_OF_US_ENERGY,
    PER_REFERENCE_AMOUNT,
    PER_SMALL_REFERENCE_AMOUNT, /* per 50 g where the reference amount is 30 g or less */
    PER_PORTION,
    DAILY_VALUE_PER_REFERENCE_AMOUNT, /* protein corrected for its quality */
    TRANS_FAT_TOO,                    /* the rule adds trans fat, which the pantry does not know */
    NOTHING_SWEETENS,                 /* see nutrition/sweetening.h */
    BASIS_COUNT
} basis;

typedef enum { AT_LEAST, AT_MOST, LESS_THAN } comparison;

typedef struct {
    nutrient which;
    basis per;
    comparison is;
    double limit; /* % for shares and daily values, else in the nutrient's unit */
} condition;

enum { CONDITIONS_MOST = 3 };

typedef struct {
    const char *name, *rule;
    size_t count;
    condition conditions[CONDITIONS_MOST];
    bool any; /* one of the conditions is enough; else all must hold */
} claim_rule;

/* The claims that `law` knows, `*count` of them. The UK kept the EU's. */
const claim_rule *claim_rules_of(label_law law, size_t *count);

#endif
