/* An ingredient line, read: "1/2 cup (46 g) oat flour, sifted (optional)". */
#ifndef MEASURE_LINE_H
#define MEASURE_LINE_H

#include "measure/amount.h"
#include "measure/units.h"
#include "pantry/pantry.h"

/* "+ 2 tbsp" behind the first measure. */
typedef struct {
    amount_range quantity;
    const unit *in; /* of weight or volume */
} further_measure;

enum { FURTHER_MOST = 2 };

typedef struct {
    place at;
    const char *written; /* the whole line as the author wrote it */
    bool has_amount;     /* false for "salt to taste" */
    amount_range quantity;
    const unit *in;                     /* null: a bare count ("2 eggs") */
    const char *unit_written;           /* as written; null when none */
    further_measure more[FURTHER_MOST]; /* "1 cup + 2 tbsp + 1 tsp": added to the first */
    size_t more_count;
    bool has_own_weight; /* the author's bracketed weight, grams */
    amount_range own_weight_g;
    const char *name;        /* the ingredient's name as written, folded case kept */
    const ingredient *what;  /* null: not in the pantry (a problem was added) */
    const char *preparation; /* after the comma; null when none */
    bool optional;
    bool to_taste; /* "to taste", "for dusting": no amount is meant */
} recipe_line;

/* Reads the line `written` standing at `at`. Grammar:
 *
 *     AMOUNT UNIT (OWN WEIGHT) NAME, PREPARATION (optional)
 *
 * The name is the longest run of words the pantry knows; words before it ("ripe", "heaped") and
 * behind it are kept in the preparation. A word behind it that makes it another food ("almond
 * extract", where only almond is known) makes it unknown: a wrong food is worse than none. A word
 * before it that may ("soy milk", where only milk is known) is a warning, and so is a heaped
 * spoon, which is weighed level. A bracketed weight that stands before the unit ("2 (400 g)
 * cans") or says "each" is of one. A second measure after a slash is read like one in brackets,
 * after a plus it is added, and a third too (`more`).
 *
 * False when it can't be read at all (empty, no ingredient, an amount that is none or zero, an
 * own weight that is none, two amounts): a problem with column and hint was added and `*out` is
 * untouched. An unknown ingredient is a problem too, with the nearest name as hint, but gives
 * true with `what` null. A line without an amount is fine here; weigh_line warns of it. */
bool line_read(arena *a, located written, const pantry *shelf, recipe_line *out, problems *found);

/* The same from parts: the mapping form {ingredient:, amount:, note:, optional:}. `quantity` may
 * be empty (then `name` is read as a line is); `note` null. */
bool line_read_parts(arena *a, located name, located quantity, const char *note, bool optional,
                     const pantry *shelf, recipe_line *out, problems *found);

#endif
