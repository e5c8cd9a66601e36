/* Reads the `when` of a swap rule. */
#ifndef READ_CONDITIONS_H
#define READ_CONDITIONS_H

#include "read/selectors.h"

/* Reads the facts in the mapping `node`. False with problems when one of them can't be read. */
bool conditions_read(const rule_reader *by, const yaml_node *node, conditions *out);

#endif
