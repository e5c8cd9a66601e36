#include "site/view_combined.h"

#include "site/say.h"

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

/* The names of one or two; `second` null: there is but one. */
static const char *names_of(arena *a, const ingredient *first, const ingredient *second) {
    return second ? arena_format(a, "%s + %s", first->name, second->name) : first->name;
}

const char *note_to_names(arena *a, const swap_note *note) {
    return names_of(a, note->to, note->also_to);
}

const char *note_from_names(arena *a, const recipe *of, const swap_note *note) {
    return names_of(a, first_of(of, note), second_of(of, note));
}

static const char *amount(arena *a, const note_words *by, const ingredient *what, double grams) {
    if (!what)
        return NULL;
    return SAY(a, by->in, AMOUNT_OF, say_weighed(a, note_saying(by), what, grams), what->name);
}

/* `second` null: there is but one. */
static const char *both(arena *a, const note_words *by, const char *first, const char *second) {
    return second ? SAY(a, by->in, BOTH, first, second) : first;
}

const char *note_from_amounts(arena *a, const note_words *by, const swap_note *note) {
    return both(a, by, amount(a, by, first_of(by->of, note), note->from_g),
                amount(a, by, second_of(by->of, note), note->second_from_g));
}

const char *note_to_amounts(arena *a, const note_words *by, const swap_note *note) {
    return both(a, by, amount(a, by, note->to, note->to_g),
                amount(a, by, note->also_to, note->also_to_g));
}

void view_put_combined(arena *a, view *to, const note_words *by, const swap_note *note) {
    const ingredient *first = first_of(by->of, note), *second = second_of(by->of, note);
    if (!note_is_combined(note))
        return;
    view_put_bool(a, to, "is_combined", true);
    view_put_text(a, to, "from", first->name);
    view_put_text(a, to, "from_text", say_weighed(a, note_saying(by), first, note->from_g));
    if (second) {
        view_put_text(a, to, "second_from", second->name);
        view_put_text(a, to, "second_from_text",
                      say_weighed(a, note_saying(by), second, note->second_from_g));
    }
    if (note->also_to) {
        view_put_text(a, to, "also_to", note->also_to->name);
        view_put_text(a, to, "also_to_text",
                      say_weighed(a, note_saying(by), note->also_to, note->also_to_g));
    }
    view_put_some(a, to, "limit_text", say_message(a, by->in, note->in_the_way));
}

void view_put_combined_data(arena *a, const language *in, view *to, const recipe *of,
                            const swap_note *note, int decimals) {
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
    view_put_some(a, to, "in_the_way", say_message(a, in, note->in_the_way));
}
