#include "draft/stated_oven.h"

#include "base/words.h"
#include "read/baking.h"

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static span skip_degree(span s) {
    static const char *const signs[] = {"\u00b0", "\u00ba", "degrees", "degree", "deg"};
    s = span_trim(s);
    for (size_t i = 0; i < COUNT(signs); i++)
        if (span_begins(s, signs[i]))
            return span_trim(span_from(s, strlen(signs[i])));
    return s;
}

/* C or F, or its long name, at the front of `s`; 0: neither. */
static char scale_of(span s) {
    static const struct {
        const char *word;
        char scale;
    } rows[] = {{"Celsius", 'C'}, {"Fahrenheit", 'F'}, {"C", 'C'}, {"F", 'F'}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        size_t length = strlen(rows[i].word);
        bool ends = s.length <= length || strchr(" .,;:()/-", s.at[length]);
        if (span_begins(s, rows[i].word) && ends)
            return rows[i].scale;
    }
    return 0;
}

/* The temperature that begins at the front of `s`, no digit before it. */
static const char *temperature_at(arena *a, span s) {
    size_t digits = 0;
    double celsius;
    while (digits < s.length && is_digit(s.at[digits]))
        digits++;
    char scale = digits == 2 || digits == 3 ? scale_of(skip_degree(span_from(s, digits))) : 0;
    if (!scale)
        return NULL;
    const char *words = arena_format(a, "%.*s %c", SPAN(span_first(s, digits)), scale);
    problems ignored = problems_in(a);
    bool good = oven_read((located){span_of(words), {"oven", 1, 1}}, &celsius, &ignored);
    return good ? words : NULL;
}

const char *oven_stated(arena *a, const draft_items *steps) {
    for (size_t i = 0; i < steps->count; i++) {
        span words = span_of(steps->items[i].words);
        span folded = words_fold(a, words);
        if (span_find(folded, "oven") == folded.length)
            continue;
        for (size_t k = 0; k < words.length; k++) {
            bool begins = is_digit(words.at[k]) && (k == 0 || !is_digit(words.at[k - 1]));
            const char *found = begins ? temperature_at(a, span_from(words, k)) : NULL;
            if (found)
                return found;
        }
    }
    return NULL;
}
