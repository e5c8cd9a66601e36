#include "read/yaml_digest.h"

digest yaml_digest(const yaml_node *of) {
    digest all = digest_join((digest)of->sort << 1 | of->quoted, of->count);
    if (of->sort == YAML_SCALAR)
        return digest_join(all, digest_of(of->scalar));
    for (size_t i = 0; i < of->count; i++) {
        bool pair = of->sort == YAML_MAPPING;
        if (pair)
            all = digest_join(all, digest_of(of->pairs[i].key));
        all = digest_join(all, yaml_digest(pair ? of->pairs[i].value : of->items[i]));
    }
    return all;
}
