/* What libyaml says about broken YAML, turned into words for a baker: what is wrong, where it
 * began, how to put it right. */
#ifndef READ_YAML_FAULT_H
#define READ_YAML_FAULT_H

#include "base/problems.h"

#include <yaml.h>

/* The bytes a parser reads, without a byte-order mark, and where they stand. */
typedef struct {
    const char *file;
    span bytes;
    unsigned first_line;
} yaml_source;

/* The place of a libyaml mark, which counts lines and characters from 0. */
place yaml_source_place(const yaml_source *of, yaml_mark_t mark);

/* Adds the error that stopped `parser`. Ends the program when memory ran out. */
void yaml_fault_add(const yaml_source *of, const yaml_parser_t *parser, problems *found);

#endif
