#include "swap/balance_points.h"

#include "swap/answer.h"
#include "swap/balance_best.h"
#include "swap/spread.h"

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

/* -- how far a difference is known ----------------------------------------------------------- */

/* Uncertain in a difference: the uptakes of what goes and comes, and how much of them counts. */
enum { GOES_FIRST, GOES_SECOND, COMES, ALSO_COMES, IN_BATTER, UNCERTAIN };

typedef struct {
    double water_g;          /* more or less than before */
    double taken_g;          /* what else is taken up more, by the liquid: known well enough */
    double grams[IN_BATTER]; /* that come (+) and go (-) */
    range uncertain[UNCERTAIN];
} grounds;

static double change_at(const void *grounds_given, const double at[]) {
    const grounds *on = grounds_given;
    double uptake_g = 0;
    for (size_t i = 0; i < IN_BATTER; i++)
        uptake_g += on->grams[i] * at[i];
    return on->water_g - on->taken_g - at[IN_BATTER] * uptake_g;
}

static range uptake_of(const ingredient *what, bool heated) {
    return what->has_uptake ? heated ? what->heated_uptake : what->cold_uptake : (range){0};
}

/* The change of free water that `made` brings, the liquid included; `typical_g` of it. */
static range free_change_g(const exchange *made, double water_g, bool heated, double typical_g) {
    double at[UNCERTAIN];
    grounds on = {.water_g = water_g,
                  .uncertain = {[COMES] = uptake_of(made->comes.what, heated),
                                [IN_BATTER] = {UPTAKE_IN_BATTER_LOW, UPTAKE_IN_BATTER,
                                               UPTAKE_IN_BATTER_HIGH}},
                  .grams = {[COMES] = made->comes.grams}};
    if (made->also_comes.what) {
        on.uncertain[ALSO_COMES] = uptake_of(made->also_comes.what, heated);
        on.grams[ALSO_COMES] = made->also_comes.grams;
    }
    for (size_t i = 0; i < made->goes_count; i++) {
        on.uncertain[GOES_FIRST + i] = uptake_of(made->goes[i].what, heated);
        on.grams[GOES_FIRST + i] = -made->goes[i].grams;
    }
    for (size_t i = 0; i < UNCERTAIN; i++)
        at[i] = on.uncertain[i].typical;
    on.taken_g = change_at(&on, at) - typical_g;
    return spread_over(change_at, &on, on.uncertain, UNCERTAIN);
}

/* -- the points ------------------------------------------------------------------------------ */

/* `of` with the amounts of the part, which is `share` of the recipe, and the balance there. */
static balance_at settled(const exchange *equal, balance_at of, double share) {
    exchange made = *equal;
    made.comes.grams = of.to_g.typical;
    made.also_comes.grams = of.also_to_g;
    of.there = true;
    of.after = exchange_balance(&made, liquid_at(made.about, of.liquid_line), of.liquid_g.typical);
    double water_g = of.after.water_g - made.before->water_g;
    double bowl_g =
        balance_free_cold_g(&of.after).typical - balance_free_cold_g(made.before).typical;
    double bake_g =
        balance_free_heated_g(&of.after).typical - balance_free_heated_g(made.before).typical;
    of.bowl_change_g = free_change_g(&made, water_g, false, bowl_g);
    of.bake_change_g =
        free_change_g(&made, water_g - of.after.lost_g + made.before->lost_g, true, bake_g);
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
    if (note->to_g > 0)
        out.at[POINT_AS_RULED] = settled(
            &equal,
            (balance_at){
                .to_g = range_times((range){note->to_low_g, note->to_g, note->to_high_g}, share),
                .also_to_g = note->also_to_g * share,
                .liquid_g = {note->liquid_low_g, note->liquid_change_g, note->liquid_high_g},
                .liquid_line = note->liquid_line},
            share);
    if (!note->also_to && balance_best(&equal, &best))
        out.at[POINT_BEST] = settled(
            &equal,
            (balance_at){.to_g = best.comes_g, .liquid_g = best.liquid_g, .liquid_line = best.line},
            share);
    return out;
}
