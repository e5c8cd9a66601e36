#include "site/view_swaps.h"

#include "base/number.h"
#include "nutrition/cost.h"
#include "site/balance_words.h"
#include "site/phrase.h"
#include "site/view_balance.h"
#include "site/view_combined.h"
#include "site/view_evidence.h"
#include "site/view_picks.h"
#include "site/view_verdict.h"

#include <math.h>
#include <stdint.h>

note_words note_words_of(const page_maker *by, const recipe_figures *figures,
                         const swap_notes *notes) {
    const site_settings *settings = &by->folder->settings;
    return (note_words){.in = settings->in,
                        .of = figures->of,
                        .book = &by->folder->book,
                        .cups = settings->cups,
                        .energy = settings->energy,
                        .law = settings->law,
                        .currency = settings->currency,
                        .pages = main_swaps_of(figures->of, notes, settings->swap_pages),
                        .figures = figures,
                        .first = notes->items};
}

const char *note_said_by(arena *a, const swap_note *note) {
    switch (note->by.by) {
    case SAID_BY_RECIPE:
        return "the author, on this recipe";
    case SAID_BY_TRIAL:
        return arena_format(a, "a trial bake of %s", phrase_date(a, note->by.bake->date));
    case SAID_BY_OWN_RULE:
        return "a rule of this kitchen";
    case SAID_BY_REFERENCE:
        return "the reference rules";
    case SAID_BY_NOBODY:
        break;
    }
    return "nobody yet";
}

/* Under a gram and a half of liquid there is nothing a kitchen would change. */
#define LIQUID_WORTH_SAYING_G 1.5

static const char *liquid_name(const note_words *by, const swap_note *note) {
    if (note->liquid_line == SIZE_MAX || !by->of->lines.items[note->liquid_line].what)
        return "water";
    return by->of->lines.items[note->liquid_line].what->name;
}

static const ingredient *liquid_ingredient(const note_words *by, const swap_note *note) {
    if (note->liquid_line != SIZE_MAX)
        return by->of->lines.items[note->liquid_line].what;
    return pantry_find_folded(by->book->shelf, span_of("water"));
}

/* What the uncertainty of uptakes leaves open: "; 15\u201335 g, by feel", or both ways where the
 * range crosses nothing. Empty when it is narrower than a kitchen would mind. */
static const char *liquid_spread(arena *a, double low_g, double high_g) {
    enum { WORTH_SAYING_G = 4 };
    double step = high_g - low_g >= 20 ? 5 : 1;
    double less = number_round(-low_g, step), more = number_round(high_g, step);
    if (high_g - low_g < WORTH_SAYING_G)
        return "";
    if (less > 0 && more > 0)
        return arena_format(a, "; by feel, from %s g less to %s g more", number_copy(a, less, 0),
                            number_copy(a, more, 0));
    return arena_format(
        a, "; by feel, %s",
        phrase_wide_range(a, fmax(fmin(fabs(low_g), fabs(high_g)), 0), fmax(-low_g, high_g)));
}

const char *note_liquid_text(arena *a, const note_words *by, const swap_note *note) {
    double change = note->liquid_change_g;
    if (fabs(change) < LIQUID_WORTH_SAYING_G)
        return NULL;
    bool added = change > 0;
    range size = {note->liquid_low_g, change, note->liquid_high_g};
    if (!added)
        size = (range){-size.high, -size.typical, -size.low};
    const char *amount = phrase_about(a, liquid_ingredient(by, note), size, by->cups);
    const char *spread = liquid_spread(a, note->liquid_low_g, note->liquid_high_g);
    return arena_format(a, "%s %s %s%s%s", added ? "Add" : "Hold back", amount,
                        added ? "" : "of the ", liquid_name(by, note), spread);
}

static const char *amount_text(arena *a, const note_words *by, const swap_note *note) {
    if (note->to_g <= 0)
        return NULL;
    const range amount = {note->to_low_g, note->to_g, note->to_high_g};
    const char *weighed = phrase_about(a, note->to, amount, by->cups);
    bool wide = amount.high - amount.low > 0.15 * amount.typical && amount.low > 0;
    if (!wide)
        return weighed;
    return arena_format(a, "%s; between %s", weighed,
                        phrase_wide_range(a, amount.low, amount.high));
}

static const char *macros_text(arena *a, const note_words *by, const swap_note *note) {
    static const unsigned needed = 1u << NUTRIENT_PROTEIN;
    const macros *change = &note->change;
    nutrient energy = energy_nutrient(by->energy);
    if (note->to_g <= 0 || change->lacking & (needed | 1u << energy))
        return NULL;
    return arena_format(a, "protein %s, energy %s a portion",
                        phrase_change(a, change->of.of[NUTRIENT_PROTEIN], 1, "g"),
                        phrase_change(a, change->of.of[energy], 0, "kcal"));
}

static const char *diets_text(arena *a, diet_set set) {
    const char *listed[DIET_COUNT];
    size_t count = 0;
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (set >> i & 1u)
            listed[count++] = diet_word((diet)i);
    return count ? phrase_list(a, listed, count) : NULL;
}

double note_cost_change(const note_words *by, const swap_note *note) {
    const recipe_line *lines = by->of->lines.items;
    double was = cost_of_ingredient(lines[note->line].what, note->from_g);
    double is = cost_of_ingredient(note->to, note->to_g);
    if (was <= 0 || is <= 0 || note_is_combined(note) || by->of->portions <= 0)
        return 0;
    return (is - was) / by->of->portions;
}

const char *note_cost_text(arena *a, const note_words *by, const swap_note *note) {
    double change = note_cost_change(by, note);
    if (change == 0)
        return NULL;
    return arena_format(a, "cost %s a portion",
                        phrase_change(a, change, 2, by->currency ? by->currency : ""));
}

static void put_names(arena *a, view *to, const char *key, const word_list *list) {
    if (list->count)
        view_put_text(a, to, key, phrase_list(a, list->items, list->count));
}

void view_put_claim_changes(arena *a, view *to, const note_claims *changes) {
    put_names(a, to, "claims_gained_text", &changes->gained);
    put_names(a, to, "claims_lost_text", &changes->lost);
    put_names(a, to, "claims_open_text", &changes->open);
}

static void put_changes(arena *a, view *to, const note_words *by, const swap_note *note) {
    view_put_some(a, to, "macros_text", macros_text(a, by, note));
    view_put_some(a, to, "cost_text", note_cost_text(a, by, note));
    if (by->claims)
        view_put_claim_changes(a, to, &by->claims[note - by->first]);
    view_put_some(a, to, "allergens_gained_text", allergen_words(a, by->in, note->gained));
    view_put_some(a, to, "allergens_lost_text", allergen_words(a, by->in, note->lost));
    view_put_some(a, to, "diets_lost_text", diets_text(a, note->diets_lost));
    view_put_some(a, to, "diets_gained_text", diets_text(a, note->diets_gained));
}

const char *note_past_rescue_text(arena *a, const note_words *by, const swap_note *note) {
    if (!note->past_rescue)
        return NULL;
    if (note->says != VERDICT_AVOID) { /* somebody says that it goes: then the model only warns */
        const char *better = balance_best_text(a, by, note);
        return arena_format(
            a,
            "By its water this is more change than a batch usually bears%s%s: go by "
            "feel, and try a small batch first.",
            better ? "; the figures come closest with " : "", better ? better : "");
    }
    if (note->liquid_needed_g > 0)
        return "It would take up more water than this batch can be given: no amount of liquid "
               "rescues it.";
    return "It leaves so much water free that holding liquid back does not rescue it.";
}

/* What one rule says once for all the ingredients it speaks of. */
static void put_reasons(arena *a, view *to, const swap_note *note) {
    view_put_text(a, to, "also", note->also);
    view_put_text(a, to, "expect", note->expect);
    view_put_text(a, to, "because", note->because);
    view_put_text(a, to, "said_by", note_said_by(a, note));
    /* The author's word and a trial are their own basis. */
    bool of_a_rule = note->by.by == SAID_BY_OWN_RULE || note->by.by == SAID_BY_REFERENCE;
    view_put_text(a, to, "basis", of_a_rule ? note->basis : NULL);
}

/* The address of a note within its page. A recipe may use one ingredient in two lines: the later
 * one's notes are numbered, so that links from elsewhere lead to the first. */
const char *note_id(arena *a, const recipe *of, const swap_note *note) {
    const recipe_line *lines = of->lines.items;
    unsigned earlier = 0;
    for (size_t i = 0; i < note->line; i++)
        earlier += lines[i].what == lines[note->line].what;
    const char *from = lines[note->line].what->slug;
    if (note->second_line != SIZE_MAX)
        from = arena_format(a, "%s-and-%s", from, lines[note->second_line].what->slug);
    const char *id = arena_format(a, "swap-%s-%s", from, note->to->slug);
    if (note->also_to)
        id = arena_format(a, "%s-and-%s", id, note->also_to->slug);
    return earlier ? arena_format(a, "%s-%u", id, earlier + 1) : id;
}

/* What holds for this replacement alone: amounts, liquid, changes, balance. Lists are long, so
 * what a note does not have is left out. */
static void put_amounts(arena *a, view *to, const note_words *by, const swap_note *note,
                        bool is_first) {
    view_put_text(a, to, "id", note_id(a, by->of, note));
    view_put_text(a, to, "to", note->to->name);
    /* what comes in a combined swap alone has no page of its own */
    view_put_text(a, to, "to_href",
                  note_is_combined(note) ? NULL : path_of_ingredient(a, note->to));
    view_put_combined(a, to, by, note);
    if (main_swaps_have(&by->pages, note))
        view_put_text(a, to, "page_href", path_of_swapped(a, by->of, note));
    if (note->says == VERDICT_AVOID)
        return; /* no amount is advised, so there is nothing to say of one */
    view_put_some(a, to, "amount_text", amount_text(a, by, note));
    view_put_some(a, to, "liquid_text", note_liquid_text(a, by, note));
    view_put_some(a, to, "past_rescue_text", note_past_rescue_text(a, by, note));
    put_changes(a, to, by, note);
    if (!is_first) /* the first one's stands on the group, with bars */
        view_put_some(a, to, "balance_text", balance_changes_text(a, by->in, note));
}

static bool same_decision(const swap_note *one, const swap_note *other) {
    return one->says == other->says && one->by.by == other->by.by &&
           one->by.rule == other->by.rule && one->by.bake == other->by.bake;
}

/* "cashew butter, tahini and 4 more": what a folded group is known by. */
static const char *names_text(arena *a, const swap_note *const notes[], size_t count) {
    enum { NAMES_SHOWN = 3 };
    const char *shown[NAMES_SHOWN + 1];
    if (count <= NAMES_SHOWN + 1) {
        for (size_t i = 0; i < count; i++)
            shown[i] = note_to_names(a, notes[i]);
        return phrase_list(a, shown, count);
    }
    for (size_t i = 0; i < NAMES_SHOWN; i++)
        shown[i] = note_to_names(a, notes[i]);
    shown[NAMES_SHOWN] = arena_format(a, "%zu more", count - NAMES_SHOWN);
    return phrase_list(a, shown, COUNT(shown));
}

/* What a baker would notice of the first replacement: bars for some, in words for all. */
static void put_balance(arena *a, view *group, const note_words *by, const swap_note *first) {
    view *balance_of_first = view_object(a);
    if (first->in_the_way)
        return;
    view_put_balance_changes(a, by->in, balance_of_first, "changes", first);
    if (!balance_of_first->count)
        return;
    view_put(group, "balance", balance_of_first);
    view_put_text(a, balance_of_first, "with", first->to->name);
    view_put_bool(a, balance_of_first, "weight_for_weight", first->to_g <= 0);
    view_put_some(a, balance_of_first, "faces_text", balance_faces_text(a, by->in, by->of, first));
}

/* Adds the notes that one rule decides alike, the first of them first. */
static void put_group(arena *a, view *groups, const note_words *by, const swap_note *const notes[],
                      size_t count) {
    view *group = view_put_object(a, groups, NULL);
    view_put_verdict(a, by->in, group, notes[0]->says);
    view_put_text(a, group, "names_text", names_text(a, notes, count));
    view_put_bool(a, group, "many", count > 1);
    put_reasons(a, group, notes[0]);
    put_balance(a, group, by, notes[0]);
    if (notes[0]->says == VERDICT_AVOID) /* what goes wrong, shown on the first of them */
        view_put_some(a, group, "past_rescue_text", note_past_rescue_text(a, by, notes[0]));
    view *list = view_put_list(a, group, "notes");
    for (size_t i = 0; i < count; i++)
        put_amounts(a, view_put_object(a, list, NULL), by, notes[i], i == 0);
    view_put_tried(a, group, by, notes, count);
}

void view_put_note(arena *a, view *to, const note_words *by, const swap_note *note) {
    view_put_verdict(a, by->in, to, note->says);
    put_reasons(a, to, note);
    put_balance(a, to, by, note);
    put_amounts(a, to, by, note, true);
    view_put_tried(a, to, by, &note, 1);
}

/* The same for programs: grams instead of words. */
static void put_answer(arena *a, view *answers, const note_words *by,
                       const swap_note *const notes[], size_t count) {
    const swap_note *first = notes[0];
    view *answered = view_put_object(a, answers, NULL);
    view_put_text(a, answered, "verdict", verdict_word(first->says));
    view_put_some(a, answered, "also", first->also);
    view_put_some(a, answered, "expect", first->expect);
    view_put_some(a, answered, "because", first->because);
    view_put_some(a, answered, "basis", first->basis);
    view_put_text(a, answered, "said_by", note_said_by(a, first));
    view *list = view_put_list(a, answered, "to");
    for (size_t i = 0; i < count; i++) {
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", notes[i]->to->name);
        if (note_is_combined(notes[i])) {
            view_put_number(a, one, "from_g", notes[i]->from_g, 1);
            view_put_combined_data(a, one, by->of, notes[i], 1);
        }
        if (notes[i]->tried.count)
            view_put_evidence(a, one, &notes[i]->tried);
        if (first->says == VERDICT_AVOID)
            continue;
        view_put_number(a, one, "to_g", notes[i]->to_g, 1);
        if (fabs(notes[i]->liquid_change_g) >= LIQUID_WORTH_SAYING_G)
            view_put_number(a, one, "liquid_change_g", notes[i]->liquid_change_g, 1);
        if (notes[i]->to_g > 0)
            view_put_changes_data(a, one, by, notes[i]);
    }
}

typedef void group_putter(arena *a, view *to, const note_words *by, const swap_note *const notes[],
                          size_t count);

/* Groups the `count` answered notes from `first` on by what decides them, in their order, so that
 * what a rule says is said once; puts each group on `to`. */
static void put_groups(arena *a, view *to, const note_words *by, const swap_note *first,
                       size_t count, group_putter *put) {
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

/* The notes of one replaced ingredient: from `first` to `end`, the tried ones first. */
typedef struct {
    const swap_note *first;
    size_t count, tried;
    bool combined;
} line_notes;

/* The next line's notes from `*at` on; moves `*at` past them. */
static line_notes next_line(const swap_notes *notes, size_t *at) {
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

static void put_line(arena *a, view *lines, const note_words *by, const line_notes *of) {
    const ingredient *from = by->of->lines.items[of->first->line].what;
    view *put = view_put_object(a, lines, NULL);
    view_put_text(a, put, "from", from->name);
    view_put_text(a, put, "from_text", phrase_weighed(a, from, of->first->from_g, by->cups));
    view_put_bool(a, put, "is_minor", ingredient_is_staple(from));
    view_put_text(a, put, "best_word", verdict_word(of->first->says));
    view_put_number(a, put, "count", (double)of->tried, 0);
    put_groups(a, view_put_list(a, put, "groups"), by, of->first, of->tried, put_group);
    view_put_bool(a, put, "has_untried", of->count > of->tried);
    view_put_untried_balance(a, by->in, put, of->first + of->tried, of->count - of->tried);
    view_put_tried_untried(a, put, by, of->first + of->tried, of->count - of->tried);
}

void view_put_swaps(arena *a, view *page, const note_words *by, const swap_notes *notes) {
    view *swaps = view_put_object(a, page, "swaps");
    view *lines = view_put_list(a, swaps, "lines");
    view *combined = view_put_list(a, view_put_object(a, swaps, "combined"), "groups");
    for (size_t i = 0; i < notes->count;) {
        line_notes of = next_line(notes, &i);
        if (of.combined)
            put_groups(a, combined, by, of.first, of.count, put_group);
        else
            put_line(a, lines, by, &of);
    }
    view_put_bool(a, swaps, "has", notes->count > 0);
    view_put_bool(a, swaps, "has_combined", combined->count > 0);
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
        line_notes line = next_line(notes, &i);
        view *put = view_put_object(a, swaps, NULL);
        view_put_text(a, put, "from", of->lines.items[line.first->line].what->name);
        view_put_number(a, put, "from_g", line.first->from_g, 1);
        view_put_lines_that_go(a, put, of, line.first);
        put_groups(a, view_put_list(a, put, "answers"), by, line.first, line.tried, put_answer);
        put_untried_data(a, put, line.first + line.tried, line.count - line.tried);
    }
}
