/* Where a Recipe is in JSON-LD, and its values. */
#include "checks.h"

#include "draft/linked.h"

static json_t *document(const char *words) {
    json_t *got = json_loads(words, 0, NULL);
    if (!got)
        fail_msg("%s: no JSON", words);
    return got;
}

static void finds_recipes_wherever_they_stand(void **state) {
    (void)state;
    static const struct {
        const char *document;
        size_t count;
    } rows[] = {
        {"{\"@type\":\"Recipe\"}", 1},
        {"[{\"@type\":\"Recipe\"}]", 1},
        {"{\"@type\":[\"Thing\",\"Recipe\"]}", 1},
        {"{\"@type\":\"http://schema.org/Recipe\"}", 1},
        {"{\"@type\":\"https://schema.org/Recipe\"}", 1},
        {"{\"@type\":\"schema:Recipe\"}", 1},
        {"{\"@graph\":[{\"@type\":\"Person\"},{\"@type\":\"Recipe\"},{\"@type\":\"Recipe\"}]}", 2},
        {"{\"@type\":\"WebPage\",\"mainEntity\":{\"@type\":\"Recipe\"}}", 1},
        {"{\"@type\":\"ItemList\",\"itemListElement\":[{\"item\":{\"@type\":\"Recipe\"}}]}", 1},
        {"{\"@type\":\"recipe\"}", 0}, /* types are told apart by case */
        {"{\"@type\":\"RecipeBook\"}", 0},
        {"{\"type\":\"Recipe\"}", 0},
        {"[\"Recipe\",1,null,true]", 0},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        json_t *got = document(rows[i].document);
        linked_recipes found;
        linked_find(got, &found);
        same_count(rows[i].document, found.count, rows[i].count);
        json_decref(got);
    }
}

static void gets_words(void **state) {
    (void)state;
    static const struct {
        const char *object, *words;
    } rows[] = {
        {"{\"name\":\"Rounds\"}", "Rounds"},
        {"{\"schema:name\":\"Rounds\"}", "Rounds"},
        {"{\"https://schema.org/name\":[{\"@value\":\"Rounds\"}]}", "Rounds"},
        {"{\"name\":{\"@language\":\"en\",\"@value\":\"Rounds\"}}", "Rounds"},
        {"{\"name\":[null,\"\",\"Rounds\",\"Others\"]}", "Rounds"},
        {"{\"name\":8}", "8"},
        {"{\"name\":8.50}", "8.5"},
        {"{\"name\":\"  A &amp; B\"}", "A & B"},
        {"{\"name\":\"\"}", NULL},
        {"{\"name\":true}", NULL},
        {"{\"name\":null}", NULL},
        {"{\"name\":{\"text\":\"x\"}}", NULL},
        {"{\"label\":\"x\"}", NULL},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        json_t *got = document(rows[i].object);
        const char *words = linked_words(a, linked_get(got, "name"));
        same_text(rows[i].object, words ? words : "-", rows[i].words ? rows[i].words : "-");
        json_decref(got);
        arena_free(a);
    }
}

static void follows_ids(void **state) {
    (void)state;
    json_t *got = document("{\"@graph\":[{\"@id\":\"#a\",\"@type\":\"Person\",\"name\":\"Alma\"},"
                           "{\"author\":{\"@id\":\"#a\"},\"editor\":{\"@id\":\"#b\"}}]}");
    const json_t *of = json_array_get(json_object_get(got, "@graph"), 1);
    size_t lookups = 2;
    const json_t *author = linked_resolve(got, json_object_get(of, "author"), &lookups);
    assert_string_equal(json_string_value(json_object_get(author, "name")), "Alma");
    const json_t *editor = json_object_get(of, "editor");
    assert_ptr_equal(linked_resolve(got, editor, &lookups), editor); /* nobody has this id */
    assert_int_equal(lookups, 0);
    const json_t *again = json_object_get(of, "author");
    assert_ptr_equal(linked_resolve(got, again, &lookups), again); /* no more lookups */
    json_decref(got);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(finds_recipes_wherever_they_stand),
        cmocka_unit_test(gets_words),
        cmocka_unit_test(follows_ids),
    };
    return cmocka_run_group_tests_name("linked", tests, NULL, NULL);
}
