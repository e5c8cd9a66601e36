#include "measure/brackets.h"

#include "base/words.h"
#include "measure/units.h"

place place_inside(place at, const char *line, size_t offset) {
    if (at.column)
        at.column += words_columns(line, offset);
    return at;
}

static void add_note(arena *a, brackets *out, span words) {
    words = span_trim(words);
    if (words.length == 0)
        return;
    out->note =
        out->note ? arena_format(a, "%s, %.*s", out->note, SPAN(words)) : arena_copy(a, words);
}

static bool is_one_of(span folded, const char *first, const char *second) {
    return span_is(folded, first) || span_is(folded, second);
}

/* What follows the weight inside its bracket: "each", a second weight, "drained". */
static void take_rest(arena *a, brackets *out, span rest) {
    amount_range ignored;
    while (rest.length && strchr(" ,;/=", rest.at[0]))
        rest = span_from(rest, 1);
    span folded = words_fold(a, rest);
    if (is_one_of(folded, "each", "apiece"))
        out->of_each = true;
    else if (span_is(folded, "optional"))
        out->optional = true;
    else if (!amount_read(rest, &ignored))
        add_note(a, out, rest);
}

/* True when a figure stands in the bracket that should be a weight: "46", "46 gg", "½½ g". */
static bool is_broken_weight(span weight, size_t took, span rest) {
    if (!amount_is_meant(weight))
        return false;
    if (!took)
        return true;
    span word = span_next_word(&rest);
    bool alone = span_trim(rest).length == 0;
    bool percent = word.length && word.at[0] == '%';
    return alone && !percent && (word.length == 0 || unit_nearest_weight(word));
}

/* "optional", alone or ahead of a comma. */
static bool take_optional(arena *a, brackets *out, span inside) {
    size_t comma = span_find(inside, ",");
    if (!span_is(words_fold(a, span_first(inside, comma)), "optional"))
        return false;
    out->optional = true;
    add_note(a, out, span_from(inside, comma + 1));
    return true;
}

/* One bracket's inside, without a weight or with one. False: a weight that is none. */
static bool take_inside(arena *a, brackets *out, span inside) {
    amount_range amount;
    size_t used = 0;
    span weight = span_from(inside, amount_about(inside));
    size_t took = amount_read(weight, &amount);
    span rest = span_trim(span_from(weight, took));
    const unit *in = took ? unit_read(rest, &used) : NULL;
    bool is_weight = in && in->sort == UNIT_MASS;
    if ((is_weight && amount.low <= 0) || (!in && is_broken_weight(weight, took, rest)))
        return false;
    if (take_optional(a, out, inside))
        return true;
    if (is_weight && !out->has_weight) {
        out->has_weight = true;
        out->weight_g = (amount_range){amount.low * in->size, amount.high * in->size};
        take_rest(a, out, span_from(rest, used));
    } else {
        add_note(a, out, inside);
    }
    return true;
}

/* The byte past the bracket that opens at `open`, or 0 when it is not closed. */
static size_t bracket_end(span line, size_t open) {
    size_t depth = 0;
    for (size_t i = open; i < line.length; i++) {
        depth += line.at[i] == '(';
        depth -= line.at[i] == ')';
        if (depth == 0)
            return i + 1;
    }
    return 0;
}

/* The bracket that opens at `open`, blanked out; `*end` is the byte past it. */
static bool take_bracket(arena *a, span line, size_t open, size_t *end, brackets *out) {
    bool had_weight = out->has_weight;
    *end = bracket_end(line, open);
    if (*end == 0)
        return false;
    span inside = span_trim((span){line.at + open + 1, *end - open - 2});
    if (!take_inside(a, out, inside))
        return false;
    if (out->has_weight && !had_weight)
        out->weight_at = open;
    return true;
}

static void complain(arena *a, span line, size_t at, size_t end, place where, problems *found) {
    span whole = span_from(line, at);
    if (line.at[at] == ')')
        problem_add(found, where, "take it out, or open it: (46 g)",
                    "a bracket is closed that was not opened");
    else if (end == 0)
        problem_add(found, where, "close it: (46 g)", "this bracket is not closed");
    else
        problem_add(found, where, "write it as (46 g) or (1.5 oz)",
                    "can't read the weight in brackets \"%s\"",
                    arena_copy(a, span_first(whole, end - at)));
}

bool brackets_take(arena *a, char *line, size_t length, place at, brackets *out, problems *found) {
    span whole = {line, length};
    *out = (brackets){0};
    for (size_t i = 0; i < length; i++) {
        size_t end = 0;
        if (line[i] != '(' && line[i] != ')')
            continue;
        if (line[i] == ')' || !take_bracket(a, whole, i, &end, out)) {
            complain(a, whole, i, end, place_inside(at, line, i), found);
            return false;
        }
        memset(line + i, ' ', end - i);
    }
    return true;
}
