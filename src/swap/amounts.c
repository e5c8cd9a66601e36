#include "swap/amounts.h"

#include "swap/balance.h"
#include "swap/spread.h"

/* -- keeping a total ------------------------------------------------------------------------- */

static bool weight_per_g(const ingredient *what, range *out) {
    (void)what;
    *out = (range){1, 1, 1};
    return true;
}

static bool cups_per_g(const ingredient *what, range *out) {
    range room;
    const range *cup = ingredient_measure(what, span_of("cup"), &room);
    if (!cup || cup->low <= 0)
        return false;
    *out = (range){1 / cup->high, 1 / cup->typical, 1 / cup->low};
    return true;
}

static bool uptake_per_g(const ingredient *what, range *out) {
    *out = balance_cold_uptake(what);
    return out->low > 0;
}

static bool exactly(double figure, range *out) {
    *out = (range){figure, figure, figure};
    return figure > 0;
}

static bool protein_per_g(const ingredient *what, range *out) {
    return exactly(what->per_100_g.of[NUTRIENT_PROTEIN] / 100, out);
}

static bool sweetness_per_g(const ingredient *what, range *out) {
    return exactly(what->sweetness, out);
}

/* Sets the measure of 1 g; false where the pantry does not know it or there is none. */
typedef bool measure_per_g(const ingredient *what, range *out);

static measure_per_g *const measures[] = {
    [AMOUNT_UNSTATED] = weight_per_g,       [AMOUNT_WEIGHT] = weight_per_g,
    [AMOUNT_VOLUME] = cups_per_g,           [AMOUNT_MATCH_WATER_UPTAKE] = uptake_per_g,
    [AMOUNT_MATCH_PROTEIN] = protein_per_g, [AMOUNT_MATCH_SWEETNESS] = sweetness_per_g,
    [AMOUNT_MATCH_BALANCE] = NULL,
};

/* `top` / `bottom`, both above 0: its spread is that of its factors' logarithms. */
static range quotient(range top, range bottom) {
    spread s = {.typical = 0};
    spread_add(&s, log(top.low / top.typical));
    spread_add(&s, log(top.high / top.typical));
    spread_add(&s, log(bottom.typical / bottom.low));
    spread_add(&s, log(bottom.typical / bottom.high));
    range factor = spread_range(&s);
    double typical = top.typical / bottom.typical, low = exp(factor.low), high = exp(factor.high);
    return (range){typical * low, typical, typical * high};
}

bool amount_in_place(amount_rule by, double ratio, const part old[], size_t count,
                     const ingredient *to, range *grams) {
    range total = {0}, one;
    double times = ratio > 0 ? ratio : 1;
    if (!measures[by])
        return false;
    for (size_t i = 0; i < count; i++) {
        if (!measures[by](old[i].what, &one) || old[i].grams <= 0)
            return false;
        total.low += one.low * old[i].grams * times;
        total.typical += one.typical * old[i].grams * times;
        total.high += one.high * old[i].grams * times;
    }
    if (!measures[by](to, &one))
        return false;
    *grams = quotient(total, one);
    return true;
}

/* -- two for one ----------------------------------------------------------------------------- */

enum { DRY, WET, NEW, THINGS }; /* the roles of DRY and WET may be exchanged: signs cancel */

/* What the balance rests on. */
typedef struct {
    double water[THINGS], uptake[THINGS], in_batter;
} grounds;

/* Grams of the wet that go with 1 g of the dry, so that both equations hold; not above 0 or not
 * finite where `to` is not between the two. */
static double wet_per_dry(const grounds *on) {
    double free_per_g[THINGS];
    for (size_t i = 0; i < THINGS; i++)
        free_per_g[i] = on->water[i] - on->in_batter * on->uptake[i];
    return (free_per_g[DRY] - free_per_g[NEW]) / (free_per_g[NEW] - free_per_g[WET]);
}

/* The range of z = x (1 + y/x) for `dry_g`, y never more than the line's `wet_g`. */
static range balanced_range(grounds on, const range uptakes[THINGS], double dry_g, double wet_g) {
    spread s = {.typical = dry_g * (1 + wet_per_dry(&on))};
    for (size_t i = 0; i < 2 * (THINGS + 1); i++) {
        grounds moved = on;
        bool high = i & 1;
        if (i / 2 == THINGS)
            moved.in_batter = high ? UPTAKE_IN_BATTER_HIGH : UPTAKE_IN_BATTER_LOW;
        else
            moved.uptake[i / 2] = high ? uptakes[i / 2].high : uptakes[i / 2].low;
        double ratio = wet_per_dry(&moved);
        double wet = ratio > 0 ? ratio * dry_g : ratio > -1 ? 0 : wet_g; /* no solution: an end */
        spread_add(&s, dry_g + (wet < wet_g ? wet : wet_g));
    }
    return spread_range(&s);
}

/* Most of it that may go. */
static double most_g(const part *held) {
    const unsigned builds = 1u << FAMILY_FLOUR | 1u << FAMILY_MEAL | 1u << FAMILY_FRUIT_PUREE;
    return held->grams * (builds >> held->what->in & 1u ? BALANCED_PART_MOST : 1);
}

bool amounts_balanced(const part old[2], const ingredient *to, balanced_amounts *out) {
    const ingredient *things[THINGS] = {old[0].what, old[1].what, to};
    range uptakes[THINGS];
    grounds on = {.in_batter = UPTAKE_IN_BATTER};
    for (size_t i = 0; i < THINGS; i++) {
        if (!balance_known(things[i]))
            return false;
        uptakes[i] = balance_cold_uptake(things[i]);
        on.uptake[i] = uptakes[i].typical;
        on.water[i] = balance_water_per_g(things[i]);
    }
    double ratio = wet_per_dry(&on);
    if (!isfinite(ratio) || ratio <= 0 || old[0].grams <= 0 || old[1].grams <= 0)
        return false;
    double dry_g = fmin(most_g(&old[0]), most_g(&old[1]) / ratio);
    out->goes_g[0] = dry_g;
    out->goes_g[1] = fmin(dry_g * ratio, most_g(&old[1])); /* all of it is all, rounding apart */
    out->comes_g = balanced_range(on, uptakes, dry_g, old[1].grams);
    return true;
}
