#include "swap/also.h"

#include "base/list.h"

/* With the letter behind it no longer a word; sentences begin with a capital. */
static const char *const asking[] = {
    "add",   "fill", "sweeten", "loosen", "thin",     "spoon",   "teaspoon", "tablespoon",
    "pinch", "egg",  "whites",  "halve",  "psyllium", "xanthan", "cut the",  "cut any"};

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

static bool begins_with(const char *at, const char *word) {
    size_t i = 1;
    if ((at[0] | 0x20) != word[0])
        return false;
    while (word[i] && at[i] == word[i])
        i++;
    return !word[i] && !is_letter(at[i]);
}

bool also_asks_amounts(const char *also) {
    for (const char *at = also; at && *at; at++) {
        if (at > also && is_letter(at[-1]))
            continue;
        for (size_t i = 0; i < COUNT(asking); i++)
            if (begins_with(at, asking[i]))
                return true;
    }
    return false;
}
