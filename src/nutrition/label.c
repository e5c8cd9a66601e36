#include "nutrition/label.h"

#include "base/list.h"

#include <math.h>

/* What one row shows, and how. */
typedef enum {
    SHOWS_NUTRIENT,
    SHOWS_CHOSEN_ENERGY, /* the one that the site's energy rule asks for */
    SHOWS_EU_ENERGY,     /* kJ and kcal in one text */
    SHOWS_AVAILABLE_CARBOHYDRATE,
    SHOWS_SALT
} row_sort;

typedef enum { ALWAYS, IF_KNOWN, IF_ANY } row_shown;

typedef struct {
    const char *name;
    row_sort sort;
    nutrient which;
    bool part;
    row_shown shown;
} panel_row;

/* 21 CFR 101.9(c), (d); sugar alcohol may be declared: (c)(6)(iv). */
static const panel_row us_rows[] = {
    {"Calories", SHOWS_CHOSEN_ENERGY, NUTRIENT_ENERGY, false, ALWAYS},
    {"Total fat", SHOWS_NUTRIENT, NUTRIENT_FAT, false, ALWAYS},
    {"Saturated fat", SHOWS_NUTRIENT, NUTRIENT_SATURATES, true, ALWAYS},
    {"Cholesterol", SHOWS_NUTRIENT, NUTRIENT_CHOLESTEROL, false, ALWAYS},
    {"Sodium", SHOWS_NUTRIENT, NUTRIENT_SODIUM, false, ALWAYS},
    {"Total carbohydrate", SHOWS_NUTRIENT, NUTRIENT_CARBOHYDRATE, false, ALWAYS},
    {"Dietary fiber", SHOWS_NUTRIENT, NUTRIENT_FIBRE, true, ALWAYS},
    {"Total sugars", SHOWS_NUTRIENT, NUTRIENT_SUGARS, true, ALWAYS},
    {"Added sugars", SHOWS_NUTRIENT, NUTRIENT_ADDED_SUGARS, true, ALWAYS},
    {"Sugar alcohol", SHOWS_NUTRIENT, NUTRIENT_POLYOLS, true, IF_ANY},
    {"Protein", SHOWS_NUTRIENT, NUTRIENT_PROTEIN, false, ALWAYS},
    {"Vitamin D", SHOWS_NUTRIENT, NUTRIENT_VITAMIN_D, false, ALWAYS},
    {"Calcium", SHOWS_NUTRIENT, NUTRIENT_CALCIUM, false, ALWAYS},
    {"Iron", SHOWS_NUTRIENT, NUTRIENT_IRON, false, ALWAYS},
    {"Potassium", SHOWS_NUTRIENT, NUTRIENT_POTASSIUM, false, ALWAYS},
};

/* Regulation (EU) 1169/2011, Annex XV. */
static const panel_row eu_rows[] = {
    {"Energy", SHOWS_EU_ENERGY, NUTRIENT_ENERGY_EU, false, ALWAYS},
    {"Fat", SHOWS_NUTRIENT, NUTRIENT_FAT, false, ALWAYS},
    {"of which saturates", SHOWS_NUTRIENT, NUTRIENT_SATURATES, true, ALWAYS},
    {"Carbohydrate", SHOWS_AVAILABLE_CARBOHYDRATE, NUTRIENT_AVAILABLE_CARBOHYDRATE, false, ALWAYS},
    {"of which sugars", SHOWS_NUTRIENT, NUTRIENT_SUGARS, true, ALWAYS},
    {"of which polyols", SHOWS_NUTRIENT, NUTRIENT_POLYOLS, true, IF_ANY},
    {"Fibre", SHOWS_NUTRIENT, NUTRIENT_FIBRE, false, ALWAYS},
    {"Protein", SHOWS_NUTRIENT, NUTRIENT_PROTEIN, false, ALWAYS},
    {"Salt", SHOWS_SALT, NUTRIENT_SODIUM, false, ALWAYS},
};

static const panel_row plain_rows[] = {
    {"Energy", SHOWS_CHOSEN_ENERGY, NUTRIENT_ENERGY, false, IF_KNOWN},
    {"Protein", SHOWS_NUTRIENT, NUTRIENT_PROTEIN, false, IF_KNOWN},
    {"Fat", SHOWS_NUTRIENT, NUTRIENT_FAT, false, IF_KNOWN},
    {"of which saturates", SHOWS_NUTRIENT, NUTRIENT_SATURATES, true, IF_KNOWN},
    {"Carbohydrate with fibre", SHOWS_NUTRIENT, NUTRIENT_CARBOHYDRATE, false, IF_KNOWN},
    {"of which fibre", SHOWS_NUTRIENT, NUTRIENT_FIBRE, true, IF_KNOWN},
    {"of which sugars", SHOWS_NUTRIENT, NUTRIENT_SUGARS, true, IF_KNOWN},
    {"of which added sugars", SHOWS_NUTRIENT, NUTRIENT_ADDED_SUGARS, true, IF_ANY},
    {"of which polyols", SHOWS_NUTRIENT, NUTRIENT_POLYOLS, true, IF_ANY},
    {"Alcohol", SHOWS_NUTRIENT, NUTRIENT_ALCOHOL, false, IF_ANY},
    {"Salt", SHOWS_SALT, NUTRIENT_SODIUM, false, IF_KNOWN},
    {"Calcium", SHOWS_NUTRIENT, NUTRIENT_CALCIUM, false, IF_KNOWN},
    {"Iron", SHOWS_NUTRIENT, NUTRIENT_IRON, false, IF_KNOWN},
    {"Potassium", SHOWS_NUTRIENT, NUTRIENT_POTASSIUM, false, IF_KNOWN},
    {"Cholesterol", SHOWS_NUTRIENT, NUTRIENT_CHOLESTEROL, false, IF_KNOWN},
    {"Vitamin D", SHOWS_NUTRIENT, NUTRIENT_VITAMIN_D, false, IF_KNOWN},
    {"Water", SHOWS_NUTRIENT, NUTRIENT_WATER, false, IF_KNOWN},
};

typedef const char *(*rounding)(arena *a, nutrient which, double amount);

static const char *salt_plain(arena *a, double salt_g) {
    return label_round_plain(a, NUTRIENT_FAT, salt_g);
}

static const struct {
    const panel_row *rows;
    size_t count;
    rounding round;
    const char *(*round_salt)(arena *a, double salt_g);
} panels[] = {
    [LABEL_US] = {us_rows, COUNT(us_rows), label_round_us, salt_plain},
    [LABEL_EU] = {eu_rows, COUNT(eu_rows), label_round_eu, label_round_eu_salt},
    [LABEL_NONE] = {plain_rows, COUNT(plain_rows), label_round_plain, salt_plain},
};

_Static_assert(COUNT(us_rows) == LABEL_US_ROWS && COUNT(eu_rows) == LABEL_EU_ROWS &&
                   COUNT(plain_rows) == LABEL_PLAIN_ROWS,
               "label.h says how many rows there are");

const char *label_row_name(label_rule rule, size_t which) {
    return panels[rule].rows[which].name;
}

/* The nutrient whose known and lacking bits decide. Available carbohydrate that no ingredient
 * has worked out is taken from the total and the fibre. */
static nutrient nutrient_behind(const panel_row *row, const macros *of, energy_rule energy) {
    if (row->sort == SHOWS_CHOSEN_ENERGY)
        return energy_nutrient(energy);
    if (row->sort == SHOWS_AVAILABLE_CARBOHYDRATE && !nutrient_known(&of->of, row->which))
        return nutrient_known(&of->of, NUTRIENT_FIBRE) ? NUTRIENT_CARBOHYDRATE : row->which;
    return row->which;
}

static const char *key_of(const panel_row *row) {
    if (row->sort == SHOWS_SALT)
        return "salt_g";
    if (row->sort == SHOWS_EU_ENERGY || row->sort == SHOWS_CHOSEN_ENERGY)
        return nutrient_json(NUTRIENT_ENERGY);
    return nutrient_json(row->which);
}

static double exact_of(const panel_row *row, const macros *of, nutrient which) {
    if (row->sort == SHOWS_SALT)
        return macros_salt_g(of);
    if (row->sort == SHOWS_AVAILABLE_CARBOHYDRATE)
        return macros_available_carbohydrate_g(of);
    return of->of.of[which];
}

static const char *text_of(arena *a, const panel_row *row, const macros *of, nutrient which,
                           label_rule rule) {
    double exact = exact_of(row, of, which);
    if (row->sort == SHOWS_SALT)
        return panels[rule].round_salt(a, exact);
    if (row->sort == SHOWS_EU_ENERGY)
        return arena_format(
            a, "%s / %s",
            label_round_eu(a, NUTRIENT_ENERGY_EU_KJ, of->of.of[NUTRIENT_ENERGY_EU_KJ]),
            label_round_eu(a, which, exact));
    return panels[rule].round(a, which, exact);
}

static label_line line_of(arena *a, const panel_row *row, const recipe_macros *of, label_rule rule,
                          nutrient which) {
    label_line line = {.name = row->name,
                       .row = (size_t)(row - panels[rule].rows),
                       .key = key_of(row),
                       .part = row->part,
                       .known = nutrient_known(&of->batch.of, which),
                       .at_least = of->batch.lacking >> which & 1u,
                       .behind = which,
                       .is_salt = row->sort == SHOWS_SALT,
                       .portion = exact_of(row, &of->portion, which),
                       .per_100_g = exact_of(row, &of->per_100_g, which)};
    if (!line.known)
        return line;
    line.portion_text = text_of(a, row, &of->portion, which, rule);
    line.per_100_g_text = text_of(a, row, &of->per_100_g, which, rule);
    if (rule == LABEL_US && which != NUTRIENT_PROTEIN)
        line.daily_value_text = label_daily_value(a, which, line.portion);
    return line;
}

double label_change(const label_line *line, const macros *change) {
    bool known =
        nutrient_known(&change->of, line->behind) && !(change->lacking >> line->behind & 1u);
    if (!known)
        return (double)NAN;
    return line->is_salt ? macros_salt_g(change) : change->of.of[line->behind];
}

static bool is_shown(const panel_row *row, const macros *batch, nutrient which) {
    bool known = nutrient_known(&batch->of, which);
    return row->shown == ALWAYS || (row->shown == IF_KNOWN && known) ||
           (known && batch->of.of[which] > 0);
}

nutrition_label label_of(arena *a, const recipe_macros *of, label_rule rule, energy_rule energy) {
    nutrition_label label = {.rule = rule};
    label.lines = ARENA_ARRAY(a, label_line, panels[rule].count);
    for (size_t i = 0; i < panels[rule].count; i++) {
        const panel_row *row = &panels[rule].rows[i];
        nutrient which = nutrient_behind(row, &of->batch, energy);
        if (is_shown(row, &of->batch, which))
            label.lines[label.count++] = line_of(a, row, of, rule, which);
    }
    return label;
}
