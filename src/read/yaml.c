#include "read/yaml.h"

#include "base/memory.h"
#include "read/encoding.h"
#include "read/yaml_fault.h"

#include <yaml.h>

/* No file of ours comes near these; they keep every search here short. */
enum { KEYS_MOST = 256, ANCHORS_MOST = 100 };

/* A node with a name ("&name") that aliases ("*name") stand for. */
typedef struct {
    const char *name;
    const yaml_node *node; /* null while it is still being read */
    size_t nodes;          /* how many it holds, itself and aliases in it counted */
    unsigned height;       /* levels it is deep, itself counted */
} anchor;

typedef struct {
    anchor *items;
    size_t count, capacity;
} anchors;

typedef struct {
    const yaml_node **items;
    size_t count, capacity;
} node_list;

typedef struct {
    yaml_pair *items;
    size_t count, capacity;
} pair_list;

typedef struct {
    arena *home;
    yaml_source source;
    problems *found;
    yaml_parser_t parser;
    yaml_event_t event; /* the one being looked at */
    bool has_event;
    size_t nodes; /* read so far, those that aliases stand for counted each time */
    anchors named;
} reader;

static const yaml_node *read_node(reader *r, unsigned depth, unsigned *height);

static void drop_event(reader *r) {
    if (r->has_event)
        yaml_event_delete(&r->event);
    r->has_event = false;
}

static bool next(reader *r) {
    drop_event(r);
    r->has_event = yaml_parser_parse(&r->parser, &r->event);
    if (!r->has_event)
        yaml_fault_add(&r->source, &r->parser, r->found);
    return r->has_event;
}

static place here(const reader *r) {
    return yaml_source_place(&r->source, r->event.start_mark);
}

static bool within_limits(reader *r, unsigned depth) {
    if (depth > YAML_DEPTH_MOST)
        problem_add(r->found, here(r), "keep lists and keys flatter",
                    "this is nested more than %d levels deep", YAML_DEPTH_MOST);
    else if (r->nodes > YAML_NODES_MOST)
        problem_add(r->found, here(r), "split the file, and use fewer aliases (*name)",
                    "the file holds more than %d values, those repeated by aliases counted",
                    YAML_NODES_MOST);
    else
        return true;
    return false;
}

/* -- anchors and aliases: an alias shares the node, but counts as a copy would ---------------- */

static bool name_anchor(reader *r, const yaml_char_t *name) {
    if (r->named.count == ANCHORS_MOST) {
        problem_add(r->found, here(r), "write the values out",
                    "the file has more than %d anchors (&name)", ANCHORS_MOST);
        return false;
    }
    LIST_ADD(r->home, &r->named,
             (anchor){arena_copy(r->home, span_of((const char *)name)), 0, 0, 0});
    return true;
}

static const anchor *find_anchor(const reader *r, const char *name) {
    for (size_t i = r->named.count; i > 0; i--)
        if (strcmp(r->named.items[i - 1].name, name) == 0)
            return &r->named.items[i - 1];
    return NULL;
}

static const yaml_node *read_alias(reader *r, unsigned depth, unsigned *height) {
    const char *name = (const char *)r->event.data.alias.anchor;
    const anchor *of = find_anchor(r, name);
    if (!of || !of->node) {
        problem_add(r->found, here(r), "put the value in double quotes if no alias is meant",
                    of ? "the alias *%s stands inside what it stands for"
                       : "the alias *%s stands for nothing above it",
                    name);
        return NULL;
    }
    r->nodes += of->nodes - 1;
    *height = of->height;
    return within_limits(r, depth + of->height - 1) ? of->node : NULL;
}

/* -- tags: only those of YAML's core, where they fit ------------------------------------------ */

#define CORE "tag:yaml.org,2002:"
static const struct {
    const char *tag;
    yaml_sort sort;
} core_tags[] = {{"!", YAML_SCALAR},          {CORE "str", YAML_SCALAR},
                 {CORE "int", YAML_SCALAR},   {CORE "float", YAML_SCALAR},
                 {CORE "bool", YAML_SCALAR},  {CORE "null", YAML_SCALAR},
                 {CORE "seq", YAML_SEQUENCE}, {CORE "map", YAML_MAPPING}};

static bool tag_is_fine(reader *r, const yaml_char_t *tag, yaml_sort sort) {
    for (size_t i = 0; tag && i < COUNT(core_tags); i++)
        if (core_tags[i].sort == sort && strcmp((const char *)tag, core_tags[i].tag) == 0)
            return true;
    if (tag)
        problem_add(r->found, here(r), "take it out, or put the value in double quotes",
                    "the tag %s means nothing here", (const char *)tag);
    return !tag;
}

/* -- scalars, sequences, mappings
 * ------------------------------------------------------------------ */

static bool is_null(span words) {
    static const char *const nulls[] = {"", "~", "null", "Null", "NULL"};
    for (size_t i = 0; i < COUNT(nulls); i++)
        if (span_is(words, nulls[i]))
            return true;
    return false;
}

static bool read_scalar(reader *r, yaml_node *node) {
    span words = {(const char *)r->event.data.scalar.value, r->event.data.scalar.length};
    const yaml_char_t *tag = r->event.data.scalar.tag;
    yaml_scalar_style_t style = r->event.data.scalar.style;
    node->quoted =
        style != YAML_PLAIN_SCALAR_STYLE || (tag && span_ends(span_of((const char *)tag), "str"));
    if (!node->quoted && is_null(words))
        words.length = 0;
    /* The line end that closes a block (| or >) is no part of what a baker means to say. */
    while ((style == YAML_LITERAL_SCALAR_STYLE || style == YAML_FOLDED_SCALAR_STYLE) &&
           words.length && words.at[words.length - 1] == '\n')
        words.length--;
    node->scalar = arena_copy_span(r->home, words);
    return tag_is_fine(r, tag, YAML_SCALAR);
}

static bool read_items(reader *r, yaml_node *node, unsigned depth, unsigned *height) {
    node_list list = {0};
    if (!tag_is_fine(r, r->event.data.sequence_start.tag, YAML_SEQUENCE))
        return false;
    for (;;) {
        unsigned below = 0;
        if (!next(r))
            return false;
        if (r->event.type == YAML_SEQUENCE_END_EVENT)
            break;
        const yaml_node *item = read_node(r, depth + 1, &below);
        if (!item)
            return false;
        LIST_ADD(r->home, &list, item);
        *height = below + 1 > *height ? below + 1 : *height;
    }
    node->items = list.items;
    node->count = list.count;
    return true;
}

static const yaml_pair *find_pair(const pair_list *pairs, span key) {
    for (size_t i = 0; i < pairs->count; i++)
        if (span_equal(pairs->items[i].key, key))
            return &pairs->items[i];
    return NULL;
}

static bool add_pair(reader *r, pair_list *pairs, yaml_pair pair) {
    const yaml_pair *earlier = find_pair(pairs, pair.key);
    if (earlier) {
        char *hint = arena_format(r->found->home, "it stands on line %u already: keep one of them",
                                  earlier->key_at.line);
        problem_add(r->found, pair.key_at, hint, "the key \"%.*s\" is there twice", SPAN(pair.key));
        return true; /* the first stays; go on looking for more */
    }
    if (pairs->count == KEYS_MOST) {
        problem_add(r->found, pair.key_at, "is a list meant? its items begin with \"- \"",
                    "more than %d keys stand together here", KEYS_MOST);
        return false;
    }
    LIST_ADD(r->home, pairs, pair);
    return true;
}

/* The key that the event begins, then its value. */
static bool read_pair(reader *r, yaml_pair *pair, unsigned depth, unsigned *height) {
    unsigned key_height = 0, below = 0;
    const yaml_node *key = read_node(r, depth + 1, &key_height);
    if (!key)
        return false;
    if (key->sort != YAML_SCALAR) {
        problem_add(r->found, key->at, "put the value in double quotes",
                    "a list or braces stand where a key is expected");
        return false;
    }
    if (!next(r))
        return false;
    *pair = (yaml_pair){key->scalar, key->at, read_node(r, depth + 1, &below)};
    *height = below + 1 > *height ? below + 1 : *height;
    return pair->value != NULL;
}

static bool read_pairs(reader *r, yaml_node *node, unsigned depth, unsigned *height) {
    pair_list list = {0};
    if (!tag_is_fine(r, r->event.data.mapping_start.tag, YAML_MAPPING))
        return false;
    for (;;) {
        yaml_pair pair;
        if (!next(r))
            return false;
        if (r->event.type == YAML_MAPPING_END_EVENT)
            break;
        if (!read_pair(r, &pair, depth, height) || !add_pair(r, &list, pair))
            return false;
    }
    node->pairs = list.items;
    node->count = list.count;
    return true;
}

static const yaml_char_t *anchor_of(const yaml_event_t *event) {
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        return event->data.scalar.anchor;
    case YAML_SEQUENCE_START_EVENT:
        return event->data.sequence_start.anchor;
    case YAML_MAPPING_START_EVENT:
        return event->data.mapping_start.anchor;
    default:
        return NULL;
    }
}

static bool fill_node(reader *r, yaml_node *node, unsigned depth, unsigned *height) {
    switch (r->event.type) {
    case YAML_SEQUENCE_START_EVENT:
        node->sort = YAML_SEQUENCE;
        return read_items(r, node, depth, height);
    case YAML_MAPPING_START_EVENT:
        node->sort = YAML_MAPPING;
        return read_pairs(r, node, depth, height);
    default:
        node->sort = YAML_SCALAR;
        return read_scalar(r, node);
    }
}

/* Reads the node that the event begins; null when it is broken (a problem was added). `*height`
 * is how many levels deep it is. */
static const yaml_node *read_node(reader *r, unsigned depth, unsigned *height) {
    size_t before = r->nodes++;
    if (!within_limits(r, depth))
        return NULL;
    if (r->event.type == YAML_ALIAS_EVENT)
        return read_alias(r, depth, height);
    const yaml_char_t *name = anchor_of(&r->event);
    size_t number = r->named.count;
    if (name && !name_anchor(r, name))
        return NULL;
    yaml_node *node = ARENA_NEW(r->home, yaml_node);
    node->at = here(r);
    *height = 1;
    if (!fill_node(r, node, depth, height))
        return NULL;
    if (name)
        r->named.items[number] =
            (anchor){r->named.items[number].name, node, r->nodes - before, *height};
    return node;
}

/* -- the document
 * ---------------------------------------------------------------------------------- */

static bool nothing_follows(reader *r) {
    if (!next(r) || !next(r)) /* the document's end, then the stream's */
        return false;
    if (r->event.type == YAML_STREAM_END_EVENT)
        return true;
    problem_add(r->found, here(r), "keep one document in a file, without lines of three hyphens",
                "a second document begins here");
    return false;
}

static const yaml_node *read_document(reader *r) {
    unsigned height = 0;
    if (!next(r) || !next(r) || r->event.type == YAML_STREAM_END_EVENT)
        return NULL;
    if (!next(r))
        return NULL;
    const yaml_node *root = read_node(r, 1, &height);
    if (!root || !nothing_follows(r))
        return NULL;
    bool empty = root->sort == YAML_SCALAR && !root->quoted && root->scalar.length == 0;
    return empty ? NULL : root;
}

const yaml_node *yaml_read(arena *a, const char *file, span bytes, unsigned first_line,
                           problems *found) {
    bytes = encoding_skip_mark(bytes);
    if (bytes.length > YAML_BYTES_MOST) {
        problem_add(found, (place){file, first_line, 1}, "split it", "this is longer than %d MB",
                    YAML_BYTES_MOST / (1024 * 1024));
        return NULL;
    }
    reader r = {.home = a, .source = {file, bytes, first_line}, .found = found};
    if (!yaml_parser_initialize(&r.parser))
        memory_failed();
    yaml_parser_set_encoding(&r.parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&r.parser, (const yaml_char_t *)(bytes.at ? bytes.at : ""),
                                 bytes.length);
    const yaml_node *root = read_document(&r);
    drop_event(&r);
    yaml_parser_delete(&r.parser);
    return root;
}

const yaml_node *yaml_get(const yaml_node *node, const char *key) {
    if (!node || node->sort != YAML_MAPPING)
        return NULL;
    span wanted = span_of(key);
    for (size_t i = 0; i < node->count; i++)
        if (span_equal(node->pairs[i].key, wanted))
            return node->pairs[i].value;
    return NULL;
}

located yaml_located(const yaml_node *node) {
    return (located){node->scalar, node->at};
}
