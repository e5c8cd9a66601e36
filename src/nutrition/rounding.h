/* Single figures rounded as the two label laws want them, and percents of the US daily values.
 *
 * US: 21 CFR 101.9(c) as amended in 2016. EU: the Commission's guidance of December 2012 on
 * tolerances for Regulation (EU) 1169/2011. Ties round up; neither text says. Where a rule leaves
 * a choice we took: 0 under 5 kcal; "less than 1 g" from 0.5 g to under 1 g; "<0.5 g" and the
 * like for what is little, "0 g" for what is nothing. */
#ifndef NUTRITION_ROUNDING_H
#define NUTRITION_ROUNDING_H

#include "base/arena.h"
#include "pantry/nutrients.h"

/* What the rounded figure of little begins with, in the US panel: "less than 1 g". */
#define LABEL_LESS_THAN "less than "

/* Amounts in the nutrient's unit; the text, with its unit, is in the arena. */
const char *label_round_us(arena *a, nutrient which, double amount);
const char *label_round_eu(arena *a, nutrient which, double amount);

/* Salt in g under the EU guidance. */
const char *label_round_eu_salt(arena *a, double salt_g);

/* One decimal, with its unit: no law's rule. */
const char *label_round_plain(arena *a, nutrient which, double amount);

/* Percent of the US daily value (2016, adults and children of 4 years and over), rounded: to 1 %
 * for macros, in the tiers of 101.9(c)(8)(iii) for vitamins and minerals; null when the nutrient
 * has none. `amount` is not rounded before. For protein give the amount corrected by PDCAAS
 * (101.9(c)(7)): quality_daily_value does. */
const char *label_daily_value(arena *a, nutrient which, double amount);

/* The daily value itself, in the nutrient's unit; 0 when there is none. */
double daily_value_of(nutrient which);

#endif
