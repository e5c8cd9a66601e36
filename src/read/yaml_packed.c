#include "read/yaml_packed.h"

/* The form, numbers in groups of seven bits, low ones first, the high bit meaning "more follows":
 *
 *     tree      number of nodes, of items of sequences, of pairs; node
 *     node      sort and whether quoted (x4), line, column, then by its sort
 *     scalar    words
 *     sequence  count, nodes
 *     mapping   count, then for each pair: line, column and words of the key, node
 *     words     length, bytes, a zero
 *
 * The counts in front let unpacking take its memory in three pieces. */

/* -- packing ---------------------------------------------------------------------------------- */

static void add_number(text *out, size_t number) {
    for (; number >= 0x80; number >>= 7)
        text_add_char(out, (char)(0x80 | (number & 0x7F)));
    text_add_char(out, (char)number);
}

static void add_words(text *out, span words) {
    add_number(out, words.length);
    text_add_span(out, words);
    text_add_char(out, '\0');
}

static void add_place(text *out, place at) {
    add_number(out, at.line);
    add_number(out, at.column);
}

typedef struct {
    size_t nodes, items, pairs;
} tree_size;

static void count_tree(const yaml_node *node, tree_size *size) {
    size->nodes++;
    if (node->sort == YAML_SEQUENCE)
        size->items += node->count;
    if (node->sort == YAML_MAPPING)
        size->pairs += node->count;
    for (size_t i = 0; node->sort != YAML_SCALAR && i < node->count; i++)
        count_tree(node->sort == YAML_MAPPING ? node->pairs[i].value : node->items[i], size);
}

static void add_node(text *out, const yaml_node *node) {
    add_number(out, (size_t)node->sort | (size_t)node->quoted << 2);
    add_place(out, node->at);
    if (node->sort == YAML_SCALAR) {
        add_words(out, node->scalar);
        return;
    }
    add_number(out, node->count);
    for (size_t i = 0; i < node->count; i++) {
        if (node->sort == YAML_MAPPING) {
            add_place(out, node->pairs[i].key_at);
            add_words(out, node->pairs[i].key);
        }
        add_node(out, node->sort == YAML_MAPPING ? node->pairs[i].value : node->items[i]);
    }
}

void yaml_pack(const yaml_node *root, text *out) {
    tree_size size = {0};
    count_tree(root, &size);
    add_number(out, size.nodes);
    add_number(out, size.items);
    add_number(out, size.pairs);
    add_node(out, root);
}

/* -- unpacking -------------------------------------------------------------------------------- */

typedef struct {
    const char *file;
    const unsigned char *at; /* next byte */
    yaml_node *nodes;        /* next free one of each */
    const yaml_node **items;
    yaml_pair *pairs;
} unpacker;

static size_t take_number(unpacker *u) {
    size_t number = 0;
    for (unsigned shift = 0;; shift += 7) {
        unsigned char byte = *u->at++;
        number |= (size_t)(byte & 0x7F) << shift;
        if (byte < 0x80)
            return number;
    }
}

static span take_words(unpacker *u) {
    size_t length = take_number(u);
    span words = {(const char *)u->at, length};
    u->at += length + 1;
    return words;
}

static place take_place(unpacker *u) {
    unsigned line = (unsigned)take_number(u);
    return (place){u->file, line, (unsigned)take_number(u)};
}

static const yaml_node *take_node(unpacker *u);

static void take_items(unpacker *u, yaml_node *node) {
    const yaml_node **items = u->items;
    u->items += node->count;
    for (size_t i = 0; i < node->count; i++)
        items[i] = take_node(u);
    node->items = items;
}

static void take_pairs(unpacker *u, yaml_node *node) {
    yaml_pair *pairs = u->pairs;
    u->pairs += node->count;
    for (size_t i = 0; i < node->count; i++) {
        pairs[i].key_at = take_place(u);
        pairs[i].key = take_words(u);
        pairs[i].value = take_node(u);
    }
    node->pairs = pairs;
}

static const yaml_node *take_node(unpacker *u) {
    yaml_node *node = u->nodes++;
    size_t head = take_number(u);
    node->sort = (yaml_sort)(head & 3);
    node->quoted = head >> 2;
    node->at = take_place(u);
    if (node->sort == YAML_SCALAR) {
        node->scalar = take_words(u);
        return node;
    }
    node->count = take_number(u);
    if (node->sort == YAML_SEQUENCE)
        take_items(u, node);
    else
        take_pairs(u, node);
    return node;
}

const yaml_node *yaml_unpack(arena *a, const char *file, span packed) {
    unpacker u = {.file = file, .at = (const unsigned char *)packed.at};
    u.nodes = ARENA_ARRAY(a, yaml_node, take_number(&u));
    u.items = ARENA_ARRAY(a, const yaml_node *, take_number(&u));
    u.pairs = ARENA_ARRAY(a, yaml_pair, take_number(&u));
    return take_node(&u);
}
