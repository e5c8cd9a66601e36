/* YAML as a tree with positions, read through libyaml's events, with limits.
 *
 * Every node knows its place, so that later checks can point at it. Anchors and aliases are
 * allowed within the limits; tags are not. Duplicate keys are problems. The tree lives in the
 * arena; strings are terminated. */
#ifndef READ_YAML_H
#define READ_YAML_H

#include "base/list.h"
#include "base/problems.h"

/* Past these a document is refused. */
enum { YAML_DEPTH_MOST = 32, YAML_NODES_MOST = 200000, YAML_BYTES_MOST = 4 * 1024 * 1024 };

typedef enum { YAML_SCALAR, YAML_SEQUENCE, YAML_MAPPING } yaml_sort;

typedef struct yaml_node yaml_node;

typedef struct {
    span key;
    place key_at;
    const yaml_node *value;
} yaml_pair;

struct yaml_node {
    yaml_sort sort;
    place at;
    span scalar;             /* YAML_SCALAR: its text; empty for a null */
    bool quoted;             /* it was written in quotes or as a block */
    const yaml_node **items; /* YAML_SEQUENCE */
    yaml_pair *pairs;        /* YAML_MAPPING, in the order written */
    size_t count;            /* of items or pairs */
};

/* Reads the one document in `bytes`, which starts at line `first_line` of `file` (for front
 * matter). A byte-order mark, CRLF and `...` are fine. Null when there is no document (then
 * nothing was added) or it is broken (then problems were). */
const yaml_node *yaml_read(arena *a, const char *file, span bytes, unsigned first_line,
                           problems *found);

/* The value of `key` in the mapping `node`, or null. */
const yaml_node *yaml_get(const yaml_node *node, const char *key);

/* The scalar of `node` with its place. `node` must be a scalar. */
located yaml_located(const yaml_node *node);

#endif
