/* The facts of a weighed recipe that rules ask for: what sets it, what moistens it, what it is
 * made of. */
#ifndef SWAP_FACTS_H
#define SWAP_FACTS_H

#include "measure/recipe.h"
#include "swap/rule.h"

typedef struct {
    const recipe *of;    /* borrowed */
    const pantry *shelf; /* borrowed */
    const char *kind;    /* folded */
    setting sets;
    moisture moistened;
    bool leavened, baked;
    double water_by[MOISTURE_COUNT]; /* g of water each brings */
} recipe_facts;

/* Works out the facts of `of`, whose lines are weighed. What sets it: the strongest heat-setting
 * thing whose protein (or, for gels and starch, weight) is a fair share of the batch; the
 * thresholds, common practice, stand in the source. */
recipe_facts facts_of(arena *a, const recipe *of, const pantry *shelf);

/* Share of the batch weight (0 to 1) of the lines that `by` fits. */
double facts_share(const recipe_facts *about, const selector *by);

/* How many lines can be told apart as replaced: bits of the sets below. */
enum { FACTS_LINES_MOST = 64 };

/* The lines that hold the ingredient of line `line`, itself included: a bit for each. */
unsigned long long facts_same_lines(const recipe_facts *about, size_t line);

/* True when line `line` has a known ingredient that no earlier line has. */
bool facts_first_of(const recipe_facts *about, size_t line);

/* True when every stated fact holds. `replaced`: a bit for each replaced line (line index), which
 * `has` and `lacks` do not look at; recipes have at most 64 lines for this. */
bool conditions_hold(const conditions *when, const recipe_facts *about,
                     unsigned long long replaced);

#endif
