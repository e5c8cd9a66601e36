/* What a food is made of, per 100 g or for any other weight: a vector of amounts, each known or
 * not. An unknown amount never counts as zero in silence: sums carry what they lack. */
#ifndef PANTRY_NUTRIENTS_H
#define PANTRY_NUTRIENTS_H

#include <stdbool.h>

/* One list, expanded to the enum here and to keys, units and words elsewhere:
 * NUTRIENT(constant, key in pantry files, unit, name in --json) */
#define NUTRIENT_LIST(NUTRIENT)                                                                    \
    NUTRIENT(WATER, "water", "g", "water_g")                                                       \
    NUTRIENT(ENERGY, "energy", "kcal", "energy_kcal") /* as the source states it */                \
    NUTRIENT(PROTEIN, "protein", "g", "protein_g")                                                 \
    NUTRIENT(FAT, "fat", "g", "fat_g")                                                             \
    NUTRIENT(SATURATES, "saturates", "g", "saturates_g")                                           \
    NUTRIENT(CARBOHYDRATE, "carbohydrate", "g", "carbohydrate_g") /* total, fibre included */      \
    NUTRIENT(FIBRE, "fibre", "g", "fibre_g")                                                       \
    NUTRIENT(SUGARS, "sugars", "g", "sugars_g")                                                    \
    NUTRIENT(ADDED_SUGARS, "added-sugars", "g", "added_sugars_g")                                  \
    NUTRIENT(POLYOLS, "polyols", "g", "polyols_g") /* part of carbohydrate */                      \
    NUTRIENT(ALCOHOL, "alcohol", "g", "alcohol_g")                                                 \
    NUTRIENT(SODIUM, "sodium", "mg", "sodium_mg")                                                  \
    NUTRIENT(CALCIUM, "calcium", "mg", "calcium_mg")                                               \
    NUTRIENT(IRON, "iron", "mg", "iron_mg")                                                        \
    NUTRIENT(POTASSIUM, "potassium", "mg", "potassium_mg")                                         \
    NUTRIENT(CHOLESTEROL, "cholesterol", "mg", "cholesterol_mg")                                   \
    NUTRIENT(VITAMIN_D, "vitamin-d", "\u00b5g", "vitamin_d_ug")                                    \
    /* worked out when the pantry is read (nutrition/energy.h): carbohydrate without fibre, and */ \
    /* energy by the general factors and by the EU's */                                            \
    NUTRIENT(AVAILABLE_CARBOHYDRATE, "", "g", "available_carbohydrate_g")                          \
    NUTRIENT(ENERGY_ATWATER, "", "kcal", "energy_atwater_kcal")                                    \
    NUTRIENT(ENERGY_EU, "", "kcal", "energy_eu_kcal")                                              \
    NUTRIENT(ENERGY_EU_KJ, "", "kJ", "energy_eu_kj")

typedef enum {
#define NUTRIENT(constant, key, unit, json) NUTRIENT_##constant,
    NUTRIENT_LIST(NUTRIENT)
#undef NUTRIENT
        NUTRIENT_COUNT
} nutrient;

typedef struct {
    double of[NUTRIENT_COUNT]; /* in the list's units; 0 where unknown */
    unsigned known;            /* bit 1u << nutrient: the amount is known */
} nutrients;

static inline bool nutrient_known(const nutrients *n, nutrient which) {
    return n->known >> which & 1u;
}

static inline void nutrient_set(nutrients *n, nutrient which, double amount) {
    n->of[which] = amount;
    n->known |= 1u << which;
}

/* "protein", "g", "protein_g" for the one asked for. */
const char *nutrient_key(nutrient which);
const char *nutrient_unit(nutrient which);
const char *nutrient_json(nutrient which);

#endif
