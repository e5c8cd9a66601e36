#include "read/source.h"

#include "read/fields.h"

/* What the words of a source begin with, and what that says of its certainty. */
static const struct {
    const char *start;
    certainty sure;
} starts[] = {{"label", CERTAINTY_LABEL},
              {"common practice", CERTAINTY_COMMON_PRACTICE},
              {"from memory", CERTAINTY_MEMORY},
              {"estimate", CERTAINTY_ESTIMATE}};

static certainty certainty_of_words(span words) {
    for (size_t i = 0; i < COUNT(starts); i++)
        if (span_begins(words, starts[i].start))
            return starts[i].sure;
    return CERTAINTY_PUBLISHED;
}

static void read_certainty(const yaml_node *node, const char *key, certainty *out,
                           problems *found) {
    const char *words[CERTAINTY_COUNT];
    size_t chosen;
    for (size_t i = 0; i < CERTAINTY_COUNT; i++)
        words[i] = certainty_word((certainty)i);
    /* The first, "unstated", is no word to write. */
    if (field_choice(node, key, (field_choices){words + 1, CERTAINTY_COUNT - 1}, &chosen, found))
        *out = (certainty)(chosen + 1);
}

static void add_missing(const yaml_node *node, const source_keys *keys, bool hers,
                        problems *found) {
    const char *hint = arena_format(found->home, "for example: %s: label", keys->source);
    if (hers)
        problem_note(found, "source", PROBLEM_WARNING, node->at, hint, "%s have no source",
                     keys->what);
    else
        problem_add(found, node->at, hint, "%s have no source", keys->what);
}

void source_read(const yaml_node *node, const source_keys *keys, bool hers, source_note *out,
                 problems *found) {
    size_t before = found->errors;
    *out = (source_note){"source not stated", CERTAINTY_UNSTATED};
    if (field_text(node, keys->source, &out->text, found))
        out->sure = certainty_of_words(span_of(out->text));
    else if (found->errors == before)
        add_missing(node, keys, hers, found);
    if (keys->certainty)
        read_certainty(node, keys->certainty, &out->sure, found);
}
