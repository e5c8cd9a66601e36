#include "swap/rule.h"

#include "base/words.h"

static const char *const verdict_words[] = {
#define VERDICT(constant, word, sign) word,
    VERDICT_LIST(VERDICT)
#undef VERDICT
};
static const char *const verdict_signs[] = {
#define VERDICT(constant, word, sign) sign,
    VERDICT_LIST(VERDICT)
#undef VERDICT
};
static const char *const setting_words[] = {
#define SETTING(constant, word) word,
    SETTING_LIST(SETTING)
#undef SETTING
};
static const char *const moisture_words[] = {
#define MOISTURE(constant, word) word,
    MOISTURE_LIST(MOISTURE)
#undef MOISTURE
};

static const char *const kept_words[] = {
#define KEPT(constant, word) word,
    KEPT_LIST(KEPT)
#undef KEPT
};

const char *kept_word(kept_thing which) {
    return kept_words[which];
}

const char *verdict_word(verdict which) {
    return verdict_words[which];
}

const char *verdict_sign(verdict which) {
    return verdict_signs[which];
}

const char *setting_word(setting which) {
    return setting_words[which];
}

const char *moisture_word(moisture which) {
    return moisture_words[which];
}

bool verdict_named(span word, verdict *out) {
    size_t i = words_index(word, verdict_words, VERDICT_COUNT);
    if (i == VERDICT_COUNT)
        return false;
    *out = (verdict)i;
    return true;
}

bool setting_named(span word, setting *out) {
    size_t i = words_index(word, setting_words, SETTING_COUNT);
    if (i == SETTING_COUNT)
        return false;
    *out = (setting)i;
    return true;
}

bool moisture_named(span word, moisture *out) {
    size_t i = words_index(word, moisture_words, MOISTURE_COUNT);
    if (span_is(word, "fruit puree")) /* as folding writes it */
        i = MOISTURE_FRUIT_PUREE;
    if (i == MOISTURE_COUNT)
        return false;
    *out = (moisture)i;
    return true;
}

static char hyphen_as_space(char c) {
    return c == '-' ? ' ' : c;
}

/* Leading words, as kind_matches has it, for a span; a hyphen counts as a space, so that a kind
 * may be written folded. */
static bool kind_fits(span kind, const char *of) {
    for (size_t i = 0; i < kind.length; i++)
        if (!of[i] || hyphen_as_space(kind.at[i]) != hyphen_as_space(of[i]))
            return false;
    char next = hyphen_as_space(of[kind.length]);
    return next == '\0' || next == ' ';
}

static bool kinds_fit(const word_span_list *kinds, const ingredient *what) {
    for (size_t i = 0; i < kinds->count; i++)
        if (kind_fits(kinds->items[i], what->kind ? what->kind : ""))
            return true;
    return kinds->count == 0;
}

static bool names_fit(const word_span_list *list, const ingredient *what, const pantry *shelf) {
    for (size_t i = 0; i < list->count; i++)
        if (pantry_find_folded(shelf, list->items[i]) == what)
            return true;
    return list->count == 0;
}

bool selector_fits(const selector *by, const ingredient *what, const pantry *shelf) {
    if (by->families && !(by->families >> what->in & 1u))
        return false;
    if (by->origins && !(by->origins >> what->from & 1u))
        return false;
    return kinds_fit(&by->kinds, what) && names_fit(&by->names, what, shelf);
}

int selector_rank(const selector *by) {
    int origin_too = by->origins ? 2 : 0;
    if (by->names.count || by->same_kind)
        return 8;
    if (by->kinds.count)
        return 4 + origin_too;
    return (by->families ? 1 : 0) + origin_too;
}
