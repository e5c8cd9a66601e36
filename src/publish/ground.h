/* What the pages of a site stand on besides the recipes: the program, settings, theme, menu,
 * trials, pantry and rules, as digests, so that a build sees which of them changed.
 *
 *     common    a change here touches every page
 *     standing  for each ingredient what her pantry says of it, which of her rules replace it and
 *               which trials what is like it: a change here touches the recipes that use it, or
 *               may use it in its stead
 *     tables    a change here touches the pages that need all recipes
 *
 * The reference itself is part of the program. */
#ifndef PUBLISH_GROUND_H
#define PUBLISH_GROUND_H

#include "publish/record.h"
#include "site/page.h"

typedef struct {
    digest program, common, tables;
    const standing *items; /* in the order of the pantry */
    size_t count;
} ground;

/* Works it out, in `a`. */
ground ground_of(arena *a, const page_maker *by);

/* The digest of this program and of the libraries that shape its pages; 0 when it can't be read,
 * and then no record is to be trusted. */
digest ground_program(void);

/* How the ground differs from an earlier one with the same `common`. */
typedef struct {
    const bool *touched; /* for each ingredient: recipes that use it are to be made again */
    bool any_figures;    /* some ingredient's own figures changed */
} ground_change;

/* The digest of all that the trials of the recipe `slug` say; 0: there are none. */
digest bakes_of_recipe(const trials *log, const char *slug);

/* In `a`. `count` of `earlier` is that of `now`. */
ground_change ground_changes(arena *a, const ground *now, const standing *earlier,
                             const site_folder *of);

#endif
