#include "site/swap_data.h"

#include "site/note_groups.h"
#include "site/view_combined.h"
#include "site/view_evidence.h"
#include "site/view_picks.h"

/* The same for programs: grams instead of words. */
static void put_answer(arena *a, view *answers, const note_words *by,
                       const swap_note *const notes[], size_t count) {
    const swap_note *first = notes[0];
    view *answered = view_put_object(a, answers, NULL);
    view_put_text(a, answered, "verdict", verdict_word(first->says));
    view_put_some(a, answered, "also", first->also);
    view_put_some(a, answered, "expect", note_expected(a, by->in, first));
    view_put_some(a, answered, "because", first->because);
    view_put_some(a, answered, "basis", first->basis);
    view_put_text(a, answered, "said_by", note_said_by(a, by->in, first));
    view *list = view_put_list(a, answered, "to");
    for (size_t i = 0; i < count; i++) {
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", notes[i]->to->name);
        if (note_is_combined(notes[i])) {
            view_put_number(a, one, "from_g", notes[i]->from_g, 1);
            view_put_combined_data(a, by->in, one, by->of, notes[i], 1);
        }
        if (notes[i]->tried.count)
            view_put_evidence(a, one, &notes[i]->tried);
        if (first->says == VERDICT_AVOID)
            continue;
        view_put_number(a, one, "to_g", notes[i]->to_g, 1);
        if (note_changes_liquid(notes[i]))
            view_put_number(a, one, "liquid_change_g", notes[i]->liquid_change_g, 1);
        if (notes[i]->to_g > 0)
            view_put_changes_data(a, one, by, notes[i]);
    }
}

/* What nobody decides on but was tried in recipes like this one; nothing where there is none. */
static void put_untried_data(arena *a, view *put, const swap_note *first, size_t count) {
    view *list = NULL;
    for (size_t i = 0; i < count; i++) {
        if (!first[i].tried.count)
            continue;
        list = list ? list : view_put_list(a, put, "tried_elsewhere");
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", first[i].to->name);
        view_put_evidence(a, one, &first[i].tried);
    }
}

void view_put_swap_data(arena *a, view *document, const note_words *by, const swap_notes *notes) {
    const recipe *of = by->of;
    view *swaps = view_put_list(a, document, "swaps");
    for (size_t i = 0; i < notes->count;) {
        line_notes line = line_notes_next(notes, &i);
        view *put = view_put_object(a, swaps, NULL);
        view_put_text(a, put, "from", of->lines.items[line.first->line].what->name);
        view_put_number(a, put, "from_g", line.first->from_g, 1);
        view_put_lines_that_go(a, put, of, line.first);
        line_notes_put_groups(a, view_put_list(a, put, "answers"), by, &line, put_answer);
        put_untried_data(a, put, line.first + line.tried, line.count - line.tried);
    }
}
