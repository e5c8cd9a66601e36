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
static uint64_t scaled_and_rounded(double magnitude, int decimals) {
    double scaled = magnitude * powers_of_ten[decimals];
    return (uint64_t)(int64_t)(scaled + 0.5 + scaled * 1e-12);
}

enum { NUMBER_LONGEST = 1 + DIGITS_MOST + 1 + MOST_DECIMALS };

/* The number in `room`, written from its end; without the zeros at the end unless they are
 * `kept`. */
static span number_written(char room[NUMBER_LONGEST], double value, int decimals, bool kept) {
    if (!isfinite(value) || fabs(value) > 1e12)
        return span_of("?");
    if (decimals > MOST_DECIMALS)
        decimals = MOST_DECIMALS;
    uint64_t scaled = scaled_and_rounded(fabs(value), decimals), rest = scaled;
    char *end = room + NUMBER_LONGEST, *at = end;
    for (; decimals > 0; decimals--, rest /= 10)
        if (kept || at != end || rest % 10)
            *--at = (char)('0' + rest % 10);
    if (at != end)
        *--at = '.';
    do
        *--at = (char)('0' + rest % 10);
    while ((rest /= 10) > 0);
    if (value < 0 && scaled)
        *--at = '-';
    return (span){at, (size_t)(end - at)};
}

void number_add_fixed(text *t, double value, int decimals) {
    char room[NUMBER_LONGEST];
    text_add_span(t, number_written(room, value, decimals, true));
}

void number_add(text *t, double value, int decimals) {
    char room[NUMBER_LONGEST];
    text_add_span(t, number_written(room, value, decimals, false));
}

char *number_copy(arena *a, double value, int decimals) {
    char room[NUMBER_LONGEST];
    return arena_copy(a, number_written(room, value, decimals, false));
}

double number_round(double value, double step) {
    double steps = fabs(value) / step;
    double rounded = floor(steps + 0.5 + steps * 1e-12) * step;
    return value < 0 ? -rounded : rounded;
}
