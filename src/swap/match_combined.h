/* Which rule decides a combined swap: two ingredients by one, or one by two. The recipe's own word
 * goes before the rules; trials are of single swaps. */
#ifndef SWAP_MATCH_COMBINED_H
#define SWAP_MATCH_COMBINED_H

#include "swap/match.h"

/* True for two by one and one by two. */
bool decided_is_combined(const decided *of);

/* As `decide`, for two lines replaced by one: the recipe's own word on the two, else only rules
 * with two `replace` selectors. */
decision decide_two(const rule_book *book, const recipe_facts *about, size_t first, size_t second,
                    const ingredient *to, const swap_rule **tied);

/* The same, without looking at the recipe's own word. */
decision decide_two_by_rules(const rule_book *book, const recipe_facts *about, size_t first,
                             size_t second, const ingredient *to, const swap_rule **tied);

/* As decide_two, for one line replaced by two: only rules with two `with` selectors. */
decision decide_split(const rule_book *book, const recipe_facts *about, size_t from,
                      const ingredient *const to[2], const swap_rule **tied);

/* Adds to `out` every two-for-one that something decides on, each once; of lines with the same
 * ingredient the first stands for all. */
void decide_all_twos(const rule_book *book, const recipe_facts *about, decided_list *out);

/* Adds every replacement of line `from` by two. Of the many that a rule's second selector may fit,
 * one is taken: what the recipe has most of, else the first that the rule names, else the first of
 * the pantry. */
void decide_all_splits(const rule_book *book, const recipe_facts *about, size_t from,
                       decided_list *out);

#endif
