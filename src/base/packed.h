/* Values written one after another into bytes, and read back within bounds.
 *
 * For what one program writes and the same program reads: numbers stand in the machine's own
 * order. Reading past the end, or a text without its final zero, makes the reader `broken`; from
 * then on it gives zeros and empty texts, so that one check at the end does. */
#ifndef BASE_PACKED_H
#define BASE_PACKED_H

#include "base/text.h"

#include <stdint.h>

void packed_add_number(text *to, uint64_t value);
void packed_add_text(text *to, const char *words); /* null stays null */

/* `size` bytes at `bytes`, preceded by what pads to a multiple of PACKED_UNIT. */
void packed_add_array(text *to, const void *bytes, size_t size);
enum { PACKED_UNIT = 8 };

typedef struct {
    span all; /* borrowed; begins at a multiple of PACKED_UNIT */
    size_t at;
    bool broken;
} packed_reader;

uint64_t packed_number(packed_reader *from);
const char *packed_text(packed_reader *from); /* borrowed; null or terminated */
const void *packed_array(packed_reader *from,
                         size_t size); /* borrowed; null when it is not there */
/* How many things of at least `size` bytes each follow: a number that what is left can hold. */
size_t packed_count(packed_reader *from, size_t size);

#endif
