#include "swap/balance.h"

double balance_water_per_g(const ingredient *what) {
    const nutrients *n = &what->per_100_g;
    const unsigned macros_known =
        1u << NUTRIENT_PROTEIN | 1u << NUTRIENT_FAT | 1u << NUTRIENT_CARBOHYDRATE;
    if (nutrient_known(n, NUTRIENT_WATER))
        return n->of[NUTRIENT_WATER] / 100;
    if ((n->known & macros_known) != macros_known)
        return 0;
    double rest = 100 - n->of[NUTRIENT_PROTEIN] - n->of[NUTRIENT_FAT] -
                  n->of[NUTRIENT_CARBOHYDRATE] - n->of[NUTRIENT_ALCOHOL];
    return rest > 0 ? rest / 100 : 0;
}

double balance_dry_per_g(const ingredient *what) {
    const unsigned free_fat = 1u << FAMILY_FAT | 1u << FAMILY_NUT_BUTTER | 1u << FAMILY_DAIRY |
                              1u << FAMILY_EGG | 1u << FAMILY_LIQUID;
    const double *of = what->per_100_g.of;
    double fat = free_fat >> what->in & 1u ? of[NUTRIENT_FAT] : 0;
    double dry = 1 - balance_water_per_g(what) - (fat + of[NUTRIENT_ALCOHOL]) / 100;
    return dry > 0 ? dry : 0;
}

range balance_cold_uptake(const ingredient *what) {
    return what->has_uptake ? what->cold_uptake : (range){0};
}

bool balance_known(const ingredient *what) {
    return what->has_uptake || !ingredient_takes_up(what);
}

static range in_batter(range uptake, double grams) {
    return (range){uptake.low * grams * UPTAKE_IN_BATTER_LOW,
                   uptake.typical * grams * UPTAKE_IN_BATTER,
                   uptake.high * grams * UPTAKE_IN_BATTER_HIGH};
}

balance balance_of_ingredient(const ingredient *what, double grams) {
    /* soft counts half: an estimate */
    static const double setting_share[HEAT_SET_COUNT] = {
        [HEAT_SET_NONE] = 0, [HEAT_SET_SOFT] = 0.5, [HEAT_SET_FIRM] = 1};
    const double *of = what->per_100_g.of;
    double protein_g = grams * of[NUTRIENT_PROTEIN] / 100;
    balance sum = {.water_g = grams * balance_water_per_g(what),
                   .taken_cold_g = in_batter(balance_cold_uptake(what), grams),
                   .fat_g = grams * of[NUTRIENT_FAT] / 100,
                   .dry_g = grams * balance_dry_per_g(what),
                   .firm_g = what->sets == HEAT_SET_FIRM ? protein_g : 0,
                   .soft_g = what->sets == HEAT_SET_SOFT ? protein_g : 0,
                   .setting_g = protein_g * setting_share[what->sets],
                   .sweetness_g = grams * what->sweetness,
                   .batch_g = grams};
    if (what->has_uptake)
        sum.held_heated_g = in_batter(what->heated_uptake, grams);
    return sum;
}

balance balance_of(const recipe *of) {
    balance sum = {0};
    for (size_t i = 0; i < of->lines.count; i++) {
        if (!of->lines.items[i].what)
            continue;
        balance line = balance_of_ingredient(of->lines.items[i].what, of->weights[i].grams);
        sum = balance_sum(&sum, &line);
    }
    sum.batch_g = of->batch_g; /* what the pantry does not know weighs too */
    sum.lost_g = of->bake_loss * of->batch_g;
    return sum;
}

static range range_plus(range a, range b, double times) {
    return (range){a.low + times * b.low, a.typical + times * b.typical, a.high + times * b.high};
}

static balance balance_plus(const balance *a, const balance *b, double times) {
    return (balance){.water_g = a->water_g + times * b->water_g,
                     .taken_cold_g = range_plus(a->taken_cold_g, b->taken_cold_g, times),
                     .held_heated_g = range_plus(a->held_heated_g, b->held_heated_g, times),
                     .fat_g = a->fat_g + times * b->fat_g,
                     .dry_g = a->dry_g + times * b->dry_g,
                     .firm_g = a->firm_g + times * b->firm_g,
                     .soft_g = a->soft_g + times * b->soft_g,
                     .setting_g = a->setting_g + times * b->setting_g,
                     .sweetness_g = a->sweetness_g + times * b->sweetness_g,
                     .batch_g = a->batch_g + times * b->batch_g,
                     .lost_g = a->lost_g + times * b->lost_g};
}

balance balance_sum(const balance *a, const balance *b) {
    return balance_plus(a, b, 1);
}

/* A difference may turn a range about: its low is where the low parts of the two lead. */
static range ordered(range r) {
    return r.low <= r.high ? r : (range){r.high, r.typical, r.low};
}

balance balance_difference(const balance *a, const balance *b) {
    balance change = balance_plus(a, b, -1);
    change.taken_cold_g = ordered(change.taken_cold_g);
    change.held_heated_g = ordered(change.held_heated_g);
    return change;
}

static range free_of(double water_g, range taken_g) {
    return (range){water_g - taken_g.high, water_g - taken_g.typical, water_g - taken_g.low};
}

range balance_free_cold_g(const balance *of) {
    return free_of(of->water_g, of->taken_cold_g);
}

range balance_free_heated_g(const balance *of) {
    return free_of(of->water_g - of->lost_g, of->held_heated_g);
}
