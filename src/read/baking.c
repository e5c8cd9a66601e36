#include "read/baking.h"

#include "base/number.h"
#include "base/words.h"

/* -- the oven -------------------------------------------------------------------------------------
 */

static bool begins_degree(span *rest) {
    static const char *const signs[] = {"\u00b0", "\u00ba", "degrees", "degree", "deg"};
    *rest = span_trim(*rest);
    for (size_t i = 0; i < COUNT(signs); i++)
        if (span_begins(*rest, signs[i])) {
            *rest = span_trim(span_from(*rest, strlen(signs[i])));
            return true;
        }
    return false;
}

bool oven_read(located written, double *celsius, problems *found) {
    double degrees;
    span rest = span_trim(written.bytes);
    size_t used = number_read(rest, &degrees);
    rest = span_from(rest, used);
    (void)begins_degree(&rest);
    bool fahrenheit = span_is(rest, "F") || span_is(rest, "f");
    if (used == 0 || !(fahrenheit || span_is(rest, "C") || span_is(rest, "c"))) {
        problem_add(found, written.at,
                    "for example: oven: 180 C, or oven: 350 F; leave it out where there is no oven",
                    "\"oven\" must be a temperature with C or F");
        return false;
    }
    degrees = fahrenheit ? (degrees - 32) * 5 / 9 : degrees;
    if (degrees < 40 || degrees > 320) {
        problem_add(found, written.at, "is it C or F?", "no oven bakes at this temperature");
        return false;
    }
    *celsius = degrees;
    return true;
}

/* -- the pan
 * ----------------------------------------------------------------------------------------- */

/* `sides`: how many of its sizes lie flat; a further one is its depth. */
static const struct {
    const char *word;
    pan_shape shape;
    size_t sides;
} shapes[] = {
    {"round", PAN_ROUND, 1},         {"square", PAN_SQUARE, 1},       {"loaf", PAN_LOAF, 2},
    {"tray", PAN_RECTANGLE, 2},      {"rectangle", PAN_RECTANGLE, 2}, {"griddle", PAN_GRIDDLE, 0},
    {"waffle iron", PAN_GRIDDLE, 0}, {"muffin tin", PAN_MUFFIN, 0},
};
enum { SIZES_MOST = 3 };

/* 1 inch = 2.54 cm: NIST SP 811, appendix B.8. */
static const struct {
    const char *name;
    double cm;
} lengths[] = {{"cm", 1}, {"mm", 0.1}, {"in", 2.54}, {"inch", 2.54}, {"inches", 2.54}};

static bool fail_pan(located written, const char *message, problems *found) {
    problem_add(found, written.at,
                "write one of: round 20 cm; square 20 cm; loaf 23 x 13 cm; tray 30 x 20 cm; "
                "griddle; waffle iron; muffin tin 12",
                "%s", message);
    return false;
}

/* The sign between two sizes: x, X or the multiplication sign. */
static bool take_times(span *rest) {
    static const char *const signs[] = {"x", "X", "\u00d7"};
    *rest = span_trim(*rest);
    for (size_t i = 0; i < COUNT(signs); i++)
        if (span_begins(*rest, signs[i])) {
            *rest = span_trim(span_from(*rest, strlen(signs[i])));
            return true;
        }
    return false;
}

/* Reads "23 x 13 x 7" off the front of `*rest`; how many sizes there are, 0 for a broken list. */
static size_t take_sizes(span *rest, double sizes[SIZES_MOST]) {
    size_t count = 0;
    do {
        size_t used = count < SIZES_MOST ? number_read(*rest, &sizes[count]) : 0;
        if (used == 0 || sizes[count] <= 0)
            return 0;
        *rest = span_from(*rest, used);
        count++;
    } while (take_times(rest));
    return count;
}

static bool unit_length(span word, double *cm) {
    for (size_t i = 0; i < COUNT(lengths); i++)
        if (span_is(word, lengths[i].name)) {
            *cm = lengths[i].cm;
            return true;
        }
    return false;
}

static bool read_sizes(located written, span rest, size_t sides, pan *out, problems *found) {
    double sizes[SIZES_MOST] = {0}, cm;
    size_t count = take_sizes(&rest, sizes);
    if (count == 0 || !unit_length(span_trim(rest), &cm))
        return fail_pan(written, "the size of the pan can't be read", found);
    /* A square may be given by both its sides. */
    bool both = out->shape == PAN_SQUARE && count >= 2 && sizes[0] == sizes[1];
    sides += both;
    if (count < sides || count > sides + 1)
        return fail_pan(written, "a pan of this shape has another number of sizes", found);
    out->length_cm = sizes[0] * cm;
    out->width_cm = (sides == 2 ? sizes[1] : sizes[0]) * cm;
    out->depth_cm = count > sides ? sizes[sides] * cm : 0;
    return true;
}

static bool read_wells(located written, span rest, pan *out, problems *found) {
    double wells;
    if (!number_is(rest, &wells) || wells < 1 || wells > 96)
        return fail_pan(written, "a muffin tin has a number of wells", found);
    out->wells = wells;
    return true;
}

bool pan_read(located written, pan *out, problems *found) {
    span words = span_trim(written.bytes);
    out->text = words.at;
    for (size_t i = 0; i < COUNT(shapes); i++) {
        if (!span_begins(words, shapes[i].word))
            continue;
        span rest = span_trim(span_from(words, strlen(shapes[i].word)));
        out->shape = shapes[i].shape;
        if (out->shape == PAN_MUFFIN)
            return read_wells(written, rest, out, found);
        if (out->shape == PAN_GRIDDLE && rest.length == 0)
            return true;
        return read_sizes(written, rest, shapes[i].sides, out, found);
    }
    return fail_pan(written, "this shape of pan is not known", found);
}
