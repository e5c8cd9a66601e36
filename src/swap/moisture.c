#include "swap/moisture.h"

#include "swap/balance.h"

/* Below this share of water, brought by what moistens, a dough is held by its butter, syrup or
 * fat, which then count by weight. An estimate: short crusts lie below it, batters far above. */
#define LITTLE_WATER 0.20

#define SYRUP_WATER_LEAST 0.10 /* a sweetener that wet is a syrup */

/* Who brings moisture. The first row that fits an ingredient is its row; a null kind is any. What
 * is not here (flour, sugar, nuts) brings none that counts. */
static const struct {
    family in;
    const char *kind;
    moisture by;
} moisteners[] = {
    {FAMILY_EGG, "white", MOISTURE_EGG_WHITE},
    {FAMILY_EGG, "substitute", MOISTURE_EGG_WHITE}, /* mostly whites */
    {FAMILY_EGG, NULL, MOISTURE_EGG},
    {FAMILY_FRUIT_PUREE, NULL, MOISTURE_FRUIT_PUREE},
    {FAMILY_FRUIT, NULL, MOISTURE_FRUIT_PUREE},
    {FAMILY_DAIRY, NULL, MOISTURE_DAIRY},
    {FAMILY_NUT_BUTTER, NULL, MOISTURE_NUT_BUTTER},
    {FAMILY_LIQUID, "plant milk", MOISTURE_PLANT_MILK},
    {FAMILY_LIQUID, "coconut cream", MOISTURE_PLANT_MILK},
    {FAMILY_LIQUID, NULL, MOISTURE_WATER},
    {FAMILY_SWEETENER, "syrup", MOISTURE_SYRUP},
    {FAMILY_FAT, NULL, MOISTURE_FAT},
    {FAMILY_VEGETABLE, NULL, MOISTURE_VEGETABLE},
    {FAMILY_LEGUME, NULL, MOISTURE_VEGETABLE},
};

static moisture moisture_by(const ingredient *what) {
    for (size_t i = 0; i < COUNT(moisteners); i++)
        if (facts_is_a(what, moisteners[i].in, moisteners[i].kind))
            return moisteners[i].by;
    bool wet = balance_water_per_g(what) >= SYRUP_WATER_LEAST;
    return what->in == FAMILY_SWEETENER && wet ? MOISTURE_SYRUP : MOISTURE_NOTHING;
}

/* Adds up each one's weight; returns the water that what moistens brings. */
static double moisture_sums(recipe_facts *about, double weight_by[MOISTURE_COUNT]) {
    double brought_g = 0;
    for (size_t line = 0; line < about->of->lines.count; line++) {
        const ingredient *what = facts_at(about, line);
        if (!what)
            continue;
        moisture by = moisture_by(what);
        double grams = about->of->weights[line].grams;
        about->water_by[by] += grams * balance_water_per_g(what);
        weight_by[by] += grams;
        if (by != MOISTURE_NOTHING)
            brought_g += grams * balance_water_per_g(what);
    }
    return brought_g;
}

/* Counted by its weight where there is little water. */
static bool moistens_without_water(moisture which) {
    return which == MOISTURE_NUT_BUTTER || which == MOISTURE_SYRUP || which == MOISTURE_FAT;
}

moisture moisture_of(recipe_facts *about) {
    double weight_by[MOISTURE_COUNT] = {0}, most_g = 0;
    bool little = moisture_sums(about, weight_by) < LITTLE_WATER * about->part_g;
    moisture most = MOISTURE_NOTHING;
    for (moisture m = 0; m < MOISTURE_NOTHING; m++) {
        double g = little && moistens_without_water(m) ? weight_by[m] : about->water_by[m];
        if (g > most_g) {
            most = m;
            most_g = g;
        }
    }
    return most;
}
