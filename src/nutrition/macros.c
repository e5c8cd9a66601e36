#include "nutrition/macros.h"

#include "nutrition/lines.h"

#define EVERY_NUTRIENT     ((1u << NUTRIENT_COUNT) - 1u)
#define NONE_UNLESS_STATED (1u << NUTRIENT_POLYOLS | 1u << NUTRIENT_ALCOHOL)

/* Sodium to salt: Regulation (EU) 1169/2011, Annex I. */
#define SALT_PER_SODIUM 2.5

nutrient energy_nutrient(energy_rule rule) {
    static const nutrient by_rule[] = {NUTRIENT_ENERGY, NUTRIENT_ENERGY_ATWATER,
                                       NUTRIENT_ENERGY_EU};
    return by_rule[rule];
}

static unsigned figures_lacking(const ingredient *what) {
    return EVERY_NUTRIENT & ~(what->per_100_g.known | NONE_UNLESS_STATED);
}

macros macros_of_ingredient(const ingredient *what, double grams) {
    macros sum = {.of.known = what->per_100_g.known, .weight_g = grams};
    for (size_t i = 0; i < NUTRIENT_COUNT; i++) /* 0 where unknown */
        sum.of.of[i] = what->per_100_g.of[i] * grams / 100;
    if (grams > 0)
        sum.lacking = figures_lacking(what);
    return sum;
}

macros macros_sum(const macros *a, const macros *b) {
    macros sum = {.of.known = a->of.known | b->of.known,
                  .lacking = a->lacking | b->lacking,
                  .weight_g = a->weight_g + b->weight_g};
    for (size_t i = 0; i < NUTRIENT_COUNT; i++)
        sum.of.of[i] = a->of.of[i] + b->of.of[i];
    return sum;
}

macros macros_difference(const macros *a, const macros *b) {
    macros change = {.of.known = a->of.known & b->of.known,
                     .lacking = a->lacking | b->lacking,
                     .weight_g = a->weight_g - b->weight_g};
    for (size_t i = 0; i < NUTRIENT_COUNT; i++)
        if (nutrient_known(&change.of, (nutrient)i))
            change.of.of[i] = a->of.of[i] - b->of.of[i];
    return change;
}

macros macros_times(const macros *of, double times) {
    macros scaled = *of;
    scaled.weight_g *= times;
    for (size_t i = 0; i < NUTRIENT_COUNT; i++)
        scaled.of.of[i] *= times;
    return scaled;
}

/* What line `i` has no figure for. */
static unsigned lacking_in_line(const recipe *of, size_t i) {
    if (!line_counts(of, i))
        return 0;
    if (!line_is_weighed(of, i))
        return EVERY_NUTRIENT;
    return of->weights[i].grams > 0 ? figures_lacking(of->lines.items[i].what) : 0;
}

static void add_line(macros *sum, const recipe *of, size_t i) {
    sum->lacking |= lacking_in_line(of, i);
    if (!line_counts(of, i))
        return;
    double grams = of->weights[i].grams;
    sum->weight_g += grams;
    if (!line_is_weighed(of, i))
        return;
    const nutrients *figures = &of->lines.items[i].what->per_100_g;
    sum->of.known |= figures->known;
    for (size_t k = 0; k < NUTRIENT_COUNT; k++) /* 0 where unknown */
        sum->of.of[k] += figures->of[k] * grams / 100;
}

static macros macros_of_batch(const recipe *of) {
    macros batch = {.of.known = of->lines.count ? 0 : EVERY_NUTRIENT};
    for (size_t i = 0; i < of->lines.count; i++)
        add_line(&batch, of, i);
    return batch;
}

/* The batch less the water that the bake drives off. Never below no water: where the figure for
 * water is a lower bound, the loss may exceed it. */
static macros macros_baked(const macros *batch, const recipe *of) {
    macros baked = *batch;
    double water_g = batch->of.of[NUTRIENT_WATER] - (of->batch_g - of->baked_g);
    baked.of.of[NUTRIENT_WATER] = water_g > 0 ? water_g : 0;
    baked.weight_g = of->baked_g;
    return baked;
}

recipe_macros macros_of(const recipe *of) {
    macros batch = macros_of_batch(of), baked = macros_baked(&batch, of);
    double portions = of->portions > 0 ? of->portions : 1;
    double hundreds = of->baked_g / 100;
    return (recipe_macros){.batch = batch,
                           .portion = macros_times(&baked, 1 / portions),
                           .per_100_g = macros_times(&baked, hundreds > 0 ? 1 / hundreds : 0)};
}

double macros_salt_g(const macros *of) {
    return of->of.of[NUTRIENT_SODIUM] * SALT_PER_SODIUM / 1000;
}

double macros_available_carbohydrate_g(const macros *of) {
    if (nutrient_known(&of->of, NUTRIENT_AVAILABLE_CARBOHYDRATE))
        return of->of.of[NUTRIENT_AVAILABLE_CARBOHYDRATE];
    double left_g = of->of.of[NUTRIENT_CARBOHYDRATE] - of->of.of[NUTRIENT_FIBRE];
    return left_g > 0 ? left_g : 0;
}

word_list macros_lacking(arena *a, const recipe *of, nutrient which) {
    word_list lacking = {0};
    for (size_t i = 0; i < of->lines.count; i++)
        if (lacking_in_line(of, i) >> which & 1u)
            word_add_once(a, &lacking, line_name(of, i));
    return lacking;
}
