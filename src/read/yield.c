#include "read/yield.h"

#include "base/number.h"
#include "base/words.h"

#include <math.h>

static span last_word(span words) {
    size_t i = words.length;
    while (i > 0 && words.at[i - 1] != ' ')
        i--;
    return span_from(words, i);
}

/* English plurals: what is cut off the singular and what is put in its place. */
static const struct {
    const char *cut, *add;
} plurals[] = {{"", "s"}, {"", "es"}, {"y", "ies"}, {"f", "ves"}, {"fe", "ves"}};

static bool is_plural_of(span many, span one) {
    for (size_t i = 0; i < sizeof plurals / sizeof plurals[0]; i++) {
        size_t stem = one.length - strlen(plurals[i].cut);
        if (span_ends(one, plurals[i].cut) && span_ends(many, plurals[i].add) &&
            many.length == stem + strlen(plurals[i].add) &&
            span_equal(span_first(many, stem), span_first(one, stem)))
            return true;
    }
    return false;
}

bool nouns_agree(const char *one, const char *other, arena *scratch) {
    span a = last_word(words_fold(scratch, span_of(one)));
    span b = last_word(words_fold(scratch, span_of(other)));
    return span_equal(a, b) || is_plural_of(a, b) || is_plural_of(b, a);
}

/* The amount at the front, and the noun after it, which may be empty. */
static bool read_parts(arena *a, located written, const char *key, yield *out, problems *found) {
    amount_range count;
    span words = span_trim(written.bytes);
    size_t used = amount_read(words, &count);
    if (used == 0 || count.low <= 0) {
        problem_add(found, written.at, "for example: makes: 8 rounds, portion: 2 rounds",
                    "\"%s\" must begin with a number above 0", key);
        return false;
    }
    *out = (yield){amount_middle(count), arena_copy(a, span_trim(span_from(words, used)))};
    return true;
}

bool yield_read(arena *a, located written, yield *out, problems *found) {
    yield makes;
    if (!read_parts(a, written, "makes", &makes, found))
        return false;
    if (!makes.noun[0]) {
        problem_add(found, written.at, "for example: makes: 8 rounds",
                    "\"makes\" says how many, but not of what");
        return false;
    }
    *out = makes;
    return true;
}

/* Whole numbers of portions are the rule; fractions such as 1/12 loaf come a hair beside them. */
static bool is_whole(double count) {
    return fabs(count - round(count)) < 1e-6;
}

bool portion_read(arena *a, located written, const yield *of, yield *out, problems *found) {
    yield portion;
    if (!read_parts(a, written, "portion", &portion, found))
        return false;
    if (!portion.noun[0])
        portion.noun = of->noun;
    if (!nouns_agree(portion.noun, of->noun, found->home)) {
        problem_add(
            found, written.at,
            arena_format(found->home, "write it as a number of %s, or a part: 1/12", of->noun),
            "the recipe makes %s, but a portion is of %s", of->noun, portion.noun);
        return false;
    }
    double portions = of->count / portion.count;
    if (portions < 1 - 1e-6) {
        problem_add(found, written.at, "a portion is a part of what the recipe makes",
                    "a portion is more than the whole");
        return false;
    }
    if (!is_whole(portions))
        problem_note(found, "portion", PROBLEM_WARNING, written.at,
                     "choose a portion that leaves nothing over", "this makes %s portions",
                     number_copy(found->home, portions, 2));
    *out = portion;
    return true;
}
