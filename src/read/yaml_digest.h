/* The digest of a YAML tree: of what it says, not of where it stands. */
#ifndef READ_YAML_DIGEST_H
#define READ_YAML_DIGEST_H

#include "base/digest.h"
#include "read/yaml.h"

/* Equal for trees with the same words, quoting and order, whatever their lines and columns. */
digest yaml_digest(const yaml_node *of);

#endif
