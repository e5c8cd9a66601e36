#include "site/say.h"

#include "base/list.h"
#include "base/number.h"
#include "measure/amount.h"

#include <assert.h>
#include <math.h>

#define MINUS   "\xe2\x88\x92"
#define EN_DASH "\xe2\x80\x93"

/* -- sentences ------------------------------------------------------------------------------- */

const char *say(arena *a, const language *in, size_t which, const char *const values[]) {
    return sentence_fill(a, &in->said[which][PLURAL_OTHER], values);
}

const char *say_counted(arena *a, const language *in, size_t which, size_t number,
                        const char *const values[]) {
    return sentence_fill(a, &in->said[which][plural_of(&in->plurals, number)], values);
}

/* -- numbers --------------------------------------------------------------------------------- */

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/* Adds whole digits, a mark before each three that are left. From five digits on, as most
 * languages have it: 1234, 12.345. */
static void add_grouped(text *t, span digits, const char *mark) {
    enum { GROUPED_FROM = 5, GROUP = 3 };
    for (size_t i = 0; i < digits.length; i++) {
        if (i && digits.length >= GROUPED_FROM && (digits.length - i) % GROUP == 0)
            text_add(t, mark);
        text_add_char(t, digits.at[i]);
    }
}

/* Adds the number at the front of `rest`; returns how many bytes it took. */
static size_t add_number(text *t, const language *in, span rest) {
    size_t whole = 0, end;
    while (whole < rest.length && is_digit(rest.at[whole]))
        whole++;
    add_grouped(t, span_first(rest, whole), in->group);
    end = whole;
    if (end + 1 < rest.length && rest.at[end] == '.' && is_digit(rest.at[end + 1])) {
        text_add(t, in->decimal);
        for (end++; end < rest.length && is_digit(rest.at[end]); end++)
            text_add_char(t, rest.at[end]);
    }
    return end;
}

const char *say_figures(arena *a, const language *in, const char *plain) {
    if (in->writes_plainly || !plain)
        return plain;
    text t = TEXT_EMPTY;
    for (span rest = span_of(plain); rest.length;) {
        size_t taken = is_digit(rest.at[0]) ? add_number(&t, in, rest) : 1;
        if (!is_digit(rest.at[0]))
            text_add_char(&t, rest.at[0]);
        rest = span_from(rest, taken);
    }
    const char *said = arena_copy(a, text_span(&t));
    text_free(&t);
    return said;
}

const char *say_figure(arena *a, const language *in, double value, int decimals) {
    return say_figures(a, in, number_copy(a, value, decimals));
}

const char *say_percent(arena *a, const language *in, double share, int decimals) {
    return SAY(a, in, PERCENT, say_figure(a, in, share * 100, decimals));
}

/* -- amounts --------------------------------------------------------------------------------- */

const char *say_weight(arena *a, const language *in, double grams) {
    return say_figures(a, in, kitchen_weight(a, grams));
}

const char *say_change(arena *a, const language *in, double value, int decimals, const char *what) {
    const char *size = say_figure(a, in, fabs(value), decimals);
    if (strcmp(size, "0") == 0)
        return SAID(in, UNCHANGED);
    return arena_format(a, "%s%s %s", value < 0 ? MINUS : "+", size, what);
}

const char *say_amount(arena *a, const language *in, double value, const char *what) {
    return arena_format(a, "%s %s", say_figure(a, in, value, fabs(value) < 9.95 ? 1 : 0), what);
}

static const char *between(arena *a, const language *in, double low, double high) {
    const char *least = say_figure(a, in, low, 1);
    if (high <= low)
        return arena_format(a, "%s g", least);
    return arena_format(a, "%s" EN_DASH "%s g", least, say_figure(a, in, high, 1));
}

const char *say_grams_range(arena *a, const language *in, double low_g, double high_g) {
    double step = high_g < 10 ? 0.5 : high_g < 100 ? 1 : 5;
    return between(a, in, number_round(low_g, step), number_round(high_g, step));
}

/* Ends of a range this wide are told to 5 g, and its middle too. */
#define WIDE_G 20

const char *say_wide_range(arena *a, const language *in, double low_g, double high_g) {
    double step = high_g - low_g >= WIDE_G ? 5 : 1;
    return between(a, in, number_round(low_g, step), number_round(high_g, step));
}

/* -- kitchen measures ------------------------------------------------------------------------ */

static const struct {
    const char *of;
    sentence_key says;
} kitchen_words[] = {
    {"cup", SAY_KITCHEN_CUP},
    {"tbsp", SAY_KITCHEN_TBSP},
    {"tsp", SAY_KITCHEN_TSP},
    {"small", SAY_KITCHEN_SMALL},
    {"medium", SAY_KITCHEN_MEDIUM},
    {"large", SAY_KITCHEN_LARGE},
    {"extra large", SAY_KITCHEN_EXTRA_LARGE},
    {"jumbo", SAY_KITCHEN_JUMBO},
    {"piece", SAY_KITCHEN_PIECE},
    {"scoop", SAY_KITCHEN_SCOOP},
    {"stick", SAY_KITCHEN_STICK},
    {"packet", SAY_KITCHEN_PACKET},
    {"sachet", SAY_KITCHEN_SACHET},
    {"square", SAY_KITCHEN_SQUARE},
    {"cube", SAY_KITCHEN_CUBE},
    {"slice", SAY_KITCHEN_SLICE},
    {"sheet", SAY_KITCHEN_SHEET},
    {"leaf", SAY_KITCHEN_LEAF},
    {"block", SAY_KITCHEN_BLOCK},
    {"clove", SAY_KITCHEN_CLOVE},
    {"can", SAY_KITCHEN_CAN},
    {"drop", SAY_KITCHEN_DROP},
};

/* Parts of one are said as one is, other parts as most counts are. */
static plural_form form_of(const language *in, double amount) {
    if (amount <= 1)
        return plural_of(&in->plurals, 1);
    return amount == floor(amount) ? plural_of(&in->plurals, (size_t)amount) : PLURAL_OTHER;
}

const char *say_unit(arena *a, const language *in, const char *name) {
    if (in->measures_plainly)
        return name;
    if (strcmp(name, "pinch") == 0)
        return SAID(in, KITCHEN_PINCH);
    if (strcmp(name, "each") == 0)
        name = "piece";
    const char *one = "1";
    for (size_t i = 0; i < COUNT(kitchen_words); i++)
        if (strcmp(name, kitchen_words[i].of) == 0)
            return sentence_fill(a, &in->said[kitchen_words[i].says][form_of(in, 1)], &one);
    return name;
}

static const char *part_said(arena *a, const language *in, const kitchen_part *of) {
    text t = TEXT_EMPTY;
    amount_add(&t, of->amount, 0.001);
    const char *amount = say_figures(a, in, arena_copy(a, text_span(&t)));
    text_free(&t);
    if (strcmp(of->of, "each") == 0)
        return SAY(a, in, KITCHEN_EACH, amount);
    for (size_t i = 0; i < COUNT(kitchen_words); i++)
        if (strcmp(of->of, kitchen_words[i].of) == 0)
            return sentence_fill(a, &in->said[kitchen_words[i].says][form_of(in, of->amount)],
                                 &amount);
    return SAY(a, in, AMOUNT_OF, amount, of->of); /* a word of the site's own pantry */
}

const char *say_measure(arena *a, const language *in, const kitchen_measure *of) {
    if (in->measures_plainly)
        return of->text;
    if (!of->part_count)
        return SAID(in, KITCHEN_PINCH);
    const char *all = part_said(a, in, &of->parts[0]);
    for (size_t i = 1; i < of->part_count; i++)
        all = arena_format(a, "%s + %s", all, part_said(a, in, &of->parts[i]));
    return all;
}

/* -- amounts of ingredients ------------------------------------------------------------------ */

static said_amount parts_of(arena *a, saying by, const ingredient *what, double grams) {
    kitchen_measure measured;
    bool has = what && kitchen_measure_of(a, what, grams, by.cups, &measured);
    return (said_amount){.weight = say_weight(a, by.in, grams),
                         .measure = has ? say_measure(a, by.in, &measured) : NULL};
}

static const char *in_one(arena *a, const language *in, const said_amount *of) {
    if (!of->measure)
        return of->is_about ? SAY(a, in, ABOUT, of->weight) : of->weight;
    return of->is_about ? SAY(a, in, ABOUT_WITH_MEASURE, of->weight, of->measure)
                        : SAY(a, in, WITH_MEASURE, of->weight, of->measure);
}

const char *say_weighed(arena *a, saying by, const ingredient *what, double grams) {
    said_amount of = parts_of(a, by, what, grams);
    return in_one(a, by.in, &of);
}

/* A range narrower than this, or than this share of its typical, is as good as one figure. */
#define NARROW_G     4
#define NARROW_SHARE 0.15

bool say_is_about(range grams) {
    double width_g = grams.high - grams.low;
    return width_g >= NARROW_G && width_g > NARROW_SHARE * fabs(grams.typical);
}

/* What one vessel holds is said for an amount only where it is nearly that: within a tenth, or two
 * grams of a spoonful; and within the range. */
static bool is_nearly(double grams, range wanted) {
    return fabs(grams - wanted.typical) <= fmax(0.1 * wanted.typical, 2) && grams >= wanted.low &&
           grams <= wanted.high;
}

said_amount say_amount_parts(arena *a, saying by, const ingredient *what, range grams) {
    kitchen_measure rough;
    if (!say_is_about(grams))
        return parts_of(a, by, what, grams.typical);
    bool wide = grams.high - grams.low >= WIDE_G && grams.typical >= WIDE_G;
    double step = wide ? 5 : 1;
    if (what && kitchen_rough_measure_of(a, what, grams.typical, by.cups, &rough) &&
        is_nearly(rough.grams, grams))
        return (said_amount){true, say_weight(a, by.in, number_round(rough.grams, step)),
                             say_measure(a, by.in, &rough)};
    said_amount rounded = parts_of(a, by, what, number_round(grams.typical, step));
    rounded.is_about = true;
    return rounded;
}

const char *say_about(arena *a, saying by, const ingredient *what, range grams) {
    said_amount of = say_amount_parts(a, by, what, grams);
    return in_one(a, by.in, &of);
}

/* -- messages -------------------------------------------------------------------------------- */

static const char *word_of(const language *in, const message_value *of) {
    return of->of == WORD_KEPT ? in->kept[of->which] : in->nutrients[of->which];
}

static const char *number_of(arena *a, const language *in, const message_value *of) {
    const char *number = say_figure(a, in, of->number, of->decimals);
    return of->unit ? arena_format(a, "%s %s", number, of->unit) : number;
}

static const char *inners_of(arena *a, const language *in, const message_value *of) {
    const char **words = ARENA_ARRAY(a, const char *, of->inner_count);
    for (size_t i = 0; i < of->inner_count; i++)
        words[i] = say_message(a, in, of->inners[i]);
    return say_list(a, in, words, of->inner_count);
}

static const char *value_said(arena *a, const language *in, const message_value *of) {
    switch (of->sort) {
    case VALUE_FIGURES:
        return say_figures(a, in, of->text);
    case VALUE_NUMBER:
        return number_of(a, in, of);
    case VALUE_LIST:
        return say_list(a, in, of->names, of->count);
    case VALUE_WORD:
        return word_of(in, of);
    case VALUE_INNER:
        return say_message(a, in, of->inner);
    case VALUE_INNERS:
        return inners_of(a, in, of);
    case VALUE_TEXT:
        break;
    }
    return of->text ? of->text : "";
}

const char *say_message(arena *a, const language *in, const message *of) {
    const char *values[MESSAGE_VALUES_MOST];
    if (!of)
        return NULL;
    for (size_t i = 0; i < MESSAGE_VALUES_MOST; i++)
        values[i] = value_said(a, in, &of->values[i]);
    return say(a, in, of->says, values);
}

/* -- times and dates ------------------------------------------------------------------------- */

const char *say_minutes(arena *a, const language *in, double minutes) {
    double whole = floor(minutes + 0.5), hours = floor(whole / 60);
    const char *rest = say_figure(a, in, whole - hours * 60, 0);
    if (hours < 1)
        return SAY(a, in, MINUTES, rest);
    if (whole == hours * 60)
        return SAY(a, in, HOURS, say_figure(a, in, hours, 0));
    return SAY(a, in, HOURS_AND_MINUTES, say_figure(a, in, hours, 0), rest);
}

const char *say_date(arena *a, const language *in, const char *date) {
    double month, day;
    span s = span_of(date);
    if (s.length != 10 || !number_is((span){s.at + 5, 2}, &month) ||
        !number_is((span){s.at + 8, 2}, &day) || month < 1 || month > LANGUAGE_MONTHS)
        return date;
    return SAY(a, in, DATE, number_copy(a, day, 0), in->months[(size_t)month - 1],
               arena_copy(a, span_first(s, 4)));
}

/* -- words ----------------------------------------------------------------------------------- */

const char *say_yield(arena *a, const language *in, const yield *of) {
    /* A share of one thing is said as such: 0.1 loaf is 1/10 loaf. */
    double parts = of->count > 0 ? 1 / of->count : 0;
    if (parts > 1.5 && fabs(parts - floor(parts + 0.5)) < 1e-6)
        return arena_format(a, "1/%s %s", number_copy(a, parts, 0), of->noun);
    text t = TEXT_EMPTY;
    amount_add(&t, of->count, 0.02);
    const char *count = say_figures(a, in, arena_copy(a, text_span(&t)));
    text_free(&t);
    return arena_format(a, "%s %s", count, of->noun);
}

const char *say_list(arena *a, const language *in, const char *const *words, size_t count) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < count; i++) {
        if (i)
            text_add(&t, i + 1 == count ? SAID(in, LIST_LAST) : SAID(in, LIST_BETWEEN));
        text_add(&t, words[i]);
    }
    const char *said = arena_copy(a, text_span(&t));
    text_free(&t);
    return said;
}
