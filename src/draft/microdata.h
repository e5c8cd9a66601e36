/* Recipes in a page's own mark-up, as objects like those of JSON-LD: microdata with a schema.org
 * type (HTML Living Standard, 5), and the classes of h-recipe and its elder form (microformats.org,
 * h-recipe and hRecipe). */
#ifndef DRAFT_MICRODATA_H
#define DRAFT_MICRODATA_H

#include "draft/html.h"

#include <jansson.h>

/* The items of `page` whose type is schema.org's Recipe: a list the caller owns, empty when there
 * are none. */
json_t *microdata_recipes(const html_node *page);

/* The same of what is marked by classes. */
json_t *class_recipes(const html_node *page);

#endif
