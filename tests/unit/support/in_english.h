/* What pure rooms have to say, in English, so that tests can read it. */
#ifndef UNIT_SUPPORT_IN_ENGLISH_H
#define UNIT_SUPPORT_IN_ENGLISH_H

#include "site/say.h"

/* Null stays null. */
static inline const char *in_english(arena *a, const message *of) {
    return say_message(a, language_english(a), of);
}

static inline word_list cautions_in_english(arena *a, caution_set given) {
    const language *in = language_english(a);
    word_list said = {0};
    for (size_t i = 0; i < CAUTION_COUNT; i++)
        if (given >> i & 1u)
            LIST_ADD(a, &said, in->cautions[i]);
    return said;
}

#endif
