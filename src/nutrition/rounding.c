#include "nutrition/rounding.h"

#include "base/list.h"
#include "base/number.h"

#include <math.h>

/* One step of a rule: it holds below `limit`, or up to it. Either a multiple of `step`, or so
 * many significant figures, or `words` say it. */
typedef struct {
    double limit;
    bool included;
    double step;
    int significant;
    const char *words;
} tier;

enum { TIERS_MOST = 4 };

typedef struct {
    tier tiers[TIERS_MOST]; /* the last one has no limit */
} rounding_rule;

#define BELOW(limit_, ...)                                                                         \
    { .limit = (limit_), __VA_ARGS__ }
#define UP_TO(limit_, ...)                                                                         \
    { .limit = (limit_), .included = true, __VA_ARGS__ }
#define ELSE(...)                                                                                  \
    { .limit = HUGE_VAL, .included = true, __VA_ARGS__ }

/* 21 CFR 101.9(c)(1): under 5 may be 0; to 50 the nearest 5; above the nearest 10. */
static const rounding_rule us_energy = {
    {BELOW(5, .words = "0 kcal"), UP_TO(50, .step = 5), ELSE(.step = 10)}};
/* 101.9(c)(2): fat and saturated fat. FDA Food Labeling Guide, appendix H. */
static const rounding_rule us_fat = {
    {BELOW(0.5, .words = "0 g"), BELOW(5, .step = 0.5), ELSE(.step = 1)}};
/* 101.9(c)(3). */
static const rounding_rule us_cholesterol = {
    {BELOW(2, .words = "0 mg"), UP_TO(5, .words = LABEL_LESS_THAN "5 mg"), ELSE(.step = 5)}};
/* 101.9(c)(4). */
static const rounding_rule us_sodium = {
    {BELOW(5, .words = "0 mg"), UP_TO(140, .step = 5), ELSE(.step = 10)}};
/* 101.9(c)(6) and (7): carbohydrate, fibre, sugars, added sugars, sugar alcohol, protein. */
static const rounding_rule us_macro = {
    {BELOW(0.5, .words = "0 g"), BELOW(1, .words = LABEL_LESS_THAN "1 g"), ELSE(.step = 1)}};
/* 101.9(c)(8)(iii) asks for quantitative amounts; these steps are FDA guidance, from memory. */
static const rounding_rule us_vitamin_d = {{ELSE(.step = 0.1)}}, us_iron = {{ELSE(.step = 0.1)}},
                           us_calcium = {{ELSE(.step = 10)}}, us_potassium = {{ELSE(.step = 10)}};

/* Commission guidance, December 2012, table 4. */
static const rounding_rule eu_energy = {{ELSE(.step = 1)}};
static const rounding_rule eu_macro = {{UP_TO(0, .words = "0 g"), UP_TO(0.5, .words = "<0.5 g"),
                                        BELOW(10, .step = 0.1), ELSE(.step = 1)}};
static const rounding_rule eu_saturates = {{UP_TO(0, .words = "0 g"), UP_TO(0.1, .words = "<0.1 g"),
                                            BELOW(10, .step = 0.1), ELSE(.step = 1)}};
static const rounding_rule eu_salt = {{UP_TO(0, .words = "0 g"), UP_TO(0.0125, .words = "<0.01 g"),
                                       BELOW(1, .step = 0.01), ELSE(.step = 0.1)}};
static const rounding_rule eu_three_figures = {{ELSE(.significant = 3)}},
                           eu_two_figures = {{ELSE(.significant = 2)}};

static const rounding_rule one_decimal = {{ELSE(.step = 0.1)}};

/* What the laws do not round (water, alcohol) gets one decimal. */
static const rounding_rule *const us_rules[NUTRIENT_COUNT] = {
    [NUTRIENT_ENERGY] = &us_energy,
    [NUTRIENT_ENERGY_ATWATER] = &us_energy,
    [NUTRIENT_ENERGY_EU] = &us_energy,
    [NUTRIENT_PROTEIN] = &us_macro,
    [NUTRIENT_FAT] = &us_fat,
    [NUTRIENT_SATURATES] = &us_fat,
    [NUTRIENT_CARBOHYDRATE] = &us_macro,
    [NUTRIENT_AVAILABLE_CARBOHYDRATE] = &us_macro,
    [NUTRIENT_FIBRE] = &us_macro,
    [NUTRIENT_SUGARS] = &us_macro,
    [NUTRIENT_ADDED_SUGARS] = &us_macro,
    [NUTRIENT_POLYOLS] = &us_macro,
    [NUTRIENT_SODIUM] = &us_sodium,
    [NUTRIENT_CALCIUM] = &us_calcium,
    [NUTRIENT_IRON] = &us_iron,
    [NUTRIENT_POTASSIUM] = &us_potassium,
    [NUTRIENT_CHOLESTEROL] = &us_cholesterol,
    [NUTRIENT_VITAMIN_D] = &us_vitamin_d,
};

static const rounding_rule *const eu_rules[NUTRIENT_COUNT] = {
    [NUTRIENT_ENERGY] = &eu_energy,
    [NUTRIENT_ENERGY_ATWATER] = &eu_energy,
    [NUTRIENT_ENERGY_EU] = &eu_energy,
    [NUTRIENT_ENERGY_EU_KJ] = &eu_energy,
    [NUTRIENT_PROTEIN] = &eu_macro,
    [NUTRIENT_FAT] = &eu_macro,
    [NUTRIENT_SATURATES] = &eu_saturates,
    [NUTRIENT_CARBOHYDRATE] = &eu_macro,
    [NUTRIENT_AVAILABLE_CARBOHYDRATE] = &eu_macro,
    [NUTRIENT_FIBRE] = &eu_macro,
    [NUTRIENT_SUGARS] = &eu_macro,
    [NUTRIENT_ADDED_SUGARS] = &eu_macro,
    [NUTRIENT_POLYOLS] = &eu_macro,
    [NUTRIENT_SODIUM] = &eu_two_figures, /* salt is what is declared */
    [NUTRIENT_CALCIUM] = &eu_three_figures,
    [NUTRIENT_IRON] = &eu_two_figures,
    [NUTRIENT_POTASSIUM] = &eu_three_figures,
    [NUTRIENT_CHOLESTEROL] = &eu_two_figures,
    [NUTRIENT_VITAMIN_D] = &eu_two_figures,
};

/* Sums of decimals miss a limit by a hair (0.1 + 0.4): a hair is not a difference. */
#define HAIR 1e-12

static const tier *tier_of(const rounding_rule *rule, double amount) {
    const tier *t = rule->tiers;
    while (t->included ? amount > t->limit * (1 + HAIR) : amount >= t->limit * (1 - HAIR))
        t++;
    return t;
}

static double significant_step(double amount, int figures) {
    double step = 1;
    for (; figures > 1; figures--)
        step /= 10;
    for (double rest = amount; rest >= 10; rest /= 10)
        step *= 10;
    for (double rest = amount; rest > 0 && rest < 1; rest *= 10)
        step /= 10;
    return step;
}

static const char *round_by(arena *a, const rounding_rule *rule, const char *in, double amount) {
    const tier *t = tier_of(rule, amount);
    if (t->words)
        return t->words;
    double step = t->significant ? significant_step(amount, t->significant) : t->step;
    return arena_format(a, "%s %s", number_copy(a, number_round(amount, step), 6), in);
}

static const rounding_rule *rule_or_plain(const rounding_rule *const rules[], nutrient which) {
    return rules[which] ? rules[which] : &one_decimal;
}

const char *label_round_us(arena *a, nutrient which, double amount) {
    return round_by(a, rule_or_plain(us_rules, which), nutrient_unit(which), amount);
}

const char *label_round_eu(arena *a, nutrient which, double amount) {
    return round_by(a, rule_or_plain(eu_rules, which), nutrient_unit(which), amount);
}

const char *label_round_eu_salt(arena *a, double salt_g) {
    return round_by(a, &eu_salt, "g", salt_g);
}

const char *label_round_plain(arena *a, nutrient which, double amount) {
    return round_by(a, &one_decimal, nutrient_unit(which), amount);
}

/* 101.9(c)(8)(iii): to 10 % the nearest 2, to 50 % the nearest 5, above the nearest 10; under
 * 2 % may be 0. */
static const rounding_rule macro_percent = {{ELSE(.step = 1)}};
static const rounding_rule vitamin_percent = {
    {BELOW(2, .words = "0 %"), UP_TO(10, .step = 2), UP_TO(50, .step = 5), ELSE(.step = 10)}};

/* 21 CFR 101.9(c)(8)(iv) and (c)(9), as amended in May 2016; adults and children from 4 years. */
static const struct {
    double amount;
    const rounding_rule *percent;
} daily_values[NUTRIENT_COUNT] = {
    [NUTRIENT_FAT] = {78, &macro_percent},
    [NUTRIENT_SATURATES] = {20, &macro_percent},
    [NUTRIENT_CHOLESTEROL] = {300, &macro_percent},
    [NUTRIENT_SODIUM] = {2300, &macro_percent},
    [NUTRIENT_CARBOHYDRATE] = {275, &macro_percent},
    [NUTRIENT_FIBRE] = {28, &macro_percent},
    [NUTRIENT_ADDED_SUGARS] = {50, &macro_percent},
    [NUTRIENT_PROTEIN] = {50, &macro_percent},
    [NUTRIENT_VITAMIN_D] = {20, &vitamin_percent},
    [NUTRIENT_CALCIUM] = {1300, &vitamin_percent},
    [NUTRIENT_IRON] = {18, &vitamin_percent},
    [NUTRIENT_POTASSIUM] = {4700, &vitamin_percent},
};

double daily_value_of(nutrient which) {
    return daily_values[which].amount;
}

const char *label_daily_value(arena *a, nutrient which, double amount) {
    if (!daily_values[which].percent)
        return NULL;
    return round_by(a, daily_values[which].percent, "%", amount / daily_values[which].amount * 100);
}
