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

view *view_put(view *to, const char *key, view *child) {
    child->key = key;
    child->key_length = key ? strlen(key) : 0;
    child->next = NULL;
    if (to->last)
        to->last->next = child;
    else
        to->first = child;
    to->last = child;
    to->count++;
    return child;
}

view *view_put_shared(arena *a, view *to, const char *key, const view *shared) {
    view *child = view_new(a, shared->sort);
    *child = *shared;
    return view_put(to, key, child);
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
}

view *view_put_object(arena *a, view *to, const char *key) {
    return view_put(to, key, view_object(a));
}

view *view_put_list(arena *a, view *to, const char *key) {
    return view_put(to, key, view_list(a));
}

view *view_put_span(arena *a, view *to, const char *key, span words) {
    view *child = view_new(a, VIEW_TEXT);
    child->bytes = words;
    return view_put(to, key, child);
}

view *view_put_text(arena *a, view *to, const char *key, const char *words) {
    if (!words)
        return view_put(to, key, view_new(a, VIEW_NULL));
    return view_put_span(a, to, key, span_of(words));
}

void view_put_some(arena *a, view *to, const char *key, const char *words) {
    if (words)
        view_put_text(a, to, key, words);
}

view *view_put_number(arena *a, view *to, const char *key, double value, int decimals) {
    view *child = view_new(a, VIEW_NUMBER);
    child->number = value;
    child->decimals = (unsigned char)decimals;
    return view_put(to, key, child);
}

view *view_put_bool(arena *a, view *to, const char *key, bool value) {
    return view_put(to, key, view_new(a, value ? VIEW_TRUE : VIEW_FALSE));
}

const view *view_get(const view *of, const char *key, size_t length) {
    if (!of || of->sort != VIEW_OBJECT)
        return NULL;
    for (const view *child = of->first; child; child = child->next)
        if (child->key_length == length && memcmp(child->key, key, length) == 0)
            return child;
    return NULL;
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
            text_add_json(t, (span){child->key, child->key_length});
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
