/* The swap chart: what the recipes ask for, by build, against what can stand in. */
#ifndef SITE_VIEW_CHART_H
#define SITE_VIEW_CHART_H

#include "site/page.h"
#include "site/swap_table.h"

/* swaps/: a table each for protein powders, flours and meals, nut butters. A row is an ingredient
 * in one kind of recipe, a column a replacement, a cell the verdict with a link to why. */
view *view_of_chart(arena *a, const page_maker *by, const recipe_rows *rows,
                    const swap_table *swaps);

#endif
