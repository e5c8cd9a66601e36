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

#include <stdint.h>

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
typedef struct view_index view_index;

/* A key and what it is told apart by at a glance: its length and three of its bytes. Where the key
 * is a constant, all of it is worked out when the program is compiled. */
typedef struct {
    const char *bytes; /* null within a list */
    uint32_t length, mark;
} view_key;

static inline view_key view_key_of(const char *bytes, size_t length) {
    if (length == 0)
        return (view_key){bytes, 0, 0};
    uint32_t first = (unsigned char)bytes[0], middle = (unsigned char)bytes[length / 2],
             last = (unsigned char)bytes[length - 1];
    return (view_key){bytes, (uint32_t)length,
                      (uint32_t)length << 24 ^ first << 16 ^ middle << 8 ^ last};
}

static inline view_key view_key_named(const char *name) {
    return view_key_of(name, name ? strlen(name) : 0);
}

/* One bit of 64 for a key. */
static inline uint64_t view_key_bit(const view_key *key) {
    return UINT64_C(1) << (key->mark * 2654435769u >> 26);
}

/* Fills one line of a processor's cache. */
struct view {
    view_sort sort;
    union {
        uint32_t count; /* VIEW_LIST, VIEW_OBJECT: children */
        int decimals;   /* VIEW_NUMBER: places at the most when printed */
    };
    view_key key;
    view *next;     /* the next child of the same parent */
    uint64_t marks; /* VIEW_OBJECT: the bits of its keys: most that are not here are seen so */
    union {         /* by its sort */
        double number;
        span bytes; /* VIEW_TEXT */
        struct {    /* VIEW_LIST, VIEW_OBJECT */
            view *first, *last;
            const view_index *index; /* see view_index_children; null: none */
        };
    };
};

view *view_object(arena *a);
view *view_list(arena *a);

/* Each adds a child under `key` to the object `to` (or, with a null key, to the list `to`) and
 * returns it. Adding a key twice keeps both; the first is found. */
static inline view *view_put_object(arena *a, view *to, const char *key);
static inline view *view_put_list(arena *a, view *to, const char *key);
static inline view *view_put_text(arena *a, view *to, const char *key,
                                  const char *words); /* null words: null */
/* The same, but nothing at all for null: for what most rows of a long list do not have. */
static inline void view_put_some(arena *a, view *to, const char *key, const char *words);
static inline view *view_put_span(arena *a, view *to, const char *key, span words);
static inline view *view_put_number(arena *a, view *to, const char *key, double value,
                                    int decimals);
static inline view *view_put_bool(arena *a, view *to, const char *key, bool value);
/* Hangs `child` (made apart, not part of another) under `to`. */
static inline view *view_put(view *to, const char *key, view *child);
/* Shows `shared`, which belongs to many pages and does not change, under `to`: copies its top
 * node alone and borrows the rest. */
static inline view *view_put_shared(arena *a, view *to, const char *key, const view *shared);

/* Shows the children of `more` at the end of `to`, borrowing them; nothing can be put on `to`
 * afterwards. */
void view_put_all(view *to, const view *more);

/* The child of object `of` called `key`, or null. */
const view *view_get(const view *of, view_key key);

/* The same for an `of` that has the bit of `key` among its marks. */
const view *view_find(const view *of, const view_key *key);

/* Makes view_get find the children of the large object `of`, which is complete and does not change
 * any more, without a search: by a table in `a`. */
void view_index_children(arena *a, view *of);

/* Adds `of` as JSON text. `indent`: two spaces a level and line ends, for people; otherwise
 * compact. Numbers that are not finite or past 1e12 are written null. */
void view_write_json(const view *of, bool indent, text *t);

/* -- the same with the key worked out ---------------------------------------------------------- */

view *view_hang(view *to, view_key key, view *child);
view *view_hang_shared(arena *a, view *to, view_key key, const view *shared);
view *view_hang_words(arena *a, view *to, view_key key, const char *words);
view *view_hang_span(arena *a, view *to, view_key key, span words);
view *view_hang_number(arena *a, view *to, view_key key, double value, int decimals);
view *view_hang_bool(arena *a, view *to, view_key key, bool value);

static inline view *view_put(view *to, const char *key, view *child) {
    return view_hang(to, view_key_named(key), child);
}

static inline view *view_put_shared(arena *a, view *to, const char *key, const view *shared) {
    return view_hang_shared(a, to, view_key_named(key), shared);
}

static inline view *view_put_object(arena *a, view *to, const char *key) {
    return view_hang(to, view_key_named(key), view_object(a));
}

static inline view *view_put_list(arena *a, view *to, const char *key) {
    return view_hang(to, view_key_named(key), view_list(a));
}

static inline view *view_put_text(arena *a, view *to, const char *key, const char *words) {
    return view_hang_words(a, to, view_key_named(key), words);
}

static inline void view_put_some(arena *a, view *to, const char *key, const char *words) {
    if (words)
        view_hang_words(a, to, view_key_named(key), words);
}

static inline view *view_put_span(arena *a, view *to, const char *key, span words) {
    return view_hang_span(a, to, view_key_named(key), words);
}

static inline view *view_put_number(arena *a, view *to, const char *key, double value,
                                    int decimals) {
    return view_hang_number(a, to, view_key_named(key), value, decimals);
}

static inline view *view_put_bool(arena *a, view *to, const char *key, bool value) {
    return view_hang_bool(a, to, view_key_named(key), value);
}

#endif
