#include "measure/line.h"

#include "base/words.h"
#include "measure/naming.h"
#include "measure/quantity.h"

/* -- the name and what follows ----------------------------------------------------------------- */

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/* A count of something else behind a joining word: "1 white" of "eggs + 1 white", or empty. */
static span counted_too(span name) {
    static const char *const joins[] = {" + ", " and ", " plus ", " & "};
    for (size_t i = 0; i < COUNT(joins); i++) {
        size_t at = span_find(name, joins[i]) + strlen(joins[i]);
        if (at < name.length && is_digit(name.at[at]))
            return span_from(name, at);
    }
    return (span){0};
}

/* Two amounts in a name, or one behind it: neither may be dropped in silence. */
static bool has_one_amount(reading *r, span name) {
    span stray = span_trim(quantity_stray(name));
    if (stray.length == 0)
        stray = span_trim(counted_too(name));
    if (stray.length == 0)
        return true;
    const char *hint = "write the amount first: 60 g oat flour";
    if (r->line.has_amount && !r->line.in && stray.at == name.at)
        hint = arena_format(r->a, "is it 2 x %.*s? Write the x too", SPAN(stray));
    else if (r->line.has_amount)
        hint = "join two measures with +, or give each a line of its own";
    problem_add(r->found, reading_place(r, stray), hint, "can't tell what \"%.*s\" is of",
                SPAN(stray));
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

/* "about 250 g" and nothing else. */
static bool is_just(reading *r, span part, span stray) {
    static const char *const nearly[] = {"",    "~",     "about",  "approx",  "approx.", "ca",
                                         "ca.", "circa", "around", "roughly", "in all",  "total"};
    span before = span_trim(span_first(part, (size_t)(stray.at - part.at)));
    span folded = words_fold(r->a, before);
    bool ends = stray.at + stray.length == part.at + part.length;
    return ends &&
           (span_is(before, "~") || words_index(folded, nearly, COUNT(nearly)) < COUNT(nearly));
}

static void warn_of_heap(reading *r, span part) {
    span rest = words_fold(r->a, part);
    bool measured = r->line.in && r->line.in->sort == UNIT_VOLUME;
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest))
        if (measured && (span_is(word, "heaped") || span_is(word, "heaping")))
            problem_note(r->found, "heaped", PROBLEM_WARNING, reading_place(r, part),
                         "write level measures, or a weight in brackets",
                         "\"%.*s\" is no measure: it is weighed as level", SPAN(word));
}

static void warn_of_extra(reading *r, span part) {
    span stray = span_trim(quantity_stray(part));
    span folded = words_fold(r->a, part);
    warn_of_heap(r, part);
    if (stray.length && r->line.has_amount && !r->aside.has_weight && is_just(r, part, stray))
        problem_note(r->found, "not-weighed", PROBLEM_WARNING, reading_place(r, stray),
                     "write it in brackets behind the amount: 2 (250 g) pears",
                     "\"%.*s\" behind the comma is not looked at", SPAN(stray));
    if (stray.length && (span_begins(folded, "plus ") || span_begins(folded, "+")))
        problem_note(r->found, "not-weighed", PROBLEM_WARNING, reading_place(r, stray),
                     "give it a line of its own", "\"%.*s\" is not weighed", SPAN(stray));
}

static const char *const amount_joints[] = {":", "-", "\u2013", "\u2014"};

/* Reads the quantity of a line that had none yet; the rest stays what it is. */
static bool take_quantity(reading *r, span stray) {
    span behind = r->rest;
    r->rest = stray;
    bool good = quantity_read(r) && r->line.has_amount;
    r->rest = behind;
    return good;
}

/* "greek yoghurt 150 g": takes an amount that ends the name of a line that has none, and the sign
 * that joins it. Returns the words without it. */
static span take_late_amount(reading *r, span words) {
    span stray = span_trim(quantity_stray(words));
    bool ends = stray.length && stray.at + stray.length == words.at + words.length;
    if (r->line.has_amount || !ends || !take_quantity(r, stray))
        return words;
    words = span_trim(span_first(words, (size_t)(stray.at - words.at)));
    for (size_t i = 0; i < COUNT(amount_joints); i++)
        if (span_ends(words, amount_joints[i]))
            words.length -= strlen(amount_joints[i]);
    return span_trim(words);
}

/* "almond meal, 50 g", on a line that has no amount yet. */
static bool is_late_amount(reading *r, span part) {
    span stray = span_trim(quantity_stray(part));
    return stray.length && !r->line.has_amount && !r->aside.has_weight && is_just(r, part, stray) &&
           take_quantity(r, stray);
}

static void read_part(reading *r, span part) {
    if (span_is(words_fold(r->a, part), "optional"))
        r->line.optional = true;
    else
        reading_prepare(r, part);
    warn_of_extra(r, part);
}

/* The parts between commas behind the name. */
static void read_preparation(reading *r) {
    while (r->rest.length) {
        reading_skip(r, 1);
        span part = span_trim(before_comma(r->rest));
        if (!is_late_amount(r, part))
            read_part(r, part);
        reading_skip(r, before_comma(r->rest).length);
    }
}

/* "zest of 1 lemon": an amount behind the joining word, or empty. */
static span amount_of_what(span words) {
    size_t at = span_find(words, " of ") + strlen(" of ");
    amount_range amount;
    span behind = at < words.length ? span_from(words, at) : (span){0};
    return behind.length && amount_read(behind, &amount) ? behind : (span){0};
}

/* The last word of `s`; the rest of it, trimmed, in `*before`. */
static span last_word(span s, span *before) {
    size_t at = s.length;
    while (at > 0 && s.at[at - 1] != ' ')
        at--;
    *before = span_trim(span_first(s, at));
    return span_from(s, at);
}

/* "grated zest of 1 lemon" is 1 lemon zest, grated, where the pantry knows lemon zest. */
static bool take_part_of(reading *r, span words, const pantry *shelf) {
    span behind = amount_of_what(words), done;
    amount_range amount;
    if (r->line.has_amount || behind.length == 0)
        return false;
    span whole = span_trim(span_from(behind, amount_read(behind, &amount)));
    span some = last_word(span_first(words, span_find(words, " of ")), &done);
    const char *name = arena_format(r->a, "%.*s %.*s", SPAN(whole), SPAN(some));
    const ingredient *what = pantry_find(shelf, span_of(name), r->a);
    if (!what && span_ends(whole, "s")) {
        name =
            arena_format(r->a, "%.*s %.*s", SPAN(span_first(whole, whole.length - 1)), SPAN(some));
        what = pantry_find(shelf, span_of(name), r->a);
    }
    if (!what)
        return false;
    r->line.what = what;
    r->line.name = name;
    r->line.quantity = amount;
    r->line.has_amount = true;
    reading_prepare(r, done);
    return true;
}

static void complain_of_name(reading *r, span words, const naming *said, const pantry *shelf) {
    const char *near = pantry_nearest(shelf, span_of(said->name), r->a);
    const char *hint = "add it to a file in pantry/, or write the name the pantry has";
    if (said->turns)
        hint = arena_format(r->a,
                            "add it to a file in pantry/; if \"%s\" says how it is prepared, put "
                            "a comma before it",
                            said->turns);
    else if (amount_of_what(words).length)
        hint = arena_format(r->a, "write the amount first: %.*s, %.*s only",
                            SPAN(amount_of_what(words)),
                            SPAN(span_trim(span_first(words, span_find(words, " of ")))));
    else if (near)
        hint = arena_format(r->a, "did you mean \"%s\"?", near);
    problem_add(r->found, reading_place(r, words), hint, "no ingredient is called \"%s\"",
                said->name);
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
        reading_prepare(r, rest);
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
        reading_prepare(r, span_of(line->unit_written));
    unit *own = ARENA_NEW(r->a, unit);
    *own = (unit){measure, UNIT_COUNT, 1};
    line->in = own;
    line->unit_written = arena_copy(r->a, span_first(folded, used));
    span rest = span_of(words);
    for (size_t gone = 0; gone < used && rest.length; gone++) /* and the space behind it */
        gone += words_fold(r->a, span_next_word(&rest)).length;
    return arena_copy(r->a, rest);
}

/* "almnd butter" holds the name of a butter, and yet it is not meant: a misspelt name must not
 * turn into another food in silence. */
static bool is_a_slip(reading *r, span words, const naming *said, const pantry *shelf) {
    if (said->before[0] == '\0' && said->after[0] == '\0')
        return false;
    const char *meant = pantry_slip(shelf, words_fold(r->a, words), r->a);
    if (!meant || pantry_find(shelf, span_of(meant), r->a) == said->what)
        return false;
    problem_add(r->found, reading_place(r, words),
                arena_format(r->a,
                             "did you mean \"%s\"? If not, put what is done to it behind a comma",
                             meant),
                "no ingredient is called \"%.*s\"", SPAN(words));
    r->line.what = NULL;
    return true;
}

static void take_known(reading *r, span words, const naming *said) {
    const char *before = take_own_measure(r, said->what, said->before);
    const char *after = take_own_measure(r, said->what, said->after);
    if (said->may_turn && before == said->before)
        problem_note(r->found, "name-in-doubt", PROBLEM_WARNING, reading_place(r, words),
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
    span words = take_late_amount(r, span_trim(before_comma(r->rest)));
    if (words.length == 0 && !unit_is_the_name(r, shelf)) {
        problem_add(r->found, reading_place(r, r->rest), "write it as 60 g oat flour, sifted",
                    "this line names no ingredient");
        return false;
    }
    if (!has_one_amount(r, words))
        return false;
    if (words.length && !take_part_of(r, words, shelf)) {
        naming said = naming_read(r->a, words, shelf);
        r->line.what = said.what;
        r->line.name = said.name;
        if (said.what && !is_a_slip(r, words, &said, shelf))
            take_known(r, words, &said);
        else if (!said.what)
            complain_of_name(r, words, &said, shelf);
    }
    reading_skip(r, before_comma(r->rest).length);
    read_preparation(r);
    return true;
}

/* -- putting it together ----------------------------------------------------------------------- */

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
    if (!reading_take_up(r, written))
        return false;
    if (r->rest.length == 0) {
        problem_add(r->found, r->at, "write it as 60 g oat flour, sifted",
                    "this ingredient line is empty");
        return false;
    }
    return quantity_read(r) && read_name(r, shelf);
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
    if (!reading_take_up(r, quantity))
        return false;
    if (says_no_amount(r->a, r->rest)) {
        reading_prepare(r, r->rest);
        return r->line.to_taste = true;
    }
    if (!quantity_read(r))
        return false;
    if (r->line.has_amount && r->rest.length == 0)
        return true;
    problem_add(r->found, reading_place(r, r->rest),
                "write an amount and a unit: 60 g, 1/2 cup (46 g)",
                "can't read the amount \"%.*s\"", SPAN(span_trim(quantity.bytes)));
    return false;
}

static bool read_parts(reading *r, located name, located quantity, const pantry *shelf) {
    if (span_trim(quantity.bytes).length == 0)
        return read_whole(r, name, shelf);
    return read_quantity(r, quantity) && reading_take_up(r, name) && read_name(r, shelf);
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
        reading_prepare(&r, span_of(note));
        finish(&r, name.at,
               written_parts(a, span_trim(quantity.bytes), span_trim(name.bytes), note), out);
    }
    text_free(&r.preparation);
    return good;
}
