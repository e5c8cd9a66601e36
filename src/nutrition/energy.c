#include "nutrition/energy.h"

#include "base/list.h"
#include "base/number.h"

#include <math.h>

/* General Atwater factors, kcal per g: FAO Food and Nutrition Paper 77 (2003), from memory;
 * protein, fat and carbohydrate also 21 CFR 101.9(c)(1)(i)(B). */
#define ATWATER_PROTEIN      4.0
#define ATWATER_FAT          9.0
#define ATWATER_CARBOHYDRATE 4.0
#define ATWATER_ALCOHOL      7.0

/* kcal per g of each sugar alcohol under US rules: 21 CFR 101.9(c)(1)(i)(F), from memory. One
 * that is not named gets no discount: it counts as carbohydrate. */
static const double us_polyol_kcal[POLYOL_COUNT] = {
    [POLYOL_NONE] = ATWATER_CARBOHYDRATE,
    [POLYOL_ERYTHRITOL] = 0,
    [POLYOL_XYLITOL] = 2.4,
    [POLYOL_MALTITOL] = 2.1,
    [POLYOL_SORBITOL] = 2.6,
    [POLYOL_ISOMALT] = 2.0,
    [POLYOL_LACTITOL] = 2.0,
    [POLYOL_MANNITOL] = 1.6,
};

/* Energy per g under Regulation (EU) 1169/2011, Annex XIV. */
typedef struct {
    double kcal, kj;
} eu_factor;

static const eu_factor eu_carbohydrate = {4, 17}, eu_polyols = {2.4, 10}, eu_erythritol = {0, 0},
                       eu_protein = {4, 17}, eu_fat = {9, 37}, eu_fibre = {2, 8},
                       eu_alcohol = {7, 29};

static double amount_of(const nutrients *of, nutrient which) {
    return nutrient_known(of, which) ? of->of[which] : 0;
}

static bool all_known(const nutrients *of, unsigned needed) {
    return (of->known & needed) == needed;
}

static double not_below_nought(double amount) {
    return amount > 0 ? amount : 0;
}

#define MACROS_NEEDED (1u << NUTRIENT_PROTEIN | 1u << NUTRIENT_FAT | 1u << NUTRIENT_CARBOHYDRATE)

bool energy_atwater(const nutrients *of, polyol which, double *kcal) {
    if (!all_known(of, MACROS_NEEDED))
        return false;
    double polyols_g = amount_of(of, NUTRIENT_POLYOLS);
    double other_g = not_below_nought(of->of[NUTRIENT_CARBOHYDRATE] - polyols_g);
    *kcal = ATWATER_PROTEIN * of->of[NUTRIENT_PROTEIN] + ATWATER_FAT * of->of[NUTRIENT_FAT] +
            ATWATER_CARBOHYDRATE * other_g + us_polyol_kcal[which] * polyols_g +
            ATWATER_ALCOHOL * amount_of(of, NUTRIENT_ALCOHOL);
    return true;
}

static void add_energy(eu_factor per_g, double grams, double *kcal, double *kj) {
    *kcal += per_g.kcal * grams;
    *kj += per_g.kj * grams;
}

bool energy_eu(const nutrients *of, polyol which, double *kcal, double *kj) {
    if (!all_known(of, MACROS_NEEDED | 1u << NUTRIENT_FIBRE))
        return false;
    double polyols_g = amount_of(of, NUTRIENT_POLYOLS), fibre_g = of->of[NUTRIENT_FIBRE];
    double other_g = not_below_nought(of->of[NUTRIENT_CARBOHYDRATE] - fibre_g - polyols_g);
    *kcal = *kj = 0;
    add_energy(eu_carbohydrate, other_g, kcal, kj);
    add_energy(which == POLYOL_ERYTHRITOL ? eu_erythritol : eu_polyols, polyols_g, kcal, kj);
    add_energy(eu_protein, of->of[NUTRIENT_PROTEIN], kcal, kj);
    add_energy(eu_fat, of->of[NUTRIENT_FAT], kcal, kj);
    add_energy(eu_fibre, fibre_g, kcal, kj);
    add_energy(eu_alcohol, amount_of(of, NUTRIENT_ALCOHOL), kcal, kj);
    return true;
}

/* A part that can't be there where its whole is nought. */
static const struct {
    nutrient whole, part;
} noughts[] = {
    {NUTRIENT_FAT, NUTRIENT_SATURATES},       {NUTRIENT_CARBOHYDRATE, NUTRIENT_FIBRE},
    {NUTRIENT_CARBOHYDRATE, NUTRIENT_SUGARS}, {NUTRIENT_CARBOHYDRATE, NUTRIENT_POLYOLS},
    {NUTRIENT_SUGARS, NUTRIENT_ADDED_SUGARS},
};

/* Families sold plain: an entry with added sugars would state them. The reference pantry states
 * them wherever there are some, but for sweeteners whose sugars are the food's own (date sugar);
 * a pack of one's own, of powder, yogurt or dried fruit, may well hold some that went unstated. */
static const unsigned plain_families =
    1u << FAMILY_FLOUR | 1u << FAMILY_MEAL | 1u << FAMILY_GRAIN | 1u << FAMILY_LEGUME |
    1u << FAMILY_NUT | 1u << FAMILY_EGG | 1u << FAMILY_VEGETABLE | 1u << FAMILY_FAT |
    1u << FAMILY_LEAVENER | 1u << FAMILY_STARCH | 1u << FAMILY_GUM | 1u << FAMILY_SALT;

static bool is_plain(const ingredient *of) {
    return of->hers ? plain_families >> of->in & 1u : of->in != FAMILY_SWEETENER;
}

/* Plants and minerals hold cholesterol in traces at most; tables state 0 (USDA SR28). */
static bool is_without_cholesterol(const ingredient *of) {
    static const allergen_set animal = 1u << ALLERGEN_MILK | 1u << ALLERGEN_EGG |
                                       1u << ALLERGEN_FISH | 1u << ALLERGEN_CRUSTACEAN |
                                       1u << ALLERGEN_MOLLUSC;
    return (of->from == ORIGIN_PLANT || of->from == ORIGIN_MINERAL) && !(of->allergens & animal);
}

static void fill_nought(nutrients *n, nutrient which) {
    if (!nutrient_known(n, which))
        nutrient_set(n, which, 0);
}

static void fill_noughts(ingredient *of) {
    nutrients *n = &of->per_100_g;
    for (size_t i = 0; i < COUNT(noughts); i++)
        if (nutrient_known(n, noughts[i].whole) && n->of[noughts[i].whole] == 0)
            fill_nought(n, noughts[i].part);
    if (is_plain(of))
        fill_nought(n, NUTRIENT_ADDED_SUGARS);
    if (is_without_cholesterol(of))
        fill_nought(n, NUTRIENT_CHOLESTEROL);
}

static void fill_available_carbohydrate(nutrients *n) {
    if (nutrient_known(n, NUTRIENT_AVAILABLE_CARBOHYDRATE) ||
        !all_known(n, 1u << NUTRIENT_CARBOHYDRATE | 1u << NUTRIENT_FIBRE))
        return;
    nutrient_set(n, NUTRIENT_AVAILABLE_CARBOHYDRATE,
                 not_below_nought(n->of[NUTRIENT_CARBOHYDRATE] - n->of[NUTRIENT_FIBRE]));
}

void energy_fill(ingredient *of) {
    double kcal, kj;
    fill_noughts(of);
    fill_available_carbohydrate(&of->per_100_g);
    if (energy_atwater(&of->per_100_g, of->polyols, &kcal))
        nutrient_set(&of->per_100_g, NUTRIENT_ENERGY_ATWATER, kcal);
    if (energy_eu(&of->per_100_g, of->polyols, &kcal, &kj)) {
        nutrient_set(&of->per_100_g, NUTRIENT_ENERGY_EU, kcal);
        nutrient_set(&of->per_100_g, NUTRIENT_ENERGY_EU_KJ, kj);
    }
}

/* What rounding on a pack can move, per serving: half a gram each of protein, fat and
 * carbohydrate, and 5 kcal (21 CFR 101.9(c)). */
#define PACK_SUM_G       1.5
#define PACK_PART_G      1.0
#define PACK_ENERGY_KCAL (0.5 * (ATWATER_PROTEIN + ATWATER_FAT + ATWATER_CARBOHYDRATE) + 5)

/* Tables state each figure by an assay of its own (milk: 4.8 g carbohydrate by difference, 5.05 g
 * sugars: USDA SR28 01077). */
#define TABLE_SUM_G       1.0
#define TABLE_PART_G      0.5
#define TABLE_ENERGY_KCAL 15.0
#define ENERGY_SHARE      0.15

static double slack_of(const ingredient *of, double table, double per_serving) {
    return of->serving_g > 0 ? table + per_serving * 100 / of->serving_g : table;
}

static void check_sum(const ingredient *of, problems *found) {
    const nutrients *n = &of->per_100_g;
    double sum_g = amount_of(n, NUTRIENT_WATER) + amount_of(n, NUTRIENT_PROTEIN) +
                   amount_of(n, NUTRIENT_FAT) + amount_of(n, NUTRIENT_CARBOHYDRATE) +
                   amount_of(n, NUTRIENT_ALCOHOL);
    if (sum_g > 100 + slack_of(of, TABLE_SUM_G, PACK_SUM_G))
        problem_note(found, "pantry-figures", PROBLEM_WARNING, of->at,
                     "carbohydrate holds fibre, sugars and polyols already",
                     "%s: water, protein, fat and carbohydrate add up to %s g in 100 g", of->name,
                     number_copy(found->home, sum_g, 1));
}

static void check_parts(const ingredient *of, problems *found) {
    static const struct {
        nutrient part, whole;
    } rows[] = {{NUTRIENT_SUGARS, NUTRIENT_CARBOHYDRATE},
                {NUTRIENT_POLYOLS, NUTRIENT_CARBOHYDRATE},
                {NUTRIENT_FIBRE, NUTRIENT_CARBOHYDRATE},
                {NUTRIENT_ADDED_SUGARS, NUTRIENT_SUGARS},
                {NUTRIENT_SATURATES, NUTRIENT_FAT}};
    const nutrients *n = &of->per_100_g;
    for (size_t i = 0; i < COUNT(rows); i++)
        if (all_known(n, 1u << rows[i].part | 1u << rows[i].whole) &&
            n->of[rows[i].part] > n->of[rows[i].whole] + slack_of(of, TABLE_PART_G, PACK_PART_G))
            problem_note(found, "pantry-figures", PROBLEM_WARNING, of->at,
                         "a part can't exceed its whole: one of the two is wrong",
                         "%s: more %s (%s g) than %s (%s g)", of->name, nutrient_key(rows[i].part),
                         number_copy(found->home, n->of[rows[i].part], 2),
                         nutrient_key(rows[i].whole),
                         number_copy(found->home, n->of[rows[i].whole], 2));
}

/* The lowest and highest energy that the macros can mean: fibre at 0 or 4 kcal a gram, polyols by
 * the US or the EU factors. False when the macros are unknown. */
static bool energy_span(const ingredient *of, double *low_kcal, double *high_kcal) {
    double kcal, eu_kcal, eu_kj;
    if (!energy_atwater(&of->per_100_g, of->polyols, &kcal))
        return false;
    *high_kcal = kcal;
    *low_kcal = kcal - ATWATER_CARBOHYDRATE * amount_of(&of->per_100_g, NUTRIENT_FIBRE);
    if (energy_eu(&of->per_100_g, of->polyols, &eu_kcal, &eu_kj)) {
        *high_kcal = fmax(*high_kcal, eu_kcal);
        *low_kcal = fmin(*low_kcal, eu_kcal);
    }
    return true;
}

static void check_energy(const ingredient *of, problems *found) {
    double low_kcal, high_kcal, stated_kcal = of->per_100_g.of[NUTRIENT_ENERGY];
    bool by_own_factors = !of->hers && of->composition_source.sure == CERTAINTY_PUBLISHED;
    if (by_own_factors || !nutrient_known(&of->per_100_g, NUTRIENT_ENERGY) ||
        !energy_span(of, &low_kcal, &high_kcal))
        return;
    double apart_kcal = fmax(stated_kcal - high_kcal, low_kcal - stated_kcal);
    if (apart_kcal <= ENERGY_SHARE * stated_kcal ||
        apart_kcal <= slack_of(of, TABLE_ENERGY_KCAL, PACK_ENERGY_KCAL))
        return;
    problem_note(found, "pantry-figures", PROBLEM_WARNING, of->at,
                 "is it kJ written as kcal, or one macro mistyped?",
                 "%s: %s kcal stated, but its macros give %s kcal in 100 g", of->name,
                 number_copy(found->home, stated_kcal, 0),
                 number_copy(found->home, stated_kcal > high_kcal ? high_kcal : low_kcal, 0));
}

void energy_check(const ingredient *of, problems *found) {
    check_sum(of, found);
    check_parts(of, found);
    check_energy(of, found);
}

energy_shares energy_shares_of(const nutrients *of) {
    double total = amount_of(of, NUTRIENT_ENERGY_EU);
    if (total <= 0)
        return (energy_shares){0};
    double polyols_g = amount_of(of, NUTRIENT_POLYOLS);
    energy_shares share = {
        .protein = eu_protein.kcal * amount_of(of, NUTRIENT_PROTEIN) / total,
        .fat = eu_fat.kcal * amount_of(of, NUTRIENT_FAT) / total,
        .carbohydrate =
            eu_carbohydrate.kcal *
            not_below_nought(amount_of(of, NUTRIENT_AVAILABLE_CARBOHYDRATE) - polyols_g) / total,
        .fibre = eu_fibre.kcal * amount_of(of, NUTRIENT_FIBRE) / total,
        .alcohol = eu_alcohol.kcal * amount_of(of, NUTRIENT_ALCOHOL) / total,
    };
    /* Which polyols a mix holds is known only by what their energy leaves over. */
    if (polyols_g > 0)
        share.polyols = not_below_nought(1 - share.protein - share.fat - share.carbohydrate -
                                         share.fibre - share.alcohol);
    return share;
}
