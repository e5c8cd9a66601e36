/* A YAML tree as bytes: made from the reference when the program is built, so that it starts
 * without scanning half a megabyte of text. */
#ifndef READ_YAML_PACKED_H
#define READ_YAML_PACKED_H

#include "base/text.h"
#include "read/yaml.h"

/* Adds the packed form of `root` to `out`. Aliases become copies. */
void yaml_pack(const yaml_node *root, text *out);

/* The tree that yaml_pack made `packed` from, its places in `file`. Nodes are in the arena; words
 * are borrowed from `packed`. Trusts the bytes: only for what was compiled in. */
const yaml_node *yaml_unpack(arena *a, const char *file, span packed);

#endif
