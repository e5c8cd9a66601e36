/* What a recipe's file needs of the files beside it: its picture, and a name no other one has. */
#ifndef READ_RECIPE_FILES_H
#define READ_RECIPE_FILES_H

#include "read/site_folder.h"

/* The slugs of the recipe files of `site`, each with the index of the first file that has it;
 * in `a`. */
names recipe_slugs_of(arena *a, const site_folder *site);

/* Errors for a picture that is not in pictures/, and for a file before this one, called `name`
 * inside recipes/, that would have the same page. */
void recipe_files_check(const site_folder *site, const names *slugs, const recipe *of,
                        const char *name, problems *found);

#endif
