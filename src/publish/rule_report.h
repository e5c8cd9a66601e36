/* What `check` says of the rules over the whole site: those that the trials contradict, those that
 * never hold, those that always stand behind others, and the swaps readers ask for most that
 * nothing answers. Warnings all: the site can be built with them. */
#ifndef PUBLISH_RULE_REPORT_H
#define PUBLISH_RULE_REPORT_H

#include "swap/rule_tally.h"

/* Reports what one recipe shows by itself (its own swaps against its trials, swaps without an
 * answer) and adds it to the worker's tally. `a` is for scratch. */
void rule_report_recipe(arena *a, rule_tally *tally, const recipe_facts *about, problems *found);

/* Reports what all recipes together show. `tally`: the workers' joined. */
void rule_report_site(const rule_tally *tally, problems *found);

#endif
