/* By what words the method of a recipe may call its ingredients: the names and aliases of each
 * line, and the short forms a cook uses once the list is read ("the flour", "whey", "the whites").
 * Made once a recipe; measure/mention.h looks words up in it. */
#ifndef MEASURE_MENTION_NAMES_H
#define MEASURE_MENTION_NAMES_H

#include "base/names.h"
#include "measure/recipe.h"

#include <stdint.h>

/* A bit for each line of a recipe; lines past the 64th have none. */
typedef uint64_t line_set;

/* How near a way of calling it is to the name; the nearest that fits decides. */
typedef enum {
    NAMED_WHOLE,  /* "oat flour": its name, an alias, either number */
    NAMED_FAMILY, /* "the powder", "the flour" */
    NAMED_SHORT,  /* "Greek yogurt", "the yogurt" for plain Greek yogurt */
    NAMED_LOOSE,  /* "whey", "cocoa", "the spices", "the dry mixture": a mention, no more */
    NAMED_COUNT
} name_nearness;

typedef struct {
    line_set lines[NAMED_COUNT];
} called_lines;

typedef struct {
    called_lines *items;
    size_t count, capacity;
    arena *home;  /* borrowed */
    names by_key; /* folded words, the last without its plural ending, to an index of `items` */
    size_t longest_words;
    const recipe *of;    /* borrowed */
    const pantry *shelf; /* borrowed */
    cup_standard cups;
} mention_names;

/* The names of the lines of `of`, which must be weighed; in `a`. Arguments are borrowed. */
mention_names mention_names_of(arena *a, const recipe *of, const pantry *shelf, cup_standard cups);

/* What `words` (folded) stand for; null when they are no name of a line. */
const called_lines *mention_names_find(const mention_names *of, span words);

#endif
