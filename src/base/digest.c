#include "base/digest.h"

#include <xxhash.h>

digest digest_of(span bytes) {
    return XXH3_64bits(bytes.length ? bytes.at : "", bytes.length);
}

digest digest_join(digest first, digest second) {
    const digest both[] = {first, second};
    return XXH3_64bits(both, sizeof both);
}

digest digest_join_words(digest so_far, const char *words) {
    return digest_join(so_far, words ? digest_of(span_of(words)) : 0);
}
