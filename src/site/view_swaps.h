/* The view of a recipe's swap notes. */
#ifndef SITE_VIEW_SWAPS_H
#define SITE_VIEW_SWAPS_H

#include "site/page.h"
#include "site/say.h"
#include "site/view_figures.h"
#include "swap/main_swaps.h"
#include "swap/note_claims.h"

/* What notes are worded with. */
typedef struct {
    const language *in;
    const recipe *of;
    const rule_book *book;
    cup_standard cups;
    energy_rule energy;
    label_law law;                 /* how allergens are named, and whose claims */
    const char *currency;          /* may be null */
    main_swaps pages;              /* the notes that have a page of their own */
    const recipe_figures *figures; /* of the recipe as written */
    const swap_note *first;        /* of all notes */
    /* One a note, from `first` on; null: changes of claims are not said. */
    const note_claims *claims;
} note_words;

static inline saying note_saying(const note_words *by) {
    return (saying){by->in, by->cups};
}

/* The words for the notes of a recipe with these figures, changes of claims aside; all is
 * borrowed. */
note_words note_words_of(const page_maker *by, const recipe_figures *figures,
                         const swap_notes *notes);

/* Puts `swaps` on the page: by replaced ingredient, and within it by what decides, in the order of
 * `notes` (untried last, combined ones after all others). */
void view_put_swaps(arena *a, view *page, const note_words *by, const swap_notes *notes);

/* Puts `swaps` on a document for programs: a list of {from, from_g, answers}, each answer a verdict
 * with its reasons and the replacements it holds for, in grams. */
void view_put_swap_data(arena *a, view *document, const note_words *by, const swap_notes *notes);

/* The address of a note within its page: "swap-oat-flour-coconut-flour". */
const char *note_id(arena *a, const recipe *of, const swap_note *note);

/* Puts one note on `to`: its verdict, its reasons, amounts and what changes. */
void view_put_note(arena *a, view *to, const note_words *by, const swap_note *note);

/* Puts claims_gained_text, claims_lost_text and claims_open_text, as far as there are any. */
void view_put_claim_changes(arena *a, view *to, const note_claims *changes);

/* "Add 15 g (1 tbsp) water", "Hold back about 20 g (4 tsp) of the milk; 5\u201335 g, by feel"; null
 * when nothing changes. */
const char *note_liquid_text(arena *a, const note_words *by, const swap_note *note);

/* Why more liquid, or less, does not rescue a swap that asks for too much of it; null when it is
 * not so. Of a swap that somebody says goes, with what amounts it would come closest. */
const char *note_past_rescue_text(arena *a, const note_words *by, const swap_note *note);

/* What a portion costs more (less: below 0) in the site's currency; 0 where a price is not known.
 */
double note_cost_change(const note_words *by, const swap_note *note);

/* "cost +0.20 EUR a portion"; null where a price is not known or nothing changes. */
const char *note_cost_text(arena *a, const note_words *by, const swap_note *note);

/* Who says so: "the author, on this recipe", "a trial bake of 1 March 2026", … */
const char *note_said_by(arena *a, const swap_note *note);

#endif
