/* Finds what a method says of the ingredients of its recipe: "Whisk 60 g of the almond meal into
 * the remaining 2 tablespoons of milk" mentions two lines, each with an amount.
 *
 * Made for plain words: one paragraph, step or text node, no mark-up. Precise rather than greedy:
 * times, sizes and temperatures ("5 minutes", "9 cm", "180 C"), counts of what is shaped ("12
 * balls") and amounts of what is mixed already ("2 tablespoons of batter") are no mentions, and
 * neither are verbs ("butter the tin") or parts of joined words ("egg-free").
 *
 *     mention_names called = mention_names_of(a, recipe, shelf, cups);     once a recipe
 *     mentions all = mentions_in(a, &called, words);                       once a paragraph
 *
 * How sure a mention is:
 *
 *     changeable   an explicit number with a unit of weight or volume (or a count of a line that
 *                  is counted) right before the name of exactly one line: the number may be
 *                  changed in place when the batch is scaled, and compared with the line
 *     one line     `line` is set: it speaks of that line, by its name or a short form
 *     several      `lines` has more than one bit: "the flour" where there are two, "the dry
 *                  mixture", "the nuts": good for "is it used at all", for nothing else
 *     none         `lines` is 0: an ingredient of the pantry that this recipe does not list */
#ifndef MEASURE_MENTION_H
#define MEASURE_MENTION_H

#include "measure/mention_names.h"

enum { MENTION_NO_LINE = -1 };

/* Offsets and lengths are bytes of the words searched. */
typedef struct {
    size_t at, length;               /* all of it: "the remaining 2 tablespoons of the milk" */
    size_t amount_at, amount_length; /* "2 tablespoons"; length 0: no amount */
    size_t number_length;            /* "2": it begins where the amount does */
    size_t name_at, name_length;     /* "milk" */
    line_set lines;                  /* all lines it may speak of */
    int line;                        /* the only one, or MENTION_NO_LINE */
    bool loose;                      /* by a word that is less than its name: "whey" */
    const ingredient *what;          /* of that line, or the pantry's; null where several */
    bool rest;                       /* "the rest of", "the remaining", "the other" */
    bool more;                       /* "another", "one more": beyond what the list has */
    double share;                    /* "half the", "two thirds of the": 0.5, 0.667; 0: none said */
    amount_range quantity;           /* of `in`; both 0 without an amount */
    const unit *in;                  /* null: a bare count ("2 of the eggs"), or no amount */
    double grams;                    /* of the amount or share, by the line; 0: not known */
    bool changeable;                 /* see above */
} mention;

typedef struct {
    mention *items;
    size_t count, capacity;
} mentions;

/* All mentions in `words`, in order, none overlapping; in `a`. `words` is borrowed. */
mentions mentions_in(arena *a, const mention_names *called, span words);

/* The first of `all` whose name ends behind byte `at`; all->count: none does. */
size_t mentions_from(const mentions *all, size_t at);

#endif
