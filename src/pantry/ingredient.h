/* An ingredient as the pantry keeps it: composition per 100 g, household weights, what it does
 * with water and heat, allergens, and where each group of figures is from.
 *
 * Filled once when a pantry is read, constant after; shared by all workers. All pointers live in
 * the pantry's arena. */
#ifndef PANTRY_INGREDIENT_H
#define PANTRY_INGREDIENT_H

#include "base/digest.h"
#include "base/problems.h"
#include "pantry/allergen.h"
#include "pantry/nutrients.h"

/* A figure with its range; low <= typical <= high. */
typedef struct {
    double low, typical, high;
} range;

/* FAMILY(constant, word) */
#define FAMILY_LIST(FAMILY)                                                                        \
    FAMILY(PROTEIN_POWDER, "protein powder")                                                       \
    FAMILY(FLOUR, "flour")                                                                         \
    FAMILY(MEAL, "meal")                                                                           \
    FAMILY(NUT_BUTTER, "nut butter")                                                               \
    FAMILY(NUT, "nut") /* nuts and seeds, whole or chopped */                                      \
    FAMILY(GRAIN, "grain")                                                                         \
    FAMILY(LEGUME, "legume")                                                                       \
    FAMILY(EGG, "egg")                                                                             \
    FAMILY(DAIRY, "dairy")                                                                         \
    FAMILY(FRUIT_PUREE, "fruit pur\u00e9e")                                                        \
    FAMILY(FRUIT, "fruit")                                                                         \
    FAMILY(VEGETABLE, "vegetable")                                                                 \
    FAMILY(SWEETENER, "sweetener")                                                                 \
    FAMILY(FAT, "fat")                                                                             \
    FAMILY(LEAVENER, "leavener")                                                                   \
    FAMILY(STARCH, "starch")                                                                       \
    FAMILY(GUM, "gum")                                                                             \
    FAMILY(COCOA, "cocoa")                                                                         \
    FAMILY(LIQUID, "liquid")                                                                       \
    FAMILY(FLAVOUR, "flavour")                                                                     \
    FAMILY(SALT, "salt")

typedef enum {
#define FAMILY(constant, word) FAMILY_##constant,
    FAMILY_LIST(FAMILY)
#undef FAMILY
        FAMILY_COUNT
} family;

typedef enum {
    ORIGIN_PLANT,
    ORIGIN_DAIRY,
    ORIGIN_EGG,
    ORIGIN_ANIMAL, /* gelatine, collagen */
    ORIGIN_BEE,    /* honey */
    ORIGIN_MINERAL,
    ORIGIN_COUNT
} origin;

/* Whether the ingredient's protein sets when heated, and how hard. */
typedef enum { HEAT_SET_NONE, HEAT_SET_SOFT, HEAT_SET_FIRM, HEAT_SET_COUNT } heat_set;

/* Polyols differ in energy under US rules (21 CFR 101.9(c)(1)(i)(F)). */
typedef enum {
    POLYOL_NONE,
    POLYOL_ERYTHRITOL,
    POLYOL_XYLITOL,
    POLYOL_MALTITOL,
    POLYOL_SORBITOL,
    POLYOL_ISOMALT,
    POLYOL_LACTITOL,
    POLYOL_MANNITOL,
    POLYOL_COUNT
} polyol;

/* Gluten as diets ask for it. Oats are kept apart: grown clean they hold none, but are often
 * mixed with wheat or barley. */
typedef enum { GLUTEN_NONE, GLUTEN_OATS, GLUTEN_YES } gluten;

/* What must be cooked fully before it is eaten. */
typedef enum { RAW_READY, RAW_EGG, RAW_FLOUR } raw_state;

typedef enum {
    CERTAINTY_UNSTATED,
    CERTAINTY_PUBLISHED,
    CERTAINTY_LABEL,
    CERTAINTY_COMMON_PRACTICE,
    CERTAINTY_ESTIMATE,
    CERTAINTY_MEMORY,
    CERTAINTY_COUNT
} certainty;

/* Where a group of figures is from. `text` null: the group has no figures. */
typedef struct {
    const char *text;
    certainty sure;
} source_note;

/* The nine groups of the FAO/WHO scoring patterns, in their order. */
typedef enum {
    AMINO_HISTIDINE,
    AMINO_ISOLEUCINE,
    AMINO_LEUCINE,
    AMINO_LYSINE,
    AMINO_SULPHUR,  /* methionine + cystine */
    AMINO_AROMATIC, /* phenylalanine + tyrosine */
    AMINO_THREONINE,
    AMINO_TRYPTOPHAN,
    AMINO_VALINE,
    AMINO_COUNT
} amino_acid;

/* Grams of one household measure: unit "cup", "tbsp", "tsp", or a word for a count ("large",
 * "each", "scoop", "slice"). A cup here is the US customary cup, 236.588 mL. */
typedef struct {
    const char *unit;
    range grams;
} household_measure;

typedef struct {
    household_measure *items;
    size_t count, capacity;
} household_measures;

typedef struct ingredient {
    const char *name;   /* "oat flour", singular, lower case */
    const char *plural; /* as stated, or made by rule */
    const char *slug;   /* "oat-flour" */
    const char *about;  /* may be null */
    const char **also;  /* aliases */
    size_t also_count;
    family in;        /* its family */
    const char *kind; /* "oat"; empty when none */
    origin from;
    place at;     /* where the entry stands */
    size_t index; /* its place in the pantry; set when it is added */
    bool hers;    /* from the site's own pantry, not the reference */
    digest says;  /* of all that its own entry says of it; 0 for the reference */
    const struct ingredient *replaces; /* the reference entry in whose place it stands; or null */

    nutrients per_100_g; /* the worked-out energies filled in too: nutrition/energy.h */
    double serving_g;    /* pack serving the figures were given for; 0: per 100 g */
    polyol polyols;      /* which, when it has any */
    source_note composition_source;

    household_measures measures;
    source_note measures_source;

    bool has_uptake;
    range cold_uptake, heated_uptake; /* g water held by 1 g as is: in the bowl, in the bake */
    source_note uptake_source;
    const char *uptake_like; /* the ingredient that its pantry file says it takes up water like, as
                                written there; null: not said */
    place uptake_like_at;
    const struct ingredient *borrowed_from; /* whose uptakes these are; null: its own */

    heat_set sets;
    bool sets_stated;
    double sweetness; /* relative to sugar = 1, by weight; 0 when not a sweetener */
    source_note sweetness_source;

    allergen_set allergens, may_contain;
    gluten has_gluten;
    raw_state raw;

    bool has_amino_acids[AMINO_COUNT];
    double amino_acids_g[AMINO_COUNT]; /* g per 100 g protein (nitrogen x 6.25) */
    source_note amino_acids_source;
    double digestibility; /* true faecal, 0 to 1; 0: unknown */
    source_note digestibility_source;

    double price_per_100_g; /* in the site's currency; 0: unknown */
} ingredient;

/* "nut butter" and the like. */
const char *family_word(family which);
const char *origin_word(origin which);
const char *heat_set_word(heat_set which);
const char *certainty_word(certainty which);

/* Set `*out` to the one called `word` (folded: "fruit puree" for "fruit purée"); false when none
 * is. */
bool family_named(span word, family *out);
bool origin_named(span word, origin *out);
bool heat_set_named(span word, heat_set *out);
bool polyol_named(span word, polyol *out);
bool certainty_named(span word, certainty *out);

/* The key of an amino-acid group in pantry files, e.g. "methionine-cystine". */
const char *amino_acid_key(amino_acid which);

/* True for what takes up water in a batter: powders, flours, meals, starches, gums. */
bool ingredient_takes_up(const ingredient *what);

/* True when `kind` (of a rule: "whey") is all of, or the leading words of, `of` ("whey
 * isolate"). */
bool kind_matches(const char *kind, const char *of);

/* Salt, leaveners and flavourings: spoonfuls that a kitchen has and hardly anybody asks about. */
bool ingredient_is_staple(const ingredient *what);

/* What comes from the tap: always at hand, and may be added to any batch. */
bool ingredient_is_water(const ingredient *what);

/* What anything can be filled into, large to small. */
typedef enum { VESSEL_CUP, VESSEL_TBSP, VESSEL_TSP, VESSEL_COUNT } vessel;

/* Grams of each vessel as the entry states it, or reckoned from the largest that is stated: 1 cup =
 * 16 tbsp = 48 tsp, NIST SP 430. False when none is stated. */
bool ingredient_vessels(const ingredient *of, range grams[VESSEL_COUNT]);

/* Grams of one `unit` as the entry states it; of a vessel as ingredient_vessels gives it. Null
 * when there is none; `*room` may be used for the answer. */
const range *ingredient_measure(const ingredient *of, span unit, range *room);

#endif
