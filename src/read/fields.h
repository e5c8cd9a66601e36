/* Taking typed values out of a YAML mapping, with the problems a person needs to put them right:
 * unknown keys with the nearest known one, wrong types, numbers out of range. */
#ifndef READ_FIELDS_H
#define READ_FIELDS_H

#include "pantry/ingredient.h"
#include "read/yaml.h"

/* Warns of nothing, adds an error for each key of `node` that is not among `known`, with "did you
 * mean". `what` names the thing in the message: "a recipe has no key \"ovn\"". */
void fields_known(const yaml_node *node, const char *const known[], size_t count, const char *what,
                  problems *found);

/* All of these: true and `*out` set when `key` is there and right; false and `*out` untouched
 * when it is not there; false and a problem when it is wrong. Strings are in the tree's arena. */
bool field_text(const yaml_node *node, const char *key, const char **out, problems *found);
bool field_number(const yaml_node *node, const char *key, double *out, problems *found);
/* A number with its unit in the value: "24 g", "12 %" (0.12), "180 C". `unit` is what the number
 * is in when none is written, and the only unit allowed (but mg, g, kg and mm, cm convert). */
bool field_quantity(const yaml_node *node, const char *key, const char *unit, double *out,
                    problems *found);
bool field_answer(const yaml_node *node, const char *key, bool *out, problems *found);
/* A number, or {low:, typical:, high:} with low <= typical <= high. */
bool field_range(const yaml_node *node, const char *key, range *out, problems *found);
/* A calendar date YYYY-MM-DD, checked. */
bool field_date(const yaml_node *node, const char *key, const char **out, problems *found);
/* The value of `key` when it is of `sort`; null otherwise (with a problem when it is of another).
 */
const yaml_node *field_node(const yaml_node *node, const char *key, yaml_sort sort,
                            problems *found);

#endif
