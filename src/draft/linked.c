#include "draft/linked.h"

#include "base/list.h"
#include "base/number.h"
#include "draft/plain.h"

static const char *const vocabularies[] = {"http://schema.org/", "https://schema.org/",
                                           "schema:", "http://www.schema.org/",
                                           "https://www.schema.org/"};

static const char *without_vocabulary(const char *word) {
    for (size_t i = 0; i < COUNT(vocabularies); i++)
        if (span_begins(span_of(word), vocabularies[i]))
            return word + strlen(vocabularies[i]);
    return word;
}

const char *linked_name(const char *key) {
    return key[0] == '@' ? NULL : without_vocabulary(key);
}

const json_t *linked_get(const json_t *of, const char *name) {
    const json_t *plain = json_object_get(of, name);
    const char *key;
    json_t *value;
    if (plain || !json_is_object(of))
        return plain;
    json_object_foreach((json_t *)of, key, value) {
        const char *bare = linked_name(key);
        if (bare && bare != key && strcmp(bare, name) == 0)
            return value;
    }
    return NULL;
}

static bool is_type(const json_t *type, const char *wanted) {
    const char *word = json_string_value(type);
    return word && strcmp(without_vocabulary(word), wanted) == 0;
}

bool linked_is(const json_t *of, const char *type) {
    const json_t *said = json_object_get(of, "@type");
    for (size_t i = 0; i < json_array_size(said); i++)
        if (is_type(json_array_get(said, i), type))
            return true;
    return is_type(said, type);
}

/* -- walking ----------------------------------------------------------------------------------- */

/* Calls `see` for each object below `at`, from the front. */
typedef void visit(const json_t *object, void *state);

static void walk(const json_t *at, unsigned depth, visit *see, void *state) {
    size_t i;
    const char *key;
    json_t *inside;
    if (depth == LINKED_DEPTH_MOST)
        return;
    json_array_foreach((json_t *)at, i, inside) walk(inside, depth + 1, see, state);
    if (!json_is_object(at))
        return;
    see(at, state);
    json_object_foreach((json_t *)at, key,
                        inside) if (json_is_object(inside) || json_is_array(inside))
        walk(inside, depth + 1, see, state);
}

static void note_recipe(const json_t *object, void *state) {
    linked_recipes *out = state;
    if (linked_is(object, "Recipe") && out->count < LINKED_RECIPES_MOST)
        out->items[out->count++] = object;
}

void linked_find(const json_t *document, linked_recipes *out) {
    out->count = 0;
    walk(document, 0, note_recipe, out);
}

typedef struct {
    const char *id;
    const json_t *best;
} search;

static void note_id(const json_t *object, void *state) {
    search *for_id = state;
    const char *id = json_string_value(json_object_get(object, "@id"));
    if (id && strcmp(id, for_id->id) == 0 &&
        json_object_size(object) > json_object_size(for_id->best))
        for_id->best = object;
}

const json_t *linked_resolve(const json_t *document, const json_t *of, size_t *lookups) {
    const char *id = json_string_value(json_object_get(of, "@id"));
    if (!id || json_object_size(of) > 2 || *lookups == 0)
        return of;
    (*lookups)--;
    search for_id = {id, of};
    walk(document, 0, note_id, &for_id);
    return for_id.best;
}

/* -- words ------------------------------------------------------------------------------------- */

static const char *scalar_words(arena *a, const json_t *value) {
    if (json_is_string(value)) {
        span s = {json_string_value(value), json_string_length(value)};
        span plain = plain_words(a, s);
        return plain.length ? plain.at : NULL;
    }
    if (json_is_number(value))
        return number_copy(a, json_number_value(value), 6);
    return NULL;
}

const char *linked_words(arena *a, const json_t *value) {
    const char *words = NULL;
    for (size_t i = 0; i < json_array_size(value) && !words; i++)
        words = linked_words(a, json_array_get(value, i));
    if (json_is_object(value))
        words = scalar_words(a, json_object_get(value, "@value"));
    return words ? words : scalar_words(a, value);
}
