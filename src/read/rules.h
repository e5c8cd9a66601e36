/* Reads swap rules: the reference, a site's own, and the `swaps` of a recipe. */
#ifndef READ_RULES_H
#define READ_RULES_H

#include "read/selectors.h"

/* Adds every rule of `bytes` to `into`, in `a`. Names in selectors must be in the pantry; a rule
 * with an error is left out. `by`: SAID_BY_OWN_RULE or SAID_BY_REFERENCE. */
void rules_read(arena *a, const char *file, span bytes, authority by, const pantry *shelf,
                swap_rules *into, problems *found);

/* The same for the rules of `list`, read already; the tree must live as long. */
void rules_read_list(const rule_reader *with, const yaml_node *list, authority by,
                     swap_rules *into);

/* Reads the `verdict` of `node`, one of those that a person may give; false with a problem when it
 * is missing or wrong. `what` names the thing that needs it. */
bool verdict_read(const yaml_node *node, const char *what, verdict *out, problems *found);

/* Reads the `swaps` list of a recipe: {replace: NAME, with: NAME, verdict:, note: …}. */
void rules_read_own(arena *a, const yaml_node *list, const pantry *shelf, swap_rules *into,
                    problems *found);

#endif
