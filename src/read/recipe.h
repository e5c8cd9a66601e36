/* Reads a recipe file into a weighed recipe. */
#ifndef READ_RECIPE_H
#define READ_RECIPE_H

#include "measure/recipe.h"
#include "read/site_settings.h"

/* Reads `bytes` of the file called `file` (relative to the site folder) and weighs its lines.
 * Everything is put in `a`; `bytes` must live as long. Null when there is no usable recipe (no
 * front matter, no title, no ingredients); otherwise what could be read, and problems for the
 * rest: the caller decides by their count whether to publish it. */
recipe *recipe_read(arena *a, const char *file, span bytes, const pantry *shelf, cup_standard cups,
                    problems *found);

#endif
