#include "nutrition/claim_rules.h"

#include "base/list.h"
#include "nutrition/claims.h"

/* A condition; and claims of one, of some that must all hold, of some of which one must. */
#define IF(which_, per_, is_, limit_)                                                              \
    { NUTRIENT_##which_, per_, is_, limit_ }
#define ONE(name_, rule_, ...)                                                                     \
    {                                                                                              \
        .name = name_, .rule = rule_, .count = 1, .conditions = { __VA_ARGS__ }                    \
    }
#define BOTH(name_, rule_, ...)                                                                    \
    {                                                                                              \
        .name = name_, .rule = rule_, .count = 2, .conditions = { __VA_ARGS__ }                    \
    }
#define ALL_THREE(name_, rule_, ...)                                                               \
    {                                                                                              \
        .name = name_, .rule = rule_, .count = 3, .conditions = { __VA_ARGS__ }                    \
    }
#define EITHER(name_, rule_, ...)                                                                  \
    { .name = name_, .rule = rule_, .count = 2, .conditions = {__VA_ARGS__}, .any = true }

#define EU_ANNEX "Regulation (EC) 1924/2006, Annex"

/* Protein and fibre, sugars to 5 g, fat and saturates: seen in a university's and dietitians'
 * guides to food labelling; sugars-free, salt: from memory. Sodium in mg: 120 is 0.3 g salt. */
static const claim_rule eu_rules[] = {
    ONE("source of protein", EU_ANNEX, IF(PROTEIN, SHARE_OF_EU_ENERGY, AT_LEAST, 12)),
    ONE("high protein", EU_ANNEX, IF(PROTEIN, SHARE_OF_EU_ENERGY, AT_LEAST, 20)),
    EITHER("source of fibre", EU_ANNEX, IF(FIBRE, PER_100_G, AT_LEAST, 3),
           IF(FIBRE, PER_100_KCAL, AT_LEAST, 1.5)),
    EITHER("high fibre", EU_ANNEX, IF(FIBRE, PER_100_G, AT_LEAST, 6),
           IF(FIBRE, PER_100_KCAL, AT_LEAST, 3)),
    ONE("low fat", EU_ANNEX, IF(FAT, PER_100_G, AT_MOST, 3)),
    ONE("fat-free", EU_ANNEX, IF(FAT, PER_100_G, AT_MOST, 0.5)),
    ALL_THREE("low saturated fat", EU_ANNEX, IF(SATURATES, PER_100_G, AT_MOST, 1.5),
              IF(SATURATES, SHARE_OF_EU_ENERGY, AT_MOST, 10), {.per = TRANS_FAT_TOO}),
    ONE("low sugars", EU_ANNEX, IF(SUGARS, PER_100_G, AT_MOST, 5)),
    ONE("sugars-free", EU_ANNEX, IF(SUGARS, PER_100_G, AT_MOST, 0.5)),
    ONE("no added sugars", EU_ANNEX, {.per = NOTHING_SWEETENS}),
    ONE("low salt", EU_ANNEX, IF(SODIUM, PER_100_G, AT_MOST, 120)),
    ONE("very low salt", EU_ANNEX, IF(SODIUM, PER_100_G, AT_MOST, 40)),
    ONE("salt-free", EU_ANNEX, IF(SODIUM, PER_100_G, AT_MOST, 5)),
};

#define US_PROTEIN "21 CFR 101.54, 101.9(c)(7)"
#define PER_DAILY  DAILY_VALUE_PER_REFERENCE_AMOUNT

/* From memory. A good source has 10 to 19 % of the daily value, so one with more is not "good
 * source" but "high". A fibre claim on what is not low in fat must state the fat beside it. */
static const claim_rule us_rules[] = {
    BOTH("good source of protein", US_PROTEIN, IF(PROTEIN, PER_DAILY, AT_LEAST, 10),
         IF(PROTEIN, PER_DAILY, LESS_THAN, 20)),
    ONE("high protein", US_PROTEIN, IF(PROTEIN, PER_DAILY, AT_LEAST, 20)),
    BOTH("good source of fiber", "21 CFR 101.54", IF(FIBRE, PER_DAILY, AT_LEAST, 10),
         IF(FIBRE, PER_DAILY, LESS_THAN, 20)),
    ONE("high fiber", "21 CFR 101.54", IF(FIBRE, PER_DAILY, AT_LEAST, 20)),
    ONE("low fat", "21 CFR 101.62(b)", IF(FAT, PER_SMALL_REFERENCE_AMOUNT, AT_MOST, 3)),
    BOTH("fat free", "21 CFR 101.62(b)", IF(FAT, PER_REFERENCE_AMOUNT, LESS_THAN, 0.5),
         IF(FAT, PER_PORTION, LESS_THAN, 0.5)),
    BOTH("low saturated fat", "21 CFR 101.62(c)", IF(SATURATES, PER_REFERENCE_AMOUNT, AT_MOST, 1),
         IF(SATURATES, SHARE_OF_US_ENERGY, AT_MOST, 15)),
    BOTH("sugar free", "21 CFR 101.60(c)", IF(SUGARS, PER_REFERENCE_AMOUNT, LESS_THAN, 0.5),
         IF(SUGARS, PER_PORTION, LESS_THAN, 0.5)),
    ONE("no added sugars", "21 CFR 101.60(c)", {.per = NOTHING_SWEETENS}),
    ONE("low sodium", "21 CFR 101.61(b)", IF(SODIUM, PER_SMALL_REFERENCE_AMOUNT, AT_MOST, 140)),
    ONE("very low sodium", "21 CFR 101.61(b)", IF(SODIUM, PER_SMALL_REFERENCE_AMOUNT, AT_MOST, 35)),
    BOTH("sodium free", "21 CFR 101.61(b)", IF(SODIUM, PER_REFERENCE_AMOUNT, LESS_THAN, 5),
         IF(SODIUM, PER_PORTION, LESS_THAN, 5)),
};

_Static_assert(COUNT(eu_rules) == CLAIMS_EU && COUNT(us_rules) == CLAIMS_US,
               "claims.h says how many there are");

const claim_rule *claim_rules_of(label_law law, size_t *count) {
    *count = law == LAW_US ? COUNT(us_rules) : COUNT(eu_rules);
    return law == LAW_US ? us_rules : eu_rules;
}

const char *claim_name(label_law law, size_t which) {
    return law == LAW_US ? us_rules[which].name : eu_rules[which].name;
}
