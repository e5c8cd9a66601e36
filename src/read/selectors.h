/* Reads what swap rules speak of: selectors of ingredients, and the facts of `when`. */
#ifndef READ_SELECTORS_H
#define READ_SELECTORS_H

#include "read/fields.h"
#include "swap/rule.h"

/* What reading a rule needs beside its YAML. */
typedef struct {
    arena *home;         /* where what is read is put */
    const pantry *shelf; /* names must be in it */
    bool check_kinds;    /* warn of kinds that no ingredient is of */
    problems *found;
} rule_reader;

/* Reads {name:, family:, kind:, origin:}, each a word or a list of words. False with a problem
 * when it is none or selects nothing in particular. */
bool selector_read(const rule_reader *by, const yaml_node *node, selector *out);

/* The same for what a rule brings, which may say `same: kind`: of the family and kind of what it
 * replaces. */
bool selector_read_new(const rule_reader *by, const yaml_node *node, selector *out);

/* Reads a selector with `over` and `under`, shares of the batch. */
bool share_condition_read(const rule_reader *by, const yaml_node *node, share_condition *out);

/* A bit for each of the words under `key`, by its index in `among`; errors for those that are not
 * there. */
unsigned rule_reader_bits(const rule_reader *by, const yaml_node *node, const char *key,
                          field_choices among);

/* The ingredient called `name`; null with a problem and the nearest name when there is none. */
const ingredient *rule_reader_find(const rule_reader *by, located name);

#endif
