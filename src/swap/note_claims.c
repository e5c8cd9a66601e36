#include "swap/note_claims.h"

#include "swap/swapped.h"

note_claims note_claims_between(arena *a, const claims *then, const claims *now) {
    note_claims changes = {.gained = claims_gained(a, then, now)};
    for (size_t i = 0; i < then->count; i++) {
        if (!then->items[i].holds || now->items[i].holds)
            continue;
        word_list *gone = now->items[i].tested ? &changes.lost : &changes.open;
        LIST_ADD(a, gone, then->items[i].claim);
    }
    return changes;
}

/* Claims rest on what brings the protein, fibre, sugar and fat: a pinch of spice changes none. */
static bool may_change_claims(const recipe *of, const swap_note *note) {
    enum { LEAST_PERCENT = 4 };
    return note->to_g > 0 && note->from_g * 100 >= LEAST_PERCENT * of->batch_g;
}

static note_claims changes_by(arena *a, const claims_asked *about, const swap_note *note,
                              caution_set said) {
    const recipe *swapped = recipe_swapped(a, about->of, note, about->water);
    recipe_macros figures = macros_of(swapped);
    protein_quality quality = quality_of(a, swapped);
    claims now = claims_brief_of(a, swapped, &figures, &quality, about->law);
    note_claims changes = note_claims_between(a, about->holding, &now);
    changes.cautions = cautions_of(swapped, figures.portion.of.of[NUTRIENT_PROTEIN]) & ~said;
    return changes;
}

const note_claims *note_claims_of(arena *a, const claims_asked *about, const swap_notes *notes) {
    note_claims *changes = ARENA_ARRAY(a, note_claims, notes->count);
    double protein_g = about->figures->portion.of.of[NUTRIENT_PROTEIN];
    caution_set said = cautions_of(about->of, protein_g);
    for (size_t i = 0; i < notes->count; i++)
        if (may_change_claims(about->of, &notes->items[i]))
            changes[i] = changes_by(a, about, &notes->items[i], said);
    return changes;
}
