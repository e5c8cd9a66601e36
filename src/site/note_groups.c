#include "site/note_groups.h"

#include "site/view_combined.h"

line_notes line_notes_next(const swap_notes *notes, size_t *at) {
    line_notes of = {.first = &notes->items[*at]};
    of.combined = note_is_combined(of.first);
    for (; *at < notes->count && notes->items[*at].line == of.first->line &&
           note_is_combined(&notes->items[*at]) == of.combined;
         ++*at) {
        of.count++;
        of.tried += notes->items[*at].says != VERDICT_UNTRIED;
    }
    return of;
}

static bool same_decision(const swap_note *one, const swap_note *other) {
    return one->says == other->says && one->by.by == other->by.by &&
           one->by.rule == other->by.rule && one->by.bake == other->by.bake;
}

void line_notes_put_groups(arena *a, view *to, const note_words *by, const line_notes *of,
                           group_putter *put) {
    const swap_note *first = of->first;
    size_t count = of->tried;
    bool *placed = ARENA_ARRAY(a, bool, count);
    const swap_note **alike = ARENA_ARRAY(a, const swap_note *, count);
    for (size_t i = 0; i < count; i++) {
        size_t found = 0;
        if (placed[i])
            continue;
        for (size_t k = i; k < count; k++) {
            if (placed[k] || !same_decision(&first[i], &first[k]))
                continue;
            alike[found++] = &first[k];
            placed[k] = true;
        }
        put(a, to, by, alike, found);
    }
}
