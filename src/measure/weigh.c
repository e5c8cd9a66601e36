#include "measure/weigh.h"

static const char *const way_words[] = {
    [WEIGHT_UNKNOWN] = "unknown",
    [WEIGHT_NONE] = "no amount",
    [WEIGHT_WRITTEN] = "as written",
    [WEIGHT_AUTHOR] = "the author's own weight",
    [WEIGHT_MEASURED] = "the pantry's household weight",
    [WEIGHT_DENSITY] = "the pantry's cup weight",
};

const char *weight_way_word(weight_way way) {
    return way_words[way];
}

/* Grams of one of a unit, and how they were found. */
typedef struct {
    range grams;
    weight_way way;
} one_weight;

static range times(range r, double factor) {
    return (range){r.low * factor, r.typical * factor, r.high * factor};
}

/* -- counts ------------------------------------------------------------------------------------ */

/* A measure that is filled or counted once, not a volume or a pinch. */
static bool is_count(const household_measure *m) {
    const unit *known = unit_named(m->unit);
    return !known || known->sort == UNIT_COUNT;
}

/* A count of the thing itself. What holds it (scoop, packet, tin) or is cut from it (slice, stick)
 * has to be named: "60 pea protein powder" is no 60 scoops. */
static bool is_piece(const char *called) {
    static const char *const pieces[] = {"each", "piece"};
    const unit *known = unit_named(called);
    bool listed = false;
    for (size_t i = 0; i < COUNT(pieces); i++)
        listed = listed || strcmp(called, pieces[i]) == 0;
    return !known || listed || unit_is_size(known);
}

static const range *only_count(const ingredient *what, const char **called) {
    const range *only = NULL;
    for (size_t i = 0; i < what->measures.count; i++) {
        const household_measure *m = &what->measures.items[i];
        if (!is_count(m))
            continue;
        if (only)
            return NULL;
        only = &m->grams;
        *called = m->unit;
    }
    return only;
}

const range *weigh_one(const ingredient *what, const char **called) {
    static const char *const order[] = {"each", "large", "medium"};
    for (size_t i = 0; i < COUNT(order); i++) {
        range room;
        const range *stated = ingredient_measure(what, span_of(order[i]), &room);
        if (stated) {
            *called = order[i];
            return stated;
        }
    }
    return only_count(what, called);
}

static bool one_counted(const ingredient *what, const unit *in, one_weight *out) {
    range room;
    const char *called;
    const range *stated =
        in ? ingredient_measure(what, span_of(in->name), &room) : weigh_one(what, &called);
    if (!in && stated && !is_piece(called))
        return false;
    bool is_each = in && !stated && strcmp(in->name, "each") == 0;
    if (is_each)
        stated = weigh_one(what, &called);
    if (!stated)
        return false;
    *out = (one_weight){*stated, WEIGHT_MEASURED};
    return true;
}

/* -- volumes ----------------------------------------------------------------------------------- */

/* Pantry weights are of US customary vessels, so a site's cup weighs in proportion. */
static bool one_volume(const ingredient *what, const unit *in, cup_standard cups, one_weight *out) {
    range room;
    const range *stated = ingredient_measure(what, span_of(in->name), &room);
    if (stated) {
        *out = (one_weight){times(*stated, unit_ml(in, cups) / in->size), WEIGHT_MEASURED};
        return true;
    }
    stated = ingredient_measure(what, span_of("cup"), &room);
    if (!stated)
        return false;
    *out = (one_weight){times(*stated, unit_ml(in, cups) / cup_ml(CUPS_US)), WEIGHT_DENSITY};
    return true;
}

static bool one_pinch(const ingredient *what, const unit *in, cup_standard cups, one_weight *out) {
    range room;
    const range *stated = ingredient_measure(what, span_of(in->name), &room);
    if (stated) {
        *out = (one_weight){*stated, WEIGHT_MEASURED};
        return true;
    }
    stated = ingredient_measure(what, span_of("tsp"), &room);
    if (!stated)
        return false;
    range grams = times(*stated, unit_ml(in, cups) / teaspoon_ml(CUPS_US));
    grams.low /= 2;
    grams.high *= 2;
    *out = (one_weight){grams, WEIGHT_MEASURED};
    return true;
}

/* -- a line ------------------------------------------------------------------------------------ */

static bool one_of(const ingredient *what, const unit *in, cup_standard cups, one_weight *out) {
    if (in && in->sort == UNIT_MASS) {
        *out = (one_weight){{in->size, in->size, in->size}, WEIGHT_WRITTEN};
        return true;
    }
    if (!what)
        return false;
    if (!in || in->sort == UNIT_COUNT)
        return one_counted(what, in, out);
    return in->sort == UNIT_PINCH ? one_pinch(what, in, cups, out)
                                  : one_volume(what, in, cups, out);
}

/* The measure to add to the entry so that `in` could be weighed. */
static const char *missing_measure(const unit *in) {
    if (!in)
        return "each";
    if (in->sort == UNIT_COUNT)
        return in->name;
    return in->sort == UNIT_PINCH ? "tsp" : "cup";
}

/* "; it has medium, cup": the measures that could have been written. */
static const char *measures_there(arena *a, const ingredient *what) {
    const char *all = "";
    for (size_t i = 0; i < what->measures.count; i++)
        all = arena_format(a, "%s%s%s", all, i ? ", " : "; it has ", what->measures.items[i].unit);
    return all;
}

static void name_missing(const recipe_line *line, const unit *in, problems *found) {
    const char *missing = missing_measure(in), *name = line->what->name;
    const char *hint = arena_format(found->home,
                                    "add `measures: {%s: \u2026}` to the pantry entry of %s, or "
                                    "write a weight in brackets%s",
                                    missing, name, measures_there(found->home, line->what));
    bool adjective = !in || strcmp(in->name, "each") == 0 || unit_is_size(in);
    problem_add(found, line->at, hint,
                "can't weigh \"%s\": the pantry has no weight for one%s%s%s %s", line->written,
                in ? " " : "", in ? in->name : "", adjective ? "" : " of", name);
}

static void add(weight *total, amount_range of, const one_weight *one) {
    total->grams += amount_middle(of) * one->grams.typical;
    total->low_g += of.low * one->grams.low;
    total->high_g += of.high * one->grams.high;
    if (one->way > total->way) /* the less certain of two measures speaks for the sum */
        total->way = one->way;
}

static const char *source_of(const recipe_line *line, weight_way way) {
    bool measured = way == WEIGHT_MEASURED || way == WEIGHT_DENSITY;
    const char *stated = measured ? line->what->measures_source.text : NULL;
    return stated ? stated : weight_way_word(way);
}

static bool weigh_amount(const recipe_line *line, further_measure of, cup_standard cups,
                         weight *total, problems *found) {
    one_weight one;
    if (one_of(line->what, of.in, cups, &one)) {
        add(total, of.quantity, &one);
        return true;
    }
    if (line->what)
        name_missing(line, of.in, found);
    return false;
}

static bool weigh_amounts(const recipe_line *line, cup_standard cups, weight *total,
                          problems *found) {
    bool good = weigh_amount(line, (further_measure){line->quantity, line->in}, cups, total, found);
    for (size_t i = 0; good && i < line->more_count; i++)
        good = weigh_amount(line, line->more[i], cups, total, found);
    return good;
}

static void warn_of_no_amount(const recipe_line *line, problems *found) {
    if (!line->to_taste && line->what)
        problem_note(found, "not-weighed", PROBLEM_WARNING, line->at,
                     "write an amount, or \"to taste\"",
                     "\"%s\" has no amount and counts for nothing", line->written);
}

bool weigh_line(const recipe_line *line, cup_standard cups, weight *out, problems *found) {
    *out = (weight){.way = WEIGHT_UNKNOWN, .source = weight_way_word(WEIGHT_UNKNOWN)};
    weight total = {.way = WEIGHT_NONE};
    if (line->has_own_weight) {
        amount_range own = line->own_weight_g;
        total = (weight){WEIGHT_AUTHOR, amount_middle(own), own.low, own.high, NULL};
    } else if (line->has_amount) {
        if (!weigh_amounts(line, cups, &total, found))
            return false;
    } else {
        warn_of_no_amount(line, found);
    }
    total.source = source_of(line, total.way);
    *out = total;
    return true;
}
