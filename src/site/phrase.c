#include "site/phrase.h"

#include "base/list.h"
#include "base/number.h"
#include "measure/amount.h"

#include <math.h>

#define MINUS   "\xe2\x88\x92"
#define EN_DASH "\xe2\x80\x93"

/* Takes the text's bytes into the arena and frees the text. */
static char *settled(arena *a, text *t) {
    char *copy = arena_copy(a, text_span(t));
    text_free(t);
    return copy;
}

char *phrase_change(arena *a, double value, int decimals, const char *in) {
    text t = TEXT_EMPTY;
    number_add(&t, fabs(value), decimals);
    if (span_is(text_span(&t), "0")) {
        text_free(&t);
        return arena_copy(a, span_of("unchanged"));
    }
    char *size = settled(a, &t);
    return arena_format(a, "%s%s %s", value < 0 ? MINUS : "+", size, in);
}

char *phrase_amount(arena *a, double value, const char *in) {
    text t = TEXT_EMPTY;
    number_add(&t, value, fabs(value) < 9.95 ? 1 : 0);
    text_format(&t, " %s", in);
    return settled(a, &t);
}

char *phrase_grams_range(arena *a, double low_g, double high_g) {
    double step = high_g < 10 ? 0.5 : high_g < 100 ? 1 : 5;
    double low = number_round(low_g, step), high = number_round(high_g, step);
    text t = TEXT_EMPTY;
    number_add(&t, low, 1);
    if (high > low) {
        text_add(&t, EN_DASH);
        number_add(&t, high, 1);
    }
    text_add(&t, " g");
    return settled(a, &t);
}

/* Ends of a range this wide are told to 5 g, and its middle too. */
#define WIDE_G 20

char *phrase_wide_range(arena *a, double low_g, double high_g) {
    double step = high_g - low_g >= WIDE_G ? 5 : 1;
    double low = number_round(low_g, step), high = number_round(high_g, step);
    if (low == high)
        return arena_format(a, "%s g", number_copy(a, low, 0));
    return arena_format(a, "%s" EN_DASH "%s g", number_copy(a, low, 0), number_copy(a, high, 0));
}

/* A range narrower than this, or than this share of its typical, is as good as one figure. */
#define NARROW_G     4
#define NARROW_SHARE 0.15

/* What one vessel holds is said for an amount only where it is nearly that: within a tenth, or two
 * grams of a spoonful. */
static bool is_nearly(double grams, double wanted_g) {
    return fabs(grams - wanted_g) <= fmax(0.1 * wanted_g, 2);
}

static amount_words words_of(arena *a, const ingredient *what, double grams, cup_standard cups) {
    kitchen_measure by;
    bool measured = what && kitchen_measure_of(a, what, grams, cups, &by);
    return (amount_words){.weight = kitchen_weight(a, grams), .measure = measured ? by.text : NULL};
}

amount_words phrase_amount_words(arena *a, const ingredient *what, range grams, cup_standard cups) {
    kitchen_measure rough;
    double width_g = grams.high - grams.low, typical_g = grams.typical;
    if (width_g < NARROW_G || width_g <= NARROW_SHARE * fabs(typical_g))
        return words_of(a, what, typical_g, cups);
    bool wide = width_g >= WIDE_G && typical_g >= WIDE_G;
    double step = wide ? 5 : 1;
    if (what && kitchen_rough_measure_of(a, what, typical_g, cups, &rough) &&
        is_nearly(rough.grams, typical_g) && rough.grams >= grams.low && rough.grams <= grams.high)
        return (amount_words){true, kitchen_weight(a, number_round(rough.grams, step)), rough.text};
    amount_words rounded = words_of(a, what, number_round(typical_g, step), cups);
    rounded.is_about = true;
    return rounded;
}

static char *in_one(arena *a, const amount_words *of) {
    const char *about = of->is_about ? "about " : "";
    return of->measure ? arena_format(a, "%s%s (%s)", about, of->weight, of->measure)
                       : arena_format(a, "%s%s", about, of->weight);
}

char *phrase_about(arena *a, const ingredient *what, range grams, cup_standard cups) {
    amount_words of = phrase_amount_words(a, what, grams, cups);
    return in_one(a, &of);
}

char *phrase_minutes(arena *a, double minutes) {
    unsigned whole = (unsigned)lround(minutes);
    if (whole < 60)
        return arena_format(a, "%u min", whole);
    if (whole % 60 == 0)
        return arena_format(a, "%u h", whole / 60);
    return arena_format(a, "%u h %u min", whole / 60, whole % 60);
}

char *phrase_minutes_iso(arena *a, double minutes) {
    unsigned whole = (unsigned)lround(minutes);
    if (whole < 60)
        return arena_format(a, "PT%uM", whole);
    if (whole % 60 == 0)
        return arena_format(a, "PT%uH", whole / 60);
    return arena_format(a, "PT%uH%uM", whole / 60, whole % 60);
}

const char *phrase_date(arena *a, const char *date) {
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    double month, day;
    span s = span_of(date);
    if (s.length != 10 || !number_is((span){s.at + 5, 2}, &month) ||
        !number_is((span){s.at + 8, 2}, &day) || month < 1 || month > 12)
        return date;
    return arena_format(a, "%u %s %.4s", (unsigned)day, months[(size_t)month - 1], s.at);
}

char *phrase_weighed(arena *a, const ingredient *what, double grams, cup_standard cups) {
    amount_words of = words_of(a, what, grams, cups);
    return in_one(a, &of);
}

char *phrase_yield(arena *a, const yield *of) {
    /* A share of one thing is said as such: 0.1 loaf is 1/10 loaf. */
    double parts = of->count > 0 ? 1 / of->count : 0;
    if (parts > 1.5 && fabs(parts - floor(parts + 0.5)) < 1e-6)
        return arena_format(a, "1/%s %s", number_copy(a, parts, 0), of->noun);
    text t = TEXT_EMPTY;
    amount_add(&t, of->count, 0.02);
    text_format(&t, " %s", of->noun);
    return settled(a, &t);
}

char *phrase_capitalised(arena *a, const char *words) {
    char *copy = arena_copy(a, span_of(words));
    if (copy[0] >= 'a' && copy[0] <= 'z')
        copy[0] = (char)(copy[0] - 'a' + 'A');
    return copy;
}

char *phrase_list(arena *a, const char *const *words, size_t count) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < count; i++) {
        if (i)
            text_add(&t, i + 1 == count ? " and " : ", ");
        text_add(&t, words[i]);
    }
    return settled(a, &t);
}

char *phrase_count(arena *a, size_t count, const char *noun) {
    return arena_format(a, "%zu %s%s", count, noun, count == 1 ? "" : "s");
}
