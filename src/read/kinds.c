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

const char *recipe_kind_meant(arena *a, const char *words) {
    span folded = words_fold(a, span_of(words));
    for (size_t i = 0; i < COUNT(kinds); i++)
        if (span_equal(folded, words_fold(a, span_of(kinds[i]))))
            return NULL;
    const char *plural_of = recipe_kind_of(a, words);
    return plural_of ? plural_of : words_nearest(folded, kinds, COUNT(kinds));
}
