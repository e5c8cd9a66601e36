/* Makes one recipe's files: its page and its recipe.json; what a worker does. */
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

/* Reads the recipe file `name`, writes its page and recipe.json, and adds its row to `rows`. A
 * recipe with errors is reported; its files of an earlier time are kept. */
void recipe_make(recipe_maker *with, const char *name, recipe_rows *rows);

#endif
