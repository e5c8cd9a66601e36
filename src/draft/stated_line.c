#include "draft/stated_line.h"

#include "base/number.h"
#include "base/words.h"

/* -- putting right ----------------------------------------------------------------------------- */

/* Marks of lists, tick boxes, footnotes. */
static const char *const marks_before[] = {
    "\u2022", "\u25a2",  "\u2610",  "\u2611", "\u25a1", "\u25cf", "\u25e6", "\u00b7",
    "\u2023", "\u2013 ", "\u2014 ", "- ",     "* ",     "+ ",     "[ ]",    "[]"};
static const char *const marks_behind[] = {"*", "\u2020", "\u2021", ",",
                                           ";", "\u00b9", "\u00b2", "\u00b3"};

static bool peel_front(span *s) {
    for (size_t i = 0; i < COUNT(marks_before); i++)
        if (span_begins(*s, marks_before[i])) {
            *s = span_trim(span_from(*s, strlen(marks_before[i])));
            return true;
        }
    return false;
}

static bool peel_back(span *s) {
    for (size_t i = 0; i < COUNT(marks_behind); i++)
        if (span_ends(*s, marks_behind[i])) {
            *s = span_trim(span_first(*s, s->length - strlen(marks_behind[i])));
            return true;
        }
    return false;
}

static span without_marks(span s) {
    s = span_trim(s);
    while (peel_front(&s) || peel_back(&s))
        ;
    return s;
}

/* "((46 g))" is one bracket, "oat flour*, sifted" has a mark no reader needs. */
static span without_doubles(arena *a, span s) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < s.length; i++) {
        char c = s.at[i];
        char before = i > 0 ? s.at[i - 1] : ' ';
        bool doubled = (c == '(' || c == ')') && before == c;
        if (!doubled && c != '*')
            text_add_char(&t, c);
    }
    span kept = arena_copy_span(a, text_span(&t));
    text_free(&t);
    return kept;
}

/* "0.333333 cup": a third that a program divided. */
static span with_fraction(arena *a, span s) {
    double value = 0;
    size_t used = s.length && s.at[0] != '-' && s.at[0] != '+' ? number_read(s, &value) : 0;
    size_t mark = span_find(span_first(s, used), ".");
    if (used < mark + 4) /* three decimals and more */
        return s;
    text t = TEXT_EMPTY;
    amount_add(&t, value, 0.006);
    bool plain = memchr(t.bytes, '.', t.length) != NULL;
    const char *words = arena_format(a, "%s%.*s", t.bytes, SPAN(span_from(s, used)));
    text_free(&t);
    return plain ? s : span_of(words);
}

/* The bytes of AMOUNT UNIT (of weight or volume) that are all of `s`. */
static bool is_measure(span s) {
    amount_range amount;
    size_t used;
    size_t took = amount_read(s, &amount);
    span rest = span_trim(span_from(s, took));
    const unit *in = took ? unit_read(rest, &used) : NULL;
    return in && used == rest.length && (in->sort == UNIT_MASS || in->sort == UNIT_VOLUME);
}

/* Where `joint` stands in `s` from byte `from` on; the length of `s` when it does not. */
static size_t next_joint(span s, size_t from, const char *joint) {
    return from + span_find(span_from(s, from), joint);
}

/* "Oat flour: 100 g", "oat flour – 100 g": the amount goes to the front. */
static span with_amount_first(arena *a, span s) {
    static const char *const joints[] = {": ", " - ", " \u2013 ", " \u2014 ", ", ", " "};
    amount_range amount;
    if (amount_read(s, &amount) > 0)
        return s;
    for (size_t i = 0; i < COUNT(joints); i++) {
        for (size_t at = next_joint(s, 0, joints[i]); at < s.length;
             at = next_joint(s, at + 1, joints[i])) {
            span measure = span_trim(span_from(s, at + strlen(joints[i])));
            if (is_measure(measure))
                return span_of(
                    arena_format(a, "%.*s %.*s", SPAN(measure), SPAN(span_first(s, at))));
        }
    }
    return s;
}

/* -- reading ----------------------------------------------------------------------------------- */

static bool is_heading(span s) {
    amount_range amount;
    return span_ends(s, ":") && s.length > 1 && s.length <= 60 && amount_read(s, &amount) == 0;
}

/* Marks alone are no line. */
static bool has_word(span s) {
    for (size_t i = 0; i < s.length; i++) {
        unsigned char c = (unsigned char)s.at[i];
        if (c >= 0x80 || (c >= '0' && c <= '9') || ((c | 0x20) >= 'a' && (c | 0x20) <= 'z'))
            return true;
    }
    return false;
}

static const char *said_of(arena *a, const problem *one) {
    return one->hint ? arena_format(a, "%s (%s)", one->message, one->hint) : one->message;
}

static void add_remarks(arena *a, const problems *found, word_list *out) {
    for (size_t i = 0; i < found->count; i++)
        LIST_ADD(a, out, said_of(a, &found->items[i]));
}

static void weigh(arena *a, const recipe_line *line, cup_standard cups, stated_line *out) {
    weight got;
    problems found = problems_in(a);
    if (!line->what)
        out->sort = STATED_UNKNOWN;
    else if (!weigh_line(line, cups, &got, &found))
        out->sort = STATED_UNWEIGHED;
    add_remarks(a, &found, &out->remarks);
}

static stated_line unreadable(arena *a, const char *stated, const problems *found) {
    stated_line out = {.sort = STATED_UNREADABLE, .words = stated};
    const char *because = found->count ? said_of(a, &found->items[0]) : "it is no ingredient line";
    LIST_ADD(a, &out.remarks,
             arena_format(a, "could not read: \"%s\", because %s", stated, because));
    return out;
}

stated_line line_stated(arena *a, const char *stated, const pantry *shelf, cup_standard cups) {
    span words = without_doubles(a, without_marks(span_of(stated)));
    if (is_heading(words))
        return (stated_line){.sort = STATED_HEADING,
                             .words =
                                 arena_copy(a, span_trim(span_first(words, words.length - 1)))};
    words = with_fraction(a, with_amount_first(a, words));
    const char *line = arena_copy(a, words);
    problems found = problems_in(a);
    recipe_line got;
    if (!has_word(words) ||
        !line_read(a, (located){span_of(line), {"line", 1, 1}}, shelf, &got, &found))
        return unreadable(a, stated, &found);
    stated_line out = {.sort = STATED_LINE, .words = line};
    add_remarks(a, &found, &out.remarks);
    weigh(a, &got, cups, &out);
    return out;
}
