/* Running text cut into its words, each with its place, its folded form and how it joins the word
 * before it: what the search for mentions walks over. */
#ifndef MEASURE_PROSE_H
#define MEASURE_PROSE_H

#include "base/list.h"

/* A written word, and where its folded form stands among all. */
typedef struct {
    size_t at, end;     /* bytes of the text */
    size_t key, keyend; /* bytes of the folded whole */
    bool cut;           /* more than blanks stand between it and the word before */
    bool bound;         /* just a hyphen or an apostrophe does */
} prose_token;

typedef struct {
    prose_token *items;
    size_t count, capacity;
    span folded; /* all words folded, single spaces between */
    span text;   /* as written; borrowed */
} prose;

/* The words of `text` (letters and figures; anything else parts them), in `a`. */
prose prose_of(arena *a, span text);

/* Word `i`, folded; empty past the end. */
span prose_word(const prose *all, size_t i);

/* Words `from` to `to` - 1, folded, single spaces between. */
span prose_run(const prose *all, size_t from, size_t to);

/* Word `i` is one of `list`. */
bool prose_word_among(const prose *all, size_t i, const char *const list[], size_t count);

#define IS_WORD(all, i, list) prose_word_among((all), (i), (list), COUNT(list))

/* There is a word `i`, and nothing but blanks stands before it. */
bool prose_goes_on(const prose *all, size_t i);

/* Nothing but blanks. */
bool prose_gap_is_blank(span gap);

#endif
