#include "swap/main_swaps.h"

#include <stdint.h>

enum { KINDS_MOST = 10, OWNED_BY_FEW = KINDS_MOST };

/* What home bakers own most, by the leading words of its kind; families that are not here are not
 * asked for. Common practice, no source. */
static const char *const owned[FAMILY_COUNT][KINDS_MOST] = {
    [FAMILY_PROTEIN_POWDER] = {"whey concentrate", "whey isolate", "pea isolate", "pea",
                               "casein micellar", "soy isolate", "rice", "egg white",
                               "hemp concentrate", "blend"},
    [FAMILY_FLOUR] = {"oat", "wheat white", "wheat whole", "coconut", "spelt white", "chickpea",
                      "buckwheat", "rice white"},
    [FAMILY_MEAL] = {"almond", "hazelnut", "flaxseed"},
    [FAMILY_NUT_BUTTER] = {"peanut", "almond", "cashew", "sunflower", "hazelnut", "sesame"},
    [FAMILY_EGG] = {"whole", "white"},
};

bool main_swaps_asked_for(family in) {
    return owned[in][0] != NULL;
}

static span kind_of(const ingredient *what) {
    span rest = span_of(what->kind);
    return span_next_word(&rest);
}

/* Almond is almond, as meal or as flour. */
static bool same_kind(const ingredient *one, const ingredient *other) {
    return span_equal(kind_of(one), kind_of(other));
}

/* The place of its kind among those that are owned most. */
static size_t place_of(const ingredient *what) {
    for (size_t i = 0; i < KINDS_MOST && owned[what->in][i]; i++)
        if (kind_matches(owned[what->in][i], what->kind))
            return i;
    return OWNED_BY_FEW;
}

bool is_owned_by_many(const ingredient *what) {
    return place_of(what) < OWNED_BY_FEW;
}

/* Smaller goes before. Another make of what the recipe has is asked for least. */
static size_t rank_of(const recipe *of, const swap_note *note) {
    const ingredient *from = of->lines.items[note->line].what, *to = note->to;
    return from->in == to->in && same_kind(from, to) ? OWNED_BY_FEW + 1 : place_of(to);
}

static bool is_own_word(const swap_note *note) {
    return note->by.by == SAID_BY_RECIPE || note->by.by == SAID_BY_TRIAL;
}

/* What a rule promises against the water balance is not put forward. */
static bool may_have_page(const recipe *of, const swap_note *note) {
    return note->says <= VERDICT_DIFFERENT && note->to_g > 0 && !note->also_to &&
           main_swaps_asked_for(of->lines.items[note->line].what->in) &&
           (!note->past_rescue || is_own_word(note));
}

bool main_swaps_have(const main_swaps *chosen, const swap_note *note) {
    for (size_t i = 0; i < chosen->count; i++)
        if (chosen->items[i] == note)
            return true;
    return false;
}

static bool has_page(const main_swaps *chosen, const ingredient *to) {
    for (size_t i = 0; i < chosen->count; i++)
        if (chosen->items[i]->to == to)
            return true;
    return false;
}

static bool same_lines(const swap_note *one, const swap_note *other) {
    return one->line == other->line && one->second_line == other->second_line;
}

static bool gave_kind(const main_swaps *chosen, const swap_note *note) {
    for (size_t i = 0; i < chosen->count; i++)
        if (same_lines(chosen->items[i], note) && same_kind(chosen->items[i]->to, note->to))
            return true;
    return false;
}

/* Equal ones go by the order of the notes: best verdict, then name. */
static bool goes_before(const recipe *of, const swap_note *one, const swap_note *other) {
    bool one_differs = one->says == VERDICT_DIFFERENT;
    bool other_differs = other->says == VERDICT_DIFFERENT;
    if (one_differs != other_differs)
        return other_differs;
    size_t rank = rank_of(of, one), other_rank = rank_of(of, other);
    if (rank != other_rank)
        return rank < other_rank;
    return one->says == other->says && !one->to->hers && other->to->hers;
}

/* The best note among the `count` of one ingredient, of a kind that was not given yet; null when
 * there is none. */
static const swap_note *best_of(const recipe *of, const swap_note *notes, size_t count,
                                const main_swaps *chosen) {
    const swap_note *best = NULL;
    for (size_t i = 0; i < count; i++) {
        const swap_note *note = &notes[i];
        if (may_have_page(of, note) && !has_page(chosen, note->to) && !gave_kind(chosen, note) &&
            (!best || goes_before(of, note, best)))
            best = note;
    }
    return best;
}

static void choose(main_swaps *chosen, const swap_note *note) {
    chosen->items[chosen->count++] = note;
}

/* One from each ingredient, up to `wanted` in all; false when none had any left. */
static bool choose_round(const recipe *of, const swap_notes *notes, size_t wanted,
                         main_swaps *chosen) {
    size_t before = chosen->count;
    for (size_t i = 0, end; i < notes->count && chosen->count < wanted; i = end) {
        for (end = i + 1; end < notes->count; end++)
            if (!same_lines(&notes->items[end], &notes->items[i]))
                break;
        const swap_note *best = best_of(of, &notes->items[i], end - i, chosen);
        if (best)
            choose(chosen, best);
    }
    return chosen->count > before;
}

main_swaps main_swaps_of(const recipe *of, const swap_notes *notes, size_t wanted) {
    main_swaps chosen = {.count = 0};
    for (size_t i = 0; i < notes->count && chosen.count < wanted; i++)
        if (is_own_word(&notes->items[i]) && may_have_page(of, &notes->items[i]) &&
            !has_page(&chosen, notes->items[i].to))
            choose(&chosen, &notes->items[i]);
    while (chosen.count < wanted && choose_round(of, notes, wanted, &chosen))
        continue;
    return chosen;
}
