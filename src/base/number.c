#include "base/number.h"

#include "base/format.h"

#include <math.h>
#include <stdint.h>

enum { MOST_DIGITS = 15, MOST_DECIMALS = 6 };

static const double powers_of_ten[] = {1,   1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                       1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

size_t number_read(span s, double *out) {
    size_t i = 0, digits = 0, decimals = 0;
    bool negative = false, after_mark = false;
    uint64_t value = 0;
    if (i < s.length && (s.at[i] == '-' || s.at[i] == '+'))
        negative = s.at[i++] == '-';
    for (; i < s.length && digits <= MOST_DIGITS; i++) {
        bool mark = (s.at[i] == '.' || s.at[i] == ',') && !after_mark && i + 1 < s.length &&
                    is_digit(s.at[i + 1]);
        if (mark) {
            after_mark = true;
            continue;
        }
        if (!is_digit(s.at[i]))
            break;
        value = value * 10 + (uint64_t)(s.at[i] - '0');
        digits++;
        decimals += after_mark;
    }
    if (digits == 0 || digits > MOST_DIGITS)
        return 0;
    double magnitude = (double)value / powers_of_ten[decimals];
    *out = negative ? -magnitude : magnitude;
    return i;
}

bool number_is(span s, double *out) {
    double value;
    if (s.length == 0 || number_read(s, &value) != s.length)
        return false;
    *out = value;
    return true;
}

/* Half away from zero, with a nudge so that 2.675, stored a hair below itself, still rounds as
 * the decimal a reader sees. */
static double scaled_and_rounded(double magnitude, int decimals) {
    double scaled = magnitude * powers_of_ten[decimals];
    return floor(scaled + 0.5 + scaled * 1e-12);
}

void number_add_fixed(text *t, double value, int decimals) {
    if (!isfinite(value) || fabs(value) > 1e12) {
        text_add(t, "?");
        return;
    }
    if (decimals > MOST_DECIMALS)
        decimals = MOST_DECIMALS;
    uint64_t scaled = (uint64_t)scaled_and_rounded(fabs(value), decimals);
    uint64_t unit = (uint64_t)powers_of_ten[decimals];
    char digits[1 + DIGITS_MOST + 1 + MOST_DECIMALS];
    size_t length = 0;
    if (value < 0 && scaled)
        digits[length++] = '-';
    length += format_digits(digits + length, scaled / unit);
    if (decimals)
        digits[length++] = '.';
    for (uint64_t place = unit / 10; place; place /= 10)
        digits[length++] = (char)('0' + scaled / place % 10);
    text_add_span(t, (span){digits, length});
}

void number_add(text *t, double value, int decimals) {
    size_t start = t->length;
    number_add_fixed(t, value, decimals);
    if (span_find(span_from(text_span(t), start), ".") == t->length - start)
        return;
    size_t end = t->length;
    while (t->bytes[end - 1] == '0')
        end--;
    text_cut(t, t->bytes[end - 1] == '.' ? end - 1 : end);
}

char *number_copy(arena *a, double value, int decimals) {
    text t = TEXT_EMPTY;
    number_add(&t, value, decimals);
    char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}

double number_round(double value, double step) {
    double steps = fabs(value) / step;
    double rounded = floor(steps + 0.5 + steps * 1e-12) * step;
    return value < 0 ? -rounded : rounded;
}
