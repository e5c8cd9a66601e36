/* Writing a text as a YAML scalar, so that reading gives back the same bytes. */
#ifndef READ_YAML_WRITE_H
#define READ_YAML_WRITE_H

#include "base/text.h"

/* Adds `words`, which must be UTF-8, to `t`: as they are where nothing in them could be taken for
 * YAML, else in double quotes. `in_list`: it stands inside [] or {}, where commas count. One line
 * whatever is in it; an empty text is "". */
void yaml_add_scalar(text *t, span words, bool in_list);

#endif
