#include "swap/build_norms.h"

#include "base/words.h"
#include "swap/balance.h"

#include <math.h>
#include <stdlib.h>

static const struct {
    const char *key, *name;
    bool is_share;
    double noticed;
} quantities[BUILD_QUANTITIES] = {
    [BUILD_BOWL] = {"free_water_bowl", "free water in the bowl, for each gram of dry", false, 0.03},
    [BUILD_BAKE] = {"free_water_bake", "free water in the bake, for each gram of dry", false, 0.06},
    [BUILD_SETTING] = {"setting_protein", "protein that sets on heating", true, 0.01},
    [BUILD_FAT] = {"fat", "fat", true, 0.02},
    [BUILD_SWEETNESS] = {"sweetness", "sweetness, as sugar", true, 0.02},
    [BUILD_LEAVENING] = {"leavening", "leavening, as baking powder", true, 0.003},
};

const char *build_quantity_key(build_quantity which) {
    return quantities[which].key;
}

const char *build_quantity_name(build_quantity which) {
    return quantities[which].name;
}

bool build_quantity_is_share(build_quantity which) {
    return quantities[which].is_share;
}

double build_noticed(build_quantity which) {
    return quantities[which].noticed;
}

static double leavening_per_g(const ingredient *what) {
    if (facts_is_a(what, FAMILY_LEAVENER, "baking soda"))
        return 3;
    return facts_is_a(what, FAMILY_LEAVENER, "baking powder");
}

double build_above(build_quantity which, const ingredient *what, double bake_loss) {
    balance one = balance_of_ingredient(what, 1);
    one.lost_g = bake_loss;
    switch (which) {
    case BUILD_BOWL:
        return balance_free_cold_g(&one).typical;
    case BUILD_BAKE:
        return balance_free_heated_g(&one).typical;
    case BUILD_SETTING:
        return one.setting_g;
    case BUILD_FAT:
        return one.fat_g;
    case BUILD_SWEETNESS:
        return one.sweetness_g;
    case BUILD_LEAVENING:
    case BUILD_QUANTITIES:
        break;
    }
    return leavening_per_g(what);
}

double build_below(build_quantity which, const ingredient *what) {
    return quantities[which].is_share ? 1 : balance_dry_per_g(what);
}

build_sample build_sample_of(const recipe_facts *about) {
    const recipe *of = about->of;
    double above[BUILD_QUANTITIES] = {0}, below[BUILD_QUANTITIES] = {0};
    build_sample one = {.title = of->title,
                        .kind = about->kind,
                        .sets = about->sets,
                        .portion_g = about->part_g / (of->portions > 0 ? of->portions : 1),
                        .bake_loss = of->bake_loss,
                        .oven = of->oven,
                        .pan = of->baked_in.text};
    for (size_t i = 0; i < of->lines.count; i++)
        if (facts_at(about, i) && about->part_g > 0)
            one.share[facts_at(about, i)->in] += of->weights[i].grams / about->part_g;
    for (size_t i = 0; i < of->lines.count; i++)
        for (build_quantity q = 0; facts_at(about, i) && q < BUILD_QUANTITIES; q++) {
            above[q] += of->weights[i].grams * build_above(q, facts_at(about, i), of->bake_loss);
            below[q] += of->weights[i].grams * build_below(q, facts_at(about, i));
        }
    for (build_quantity q = 0; q < BUILD_QUANTITIES; q++)
        one.ratio[q] = below[q] > 0 ? above[q] / below[q] : 0;
    return one;
}

/* "muffins" and "muffin". */
static bool same_noun(arena *a, const char *one, const char *other) {
    span left = words_fold(a, span_of(one)), right = words_fold(a, span_of(other));
    left.length -= span_ends(left, "s");
    right.length -= span_ends(right, "s");
    return span_equal(left, right);
}

double build_portion_g(arena *a, const recipe_facts *about, const yield *makes, double portions) {
    const recipe *of = about->of;
    bool alike = of->makes.count > 0 && portions > 0 && same_noun(a, of->makes.noun, makes->noun);
    if (alike)
        return about->part_g / of->makes.count * makes->count / portions;
    return about->part_g / (of->portions > 0 ? of->portions : 1);
}

/* -- what they have in common ----------------------------------------------------------------- */

static int compare_numbers(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

/* The value below which `share` of the sorted numbers lie, between two of them in proportion. */
static double quantile(const double sorted[], size_t count, double share) {
    double at = share * (double)(count - 1);
    size_t below = (size_t)at;
    return below + 1 < count
               ? sorted[below] + (at - (double)below) * (sorted[below + 1] - sorted[below])
               : sorted[count - 1];
}

static range spread_of(double numbers[], size_t count) {
    enum { QUARTILES_FROM = 5 };
    if (!count)
        return (range){0};
    qsort(numbers, count, sizeof *numbers, compare_numbers);
    double outside = count >= QUARTILES_FROM ? 0.25 : 0;
    return (range){quantile(numbers, count, outside), quantile(numbers, count, 0.5),
                   quantile(numbers, count, 1 - outside)};
}

static bool belongs(const build_sample *one, const char *kind, unsigned settings) {
    return (!kind[0] || strcmp(one->kind, kind) == 0) &&
           (!settings || (settings >> one->sets & 1u));
}

static size_t count_of(const build_samples *from, const char *kind, unsigned settings) {
    size_t count = 0;
    for (size_t i = 0; i < from->count; i++)
        count += belongs(&from->items[i], kind, settings);
    return count;
}

/* Samples under comparison, and room to sort their figures in. */
typedef struct {
    const build_sample **items;
    size_t count;
    double *numbers;
} compared;

static range portions_of(const compared *of) {
    for (size_t i = 0; i < of->count; i++)
        of->numbers[i] = of->items[i]->portion_g;
    return spread_of(of->numbers, of->count);
}

static range ratios_of(const compared *of, build_quantity which) {
    for (size_t i = 0; i < of->count; i++)
        of->numbers[i] = of->items[i]->ratio[which];
    return spread_of(of->numbers, of->count);
}

static double usual_bake_loss(const compared *of) {
    size_t stated = 0;
    for (size_t i = 0; i < of->count; i++)
        if (of->items[i]->bake_loss > 0)
            of->numbers[stated++] = of->items[i]->bake_loss;
    return spread_of(of->numbers, stated).typical;
}

build_norms build_norms_of(arena *a, const build_samples *from, const char *kind,
                           unsigned settings) {
    size_t own = count_of(from, kind, settings), all = count_of(from, kind, 0);
    build_norms norms = {.any_setting = own < BUILD_FEW && all > own};
    compared them = {.items = ARENA_ARRAY(a, const build_sample *, all + 1),
                     .numbers = ARENA_ARRAY(a, double, all + 1)};
    norms.titles = ARENA_ARRAY(a, const char *, all + 1);
    for (size_t i = 0; i < from->count; i++) {
        const build_sample *one = &from->items[i];
        if (!belongs(one, kind, norms.any_setting ? 0 : settings))
            continue;
        norms.titles[them.count] = one->title;
        them.items[them.count++] = one;
        norms.oven = norms.oven ? norms.oven : one->oven;
        norms.pan = norms.pan ? norms.pan : one->pan;
    }
    norms.count = them.count;
    for (build_quantity q = 0; q < BUILD_QUANTITIES; q++)
        norms.ratio[q] = ratios_of(&them, q);
    for (size_t i = 0; i < them.count; i++)
        for (size_t in = 0; in < FAMILY_COUNT; in++)
            norms.share_most[in] = fmax(norms.share_most[in], them.items[i]->share[in]);
    norms.portion_g = portions_of(&them);
    norms.bake_loss = usual_bake_loss(&them);
    return norms;
}

bool build_is_usual(const build_norms *norms, build_quantity which, double ratio) {
    const range *usual = &norms->ratio[which];
    double unnoticed = quantities[which].noticed * (quantities[which].is_share ? 1 : 2);
    return ratio >= usual->low - unnoticed && ratio <= usual->high + unnoticed;
}
