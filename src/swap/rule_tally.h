/* What becomes of rules over all recipes: which never hold, which always stand behind others, and
 * which the trials contradict.
 *
 * Each worker tallies the recipes it checks; the tallies are joined after. Everything kept is a
 * set, or the first by the order of the book, so that neither the number of workers nor their
 * order shows.
 *
 * What the author said on a recipe, or baked there, is no other rule: a rule that only they go
 * before is not hidden, since it speaks again in the next recipe. */
#ifndef SWAP_RULE_TALLY_H
#define SWAP_RULE_TALLY_H

#include "swap/match.h"

/* A swap that a rule decides on. */
typedef struct {
    const char *recipe; /* slug; null: none */
    const ingredient *from, *to;
} tallied_swap;

typedef struct {
    bool has_replaced;          /* some recipe has what it replaces */
    bool holds;                 /* and its facts hold */
    bool decides;               /* and it goes before all other rules on some replacement */
    const swap_rule *hidden_by; /* a rule that goes before it; null when none does */
    /* Bakes of what it decides on, one bit for each trial of the log: those that are evidence
     * (swap/evidence.h) and, for her own rules, those that decide in its place on the recipe that
     * was baked. Null when there is none. */
    unsigned long long *agree, *contradict;
    tallied_swap against; /* the first, by the recipes' names, that a bake contradicts */
} rule_fate;

typedef struct {
    arena *home;           /* borrowed */
    const rule_book *book; /* borrowed */
    rule_fate *of;         /* one for each rule of the book, in its order */
} rule_tally;

/* An empty tally in `home`. */
rule_tally rule_tally_new(arena *home, const rule_book *book);

/* Tallies one recipe. `a` is for scratch. What holds, decides and hides is asked of the site's own
 * rules alone; of a rule that replaces or brings two, no trial speaks, and one that brings two
 * counts as deciding when it holds. */
void rule_tally_recipe(rule_tally *tally, arena *a, const recipe_facts *about);

/* Adds what `more`, of the same book, has. */
void rule_tally_join(rule_tally *tally, const rule_tally *more);

/* How many trials are in `set`, one of a rule's above; the first of them, by the order of the log,
 * in `*first` (null when none). */
size_t rule_tally_count(const rule_tally *tally, const unsigned long long *set,
                        const trial **first);

#endif
