/* A recipe developed by the figures, written as a recipe file: what the baker tries first. */
#ifndef SITE_FORMULA_DRAFT_H
#define SITE_FORMULA_DRAFT_H

#include "site/say.h"
#include "swap/formula.h"

/* "1/3 cup (36 g) oat flour, sifted": a line that reads back as `grams`. In `a`. */
const char *formula_line(arena *a, const formula_part *part, double grams, cup_standard cups);

/* The whole file, front matter and a plain method, not to be published yet. What the brief leaves
 * out of the baking is as in the recipes of `norms`. In `a`. */
const char *formula_draft(arena *a, const formula_brief *of, const formula_answer *by,
                          const build_norms *norms, saying in);

#endif
