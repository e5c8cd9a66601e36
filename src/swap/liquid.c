#include "swap/liquid.h"

#include "swap/spread.h"

#include <stdint.h>

/* -- which liquid ---------------------------------------------------------------------------- */

/* A liquid line lighter than this wets no batter: lemon juice, the water yeast is woken in. */
#define LIQUID_LEAST_G 10

/* Liquids in the order in which a baker turns to them. The first row that fits an ingredient is
 * its row; a null kind is any, rank 0 is none. */
enum { NO_LIQUID, DRINKABLE, THICK, EGGS };
static const struct {
    family in;
    const char *kind;
    int rank;
} liquids[] = {
    {FAMILY_LIQUID, "vinegar", NO_LIQUID},     {FAMILY_LIQUID, "spirit", NO_LIQUID},
    {FAMILY_LIQUID, "juice lemon", NO_LIQUID}, {FAMILY_LIQUID, "juice lime", NO_LIQUID},
    {FAMILY_LIQUID, NULL, DRINKABLE},          {FAMILY_DAIRY, "milk", DRINKABLE},
    {FAMILY_DAIRY, "buttermilk", DRINKABLE},   {FAMILY_DAIRY, "kefir", DRINKABLE},
    {FAMILY_DAIRY, "yogurt", THICK},           {FAMILY_DAIRY, "quark", THICK},
    {FAMILY_FRUIT_PUREE, NULL, THICK},         {FAMILY_EGG, NULL, EGGS},
};

/* Less water than this and it is a paste, which wets nothing. */
#define WET_LEAST 0.6

static int liquid_rank(const ingredient *what) {
    for (size_t i = 0; i < COUNT(liquids); i++)
        if (what->in == liquids[i].in &&
            (!liquids[i].kind || kind_matches(liquids[i].kind, what->kind)))
            return balance_water_per_g(what) < WET_LEAST ? NO_LIQUID : liquids[i].rank;
    return NO_LIQUID;
}

/* The rank of line `i` among those that a change may be made on; NO_LIQUID for none. */
static int line_rank(const recipe_facts *about, size_t i, unsigned long long replaced) {
    const ingredient *what = facts_at(about, i);
    bool gone = i < FACTS_LINES_MOST && (replaced >> i & 1u);
    bool much = about->of->weights[i].grams >= LIQUID_LEAST_G;
    return what && much && !gone ? liquid_rank(what) : NO_LIQUID;
}

size_t liquid_line(const recipe_facts *about, unsigned long long replaced, double grams) {
    int best_rank = NO_LIQUID, last_rank = grams < 0 ? EGGS : THICK; /* egg is not added */
    size_t best = SIZE_MAX;
    double best_g = 0;
    for (size_t i = 0; i < about->of->lines.count; i++) {
        int rank = line_rank(about, i, replaced);
        double line_g = about->of->weights[i].grams;
        if (rank == NO_LIQUID || rank > last_rank)
            continue;
        if (best == SIZE_MAX || rank < best_rank || (rank == best_rank && line_g > best_g)) {
            best = i;
            best_rank = rank;
            best_g = line_g;
        }
    }
    return best;
}

const ingredient *liquid_at(const recipe_facts *about, size_t line) {
    static const ingredient plain_water = {
        .name = "water",
        .kind = "water",
        .in = FAMILY_LIQUID,
        .from = ORIGIN_MINERAL,
        .per_100_g = {.of = {[NUTRIENT_WATER] = 100}, .known = (1u << NUTRIENT_COUNT) - 1u}};
    return line == SIZE_MAX ? &plain_water : about->of->lines.items[line].what;
}

/* -- how much -------------------------------------------------------------------------------- */

/* Figures that are uncertain: the uptakes of what goes and comes, in g of water as published, and
 * how much of an uptake counts. */
enum { GOES_FIRST, GOES_SECOND, COMES, ALSO_COMES, IN_BATTER, UNCERTAIN };

/* The batch before and after. */
typedef struct {
    double water_before_g, water_after_g, dry_before_g, dry_after_g;
    double rest_uptake_g; /* of what stays, as published */
    range uncertain[UNCERTAIN];
    double liquid_water, liquid_dry; /* w and d */
} grounds;

static range times(range r, double grams) {
    return (range){r.low * grams, r.typical * grams, r.high * grams};
}

static void exchange_part(grounds *on, const part *moved, int which, double sign) {
    on->uncertain[which] = times(balance_cold_uptake(moved->what), moved->grams);
    on->water_after_g += sign * moved->grams * balance_water_per_g(moved->what);
    on->dry_after_g += sign * moved->grams * balance_dry_per_g(moved->what);
}

bool exchange_of_liquids(const exchange *made) {
    for (size_t i = 0; i < made->goes_count; i++)
        if (liquid_rank(made->goes[i].what) == NO_LIQUID)
            return false;
    return liquid_rank(made->comes.what) != NO_LIQUID && !made->also_comes.what;
}

static grounds grounds_of(const exchange *made) {
    const balance *before = made->before;
    grounds on = {.water_before_g = before->water_g,
                  .water_after_g = before->water_g,
                  .dry_before_g = before->dry_g,
                  .dry_after_g = before->dry_g,
                  .rest_uptake_g = before->taken_cold_g.typical / UPTAKE_IN_BATTER,
                  .liquid_water = 1};
    for (size_t i = 0; i < made->goes_count; i++) {
        exchange_part(&on, &made->goes[i], GOES_FIRST + (int)i, -1);
        on.rest_uptake_g -= on.uncertain[GOES_FIRST + i].typical;
    }
    exchange_part(&on, &made->comes, COMES, 1);
    if (made->also_comes.what)
        exchange_part(&on, &made->also_comes, ALSO_COMES, 1);
    if (exchange_of_liquids(made))
        on.dry_after_g = on.dry_before_g;
    on.uncertain[IN_BATTER] =
        (range){UPTAKE_IN_BATTER_LOW, UPTAKE_IN_BATTER, UPTAKE_IN_BATTER_HIGH};
    return on;
}

double liquid_free_per_dry(double free_g, double dry_g) {
    return dry_g > 0 ? fmin(free_g / dry_g, FREE_PER_DRY_MOST) : 0;
}

/* L of the header, with the uncertain figures `at` some values. */
static double needed_g(const void *grounds_given, const double at[]) {
    const grounds *on = grounds_given;
    double taken_g = at[IN_BATTER] * (on->rest_uptake_g + at[GOES_FIRST] + at[GOES_SECOND]);
    double taken_after_g = at[IN_BATTER] * (on->rest_uptake_g + at[COMES] + at[ALSO_COMES]);
    double free_g = on->water_before_g - taken_g;
    double lacking_g = taken_after_g - on->water_after_g; /* -free' */
    if (free_g < 0)
        return (free_g * taken_after_g / taken_g + lacking_g) / on->liquid_water;
    double free_per_dry = liquid_free_per_dry(free_g, on->dry_before_g);
    double wets = on->liquid_water - free_per_dry * on->liquid_dry;
    /* a liquid hardly wetter than the batch cannot thin it: then its water alone is counted */
    if (wets < on->liquid_water / 2)
        wets = on->liquid_water;
    return (free_g + free_per_dry * (on->dry_after_g - on->dry_before_g) + lacking_g) / wets;
}

static range needed_range(const grounds *on) {
    return spread_over(needed_g, on, on->uncertain, UNCERTAIN);
}

/* No less than what the line can give. */
static range bounded(range needed, const recipe_facts *about, size_t line) {
    double least = line == SIZE_MAX ? 0 : -about->of->weights[line].grams;
    return (range){fmax(needed.low, least), fmax(needed.typical, least), fmax(needed.high, least)};
}

/* A line of plain water that stays, or SIZE_MAX: what dried things are wetted with again. */
static size_t water_line(const recipe_facts *about, unsigned long long replaced) {
    for (size_t i = 0; i < about->of->lines.count; i++) {
        const ingredient *what = about->of->lines.items[i].what;
        bool gone = i < FACTS_LINES_MOST && (replaced >> i & 1u);
        if (what && !gone && what->in == FAMILY_LIQUID && kind_matches("water", what->kind) &&
            about->of->weights[i].grams >= LIQUID_LEAST_G)
            return i;
    }
    return SIZE_MAX;
}

static bool rescues(const liquid_change *change, const grounds *on, double batch_g) {
    double water_rise_g =
        on->water_after_g + change->needed_g * on->liquid_water - on->water_before_g;
    double short_g = change->grams.typical - change->needed_g;
    return fabs(water_rise_g) <= LIQUID_RESCUES_MOST * batch_g &&
           short_g <= LIQUID_SHORT_MOST * batch_g;
}

liquid_change liquid_rebalanced(const exchange *made) {
    liquid_change change = {.line = SIZE_MAX, .rescues = true};
    if (!exchange_known(made))
        return change;
    grounds on = grounds_of(made);
    range needed = needed_range(&on); /* as plain water: tells whether to add or hold back */
    /* most of it only gives back the water that left: dried egg white for the liquid one */
    bool wets_again =
        needed.typical > 0 && on.water_before_g - on.water_after_g > needed.typical / 2;
    change.line = wets_again ? water_line(made->about, made->replaced)
                             : liquid_line(made->about, made->replaced, needed.typical);
    const ingredient *liquid = liquid_at(made->about, change.line);
    on.liquid_water = balance_water_per_g(liquid);
    on.liquid_dry = balance_dry_per_g(liquid);
    needed = needed_range(&on);
    change.needed_g = needed.typical;
    change.grams = bounded(needed, made->about, change.line);
    change.rescues = rescues(&change, &on, made->before->batch_g);
    return change;
}
