/* The facts of a weighed recipe that rules ask for: what sets it, what moistens it, what it is
 * made of.
 *
 * They are facts of what is mixed. What a recipe puts beside it (groups of lines headed "To
 * serve", "On top", "Icing" and the like) neither sets nor moistens a cake; it has facts of its
 * own, and a line that stands there is judged by those:
 *
 *     facts ---beside---> facts of what stands beside the mix (null where nothing does)
 */
#ifndef SWAP_FACTS_H
#define SWAP_FACTS_H

#include "measure/recipe.h"
#include "swap/rule.h"

/* How many lines can be told apart: bits of the sets below. Lines past them belong to the mix. */
enum { FACTS_LINES_MOST = 64 };

typedef struct recipe_facts {
    const recipe *of;         /* borrowed */
    const pantry *shelf;      /* borrowed */
    unsigned long long apart; /* a bit for each line that stands beside the mix */
    bool is_beside;           /* these are the facts of those lines, not of the mix */
    const struct recipe_facts *beside;

    const char *kind; /* folded; empty for what stands beside */
    setting sets;
    moisture moistened;
    bool leavened, baked;
    double water_by[MOISTURE_COUNT]; /* g of water each brings */
    double part_g;                   /* weight of what these are the facts of */
} recipe_facts;

/* Works out the facts of `of`, whose lines are weighed, and in `a` those of what stands beside
 * the mix. What sets it: swap/setting.h; what moistens it: swap/moisture.h. */
recipe_facts facts_of(arena *a, const recipe *of, const pantry *shelf);

/* The facts by which the lines of `replaced` are judged: of what stands beside the mix when all
 * of them do, else `about` itself. */
const recipe_facts *facts_for(const recipe_facts *about, unsigned long long replaced);

/* The ingredient of line `line`; null when the line is not of the part that `about` is of, or the
 * pantry does not know it. */
const ingredient *facts_at(const recipe_facts *about, size_t line);

/* True when `what` is of the family `in` and of `kind` (null: of any). */
bool facts_is_a(const ingredient *what, family in, const char *kind);

/* Share of the weight (0 to 1), of what `about` is of, of the lines that `by` fits. */
double facts_share(const recipe_facts *about, const selector *by);

/* The lines that hold the ingredient of line `line`, itself included: a bit for each. */
unsigned long long facts_same_lines(const recipe_facts *about, size_t line);

/* True when line `line` has a known ingredient that no earlier line has. */
bool facts_first_of(const recipe_facts *about, size_t line);

/* True when every stated fact holds of facts_for(about, replaced). `replaced`: a bit for each
 * replaced line (line index), which `has` and `lacks` do not look at; recipes have at most 64
 * lines for this. Shares are of the weight of that part. */
bool conditions_hold(const conditions *when, const recipe_facts *about,
                     unsigned long long replaced);

#endif
