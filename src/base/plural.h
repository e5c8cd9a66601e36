/* Which form of a sentence a count takes: "1 recipe", "3 recipes"; other languages have up to six.
 *
 * Rules are written as Unicode's locale data has them (UTS 35, part 3, "Language plural rules"):
 * `one: i = 1 and v = 0`, `few: n % 10 = 2..4 and n % 100 != 12..14`. Counts are whole numbers, so
 * n and i are the count and the other operands 0. Pure. */
#ifndef BASE_PLURAL_H
#define BASE_PLURAL_H

#include "base/arena.h"

/* In the order in which rules are tried; what none of them takes is `other`. */
typedef enum {
    PLURAL_ZERO,
    PLURAL_ONE,
    PLURAL_TWO,
    PLURAL_FEW,
    PLURAL_MANY,
    PLURAL_OTHER,
    PLURAL_FORMS
} plural_form;

/* "zero", "one", …; the names of the forms in Unicode's data. */
extern const char *const plural_names[PLURAL_FORMS];

typedef struct plural_relation plural_relation;

typedef struct {
    const plural_relation *items; /* null: no count takes this form */
    size_t count;
} plural_rule;

typedef struct {
    plural_rule of[PLURAL_FORMS]; /* that of `other` is empty */
} plural_rules;

/* Reads `words` as the rule of one form into `*out`, in `a`. False where it is none: `*offset` is
 * then the byte from which on it can't be read. */
bool plural_rule_read(arena *a, span words, plural_rule *out, size_t *offset);

/* The form that `count` takes. */
plural_form plural_of(const plural_rules *rules, size_t count);

#endif
