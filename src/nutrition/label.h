/* Figures rounded as the two label laws want them. The rules are tables, the source beside each
 * row; the pages and --json show these strings and keep the exact figures beside them. */
#ifndef NUTRITION_LABEL_H
#define NUTRITION_LABEL_H

#include "nutrition/macros.h"

typedef enum { LABEL_US, LABEL_EU, LABEL_NONE } label_rule;

/* One line of a nutrition panel. */
typedef struct {
    const char *name;          /* "Saturated fat" (US) or "of which saturates" (EU) */
    const char *key;           /* "saturates_g": for --json and views */
    bool part;                 /* indented: part of the line above */
    bool known;                /* false: the pantry lacks it; the texts are null then */
    bool at_least;             /* some ingredient lacks it: the figure is a lower bound */
    double portion, per_100_g; /* exact, in `unit` */
    const char *portion_text, *per_100_g_text; /* rounded, with unit: "12 g", "less than 1 g" */
    const char *daily_value_text;              /* US: "16 %" of the 2016 daily value; null: none */
} label_line;

typedef struct {
    label_rule rule;
    label_line *lines;
    size_t count;
} nutrition_label;

/* The panel of `of` under `rule`, in the law's order: US calories, fat, saturates, cholesterol,
 * sodium, carbohydrate, fibre, sugars, added sugars, protein, vitamin D, calcium, iron,
 * potassium (21 CFR 101.9); EU energy kJ/kcal, fat, saturates, carbohydrate (available), sugars,
 * polyols, fibre, protein, salt (1169/2011). LABEL_NONE: plain figures, one decimal, all known
 * ones. `energy` says which energy the US and plain panels show; the EU panel has its own. */
nutrition_label label_of(arena *a, const recipe_macros *of, label_rule rule, energy_rule energy);

/* Single roundings, for the panel and the tests. Amounts in the nutrient's unit; the text, with
 * its unit, is in the arena. 21 CFR 101.9(c); Commission guidance of December 2012. */
const char *label_round_us(arena *a, nutrient which, double amount);
const char *label_round_eu(arena *a, nutrient which, double amount);
/* Salt in g under the EU guidance. */
const char *label_round_eu_salt(arena *a, double salt_g);
/* Percent of the US daily value (2016), rounded: to 1 % for macros, in the tiers of
 * 101.9(c)(8)(iii) for vitamins and minerals; null when the nutrient has none. */
const char *label_daily_value(arena *a, nutrient which, double amount);

#endif
