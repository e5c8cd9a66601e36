#include "nutrition/lines.h"

#include "base/text.h"

bool line_counts(const recipe *of, size_t i) {
    return of->weights[i].way != WEIGHT_NONE;
}

bool line_is_weighed(const recipe *of, size_t i) {
    return line_counts(of, i) && of->weights[i].way != WEIGHT_UNKNOWN && of->lines.items[i].what;
}

const char *line_name(const recipe *of, size_t i) {
    const recipe_line *line = &of->lines.items[i];
    return line->what ? line->what->name : line->name;
}

void word_add_once(arena *a, word_list *list, const char *name) {
    for (size_t i = 0; i < list->count; i++)
        if (span_is(span_of(name), list->items[i]))
            return;
    LIST_ADD(a, list, name);
}

const char *words_joined(arena *a, const word_list *list) {
    text joined = TEXT_EMPTY;
    for (size_t i = 0; i < list->count; i++) {
        if (i > 0)
            text_add(&joined, i + 1 == list->count ? " and " : ", ");
        text_add(&joined, list->items[i]);
    }
    const char *copy = arena_copy(a, text_span(&joined));
    text_free(&joined);
    return copy;
}
