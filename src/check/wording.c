#include "check/wording.h"

bool wording_has(arena *a, span sentence, const char *const list[], size_t count) {
    prose all = prose_of(a, sentence);
    for (size_t i = 0; i < all.count; i++)
        if (prose_word_among(&all, i, list, count))
            return true;
    return false;
}

bool wording_is_conditional(arena *a, span sentence) {
    static const char *const words[] = {"if",     "should", "too",       "unless", "otherwise",
                                        "needed", "need",   "necessary", "when",   "or"};
    return WORDING_HAS(a, sentence, words);
}

bool wording_is_advice(arena *a, span sentence) {
    static const char *const words[] = {
        "if",   "use", "swap", "instead", "replace", "version", "make",  "could",  "can",   "want",
        "need", "try", "take", "prefer",  "leave",   "without", "would", "option", "choose"};
    return WORDING_HAS(a, sentence, words);
}

bool wording_is_option(arena *a, span sentence) {
    static const char *const words[] = {"if",        "option",    "options", "optionally",
                                        "version",   "adaptable", "easily",  "possible",
                                        "variation", "can",       "could"};
    return WORDING_HAS(a, sentence, words);
}

bool wording_is_asked(span words, size_t end) {
    return span_begins(span_from(words, end), "?");
}

bool wording_is_denied(const prose *all, size_t i) {
    static const char *const denials[] = {"not", "never",  "nor",     "hardly",
                                          "no",  "cannot", "neither", "rarely"};
    for (size_t back = 1; back <= 3 && back <= i; back++) {
        if (all->items[i - back + 1].cut && !all->items[i - back + 1].bound)
            return false;
        bool not_ = all->items[i - back].bound && span_is(prose_word(all, i - back), "t");
        if (not_ || IS_WORD(all, i - back, denials))
            return true;
    }
    return false;
}
