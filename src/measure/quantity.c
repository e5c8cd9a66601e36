#include "measure/quantity.h"

#include "base/words.h"

/* -- the amount -------------------------------------------------------------------------------- */

static bool complain_of_amount(reading *r, const char *hint) {
    span rest = r->rest, word = span_next_word(&rest);
    problem_add(r->found, reading_place(r, word), hint, "can't read the amount \"%.*s\"",
                SPAN(word));
    return false;
}

/* "1,000": a thousand to some, one to others. */
static bool is_ambiguous(span amount) {
    size_t comma = span_find(amount, ",");
    return comma > 0 && comma <= 3 && comma + 4 == amount.length && amount.at[0] != '0';
}

/* The amount at the front, when there is one. False: there is one that can't be read. */
static bool read_amount(reading *r) {
    size_t about = amount_about(r->rest);
    span figure = span_from(r->rest, about);
    amount_range got;
    size_t took = amount_read(figure, &got);
    bool percent = took < figure.length && figure.at[took] == '%';
    if (took && is_ambiguous(span_first(figure, took)))
        return complain_of_amount(r, "write 1000 or 1.0: the comma can mean either");
    if (took && !percent && got.low <= 0)
        return complain_of_amount(r, "leave the line out, or write how much of it there is");
    if (!took && amount_is_meant(figure))
        return complain_of_amount(r, "write 1/2, 0.5 or 0,5; a range as 2-3; at most 100000");
    if (!took || percent)
        return true;
    r->line.has_amount = true;
    r->line.quantity = got;
    reading_skip(r, about + took);
    return true;
}

/* -- the unit ---------------------------------------------------------------------------------- */

/* Words that may stand before a unit. `full`: more than level, so that the weight is in doubt. */
static const struct {
    const char *word;
    bool full;
} fillings[] = {{"level", false},   {"heaped", true},  {"heaping", true},   {"rounded", true},
                {"packed", false},  {"scant", false},  {"generous", false}, {"lightly", false},
                {"firmly", false},  {"good", false},   {"big", false},      {"tightly", false},
                {"loosely", false}, {"sifted", false}, {"well", false}};

static bool is_filling(arena *a, span word, bool *full) {
    span folded = words_fold(a, word);
    for (size_t i = 0; i < COUNT(fillings); i++)
        if (span_is(folded, fillings[i].word)) {
            *full = fillings[i].full;
            return true;
        }
    return false;
}

/* "heaped tbsp": the fillings ahead of a unit go to the preparation. Without a unit they stay. */
static void read_fillings(reading *r) {
    span rest = r->rest, words = r->rest;
    size_t used;
    bool full = false, any_full = false;
    for (;;) {
        span next = rest;
        span word = span_next_word(&next);
        if (!is_filling(r->a, word, &full))
            break;
        any_full = any_full || full;
        rest = next;
    }
    words = span_trim(span_first(words, words.length - rest.length));
    rest = span_trim(rest);
    if (words.length == 0 || !unit_read(rest, &used))
        return;
    if (any_full)
        problem_note(r->found, "heaped", PROBLEM_WARNING, reading_place(r, words),
                     "write level spoons, or a weight in brackets",
                     "\"%.*s\" is no measure: it is weighed as level", SPAN(words));
    reading_prepare(r, words);
    reading_skip(r, (size_t)(rest.at - r->rest.at));
}

static void set_unit(reading *r, const unit *in, size_t used) {
    r->line.in = in;
    r->line.unit_written = arena_copy(r->a, span_first(r->rest, used));
    r->unit_start = (size_t)(r->rest.at - r->plain.at);
    reading_skip(r, used);
}

static void skip_of(reading *r) {
    span rest = r->rest, word = span_next_word(&rest);
    if (span_is(words_fold(r->a, word), "of"))
        reading_skip(r, word.length);
}

/* "small handful": a size before another unit says how it is filled; the other one counts. */
static void read_sized_unit(reading *r) {
    size_t used;
    const unit *in = unit_is_size(r->line.in) ? unit_read(r->rest, &used) : NULL;
    if (!in)
        return;
    reading_prepare(r, span_of(r->line.unit_written));
    set_unit(r, in, used);
}

/* "tsp cinnamon": the number was forgotten, or one is meant. One letter ("l milk") is too little to
 * tell a unit by, and so is a weight: nobody means one gram. */
static bool may_mean_one(reading *r, const unit *in, size_t used) {
    bool measure = in->sort == UNIT_VOLUME || strcmp(in->name, "scoop") == 0;
    if (!measure || used < 2)
        return false;
    problem_note(r->found, "not-weighed", PROBLEM_WARNING, reading_place(r, r->rest),
                 arena_format(r->a, "write how many: 1 %.*s", SPAN(span_first(r->rest, used))),
                 "\"%.*s\" has no number before it: it is weighed as one",
                 SPAN(span_first(r->rest, used)));
    return true;
}

/* A unit with no amount before it is one: "pinch of salt", "handful of oats". */
static bool stands_for_one(reading *r, const unit *in, size_t used) {
    span rest = span_from(r->rest, used);
    span word = span_next_word(&rest);
    if (span_is(words_fold(r->a, word), "of") || (in->sort == UNIT_PINCH && word.length))
        return true;
    return word.length && may_mean_one(r, in, used);
}

static void read_unit(reading *r) {
    size_t used;
    if (r->line.has_amount)
        read_fillings(r);
    const unit *in = unit_read(r->rest, &used);
    if (!in || (!r->line.has_amount && !stands_for_one(r, in, used))) {
        if (r->line.has_amount)
            skip_of(r);
        return;
    }
    if (!r->line.has_amount) {
        r->line.has_amount = true;
        r->line.quantity = (amount_range){1, 1};
    }
    set_unit(r, in, used);
    read_sized_unit(r);
    skip_of(r);
}

/* -- a second measure -------------------------------------------------------------------------- */

typedef enum { JOINT_NONE, JOINT_PLUS, JOINT_RANGE, JOINT_SLASH } joint;

static const struct {
    const char *word;
    joint means;
} joints[] = {{"+", JOINT_PLUS},  {"plus ", JOINT_PLUS},   {"and ", JOINT_PLUS},
              {"& ", JOINT_PLUS}, {"to ", JOINT_RANGE},    {"or ", JOINT_RANGE},
              {"-", JOINT_RANGE}, {"\u2013", JOINT_RANGE}, {"/", JOINT_SLASH},
              {"=", JOINT_SLASH}};

static joint joint_at(span s, size_t *length) {
    for (size_t i = 0; i < COUNT(joints); i++)
        if (span_begins(s, joints[i].word)) {
            *length = strlen(joints[i].word);
            return joints[i].means;
        }
    return JOINT_NONE;
}

/* AMOUNT UNIT at the front of `s`; the bytes it takes, 0: none. */
static size_t measure_read(span s, amount_range *amount, const unit **in) {
    size_t blank = 0, used = 0;
    while (blank < s.length && s.at[blank] == ' ')
        blank++;
    size_t took = amount_read(span_from(s, blank), amount);
    if (!took)
        return 0;
    took += blank;
    while (took < s.length && (s.at[took] == ' ' || s.at[took] == '-'))
        took++;
    *in = unit_read(span_from(s, took), &used);
    return *in ? took + used : 0;
}

static bool is_scaled(const unit *in) {
    return in->sort == UNIT_MASS || in->sort == UNIT_VOLUME;
}

/* "2 x 400 g": the count goes into the measure. "2 x large eggs" are two large ones, "2 x-large"
 * two very large. */
static void read_times(reading *r) {
    static const char *const signs[] = {"x", "X", "\u00d7"};
    amount_range each;
    const unit *in;
    for (size_t i = 0; i < COUNT(signs); i++) {
        if (!r->line.has_amount || !span_begins(r->rest, signs[i]))
            continue;
        span behind = span_from(r->rest, strlen(signs[i]));
        bool measured = measure_read(behind, &each, &in) && is_scaled(in);
        if (!measured && !span_begins(behind, " "))
            return;
        reading_skip(r, strlen(signs[i]));
        if (!measured)
            return;
        r->line.quantity.low *= each.low;
        r->line.quantity.high *= each.high;
        reading_skip(r, amount_read(r->rest, &each));
        return;
    }
}

/* What is bought in them is weighed already: "400 g tin chickpeas". */
static void read_container(reading *r) {
    static const char *const containers[] = {"can",    "tin",    "jar",   "packet", "sachet",
                                             "pouch",  "bag",    "box",   "tub",    "pot",
                                             "carton", "bottle", "block", "bar",    "envelope"};
    size_t used;
    const unit *in = r->line.in && is_scaled(r->line.in) ? unit_read(r->rest, &used) : NULL;
    if (!in || span_trim(span_from(r->rest, used)).length == 0 ||
        words_index(span_of(in->name), containers, COUNT(containers)) == COUNT(containers))
        return;
    reading_prepare(r, span_first(r->rest, used));
    reading_skip(r, used);
    skip_of(r);
}

/* Puts a second measure where it belongs; false when it does not fit the first. */
static bool join(reading *r, joint by, amount_range amount, const unit *in) {
    recipe_line *line = &r->line;
    if (by == JOINT_PLUS) {
        if (!is_scaled(in) || !is_scaled(line->in) || line->more_count == FURTHER_MOST)
            return false;
        line->more[line->more_count++] = (further_measure){amount, in};
        return true;
    }
    if (by == JOINT_RANGE && in == line->in && amount.high >= line->quantity.low) {
        line->quantity.high = amount.high;
        return true;
    }
    if (by != JOINT_SLASH)
        return false;
    if (in->sort == UNIT_MASS && line->in->sort != UNIT_MASS && !r->aside.has_weight) {
        r->aside.has_weight = true;
        r->aside.weight_g = (amount_range){amount.low * in->size, amount.high * in->size};
        r->aside.weight_at = r->plain.length; /* behind the unit: the weight of all */
    }
    return true;
}

/* "1 cup + 2 tbsp", "2 tbsp to 3 tbsp", "1/2 cup / 46 g" */
static bool read_second(reading *r) {
    size_t length;
    amount_range amount;
    const unit *in;
    joint by = r->line.in ? joint_at(r->rest, &length) : JOINT_NONE;
    size_t took = by ? measure_read(span_from(r->rest, length), &amount, &in) : 0;
    if (!took || !join(r, by, amount, in))
        return false;
    reading_skip(r, length + took);
    skip_of(r);
    return true;
}

bool quantity_read(reading *r) {
    if (!read_amount(r))
        return false;
    read_times(r);
    read_unit(r);
    while (read_second(r))
        ;
    read_container(r);
    return true;
}

span quantity_stray(span words) {
    span rest = words;
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest)) {
        amount_range amount;
        const unit *in;
        size_t joined = word.at[0] == '+' || word.at[0] == '/';
        span from = span_from(words, (size_t)(word.at - words.at) + joined);
        size_t took = amount_is_meant(span_trim(from)) ? measure_read(from, &amount, &in) : 0;
        if (took)
            return span_first(from, took);
    }
    return (span){0};
}
