#include "site/view_json.h"

#include "base/memory.h"

#include <jansson.h>
#include <stdint.h>

enum { DECIMALS_KEPT = 6 };

static view *from_json(arena *a, const json_t *value);

static view *from_object(arena *a, const json_t *value) {
    view *to = view_object(a);
    const char *key;
    json_t *child;
    /* jansson keeps the order of insertion, and its iteration takes a pointer that is not const */
    json_object_foreach((json_t *)(uintptr_t)value, key, child)
        view_put(to, arena_copy(a, span_of(key)), from_json(a, child));
    return to;
}

static view *from_array(arena *a, const json_t *value) {
    view *to = view_list(a);
    for (size_t i = 0; i < json_array_size(value); i++)
        view_put(to, NULL, from_json(a, json_array_get(value, i)));
    return to;
}

static view *from_json(arena *a, const json_t *value) {
    view *to = ARENA_NEW(a, view);
    switch (json_typeof(value)) {
    case JSON_OBJECT:
        return from_object(a, value);
    case JSON_ARRAY:
        return from_array(a, value);
    case JSON_STRING:
        to->sort = VIEW_TEXT;
        to->bytes = arena_copy_span(a, (span){json_string_value(value), json_string_length(value)});
        break;
    case JSON_INTEGER:
    case JSON_REAL:
        to->sort = VIEW_NUMBER;
        to->number = json_number_value(value);
        to->decimals = DECIMALS_KEPT;
        break;
    case JSON_TRUE:
        to->sort = VIEW_TRUE;
        break;
    case JSON_FALSE:
        to->sort = VIEW_FALSE;
        break;
    case JSON_NULL:
        to->sort = VIEW_NULL;
        break;
    }
    return to;
}

view *view_read_json(arena *a, const char *file, span bytes, problems *found) {
    json_error_t error;
    json_set_alloc_funcs(memory_get, free); /* its own would look like a fault in the file */
    json_t *value = json_loadb(bytes.at, bytes.length, JSON_REJECT_DUPLICATES, &error);
    if (!value) {
        place at = {file, (unsigned)error.line, (unsigned)error.column};
        problem_add(found, at, "JSON as in RFC 8259", "this is no JSON: %s", error.text);
        return NULL;
    }
    view *of = from_json(a, value);
    json_decref(value);
    return of;
}
