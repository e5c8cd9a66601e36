/* Makes the pages that need all recipes: home, lists, ingredient pages, chart, search index, feed,
 * sitemap; and copies the theme's files. */
#ifndef PUBLISH_SITE_PAGES_H
#define PUBLISH_SITE_PAGES_H

#include "publish/outputs.h"
#include "publish/record.h"
#include "site/page.h"
#include "site/row.h"

typedef struct {
    const page_maker *by;
    const recipe_rows *rows; /* sorted */
    const made_list *recipes;
} site_pages;

/* Makes them with `workers` at a time (0: see workers_for), in no stated order, and adds their
 * files to `to`. All is borrowed. */
void site_pages_make(const site_pages *from, unsigned workers, outputs *to, problems *found);

/* The recipe that the page of assumptions works through, or null: that page depends on all its
 * file says. */
const made *water_example_of(const made_list *recipes, const pantry *shelf);

#endif
