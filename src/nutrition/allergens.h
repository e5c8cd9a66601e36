/* Allergens of a recipe, from its ingredients alone. Never a promise: the pages add that labels
 * and kitchens decide. An ingredient that the pantry does not know may bring any allergen:
 * allergens_complete says whether there is one.
 *
 * Diets, cautions and cost, which go with them on a page, have headers of their own, included
 * here. */
#ifndef NUTRITION_ALLERGENS_H
#define NUTRITION_ALLERGENS_H

#include "measure/recipe.h"
#include "nutrition/cautions.h"
#include "nutrition/cost.h"
#include "nutrition/diets.h"

/* All that any line brings, optional lines included. */
allergen_set allergens_of(const recipe *of);
/* What ingredients may contain by the pantry's word, less what is contained anyway. */
allergen_set allergens_may_contain(const recipe *of);

/* False when an ingredient is not in the pantry: what is found is then not all there may be. */
bool allergens_complete(const recipe *of);

typedef struct {
    allergen what;
    word_list because; /* names of the ingredients that bring it */
} allergen_cause;

typedef struct {
    allergen_cause *items;
    size_t count, capacity;
} allergen_causes;

/* Each allergen in `of` with the ingredients behind it, in the order of the allergen list. */
allergen_causes allergen_causes_of(arena *a, const recipe *of);

/* The same for what ingredients may contain and none contains. */
allergen_causes allergen_may_contain_causes_of(arena *a, const recipe *of);

/* "milk; tree nuts (almond)" as `law` names them; foods that the law does not list are left out.
 * The specific food stands in brackets where the group has several (21 U.S.C. 343(w)(2) asks for
 * the kind of nut; Regulation (EU) 1169/2011, Annex II names cereals and nuts one by one). In the
 * arena; empty string when none. */
const char *allergen_statement(arena *a, allergen_set set, label_law law);

/* What foods, and the groups that a law puts them in, are called: by allergen. */
typedef struct {
    const char *const *foods, *const *groups;
} allergen_names;

/* The same in other words. */
const char *allergen_statement_called(arena *a, allergen_set set, label_law law,
                                      const allergen_names *called);

#endif
