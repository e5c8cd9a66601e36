#include "nutrition/remarks.h"

#include "base/number.h"
#include "nutrition/cautions.h"
#include "nutrition/lines.h"
#include "nutrition/reference_amount.h"
#include "nutrition/tolerance.h"

/* Alcohol in a portion that is worth a word, g: more than a spoon of extract brings. Our choice. */
#define ALCOHOL_G 1.0

typedef struct {
    arena *a;
    const recipe *of;
    const recipe_macros *figures;
    label_law law;
} remark_case;

typedef bool (*line_test)(const recipe *of, size_t i);

static bool is_unweighed(const recipe *of, size_t i) {
    return of->weights[i].way == WEIGHT_UNKNOWN;
}

static bool is_to_taste(const recipe *of, size_t i) {
    return !line_counts(of, i);
}

/* "drained, syrup discarded": how much of it stays is not known. */
static bool is_poured_away(const recipe *of, size_t i) {
    static const char *const signs[] = {"discard", "poured away", "poured off", "drained off"};
    span words = span_of(of->lines.items[i].preparation);
    for (size_t k = 0; k < COUNT(signs); k++)
        if (span_find(words, signs[k]) < words.length)
            return line_counts(of, i);
    return false;
}

static bool is_optional(const recipe *of, size_t i) {
    return of->lines.items[i].optional && line_counts(of, i);
}

/* `before`, the names of the lines that `fits` picks, a full stop; null when it picks none. */
static const char *about_lines(const remark_case *about, line_test fits, const char *before) {
    word_list picked = {0};
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (fits(about->of, i))
            word_add_once(about->a, &picked, line_name(about->of, i));
    if (picked.count == 0)
        return NULL;
    return arena_format(about->a, "%s%s.", before, words_joined(about->a, &picked));
}

static const char *unweighed(const remark_case *about) {
    return about_lines(about, is_unweighed, "Not counted, as no weight is known: ");
}

static const char *to_taste(const remark_case *about) {
    return about_lines(about, is_to_taste, "Not counted, being to taste: ");
}

static const char *optional(const remark_case *about) {
    return about_lines(about, is_optional, "Counted, though optional: ");
}

static const char *poured_away(const remark_case *about) {
    return about_lines(about, is_poured_away, "Counted whole, though part of it is poured away: ");
}

static const char *no_loss_stated(const remark_case *about) {
    if (about->of->bake_loss_stated || !recipe_is_cooked(about->of))
        return NULL;
    return "No bake loss is stated, so 100 g are 100 g of the mix: baked, they hold more.";
}

static const char *alcohol(const remark_case *about) {
    if (about->figures->portion.of.of[NUTRIENT_ALCOHOL] < ALCOHOL_G || !recipe_is_cooked(about->of))
        return NULL;
    return "All the alcohol is counted, though some bakes off.";
}

static const char *griddle_fat(const remark_case *about) {
    if (about->of->baked_in.shape != PAN_GRIDDLE)
        return NULL;
    return "Fat to grease the griddle is counted only where it is listed.";
}

/* "protein 10 to 12 g" for each figure that pack labels leave wide. */
static const char *pack_rounding(const remark_case *about) {
    static const nutrient asked[] = {NUTRIENT_ENERGY,       NUTRIENT_PROTEIN, NUTRIENT_FAT,
                                     NUTRIENT_CARBOHYDRATE, NUTRIENT_SUGARS,  NUTRIENT_FIBRE,
                                     NUTRIENT_SODIUM};
    word_list wide = {0};
    for (size_t i = 0; i < COUNT(asked); i++) {
        range portion = portion_range(about->of, asked[i]);
        if (range_matters(asked[i], portion))
            word_add_once(about->a, &wide,
                          arena_format(about->a, "%s %s to %s %s", nutrient_key(asked[i]),
                                       number_copy(about->a, portion.low, 1),
                                       number_copy(about->a, portion.high, 1),
                                       nutrient_unit(asked[i])));
    }
    if (wide.count == 0)
        return NULL;
    return arena_format(about->a, "Pack labels are rounded, so a portion may hold %s.",
                        words_joined(about->a, &wide));
}

static const char *far_portion(const remark_case *about) {
    if (about->law != LAW_US)
        return NULL;
    return reference_amount_hint(about->a, about->of, about->figures->portion.weight_g);
}

word_list remarks_of(arena *a, const recipe *of, const recipe_macros *figures, label_law law) {
    static const char *(*const all[])(const remark_case *about) = {
        unweighed, to_taste,    optional,      poured_away, no_loss_stated,
        alcohol,   griddle_fat, pack_rounding, far_portion};
    word_list remarks = {0};
    remark_case about = {a, of, figures, law};
    for (size_t i = 0; i < COUNT(all); i++) {
        const char *sentence = all[i](&about);
        if (sentence)
            LIST_ADD(a, &remarks, sentence);
    }
    return remarks;
}
