#include "check/wording.h"

#include "check/passages.h"

static bool any_among(const prose *all, const char *const list[], size_t count) {
    for (size_t i = 0; i < all->count; i++)
        if (prose_word_among(all, i, list, count))
            return true;
    return false;
}

bool wording_has(arena *a, span words, const char *const list[], size_t count) {
    prose all = prose_of(a, words);
    return any_among(&all, list, count);
}

void sentence_move(sentence *to, span paragraph, size_t offset) {
    const char *at = paragraph.at + offset;
    if (to->words.at && at >= to->words.at && at < to->words.at + to->words.length)
        return;
    *to = (sentence){.a = to->a, .words = sentence_around(paragraph, offset)};
}

const prose *sentence_prose(sentence *of) {
    if (!of->is_cut)
        of->cut = prose_of(of->a, of->words);
    of->is_cut = true;
    return &of->cut;
}

bool sentence_has(sentence *of, const char *const list[], size_t count) {
    for (size_t i = 0; i < of->count; i++)
        if (of->asked[i].list == list)
            return of->asked[i].has;
    bool has = any_among(sentence_prose(of), list, count);
    if (of->count < ASKED_MOST) {
        of->asked[of->count].list = list;
        of->asked[of->count++].has = has;
    }
    return has;
}

bool sentence_is_conditional(sentence *of) {
    static const char *const words[] = {"if",     "should", "too",       "unless", "otherwise",
                                        "needed", "need",   "necessary", "when",   "or"};
    return SENTENCE_HAS(of, words);
}

bool sentence_is_advice(sentence *of) {
    static const char *const words[] = {
        "if",   "use", "swap", "instead", "replace", "version", "make",  "could",  "can",   "want",
        "need", "try", "take", "prefer",  "leave",   "without", "would", "option", "choose"};
    return SENTENCE_HAS(of, words);
}

bool sentence_is_option(sentence *of) {
    static const char *const words[] = {"if",        "option",    "options", "optionally",
                                        "version",   "adaptable", "easily",  "possible",
                                        "variation", "can",       "could"};
    return SENTENCE_HAS(of, words);
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
