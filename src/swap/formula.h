/* Developing a recipe: amounts of chosen ingredients that meet targets a portion and have the
 * balance of a build.
 *
 * Targets and bounds are hard, and so, roughly, are the weight of the batch and its free water in
 * the bowl; the balance learned from the recipes of the build (swap/build_norms.h) is what the
 * amounts come as near to as can be, each quantity counted in steps that a baker notices; being
 * outside of what those recipes have counts four times as much as being off their median. Amounts
 * are whole kitchen steps. A goal program (base/linear.h), solved once for any amounts and once for
 * whole steps of the size that those ask for.
 *
 * Where targets and bounds can't all be met, the answer says which stand in the way, and proposes
 * the amounts that come nearest to the targets within the bounds. */
#ifndef SWAP_FORMULA_H
#define SWAP_FORMULA_H

#include "measure/recipe.h"
#include "swap/build_norms.h"

/* One ingredient to be used. */
typedef struct {
    const ingredient *what;
    double least_g, most_g; /* equal: a fixed amount; most INFINITY: no bound */
    double step_g;          /* 0: what a kitchen measures it in; not asked of a fixed amount */
    const char *note;       /* how it is prepared; may be null */
    place at;
} formula_part;

/* A figure a portion: least <= figure <= most. */
typedef struct {
    const char *key, *unit; /* "protein", "g"; "cost" has no unit */
    nutrient which;
    double times;       /* the nutrient by this is the figure: 0.0025 for salt from mg of sodium */
    bool is_cost;       /* `which` is not asked */
    double least, most; /* -INFINITY, INFINITY: none */
    place at;
} formula_target;

typedef struct {
    const char *title, *summary, *kind; /* summary, kind may be null */
    unsigned settings;                  /* of the build: bits 1u << setting; 0: any */
    yield makes, portion;
    double portions;
    double bake_loss;       /* share; 0: as the build's recipes */
    const char *oven, *pan; /* as written; null: likewise */
    double batch_g;         /* as mixed; 0: as heavy as the build's portions */
    place batch_at;
    struct {
        formula_part *items;
        size_t count, capacity;
    } parts;
    struct {
        formula_target *items;
        size_t count, capacity;
    } targets;
} formula_brief;

/* What stands in the way: a bound of a part, a target, the weight of the batch, or its free water
 * in the bowl, without which it is no batter or dough of this build. */
typedef enum { OBSTACLE_PART, OBSTACLE_TARGET, OBSTACLE_BATCH, OBSTACLE_WATER } obstacle_sort;

typedef struct {
    obstacle_sort sort;
    size_t which; /* part or target */
    double by;    /* how far it would have to give, in g or the target's unit: above its most (+),
                     below its least (-) */
} formula_obstacle;

typedef struct {
    bool found;      /* false: not even amounts that come near were found */
    bool met;        /* all targets and bounds hold */
    double *grams;   /* one a part */
    double *reached; /* one a target, a portion */
    double batch_g, batch_least_g, batch_most_g; /* as mixed, and what it was to be */
    double ratio[BUILD_QUANTITIES];
    formula_obstacle *obstacles; /* none when met */
    size_t obstacle_count;
} formula_answer;

/* A batch whose weight is stated may be off by this share; a portion may lie that far outside of
 * what the build's recipes have (estimates). */
#define FORMULA_BATCH_OFF   0.03
#define FORMULA_PORTION_OFF 0.25

/* How far the free water in the bowl, for each gram of dry, may lie outside of what the build's
 * recipes have (an estimate). */
#define FORMULA_WATER_OFF 0.2

/* Of a family that the brief does not bound, the batch should hold no more than this times what the
 * recipe that has most of it holds, or than that share, where they have hardly any (estimates). */
#define FORMULA_SHARE_OFF   1.1
#define FORMULA_SHARE_LEAST 0.1

/* The share of the batch that the unbounded parts of family `in` should not exceed. */
double formula_share_most(const build_norms *norms, family in);

/* The share of the batch `by` that the unbounded parts of family `in` have. */
double formula_share(const formula_brief *of, const formula_answer *by, family in);

/* Proposes amounts for `of`, which has a part and portions, by `norms`; one of its batch_g and
 * norms->count must not be 0. In `a`. */
formula_answer formula_solve(arena *a, const formula_brief *of, const build_norms *norms);

/* What 1 g of `what` brings to the target, of the batch. A figure that the pantry lacks counts as
 * nothing: formula_lacks. */
double formula_brings(const formula_target *target, const ingredient *what);
bool formula_lacks(const formula_target *target, const ingredient *what);

#endif
