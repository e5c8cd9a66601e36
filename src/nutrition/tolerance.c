#include "nutrition/tolerance.h"

#include "base/list.h"
#include "base/number.h"
#include "nutrition/lines.h"

#include <math.h>

/* Figures are kept per 100 g: back on the serving they miss what was written by a hair. */
#define HAIR 1e-6

static bool is_multiple(double amount, double step) {
    double steps = amount / step;
    return fabs(steps - floor(steps + 0.5)) < HAIR;
}

/* Steps of both laws that a stated number may stand for, coarsest first; the first one that it is
 * a multiple of counts. Energy: 21 CFR 101.9(c)(1); sodium: (c)(4). */
typedef struct {
    double above; /* the step is used above this amount */
    double step;
} label_step;

enum { STEPS = 4 };

static const label_step energy_steps[STEPS] = {{50, 10}, {0, 5}, {0, 1}, {0, 0.1}};
static const label_step sodium_steps[STEPS] = {{140, 10}, {0, 5}, {0, 1}, {0, 0.1}};
static const label_step fat_steps[STEPS] = {{0, 1}, {0, 0.5}, {0, 0.1}, {0, 0.01}};
static const label_step gram_steps[STEPS] = {{0, 1}, {0, 0.1}, {0, 0.01}, {0, 0.001}};

static const label_step *steps_of(nutrient which) {
    static const label_step *const by_nutrient[NUTRIENT_COUNT] = {
        [NUTRIENT_ENERGY] = energy_steps,
        [NUTRIENT_SODIUM] = sodium_steps,
        [NUTRIENT_FAT] = fat_steps,
        [NUTRIENT_SATURATES] = fat_steps,
    };
    return by_nutrient[which] ? by_nutrient[which] : gram_steps;
}

static double step_of(nutrient which, double stated) {
    const label_step *steps = steps_of(which);
    for (size_t i = 0; i < STEPS; i++)
        if (stated >= steps[i].above && is_multiple(stated, steps[i].step))
            return steps[i].step;
    return 0;
}

range label_rounding_range(nutrient which, double stated) {
    double half = step_of(which, stated) / 2;
    return (range){fmax(0, stated - half), stated, stated + half};
}

range figure_range(const ingredient *what, nutrient which) {
    double amount = what->per_100_g.of[which];
    double serving_g = what->serving_g > 0 ? what->serving_g : 100;
    if (!nutrient_known(&what->per_100_g, which))
        return (range){0, 0, 0};
    if (what->composition_source.sure != CERTAINTY_LABEL)
        return (range){amount, amount, amount};
    range stated = label_rounding_range(which, amount * serving_g / 100);
    return (range){stated.low * 100 / serving_g, amount, stated.high * 100 / serving_g};
}

range portion_range(const recipe *of, nutrient which) {
    range sum = {0, 0, 0};
    double portions = of->portions > 0 ? of->portions : 1;
    for (size_t i = 0; i < of->lines.count; i++) {
        if (!line_is_weighed(of, i))
            continue;
        range one = figure_range(of->lines.items[i].what, which);
        double times = of->weights[i].grams / 100 / portions;
        sum.low += one.low * times;
        sum.typical += one.typical * times;
        sum.high += one.high * times;
    }
    return sum;
}

bool range_matters(nutrient which, range of) {
    bool in_grams = nutrient_unit(which)[0] == 'g';
    double wide = of.high - of.low;
    return wide > (in_grams ? 1 : 10) && wide > 0.1 * of.typical;
}

/* Up to `below` an amount, beyond it a share; above `above` an amount again. */
typedef struct {
    double below, off_g, share, above, far_off_g;
} tolerance;

static const tolerance eu_macro = {10, 2, 0.2, 40, 8};
static const tolerance eu_fat = {10, 1.5, 0.2, 40, 8};
static const tolerance eu_saturates = {4, 0.8, 0.2, HUGE_VAL, 0};
static const tolerance eu_salt = {1.25, 0.375, 0.2, HUGE_VAL, 0};

static const struct {
    nutrient which;
    const tolerance *by;
} eu_tolerances[] = {
    {NUTRIENT_PROTEIN, &eu_macro},       {NUTRIENT_CARBOHYDRATE, &eu_macro},
    {NUTRIENT_SUGARS, &eu_macro},        {NUTRIENT_AVAILABLE_CARBOHYDRATE, &eu_macro},
    {NUTRIENT_FIBRE, &eu_macro},         {NUTRIENT_FAT, &eu_fat},
    {NUTRIENT_SATURATES, &eu_saturates},
};

/* Vitamins +50 -35 %, minerals +45 -35 %. */
static range share_range(double stated, double below, double above) {
    return (range){stated * (1 - below), stated, stated * (1 + above)};
}

static range tolerated(const tolerance *by, double stated) {
    double off = stated < by->below ? by->off_g : stated * by->share;
    if (stated > by->above)
        off = by->far_off_g;
    return (range){fmax(0, stated - off), stated, stated + off};
}

range label_tolerance_eu(nutrient which, double stated) {
    for (size_t i = 0; i < COUNT(eu_tolerances); i++)
        if (eu_tolerances[i].which == which)
            return tolerated(eu_tolerances[i].by, stated);
    if (which == NUTRIENT_VITAMIN_D)
        return share_range(stated, 0.35, 0.5);
    if (which == NUTRIENT_CALCIUM || which == NUTRIENT_IRON || which == NUTRIENT_POTASSIUM)
        return share_range(stated, 0.35, 0.45);
    return (range){stated, stated, stated};
}

range label_tolerance_eu_salt(double stated_g) {
    return tolerated(&eu_salt, stated_g);
}
