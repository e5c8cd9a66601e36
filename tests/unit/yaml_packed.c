/* Packed trees: unpacked, they are what was read. */
#include "reading.h"

#include "read/yaml_packed.h"
#include "reference/reference.h"

static bool same_place(place a, place b) {
    return a.line == b.line && a.column == b.column && strcmp(a.file, b.file) == 0;
}

/* Where the two trees differ, as a place; null when they do not. */
static const place *difference(const yaml_node *a, const yaml_node *b) {
    if (a->sort != b->sort || a->quoted != b->quoted || a->count != b->count ||
        !same_place(a->at, b->at) || !span_equal(a->scalar, b->scalar))
        return &a->at;
    if (a->sort == YAML_SCALAR && b->scalar.at[b->scalar.length] != '\0')
        return &a->at;
    for (size_t i = 0; i < a->count && a->sort == YAML_MAPPING; i++)
        if (!span_equal(a->pairs[i].key, b->pairs[i].key) ||
            !same_place(a->pairs[i].key_at, b->pairs[i].key_at) ||
            b->pairs[i].key.at[b->pairs[i].key.length] != '\0')
            return &a->pairs[i].key_at;
    for (size_t i = 0; i < a->count; i++) {
        const place *below = a->sort == YAML_MAPPING
                                 ? difference(a->pairs[i].value, b->pairs[i].value)
                                 : difference(a->items[i], b->items[i]);
        if (below)
            return below;
    }
    return NULL;
}

static const struct {
    const char *name, *yaml;
} trees[] = {
    {"a word", "word"},
    {"an empty list", "[]"},
    {"empty braces", "{}"},
    {"nulls and quotes", "a:\nb: ''\nc: \"x\"\n"},
    {"nested", "- {a: [1, {b: [2, 3]}], c: {d: e}}\n- [[[]]]\n"},
    {"aliases", "- &x {a: [1]}\n- *x\n"},
    {"long words",
     "a: 1234567890123456789012345678901234567890123456789012345678901234567890123456789012345678"
     "9012345678901234567890123456789012345678901234567890\n"},
};

static void test_round_trip(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(trees); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        text packed = TEXT_EMPTY;
        const yaml_node *root = yaml_read(a, "f", span_of(trees[i].yaml), 200, &found);
        yaml_pack(root, &packed);
        if (difference(root, yaml_unpack(a, "f", text_span(&packed))))
            fail_msg("%s: came back another", trees[i].name);
        text_free(&packed);
        arena_free(a);
    }
}

static void expect_same(const reference_file *file) {
    arena *a = arena_new();
    problems found = problems_in(a);
    const yaml_node *root = yaml_read(a, file->name, file->bytes, 1, &found);
    if (!root || found.count)
        fail_msg("%s: %s", file->name, printed(a, &found));
    const place *at = difference(root, yaml_unpack(a, file->name, file->tree));
    if (at)
        fail_msg("%s:%u: the tree is not what the text says", file->name, at->line);
    arena_free(a);
}

static void test_reference(void **state) {
    (void)state;
    for (size_t i = 0; i < reference_pantry_count; i++)
        expect_same(&reference_pantry[i]);
    for (size_t i = 0; i < reference_rules_count; i++)
        expect_same(&reference_rules[i]);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_round_trip),
        cmocka_unit_test(test_reference),
    };
    return cmocka_run_group_tests_name("yaml_packed", tests, NULL, NULL);
}
