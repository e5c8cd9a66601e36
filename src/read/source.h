/* Where a group of figures is from: the `source` and `certainty` that pantry files state. */
#ifndef READ_SOURCE_H
#define READ_SOURCE_H

#include "pantry/ingredient.h"
#include "read/yaml.h"

/* The keys that state a source. `what` names the group in messages: "the measures"; `certainty`
 * may be null. */
typedef struct {
    const char *what, *source, *certainty;
} source_keys;

/* Reads the source of a group of figures from `node`. Where no certainty is stated, the source's
 * own words tell ("label", "from memory", "estimate: …"), and what is left is a publication. A
 * missing source is an error in the reference and a warning in a site's own pantry (`hers`). */
void source_read(const yaml_node *node, const source_keys *keys, bool hers, source_note *out,
                 problems *found);

#endif
