/* Trials as evidence: what bakes of recipes like this one say of a swap.
 *
 * A trial counts for a swap when
 *
 *   - its recipe is of the same build (swap/recipe_build.h), or is this very recipe; and
 *   - what was replaced there and what came in its place are like what is replaced and comes here:
 *     the same ingredient, or one of the same family and kind. A closing word of the kind that
 *     only says how far it was cleaned (isolate, concentrate) or that it is salted does not count:
 *     pea is pea. An ingredient without a kind is like itself alone.
 *
 * Of several trials on one recipe the latest counts, of one day the more cautious; the others are
 * kept for showing. The trial that decides the swap is no evidence for itself.
 *
 * Trials are filed once by the two sides, so that asking is a search among those of one pair:
 *
 *     from: whey   ->  to: hemp | to: pea | to: pea | to: rice        latest of each recipe first
 */
#ifndef SWAP_EVIDENCE_H
#define SWAP_EVIDENCE_H

#include "swap/match.h"

typedef struct {
    const trial *bake; /* borrowed from the book */
    bool counts;       /* the latest of its recipe */
    bool agrees;       /* with the verdict that stands here */
} evidence_item;

typedef struct {
    evidence_item *items; /* by recipe, the latest of each first */
    size_t count, capacity;
    size_t recipes;    /* in how many it was tried */
    size_t agree;      /* in how many with the verdict that stands here */
    size_t contradict; /* in how many with a verdict two steps or more away */
} evidence;

/* Files the trials of `book`, whose shelf and log are set. Called by rule_book_index. */
void evidence_file(arena *a, rule_book *book);

/* The evidence on the swap `said`, one by one, beside what decides it. `part`: the facts of the
 * part in which its line stands (facts_for). The list grows in `a`. */
evidence evidence_of(arena *a, const rule_book *book, const recipe_facts *about,
                     const decided *said);

typedef struct {
    const ingredient **items;
    size_t count, capacity;
} tried_list;

/* Each ingredient that came in the place of one like `from` in a trial that counts here. */
tried_list evidence_tried(arena *a, const rule_book *book, const recipe_facts *about,
                          const ingredient *from);

/* True when the two are like each other, as above. */
bool ingredients_alike(const ingredient *one, const ingredient *other);

/* True when the verdicts are two steps or more apart (works and different, adjust and avoid):
 * neighbours are a matter of taste. Nothing contradicts untried. */
bool verdicts_contradict(verdict one, verdict other);

#endif
