#include "measure/step_time.h"

#include "base/list.h"
#include "measure/amount.h"

#define LONGEST_S (24 * 3600.0)

/* Not "second" alone: "a second egg". */
static const struct {
    const char *word;
    double seconds;
} lengths[] = {{"seconds", 1}, {"secs", 1},       {"sec", 1},       {"minutes", 60},
               {"minute", 60}, {"mins", 60},      {"min", 60},      {"hours", 3600},
               {"hour", 3600}, {"hrs", 3600},     {"hr", 3600},     {"Minuten", 60},
               {"Minute", 60}, {"Stunden", 3600}, {"Stunde", 3600}, {"Sekunden", 1}};

static const char *const before_others[] = {"every ",    "each ",      "keep ", "keeps ",
                                            "keep for ", "keeps for ", "last ", "in ",
                                            "within ",   "up to ",     "alle ", "letzten "};
static const char *const behind_others[] = {
    " earlier", " sooner", " before the end", " too ",         " ago",
    " old",     " ahead",  " früher",         " vor dem Ende", " vorher"};

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

static bool is_in_word(char c) {
    return is_letter(c) || (c >= '0' && c <= '9') || strchr("./,-'", c) != NULL;
}

/* The bytes of `word` and what is before it at the front of `s`, ended as a word; 0: not there. */
static size_t word_used(span s, const char *word) {
    size_t length = strlen(word);
    bool ends = s.length == length || (s.length > length && !is_letter(s.at[length]));
    return ends && span_begins(s, word) ? length : 0;
}

static size_t used_of(span s, const char *const words[], size_t count) {
    size_t used = 0;
    for (size_t i = 0; i < count && used == 0; i++)
        used = word_used(s, words[i]);
    return used;
}

/* " minutes", " full minute", " of an hour": the bytes and what one of it lasts. */
static size_t unit_used(span s, double *seconds) {
    static const char *const between[] = {" full", " whole", " good", " more", " of an"};
    size_t used = used_of(s, between, COUNT(between));
    s = span_from(s, used);
    if (!span_begins(s, " "))
        return 0;
    for (size_t i = 0; i < COUNT(lengths); i++) {
        size_t word = word_used(span_from(s, 1), lengths[i].word);
        *seconds = lengths[i].seconds;
        if (word)
            return used + 1 + word;
    }
    return 0;
}

/* "20 to 25 minutes", "half an hour"; `*unit`: what one of it lasts. */
static size_t plain_used(span s, double *seconds, double *unit) {
    amount_range range;
    size_t amount = amount_read(s, &range);
    size_t word = amount ? unit_used(span_from(s, amount), unit) : 0;
    if (word == 0)
        return 0;
    *seconds = range.low * *unit;
    return amount + word;
}

/* What is added behind it: " and a half", " 20 minutes", " and 20 minutes"; or the other end of a
 * range of two units, " to 2 minutes". */
static size_t added_used(span s, double unit, double *seconds) {
    static const char *const and_a_half[] = {" and a half"}, *const to[] = {" to", " or", " bis"},
                             *const and[] = {" and", " und"};
    size_t used = used_of(s, and_a_half, 1);
    double more = unit / 2, more_unit = 0;
    if (used == 0) {
        bool is_range = used_of(s, to, COUNT(to)) > 0;
        size_t joint = is_range ? used_of(s, to, COUNT(to)) : used_of(s, and, COUNT(and));
        span rest = span_from(s, joint);
        size_t plain =
            span_begins(rest, " ") ? plain_used(span_from(rest, 1), &more, &more_unit) : 0;
        if (plain == 0 || (is_range ? more_unit <= unit : more_unit >= unit))
            return 0;
        used = joint + 1 + plain;
        more = is_range ? 0 : more;
    }
    *seconds += more;
    return used;
}

static bool is_waited_for(span before, span behind) {
    for (size_t i = 0; i < COUNT(before_others); i++)
        if (span_ends(before, before_others[i]))
            return false;
    for (size_t i = 0; i < COUNT(behind_others); i++)
        if (span_begins(behind, behind_others[i]))
            return false;
    return true;
}

bool step_time_next(span words, size_t from, step_time *out) {
    for (size_t at = from; at < words.length; at++) {
        double seconds, unit;
        if (at > 0 && is_in_word(words.at[at - 1]))
            continue;
        size_t used = plain_used(span_from(words, at), &seconds, &unit);
        if (used == 0)
            continue;
        used += added_used(span_from(words, at + used), unit, &seconds);
        bool fits = seconds >= 1 && seconds <= LONGEST_S;
        if (fits && is_waited_for(span_first(words, at), span_from(words, at + used))) {
            *out = (step_time){at, used, seconds};
            return true;
        }
        at += used - 1;
    }
    return false;
}
