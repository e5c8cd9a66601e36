/* Sentences with named places, "Hold back {amount} of the {line}", cut into pieces once, so that
 * filling one is a walk over the pieces. Pure. */
#ifndef BASE_SENTENCE_H
#define BASE_SENTENCE_H

#include "base/arena.h"

/* Places of one sentence at the most. */
enum { SENTENCE_PLACES_MOST = 8 };

/* Words, and the number of the place behind them. */
typedef struct {
    span words;
    int place; /* -1: none, which only the last piece has */
} sentence_piece;

typedef struct {
    const sentence_piece *pieces; /* null: not there */
    size_t count;
} cut_sentence;

/* The names of a sentence's places, apart by single spaces: "amount line". */
typedef const char *sentence_places;

/* Cuts `words` (borrowed, terminated) at the places that `places` names, into `*out` in `a`.
 * False where a place is none of them, or a brace stands alone: `*fault` is then what is wrong,
 * within `words`. */
bool sentence_cut(arena *a, span words, sentence_places places, cut_sentence *out, span *fault);

/* Of the places that `places` names the first that `of` does not have, apart from `but` (null:
 * none); empty when it has all. */
span sentence_lacks(const cut_sentence *of, sentence_places places, const char *but);

/* The sentence with `values` (as many as it was cut with names, none null) in its places, in `a`;
 * one without places is not copied. */
const char *sentence_fill(arena *a, const cut_sentence *of, const char *const values[]);

#endif
