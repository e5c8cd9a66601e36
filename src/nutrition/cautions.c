#include "nutrition/cautions.h"

#include "base/list.h"
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
    const char *sentence;
} rows[] = {
    /* FDA, food safety leaflet of July 2018: eggs and flour are not ready to eat raw. */
    {raw_egg_uncooked, "Holds raw egg that is not cooked: use pasteurised egg, and keep it from "
                       "small children, pregnant women, older people and anyone whose defences "
                       "are low."},
    {raw_flour_uncooked, "Holds raw flour that is not cooked: flour is a raw food, so use one "
                         "that its pack calls ready to eat."},
    /* FDA, the same leaflet: 160 F, 71 C, in the middle. */
    {egg_cooked, "Holds raw egg: cook it until the middle reaches 71 \u00b0C (160 \u00b0F)."},
    /* General advice of health authorities; from memory. Baking does not kill the spores. */
    {honey, "Holds honey: not for infants under 12 months, baked or not."},
    {much_protein, "High in protein: anyone with kidney disease, or told to watch protein, should "
                   "ask a doctor or dietitian first."},
    {much_polyols, "More than a tenth of it is polyols: eating a lot may have a laxative effect."},
};

word_list cautions_of(arena *a, const recipe *of, double protein_g_per_portion) {
    word_list cautions = {0};
    caution_case about = {of, protein_g_per_portion};
    for (size_t i = 0; i < COUNT(rows); i++)
        if (rows[i].holds(&about))
            LIST_ADD(a, &cautions, rows[i].sentence);
    return cautions;
}
