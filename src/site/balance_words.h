/* A swap's balance in words: what a baker would notice, and figures as they are shown. */
#ifndef SITE_BALANCE_WORDS_H
#define SITE_BALANCE_WORDS_H

#include "read/language.h"
#include "swap/balance_points.h"
#include "swap/balance_quantities.h"

/* What is compared, and what of it can be told: of what is never `heated` the bake says nothing,
 * and where uptakes are not `known` the waters do not. */
typedef struct {
    const balance *before, *after;
    bool heated, known;
} balance_pair;

/* The batch as written and as `note` swaps it; borrowed from the note. */
balance_pair balance_pair_of(const swap_note *note);

/* True when the quantity can be told at all; and when its difference is noticed besides. */
bool balance_tells(balance_quantity which, bool heated, bool known);
bool balance_is_told(const balance_pair *of, balance_quantity which);

/* True when there is something of it at some point. */
bool balance_is_shown(const balance_comparison *of, balance_quantity which);

/* "runnier in the bowl", and with figures "runnier in the bowl: about 50 g more free water". */
const char *balance_change_word(const language *in, const balance *before, const balance *after,
                                balance_quantity which);
const char *balance_change_text(arena *a, const language *in, const balance_pair *of,
                                balance_quantity which);

/* "Runnier in the bowl and drier once baked"; null where nothing is noticed. */
const char *balance_changes_text(arena *a, const language *in, const swap_note *note);

/* Why liquid mends one side of this swap and worsens the other, at equal weight and in the
 * figures of the two ingredients; null where it is not so. */
const char *balance_faces_text(arena *a, const language *in, const recipe *of,
                               const swap_note *note);

/* g of a quantity at a point, its range that of the change; only the two waters have one. */
range balance_quantity_at(const balance_comparison *of, balance_point at, balance_quantity which);

/* "84 g", "\u22127 g". */
const char *balance_grams_text(arena *a, const language *in, double grams);

/* "+20 to +75 g": the range of the change from `was`; null where there is none. */
const char *balance_range_text(arena *a, const language *in, range is, double was);

#endif
