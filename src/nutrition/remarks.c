#include "nutrition/remarks.h"

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

/* The sentence `says` of the lines that `fits` picks; null when it picks none. */
static const message *about_lines(const remark_case *about, line_test fits, sentence_key says) {
    word_list picked = {0};
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (fits(about->of, i))
            word_add_once(about->a, &picked, line_name(about->of, i));
    const message_value named = value_list(picked.items, picked.count);
    return picked.count ? message_new(about->a, says, &named, 1) : NULL;
}

static const message *unweighed(const remark_case *about) {
    return about_lines(about, is_unweighed, SAY_NOT_COUNTED_UNKNOWN);
}

static const message *to_taste(const remark_case *about) {
    return about_lines(about, is_to_taste, SAY_NOT_COUNTED_TO_TASTE);
}

static const message *optional(const remark_case *about) {
    return about_lines(about, is_optional, SAY_COUNTED_THOUGH_OPTIONAL);
}

static const message *poured_away(const remark_case *about) {
    return about_lines(about, is_poured_away, SAY_COUNTED_WHOLE);
}

static const message *no_loss_stated(const remark_case *about) {
    if (about->of->bake_loss_stated || !recipe_is_cooked(about->of))
        return NULL;
    return MESSAGE_PLAIN(about->a, NO_BAKE_LOSS_STATED);
}

static const message *alcohol(const remark_case *about) {
    if (about->figures->portion.of.of[NUTRIENT_ALCOHOL] < ALCOHOL_G || !recipe_is_cooked(about->of))
        return NULL;
    return MESSAGE_PLAIN(about->a, ALCOHOL_COUNTED);
}

static const message *griddle_fat(const remark_case *about) {
    if (about->of->baked_in.shape != PAN_GRIDDLE)
        return NULL;
    return MESSAGE_PLAIN(about->a, GRIDDLE_FAT);
}

/* "protein 10 to 12 g" for each figure that pack labels leave wide. */
static const message *pack_rounding(const remark_case *about) {
    static const nutrient asked[] = {NUTRIENT_ENERGY,       NUTRIENT_PROTEIN, NUTRIENT_FAT,
                                     NUTRIENT_CARBOHYDRATE, NUTRIENT_SUGARS,  NUTRIENT_FIBRE,
                                     NUTRIENT_SODIUM};
    const message **wide = ARENA_ARRAY(about->a, const message *, COUNT(asked));
    size_t count = 0;
    for (size_t i = 0; i < COUNT(asked); i++) {
        range portion = portion_range(about->of, asked[i]);
        if (range_matters(asked[i], portion))
            wide[count++] = MESSAGE(about->a, FIGURE_FROM_TO, value_word(WORD_NUTRIENT, asked[i]),
                                    value_number(portion.low, 1, NULL),
                                    value_number(portion.high, 1, nutrient_unit(asked[i])));
    }
    return count ? MESSAGE(about->a, PACKS_ARE_ROUNDED, value_inners(wide, count)) : NULL;
}

static const message *far_portion(const remark_case *about) {
    if (about->law != LAW_US)
        return NULL;
    return reference_amount_hint(about->a, about->of, about->figures->portion.weight_g);
}

messages remarks_of(arena *a, const recipe *of, const recipe_macros *figures, label_law law) {
    static const message *(*const all[])(const remark_case *about) = {
        unweighed, to_taste,    optional,      poured_away, no_loss_stated,
        alcohol,   griddle_fat, pack_rounding, far_portion};
    messages remarks = {0};
    remark_case about = {a, of, figures, law};
    for (size_t i = 0; i < COUNT(all); i++) {
        const message *one = all[i](&about);
        if (one)
            LIST_ADD(a, &remarks, one);
    }
    return remarks;
}
