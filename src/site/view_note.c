#include "site/view_note.h"

#include "base/number.h"
#include "nutrition/cost.h"
#include "site/balance_words.h"
#include "site/view_balance.h"
#include "site/view_combined.h"
#include "site/view_evidence.h"
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

const char *note_expected(arena *a, const language *in, const swap_note *note) {
    const trial *bake = note->by.bake;
    if (!bake || !bake->texture.count)
        return note->expect;
    const char *came =
        SAY(a, in, CAME_OUT, say_list(a, in, bake->texture.items, bake->texture.count));
    return bake->remarks ? arena_format(a, "%s %s", came, bake->remarks) : came;
}

const char *note_said_by(arena *a, const language *in, const swap_note *note) {
    switch (note->by.by) {
    case SAID_BY_RECIPE:
        return SAID(in, BY_THE_AUTHOR);
    case SAID_BY_TRIAL:
        return SAY(a, in, BY_A_TRIAL, say_date(a, in, note->by.bake->date));
    case SAID_BY_OWN_RULE:
        return SAID(in, BY_OWN_RULE);
    case SAID_BY_REFERENCE:
        return SAID(in, BY_REFERENCE);
    case SAID_BY_NOBODY:
        break;
    }
    return SAID(in, BY_NOBODY);
}

/* Under a gram and a half of liquid there is nothing a kitchen would change. */
#define LIQUID_WORTH_SAYING_G 1.5

static const char *liquid_name(const note_words *by, const swap_note *note) {
    if (note->liquid_apart)
        return note->liquid_apart->name;
    if (note->liquid_line == SIZE_MAX || !by->of->lines.items[note->liquid_line].what)
        return SAID(by->in, WATER);
    return by->of->lines.items[note->liquid_line].what->name;
}

static const ingredient *liquid_ingredient(const note_words *by, const swap_note *note) {
    if (note->liquid_apart)
        return note->liquid_apart;
    if (note->liquid_line != SIZE_MAX)
        return by->of->lines.items[note->liquid_line].what;
    return pantry_find_folded(by->book->shelf, span_of("water"));
}

/* A range this many times wider than the amount says less than the amount does. */
#define TELLS_NOTHING 2

/* What the uncertainty of uptakes leaves open: "15\u201335 g", or both ways where the range crosses
 * nothing. Null when it is narrower than a kitchen would mind. */
static const char *liquid_range_text(arena *a, const language *in, const swap_note *note) {
    enum { WORTH_SAYING_G = 4 };
    double low_g = note->liquid_low_g, high_g = note->liquid_high_g;
    double step = high_g - low_g >= 20 ? 5 : 1;
    double less = number_round(-low_g, step), more = number_round(high_g, step);
    if (high_g - low_g < WORTH_SAYING_G)
        return NULL;
    if (high_g - low_g > TELLS_NOTHING * fabs(note->liquid_change_g))
        return SAID(in, FIGURES_CANT_TELL);
    if (less > 0 && more > 0)
        return SAY(a, in, FROM_LESS_TO_MORE, say_figure(a, in, less, 0),
                   say_figure(a, in, more, 0));
    return say_wide_range(a, in, fmax(fmin(fabs(low_g), fabs(high_g)), 0), fmax(-low_g, high_g));
}

bool note_changes_liquid(const swap_note *note) {
    return fabs(note->liquid_change_g) >= LIQUID_WORTH_SAYING_G;
}

/* How much liquid is added, or held back. */
static range liquid_size(const swap_note *note) {
    range size = {note->liquid_low_g, note->liquid_change_g, note->liquid_high_g};
    return size.typical > 0 ? size : (range){-size.high, -size.typical, -size.low};
}

const char *note_liquid_text(arena *a, const note_words *by, const swap_note *note) {
    if (!note_changes_liquid(note))
        return NULL;
    bool added = note->liquid_change_g > 0;
    const language *in = by->in;
    const char *amount =
        say_about(a, note_saying(by), liquid_ingredient(by, note), liquid_size(note));
    const char *spread = liquid_range_text(a, in, note), *name = liquid_name(by, note);
    const char *change =
        added ? SAY(a, in, ADD_LIQUID, amount, name) : SAY(a, in, HOLD_BACK_LIQUID, amount, name);
    return spread ? SAY(a, in, BY_FEEL, change, spread) : change;
}

void view_put_note_liquid(arena *a, view *to, const note_words *by, const swap_note *note) {
    if (!note_changes_liquid(note))
        return;
    said_amount amount =
        say_amount_parts(a, note_saying(by), liquid_ingredient(by, note), liquid_size(note));
    const char *name = liquid_name(by, note);
    view_put_text(a, to, "liquid_change_text",
                  note->liquid_change_g > 0 ? SAY(a, by->in, MORE_OF, amount.weight, name)
                                            : SAY(a, by->in, LESS_OF, amount.weight, name));
    view_put_some(a, to, "liquid_measure_text", amount.measure);
    view_put_some(a, to, "liquid_range_text", liquid_range_text(a, by->in, note));
}

const char *note_whose_amount_text(arena *a, const language *in, const swap_note *note,
                                   const char *amount) {
    return note->ruled_g > 0 ? SAY(a, in, BY_THE_FIGURES, amount, say_weight(a, in, note->ruled_g))
                             : amount;
}

/* The ends of an amount that is known but roughly, and whose it is where that is not the rule's;
 * else null. */
static const char *amount_range_text(arena *a, const language *in, const swap_note *note) {
    bool wide = note->to_high_g - note->to_low_g > 0.15 * note->to_g && note->to_low_g > 0;
    if (!wide && note->ruled_g <= 0)
        return NULL;
    return note_whose_amount_text(a, in, note,
                                  wide ? say_wide_range(a, in, note->to_low_g, note->to_high_g)
                                       : say_weight(a, in, note->to_g));
}

static range amount_of(const swap_note *note) {
    return (range){note->to_low_g, note->to_g, note->to_high_g};
}

static const char *amount_text(arena *a, const note_words *by, const swap_note *note) {
    if (note->to_g <= 0)
        return NULL;
    const char *weighed = say_about(a, note_saying(by), note->to, amount_of(note));
    const char *ends = amount_range_text(a, by->in, note);
    return ends ? SAY(a, by->in, BETWEEN, weighed, ends) : weighed;
}

const char *view_put_note_use(arena *a, view *to, const note_words *by, const swap_note *note) {
    if (note->to_g <= 0)
        return NULL;
    said_amount amount = say_amount_parts(a, note_saying(by), note->to, amount_of(note));
    view_put_text(a, to, "use_text", amount.weight);
    view_put_some(a, to, "use_measure_text", amount.measure);
    view_put_some(a, to, "use_range_text", amount_range_text(a, by->in, note));
    return amount.weight;
}

static bool changes_known(const note_words *by, const swap_note *note) {
    unsigned needed = 1u << NUTRIENT_PROTEIN | 1u << energy_nutrient(by->energy);
    return note->to_g > 0 && !(note->change.lacking & needed);
}

static const char *protein_text(arena *a, const note_words *by, const swap_note *note) {
    return say_change(a, by->in, note->change.of.of[NUTRIENT_PROTEIN], 1, "g");
}

static const char *energy_text(arena *a, const note_words *by, const swap_note *note) {
    return say_change(a, by->in, note->change.of.of[energy_nutrient(by->energy)], 0, "kcal");
}

static const char *macros_text(arena *a, const note_words *by, const swap_note *note) {
    if (!changes_known(by, note))
        return NULL;
    return SAY(a, by->in, MACROS_CHANGE, protein_text(a, by, note), energy_text(a, by, note));
}

bool view_put_note_figures(arena *a, view *to, const note_words *by, const swap_note *note) {
    if (!changes_known(by, note))
        return false;
    view_put_text(a, to, "protein_text", protein_text(a, by, note));
    view_put_text(a, to, "energy_text", energy_text(a, by, note));
    return true;
}

const char *diet_words(arena *a, const language *in, diet_set set) {
    const char *listed[DIET_COUNT];
    size_t count = 0;
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (set >> i & 1u)
            listed[count++] = in->diets[i];
    return count ? say_list(a, in, listed, count) : NULL;
}

double note_cost_change(const note_words *by, const swap_note *note) {
    const recipe_line *lines = by->of->lines.items;
    double was = cost_of_ingredient(lines[note->line].what, note->from_g);
    double is = cost_of_ingredient(note->to, note->to_g);
    if (was <= 0 || is <= 0 || note_is_combined(note) || by->of->portions <= 0)
        return 0;
    return (is - was) / by->of->portions;
}

const char *note_cost_change_text(arena *a, const note_words *by, const swap_note *note) {
    double change = note_cost_change(by, note);
    return change == 0 ? NULL : say_change(a, by->in, change, 2, by->currency ? by->currency : "");
}

const char *note_cost_text(arena *a, const note_words *by, const swap_note *note) {
    const char *change = note_cost_change_text(a, by, note);
    return change ? SAY(a, by->in, COST_CHANGE, change) : NULL;
}

void view_put_claim_names(arena *a, view *to, const char *key, const note_words *by,
                          const word_list *list) {
    const char **said = ARENA_ARRAY(a, const char *, list->count);
    for (size_t i = 0; i < list->count; i++)
        said[i] = claim_word_named(by->in, by->law, list->items[i]);
    if (list->count)
        view_put_text(a, to, key, say_list(a, by->in, said, list->count));
}

void view_put_claim_changes(arena *a, view *to, const note_words *by, const note_claims *changes) {
    view_put_claim_names(a, to, "claims_gained_text", by, &changes->gained);
    view_put_claim_names(a, to, "claims_lost_text", by, &changes->lost);
    view_put_claim_names(a, to, "claims_open_text", by, &changes->open);
}

static void put_changes(arena *a, view *to, const note_words *by, const swap_note *note) {
    view_put_some(a, to, "macros_text", macros_text(a, by, note));
    view_put_some(a, to, "cost_text", note_cost_text(a, by, note));
    if (by->claims)
        view_put_claim_changes(a, to, by, &by->claims[note - by->first]);
    view_put_some(a, to, "allergens_gained_text", allergen_words(a, by->in, note->gained));
    view_put_some(a, to, "allergens_lost_text", allergen_words(a, by->in, note->lost));
    view_put_some(a, to, "diets_lost_text", diet_words(a, by->in, note->diets_lost));
    view_put_some(a, to, "diets_gained_text", diet_words(a, by->in, note->diets_gained));
}

const char *note_past_rescue_text(arena *a, const note_words *by, const swap_note *note) {
    if (!note->past_rescue)
        return NULL;
    if (note->ruled_g > 0)
        return SAY(a, by->in, RULED_TOO_MUCH, say_weight(a, by->in, note->ruled_g));
    if (note->says != VERDICT_AVOID) { /* somebody says that it goes: then the model only warns */
        const char *better = balance_best_text(a, by, note);
        return better ? SAY(a, by->in, PAST_USUAL_BETTER, better) : SAID(by->in, PAST_USUAL);
    }
    if (note->liquid_needed_g > 0)
        return SAID(by->in, TAKES_UP_TOO_MUCH);
    return SAID(by->in, LEAVES_TOO_MUCH_FREE);
}

/* "common practice", "published: …": what the rule rests on. A rule's own words stay as they are.
 */
static const char *basis_text(arena *a, const language *in, const char *basis) {
    static const char published[] = "published: ";
    static const struct {
        const char *basis;
        sentence_key says;
    } rows[] = {{"common practice", SAY_BASIS_COMMON_PRACTICE},
                {"from memory", SAY_BASIS_FROM_MEMORY},
                {"trial", SAY_BASIS_TRIAL}};
    for (size_t i = 0; basis && i < COUNT(rows); i++)
        if (strcmp(basis, rows[i].basis) == 0)
            return say(a, in, rows[i].says, NULL);
    if (basis && strncmp(basis, published, strlen(published)) == 0)
        return SAY(a, in, BASIS_PUBLISHED, basis + strlen(published));
    return basis;
}

const char *note_uncounted_text(const language *in, const swap_note *note) {
    return note->also && note->also_asks ? SAID(in, NOT_COUNTED) : NULL;
}

void view_put_note_reasons(arena *a, const language *in, view *to, const swap_note *note) {
    view_put_text(a, to, "also", note->also);
    view_put_some(a, to, "uncounted_text", note_uncounted_text(in, note));
    view_put_text(a, to, "expect", note_expected(a, in, note));
    view_put_text(a, to, "because", note->because);
    view_put_text(a, to, "said_by", note_said_by(a, in, note));
    /* The author's word and a trial are their own basis. */
    bool of_a_rule = note->by.by == SAID_BY_OWN_RULE || note->by.by == SAID_BY_REFERENCE;
    view_put_text(a, to, "basis", of_a_rule ? basis_text(a, in, note->basis) : NULL);
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

void view_put_note_names(arena *a, view *to, const note_words *by, const swap_note *note) {
    view_put_text(a, to, "id", note_id(a, by->of, note));
    view_put_text(a, to, "to", note->to->name);
    /* what comes in a combined swap alone has no page of its own */
    view_put_text(a, to, "to_href",
                  note_is_combined(note) ? NULL : path_of_ingredient(a, note->to));
    if (main_swaps_have(&by->pages, note))
        view_put_text(a, to, "page_href", path_of_swapped(a, by->of, note));
}

void view_put_note_sentences(arena *a, view *to, const note_words *by, const swap_note *note,
                             bool is_first) {
    view_put_note_names(a, to, by, note);
    view_put_combined(a, to, by, note);
    if (note->says == VERDICT_AVOID)
        return; /* no amount is advised, so there is nothing to say of one */
    view_put_some(a, to, "amount_text", amount_text(a, by, note));
    view_put_some(a, to, "liquid_text", note_liquid_text(a, by, note));
    view_put_some(a, to, "past_rescue_text", note_past_rescue_text(a, by, note));
    put_changes(a, to, by, note);
    if (!is_first) /* the first one's stands on the group, with bars */
        view_put_some(a, to, "balance_text", balance_changes_text(a, by->in, note));
}

void view_put_note_balance(arena *a, view *group, const note_words *by, const swap_note *first) {
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

void view_put_note(arena *a, view *to, const note_words *by, const swap_note *note) {
    view_put_verdict(a, by->in, to, note->says);
    view_put_note_reasons(a, by->in, to, note);
    view_put_note_balance(a, to, by, note);
    view_put_note_sentences(a, to, by, note, true);
    view_put_tried(a, to, by, &note, 1);
}
