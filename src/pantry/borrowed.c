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

/* What the pantry file says it is like; null, with a problem, where that is no help. */
static const ingredient *stated(const pantry *shelf, const ingredient *hers, problems *found) {
    const ingredient *like = pantry_find(shelf, span_of(hers->uptake_like), shelf->home);
    if (like == hers && hers->replaces)
        like = hers->replaces;
    if (like && like->has_uptake && !like->borrowed_from)
        return like;
    const char *near = pantry_nearest(shelf, span_of(hers->uptake_like), shelf->home);
    if (like)
        problem_add(found, hers->uptake_like_at, "for example: like: pea protein isolate",
                    "%s has no water uptake of its own to lend", like->name);
    else
        problem_add(found, hers->uptake_like_at,
                    near ? arena_format(shelf->home, "did you mean \"%s\"?", near)
                         : "for example: like: pea protein isolate",
                    "no ingredient is called \"%s\"", hers->uptake_like);
    return NULL;
}

static range widened(range r) {
    return (range){r.low / BORROWED_WIDENED, r.typical, r.high * BORROWED_WIDENED};
}

static bool lacks_uptake(const ingredient *what) {
    return what->hers && !what->has_uptake && ingredient_takes_up(what);
}

static const ingredient *lender(const pantry *shelf, const ingredient *hers, problems *found) {
    if (hers->has_uptake)
        return NULL;
    if (hers->uptake_like)
        return stated(shelf, hers, found);
    return lacks_uptake(hers) ? nearest(shelf, hers) : NULL;
}

void pantry_borrow(pantry *shelf, problems *found) {
    for (size_t i = 0; i < shelf->count; i++) {
        ingredient *hers = shelf->items[i];
        const ingredient *from = lender(shelf, hers, found);
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

/* A test that needs a scale and a sieve. Its figures are rough, and so is what they are used for.
 */
#define WEIGH_AND_STIR                                                                             \
    "or weigh it: stir 10 g into 60 g of water, drain after 10 minutes; a tenth of the water it "  \
    "holds is `cold`, after a simmer `heated`"

void pantry_borrowed_report(const pantry *shelf, problems *found) {
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *hers = shelf->items[i];
        if (hers->uptake_like)
            continue; /* said, and answered */
        if (hers->borrowed_from)
            problem_note(found, "water-uptake", PROBLEM_WARNING, hers->at,
                         arena_format(shelf->home,
                                      "if it behaves like that one, say so: water-uptake: "
                                      "{like: %s}; " WEIGH_AND_STIR,
                                      hers->borrowed_from->name),
                         "%s states no water uptake: that of %s stands in, widened", hers->name,
                         hers->borrowed_from->name);
        else if (lacks_uptake(hers))
            problem_note(
                found, "water-uptake", PROBLEM_WARNING, hers->at,
                "say what it is like, water-uptake: {like: pea protein isolate}; " WEIGH_AND_STIR,
                "%s states no water uptake: the liquid of its swaps is not worked out", hers->name);
    }
}
