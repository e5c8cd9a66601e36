/* The kinds of recipe that the reference rules and the reference amounts of labels know. A site may
 * have others; but "bars" for "bar" would be one that no rule speaks of. */
#ifndef READ_KINDS_H
#define READ_KINDS_H

#include "measure/recipe.h"

/* All of them, in the order in which they are offered. Borrowed. */
word_list recipe_kinds(void);

/* The kind that `words` are in one number or the other and in any case ("Griddle cakes"); null:
 * none. `a` is for scratch. */
const char *recipe_kind_of(arena *a, const char *words);

/* The kind that a word of `title` is, the last such; or what people call it: "pancakes" are griddle
 * cakes. Null: none. `a` is for scratch. */
const char *recipe_kind_in(arena *a, const char *title);

/* The kind that `words`, which are none, are a slip or the plural of; null: none. */
const char *recipe_kind_meant(arena *a, const char *words);

#endif
