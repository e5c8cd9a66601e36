#include "pantry/borrowed.h"

#include "base/words.h"

/* How many leading words two kinds have in common. */
static size_t words_in_common(const char *one, const char *other) {
    span left = span_of(one), right = span_of(other);
    size_t count = 0;
    while (left.length && right.length && span_equal(span_next_word(&left), span_next_word(&right)))
        count++;
    return count;
}

/* The reference entry that `hers` replaces, else the one that stands nearest to it; null when none
 * is akin. */
static const ingredient *nearest(const pantry *shelf, const ingredient *hers) {
    const ingredient *best = NULL;
    size_t most = 0;
    if (hers->replaces && hers->replaces->has_uptake)
        return hers->replaces;
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *one = shelf->items[i];
        one = one->hers ? one->replaces : one; /* what else is hers changes nothing */
        if (!one || !one->has_uptake || one->in != hers->in)
            continue;
        size_t common = words_in_common(one->kind, hers->kind);
        bool simpler = best && strlen(one->kind) < strlen(best->kind);
        if (common > most || (common && common == most && simpler)) {
            best = one;
            most = common;
        }
    }
    return best;
}

static range widened(range r) {
    return (range){r.low / BORROWED_WIDENED, r.typical, r.high * BORROWED_WIDENED};
}

static bool lacks_uptake(const ingredient *what) {
    return what->hers && !what->has_uptake && ingredient_takes_up(what);
}

void pantry_borrow(pantry *shelf) {
    for (size_t i = 0; i < shelf->count; i++) {
        ingredient *hers = shelf->items[i];
        const ingredient *from = lacks_uptake(hers) ? nearest(shelf, hers) : NULL;
        if (!from)
            continue;
        hers->borrowed_from = from;
        hers->has_uptake = true;
        hers->cold_uptake = widened(from->cold_uptake);
        hers->heated_uptake = widened(from->heated_uptake);
        hers->uptake_source = (source_note){
            arena_format(shelf->home, "taken from %s, widened", from->name), CERTAINTY_ESTIMATE};
        if (!hers->sets_stated)
            hers->sets = from->sets;
    }
}

void pantry_borrowed_report(const pantry *shelf, problems *found) {
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *hers = shelf->items[i];
        if (hers->borrowed_from)
            problem_note(found, "water-uptake", PROBLEM_WARNING, hers->at,
                         "add `water-uptake` with `cold` and `heated`, from a trial or the maker",
                         "%s states no water uptake: that of %s stands in, widened", hers->name,
                         hers->borrowed_from->name);
        else if (lacks_uptake(hers))
            problem_note(found, "water-uptake", PROBLEM_WARNING, hers->at,
                         "add `water-uptake`, or a `kind` that the reference has",
                         "%s states no water uptake: the liquid of its swaps is not worked out",
                         hers->name);
    }
}
