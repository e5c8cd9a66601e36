/* The balance of a build (egg-white-set griddle cakes, say), learned from recipes of it: what a
 * new recipe of that build should look like to pour, set and rise as they do.
 *
 *     free water    in the bowl and in the bake, for each gram of dry solids
 *     shares        of the batch as mixed: setting protein, fat, sweetness, leavening
 *
 * All are ratios of two sums over the lines, so that asking for one is linear in the amounts. What
 * stands beside the mix (facts.h) does not count. */
#ifndef SWAP_BUILD_NORMS_H
#define SWAP_BUILD_NORMS_H

#include "swap/facts.h"

typedef enum {
    BUILD_BOWL,
    BUILD_BAKE,
    BUILD_SETTING,
    BUILD_FAT,
    BUILD_SWEETNESS,
    BUILD_LEAVENING, /* as baking powder; soda counts three times (common practice), yeast not */
    BUILD_QUANTITIES
} build_quantity;

/* "free_water_bowl"; "free water in the bowl, for each gram of dry solids". */
const char *build_quantity_key(build_quantity which);
const char *build_quantity_name(build_quantity which);

/* True for a share of the batch, to be shown in per cent; false for a ratio of two weights. */
bool build_quantity_is_share(build_quantity which);

/* What 1 g of `what` adds above and below the line of the ratio. `bake_loss`: share of the batch
 * that the bake drives off. */
double build_above(build_quantity which, const ingredient *what, double bake_loss);
double build_below(build_quantity which, const ingredient *what);

/* How much of the batch weight a baker notices of it; estimates (common practice, no source). */
double build_noticed(build_quantity which);

/* One recipe of a site. */
typedef struct {
    const char *title, *kind; /* folded kind; borrowed */
    setting sets;
    double ratio[BUILD_QUANTITIES];
    double share[FAMILY_COUNT]; /* of the mix */
    double portion_g;           /* as mixed */
    double bake_loss;           /* 0: not stated */
    const char *oven, *pan;     /* as written; null where not stated */
} build_sample;

typedef struct {
    build_sample *items;
    size_t count, capacity;
} build_samples;

/* The figures of the recipe that `about` is of. */
build_sample build_sample_of(const recipe_facts *about);

/* A portion as heavy as the recipe's pieces make it, where it makes what `makes` counts ("12
 * muffins", `portions` portions): else as its own portion is. */
double build_portion_g(arena *a, const recipe_facts *about, const yield *makes, double portions);

/* Fewer recipes than this are few: their spread says little. */
enum { BUILD_FEW = 3 };

typedef struct {
    size_t count;                    /* of recipes it rests on; 0: nothing is known */
    bool any_setting;                /* too few are set by what was asked for: all of the kind */
    const char **titles;             /* of those recipes */
    range ratio[BUILD_QUANTITIES];   /* median; from the lowest to the highest, of five and more the
                                        quartiles */
    double share_most[FAMILY_COUNT]; /* of the mix, in that of them which has most of it */
    range portion_g;                 /* like the ratios, as mixed */
    double bake_loss;                /* median of those that state one; 0: none does */
    const char *oven, *pan;          /* of the first that states one; may be null */
} build_norms;

/* What recipes of `kind` (folded; empty: any) set by one of `settings` (bits 1u << setting; 0:
 * anything) have in common. Where fewer than BUILD_FEW are, all of the kind count if they are more.
 * In `a`. */
build_norms build_norms_of(arena *a, const build_samples *from, const char *kind,
                           unsigned settings);

/* True when `ratio` lies in what those recipes have, to what a baker would notice; a gram of dry is
 * taken for half of the batch. */
bool build_is_usual(const build_norms *norms, build_quantity which, double ratio);

#endif
