/* What match.c and match_combined.c share: the index of a rule book, and how it is asked. */
#ifndef SWAP_MATCH_INDEX_H
#define SWAP_MATCH_INDEX_H

#include "swap/match.h"

/* The index. A selector is asked once about every ingredient, when the book is built, and the
 * answers kept as a set of bits over the pantry. Rules are kept in the order of their precedence,
 * which no recipe changes; so the first that holds decides:
 *
 *     by_from[oat flour]:  rule 7 | rule 2 | rule 31        most authority, most specific first
 *                            |        |       |
 *     with:               {coconut} {meals} {flours}        bits over the pantry
 *
 * All replacements of a line come from one walk: what a rule says of, later rules no longer
 * answer. Rules that replace two, and those that bring two, have lists of their own. */
typedef unsigned long long bits;
enum { BITS = 64 };

typedef struct {
    const swap_rule *rule;
    const bits *replaces[2]; /* what each `replace` selector fits; the second null for one */
    const bits *with[2];     /* the same for `with` */
} ranked_rule;

typedef struct {
    const ranked_rule **items;
    size_t count, capacity;
} ranked_list;

struct rule_index {
    size_t words;         /* of one set of bits */
    ranked_list *by_from; /* one for each ingredient: rules that replace it alone, in order */
    ranked_list twos;     /* rules that replace two, in order */
    ranked_list *splits;  /* one for each ingredient: rules that bring two for it, in order */
    const trial **bakes;  /* sorted by recipe, the latest first */
    size_t bake_count;
};

static inline bool has_bit(const bits *set, size_t i) {
    return set[i / BITS] >> (i % BITS) & 1u;
}

static inline void set_bit(bits *set, size_t i) {
    set[i / BITS] |= 1ull << (i % BITS);
}

/* What is asked of the rules: ingredients by their places in the pantry. */
typedef struct {
    const recipe_facts *about;
    size_t from[2], to[2];
    bool two, split; /* two go; two come */
    unsigned long long replaced;
} question;

/* Replacements answered so far, for one line or pair. */
typedef struct {
    const pantry *shelf;
    bits *claimed;
    size_t words;
    decided_list *out;
} claims_made;

static inline const ingredient *what_at(const recipe_facts *about, size_t line) {
    return about->of->lines.items[line].what;
}

static inline decision decision_by(const swap_rule *rule) {
    return rule ? (decision){rule->by, rule, NULL} : (decision){SAID_BY_NOBODY, NULL, NULL};
}

/* True when the sets hold these two, in either order. */
static inline bool pair_fits(const bits *const sets[2], const size_t pair[2]) {
    return (has_bit(sets[0], pair[0]) && has_bit(sets[1], pair[1])) ||
           (has_bit(sets[0], pair[1]) && has_bit(sets[1], pair[0]));
}

/* Whose word goes first, a full order: precedence, then the more cautious verdict, then the
 * name. */
int rules_compare(const swap_rule *a, const swap_rule *b);

/* The question about the ingredient of line `from`. */
question question_of(const rule_book *book, const recipe_facts *about, size_t from);

/* The first of `list` that answers; `*tied` another of its rank that says otherwise, or null. */
const swap_rule *index_answer(const ranked_list *list, const question *asked,
                              const swap_rule **tied);

claims_made claims_for(const rule_book *book, decided_list *out);

/* Claims the ingredient with pantry index `to`, unless it is. */
void claim_one(claims_made *made, size_t to, size_t first, size_t second, decision by);

/* Claims everything in `with` that nothing has claimed yet. */
void claim_set(claims_made *made, const bits *with, size_t first, size_t second, decision by);

#endif
