#include "site/view_swaps.h"

#include "site/balance_words.h"
#include "site/note_groups.h"
#include "site/view_balance.h"
#include "site/view_combined.h"
#include "site/view_evidence.h"
#include "site/view_verdict.h"

/* -- what all of a group change --------------------------------------------------------------- */

/* What a swap makes of allergens, diets and claims, but for allergens that come. */
typedef struct {
    allergen_set lost;
    diet_set diets_lost, diets_gained;
    note_claims claims;
} change_set;

static change_set changes_of(const note_words *by, const swap_note *note) {
    static const note_claims none;
    const note_claims *own = by->claims ? &by->claims[note - by->first] : &none;
    return (change_set){note->lost, note->diets_lost, note->diets_gained, *own};
}

static bool has_word(const word_list *list, const char *word) {
    for (size_t i = 0; i < list->count; i++)
        if (strcmp(list->items[i], word) == 0)
            return true;
    return false;
}

/* The words of `list` that are in `other`, or else those that are not. */
static word_list words_in(arena *a, const word_list *list, const word_list *other, bool in) {
    word_list found = {0};
    for (size_t i = 0; i < list->count; i++)
        if (has_word(other, list->items[i]) == in)
            LIST_ADD(a, &found, list->items[i]);
    return found;
}

static note_claims claims_in(arena *a, const note_claims *of, const note_claims *other, bool in) {
    return (note_claims){.gained = words_in(a, &of->gained, &other->gained, in),
                         .lost = words_in(a, &of->lost, &other->lost, in),
                         .open = words_in(a, &of->open, &other->open, in)};
}

/* What all of some notes change alike, to be said once; nothing where there is but one. */
static change_set shared_changes(arena *a, const note_words *by, const swap_note *const notes[],
                                 size_t count) {
    static const change_set none;
    change_set all = changes_of(by, notes[0]);
    if (count < 2)
        return none;
    for (size_t i = 1; i < count; i++) {
        change_set own = changes_of(by, notes[i]);
        all = (change_set){all.lost & own.lost, all.diets_lost & own.diets_lost,
                           all.diets_gained & own.diets_gained,
                           claims_in(a, &all.claims, &own.claims, true)};
    }
    return all;
}

static change_set changes_but(arena *a, const change_set *of, const change_set *all) {
    return (change_set){of->lost & ~all->lost, of->diets_lost & ~all->diets_lost,
                        of->diets_gained & ~all->diets_gained,
                        claims_in(a, &of->claims, &all->claims, false)};
}

/* Puts `of` under `key`; nothing, and false, where it is empty. */
static bool put_changes(arena *a, const note_words *by, view *to, const char *key,
                        const change_set *of) {
    view *put = view_object(a);
    view_put_some(a, put, "diets_lost_text", diet_words(a, by->in, of->diets_lost));
    view_put_some(a, put, "allergens_lost_text", allergen_words(a, by->in, of->lost));
    view_put_some(a, put, "diets_gained_text", diet_words(a, by->in, of->diets_gained));
    view_put_claim_changes(a, put, by, &of->claims);
    if (put->count)
        view_put(to, key, put);
    return put->count > 0;
}

/* -- a group ---------------------------------------------------------------------------------- */

/* A group in the making: its columns, and what all its notes have alike. */
typedef struct {
    const note_words *by;
    change_set all;
    const char *each; /* the amount of the first */
    bool alike;       /* all have that amount */
    bool has_liquid, has_figures, has_cost, has_more;
} note_table;

/* Puts what has no column of its own; false where there is nothing. */
static bool put_more(arena *a, view *row, const note_table *in, const swap_note *note,
                     bool is_first) {
    const note_words *by = in->by;
    uint32_t before = row->count;
    change_set changes = changes_of(by, note), own = changes_but(a, &changes, &in->all);
    view_put_some(a, row, "past_rescue_text", note_past_rescue_text(a, by, note));
    if (!is_first) /* the first one's stands on the group, with bars */
        view_put_some(a, row, "balance_text", balance_changes_text(a, by->in, note));
    (void)put_changes(a, by, row, "own", &own);
    return row->count > before;
}

static void put_row(arena *a, view *list, note_table *in, const swap_note *note, bool is_first) {
    view *row = view_put_object(a, list, NULL);
    view_put_note_names(a, row, in->by, note);
    /* An allergen that comes stands at the name, whoever shares it: in sight on any screen. */
    view_put_some(a, row, "allergens_gained_text", allergen_words(a, in->by->in, note->gained));
    const char *amount = view_put_note_use(a, row, in->by, note);
    const char *cost = note_cost_change_text(a, in->by, note);
    view_put_note_liquid(a, row, in->by, note);
    in->has_figures |= view_put_note_figures(a, row, in->by, note);
    view_put_some(a, row, "cost_change_text", cost);
    in->has_liquid |= note_changes_liquid(note);
    in->has_cost |= cost != NULL;
    in->has_more |= put_more(a, row, in, note, is_first);
    in->each = is_first ? amount : in->each;
    in->alike = amount && in->each && strcmp(amount, in->each) == 0 && (is_first || in->alike);
}

/* The replacements of a group with their amounts, as lines of a table. */
static void put_table(arena *a, view *group, const note_words *by, const swap_note *const notes[],
                      size_t count) {
    note_table in = {.by = by, .all = shared_changes(a, by, notes, count)};
    view *list = view_put_list(a, group, "notes");
    for (size_t i = 0; i < count; i++)
        put_row(a, list, &in, notes[i], i == 0);
    view_put_bool(a, group, "has_table", true);
    view_put_bool(a, group, "has_liquid", in.has_liquid);
    view_put_bool(a, group, "has_figures", in.has_figures);
    view_put_bool(a, group, "has_cost", in.has_cost);
    view_put_bool(a, group, "has_more", in.has_more);
    view_put_some(a, group, "each_text", in.alike && count > 1 ? in.each : NULL);
    (void)put_changes(a, by, group, "all", &in.all);
}

/* True when notes are lines of a table: one for one, with amounts. */
static bool are_lines(const swap_note *first) {
    return first->says != VERDICT_AVOID && !note_is_combined(first);
}

/* "a, b and c": all of a group that has no table. */
static const char *names_text(arena *a, const language *in, const swap_note *const notes[],
                              size_t count) {
    const char **listed = ARENA_ARRAY(a, const char *, count);
    for (size_t i = 0; i < count; i++)
        listed[i] = notes[i]->to->name;
    return say_list(a, in, listed, count);
}

/* What is advised against: what goes wrong is shown on the first of them. */
static void put_avoided(arena *a, view *group, const note_words *by, const swap_note *const notes[],
                        size_t count) {
    view_put_some(a, group, "past_rescue_text", note_past_rescue_text(a, by, notes[0]));
    if (!note_is_combined(notes[0]))
        view_put_text(a, group, "names_text", names_text(a, by->in, notes, count));
}

static void put_group(arena *a, view *groups, const note_words *by, const swap_note *const notes[],
                      size_t count) {
    view *group = view_put_object(a, groups, NULL);
    view_put_note_reasons(a, by->in, group, notes[0]);
    view_put_note_balance(a, group, by, notes[0]);
    if (notes[0]->says == VERDICT_AVOID)
        put_avoided(a, group, by, notes, count);
    if (are_lines(notes[0])) {
        put_table(a, group, by, notes, count);
    } else {
        view *list = view_put_list(a, group, "notes");
        for (size_t i = 0; i < count; i++)
            view_put_note_sentences(a, view_put_object(a, list, NULL), by, notes[i], i == 0);
    }
    view_put_tried(a, group, by, notes, count);
}

/* -- the whole -------------------------------------------------------------------------------- */

/* What is decided, a verdict at a time: the notes come best first. */
static void put_verdicts(arena *a, view *list, const note_words *by, const line_notes *of) {
    for (size_t i = 0, end; i < of->tried; i = end) {
        verdict says = of->first[i].says;
        for (end = i; end < of->tried && of->first[end].says == says; end++)
            continue;
        const line_notes alike = {of->first + i, end - i, end - i, of->combined};
        view *put = view_put_object(a, list, NULL);
        view_put_verdict(a, by->in, put, says);
        view_put_number(a, put, "count", (double)alike.count, 0);
        line_notes_put_groups(a, view_put_list(a, put, "groups"), by, &alike, put_group);
    }
}

static void put_line(arena *a, view *lines, const note_words *by, const line_notes *of) {
    const ingredient *from = by->of->lines.items[of->first->line].what;
    view *put = view_put_object(a, lines, NULL);
    view_put_text(a, put, "id", arena_format(a, "instead-of-%s", from->slug));
    view_put_text(a, put, "from", from->name);
    view_put_text(a, put, "from_text", say_weighed(a, note_saying(by), from, of->first->from_g));
    view_put_bool(a, put, "is_minor", ingredient_is_staple(from));
    view_put_bool(a, put, "has_answers", of->tried > 0);
    put_verdicts(a, view_put_list(a, put, "verdicts"), by, of);
    view_put_bool(a, put, "has_untried", of->count > of->tried);
    view_put_untried_balance(a, by->in, put, of->first + of->tried, of->count - of->tried);
    view_put_tried_untried(a, put, by, of->first + of->tried, of->count - of->tried);
}

view *view_of_swaps(arena *a, const note_words *by, const swap_notes *notes) {
    view *swaps = view_object(a);
    view *lines = view_put_list(a, swaps, "lines");
    view *combined = view_put_list(a, view_put_object(a, swaps, "combined"), "verdicts");
    for (size_t i = 0; i < notes->count;) {
        line_notes of = line_notes_next(notes, &i);
        if (of.combined)
            put_verdicts(a, combined, by, &of);
        else
            put_line(a, lines, by, &of);
    }
    view_put_bool(a, swaps, "has", notes->count > 0);
    view_put_bool(a, swaps, "has_combined", combined->count > 0);
    return swaps;
}

view *view_of_notes_page(arena *a, const whole_recipe *of, const view *swaps) {
    const recipe *from = of->of;
    const language *in = of->words.in;
    const char *title = SAY(a, in, NOTES_TITLE, from->title);
    const char *summary = SAY(a, in, NOTES_SUMMARY, from->title);
    view *page = page_view(a, of->by, "notes", path_of_notes(a, from->slug), title, summary);
    view_put_text(a, page, "title", title);
    view_put_text(a, page, "slug", from->slug);
    view_put_text(a, page, "recipe_title", from->title);
    view_put_text(a, page, "recipe_href", path_of_recipe(a, from->slug));
    view_put_shared(a, page, "swaps", swaps);
    return page;
}
