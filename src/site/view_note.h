/* One swap note in words: as a line of a table, and in whole sentences where it stands alone. */
#ifndef SITE_VIEW_NOTE_H
#define SITE_VIEW_NOTE_H

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

/* The address of a note within the page of notes: "swap-oat-flour-coconut-flour". */
const char *note_id(arena *a, const recipe *of, const swap_note *note);

/* -- alone ------------------------------------------------------------------------------------ */

/* Puts one note on `to`: its verdict, its reasons, amounts and what changes, in sentences. */
void view_put_note(arena *a, view *to, const note_words *by, const swap_note *note);

/* Puts what it says of its replacement alone. `is_first`: what a baker would notice is said
 * elsewhere, by view_put_note_balance. */
void view_put_note_sentences(arena *a, view *to, const note_words *by, const swap_note *note,
                             bool is_first);

/* -- in parts, which are shown in a line ------------------------------------------------------- */

/* Puts also, expect, because, said_by and basis: what one rule says once for all the ingredients
 * it speaks of. */
void view_put_note_reasons(arena *a, const language *in, view *to, const swap_note *note);

/* Puts `balance`, what a baker would notice: bars for some of it, in words for all; nothing where
 * there is nothing to notice. */
void view_put_note_balance(arena *a, view *to, const note_words *by, const swap_note *note);

/* Puts id, to, to_href and, where the swap has a page, page_href. */
void view_put_note_names(arena *a, view *to, const note_words *by, const swap_note *note);

/* Puts use_text ("60 g"), use_measure_text and use_range_text, as far as there are any. Returns
 * the first; null where no amount is promised. */
const char *view_put_note_use(arena *a, view *to, const note_words *by, const swap_note *note);

/* True when it changes liquid by as much as a kitchen would measure. */
bool note_changes_liquid(const swap_note *note);

/* Puts liquid_change_text ("20 g less water"), liquid_measure_text and liquid_range_text; nothing
 * where no liquid changes. */
void view_put_note_liquid(arena *a, view *to, const note_words *by, const swap_note *note);

/* Puts protein_text and energy_text, of a portion ("\u22123 g"); false where they are not known. */
bool view_put_note_figures(arena *a, view *to, const note_words *by, const swap_note *note);

/* "vegan and no dairy", in the arena; null for the empty set. */
const char *diet_words(arena *a, const language *in, diet_set set);

/* Puts claims_gained_text, claims_lost_text and claims_open_text, as far as there are any. */
void view_put_claim_changes(arena *a, view *to, const note_words *by, const note_claims *changes);

/* Puts a list of claims, by the names the program has for them, under `key`; nothing for none. */
void view_put_claim_names(arena *a, view *to, const char *key, const note_words *by,
                          const word_list *list);

/* "Add 15 g (1 tbsp) water", "Hold back about 20 g (4 tsp) of the milk; 5\u201335 g, by feel"; null
 * when nothing changes. */
const char *note_liquid_text(arena *a, const note_words *by, const swap_note *note);

/* `amount`, and where it is by the figures (swap_note.ruled_g), that and what the rule says. */
const char *note_whose_amount_text(arena *a, const language *in, const swap_note *note,
                                   const char *amount);

/* That no figure counts what `also` asks for; null where it asks for no amounts. */
const char *note_uncounted_text(const language *in, const swap_note *note);

/* Why more liquid, or less, does not rescue a swap that asks for too much of it; null when it is
 * not so. Of a swap that somebody says goes, with what amounts it would come closest. */
const char *note_past_rescue_text(arena *a, const note_words *by, const swap_note *note);

/* What a portion costs more (less: below 0) in the site's currency; 0 where a price is not known.
 */
double note_cost_change(const note_words *by, const swap_note *note);

/* "+0.20 EUR", and "cost +0.20 EUR a portion"; null where a price is not known or nothing changes.
 */
const char *note_cost_change_text(arena *a, const note_words *by, const swap_note *note);
const char *note_cost_text(arena *a, const note_words *by, const swap_note *note);

/* What to expect of it: "Came out rubbery and dry. Ran over the griddle." where a bake decides,
 * else as the rule has it; null where nobody says. */
const char *note_expected(arena *a, const language *in, const swap_note *note);

/* Who says so: "the author, on this recipe", "a trial bake of 1 March 2026", … */
const char *note_said_by(arena *a, const language *in, const swap_note *note);

#endif
