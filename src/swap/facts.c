#include "swap/facts.h"

#include "base/words.h"
#include "swap/balance.h"

/* -- what sets it ---------------------------------------------------------------------------------
 * Three proteins set a bake by heat (egg, whey, gluten); gels set it by holding its water, hot or
 * cold; starch sets it by swelling in the oven. One of them is said to set a recipe when there is
 * enough of it, and, for a protein, when it is no mere trace beside the other two. */

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

/* Least share of the batch weight: of protein, or of starch. Common practice, no source, but for
 * whey, which gels above 6 to 8 % protein in water (handbook figure), and water is about half of
 * a batter. */
static const double least_share[SETTING_COUNT] = {
    [SETTING_EGG_WHITE] = 0.015, /* about one and a half whites in 400 g */
    [SETTING_EGG] = 0.015,       /* about one egg in 400 g, whites counted too */
    [SETTING_WHEY] = 0.04,       [SETTING_GLUTEN] = 0.02, /* wheat flour a fifth of the batch */
    [SETTING_STARCH] = 0.08,                              /* oat flour a seventh of the batch */
};
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
#define GEL_NEEDS_WATER 0.15 /* share of the batch weight */

static bool is_a(const ingredient *what, family in, const char *kind) {
    return what->in == in && (!kind || (what->kind && kind_matches(kind, what->kind)));
}

static double grams_of(const recipe *of, size_t line, nutrient which) {
    return of->weights[line].grams * of->lines.items[line].what->per_100_g.of[which] / 100;
}

/* Starch is not stated: what is left of the carbohydrate of foods that hold it. */
static double starch_g(const recipe *of, size_t line) {
    switch (of->lines.items[line].what->in) {
    case FAMILY_FLOUR:
    case FAMILY_MEAL:
    case FAMILY_STARCH:
    case FAMILY_GRAIN:
    case FAMILY_LEGUME:
    case FAMILY_VEGETABLE:
    case FAMILY_FRUIT_PUREE: /* mashed sweet potato */
        break;
    default:
        return 0;
    }
    double rest = grams_of(of, line, NUTRIENT_CARBOHYDRATE) - grams_of(of, line, NUTRIENT_FIBRE) -
                  grams_of(of, line, NUTRIENT_SUGARS);
    return rest > 0 ? rest : 0;
}

static void add_setting_protein(const recipe *of, size_t line, double grams[SETTING_COUNT]) {
    for (size_t i = 0; i < COUNT(setters); i++)
        if (is_a(of->lines.items[line].what, setters[i].in, setters[i].kind)) {
            grams[setters[i].sets] += grams_of(of, line, NUTRIENT_PROTEIN) * setters[i].counts;
            return;
        }
}

/* 1 and above: enough to hold the batch. */
static double gel_strength(const recipe_facts *about) {
    double strength = 0, batch_g = about->of->batch_g;
    for (size_t line = 0; line < about->of->lines.count; line++)
        for (size_t i = 0; i < COUNT(gels); i++) {
            const ingredient *what = about->of->lines.items[line].what;
            if (what && is_a(what, gels[i].in, gels[i].kind))
                strength += about->of->weights[line].grams / batch_g / gels[i].least;
        }
    double water_g = 0;
    for (size_t i = 0; i < MOISTURE_COUNT; i++)
        water_g += about->water_by[i];
    return water_g < GEL_NEEDS_WATER * batch_g ? 0 : strength;
}

static setting setting_of(const recipe_facts *about) {
    double grams[SETTING_COUNT] = {0}, batch_g = about->of->batch_g;
    if (batch_g <= 0)
        return SETTING_NOTHING;
    for (size_t line = 0; line < about->of->lines.count; line++)
        if (about->of->lines.items[line].what) {
            add_setting_protein(about->of, line, grams);
            grams[SETTING_STARCH] += starch_g(about->of, line);
        }
    grams[SETTING_EGG] += grams[SETTING_EGG_WHITE];
    double protein_g = grams[SETTING_EGG] + grams[SETTING_WHEY] + grams[SETTING_GLUTEN];
    for (setting s = SETTING_EGG_WHITE; about->baked && s <= SETTING_GLUTEN; s++)
        if (grams[s] >= least_share[s] * batch_g &&
            grams[s] >= LEAST_OF_SETTING_PROTEIN * protein_g)
            return s;
    if (gel_strength(about) >= 1)
        return SETTING_GEL;
    bool swells = about->baked && grams[SETTING_STARCH] >= least_share[SETTING_STARCH] * batch_g;
    return swells ? SETTING_STARCH : SETTING_NOTHING;
}

/* -- what moistens it
 * ------------------------------------------------------------------------------ */

/* Below this share of water, brought by what moistens, a dough is held by its butter, syrup or
 * fat, which then count by weight. An estimate: short crusts lie below it, batters far above. */
#define LITTLE_WATER 0.20

#define SYRUP_WATER_LEAST 0.10 /* a sweetener that wet is a syrup */

static const moisture moisture_by_family[FAMILY_COUNT] = {
    [FAMILY_PROTEIN_POWDER] = MOISTURE_NOTHING,
    [FAMILY_FLOUR] = MOISTURE_NOTHING,
    [FAMILY_MEAL] = MOISTURE_NOTHING,
    [FAMILY_NUT_BUTTER] = MOISTURE_NUT_BUTTER,
    [FAMILY_NUT] = MOISTURE_NOTHING,
    [FAMILY_GRAIN] = MOISTURE_NOTHING,
    [FAMILY_LEGUME] = MOISTURE_VEGETABLE,
    [FAMILY_EGG] = MOISTURE_EGG,
    [FAMILY_DAIRY] = MOISTURE_DAIRY,
    [FAMILY_FRUIT_PUREE] = MOISTURE_FRUIT_PUREE,
    [FAMILY_FRUIT] = MOISTURE_FRUIT_PUREE,
    [FAMILY_VEGETABLE] = MOISTURE_VEGETABLE,
    [FAMILY_SWEETENER] = MOISTURE_NOTHING,
    [FAMILY_FAT] = MOISTURE_FAT,
    [FAMILY_LEAVENER] = MOISTURE_NOTHING,
    [FAMILY_STARCH] = MOISTURE_NOTHING,
    [FAMILY_GUM] = MOISTURE_NOTHING,
    [FAMILY_COCOA] = MOISTURE_NOTHING,
    [FAMILY_LIQUID] = MOISTURE_WATER,
    [FAMILY_FLAVOUR] = MOISTURE_NOTHING,
    [FAMILY_SALT] = MOISTURE_NOTHING,
};

static moisture moisture_by(const ingredient *what) {
    if (is_a(what, FAMILY_EGG, "white") || is_a(what, FAMILY_EGG, "substitute"))
        return MOISTURE_EGG_WHITE;
    if (is_a(what, FAMILY_LIQUID, "plant milk") || is_a(what, FAMILY_LIQUID, "coconut cream"))
        return MOISTURE_PLANT_MILK;
    bool wet = balance_water_per_g(what) >= SYRUP_WATER_LEAST;
    if (what->in == FAMILY_SWEETENER && (wet || is_a(what, FAMILY_SWEETENER, "syrup")))
        return MOISTURE_SYRUP;
    return moisture_by_family[what->in];
}

/* Counted by its weight where there is little water. */
static bool moistens_without_water(moisture which) {
    return which == MOISTURE_NUT_BUTTER || which == MOISTURE_SYRUP || which == MOISTURE_FAT;
}

static moisture moisture_of(recipe_facts *about) {
    double by_weight[MOISTURE_COUNT] = {0}, brought_g = 0;
    for (size_t line = 0; line < about->of->lines.count; line++) {
        const ingredient *what = about->of->lines.items[line].what;
        if (!what)
            continue;
        moisture by = moisture_by(what);
        double water_g = about->of->weights[line].grams * balance_water_per_g(what);
        about->water_by[by] += water_g;
        by_weight[by] += about->of->weights[line].grams;
        if (by != MOISTURE_NOTHING)
            brought_g += water_g;
    }
    bool little = brought_g < LITTLE_WATER * about->of->batch_g;
    moisture most = MOISTURE_NOTHING;
    double most_g = 0;
    for (moisture m = 0; m < MOISTURE_NOTHING; m++) {
        double g = little && moistens_without_water(m) ? by_weight[m] : about->water_by[m];
        if (g > most_g) {
            most = m;
            most_g = g;
        }
    }
    return most;
}

/* -- the rest
 * -------------------------------------------------------------------------------------- */

/* Kinds that are baked though the recipe states neither oven nor minutes. */
static const char *const baked_kinds[] = {"griddle cake", "cake",    "crust",     "brownie",
                                          "cookie",       "muffin",  "cracker",   "loaf",
                                          "waffle",       "cupcake", "flatbread", "granola"};

/* What is leavened is put to heat too. */
static bool is_baked(const recipe_facts *about) {
    const recipe *of = about->of;
    if (strcmp(about->kind, "no bake") == 0)
        return false;
    for (size_t i = 0; i < COUNT(baked_kinds); i++)
        if (strcmp(about->kind, baked_kinds[i]) == 0)
            return true;
    return about->leavened || of->oven_c > 0 || of->minutes.bake > 0 ||
           of->baked_in.shape == PAN_GRIDDLE;
}

/* Cream of tartar alone lifts nothing; self-raising flour brings its own powder. */
static bool leavens(const ingredient *what) {
    return (what->in == FAMILY_LEAVENER && !is_a(what, FAMILY_LEAVENER, "acid")) ||
           is_a(what, FAMILY_FLOUR, "wheat self-raising");
}

recipe_facts facts_of(arena *a, const recipe *of, const pantry *shelf) {
    recipe_facts about = {.of = of, .shelf = shelf};
    about.kind = arena_copy(a, words_fold(a, span_of(of->kind)));
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what && leavens(of->lines.items[i].what))
            about.leavened = true;
    about.baked = is_baked(&about);
    about.moistened = moisture_of(&about); /* fills water_by, which gels ask for */
    about.sets = setting_of(&about);
    return about;
}

unsigned long long facts_same_lines(const recipe_facts *about, size_t line) {
    const recipe_lines *lines = &about->of->lines;
    unsigned long long same = 0;
    for (size_t i = 0; i < lines->count && i < FACTS_LINES_MOST; i++)
        if (lines->items[i].what == lines->items[line].what)
            same |= 1ull << i;
    return same;
}

bool facts_first_of(const recipe_facts *about, size_t line) {
    const recipe_lines *lines = &about->of->lines;
    size_t i = 0;
    while (lines->items[i].what != lines->items[line].what)
        i++;
    return i == line && lines->items[line].what;
}

double facts_share(const recipe_facts *about, const selector *by) {
    double grams = 0;
    for (size_t i = 0; i < about->of->lines.count; i++) {
        const ingredient *what = about->of->lines.items[i].what;
        if (what && selector_fits(by, what, about->shelf))
            grams += about->of->weights[i].grams;
    }
    return about->of->batch_g > 0 ? grams / about->of->batch_g : 0;
}

/* -- conditions
 * ------------------------------------------------------------------------------------ */

static bool is_replaced(unsigned long long replaced, size_t line) {
    return line < FACTS_LINES_MOST && (replaced >> line & 1u);
}

static bool kind_holds(const word_span_list *kinds, const char *kind) {
    for (size_t i = 0; i < kinds->count; i++)
        if (span_is(kinds->items[i], kind))
            return true;
    return kinds->count == 0;
}

static bool has_other(const recipe_facts *about, const selector *by, unsigned long long replaced) {
    for (size_t i = 0; i < about->of->lines.count; i++) {
        const ingredient *what = about->of->lines.items[i].what;
        if (what && !is_replaced(replaced, i) && selector_fits(by, what, about->shelf))
            return true;
    }
    return false;
}

static bool answer_holds(answer wanted, bool fact) {
    return wanted == ANSWER_ANY || (wanted == ANSWER_YES) == fact;
}

/* Bounds are strict. 0 and 1 stand for bounds that are not stated: nothing at all is under 20 %,
 * and a batch of one thing is over 20 %; but "over 0 %" alone asks that there be some. */
static bool share_within(double share, double over, double under) {
    bool floor = over > 0 || under >= 1;
    return (!floor || share > over) && (under >= 1 || share < under);
}

static double replaced_share(const recipe_facts *about, unsigned long long replaced) {
    double grams = 0;
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (is_replaced(replaced, i))
            grams += about->of->weights[i].grams;
    return about->of->batch_g > 0 ? grams / about->of->batch_g : 0;
}

static bool company_holds(const conditions *when, const recipe_facts *about,
                          unsigned long long replaced) {
    for (size_t i = 0; i < when->has.count; i++)
        if (!has_other(about, &when->has.items[i], replaced))
            return false;
    for (size_t i = 0; i < when->lacks.count; i++)
        if (has_other(about, &when->lacks.items[i], replaced))
            return false;
    return true;
}

static bool shares_hold(const conditions *when, const recipe_facts *about,
                        unsigned long long replaced) {
    for (size_t i = 0; i < when->shares.count; i++) {
        const share_condition *asked = &when->shares.items[i];
        if (!share_within(facts_share(about, &asked->of), asked->over, asked->under))
            return false;
    }
    return !when->has_replaced_share ||
           share_within(replaced_share(about, replaced), when->replaced_over, when->replaced_under);
}

bool conditions_hold(const conditions *when, const recipe_facts *about,
                     unsigned long long replaced) {
    if (when->settings && !(when->settings >> about->sets & 1u))
        return false;
    if (when->moistures && !(when->moistures >> about->moistened & 1u))
        return false;
    return answer_holds(when->leavened, about->leavened) &&
           answer_holds(when->baked, about->baked) && kind_holds(&when->kinds, about->kind) &&
           company_holds(when, about, replaced) && shares_hold(when, about, replaced);
}
