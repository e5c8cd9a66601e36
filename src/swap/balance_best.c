#include "swap/balance_best.h"

#include "swap/balance_quantities.h"
#include "swap/spread.h"

#include <stdint.h>

/* -- what is linear -------------------------------------------------------------------------- */

/* Sums over some grams of food, or of 1 g of one. Uptakes as published. */
typedef struct {
    double water, cold, heated, dry, fat, setting, sweetness, weight;
} sums;

/* Figures that are uncertain. */
enum { FIRST_COLD, FIRST_HEATED, SECOND_COLD, SECOND_HEATED, NEW_COLD, NEW_HEATED, IN_BATTER, ALL };

typedef struct {
    sums stays, first, second, comes, liquid; /* stays: all that does; the rest, of 1 g */
    double first_g, second_g;
    bool heated, of_liquids;
    range uncertain[ALL];
    double step[BALANCE_QUANTITIES];
    double loss;            /* share of the weight that the bake drives off */
    double low[2], high[2]; /* bounds of x and L */
} grounds;

static sums sums_plus(sums a, sums b, double times) {
    return (sums){a.water + times * b.water,
                  a.cold + times * b.cold,
                  a.heated + times * b.heated,
                  a.dry + times * b.dry,
                  a.fat + times * b.fat,
                  a.setting + times * b.setting,
                  a.sweetness + times * b.sweetness,
                  a.weight + times * b.weight};
}

static sums sums_of(const balance *of) {
    return (sums){of->water_g,
                  of->taken_cold_g.typical / UPTAKE_IN_BATTER,
                  of->held_heated_g.typical / UPTAKE_IN_BATTER,
                  of->dry_g,
                  of->fat_g,
                  of->setting_g,
                  of->sweetness_g,
                  of->batch_g};
}

static sums sums_of_one(const ingredient *what) {
    balance one = balance_of_ingredient(what, 1);
    return sums_of(&one);
}

/* -- the differences ------------------------------------------------------------------------- */

/* What free water must be, as a linear function of sums: with `per_dry` a gram of dry in a
 * batter, with `per_taken` a gram of what could be taken up in a dry dough. */
typedef struct {
    double per_dry, per_taken;
} wanted_water;

/* Water, in the bowl or, less the bake loss, in the bake; and what is taken of it there. */
static double water_in(const grounds *on, const sums *of, balance_quantity where) {
    return where == BALANCE_BAKE ? of->water - on->loss * of->weight : of->water;
}

static double taken_in(const sums *of, balance_quantity where, double in_batter) {
    return in_batter * (where == BALANCE_BAKE ? of->heated : of->cold);
}

static wanted_water wanted_in(const grounds *on, const sums *before, balance_quantity where,
                              double in_batter) {
    double taken_g = taken_in(before, where, in_batter);
    double free_g = water_in(on, before, where) - taken_g;
    if (free_g < 0 && taken_g > 0)
        return (wanted_water){0, free_g / taken_g};
    return (wanted_water){liquid_free_per_dry(fmax(free_g, 0), before->dry), 0};
}

/* The quantity less what is wanted in proportion: linear in the sums. */
static double quantity_of(const grounds *on, const sums *of, balance_quantity which,
                          wanted_water wanted, double in_batter) {
    switch (which) {
    case BALANCE_BOWL:
    case BALANCE_BAKE: {
        double taken_g = taken_in(of, which, in_batter);
        return water_in(on, of, which) - taken_g - wanted.per_dry * of->dry -
               wanted.per_taken * taken_g;
    }
    case BALANCE_SETTING:
        return of->setting;
    case BALANCE_BULK:
        return of->dry;
    case BALANCE_FAT:
        return of->fat;
    case BALANCE_SWEETNESS:
    case BALANCE_QUANTITIES:
        break;
    }
    return of->sweetness;
}

/* A row a quantity, and one for all the water. */
enum { WATER_ROW = BALANCE_QUANTITIES, ROWS };

/* One row: at x and L the weighted difference is constant + slope[0] x + slope[1] L. */
typedef struct {
    double constant, slope[2];
} row;

static row row_of(const grounds *on, balance_quantity which, const sums *before, const sums *comes,
                  double in_batter) {
    wanted_water wanted = {0};
    bool counts = on->heated || !balance_quantity_facts(which)->of_heat;
    double scale = counts ? sqrt(balance_quantity_facts(which)->weight) / on->step[which] : 0;
    if ((which == BALANCE_BOWL || which == BALANCE_BAKE) && !on->of_liquids)
        wanted = wanted_in(on, before, which, in_batter);
    double was = quantity_of(on, before, which, wanted, in_batter);
    return (row){scale * (quantity_of(on, &on->stays, which, wanted, in_batter) - was),
                 {scale * quantity_of(on, comes, which, wanted, in_batter),
                  scale * quantity_of(on, &on->liquid, which, wanted, in_batter)}};
}

static row water_row(const grounds *on, const sums *before, const sums *comes) {
    double scale = sqrt(BEST_WATER_WEIGHT) / on->step[BALANCE_BOWL];
    return (row){scale * (on->stays.water - before->water),
                 {scale * comes->water, scale * on->liquid.water}};
}

/* -- least squares in a box ------------------------------------------------------------------ */

typedef struct {
    double at[2], squares;
} candidate;

static double squares_at(const row rows[ROWS], const double at[2]) {
    double sum = 0;
    for (size_t i = 0; i < ROWS; i++) {
        double value = rows[i].constant + rows[i].slope[0] * at[0] + rows[i].slope[1] * at[1];
        sum += value * value;
    }
    return sum;
}

/* The best place on the edge where `fixed` has the value `here`. */
static candidate best_on_edge(const row rows[ROWS], const grounds *on, size_t fixed, double here) {
    size_t moves = 1 - fixed;
    double top = 0, bottom = 0;
    candidate best = {.at = {here, here}};
    for (size_t i = 0; i < ROWS; i++) {
        top -= rows[i].slope[moves] * (rows[i].constant + rows[i].slope[fixed] * here);
        bottom += rows[i].slope[moves] * rows[i].slope[moves];
    }
    double free_place = bottom > 0 ? top / bottom : 0;
    best.at[moves] = fmin(fmax(free_place, on->low[moves]), on->high[moves]);
    best.squares = squares_at(rows, best.at);
    return best;
}

/* Where the normal equations hold; false when they have no one solution in the box. */
static bool best_inside(const row rows[ROWS], const grounds *on, candidate *out) {
    double xx = 0, xl = 0, ll = 0, x = 0, l = 0;
    for (size_t i = 0; i < ROWS; i++) {
        const row *r = &rows[i];
        xx += r->slope[0] * r->slope[0];
        xl += r->slope[0] * r->slope[1];
        ll += r->slope[1] * r->slope[1];
        x -= r->slope[0] * r->constant;
        l -= r->slope[1] * r->constant;
    }
    double determinant = xx * ll - xl * xl;
    if (determinant <= 1e-12 * xx * ll)
        return false;
    out->at[0] = (x * ll - l * xl) / determinant;
    out->at[1] = (l * xx - x * xl) / determinant;
    out->squares = squares_at(rows, out->at);
    for (size_t i = 0; i < 2; i++)
        if (out->at[i] < on->low[i] || out->at[i] > on->high[i])
            return false;
    return true;
}

static candidate best_in_box(const row rows[ROWS], const grounds *on) {
    candidate best;
    if (best_inside(rows, on, &best))
        return best;
    best = best_on_edge(rows, on, 0, on->low[0]);
    const candidate others[] = {best_on_edge(rows, on, 0, on->high[0]),
                                best_on_edge(rows, on, 1, on->low[1]),
                                best_on_edge(rows, on, 1, on->high[1])};
    for (size_t i = 0; i < COUNT(others); i++)
        if (others[i].squares < best.squares)
            best = others[i];
    return best;
}

/* The best amounts with the uncertain figures `at` some values. */
static candidate best_at(const grounds *on, const double at[]) {
    sums before = on->stays, first = on->first, second = on->second, comes = on->comes;
    row rows[ROWS];
    first.cold = at[FIRST_COLD];
    first.heated = at[FIRST_HEATED];
    second.cold = at[SECOND_COLD];
    second.heated = at[SECOND_HEATED];
    comes.cold = at[NEW_COLD];
    comes.heated = at[NEW_HEATED];
    before = sums_plus(before, first, on->first_g);
    before = sums_plus(before, second, on->second_g);
    for (size_t i = 0; i < BALANCE_QUANTITIES; i++)
        rows[i] = row_of(on, (balance_quantity)i, &before, &comes, at[IN_BATTER]);
    rows[WATER_ROW] = water_row(on, &before, &comes);
    return best_in_box(rows, on);
}

/* -- the whole ------------------------------------------------------------------------------- */

static void set_uptakes(grounds *on, int which, const ingredient *what) {
    if (!what->has_uptake)
        return;
    on->uncertain[which] = what->cold_uptake;
    on->uncertain[which + 1] = what->heated_uptake;
}

/* A liquid, of which 1 g is mostly water. */
static bool is_wet(const sums *one) {
    return one->water > 0.5;
}

static void set_bounds(grounds *on, const sums *before) {
    double goes_g = on->first_g + on->second_g;
    double most_g = LIQUID_RESCUES_MOST * before->weight;
    double water_gone_g = on->first_g * on->first.water + on->second_g * on->second.water;
    double sweet_g = on->first_g * on->first.sweetness + on->second_g * on->second.sweetness;
    on->low[0] = BEST_LEAST * goes_g;
    on->high[0] = BEST_MOST * goes_g;
    if (on->comes.sweetness > 0) /* a drop of an intense sweetener stands for a cup of sugar */
        on->low[0] = fmin(on->low[0], sweet_g / on->comes.sweetness);
    if (on->of_liquids) /* then its own amount is all there is to find */
        return;
    on->high[1] = most_g + water_gone_g;
    on->low[1] = -most_g - (is_wet(&on->comes) ? on->high[0] * on->comes.water : 0);
}

static grounds grounds_of(const exchange *made) {
    grounds on = {.stays = sums_of(made->before),
                  .loss = made->before->lost_g / made->before->batch_g,
                  .heated = made->about->baked,
                  .of_liquids = exchange_of_liquids(made)};
    sums before = on.stays;
    on.first = sums_of_one(made->goes[0].what);
    on.first_g = made->goes[0].grams;
    on.stays = sums_plus(on.stays, on.first, -on.first_g);
    set_uptakes(&on, FIRST_COLD, made->goes[0].what);
    if (made->goes_count == 2) {
        on.second = sums_of_one(made->goes[1].what);
        on.second_g = made->goes[1].grams;
        on.stays = sums_plus(on.stays, on.second, -on.second_g);
        set_uptakes(&on, SECOND_COLD, made->goes[1].what);
    }
    on.comes = sums_of_one(made->comes.what);
    set_uptakes(&on, NEW_COLD, made->comes.what);
    on.uncertain[IN_BATTER] =
        (range){UPTAKE_IN_BATTER_LOW, UPTAKE_IN_BATTER, UPTAKE_IN_BATTER_HIGH};
    for (size_t i = 0; i < BALANCE_QUANTITIES; i++)
        on.step[i] = balance_step_g(made->before, (balance_quantity)i);
    set_bounds(&on, &before);
    return on;
}

/* The change is made on `line`; what is held back can't be all it has, and egg is not added. */
static void set_liquid(grounds *on, const exchange *made, size_t line, bool adds) {
    const recipe_facts *about = made->about;
    on->liquid = sums_of_one(liquid_at(about, line));
    if (adds)
        on->low[1] = 0;
    else
        on->high[1] = 0;
    double line_g = line == SIZE_MAX ? 0 : about->of->weights[line].grams;
    double most = is_wet(&on->comes) ? 1 : BEST_HELD_BACK_MOST;
    on->low[1] = fmax(on->low[1], -most * line_g);
}

static double best_comes_g(const void *grounds_given, const double at[]) {
    return best_at(grounds_given, at).at[0];
}

static double best_liquid_g(const void *grounds_given, const double at[]) {
    return best_at(grounds_given, at).at[1];
}

/* The range of what is worked out, within the bounds of x (0) or L (1). */
static range bounded(spread_figure *figure, const grounds *on, size_t which) {
    range r = spread_over(figure, on, on->uncertain, ALL);
    return (range){fmax(r.low, on->low[which]), r.typical, fmin(r.high, on->high[which])};
}

bool balance_best(const exchange *made, best_amounts *out) {
    double at[ALL];
    if (!exchange_known(made) || made->goes[0].grams <= 0 || made->before->batch_g <= 0)
        return false;
    grounds on = grounds_of(made);
    for (size_t i = 0; i < ALL; i++)
        at[i] = on.uncertain[i].typical;
    on.liquid = sums_of_one(liquid_at(made->about, SIZE_MAX));
    bool adds = best_at(&on, at).at[1] > 0; /* as plain water: tells whether to add or hold back */
    size_t line = liquid_line(made->about, made->replaced, adds ? 1 : -1);
    set_liquid(&on, made, line, adds);
    *out = (best_amounts){bounded(best_comes_g, &on, 0), bounded(best_liquid_g, &on, 1), line};
    return true;
}
