/* The other way round: what of a recipe a cupboard can make, as written or with swaps, and what it
 * lacks. */
#ifndef SWAP_CUPBOARD_H
#define SWAP_CUPBOARD_H

#include "swap/match.h"

/* What somebody has at hand. */
typedef struct {
    const ingredient **items; /* the one to be used first stands first */
    size_t count, capacity;
    bool has_staples; /* salt, leaveners and flavourings are at hand without being named */
} cupboard;

/* A line for which something at hand can stand in. */
typedef struct {
    const ingredient *from, *to;
    verdict says; /* works, adjust or different */
} cupboard_swap;

/* A recipe seen from a cupboard; each ingredient counts once. */
typedef struct {
    const char **missing; /* names of what is neither at hand nor answered by a swap */
    size_t missing_count;
    cupboard_swap *swaps;
    size_t swap_count;
    size_t as_written; /* ingredients at hand, water and staples not counted */
} cupboard_plan;

/* What `of` makes of the recipe of `about`. For what is not at hand, the best verdict on something
 * that is (works before adjust before different, among equals what stands first in the cupboard);
 * what is to be avoided or untried is no swap. Optional lines are left out, and tap water is
 * always there. Two-for-one swaps are not looked at. In `a`; names are borrowed. */
cupboard_plan cupboard_plan_of(arena *a, const rule_book *book, const recipe_facts *about,
                               const cupboard *of);

/* Which of two plans stands first, as qsort has it: fewer things missing, then fewer and better
 * swaps. */
int cupboard_compare(const cupboard_plan *one, const cupboard_plan *other);

/* True when nothing at hand goes into the recipe: not worth naming. */
bool cupboard_plan_is_empty(const cupboard_plan *of);

#endif
