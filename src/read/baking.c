#include "read/baking.h"

#include "base/number.h"
#include "base/words.h"

/* -- the oven --------------------------------------------------------------------------------- */

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

/* `sized`: it is told by its sides in cm. */
static const struct {
    const char *word;
    pan_shape shape;
    bool sized;
} shapes[] = {
    {"round", PAN_ROUND, true},
    {"square", PAN_SQUARE, true},
    {"loaf", PAN_LOAF, true},
    {"tray", PAN_RECTANGLE, true},
    {"rectangle", PAN_RECTANGLE, true},
    {"griddle", PAN_GRIDDLE, false},
    {"waffle iron", PAN_GRIDDLE, false},
    {"muffin tin", PAN_MUFFIN, false},
    /* in German */
    {"rund", PAN_ROUND, true},
    {"quadratisch", PAN_SQUARE, true},
    {"Kastenform", PAN_LOAF, true},
    {"Blech", PAN_RECTANGLE, true},
    {"rechteckig", PAN_RECTANGLE, true},
    {"Pfanne", PAN_GRIDDLE, false},
    {"Waffeleisen", PAN_GRIDDLE, false},
    {"Muffinblech", PAN_MUFFIN, false},
};
enum { SIZES_MOST = 3 };

/* 1 inch = 2.54 cm: NIST SP 811, appendix B.8. The longer spelling before the shorter. */
static const struct {
    const char *name;
    double cm;
} lengths[] = {{"cm", 1},        {"mm", 0.1},  {"inches", 2.54},   {"inch", 2.54},
               {"in.", 2.54},    {"in", 2.54}, {"\"", 2.54},       {"\u2033", 2.54},
               {"\u201d", 2.54}, {"''", 2.54}, {"centimetres", 1}, {"centimeters", 1}};

/* What may stand behind the shape, and says nothing more of it. */
static const char *const vessels[] = {"pan", "tin", "dish", "mould", "baking tin", "baking dish"};

static bool fail_pan(located written, const char *message, problems *found) {
    problem_add(found, written.at,
                "write one of: round 20 cm; square 20 cm; loaf 23 x 13 cm; tray 30 x 20 cm; "
                "griddle; waffle iron; muffin tin 12; inches as 8 inch square",
                "%s", message);
    return false;
}

/* The sign between two sizes: x, X, by or the multiplication sign. */
static bool take_times(span *rest) {
    static const char *const signs[] = {"x", "X", "\u00d7", "by "};
    *rest = span_trim(*rest);
    for (size_t i = 0; i < COUNT(signs); i++)
        if (span_begins(*rest, signs[i])) {
            *rest = span_trim(span_from(*rest, strlen(signs[i])));
            return true;
        }
    return false;
}

/* " cm", "-inch": sets `*cm` where a unit stands, and leaves it where none does; false when it is
 * another one than that of the size before. */
static bool take_unit(span *rest, double *cm) {
    span word = span_trim(*rest);
    if (span_begins(word, "-"))
        word = span_trim(span_from(word, 1));
    for (size_t i = 0; i < COUNT(lengths); i++) {
        if (!span_begins(word, lengths[i].name))
            continue;
        if (*cm > 0 && *cm != lengths[i].cm)
            return false;
        *cm = lengths[i].cm;
        *rest = span_from(word, strlen(lengths[i].name));
        break;
    }
    return true;
}

/* Reads "23 x 13 x 7 cm" off the front of `*rest`, into cm; how many sizes there are, 0 for a
 * broken list. */
static size_t take_sizes(span *rest, double sizes_cm[SIZES_MOST]) {
    size_t count = 0;
    double cm = 0;
    do {
        size_t used = count < SIZES_MOST ? number_read(*rest, &sizes_cm[count]) : 0;
        if (used == 0 || sizes_cm[count] <= 0)
            return 0;
        *rest = span_from(*rest, used);
        if (!take_unit(rest, &cm))
            return 0;
        count++;
    } while (take_times(rest));
    for (size_t i = 0; i < count; i++)
        sizes_cm[i] *= cm;
    return cm > 0 ? count : 0;
}

static bool set_sizes(located written, const double sizes_cm[SIZES_MOST], size_t count, pan *out,
                      problems *found) {
    size_t sides = out->shape == PAN_LOAF || out->shape == PAN_RECTANGLE ? 2 : 1;
    /* A square may be given by both its sides. */
    bool both = out->shape == PAN_SQUARE && count >= 2 && sizes_cm[0] == sizes_cm[1];
    sides += both;
    if (count < sides || count > sides + 1)
        return fail_pan(written, "a pan of this shape has another number of sizes", found);
    out->length_cm = sizes_cm[0];
    out->width_cm = sides == 2 ? sizes_cm[1] : sizes_cm[0];
    out->depth_cm = count > sides ? sizes_cm[sides] : 0;
    return true;
}

static bool read_sizes(located written, span rest, pan *out, problems *found) {
    double sizes_cm[SIZES_MOST] = {0};
    size_t count = take_sizes(&rest, sizes_cm);
    if (count == 0 || span_trim(rest).length)
        return fail_pan(written, "the size of the pan can't be read", found);
    return set_sizes(written, sizes_cm, count, out, found);
}

static bool read_wells(located written, span rest, pan *out, problems *found) {
    double wells;
    if (!number_is(rest, &wells) || wells < 1 || wells > 96)
        return fail_pan(written, "a muffin tin has a number of wells", found);
    out->wells = wells;
    return true;
}

/* The shape at the front of `words`, and the bytes of its word; the number of shapes: none. */
static size_t shape_at(span words, size_t *used) {
    size_t i = 0;
    while (i < COUNT(shapes) && !span_begins(words, shapes[i].word))
        i++;
    *used = i < COUNT(shapes) ? strlen(shapes[i].word) : 0;
    return i;
}

static bool is_vessel(span words) {
    return words.length == 0 || words_index(words, vessels, COUNT(vessels)) < COUNT(vessels);
}

/* "8 inch square", "9 x 5 in loaf tin", "9 x 13 in pan" */
static bool read_sizes_first(located written, span rest, pan *out, problems *found) {
    double sizes_cm[SIZES_MOST] = {0};
    size_t count = take_sizes(&rest, sizes_cm), used;
    if (count == 0)
        return fail_pan(written, "the size of the pan can't be read", found);
    rest = span_trim(rest);
    size_t i = shape_at(rest, &used);
    bool sized = i < COUNT(shapes) && shapes[i].sized;
    if (!is_vessel(span_trim(span_from(rest, used))) || (used ? !sized : count < 2))
        return fail_pan(written, "this shape of pan is not known", found);
    out->shape = used ? shapes[i].shape : PAN_RECTANGLE;
    return set_sizes(written, sizes_cm, count, out, found);
}

bool pan_read(located written, pan *out, problems *found) {
    span words = span_trim(written.bytes);
    size_t used, i = shape_at(words, &used);
    out->text = words.at;
    if (words.length && words.at[0] >= '0' && words.at[0] <= '9')
        return read_sizes_first(written, words, out, found);
    if (i == COUNT(shapes))
        return fail_pan(written, "this shape of pan is not known", found);
    span rest = span_trim(span_from(words, used));
    out->shape = shapes[i].shape;
    if (out->shape == PAN_MUFFIN)
        return read_wells(written, rest, out, found);
    if (out->shape == PAN_GRIDDLE && rest.length == 0)
        return true;
    return read_sizes(written, rest, out, found);
}
