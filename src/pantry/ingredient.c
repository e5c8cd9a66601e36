#include "pantry/ingredient.h"

#include "base/list.h"
#include "base/words.h"

static const char *const family_words[] = {
#define FAMILY(constant, word) word,
    FAMILY_LIST(FAMILY)
#undef FAMILY
};
static const char *const origin_words[] = {"plant", "dairy", "egg", "animal", "bee", "mineral"};
static const char *const heat_set_words[] = {"none", "soft", "firm"};
static const char *const polyol_words[] = {"none",     "erythritol", "xylitol",  "maltitol",
                                           "sorbitol", "isomalt",    "lactitol", "mannitol"};
static const char *const certainty_words[] = {"unstated",        "published", "label",
                                              "common practice", "estimate",  "memory"};
static const char *const amino_acid_keys[] = {
    "histidine", "isoleucine", "leucine", "lysine", "methionine-cystine", "phenylalanine-tyrosine",
    "threonine", "tryptophan", "valine"};

const char *family_word(family which) {
    return family_words[which];
}

const char *origin_word(origin which) {
    return origin_words[which];
}

const char *heat_set_word(heat_set which) {
    return heat_set_words[which];
}

const char *certainty_word(certainty which) {
    return certainty_words[which];
}

const char *amino_acid_key(amino_acid which) {
    return amino_acid_keys[which];
}

bool family_named(span word, family *out) {
    if (span_is(word, "fruit puree")) {
        *out = FAMILY_FRUIT_PUREE;
        return true;
    }
    size_t i = words_index(word, family_words, COUNT(family_words));
    if (i == COUNT(family_words))
        return false;
    *out = (family)i;
    return true;
}

bool origin_named(span word, origin *out) {
    size_t i = words_index(word, origin_words, COUNT(origin_words));
    if (i == COUNT(origin_words))
        return false;
    *out = (origin)i;
    return true;
}

bool heat_set_named(span word, heat_set *out) {
    size_t i = words_index(word, heat_set_words, COUNT(heat_set_words));
    if (i == COUNT(heat_set_words))
        return false;
    *out = (heat_set)i;
    return true;
}

bool polyol_named(span word, polyol *out) {
    size_t i = words_index(word, polyol_words, COUNT(polyol_words));
    if (i == COUNT(polyol_words))
        return false;
    *out = (polyol)i;
    return true;
}

bool certainty_named(span word, certainty *out) {
    size_t i = words_index(word, certainty_words, COUNT(certainty_words));
    if (i == COUNT(certainty_words))
        return false;
    *out = (certainty)i;
    return true;
}

bool ingredient_takes_up(const ingredient *what) {
    const unsigned takes_up = 1u << FAMILY_PROTEIN_POWDER | 1u << FAMILY_FLOUR | 1u << FAMILY_MEAL |
                              1u << FAMILY_STARCH | 1u << FAMILY_GUM;
    return takes_up >> what->in & 1u;
}

bool kind_matches(const char *kind, const char *of) {
    span whole = span_of(of);
    size_t length = strlen(kind);
    return span_begins(whole, kind) && (whole.length == length || whole.at[length] == ' ');
}

static const range *stated_measure(const ingredient *of, span unit) {
    for (size_t i = 0; i < of->measures.count; i++)
        if (span_is(unit, of->measures.items[i].unit))
            return &of->measures.items[i].grams;
    return NULL;
}

static const struct {
    const char *unit;
    double teaspoons;
} vessels[VESSEL_COUNT] = {
    [VESSEL_CUP] = {"cup", 48}, [VESSEL_TBSP] = {"tbsp", 3}, [VESSEL_TSP] = {"tsp", 1}};

/* VESSEL_COUNT when it is none. */
static vessel vessel_named(span unit) {
    vessel which = 0;
    if (unit.length == 0 || (unit.at[0] != 'c' && unit.at[0] != 't')) /* large, scoop, each */
        return VESSEL_COUNT;
    while (which < VESSEL_COUNT && !span_is(unit, vessels[which].unit))
        which++;
    return which;
}

bool ingredient_vessels(const ingredient *of, range grams[VESSEL_COUNT]) {
    const range *stated[VESSEL_COUNT + 1] = {0};
    for (size_t i = of->measures.count; i-- > 0;) /* the first of a name stands */
        stated[vessel_named(span_of(of->measures.items[i].unit))] = &of->measures.items[i].grams;
    vessel from = 0;
    while (from < VESSEL_COUNT && !stated[from])
        from++;
    for (vessel i = 0; i < VESSEL_COUNT && from < VESSEL_COUNT; i++) {
        double times = vessels[i].teaspoons / vessels[from].teaspoons;
        const range *one = stated[from];
        grams[i] = stated[i] ? *stated[i]
                             : (range){one->low * times, one->typical * times, one->high * times};
    }
    return from < VESSEL_COUNT;
}

const range *ingredient_measure(const ingredient *of, span unit, range *room) {
    range grams[VESSEL_COUNT];
    const range *stated = stated_measure(of, unit);
    vessel which = stated ? VESSEL_COUNT : vessel_named(unit);
    if (which == VESSEL_COUNT || !ingredient_vessels(of, grams))
        return stated;
    *room = grams[which];
    return room;
}

bool ingredient_is_staple(const ingredient *what) {
    const unsigned staples = 1u << FAMILY_SALT | 1u << FAMILY_LEAVENER | 1u << FAMILY_FLAVOUR;
    return staples >> what->in & 1u;
}

bool ingredient_is_water(const ingredient *what) {
    return what->in == FAMILY_LIQUID && what->kind && strcmp(what->kind, "water") == 0;
}
