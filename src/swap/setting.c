#include "swap/setting.h"

/* Whose protein counts to what, and how much of it. The first row that fits an ingredient is its
 * row; a null kind is any. */
static const struct {
    family in;
    const char *kind;
    setting sets;
    double counts;
} setters[] = {
    {FAMILY_EGG, "white", SETTING_EGG_WHITE, 1},
    {FAMILY_EGG, "substitute", SETTING_EGG_WHITE, 1}, /* mostly whites */
    {FAMILY_EGG, NULL, SETTING_EGG, 1},
    {FAMILY_PROTEIN_POWDER, "egg white", SETTING_EGG_WHITE, 1},
    {FAMILY_PROTEIN_POWDER, "whey hydrolysate", SETTING_WHEY, 0}, /* chains too short to gel */
    {FAMILY_PROTEIN_POWDER, "whey", SETTING_WHEY, 1},
    {FAMILY_PROTEIN_POWDER, "blend whey", SETTING_WHEY, 0.5},
    /* a fifth of milk's protein is whey, the rest casein, which does not set */
    {FAMILY_PROTEIN_POWDER, "milk protein", SETTING_WHEY, 0.2},
    {FAMILY_DAIRY, "powder whey", SETTING_WHEY, 1},
    {FAMILY_FLOUR, "wheat", SETTING_GLUTEN, 1},
    {FAMILY_FLOUR, "spelt", SETTING_GLUTEN, 1},
    {FAMILY_FLOUR, "gluten", SETTING_GLUTEN, 1},
};

/* Least share of the weight: of protein, or of starch. Common practice, no source, but for whey,
 * which gels above 6 to 8 % protein in water (handbook figure); water is about half of a batter.
 * The figures are: one and a half whites in 400 g; one egg in 400 g, whites counted too; whey;
 * wheat flour a fifth of the batch; oat flour a seventh of it. */
static const double least_share[SETTING_COUNT] = {[SETTING_EGG_WHITE] = 0.015,
                                                  [SETTING_EGG] = 0.015,
                                                  [SETTING_WHEY] = 0.04,
                                                  [SETTING_GLUTEN] = 0.02,
                                                  [SETTING_STARCH] = 0.08};

/* Below this share of all protein that sets, one of the three is a trace beside the others. */
#define LEAST_OF_SETTING_PROTEIN 0.25

/* Share of the batch weight from which a gel former holds a batch by itself; shares of several
 * add up. Common practice: 5 g of psyllium to 100 g of flour, a spoon of flax or chia for an egg,
 * a quarter teaspoon of a gum to a cup of flour. */
static const struct {
    family in;
    const char *kind;
    double least;
} gels[] = {
    {FAMILY_GUM, "psyllium", 0.01},     {FAMILY_GUM, "xanthan", 0.002},
    {FAMILY_GUM, "guar", 0.002},        {FAMILY_GUM, "locust bean", 0.002},
    {FAMILY_GUM, "konjac", 0.003},      {FAMILY_GUM, "gelatine", 0.007},
    {FAMILY_GUM, "agar", 0.004},        {FAMILY_GUM, "pectin", 0.005},
    {FAMILY_GUM, "egg replacer", 0.01}, {FAMILY_MEAL, "flaxseed", 0.02},
    {FAMILY_FLOUR, "flaxseed", 0.02},   {FAMILY_MEAL, "chia", 0.02},
    {FAMILY_NUT, "seed chia", 0.02},
};
#define GEL_NEEDS_WATER 0.15 /* share of the weight */

static double grams_of(const recipe_facts *about, size_t line, nutrient which) {
    return about->of->weights[line].grams * facts_at(about, line)->per_100_g.of[which] / 100;
}

/* Starch is not stated: what is left of the carbohydrate of foods that hold it. */
static double starch_g(const recipe_facts *about, size_t line) {
    const unsigned starchy = 1u << FAMILY_FLOUR | 1u << FAMILY_MEAL | 1u << FAMILY_STARCH |
                             1u << FAMILY_GRAIN | 1u << FAMILY_LEGUME | 1u << FAMILY_VEGETABLE |
                             1u << FAMILY_FRUIT_PUREE; /* mashed sweet potato */
    double rest = grams_of(about, line, NUTRIENT_CARBOHYDRATE) -
                  grams_of(about, line, NUTRIENT_FIBRE) - grams_of(about, line, NUTRIENT_SUGARS);
    return rest > 0 && starchy >> facts_at(about, line)->in & 1u ? rest : 0;
}

static void add_setting_protein(const recipe_facts *about, size_t line,
                                double grams[SETTING_COUNT]) {
    for (size_t i = 0; i < COUNT(setters); i++)
        if (facts_is_a(facts_at(about, line), setters[i].in, setters[i].kind)) {
            grams[setters[i].sets] += grams_of(about, line, NUTRIENT_PROTEIN) * setters[i].counts;
            return;
        }
}

/* 1 and above: enough to hold the batch. */
static double gel_strength(const recipe_facts *about) {
    double strength = 0, water_g = 0;
    for (size_t line = 0; line < about->of->lines.count; line++)
        for (size_t i = 0; facts_at(about, line) && i < COUNT(gels); i++)
            if (facts_is_a(facts_at(about, line), gels[i].in, gels[i].kind))
                strength += about->of->weights[line].grams / about->part_g / gels[i].least;
    for (size_t i = 0; i < MOISTURE_COUNT; i++)
        water_g += about->water_by[i];
    return water_g < GEL_NEEDS_WATER * about->part_g ? 0 : strength;
}

setting setting_of(const recipe_facts *about) {
    double grams[SETTING_COUNT] = {0};
    if (about->part_g <= 0)
        return SETTING_NOTHING;
    for (size_t line = 0; line < about->of->lines.count; line++)
        if (facts_at(about, line)) {
            add_setting_protein(about, line, grams);
            grams[SETTING_STARCH] += starch_g(about, line);
        }
    grams[SETTING_EGG] += grams[SETTING_EGG_WHITE];
    double protein_g = grams[SETTING_EGG] + grams[SETTING_WHEY] + grams[SETTING_GLUTEN];
    for (setting s = SETTING_EGG_WHITE; about->baked && s <= SETTING_GLUTEN; s++)
        if (grams[s] >= least_share[s] * about->part_g &&
            grams[s] >= LEAST_OF_SETTING_PROTEIN * protein_g)
            return s;
    if (gel_strength(about) >= 1)
        return SETTING_GEL;
    bool swells = grams[SETTING_STARCH] >= least_share[SETTING_STARCH] * about->part_g;
    return about->baked && swells ? SETTING_STARCH : SETTING_NOTHING;
}
