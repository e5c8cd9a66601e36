#include "draft/microdata.h"

#include "base/list.h"

enum { ITEM_DEPTH_MOST = 16, ITEMS_MOST = 64 };

static json_t *string_of(span words) {
    return json_stringn(words.at, words.length); /* null when it is not UTF-8 */
}

/* Adds `value` (taken, may be null) to the property; a second one makes a list of it. */
static void put_take(json_t *object, const char *name, json_t *value) {
    json_t *there = json_object_get(object, name);
    if (!value)
        return;
    if (!there) {
        json_object_set_new(object, name, value);
        return;
    }
    if (!json_is_array(there)) {
        json_t *list = json_array();
        json_array_append(list, there);
        json_object_set_new(object, name, list);
        there = list;
    }
    json_array_append_new(there, value);
}

static json_t *words_of(const html_node *at) {
    text words = TEXT_EMPTY;
    html_add_words(at, false, &words);
    json_t *value = string_of(text_span(&words));
    text_free(&words);
    return value;
}

/* The attribute that holds an element's value, where it is not its words. */
static const char *attribute_value(const html_node *at) {
    static const struct {
        const char *element, *attribute;
    } rows[] = {{"meta", "content"}, {"a", "href"},      {"link", "href"},     {"area", "href"},
                {"img", "src"},      {"source", "src"},  {"audio", "src"},     {"video", "src"},
                {"iframe", "src"},   {"embed", "src"},   {"time", "datetime"}, {"data", "value"},
                {"meter", "value"},  {"object", "data"}, {"abbr", "title"}};
    for (size_t i = 0; i < COUNT(rows); i++)
        if (html_is(at, rows[i].element))
            return html_attribute(at, rows[i].attribute);
    return NULL;
}

/* -- microdata --------------------------------------------------------------------------------- */

static json_t *item_of(const html_node *at, unsigned depth);

/* Pages put the value into `content` on any element, which the standard has for meta alone. */
static json_t *property_value(const html_node *at, unsigned depth) {
    if (html_attribute(at, "itemscope"))
        return item_of(at, depth + 1);
    const char *held = html_attribute(at, "content");
    if (!held)
        held = html_is(at, "abbr") ? NULL : attribute_value(at);
    return held ? string_of(span_of(held)) : words_of(at);
}

static void put_properties(json_t *item, const html_node *at, unsigned depth) {
    span rest = span_of(html_attribute(at, "itemprop"));
    for (span name = span_next_word(&rest); name.length; name = span_next_word(&rest)) {
        char key[64];
        if (name.length >= sizeof key)
            continue;
        memcpy(key, name.at, name.length);
        key[name.length] = '\0';
        put_take(item, key, property_value(at, depth));
    }
}

static json_t *item_of(const html_node *root, unsigned depth) {
    json_t *item = json_object();
    span types = span_of(html_attribute(root, "itemtype"));
    json_object_set_new(item, "@type", json_array());
    for (span type = span_next_word(&types); type.length; type = span_next_word(&types))
        json_array_append_new(json_object_get(item, "@type"), string_of(type));
    if (depth >= ITEM_DEPTH_MOST)
        return item;
    const html_node *at = html_next(root, root);
    while (at) {
        put_properties(item, at, depth);
        bool inner = html_attribute(at, "itemscope") != NULL;
        at = inner ? html_next_beside(at, root) : html_next(at, root);
    }
    return item;
}

static bool is_recipe_item(const html_node *at) {
    static const char *const types[] = {"http://schema.org/Recipe", "https://schema.org/Recipe",
                                        "http://www.schema.org/Recipe",
                                        "https://www.schema.org/Recipe"};
    for (size_t i = 0; i < COUNT(types); i++)
        if (html_has_word(at, "itemtype", types[i]))
            return true;
    return false;
}

json_t *microdata_recipes(const html_node *page) {
    json_t *list = json_array();
    for (const html_node *at = page; at && json_array_size(list) < ITEMS_MOST;) {
        bool found = is_recipe_item(at);
        if (found)
            json_array_append_new(list, item_of(at, 0));
        at = found ? html_next_beside(at, page) : html_next(at, page);
    }
    return list;
}

/* -- classes ----------------------------------------------------------------------------------- */

static const struct {
    const char *word, *property;
} classes[] = {
    {"p-name", "name"},
    {"p-summary", "description"},
    {"p-ingredient", "recipeIngredient"},
    {"p-yield", "recipeYield"},
    {"e-instructions", "recipeInstructions"},
    {"p-instructions", "recipeInstructions"},
    {"dt-duration", "totalTime"},
    {"dt-published", "datePublished"},
    {"p-author", "author"},
    {"p-category", "keywords"},
    {"p-nutrition", "nutrition"},
    {"u-photo", "image"},
    {"u-url", "url"},
    /* hRecipe 0.22 */
    {"fn", "name"},
    {"summary", "description"},
    {"ingredient", "recipeIngredient"},
    {"yield", "recipeYield"},
    {"instructions", "recipeInstructions"},
    {"instruction", "recipeInstructions"},
    {"duration", "totalTime"},
    {"published", "datePublished"},
    {"author", "author"},
    {"tag", "keywords"},
    {"nutrition", "nutrition"},
    {"photo", "image"},
};
enum { NEW_CLASSES = 13 };

static const char *property_of(const html_node *at, bool elder) {
    size_t from = elder ? NEW_CLASSES : 0, to = elder ? COUNT(classes) : NEW_CLASSES;
    for (size_t i = from; i < to; i++)
        if (html_has_word(at, "class", classes[i].word))
            return classes[i].property;
    return NULL;
}

/* Links stand for their words but where an address is asked for. */
static json_t *class_value(const html_node *at, const char *property) {
    bool address = strcmp(property, "image") == 0 || strcmp(property, "url") == 0;
    const char *held = html_is(at, "a") && !address ? NULL : attribute_value(at);
    return held && held[0] ? string_of(span_of(held)) : words_of(at);
}

static json_t *object_of_classes(const html_node *root, bool elder) {
    json_t *object = json_object();
    json_object_set_new(object, "@type", json_string("Recipe"));
    const html_node *at = html_next(root, root);
    while (at) {
        const char *property = property_of(at, elder);
        if (property)
            put_take(object, property, class_value(at, property));
        at = property ? html_next_beside(at, root) : html_next(at, root);
    }
    return object;
}

json_t *class_recipes(const html_node *page) {
    json_t *list = json_array();
    for (const html_node *at = page; at && json_array_size(list) < ITEMS_MOST;) {
        bool newer = html_has_word(at, "class", "h-recipe");
        bool elder = !newer && html_has_word(at, "class", "hrecipe");
        if (newer || elder)
            json_array_append_new(list, object_of_classes(at, elder));
        at = newer || elder ? html_next_beside(at, page) : html_next(at, page);
    }
    return list;
}
