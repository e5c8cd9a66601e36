/* A developed recipe in words and as a document: `crumbnote formulate`. */
#ifndef SITE_VIEW_FORMULA_H
#define SITE_VIEW_FORMULA_H

#include "site/view_figures.h"
#include "swap/formula.h"

/* All that is said of one. */
typedef struct {
    const formula_brief *of;
    const formula_answer *by;
    const build_norms *norms;
    const site_settings *settings;
    const char *draft;             /* the recipe file; null when no amounts were found */
    const recipe_figures *figures; /* of the draft as read back; null likewise */
    setting sets;                  /* what sets it, likewise */
} formula_report;

/* "protein: at least 24 g would take 35 g more pea protein powder than the 90 g that may be used".
 */
const char *formula_obstacle_text(arena *a, const formula_report *report,
                                  const formula_obstacle *what);

/* The document of `crumbnote formulate --json`. */
view *view_of_formula(arena *a, const formula_report *report);

/* Adds the same for people. */
void formula_add_words(arena *a, text *t, const formula_report *report);

#endif
