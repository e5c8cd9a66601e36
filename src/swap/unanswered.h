/* The questions readers ask most that a recipe leaves without an answer. */
#ifndef SWAP_UNANSWERED_H
#define SWAP_UNANSWERED_H

#include "swap/match.h"

/* Number of the next line from `line` on whose swaps readers ask for and nobody answers; the
 * number of lines when there is none. Such a line has a protein powder, a flour or a nut butter,
 * mixed in (not put beside), of at least a twentieth of the weight. It is answered when something,
 * be it "avoid", decides on a replacement of a kind that home bakers own most. `*any`: something
 * is decided, but on other kinds. `a` is for scratch. */
size_t unanswered_next(arena *a, const rule_book *book, const recipe_facts *about, size_t line,
                       bool *any);

#endif
