/* A recipe's row in the record. */
#ifndef PUBLISH_RECORD_ROW_H
#define PUBLISH_RECORD_ROW_H

#include "base/digest.h"
#include "base/packed.h"
#include "site/row.h"

void record_add_row(text *to, const recipe_row *row);

/* Reads it back: texts, uses and swaps are borrowed from the reader's bytes, the row and its tags
 * live in `a`. What it returns is not to be used when the reader is broken. */
const recipe_row *record_row(arena *a, packed_reader *from);

/* The digest of all that the row says. */
digest record_row_digest(const recipe_row *row);

#endif
