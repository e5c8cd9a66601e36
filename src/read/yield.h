/* How many of what a recipe makes, and what a portion is: "8 rounds", "1/12 loaf". */
#ifndef READ_YIELD_H
#define READ_YIELD_H

#include "measure/recipe.h"

/* Reads "8 rounds": an amount above 0, then a noun. The noun is put in `a`. False with a problem
 * when it can't be read. */
bool yield_read(arena *a, located written, yield *out, problems *found);

/* Reads a portion of what makes `of`: "2 rounds", "1/12 loaf" or just "2". False with a problem
 * when it can't be read, is of another noun or is more than the whole; a warning when it does not
 * divide the whole evenly. */
bool portion_read(arena *a, located written, const yield *of, yield *out, problems *found);

/* True when the last words of both are the same noun, in one number or the other: "loaf" and
 * "small loaves". `scratch` is used for folding. */
bool nouns_agree(const char *one, const char *other, arena *scratch);

#endif
