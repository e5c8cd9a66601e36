#include "measure/reading.h"

place reading_place(const reading *r, span part) {
    return place_inside(r->at, r->plain.at, (size_t)(part.at - r->plain.at));
}

void reading_skip(reading *r, size_t bytes) {
    r->rest = span_from(r->rest, bytes);
    while (r->rest.length && r->rest.at[0] == ' ')
        r->rest = span_from(r->rest, 1);
}

void reading_prepare(reading *r, span words) {
    words = span_trim(words);
    if (words.length == 0)
        return;
    if (r->preparation.length)
        text_add(&r->preparation, ", ");
    text_add_span(&r->preparation, words);
}

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
        reading_prepare(r, span_of(aside.note));
    if (r->plain.at)
        aside.weight_at = r->plain.length; /* behind the unit, which the earlier part had */
    aside.optional = aside.optional || r->aside.optional;
    if (r->aside.has_weight)
        r->aside.optional = aside.optional;
    else
        r->aside = aside;
}

bool reading_take_up(reading *r, located written) {
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
    reading_skip(r, 0);
    return true;
}
