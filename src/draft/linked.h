/* JSON-LD as schema.org's examples and pages write it: where a Recipe is in it, and its values.
 *
 * A key may be plain ("name") or carry the vocabulary ("schema:name", "https://schema.org/name").
 * A value may be itself, an object with @value, or one in a list. An object may be only the @id
 * of another one of the document. All that is returned is borrowed from the tree. */
#ifndef DRAFT_LINKED_H
#define DRAFT_LINKED_H

#include "base/arena.h"

#include <jansson.h>

enum { LINKED_RECIPES_MOST = 64, LINKED_DEPTH_MOST = 64, LINKED_LOOKUPS_MOST = 64 };

typedef struct {
    const json_t *items[LINKED_RECIPES_MOST];
    size_t count;
} linked_recipes;

/* All objects whose @type is Recipe, in the order of the document, wherever they stand (@graph,
 * lists, mainEntity …). */
void linked_find(const json_t *document, linked_recipes *out);

/* The property's name without the vocabulary before it; null for what begins with @. */
const char *linked_name(const char *key);

/* The value of `name` in `of`; null when it is not there or `of` is no object. */
const json_t *linked_get(const json_t *of, const char *name);

/* `type` is the @type of `of`, or one of several. */
bool linked_is(const json_t *of, const char *type);

/* What `of` stands for when it is only an @id: the fullest object of the document with this @id;
 * otherwise `of`. `*lookups` counts down, as each looks at the whole document. */
const json_t *linked_resolve(const json_t *document, const json_t *of, size_t *lookups);

/* Plain words of a string, a number, an object with @value, or the first of a list that has any;
 * null when there are none. In the arena, line ends kept. */
const char *linked_words(arena *a, const json_t *value);

#endif
