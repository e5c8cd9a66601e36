#include "measure/line.h"

#include "base/words.h"
#include "measure/brackets.h"
#include "measure/naming.h"

enum { LINE_BYTES_MOST = 1000 };

/* The reading of one line. `rest` is cut from `plain`, whose bytes stand where those of the
 * written line stand, so that every part of it knows its column. */
typedef struct {
    arena *a;
    problems *found;
    span plain; /* the line without brackets and odd blanks */
    span rest;  /* what is not read yet */
    place at;   /* of the first byte of `plain` */
    brackets aside;
    recipe_line line;
    size_t amount_end, unit_start; /* bytes; where a bracket stands decides what it is of */
    text preparation;
} reading;

static place here(const reading *r, span part) {
    return place_inside(r->at, r->plain.at, (size_t)(part.at - r->plain.at));
}

static void skip(reading *r, size_t bytes) {
    r->rest = span_from(r->rest, bytes);
    while (r->rest.length && r->rest.at[0] == ' ')
        r->rest = span_from(r->rest, 1);
}

static void prepare(reading *r, span words) {
    words = span_trim(words);
    if (words.length == 0)
        return;
    if (r->preparation.length)
        text_add(&r->preparation, ", ");
    text_add_span(&r->preparation, words);
}

/* -- taking up a line -----------------------------------------------------------------------------
 */

/* Blanks that word processors set: no-break, thin, narrow no-break. */
static const char *const odd_blanks[] = {"\t", "\n", "\r", "\u00a0", "\u2009", "\u202f"};

static void plain_blanks(char *line) {
    for (size_t i = 0; i < COUNT(odd_blanks); i++)
        for (char *at = line; (at = strstr(at, odd_blanks[i])) != NULL;)
            memset(at, ' ', strlen(odd_blanks[i]));
}

/* Joins what this part of the line has in brackets to what an earlier part had. */
static void take_aside(reading *r, brackets aside) {
    if (aside.note)
        prepare(r, span_of(aside.note));
    if (r->plain.at)
        aside.weight_at = r->plain.length; /* behind the unit, which the earlier part had */
    aside.optional = aside.optional || r->aside.optional;
    if (r->aside.has_weight)
        r->aside.optional = aside.optional;
    else
        r->aside = aside;
}

/* Begins to read `written`: brackets taken out, blanks made plain. What was read of another part
 * of the line (its amount) is kept. */
static bool take_up(reading *r, located written) {
    if (written.bytes.length > LINE_BYTES_MOST ||
        (written.bytes.length && memchr(written.bytes.at, '\0', written.bytes.length))) {
        problem_add(r->found, written.at, "an ingredient line is an amount, a unit and a name",
                    "this is no ingredient line");
        return false;
    }
    char *plain = arena_copy(r->a, written.bytes);
    brackets aside;
    if (!brackets_take(r->a, plain, written.bytes.length, written.at, &aside, r->found))
        return false;
    plain_blanks(plain);
    take_aside(r, aside);
    r->at = written.at;
    r->plain = r->rest = (span){plain, written.bytes.length};
    skip(r, 0);
    return true;
}

/* -- the amount
 * ------------------------------------------------------------------------------------- */

static bool complain_of_amount(reading *r, const char *hint) {
    span rest = r->rest, word = span_next_word(&rest);
    problem_add(r->found, here(r, word), hint, "can't read the amount \"%.*s\"", SPAN(word));
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
    skip(r, about + took);
    r->amount_end = (size_t)(r->rest.at - r->plain.at);
    return true;
}

/* -- the unit
 * --------------------------------------------------------------------------------------- */

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
        problem_warn(r->found, here(r, words), "write level spoons, or a weight in brackets",
                     "\"%.*s\" is no measure: it is weighed as level", SPAN(words));
    prepare(r, words);
    skip(r, (size_t)(rest.at - r->rest.at));
}

static void set_unit(reading *r, const unit *in, size_t used) {
    r->line.in = in;
    r->line.unit_written = arena_copy(r->a, span_first(r->rest, used));
    r->unit_start = (size_t)(r->rest.at - r->plain.at);
    skip(r, used);
}

static void skip_of(reading *r) {
    span rest = r->rest, word = span_next_word(&rest);
    if (span_is(words_fold(r->a, word), "of"))
        skip(r, word.length);
}

/* "small handful": a size before another unit says how it is filled; the other one counts. */
static void read_sized_unit(reading *r) {
    size_t used;
    const unit *in = unit_is_size(r->line.in) ? unit_read(r->rest, &used) : NULL;
    if (!in)
        return;
    prepare(r, span_of(r->line.unit_written));
    set_unit(r, in, used);
}

/* A unit with no amount before it is one: "pinch of salt", "handful of oats". */
static bool stands_for_one(reading *r, const unit *in, size_t used) {
    span rest = span_from(r->rest, used);
    span word = span_next_word(&rest);
    return span_is(words_fold(r->a, word), "of") || (in->sort == UNIT_PINCH && word.length);
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

/* -- a second measure
 * ------------------------------------------------------------------------------- */

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
    skip(r, length + took);
    skip_of(r);
    return true;
}

/* AMOUNT UNIT and what is joined to it. False: an amount that can't be read. */
static bool read_measure(reading *r) {
    if (!read_amount(r))
        return false;
    read_unit(r);
    while (read_second(r))
        ;
    return true;
}

/* -- the name and what follows
 * ---------------------------------------------------------------------- */

/* The first AMOUNT UNIT among `words`, or empty: a figure must begin a word. */
static span stray_measure(span words) {
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

/* Two amounts in a name, or one behind it: neither may be dropped in silence. */
static bool has_one_amount(reading *r, span name) {
    span stray = span_trim(stray_measure(name));
    if (stray.length == 0)
        return true;
    problem_add(r->found, here(r, stray),
                r->line.has_amount ? "join two measures with +, or give each a line of its own"
                                   : "write the amount first: 60 g oat flour",
                "can't tell what \"%.*s\" is of", SPAN(stray));
    return false;
}

/* Up to the first comma that is no decimal mark, or semicolon. */
static span before_comma(span s) {
    for (size_t i = 0; i < s.length; i++) {
        bool mark = i > 0 && i + 1 < s.length && s.at[i - 1] >= '0' && s.at[i - 1] <= '9' &&
                    s.at[i + 1] >= '0' && s.at[i + 1] <= '9';
        if (s.at[i] == ';' || (s.at[i] == ',' && !mark))
            return span_first(s, i);
    }
    return s;
}

static void warn_of_extra(reading *r, span part) {
    span stray = span_trim(stray_measure(part));
    span folded = words_fold(r->a, part);
    if (stray.length && (span_begins(folded, "plus ") || span_begins(folded, "+")))
        problem_warn(r->found, here(r, stray), "give it a line of its own",
                     "\"%.*s\" is not weighed", SPAN(stray));
}

/* The parts between commas behind the name. */
static void read_preparation(reading *r) {
    while (r->rest.length) {
        skip(r, 1);
        span part = span_trim(before_comma(r->rest));
        if (span_is(words_fold(r->a, part), "optional"))
            r->line.optional = true;
        else
            prepare(r, part);
        warn_of_extra(r, part);
        skip(r, before_comma(r->rest).length);
    }
}

static void complain_of_name(reading *r, span words, const naming *said, const pantry *shelf) {
    const char *near = pantry_nearest(shelf, span_of(said->name), r->a);
    const char *hint = "add it to a file in pantry/, or write the name the pantry has";
    if (said->turns)
        hint = arena_format(r->a,
                            "add it to a file in pantry/; if \"%s\" says how it is prepared, put "
                            "a comma before it",
                            said->turns);
    else if (near)
        hint = arena_format(r->a, "did you mean \"%s\"?", near);
    problem_add(r->found, here(r, words), hint, "no ingredient is called \"%s\"", said->name);
}

/* Words beside the name, without the dashes that joined them to it. */
static void prepare_beside(reading *r, const char *words) {
    static const char *const dashes[] = {"-", "\u2013", "\u2014", ":", " "};
    span rest = span_of(words);
    for (size_t i = 0; i < COUNT(dashes); i++) {
        while (span_begins(rest, dashes[i]))
            rest = span_from(rest, strlen(dashes[i]));
        while (span_ends(rest, dashes[i]))
            rest.length -= strlen(dashes[i]);
    }
    if (span_is(words_fold(r->a, rest), "optional"))
        r->line.optional = true;
    else if (!span_is(rest, "of"))
        prepare(r, rest);
}

/* A word beside the name that the entry has a weight for: "2 wedges lemon", "2 garlic cloves",
 * "4 large garlic cloves". Returns the words without it. */
static const char *take_own_measure(reading *r, const ingredient *what, const char *words) {
    size_t used;
    recipe_line *line = &r->line;
    span folded = words_fold(r->a, span_of(words));
    const char *measure = naming_measure(what, folded, &used);
    bool open = line->has_amount && (!line->in || unit_is_size(line->in));
    if (!measure || !open)
        return words;
    if (line->in)
        prepare(r, span_of(line->unit_written));
    unit *own = ARENA_NEW(r->a, unit);
    *own = (unit){measure, UNIT_COUNT, 1};
    line->in = own;
    line->unit_written = arena_copy(r->a, span_first(folded, used));
    span rest = span_of(words);
    for (size_t gone = 0; gone < used && rest.length; gone++) /* and the space behind it */
        gone += words_fold(r->a, span_next_word(&rest)).length;
    return arena_copy(r->a, rest);
}

static void take_known(reading *r, span words, const naming *said) {
    const char *before = take_own_measure(r, said->what, said->before);
    const char *after = take_own_measure(r, said->what, said->after);
    if (said->may_turn && before == said->before)
        problem_warn(r->found, here(r, words),
                     "add it to a file in pantry/, or put what is done to it behind a comma",
                     "\"%s\" is weighed as %s: \"%s\" before it is not looked at",
                     arena_format(r->a, "%s %s", said->before, said->name), said->what->name,
                     said->may_turn);
    prepare_beside(r, before);
    prepare_beside(r, after);
}

/* "2 cloves": no name follows, so the unit is the ingredient. */
static bool unit_is_the_name(reading *r, const pantry *shelf) {
    const recipe_line *line = &r->line;
    const ingredient *what =
        line->in ? pantry_find(shelf, span_of(line->unit_written), r->a) : NULL;
    if (!what)
        return false;
    r->line.what = what;
    r->line.name = line->unit_written;
    r->line.in = NULL;
    r->line.unit_written = NULL;
    return true;
}

static bool read_name(reading *r, const pantry *shelf) {
    span words = span_trim(before_comma(r->rest));
    if (words.length == 0 && !unit_is_the_name(r, shelf)) {
        problem_add(r->found, here(r, r->rest), "write it as 60 g oat flour, sifted",
                    "this line names no ingredient");
        return false;
    }
    if (!has_one_amount(r, words))
        return false;
    if (words.length) {
        naming said = naming_read(r->a, words, shelf);
        r->line.what = said.what;
        r->line.name = said.name;
        if (said.what)
            take_known(r, words, &said);
        else
            complain_of_name(r, words, &said, shelf);
    }
    skip(r, before_comma(r->rest).length);
    read_preparation(r);
    return true;
}

/* -- putting it together
 * ---------------------------------------------------------------------------- */

/* What says, on a line without an amount, that none is meant. */
static const char *const no_amount[] = {"to taste",  "as needed",   "as required", "to serve",
                                        "to finish", "to decorate", "to garnish",  "for "};

static bool says_no_amount(arena *a, span words) {
    span folded = words_fold(a, words);
    for (size_t i = 0; i < COUNT(no_amount); i++)
        if (span_find(folded, no_amount[i]) < folded.length)
            return true;
    return false;
}

/* "2 eggs, small": the size of a bare count may stand behind the name. */
static void read_late_size(reading *r) {
    span rest = text_span(&r->preparation);
    for (span word = span_next_word(&rest); word.length && !r->line.in;
         word = span_next_word(&rest)) {
        size_t used;
        const unit *in = unit_read(word, &used);
        if (in && unit_is_size(in)) {
            r->line.in = in;
            r->line.unit_written = in->name;
        }
    }
}

/* The author's own weight, times the count where it is of one. */
static void take_own_weight(reading *r) {
    recipe_line *line = &r->line;
    const brackets *aside = &r->aside;
    if (!aside->has_weight)
        return;
    bool counted = !line->in || line->in->sort == UNIT_COUNT;
    bool before_unit = line->in && r->unit_start > aside->weight_at;
    bool of_one = line->has_amount && counted && (aside->of_each || before_unit);
    line->has_own_weight = true;
    line->own_weight_g = aside->weight_g;
    if (of_one) {
        line->own_weight_g.low *= line->quantity.low;
        line->own_weight_g.high *= line->quantity.high;
    }
}

static void finish(reading *r, place at, const char *written, recipe_line *out) {
    recipe_line *line = &r->line;
    line->at = at;
    line->written = written;
    line->optional = line->optional || r->aside.optional;
    take_own_weight(r);
    if (line->has_amount && !line->in)
        read_late_size(r);
    if (!line->has_amount)
        line->to_taste = line->to_taste || says_no_amount(r->a, text_span(&r->preparation));
    if (r->preparation.length)
        line->preparation = arena_copy(r->a, text_span(&r->preparation));
    *out = *line;
}

static reading begin(arena *a, problems *found) {
    return (reading){.a = a, .found = found, .preparation = TEXT_EMPTY};
}

static bool read_whole(reading *r, located written, const pantry *shelf) {
    if (!take_up(r, written))
        return false;
    if (r->rest.length == 0) {
        problem_add(r->found, r->at, "write it as 60 g oat flour, sifted",
                    "this ingredient line is empty");
        return false;
    }
    return read_measure(r) && read_name(r, shelf);
}

bool line_read(arena *a, located written, const pantry *shelf, recipe_line *out, problems *found) {
    reading r = begin(a, found);
    bool good = read_whole(&r, written, shelf);
    if (good)
        finish(&r, written.at, arena_copy(a, span_trim(written.bytes)), out);
    text_free(&r.preparation);
    return good;
}

/* The amount of the mapping form: nothing may follow it. */
static bool read_quantity(reading *r, located quantity) {
    if (!take_up(r, quantity))
        return false;
    if (says_no_amount(r->a, r->rest)) {
        prepare(r, r->rest);
        return r->line.to_taste = true;
    }
    if (!read_measure(r))
        return false;
    if (r->line.has_amount && r->rest.length == 0)
        return true;
    problem_add(r->found, here(r, r->rest), "write an amount and a unit: 60 g, 1/2 cup (46 g)",
                "can't read the amount \"%.*s\"", SPAN(span_trim(quantity.bytes)));
    return false;
}

static bool read_parts(reading *r, located name, located quantity, const pantry *shelf) {
    if (span_trim(quantity.bytes).length == 0)
        return read_whole(r, name, shelf);
    return read_quantity(r, quantity) && take_up(r, name) && read_name(r, shelf);
}

static const char *written_parts(arena *a, span quantity, span name, const char *note) {
    return arena_format(a, "%.*s%s%.*s%s%s", SPAN(quantity), quantity.length ? " " : "", SPAN(name),
                        note ? ", " : "", note ? note : "");
}

bool line_read_parts(arena *a, located name, located quantity, const char *note, bool optional,
                     const pantry *shelf, recipe_line *out, problems *found) {
    reading r = begin(a, found);
    r.line.optional = optional;
    bool good = read_parts(&r, name, quantity, shelf);
    if (good) {
        prepare(&r, span_of(note));
        finish(&r, name.at,
               written_parts(a, span_trim(quantity.bytes), span_trim(name.bytes), note), out);
    }
    text_free(&r.preparation);
    return good;
}
