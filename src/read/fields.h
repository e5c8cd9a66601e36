/* Taking typed values out of a YAML mapping, with the problems a person needs to put them right:
 * unknown keys with the nearest known one, wrong types, numbers out of range.
 *
 * A key without a value ("summary:") counts as not there. Problems point at the value. */
#ifndef READ_FIELDS_H
#define READ_FIELDS_H

#include "pantry/ingredient.h"
#include "read/yaml.h"

/* Reads `bytes`, which begin a line of a file, as a mapping (yaml_read). Null with a problem when
 * it is none, broken or empty; `what` names the thing: "a recipe". */
const yaml_node *fields_read_keys(arena *a, located bytes, const char *what, problems *found);

/* Reads `bytes` as a list. Null when there is nothing in it (no problem: an empty table is one),
 * when it is broken or no list (with a problem). `what` names an item: "a rule". */
const yaml_node *fields_read_list(arena *a, const char *file, span bytes, const char *what,
                                  problems *found);

/* True when `item` of a list is a mapping; otherwise an error that says what is expected. */
bool fields_are_keys(const yaml_node *item, const char *what, problems *found);

/* Words that one may choose from. */
typedef struct {
    const char *const *words;
    size_t count;
} field_choices;

#define FIELD_CHOICES(array) ((field_choices){(array), COUNT(array)})

/* Warns of nothing, adds an error for each key of `node` that is not among `known`, with "did you
 * mean". `what` names the thing in the message: "a recipe has no key \"ovn\"". */
void fields_known(const yaml_node *node, const char *const known[], size_t count, const char *what,
                  problems *found);

/* True when `key` has a value; otherwise an error at `node`: "a recipe needs \"title\"". */
bool fields_need(const yaml_node *node, const char *key, const char *what, problems *found);

/* All of these: true and `*out` set when `key` is there and right; false and `*out` untouched
 * when it is not there; false and a problem when it is wrong. Strings are in the tree's arena. */
bool field_text(const yaml_node *node, const char *key, const char **out, problems *found);
/* field_text, with its place. */
bool field_located(const yaml_node *node, const char *key, located *out, problems *found);
bool field_number(const yaml_node *node, const char *key, double *out, problems *found);
/* A number with its unit in the value: "24 g", "12 %" (0.12), "180 C". `unit` is what the number
 * is in when none is written, and the only unit allowed (but ug, mg, g, kg, and mm, cm, and min,
 * h convert). */
bool field_quantity(const yaml_node *node, const char *key, const char *unit, double *out,
                    problems *found);
/* A share, 0 to 1: "20 %" or 0.2. */
bool field_share(const yaml_node *node, const char *key, double *out, problems *found);
/* The same for `value`, which stands in the list under `key`. */
bool field_item_share(const yaml_node *value, const char *key, double *out, problems *found);
bool field_answer(const yaml_node *node, const char *key, bool *out, problems *found);
/* A number, or {low:, typical:, high:} with low <= typical <= high; low and high are typical
 * where not stated. A "g" after a number is allowed. None may be negative. */
bool field_range(const yaml_node *node, const char *key, range *out, problems *found);
/* A calendar date YYYY-MM-DD, checked. */
bool field_date(const yaml_node *node, const char *key, const char **out, problems *found);
/* True when `s` is written YYYY-MM-DD and the calendar has this day. */
bool field_is_day(span s);
/* One of some words, in any case, with accents or without; `*out` is its index. */
bool field_choice(const yaml_node *node, const char *key, field_choices among, size_t *out,
                  problems *found);
/* The path of a file inside pictures/: plain parts only (path_is_plain). */
bool field_picture(const yaml_node *node, const char *key, const char **out, problems *found);
/* The value of `key` when it is of `sort`; null otherwise (with a problem when it is of another).
 */
const yaml_node *field_node(const yaml_node *node, const char *key, yaml_sort sort,
                            problems *found);

/* Words that stand as one value or as a list of values; borrowed from the tree. */
typedef struct {
    const yaml_node *const *items; /* scalars, none empty */
    size_t count;
} field_list;

/* A word or a list of words. False with a problem when any of them is none. */
bool field_words(const yaml_node *node, const char *key, field_list *out, problems *found);

/* True when `node` is a key's empty value. */
bool field_is_empty(const yaml_node *node);

/* The index of `word` among some, compared likewise; false when it is none of them. */
bool field_word_index(span word, field_choices among, size_t *out, arena *scratch);

/* Adds an error at `word`, which is none of `among`, with the nearest or all of them as hint.
 * `what` names what it should be: "a verdict". */
void field_add_unknown(located word, const char *what, field_choices among, problems *found);

#endif
