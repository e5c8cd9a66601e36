/* A swap's balance at its points, for programs and for a terminal. */
#ifndef SITE_BALANCE_TABLE_H
#define SITE_BALANCE_TABLE_H

#include "read/language.h"
#include "site/view.h"
#include "swap/balance_points.h"

/* {"before", "equal_weight", "as_ruled", "best"} in grams; null where there is no such point. */
view *view_of_balance_data(arena *a, const balance_comparison *of);

/* Adds the comparison as a small table, every line indented by two. */
void balance_table_add(text *t, arena *a, const language *in, const balance_comparison *of);

#endif
