/* Short numbers that stand for content: equal content has equal digests, and unequal content as
 * good as never (xxHash, 64 bits). For noticing change, not for keeping secrets. */
#ifndef BASE_DIGEST_H
#define BASE_DIGEST_H

#include "base/span.h"

#include <stdint.h>

typedef uint64_t digest;

/* The digest of `bytes`; of none it is not 0. */
digest digest_of(span bytes);

/* One digest of both, their order included. */
digest digest_join(digest first, digest second);

/* `so_far` joined with the digest of `words`; null differs from "". */
digest digest_join_words(digest so_far, const char *words);

#endif
