/* The views of the pages that list recipes: home, all recipes by kind, one kind, one tag; and of
 * the plain pages. */
#ifndef SITE_VIEW_LISTS_H
#define SITE_VIEW_LISTS_H

#include "site/page.h"
#include "site/row.h"

/* A name that recipes share (a kind or a tag) and which of the rows have it. */
typedef struct {
    const char *name, *slug;
    size_t *rows; /* indexes into the rows, in their order */
    size_t count, capacity;
} row_group;

typedef struct {
    row_group *items;
    size_t count, capacity;
} row_groups;

/* The kinds and the tags of `rows`, sorted by slug; names that share a slug are one. */
row_groups groups_by_kind(arena *a, const recipe_rows *rows);
row_groups groups_by_tag(arena *a, const recipe_rows *rows);

/* The home page: newest recipes, kinds, tags, powders. */
view *view_of_home(arena *a, const page_maker *by, const recipe_rows *rows, const row_groups *kinds,
                   const row_groups *tags);

/* What lists show of each of `rows`, in their order: {title, href, picture, protein_text, …}. Made
 * once for all pages, which borrow it. */
typedef struct {
    const view **items;
    size_t count;
} recipe_items;

recipe_items recipe_items_of(arena *a, const page_maker *by, const recipe_rows *rows);

/* All of `groups`, each with its recipes: recipes/, kinds/ and tags/. */
view *view_of_groups(arena *a, const page_maker *by, const char *path, const char *heading,
                     const recipe_items *shown, const row_groups *groups);

/* One kind or tag at `path`. */
view *view_of_group(arena *a, const page_maker *by, const char *path, const recipe_items *shown,
                    const row_group *of);

/* pages/<slug>/. */
view *view_of_plain(arena *a, const page_maker *by, const plain_page *of);

#endif
