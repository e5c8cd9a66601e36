/* Figures of a recipe as views: the panel, the big numbers, claims, allergens, and the contract of
 * `crumbnote macros --json`. */
#ifndef SITE_VIEW_FIGURES_H
#define SITE_VIEW_FIGURES_H

#include "nutrition/allergens.h"
#include "nutrition/claims.h"
#include "nutrition/label.h"
#include "nutrition/quality.h"
#include "read/language.h"
#include "read/site_settings.h"
#include "site/view.h"

/* Everything the nutrition room says about one recipe, worked out once. */
typedef struct {
    const recipe *of;
    const site_settings *by;
    recipe_macros macros;
    nutrition_label label;
    protein_quality quality;
    claims claims;
    allergen_set allergens, may_contain;
    diet_set diets;
    double cost; /* of the batch; 0: unknown */
    size_t cost_lacking;
} recipe_figures;

/* Works out all figures of `of`, in `a`. */
recipe_figures figures_of(arena *a, const recipe *of, const site_settings *by);

/* Puts label, facts, lacking, claims, quality, allergens, diets, cautions and cost on a page. */
void view_put_figures(arena *a, view *page, const recipe_figures *of);

/* The document of `crumbnote macros --json`. */
view *view_of_macros(arena *a, const recipe_figures *of);

/* "1.20 EUR"; `currency` may be null. In `a`. */
char *money_text(arena *a, double amount, const char *currency);

/* Puts the list `cautions` on `to`: a sentence for each. */
void view_put_cautions(arena *a, const language *in, view *to, caution_set given);

/* {N}: the nine figures of the contract; what is unknown is null. */
view *view_of_nutrients(arena *a, const macros *of, energy_rule energy);

/* What claim number `which` of those of `law` is called; of the claim that the program calls
 * `name`. */
const char *claim_word(const language *in, label_law law, size_t which);
const char *claim_word_named(const language *in, label_law law, const char *name);

/* What a line of the panel of `rule` is called. */
const char *label_line_name(const language *in, label_rule rule, const label_line *of);

#endif
