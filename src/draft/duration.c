#include "draft/duration.h"

#include "base/list.h"
#include "base/number.h"

/* -- ISO 8601-1:2019, 5.5.2: P, then days or weeks, then T and hours, minutes, seconds -------- */

static const struct {
    char letter;
    bool after_t;
    double minutes; /* 0: of no fixed length */
} parts[] = {{'Y', false, 0}, {'M', false, 0}, {'W', false, 7 * 24 * 60}, {'D', false, 24 * 60},
             {'H', true, 60}, {'M', true, 1},  {'S', true, 1.0 / 60}};

static char upper(char c) {
    return c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c;
}

/* Reads one number and its letter off the front of `*rest`; each letter later than the last. */
static bool take_part(span *rest, bool after_t, size_t *from, double *minutes) {
    double value;
    size_t used = rest->at[0] == '-' || rest->at[0] == '+' ? 0 : number_read(*rest, &value);
    if (used == 0 || used == rest->length)
        return false;
    for (size_t i = *from; i < COUNT(parts); i++) {
        if (upper(rest->at[used]) != parts[i].letter || parts[i].after_t != after_t)
            continue;
        if (parts[i].minutes <= 0 && value > 0)
            return false;
        *minutes += value * parts[i].minutes;
        *from = i + 1;
        *rest = span_from(*rest, used + 1);
        return true;
    }
    return false;
}

static bool read_iso(span s, double *minutes) {
    bool after_t = false;
    size_t from = 0, taken = 0;
    double sum = 0;
    span rest = span_from(s, 1);
    while (rest.length) {
        if (!after_t && upper(rest.at[0]) == 'T') {
            after_t = true;
            rest = span_from(rest, 1);
            continue;
        }
        if (!take_part(&rest, after_t, &from, &sum))
            return false;
        taken++;
    }
    if (taken == 0)
        return false;
    *minutes = sum;
    return true;
}

/* -- words ------------------------------------------------------------------------------------- */

static const struct {
    const char *word;
    double minutes;
} words[] = {{"minutes", 1}, {"minute", 1}, {"mins", 1},           {"min", 1},          {"m", 1},
             {"hours", 60},  {"hour", 60},  {"hrs", 60},           {"hr", 60},          {"h", 60},
             {"days", 1440}, {"day", 1440}, {"seconds", 1.0 / 60}, {"second", 1.0 / 60}};

static size_t letters(span s) {
    size_t i = 0;
    while (i < s.length && upper(s.at[i]) >= 'A' && upper(s.at[i]) <= 'Z')
        i++;
    return i;
}

static bool same_word(span written, const char *word) {
    if (written.length != strlen(word))
        return false;
    for (size_t i = 0; i < written.length; i++)
        if (upper(written.at[i]) != upper(word[i]))
            return false;
    return true;
}

static bool unit_minutes(span word, double *minutes) {
    for (size_t i = 0; i < COUNT(words); i++)
        if (same_word(word, words[i].word)) {
            *minutes = words[i].minutes;
            return true;
        }
    return false;
}

/* "and", a comma, a full stop between or behind the parts. */
static span skip_joint(span s) {
    while (s.length && strchr(" ,.&", s.at[0]))
        s = span_from(s, 1);
    return span_begins(s, "and ") ? span_trim(span_from(s, strlen("and "))) : s;
}

static bool read_words(span s, double *minutes) {
    double sum = 0, last = 1e9;
    span rest = s;
    while (rest.length) {
        double value, unit;
        size_t used = rest.at[0] == '-' || rest.at[0] == '+' ? 0 : number_read(rest, &value);
        if (used == 0)
            return false;
        rest = span_trim(span_from(rest, used));
        span word = span_first(rest, letters(rest));
        if (!unit_minutes(word, &unit) || unit >= last)
            return false;
        sum += value * unit;
        last = unit;
        rest = skip_joint(span_from(rest, word.length));
    }
    *minutes = sum;
    return true;
}

bool duration_read(span s, double *minutes) {
    s = span_trim(s);
    if (s.length == 0)
        return false;
    return upper(s.at[0]) == 'P' ? read_iso(s, minutes) : read_words(s, minutes);
}
