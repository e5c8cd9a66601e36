#include "measure/amount.h"

#include "base/list.h"
#include "base/number.h"

#include <math.h>

static const double most = 100000;

static bool is_digit_at(span s, size_t i) {
    return i < s.length && s.at[i] >= '0' && s.at[i] <= '9';
}

static bool is_space_at(span s, size_t i) {
    return i < s.length && (s.at[i] == ' ' || s.at[i] == '\t');
}

static size_t spaces(span s) {
    size_t i = 0;
    while (is_space_at(s, i))
        i++;
    return i;
}

/* The length of the row of `list` that `s` begins with; 0: none. */
static size_t begins_with_any(span s, const char *const list[], size_t count) {
    for (size_t i = 0; i < count; i++)
        if (span_begins(s, list[i]))
            return strlen(list[i]);
    return 0;
}

/* -- fractions --------------------------------------------------------------------------------- */

static const struct {
    const char *sign;
    double value;
} vulgar_fractions[] = {/* Unicode, blocks Latin-1 Supplement and Number Forms */
                        {"\u00bc", 1.0 / 4}, {"\u00bd", 1.0 / 2}, {"\u00be", 3.0 / 4},
                        {"\u2150", 1.0 / 7}, {"\u2151", 1.0 / 9}, {"\u2152", 1.0 / 10},
                        {"\u2153", 1.0 / 3}, {"\u2154", 2.0 / 3}, {"\u2155", 1.0 / 5},
                        {"\u2156", 2.0 / 5}, {"\u2157", 3.0 / 5}, {"\u2158", 4.0 / 5},
                        {"\u2159", 1.0 / 6}, {"\u215a", 5.0 / 6}, {"\u215b", 1.0 / 8},
                        {"\u215c", 3.0 / 8}, {"\u215d", 5.0 / 8}, {"\u215e", 7.0 / 8}};

static const char *const slashes[] = {"/", "\u2044" /* fraction slash */};

static size_t vulgar_read(span s, double *out) {
    if (s.length == 0 || (unsigned char)s.at[0] < 0x80) /* looked for before every word of a step */
        return 0;
    for (size_t i = 0; i < COUNT(vulgar_fractions); i++)
        if (span_begins(s, vulgar_fractions[i].sign)) {
            *out = vulgar_fractions[i].value;
            return strlen(vulgar_fractions[i].sign);
        }
    return 0;
}

/* Digits alone, no sign and no mark; 0: none, or more than a fraction needs. */
static size_t digits_read(span s, double *out) {
    enum { MOST_DIGITS = 6 };
    size_t i = 0;
    double value = 0;
    for (; is_digit_at(s, i); i++)
        /* The analyser does not see that a text with a digit is somewhere.
         * NOLINTNEXTLINE(clang-analyzer-core.NullDereference) */
        value = value * 10 + (s.at[i] - '0');
    if (i == 0 || i > MOST_DIGITS)
        return 0;
    *out = value;
    return i;
}

static size_t fraction_read(span s, double *out) {
    double above, below;
    size_t took = vulgar_read(s, out);
    if (took)
        return took;
    took = digits_read(s, &above);
    size_t slash = took ? begins_with_any(span_from(s, took), slashes, COUNT(slashes)) : 0;
    size_t rest = slash ? digits_read(span_from(s, took + slash), &below) : 0;
    if (!rest || below == 0)
        return 0;
    *out = above / below;
    return took + slash + rest;
}

/* -- numbers ----------------------------------------------------------------------------------- */

/* True when what follows a number would be part of it: then it is no number at all. */
static bool runs_on(span after) {
    double ignored;
    SPAN_HOLDS(after);
    bool mark = after.length && (after.at[0] == '.' || after.at[0] == ',');
    return is_digit_at(after, mark) || vulgar_read(after, &ignored) ||
           begins_with_any(after, slashes, COUNT(slashes));
}

static const char *const mixed_joints[] = {" and ", " & ", " ", "-", ""};

/* The fraction part of a mixed number, its join included. */
static size_t mixed_part(span after, double whole, double *out) {
    for (size_t i = 0; i < COUNT(mixed_joints); i++) {
        const char *joint = mixed_joints[i];
        size_t length = strlen(joint);
        if (!span_begins(after, joint))
            continue;
        if (strcmp(joint, " ") == 0)
            length = spaces(after);
        span rest = span_from(after, length);
        double part;
        size_t took = length ? fraction_read(rest, &part) : vulgar_read(rest, &part);
        if (took && part < 1 && whole >= 1) {
            *out = part;
            return length + took;
        }
    }
    return 0;
}

/* 60, 0.5, 0,5, 1/2, ½, 1 1/2, 1½ */
static size_t figures_read(span s, double *out) {
    double value, part;
    size_t took = fraction_read(s, &value);
    if (!took) {
        bool signless = s.length && s.at[0] != '-' && s.at[0] != '+';
        took = signless ? number_read(s, &value) : 0;
        double whole;
        size_t digits = digits_read(s, &whole);
        size_t more = took && digits == took ? mixed_part(span_from(s, took), value, &part) : 0;
        if (more)
            value += part;
        took += more;
    }
    if (!took || runs_on(span_from(s, took)))
        return 0;
    *out = value;
    return took;
}

/* -- words ------------------------------------------------------------------------------------- */

typedef struct {
    const char *word;
    double value;
} word_value;

static const word_value counts[] = {
    {"a", 1},    {"an", 1},    {"one", 1},     {"two", 2},     {"three", 3},
    {"four", 4}, {"five", 5},  {"six", 6},     {"seven", 7},   {"eight", 8},
    {"nine", 9}, {"ten", 10},  {"eleven", 11}, {"twelve", 12}, {"ein", 1},
    {"eine", 1}, {"einen", 1}, {"zwei", 2},    {"drei", 3},    {"vier", 4},
    {"fünf", 5}, {"sechs", 6}, {"acht", 8},    {"zehn", 10},   {"zwölf", 12}};
static const word_value parts[] = {{"half", 0.5},       {"halves", 0.5},   {"halbe", 0.5},
                                   {"halber", 0.5},     {"halben", 0.5},   {"third", 1.0 / 3},
                                   {"thirds", 1.0 / 3}, {"quarter", 0.25}, {"quarters", 0.25},
                                   {"dozen", 12},       {"couple", 2}};
static const word_value dozen[] = {{"dozen", 12}}; /* half a dozen */
static const word_value articles[] = {{"of a", 1}, {"of an", 1}, {"a", 1}, {"an", 1}};
/* "a few", "a little": no amount that could be weighed. "half and half" is a cream. */
static const word_value vague[] = {{"few", 0}, {"little", 0}, {"bit", 0}, {"lot", 0}, {"and", 0}};

static char lower(char c) {
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* `s` begins with `word` in any case and the word ends there. */
static bool begins_with_word(span s, const char *word) {
    size_t length = strlen(word);
    if (s.length < length || (s.length > length && !is_space_at(s, length)))
        return false;
    for (size_t i = 0; i < length; i++)
        if (lower(s.at[i]) != word[i])
            return false;
    return true;
}

/* The length of the word of `list` that follows spaces at the front of `s`, the spaces included;
 * 0: none. */
static size_t word_read(span s, const word_value list[], size_t count, double *out) {
    size_t blank = spaces(s);
    span rest = span_from(s, blank);
    char first = rest.length ? lower(rest.at[0]) : '\0'; /* mostly that of no word here */
    for (size_t i = 0; i < count; i++)
        if (list[i].word[0] == first && begins_with_word(rest, list[i].word)) {
            *out = list[i].value;
            return blank + strlen(list[i].word);
        }
    return 0;
}

/* " and a half" behind a count. */
static size_t and_a_part(span s, double *out) {
    static const word_value joint[] = {{"and a", 1}};
    double ignored;
    size_t took = word_read(s, joint, COUNT(joint), &ignored);
    size_t more = took ? word_read(span_from(s, took), parts, COUNT(parts), out) : 0;
    return more && *out < 1 ? took + more : 0;
}

/* two, half a, three quarters of a, a dozen, one and a half */
static size_t words_read(span s, double *out) {
    double value = 1, part = 0, ignored;
    size_t count = word_read(s, counts, COUNT(counts), &value);
    size_t more = word_read(span_from(s, count), parts, COUNT(parts), &part);
    size_t took = count + more;
    if (!took || word_read(span_from(s, took), vague, COUNT(vague) - (more == 0), &ignored))
        return 0;
    if (more) {
        value *= part;
        took += word_read(span_from(s, took), articles, COUNT(articles), &ignored);
        more = word_read(span_from(s, took), dozen, COUNT(dozen), &part);
        value *= more ? part : 1;
        took += more;
    } else if ((more = and_a_part(span_from(s, took), &part)) > 0) {
        value += part;
        took += more;
    }
    *out = value;
    return took;
}

/* -- ranges ------------------------------------------------------------------------------------ */

static size_t single_read(span s, double *out) {
    double twelve;
    size_t took = figures_read(s, out);
    if (!took)
        return spaces(s) ? 0 : words_read(s, out);
    size_t more = word_read(span_from(s, took), dozen, COUNT(dozen), &twelve);
    *out *= more ? twelve : 1;
    return took + more;
}

/* Hyphens and dashes as keyboards and word processors make them; U+2212 is the minus sign. */
static const char *const dashes[] = {"-",      "\u2010", "\u2011", "\u2012",
                                     "\u2013", "\u2014", "\u2212"};
static const word_value range_words[] = {{"to", 0}, {"or", 0}, {"bis", 0}};

/* The join of a range with the spaces around it; 0: none. */
static size_t range_joint(span s) {
    double ignored;
    size_t blank = spaces(s);
    size_t took = begins_with_any(span_from(s, blank), dashes, COUNT(dashes));
    if (!took && blank)
        took = word_read(span_from(s, blank), range_words, COUNT(range_words), &ignored);
    if (!took)
        return 0;
    took += blank;
    return took + spaces(span_from(s, took));
}

/* "a" and "half" do not end a range: "2 to a tin". */
static size_t range_end(span s, double *out) {
    double ignored;
    if (word_read(s, articles, COUNT(articles), &ignored) ||
        word_read(s, parts, COUNT(parts), &ignored))
        return 0;
    return single_read(s, out);
}

size_t amount_read(span s, amount_range *out) {
    amount_range got;
    size_t took = single_read(s, &got.low);
    if (!took)
        return 0;
    got.high = got.low;
    size_t joint = range_joint(span_from(s, took));
    size_t end = joint ? range_end(span_from(s, took + joint), &got.high) : 0;
    if (end)
        took += joint + end;
    if (got.high < got.low || got.high > most)
        return 0;
    *out = got;
    return took;
}

bool amount_is_meant(span s) {
    static const char *const starts[] = {"-", "+", ".", ",", "/", "\u2212", "\u2044"};
    double ignored;
    span rest = span_from(s, begins_with_any(s, starts, COUNT(starts)));
    return is_digit_at(rest, 0) || vulgar_read(rest, &ignored);
}

size_t amount_about(span s) {
    static const word_value words[] = {{"about", 0},         {"approx.", 0}, {"approx", 0},
                                       {"approximately", 0}, {"around", 0},  {"roughly", 0},
                                       {"circa", 0},         {"ca.", 0},     {"ca", 0}};
    static const char *const signs[] = {"~", "\u2248" /* almost equal */};
    double ignored;
    size_t took = word_read(s, words, COUNT(words), &ignored);
    if (!took)
        took = begins_with_any(s, signs, COUNT(signs));
    return took ? took + spaces(span_from(s, took)) : 0;
}

/* -- printing ---------------------------------------------------------------------------------- */

static const struct {
    const char *text;
    double value;
} kitchen_fractions[] = {{"", 0},          {"1/8", 1.0 / 8}, {"1/4", 1.0 / 4}, {"1/3", 1.0 / 3},
                         {"1/2", 1.0 / 2}, {"2/3", 2.0 / 3}, {"3/4", 3.0 / 4}, {"", 1}};

void amount_add(text *t, double value, double tolerance) {
    double whole = floor(value);
    size_t nearest = 0;
    for (size_t i = 1; i < COUNT(kitchen_fractions); i++)
        if (fabs(value - whole - kitchen_fractions[i].value) <
            fabs(value - whole - kitchen_fractions[nearest].value))
            nearest = i;
    double rounded = whole + kitchen_fractions[nearest].value;
    if (!(fabs(value - rounded) <= tolerance + 1e-9) || (rounded == 0 && value != 0)) {
        number_add(t, value, 2);
        return;
    }
    bool with_fraction = kitchen_fractions[nearest].text[0] != '\0';
    if (!with_fraction || whole > 0)
        number_add(t, with_fraction ? whole : rounded, 0);
    if (with_fraction && whole > 0)
        text_add_char(t, ' ');
    text_add(t, kitchen_fractions[nearest].text);
}
