/* What an ingredient is made of, as pantry files state it: per 100 g, or as a pack's label has it
 * per serving. */
#ifndef READ_COMPOSITION_H
#define READ_COMPOSITION_H

#include "pantry/ingredient.h"
#include "read/yaml.h"

/* Reads `per-100-g` or `label` of the pantry entry `entry` into `out` (composition, serving,
 * polyol, source). Figures of a label are turned to 100 g; salt to sodium; available
 * carbohydrate to total where the fibre is known. Errors for figures that can't be. */
void composition_read(const yaml_node *entry, bool hers, ingredient *out, problems *found);

#endif
