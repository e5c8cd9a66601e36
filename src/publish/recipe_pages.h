/* Makes one recipe's files: its page, its recipe.json and the pages of its main swaps; what a
 * worker does. */
#ifndef PUBLISH_RECIPE_PAGES_H
#define PUBLISH_RECIPE_PAGES_H

#include "publish/outputs.h"
#include "site/page.h"
#include "site/row.h"

typedef struct {
    const page_maker *by;
    arena *a;    /* reset before each recipe, by the caller */
    arena *keep; /* rows and slugs outlive the recipe */
    outputs *to;
    problems *found;
    text page; /* room for one file, used again and again */
    bool machine_failed;
} recipe_maker;

/* Everything is borrowed but the page's room. */
recipe_maker recipe_maker_new(const page_maker *by, arena *a, arena *keep, outputs *to,
                              problems *found);
void recipe_maker_free(recipe_maker *of);

/* Writes `of` as `path`/`name`; fills `template` from `page` and writes it as `path`/index.html,
 * with its view beside it where that is asked for. */
void recipe_write_view(recipe_maker *with, const char *path, const char *name, const view *of);
void recipe_write_page(recipe_maker *with, const char *path, const char *template,
                       const view *page);

/* Reads the recipe file `name`, writes its files, and adds its row to `rows`. A
 * recipe with errors is reported; its files of an earlier time are kept. */
void recipe_make(recipe_maker *with, const char *name, recipe_rows *rows);

#endif
