#include "swap/balance_points.h"

#include "swap/answer.h"
#include "swap/balance_best.h"

#include <assert.h>
#include <stdint.h>

const char *balance_point_key(balance_point which) {
    static const char *const keys[POINT_COUNT] = {"equal_weight", "as_ruled", "best"};
    return keys[which];
}

/* The exchange of the note in the part that it is judged by, at equal weight. */
static exchange exchange_of(const leaving *what, const swap_note *note) {
    const double goes_g[] = {note->from_g, note->second_from_g};
    exchange made = {.about = what->part,
                     .replaced = what->replaced,
                     .before = &what->part_before,
                     .goes_count = what->count,
                     .comes = {note->to, 0},
                     .also_comes = {note->also_to, 0}};
    assert(what->count <= COUNT(goes_g));
    for (size_t i = 0; i < what->count; i++) {
        made.goes[i] = (part){what->goes[i].what, goes_g[i] * what->share_in_part};
        made.comes.grams += made.goes[i].grams;
    }
    if (note->also_to) /* half and half */
        made.also_comes.grams = made.comes.grams /= 2;
    return made;
}

static range range_times(range r, double times) {
    return (range){r.low * times, r.typical * times, r.high * times};
}

/* -- the points ------------------------------------------------------------------------------ */

/* `of` with the amounts of the part, which is `share` of the recipe, and the balance there. */
static balance_at settled(const exchange *equal, balance_at of, double share) {
    exchange made = *equal;
    made.comes.grams = of.to_g.typical;
    made.also_comes.grams = of.also_to_g;
    of.there = true;
    const ingredient *liquid =
        of.liquid_apart ? of.liquid_apart : liquid_at(made.about, of.liquid_line);
    of.after = exchange_balance(&made, liquid, of.liquid_g.typical);
    of.bowl_change_g = exchange_free_change_g(&made, &of.after, false);
    of.bake_change_g = exchange_free_change_g(&made, &of.after, true);
    of.to_g = range_times(of.to_g, 1 / share);
    of.also_to_g /= share;
    return of;
}

balance_comparison balance_compare(const recipe_facts *about, const swap_note *note) {
    leaving what = leaving_of(about, note->line, note->second_line);
    exchange equal = exchange_of(&what, note);
    double share = what.share_in_part, equal_g = equal.comes.grams;
    best_amounts best;
    double also_g = equal.also_comes.grams;
    balance_comparison out = {.from_g = (equal_g + also_g) / share,
                              .heated = note->heated,
                              .uptake_known = note->uptake_known,
                              .before = what.part_before};
    out.at[POINT_EQUAL_WEIGHT] = settled(&equal,
                                         (balance_at){.to_g = {equal_g, equal_g, equal_g},
                                                      .also_to_g = also_g,
                                                      .liquid_line = SIZE_MAX},
                                         share);
    if (note->to_g > 0 && note->ruled_g <= 0) /* else it is the best one */
        out.at[POINT_AS_RULED] = settled(
            &equal,
            (balance_at){
                .to_g = range_times((range){note->to_low_g, note->to_g, note->to_high_g}, share),
                .also_to_g = note->also_to_g * share,
                .liquid_g = {note->liquid_low_g, note->liquid_change_g, note->liquid_high_g},
                .liquid_line = note->liquid_line,
                .liquid_apart = note->liquid_apart},
            share);
    if (!note->also_to && balance_best(&equal, &best))
        out.at[POINT_BEST] = settled(
            &equal,
            (balance_at){.to_g = best.comes_g, .liquid_g = best.liquid_g, .liquid_line = best.line},
            share);
    return out;
}
