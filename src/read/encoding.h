/* Whether the bytes of a file are text, and where something stands in them. */
#ifndef READ_ENCODING_H
#define READ_ENCODING_H

#include "base/problems.h"

/* `bytes` without the byte-order mark that some editors put at the front of a file. */
span encoding_skip_mark(span bytes);

/* True when `bytes` is UTF-8 without a NUL; otherwise an error at the first bad byte was added.
 * `bytes` starts at line `first_line` of `file` (borrowed by the problem). */
bool encoding_check(const char *file, span bytes, unsigned first_line, problems *found);

/* The place of byte `offset` of `bytes`, which starts at line `first_line` of `file`. */
place encoding_place(const char *file, span bytes, unsigned first_line, size_t offset);

#endif
