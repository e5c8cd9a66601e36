#include "site/view.h"

#include "base/number.h"

#include <math.h>

/* Beyond this the number writer gives up; JSON has no word for that but null. */
static const double LARGEST_WRITTEN = 1e12;

static view *view_new(arena *a, view_sort sort) {
    view *one = ARENA_NEW(a, view);
    one->sort = sort;
    return one;
}

view *view_object(arena *a) {
    return view_new(a, VIEW_OBJECT);
}

view *view_list(arena *a) {
    return view_new(a, VIEW_LIST);
}

view *view_hang(view *to, view_key key, view *child) {
    if (to->sort == VIEW_OBJECT)
        to->marks |= view_key_bit(&key);
    child->key = key;
    child->next = NULL;
    if (to->last)
        to->last->next = child;
    else
        to->first = child;
    to->last = child;
    to->count++;
    return child;
}

view *view_hang_shared(arena *a, view *to, view_key key, const view *shared) {
    view *child = view_new(a, shared->sort);
    *child = *shared;
    return view_hang(to, key, child);
}

void view_put_all(view *to, const view *more) {
    if (!more->first)
        return;
    if (to->last)
        to->last->next = more->first;
    else
        to->first = more->first;
    to->last = more->last;
    to->count += more->count;
    to->marks |= more->marks;
}

view *view_hang_span(arena *a, view *to, view_key key, span words) {
    view *child = view_new(a, VIEW_TEXT);
    child->bytes = words;
    return view_hang(to, key, child);
}

view *view_hang_words(arena *a, view *to, view_key key, const char *words) {
    if (!words)
        return view_hang(to, key, view_new(a, VIEW_NULL));
    return view_hang_span(a, to, key, span_of(words));
}

view *view_hang_number(arena *a, view *to, view_key key, double value, int decimals) {
    view *child = view_new(a, VIEW_NUMBER);
    child->number = value;
    child->decimals = decimals;
    return view_hang(to, key, child);
}

view *view_hang_bool(arena *a, view *to, view_key key, bool value) {
    return view_hang(to, key, view_new(a, value ? VIEW_TRUE : VIEW_FALSE));
}

static bool same_keys(const view_key *a, const view_key *b) {
    return a->mark == b->mark && a->length == b->length &&
           memcmp(a->bytes, b->bytes, a->length) == 0;
}

/* Places by what tells keys apart; half of them at the most are taken. */
struct view_index {
    const view **slots;
    size_t last; /* one less than there are, all ones in its bits */
};

/* Where `key` is in the index, or would be. */
static size_t slot_of(const view_index *index, const view_key *key) {
    size_t i = (key->mark * 2654435769u >> 8) & index->last;
    while (index->slots[i] && !same_keys(&index->slots[i]->key, key))
        i = (i + 1) & index->last;
    return i;
}

void view_index_children(arena *a, view *of) {
    if (of->sort != VIEW_OBJECT)
        return;
    view_index *index = ARENA_NEW(a, view_index);
    size_t slots = 16;
    while (slots < 2 * (size_t)of->count)
        slots *= 2;
    index->slots = ARENA_ARRAY(a, const view *, slots);
    index->last = slots - 1;
    for (const view *child = of->first; child; child = child->next) {
        size_t i = slot_of(index, &child->key);
        if (!index->slots[i]) /* the first of a name stands */
            index->slots[i] = child;
    }
    of->index = index;
}

const view *view_find(const view *of, const view_key *key) {
    if (of->index)
        return of->index->slots[slot_of(of->index, key)];
    for (const view *child = of->first; child; child = child->next)
        if (same_keys(&child->key, key))
            return child;
    return NULL;
}

const view *view_get(const view *of, view_key key) {
    bool may_have = of && of->sort == VIEW_OBJECT && of->marks & view_key_bit(&key);
    return may_have ? view_find(of, &key) : NULL;
}

/* The line end and two spaces a level, where the JSON is for people. */
static void break_line(bool indent, size_t level, text *t) {
    if (!indent)
        return;
    text_add_char(t, '\n');
    for (size_t i = 0; i < level; i++)
        text_add(t, "  ");
}

static void write_value(const view *of, bool indent, size_t level, text *t);

static void write_children(const view *of, bool indent, size_t level, text *t) {
    for (const view *child = of->first; child; child = child->next) {
        break_line(indent, level + 1, t);
        if (of->sort == VIEW_OBJECT) {
            text_add_json(t, (span){child->key.bytes, child->key.length});
            text_add(t, indent ? ": " : ":");
        }
        write_value(child, indent, level + 1, t);
        if (child->next)
            text_add_char(t, ',');
    }
    if (of->first)
        break_line(indent, level, t);
}

static void write_number(const view *of, text *t) {
    if (isfinite(of->number) && fabs(of->number) <= LARGEST_WRITTEN)
        number_add(t, of->number, of->decimals);
    else
        text_add(t, "null");
}

static void write_value(const view *of, bool indent, size_t level, text *t) {
    switch (of->sort) {
    case VIEW_NULL:
        text_add(t, "null");
        break;
    case VIEW_FALSE:
        text_add(t, "false");
        break;
    case VIEW_TRUE:
        text_add(t, "true");
        break;
    case VIEW_NUMBER:
        write_number(of, t);
        break;
    case VIEW_TEXT:
        text_add_json(t, of->bytes);
        break;
    case VIEW_LIST:
    case VIEW_OBJECT:
        text_add_char(t, of->sort == VIEW_LIST ? '[' : '{');
        write_children(of, indent, level, t);
        text_add_char(t, of->sort == VIEW_LIST ? ']' : '}');
        break;
    }
}

void view_write_json(const view *of, bool indent, text *t) {
    write_value(of, indent, 0, t);
}
