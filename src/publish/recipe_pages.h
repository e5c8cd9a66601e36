/* Makes one recipe's files: its page, its recipe.json, all its notes and the pages of its main
 * swaps; what a worker does. */
#ifndef PUBLISH_RECIPE_PAGES_H
#define PUBLISH_RECIPE_PAGES_H

#include "base/names.h"
#include "publish/outputs.h"
#include "publish/record.h"
#include "site/page.h"

typedef struct {
    const page_maker *by;
    const names *slugs; /* which recipe file, the first in order, has each slug */
    arena *a;           /* reset before each recipe, by the caller */
    arena *keep;        /* rows and slugs outlive the recipe */
    outputs *to;
    problems *found;
    text page; /* room for one file, used again and again */
    bool machine_failed;
} recipe_maker;

/* Everything is borrowed but the page's room, which starts empty and which the caller frees. */

/* Writes `of` as `path`/`name`; fills `template` from `page` and writes it as `path`/index.html,
 * with its view beside it where that is asked for. */
void recipe_write_view(recipe_maker *with, const char *path, const char *name, const view *of);
void recipe_write_page(recipe_maker *with, const char *path, const char *template,
                       const view *page);

/* Reads the recipe `file`, writes its files, and returns what the record keeps of
 * it, in with->keep; its name is borrowed. `earlier` is what it kept before, or null. A recipe
 * with errors is reported; its files of an earlier time are kept. */
made recipe_make(recipe_maker *with, const file_entry *file, const made *earlier);

#endif
