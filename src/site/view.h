/* A view: what a page shows, as one JSON document in an arena.
 *
 * A tree of objects, lists, texts, numbers and booleans. It is what templates are filled from,
 * what is written as recipe.json and what --json prints. Not jansson: a recipe page has some
 * thousand values, and one allocation and one reference count for each would cost more than all
 * the computing. Building is a few pointer writes a value; nothing is freed but the arena.
 *
 * Text given to view_put_text is borrowed (arena or constant); keys are constants. */
#ifndef SITE_VIEW_H
#define SITE_VIEW_H

#include "base/arena.h"
#include "base/text.h"

typedef enum {
    VIEW_NULL,
    VIEW_FALSE,
    VIEW_TRUE,
    VIEW_NUMBER,
    VIEW_TEXT,
    VIEW_LIST,
    VIEW_OBJECT
} view_sort;

typedef struct view view;

struct view {
    view_sort sort;
    unsigned char decimals; /* VIEW_NUMBER: places at the most when printed */
    const char *key;        /* within an object */
    size_t key_length;
    double number;
    span bytes;         /* VIEW_TEXT */
    view *first, *last; /* children, in order */
    view *next;         /* the next child of the same parent */
    size_t count;       /* of children */
};

view *view_object(arena *a);
view *view_list(arena *a);

/* Each adds a child under `key` to the object `to` (or, with a null key, to the list `to`) and
 * returns it. Adding a key twice keeps both; the first is found. */
view *view_put_object(arena *a, view *to, const char *key);
view *view_put_list(arena *a, view *to, const char *key);
view *view_put_text(arena *a, view *to, const char *key, const char *words); /* null words: null */
/* The same, but nothing at all for null: for what most rows of a long list do not have. */
void view_put_some(arena *a, view *to, const char *key, const char *words);
view *view_put_span(arena *a, view *to, const char *key, span words);
view *view_put_number(arena *a, view *to, const char *key, double value, int decimals);
view *view_put_bool(arena *a, view *to, const char *key, bool value);
/* Hangs `child` (made apart, not part of another) under `to`. */
view *view_put(view *to, const char *key, view *child);
/* Shows `shared`, which belongs to many pages and does not change, under `to`: copies its top
 * node alone and borrows the rest. */
view *view_put_shared(arena *a, view *to, const char *key, const view *shared);

/* Shows the children of `more` at the end of `to`, borrowing them; nothing can be put on `to`
 * afterwards. */
void view_put_all(view *to, const view *more);

/* The child of object `of` called `key`, or null. */
const view *view_get(const view *of, const char *key, size_t length);

/* Adds `of` as JSON text. `indent`: two spaces a level and line ends, for people; otherwise
 * compact. Numbers that are not finite or past 1e12 are written null. */
void view_write_json(const view *of, bool indent, text *t);

#endif
