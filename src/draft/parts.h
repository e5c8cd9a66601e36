/* What was found of a recipe, from whatever it was drafted: plain words, not yet lines of a recipe
 * file. And what could not be read, with the reason. */
#ifndef DRAFT_PARTS_H
#define DRAFT_PARTS_H

#include "measure/recipe.h"

/* A few words and what they belong to: an ingredient and its group, a step and its section, a
 * stated figure and its name, a remark and the key it stands beside. Either may be null. */
typedef struct {
    const char *under;
    const char *words;
} draft_item;

typedef struct {
    draft_item *items;
    size_t count, capacity;
} draft_items;

/* More of anything than this no recipe has; what is past it is counted in `lost`. */
enum { PARTS_MOST = 128 };

typedef struct {
    const char *title, *summary, *category, *cuisine, *date, *changed, *address, *serving;
    double prepare_min, cook_min, total_min; /* 0: not stated */
    word_list yields;                        /* as stated: "8", "8 slices" */
    word_list tags, authors, pictures, tools;
    draft_items ingredients, steps, notes;
    draft_items figures; /* nutrition as stated */
    draft_items remarks; /* under a key of the front matter, or null: of the whole */
    word_list left_out;  /* properties that a recipe file has no place for */
    size_t lost;
} draft_parts;

/* Adds `...` (one value) to the list `which` of `parts`, a draft_parts. */
#define PARTS_ADD(a, parts, which, ...)                                                            \
    do {                                                                                           \
        if ((parts)->which.count < PARTS_MOST)                                                     \
            LIST_ADD((a), &(parts)->which, __VA_ARGS__);                                           \
        else                                                                                       \
            (parts)->lost++;                                                                       \
    } while (0)

#endif
