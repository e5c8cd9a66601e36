#include "site/view_swaps.h"

#include "site/balance_words.h"
#include "site/note_groups.h"
#include "site/view_balance.h"
#include "site/view_combined.h"
#include "site/view_evidence.h"
#include "site/view_verdict.h"

/* -- what all of a group share -------------------------------------------------------------------
 */

/* What each note of a group changes: said once. All of it empty where there is but one note. */
typedef struct {
    allergen_set lost;
    diet_set diets_lost, diets_gained;
    word_list claims_gained, claims_lost, claims_open;
} shared_changes;

static bool has_word(const word_list *list, const char *word) {
    for (size_t i = 0; i < list->count; i++)
        if (strcmp(list->items[i], word) == 0)
            return true;
    return false;
}

/* The words of `list` that `other` has (or, `but` it, has not). */
static word_list words_in(arena *a, const word_list *list, const word_list *other, bool but) {
    word_list found = {0};
    for (size_t i = 0; i < list->count; i++)
        if (has_word(other, list->items[i]) != but)
            LIST_ADD(a, &found, list->items[i]);
    return found;
}

static const note_claims *changes_of(const note_words *by, const swap_note *note) {
    static const note_claims none = {0};
    return by->claims ? &by->claims[note - by->first] : &none;
}

static void share(arena *a, shared_changes *all, const note_words *by, const swap_note *note) {
    const note_claims *own = changes_of(by, note);
    all->lost &= note->lost;
    all->diets_lost &= note->diets_lost;
    all->diets_gained &= note->diets_gained;
    all->claims_gained = words_in(a, &all->claims_gained, &own->gained, false);
    all->claims_lost = words_in(a, &all->claims_lost, &own->lost, false);
    all->claims_open = words_in(a, &all->claims_open, &own->open, false);
}

static shared_changes shared_by(arena *a, const note_words *by, const swap_note *const notes[],
                                size_t count) {
    const note_claims *first = changes_of(by, notes[0]);
    shared_changes all = {0};
    if (count < 2)
        return all;
    all = (shared_changes){notes[0]->lost, notes[0]->diets_lost, notes[0]->diets_gained,
                           first->gained,  first->lost,          first->open};
    for (size_t i = 1; i < count; i++)
        share(a, &all, by, notes[i]);
    return all;
}

static void put_names(arena *a, const language *in, view *to, const char *key,
                      const word_list *list) {
    if (list->count)
        view_put_text(a, to, key, say_list(a, in, list->items, list->count));
}

/* Puts `all` on the group; nothing where nothing is shared. */
static void put_shared(arena *a, const language *in, view *group, const shared_changes *all) {
    view *put = view_object(a);
    view_put_some(a, put, "allergens_lost_text", allergen_words(a, in, all->lost));
    view_put_some(a, put, "diets_lost_text", diet_words(a, in, all->diets_lost));
    view_put_some(a, put, "diets_gained_text", diet_words(a, in, all->diets_gained));
    put_names(a, in, put, "claims_gained_text", &all->claims_gained);
    put_names(a, in, put, "claims_lost_text", &all->claims_lost);
    put_names(a, in, put, "claims_open_text", &all->claims_open);
    if (put->count)
        view_put(group, "all", put);
}

/* -- a group -------------------------------------------------------------------------------------
 */

/* A group in the making: its columns, and what all its notes have alike. */
typedef struct {
    const note_words *by;
    shared_changes all;
    const char *each; /* the amount of the first */
    bool alike;       /* all have that amount */
    bool has_liquid, has_figures, has_cost, has_more;
} note_table;

static void put_own_claims(arena *a, view *row, const note_table *in, const swap_note *note) {
    const note_claims *own = changes_of(in->by, note);
    const struct {
        const char *key;
        const word_list *own, *all;
    } rows[] = {{"claims_gained_text", &own->gained, &in->all.claims_gained},
                {"claims_lost_text", &own->lost, &in->all.claims_lost},
                {"claims_open_text", &own->open, &in->all.claims_open}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        word_list only = words_in(a, rows[i].own, rows[i].all, true);
        put_names(a, in->by->in, row, rows[i].key, &only);
    }
}

/* What has no column of its own. An allergen that comes stands in the row, whoever shares it. */
static void put_more(arena *a, view *row, const note_table *in, const swap_note *note,
                     bool is_first) {
    const shared_changes *all = &in->all;
    view_put_some(a, row, "allergens_gained_text", allergen_words(a, in->by->in, note->gained));
    view_put_some(a, row, "diets_lost_text",
                  diet_words(a, in->by->in, note->diets_lost & ~all->diets_lost));
    view_put_some(a, row, "past_rescue_text", note_past_rescue_text(a, in->by, note));
    if (!is_first) /* the first one's stands on the group, with bars */
        view_put_some(a, row, "balance_text", balance_changes_text(a, in->by->in, note));
    view_put_some(a, row, "allergens_lost_text",
                  allergen_words(a, in->by->in, note->lost & ~all->lost));
    view_put_some(a, row, "diets_gained_text",
                  diet_words(a, in->by->in, note->diets_gained & ~all->diets_gained));
    put_own_claims(a, row, in, note);
}

static void put_row(arena *a, view *list, note_table *in, const swap_note *note, bool is_first) {
    view *row = view_put_object(a, list, NULL);
    view_put_note_names(a, row, in->by, note);
    const char *amount = view_put_note_use(a, row, in->by, note);
    view_put_note_liquid(a, row, in->by, note);
    bool figures = view_put_note_figures(a, row, in->by, note);
    const char *cost = note_cost_change_text(a, in->by, note);
    view_put_some(a, row, "cost_change_text", cost);
    uint32_t before = row->count;
    put_more(a, row, in, note, is_first);
    in->each = is_first ? amount : in->each;
    in->alike = amount && in->each && strcmp(amount, in->each) == 0 && (is_first || in->alike);
    in->has_liquid = in->has_liquid || note_changes_liquid(note);
    in->has_figures = in->has_figures || figures;
    in->has_cost = in->has_cost || cost;
    in->has_more = in->has_more || row->count > before;
}

/* The replacements of a group with their amounts, as lines of a table. */
static void put_table(arena *a, view *group, const note_words *by, const swap_note *const notes[],
                      size_t count) {
    note_table in = {.by = by, .all = shared_by(a, by, notes, count)};
    view *list = view_put_list(a, group, "notes");
    for (size_t i = 0; i < count; i++)
        put_row(a, list, &in, notes[i], i == 0);
    view_put_bool(a, group, "has_table", true);
    view_put_bool(a, group, "has_liquid", in.has_liquid);
    view_put_bool(a, group, "has_figures", in.has_figures);
    view_put_bool(a, group, "has_cost", in.has_cost);
    view_put_bool(a, group, "has_more", in.has_more);
    view_put_some(a, group, "each_text", in.alike && count > 1 ? in.each : NULL);
    put_shared(a, by->in, group, &in.all);
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
    view_put_note_reasons(a, group, notes[0]);
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

/* -- the whole -----------------------------------------------------------------------------------
 */

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
    const char *title = arena_format(a, "%s: swaps", from->title);
    const char *summary = arena_format(a,
                                       "What can stand in for each ingredient of %s: how much of "
                                       "it, with how much liquid, and what comes out.",
                                       from->title);
    view *page = page_view(a, of->by, "notes", path_of_notes(a, from->slug), title, summary);
    view_put_text(a, page, "title", title);
    view_put_text(a, page, "slug", from->slug);
    view_put_text(a, page, "recipe_title", from->title);
    view_put_text(a, page, "recipe_href", path_of_recipe(a, from->slug));
    view_put_shared(a, page, "swaps", swaps);
    return page;
}
