#include "read/kinds.h"

#include "base/words.h"
#include "pantry/pantry.h"

static const char *const kinds[] = {"griddle cake", "waffle",  "muffin",  "cake",  "cupcake",
                                    "brownie",      "cookie",  "bar",     "loaf",  "bread",
                                    "flatbread",    "cracker", "granola", "crust", "no-bake",
                                    "pudding",      "dough"};

word_list recipe_kinds(void) {
    return (word_list){(const char **)kinds, COUNT(kinds), COUNT(kinds)};
}

const char *recipe_kind_of(arena *a, const char *words) {
    span folded = words_fold(a, span_of(words));
    for (size_t i = 0; i < COUNT(kinds); i++)
        if (span_equal(folded, words_fold(a, span_of(kinds[i]))) ||
            span_is(folded, pantry_plural(a, kinds[i])))
            return kinds[i];
    return NULL;
}

/* Common practice, no source. */
static const struct {
    const char *called, *kind;
} callings[] = {{"pancake", "griddle cake"}, {"crepe", "griddle cake"}, {"flapjack", "bar"},
                {"blondie", "brownie"},      {"biscuit", "cookie"},     {"crispbread", "cracker"}};

static const char *called(arena *a, span word) {
    for (size_t i = 0; i < COUNT(callings); i++)
        if (span_is(word, callings[i].called) ||
            span_is(word, pantry_plural(a, callings[i].called)))
            return callings[i].kind;
    return recipe_kind_of(a, arena_copy(a, word));
}

const char *recipe_kind_in(arena *a, const char *title) {
    const char *kind = NULL;
    span rest = words_fold(a, span_of(title));
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest)) {
        const char *one = called(a, word);
        kind = one ? one : kind;
    }
    return kind;
}

const char *recipe_kind_meant(arena *a, const char *words) {
    span folded = words_fold(a, span_of(words));
    for (size_t i = 0; i < COUNT(kinds); i++)
        if (span_equal(folded, words_fold(a, span_of(kinds[i]))))
            return NULL;
    const char *plural_of = recipe_kind_of(a, words);
    return plural_of ? plural_of : words_nearest(folded, kinds, COUNT(kinds));
}
