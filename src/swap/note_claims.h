/* What swaps make of the claims and cautions of a recipe, worked out on the recipe with the swap
 * applied. */
#ifndef SWAP_NOTE_CLAIMS_H
#define SWAP_NOTE_CLAIMS_H

#include "nutrition/claims.h"
#include "swap/note.h"

typedef struct {
    word_list gained, lost; /* claims that start to hold, that stop */
    word_list open;         /* claims that held and can no longer be tested */
    caution_set cautions;   /* that the recipe as written gives no cause for */
} note_claims;

/* The recipe as written. All is borrowed. */
typedef struct {
    const recipe *of;
    const recipe_macros *figures;
    const claims *holding;
    label_law law;
    const ingredient *water;
} claims_asked;

/* What held `then` and holds `now`; no cautions. In `a`. */
note_claims note_claims_between(arena *a, const claims *then, const claims *now);

/* One entry for each of `notes`, in their order; nothing where no amount is promised, or so little
 * is replaced (under 4 % of the batch) that no claim can hang on it. In `a`. */
const note_claims *note_claims_of(arena *a, const claims_asked *about, const swap_notes *notes);

#endif
