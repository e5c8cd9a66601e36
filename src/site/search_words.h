/* The words that a large site's recipes are found by, and where they stand. */
#ifndef SITE_SEARCH_WORDS_H
#define SITE_SEARCH_WORDS_H

#include "base/names.h"
#include "pantry/pantry.h"
#include "site/row.h"

/* Where a word stands, the weightiest place first. WEIGHT(constant, weight): also what the page's
 * script ranks by. */
#define WEIGHT_LIST(WEIGHT)                                                                        \
    WEIGHT(TITLE, 8)                                                                               \
    WEIGHT(KIND, 5) /* and tags */                                                                 \
    WEIGHT(INGREDIENT, 4)                                                                          \
    WEIGHT(SUMMARY, 1)

typedef enum {
#define WEIGHT(constant, weight) WEIGHT_##constant,
    WEIGHT_LIST(WEIGHT)
#undef WEIGHT
        WEIGHT_COUNT
} word_weight;

/* A word and the recipes that have it: a row's number and, in its two lowest bits, the weight. */
typedef struct {
    span word; /* folded */
    uint32_t *places;
    size_t count, room;
} indexed_word;

typedef struct {
    indexed_word *items; /* sorted by bytes */
    size_t count, capacity;
} indexed_words;

/* The words of `rows`: of titles, summaries, kinds, tags, and of the names of ingredients that are
 * not optional. Each recipe stands once with a word, with its weightiest place. In `a`. */
indexed_words search_words_of(arena *a, const recipe_rows *rows, const pantry *shelf);

/* The rows of `of` whose weight is `which`, growing, into `out`, which has room for all; how
 * many. */
size_t search_word_rows(const indexed_word *of, word_weight which, uint32_t out[]);

#endif
