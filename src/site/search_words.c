#include "site/search_words.h"

#include "base/words.h"

#include <assert.h>

enum { WEIGHT_BITS = 2 };

/* Words are looked at twice: first counted, then, in lists of just that room, noted. */
typedef struct {
    arena *a;
    names known; /* word to its place in `words` */
    indexed_words words;
    bool counting;
    uint32_t row;
    word_weight weight;
} indexing;

static void note(indexing *of, indexed_word *word) {
    assert(word);
    if (of->counting) {
        word->room++;
        return;
    }
    uint32_t stands = of->row << WEIGHT_BITS | (uint32_t)of->weight;
    /* the weightiest places of a row come first */
    if (!word->count || word->places[word->count - 1] >> WEIGHT_BITS != of->row)
        word->places[word->count++] = stands;
}

/* The word's place in the list; it is added when it is new. */
static size_t place_of(indexing *of, span word) {
    size_t at = of->words.count;
    if (names_add(&of->known, word, at, &at)) {
        indexed_word fresh = {.word = arena_copy_span(of->a, word)};
        LIST_ADD(of->a, &of->words, fresh);
    }
    return at;
}

static void take_word(span word, void *state) {
    indexing *of = state;
    size_t at = place_of(of, word);
    note(of, &of->words.items[at]);
}

static void take(indexing *of, word_weight as, const char *words) {
    of->weight = as;
    if (words)
        words_each(span_of(words), take_word, of);
}

/* The words of an ingredient's names, as places in the list of words. */
typedef struct {
    size_t *items;
    size_t count, capacity;
} word_places;

typedef struct {
    indexing *of;
    word_places *to;
} naming;

static void take_name_word(span word, void *state) {
    naming *n = state;
    size_t at = place_of(n->of, word);
    for (size_t i = 0; i < n->to->count; i++)
        if (n->to->items[i] == at)
            return;
    LIST_ADD(n->of->a, n->to, at);
}

static word_places *words_of_ingredients(indexing *of, const pantry *shelf) {
    word_places *all = ARENA_ARRAY(of->a, word_places, shelf->count);
    for (size_t i = 0; i < shelf->count; i++) {
        naming n = {of, &all[i]};
        words_each(span_of(shelf->items[i]->name), take_name_word, &n);
        for (size_t k = 0; k < shelf->items[i]->also_count; k++)
            words_each(span_of(shelf->items[i]->also[k]), take_name_word, &n);
    }
    return all;
}

static void take_row(indexing *of, const recipe_row *row, const word_places *named) {
    take(of, WEIGHT_TITLE, row->title);
    take(of, WEIGHT_KIND, row->kind);
    for (size_t i = 0; i < row->tag_count; i++)
        take(of, WEIGHT_KIND, row->tags[i]);
    of->weight = WEIGHT_INGREDIENT;
    for (size_t i = 0; i < row->use_count; i++) {
        const word_places *places = &named[row->uses[i].what];
        for (size_t k = 0; !row->uses[i].optional && k < places->count; k++)
            note(of, &of->words.items[places->items[k]]);
    }
    take(of, WEIGHT_SUMMARY, row->summary);
}

static void take_rows(indexing *of, const recipe_rows *rows, const word_places *named) {
    for (size_t i = 0; i < rows->count; i++) {
        of->row = (uint32_t)i;
        take_row(of, &rows->items[i], named);
    }
}

static int compare_words(const void *left, const void *right) {
    const indexed_word *a = left, *b = right;
    return span_compare(a->word, b->word);
}

indexed_words search_words_of(arena *a, const recipe_rows *rows, const pantry *shelf) {
    indexing of = {.a = a, .known = names_in(a), .counting = true};
    const word_places *named = words_of_ingredients(&of, shelf);
    take_rows(&of, rows, named);
    for (size_t i = 0; i < of.words.count; i++)
        of.words.items[i].places = ARENA_ARRAY(a, uint32_t, of.words.items[i].room);
    of.counting = false;
    take_rows(&of, rows, named);
    if (of.words.count > 1)
        qsort(of.words.items, of.words.count, sizeof of.words.items[0], compare_words);
    return of.words;
}

size_t search_word_rows(const indexed_word *of, word_weight which, uint32_t out[]) {
    size_t count = 0;
    for (size_t i = 0; i < of->count; i++)
        if ((of->places[i] & 3u) == (uint32_t)which)
            out[count++] = of->places[i] >> WEIGHT_BITS;
    return count;
}
