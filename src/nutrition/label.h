/* A nutrition panel by one of the two label laws, or plain. Rows are tables, the source beside
 * each; the pages and --json show the rounded strings (nutrition/rounding.h) and keep the exact
 * figures beside them. Trans fat, which the US panel has, is not in the pantry. */
#ifndef NUTRITION_LABEL_H
#define NUTRITION_LABEL_H

#include "nutrition/macros.h"
#include "nutrition/rounding.h"

typedef enum { LABEL_US, LABEL_EU, LABEL_NONE } label_rule;

/* How many rows each panel may have. */
enum { LABEL_US_ROWS = 15, LABEL_EU_ROWS = 9, LABEL_PLAIN_ROWS = 17 };

/* What row `which` of the panel of `rule` is called: "Saturated fat". */
const char *label_row_name(label_rule rule, size_t which);

/* One line of a nutrition panel. */
typedef struct {
    const char *name;          /* "Saturated fat" (US) or "of which saturates" (EU) */
    size_t row;                /* of the panel */
    const char *key;           /* "saturates_g": for --json and views */
    bool part;                 /* indented: part of the line above */
    bool known;                /* false: the pantry lacks it; the texts are null then */
    bool at_least;             /* some ingredient lacks it: the figure is a lower bound */
    double portion, per_100_g; /* exact, in `unit` */
    const char *portion_text, *per_100_g_text; /* rounded, with unit: "12 g", "less than 1 g" */
    const char *daily_value_text;              /* US: "16 %" of the 2016 daily value; null: none */
    nutrient behind;                           /* what it shows */
    bool is_salt;                              /* sodium, as salt */
} label_line;

typedef struct {
    label_rule rule;
    label_line *lines;
    size_t count;
} nutrition_label;

/* The panel of `of` under `rule`, in the law's order: US calories, fat, saturates, cholesterol,
 * sodium, carbohydrate, fibre, sugars, added sugars, sugar alcohol, protein, vitamin D, calcium,
 * iron, potassium (21 CFR 101.9); EU energy kJ/kcal, fat, saturates, carbohydrate (available),
 * sugars, polyols, fibre, protein, salt (1169/2011). Polyols are shown where there are some.
 * LABEL_NONE: plain figures, one decimal, all known ones. `energy` says which energy the US and
 * plain panels show; the EU panel has its own: its line has kcal as the exact figure and both in
 * the text, "1214 kJ / 290 kcal", each summed apart. The US percent of protein stays null: it
 * takes the protein's quality (quality_daily_value). */
nutrition_label label_of(arena *a, const recipe_macros *of, label_rule rule, energy_rule energy);

/* By how much the amount of `line`, in its unit, changes with `change`; NAN where that is not
 * known. */
double label_change(const label_line *line, const macros *change);

#endif
