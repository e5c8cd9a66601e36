#include "site/view_combined.h"

#include "site/phrase.h"

#include <stdint.h>

bool note_is_combined(const swap_note *note) {
    return note->second_line != SIZE_MAX || note->also_to;
}

static const ingredient *first_of(const recipe *of, const swap_note *note) {
    return of->lines.items[note->line].what;
}

/* Null where one goes. */
static const ingredient *second_of(const recipe *of, const swap_note *note) {
    return note->second_line == SIZE_MAX ? NULL : of->lines.items[note->second_line].what;
}

/* `other` null: there is but one. */
static const char *both(arena *a, const char *one, const char *joined, const char *other) {
    return other ? arena_format(a, "%s %s %s", one, joined, other) : one;
}

const char *note_to_names(arena *a, const swap_note *note) {
    return both(a, note->to->name, "+", note->also_to ? note->also_to->name : NULL);
}

const char *note_from_names(arena *a, const recipe *of, const swap_note *note) {
    const ingredient *second = second_of(of, note);
    return both(a, first_of(of, note)->name, "+", second ? second->name : NULL);
}

static const char *amount(arena *a, const note_words *by, const ingredient *what, double grams) {
    return what ? arena_format(a, "%s %s", phrase_weighed(a, what, grams, by->cups), what->name)
                : NULL;
}

const char *note_from_amounts(arena *a, const note_words *by, const swap_note *note) {
    return both(a, amount(a, by, first_of(by->of, note), note->from_g), "and",
                amount(a, by, second_of(by->of, note), note->second_from_g));
}

const char *note_to_amounts(arena *a, const note_words *by, const swap_note *note) {
    return both(a, amount(a, by, note->to, note->to_g), "and",
                amount(a, by, note->also_to, note->also_to_g));
}

void view_put_combined(arena *a, view *to, const note_words *by, const swap_note *note) {
    const ingredient *first = first_of(by->of, note), *second = second_of(by->of, note);
    if (!note_is_combined(note))
        return;
    view_put_bool(a, to, "is_combined", true);
    view_put_text(a, to, "from", first->name);
    view_put_text(a, to, "from_text", phrase_weighed(a, first, note->from_g, by->cups));
    if (second) {
        view_put_text(a, to, "second_from", second->name);
        view_put_text(a, to, "second_from_text",
                      phrase_weighed(a, second, note->second_from_g, by->cups));
    }
    if (note->also_to) {
        view_put_text(a, to, "also_to", note->also_to->name);
        view_put_text(a, to, "also_to_text",
                      phrase_weighed(a, note->also_to, note->also_to_g, by->cups));
    }
    view_put_some(a, to, "limit_text", note->in_the_way);
}

void view_put_combined_data(arena *a, view *to, const recipe *of, const swap_note *note,
                            int decimals) {
    const ingredient *second = second_of(of, note);
    if (!note_is_combined(note))
        return;
    if (second) {
        view_put_text(a, to, "also_from", second->name);
        view_put_number(a, to, "also_from_g", note->second_from_g, decimals);
    }
    if (note->also_to) {
        view_put_text(a, to, "also_to", note->also_to->name);
        view_put_number(a, to, "also_to_g", note->also_to_g, decimals);
    }
    view_put_some(a, to, "in_the_way", note->in_the_way);
}
