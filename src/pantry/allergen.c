#include "pantry/allergen.h"

#include <string.h>

static const struct {
    const char *word, *us, *eu;
} rows[] = {
#define ALLERGEN(constant, word, us, eu) {word, us, eu},
    ALLERGEN_LIST(ALLERGEN)
#undef ALLERGEN
};

const char *allergen_word(allergen which) {
    return rows[which].word;
}

const char *allergen_group(allergen which, label_law law) {
    const char *eu = rows[which].eu;
    if (law == LAW_UK && eu && strcmp(eu, "nuts") == 0)
        return "tree nuts";
    return law == LAW_US ? rows[which].us : eu;
}

bool allergen_named(const char *word, size_t length, allergen *out) {
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (strlen(rows[i].word) == length && memcmp(rows[i].word, word, length) == 0) {
            *out = (allergen)i;
            return true;
        }
    return false;
}
