/* A recipe as read and weighed: what every later stage works on.
 *
 * read/recipe.c fills it from the file, measure/weigh.c the weights; after that it is constant.
 * Everything lives in the recipe's arena. */
#ifndef MEASURE_RECIPE_H
#define MEASURE_RECIPE_H

#include "measure/line.h"
#include "measure/weigh.h"

struct swap_rules;

typedef struct {
    const char *heading; /* "To serve"; null for the lines that stand first, without a group */
    size_t first, count; /* its lines: an index into the recipe's lines */
} line_group;

typedef struct {
    recipe_line *items;
    size_t count, capacity;
} recipe_lines;

typedef struct {
    line_group *items;
    size_t count, capacity;
} line_groups;

/* "8 rounds": how many of what. */
typedef struct {
    double count;
    const char *noun; /* as written: "rounds" */
} yield;

typedef enum {
    PAN_NONE,
    PAN_ROUND,
    PAN_SQUARE,
    PAN_RECTANGLE,
    PAN_LOAF,
    PAN_MUFFIN,
    PAN_GRIDDLE
} pan_shape;

/* Inside sizes in cm; a round pan's length is its diameter. */
typedef struct {
    pan_shape shape;
    double length_cm, width_cm, depth_cm; /* 0 where not stated */
    double wells;                         /* of a muffin tin */
    const char *text;                     /* as written; null when none */
} pan;

typedef struct {
    double prepare, rest, bake, cool; /* minutes; 0 where not stated */
} minutes_of;

typedef struct {
    const char **items;
    size_t count, capacity;
} word_list;

typedef struct {
    const char *file; /* relative to the site folder: "recipes/rounds.md" */
    digest content;   /* of the file's bytes */
    const char *slug; /* file name without .md, as a slug */
    const char *title, *summary, *kind, *author, *date, *changed, *picture, *picture_text;
    place title_at, summary_at, makes_at, portion_at, kind_at, tags_at, picture_at, date_at;
    yield makes, portion; /* portion: of the same noun; 1 when not stated */
    double portions;      /* makes / portion */
    minutes_of minutes;
    double oven_c; /* 0: not baked in an oven */
    const char *oven;
    pan baked_in;
    double bake_loss; /* share of the batch weight lost as water, 0 to < 1 */
    bool bake_loss_stated;
    recipe_lines lines;
    weight *weights; /* one a line; measure/weigh.h */
    line_groups groups;
    const struct swap_rules *own_swaps; /* the author's own word, swap/rule.h; null when none */
    word_list tags;
    bool publish;
    span source;        /* the file's bytes, borrowed */
    span body;          /* Markdown, a part of them */
    unsigned body_line; /* line of the file where the body begins */
    double batch_g;     /* weight of all weighed lines, as mixed */
    double baked_g;     /* batch_g less the bake loss */
    size_t unweighed;   /* lines with an amount that could not be weighed */
} recipe;

#endif
