#include "read/composition.h"

#include "read/fields.h"
#include "read/source.h"

/* Salt = sodium x 2.5: Regulation (EU) 1169/2011, Annex I. So 1 g of salt is 400 mg of sodium. */
#define SODIUM_MG_PER_SALT_G 400.0

/* Pure fat has 902 kcal (USDA factor 9.02); a little room for rounding on small servings. */
#define KCAL_MOST  920.0
#define GRAMS_MOST 100.5

/* The first is for labels alone; the nutrients that are worked out, the last of their list, have no
 * key and are not counted. */
static const char *const keys[] = {"serving",
                                   "available-carbohydrate",
                                   "salt",
                                   "polyol",
                                   "source",
                                   "certainty",
#define NUTRIENT(constant, key, unit, json) key,
                                   NUTRIENT_LIST(NUTRIENT)
#undef NUTRIENT
};
enum { NUTRIENTS_STATED = NUTRIENT_AVAILABLE_CARBOHYDRATE, KEYS = 6 + NUTRIENTS_STATED };

static const char *const polyol_words[] = {"erythritol", "xylitol",  "maltitol", "sorbitol",
                                           "isomalt",    "lactitol", "mannitol"};

static double most_of(const char *unit) {
    if (strcmp(unit, "kcal") == 0)
        return KCAL_MOST;
    return strcmp(unit, "g") == 0 ? GRAMS_MOST : 1000 * GRAMS_MOST; /* mg; no vitamin comes near */
}

/* A group of figures being read: `times` what is written is for 100 g. */
typedef struct {
    const yaml_node *node;
    double times;
    problems *found;
} figures;

/* The figure under `key`, for 100 g; false when it is not there or can't be. */
static bool read_figure(const figures *of, const char *key, const char *unit, double *out) {
    double figure;
    if (!field_quantity(of->node, key, unit, &figure, of->found))
        return false;
    if (figure < 0 || figure * of->times > most_of(unit)) {
        problem_add(of->found, yaml_get(of->node, key)->at,
                    "figures are for 100 g; those of a pack's serving go under \"label\"",
                    "no food has this much \"%s\"", key);
        return false;
    }
    *out = figure * of->times;
    return true;
}

static void read_nutrients(const figures *of, nutrients *out) {
    double amount;
    for (nutrient i = 0; i < NUTRIENT_AVAILABLE_CARBOHYDRATE; i++)
        if (read_figure(of, nutrient_key(i), nutrient_unit(i), &amount))
            nutrient_set(out, i, amount);
}

/* An error when both of two ways to state the same are used. */
static bool is_stated_twice(const yaml_node *group, const char *one, const char *other,
                            problems *found) {
    const yaml_node *second = yaml_get(group, other);
    if (!second || !yaml_get(group, one))
        return false;
    problem_add(found, second->at, "keep one of them", "\"%s\" and \"%s\" say the same twice", one,
                other);
    return true;
}

static void read_salt(const figures *of, nutrients *out) {
    double salt_g;
    if (!is_stated_twice(of->node, "sodium", "salt", of->found) &&
        read_figure(of, "salt", "g", &salt_g))
        nutrient_set(out, NUTRIENT_SODIUM, salt_g * SODIUM_MG_PER_SALT_G);
}

/* The EU states carbohydrate without fibre. Where the fibre is unknown, so is the total. */
static void read_available(const figures *of, nutrients *out) {
    double available_g;
    if (is_stated_twice(of->node, "carbohydrate", "available-carbohydrate", of->found) ||
        !read_figure(of, "available-carbohydrate", "g", &available_g))
        return;
    nutrient_set(out, NUTRIENT_AVAILABLE_CARBOHYDRATE, available_g);
    if (nutrient_known(out, NUTRIENT_FIBRE))
        nutrient_set(out, NUTRIENT_CARBOHYDRATE, available_g + out->of[NUTRIENT_FIBRE]);
    else
        problem_note(of->found, "pantry-figures", PROBLEM_WARNING,
                     yaml_get(of->node, "available-carbohydrate")->at,
                     "add \"fibre\", as the maker or a table of foods has it",
                     "without \"fibre\" the total carbohydrate stays unknown");
}

static void read_polyol(const yaml_node *group, ingredient *out, problems *found) {
    size_t chosen;
    if (field_choice(group, "polyol", FIELD_CHOICES(polyol_words), &chosen, found))
        out->polyols = (polyol)(chosen + 1);
    else if (out->per_100_g.of[NUTRIENT_POLYOLS] > 0 && !yaml_get(group, "polyol"))
        problem_note(found, "pantry-figures", PROBLEM_WARNING, yaml_get(group, "polyols")->at,
                     "for example: polyol: erythritol",
                     "\"polyols\" without \"polyol\": they differ in energy");
}

static void read_group(const figures *of, ingredient *out) {
    read_nutrients(of, &out->per_100_g);
    read_salt(of, &out->per_100_g);
    read_available(of, &out->per_100_g);
    read_polyol(of->node, out, of->found);
}

static void read_per_100_g(const yaml_node *group, bool hers, ingredient *out, problems *found) {
    static const source_keys from = {"figures per 100 g", "source", "certainty"};
    fields_known(group, keys + 1, KEYS - 1, "per-100-g", found);
    read_group(&(figures){group, 1, found}, out);
    source_read(group, &from, hers, &out->composition_source, found);
}

static void read_label(const yaml_node *group, ingredient *out, problems *found) {
    fields_known(group, keys, KEYS, "a label", found);
    if (!fields_need(group, "serving", "a label", found) ||
        !field_quantity(group, "serving", "g", &out->serving_g, found))
        return;
    if (out->serving_g <= 0 || out->serving_g > 5000) {
        problem_add(found, yaml_get(group, "serving")->at, "for example: serving: 31 g",
                    "a serving weighs more than nothing and less than 5 kg");
        return;
    }
    read_group(&(figures){group, 100 / out->serving_g, found}, out);
    out->composition_source = (source_note){"label", CERTAINTY_LABEL};
    (void)field_text(group, "source", &out->composition_source.text, found);
}

void composition_read(const yaml_node *entry, bool hers, ingredient *out, problems *found) {
    const yaml_node *per_100_g = field_node(entry, "per-100-g", YAML_MAPPING, found);
    const yaml_node *label = field_node(entry, "label", YAML_MAPPING, found);
    if (is_stated_twice(entry, "per-100-g", "label", found))
        return;
    if (per_100_g)
        read_per_100_g(per_100_g, hers, out, found);
    else if (label)
        read_label(label, out, found);
    else if (!yaml_get(entry, "per-100-g") && !yaml_get(entry, "label"))
        problem_note(found, "pantry-figures", PROBLEM_WARNING, entry->at,
                     "add \"label\" with what the pack says",
                     "\"%s\" has no figures: no recipe with it can have macros", out->name);
}
