#include "nutrition/cautions.h"

#include "nutrition/lines.h"

typedef struct {
    const recipe *of;
    double protein_g; /* a portion */
} caution_case;

bool recipe_is_cooked(const recipe *of) {
    return of->minutes.bake > 0 || of->oven_c > 0 || of->baked_in.shape == PAN_GRIDDLE;
}

static bool has_raw(const recipe *of, raw_state which) {
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what && of->lines.items[i].what->raw == which)
            return true;
    return false;
}

static bool raw_egg_uncooked(const caution_case *about) {
    return has_raw(about->of, RAW_EGG) && !recipe_is_cooked(about->of);
}

static bool raw_flour_uncooked(const caution_case *about) {
    return has_raw(about->of, RAW_FLOUR) && !recipe_is_cooked(about->of);
}

static bool egg_cooked(const caution_case *about) {
    return has_raw(about->of, RAW_EGG) && recipe_is_cooked(about->of);
}

static bool honey(const caution_case *about) {
    const recipe_lines *lines = &about->of->lines;
    for (size_t i = 0; i < lines->count; i++)
        if (lines->items[i].what && lines->items[i].what->from == ORIGIN_BEE)
            return true;
    return false;
}

static bool much_protein(const caution_case *about) {
    return about->protein_g > CAUTION_PROTEIN_G;
}

static bool much_polyols(const caution_case *about) {
    const recipe *of = about->of;
    double polyols_g = 0;
    for (size_t i = 0; i < of->lines.count; i++)
        if (line_is_weighed(of, i))
            polyols_g += of->lines.items[i].what->per_100_g.of[NUTRIENT_POLYOLS] *
                         of->weights[i].grams / 100;
    return polyols_g > CAUTION_POLYOLS * of->baked_g;
}

static const struct {
    bool (*holds)(const caution_case *about);
    const char *key;
} rows[CAUTION_COUNT] = {
    /* FDA, food safety leaflet of July 2018: eggs and flour are not ready to eat raw; cooked is
     * 160 F, 71 C, in the middle. */
    [CAUTION_RAW_EGG] = {raw_egg_uncooked, "raw egg"},
    [CAUTION_RAW_FLOUR] = {raw_flour_uncooked, "raw flour"},
    [CAUTION_EGG_TO_SET] = {egg_cooked, "egg to set"},
    /* General advice of health authorities; from memory. Baking does not kill the spores. */
    [CAUTION_HONEY] = {honey, "honey"},
    [CAUTION_MUCH_PROTEIN] = {much_protein, "much protein"},
    [CAUTION_MUCH_POLYOLS] = {much_polyols, "much polyols"},
};

caution_set cautions_of(const recipe *of, double protein_g_per_portion) {
    caution_set cautions = 0;
    caution_case about = {of, protein_g_per_portion};
    for (size_t i = 0; i < CAUTION_COUNT; i++)
        if (rows[i].holds(&about))
            cautions |= 1u << i;
    return cautions;
}

const char *caution_key(caution_cause which) {
    return rows[which].key;
}
