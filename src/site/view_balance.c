#include "site/view_balance.h"

#include "site/balance_words.h"
#include "site/say.h"

#include <math.h>
#include <stdint.h>

/* -- bars ------------------------------------------------------------------------------------ */

/* A scale that holds 0, `low` and `high` in `width`. */
typedef struct {
    double zero, per_g;
} scale;

static scale scale_of(double low, double high, double width) {
    low = fmin(low, 0);
    high = fmax(high, 0);
    if (high - low <= 0)
        return (scale){0, 0};
    return (scale){-low / (high - low) * width, width / (high - low)};
}

static void put_changes(arena *a, const language *in, view *to, const char *key,
                        const balance_pair *of) {
    enum { BAR_WIDTH = 90 };
    view *list = NULL;
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++) {
        if (!balance_is_told(of, q))
            continue;
        double was = balance_quantity_g(of->before, q).typical;
        double is = balance_quantity_g(of->after, q).typical;
        scale on = scale_of(fmin(was, is), fmax(was, is), BAR_WIDTH);
        list = list ? list : view_put_list(a, to, key);
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "text", balance_change_text(a, in, of, q));
        view_put_number(a, put, "zero", on.zero, 0);
        view_put_number(a, put, "was", was * on.per_g, 0);
        view_put_number(a, put, "is", is * on.per_g, 0);
    }
}

void view_put_balance_changes(arena *a, const language *in, view *to, const char *key,
                              const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    put_changes(a, in, to, key, &compared);
}

/* -- what nobody tried ----------------------------------------------------------------------- */

/* What is said of an untried swap: of water and of what sets, which decide whether it is a bake at
 * all. As a number, so that those alike stand together. */
static const balance_quantity decisive[] = {BALANCE_BOWL, BALANCE_BAKE, BALANCE_SETTING};

static unsigned alike(const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    unsigned key = note->uptake_known;
    for (size_t i = 0; i < COUNT(decisive); i++) {
        bool more = balance_change_g(compared.before, compared.after, decisive[i]) > 0;
        key = key * 3 + (balance_is_told(&compared, decisive[i]) ? 1u + more : 0);
    }
    return key;
}

static const char *untried_text(arena *a, const language *in, const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    const char *words[COUNT(decisive)];
    size_t count = 0;
    for (size_t i = 0; i < COUNT(decisive); i++)
        if (balance_is_told(&compared, decisive[i]))
            words[count++] = balance_change_word(in, compared.before, compared.after, decisive[i]);
    if (count)
        return say_list(a, in, words, count);
    if (!note->uptake_known)
        return SAID(in, OF_UNKNOWN_UPTAKE);
    /* a spoon of it moves no water, whatever it does */
    bool little = note->from_g < balance_step_g(&note->before, BALANCE_BOWL);
    return little ? SAID(in, TOO_LITTLE_TO_TELL) : SAID(in, NO_DIFFERENCE);
}

/* Puts those of `notes` from the first on that are alike with it, and marks them placed. */
static void put_alike(arena *a, const language *in, view *list, const swap_note *notes,
                      size_t count, bool *placed) {
    const char **alike_names = ARENA_ARRAY(a, const char *, count);
    size_t found = 0;
    for (size_t i = 0; i < count; i++) {
        if (placed[i] || alike(&notes[i]) != alike(&notes[0]))
            continue;
        alike_names[found++] = notes[i].to->name;
        placed[i] = true;
    }
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "balance_text", untried_text(a, in, &notes[0]));
    view_put_text(a, put, "names_text", say_list(a, in, alike_names, found));
}

void view_put_untried_balance(arena *a, const language *in, view *to, const swap_note *notes,
                              size_t count) {
    bool *placed = ARENA_ARRAY(a, bool, count);
    view *list = view_list(a);
    for (size_t i = 0; i < count; i++)
        placed[i] = notes[i].tried.count > 0; /* said with what was tried */
    for (size_t i = 0; i < count; i++)
        if (!placed[i])
            put_alike(a, in, list, notes + i, count - i, placed + i);
    if (list->count)
        view_put(view_put_object(a, to, "untried"), "groups", list);
}

/* -- the whole comparison -------------------------------------------------------------------- */

/* "55\u201385 g"; null where the amount is as good as one figure. */
static const char *point_range_text(arena *a, const language *in, const balance_at *at) {
    if (!say_is_about(at->to_g))
        return NULL;
    return say_wide_range(a, in, at->to_g.low, at->to_g.high);
}

static const char *point_liquid_text(arena *a, const note_words *by, const balance_at *at) {
    const double worth_saying_g = 1.5;
    const recipe_line *lines = by->of->lines.items;
    if (!at->there || fabs(at->liquid_g.typical) < worth_saying_g)
        return NULL;
    bool added = at->liquid_g.typical > 0;
    range size = added ? at->liquid_g
                       : (range){-at->liquid_g.high, -at->liquid_g.typical, -at->liquid_g.low};
    const ingredient *liquid = at->liquid_apart ? at->liquid_apart
                               : at->liquid_line == SIZE_MAX
                                   ? pantry_find_folded(by->book->shelf, span_of("water"))
                                   : lines[at->liquid_line].what;
    const char *amount = say_about(a, note_saying(by), liquid, size);
    const char *name = liquid ? liquid->name : SAID(by->in, WATER);
    return added ? SAY(a, by->in, MORE_OF, amount, name) : SAY(a, by->in, LESS_OF, amount, name);
}

const char *balance_best_text(arena *a, const note_words *by, const swap_note *note) {
    recipe_facts about = facts_of(a, by->of, by->book->shelf);
    balance_comparison compared = balance_compare(&about, note);
    const balance_at *best = &compared.at[POINT_BEST];
    if (!best->there)
        return NULL;
    const char *liquid = point_liquid_text(a, by, best);
    const char *amount = SAY(a, by->in, AMOUNT_OF,
                             say_about(a, note_saying(by), note->to, best->to_g), note->to->name);
    return liquid ? SAY(a, by->in, BOTH, amount, liquid) : amount;
}

/* The second that goes or comes. */
static void put_also(arena *a, view *to, const note_words *by, const ingredient *what,
                     double grams) {
    view_put_text(
        a, to, "also_text",
        SAY(a, by->in, AMOUNT_OF, say_weighed(a, note_saying(by), what, grams), what->name));
}

static void put_points(arena *a, view *to, const note_words *by, const swap_note *note,
                       const balance_comparison *of) {
    const language *in = by->in;
    view *list = view_put_list(a, to, "points"), *put = view_put_object(a, list, NULL);
    const ingredient *from = by->of->lines.items[note->line].what;
    view_put_text(a, put, "name", in->points[0]);
    view_put_text(a, put, "key", "before");
    view_put_text(a, put, "amount_text", say_weighed(a, note_saying(by), from, note->from_g));
    view_put_text(a, put, "what", from->name);
    if (note->second_line != SIZE_MAX)
        put_also(a, put, by, by->of->lines.items[note->second_line].what, note->second_from_g);
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        if (!of->at[p].there)
            continue;
        put = view_put_object(a, list, NULL);
        view_put_text(a, put, "name", in->points[p + 1]);
        view_put_text(a, put, "key", balance_point_key(p));
        const char *amount = say_about(a, note_saying(by), note->to, of->at[p].to_g);
        view_put_text(a, put, "amount_text", amount);
        view_put_text(a, put, "range_text", point_range_text(a, in, &of->at[p]));
        view_put_text(a, put, "what", note->to->name);
        if (note->also_to)
            put_also(a, put, by, note->also_to, of->at[p].also_to_g);
        view_put_text(a, put, "liquid_text", point_liquid_text(a, by, &of->at[p]));
    }
}

enum { BOX_WIDTH = 200 };

/* The quantity at one point: its names, the amount, and where the batch was before. */
typedef struct {
    const char *name, *key;
    range grams;
    double was;
} point_row;

static void put_row(arena *a, const language *in, view *rows, const point_row *of,
                    const scale *on) {
    range grams = of->grams;
    view *put = view_put_object(a, rows, NULL);
    bool is_range = grams.high - grams.low >= 1;
    view_put_text(a, put, "name", of->name);
    view_put_text(a, put, "key", of->key);
    view_put_text(a, put, "text", balance_grams_text(a, in, grams.typical));
    view_put_text(a, put, "range_text", balance_range_text(a, in, grams, of->was));
    view_put_number(a, put, "zero", on->zero, 1);
    view_put_number(a, put, "length", grams.typical * on->per_g, 1);
    view_put_number(a, put, "low", on->zero + grams.low * on->per_g, 1);
    view_put_number(a, put, "high", on->zero + grams.high * on->per_g, 1);
    view_put_bool(a, put, "is_range", is_range);
}

static void put_quantity(arena *a, const language *in, view *list, const balance_comparison *of,
                         balance_quantity q) {
    double was = balance_quantity_g(&of->before, q).typical, low = was, high = was;
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        range is = of->at[p].there ? balance_quantity_at(of, p, q) : (range){was, was, was};
        low = fmin(low, is.low);
        high = fmax(high, is.high);
    }
    scale on = scale_of(low, high, BOX_WIDTH);
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", in->quantities[q]);
    view_put_text(a, put, "key", balance_quantity_facts(q)->key);
    view *rows = view_put_list(a, put, "rows");
    put_row(a, in, rows, &(point_row){in->points[0], "before", {was, was, was}, was}, &on);
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            put_row(a, in, rows,
                    &(point_row){in->points[p + 1], balance_point_key(p),
                                 balance_quantity_at(of, p, q), was},
                    &on);
}

void view_put_balance(arena *a, view *to, const char *key, const note_words *by,
                      const recipe_facts *about, const swap_note *note) {
    balance_comparison compared = balance_compare(about, note);
    view *put = view_put_object(a, to, key);
    put_points(a, put, by, note, &compared);
    view *list = view_put_list(a, put, "quantities");
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (balance_is_shown(&compared, q))
            put_quantity(a, by->in, list, &compared, q);
    const balance_at *swapped =
        &compared.at[compared.at[POINT_AS_RULED].there ? POINT_AS_RULED : POINT_EQUAL_WEIGHT];
    const balance_pair told = {&compared.before, &swapped->after, compared.heated,
                               compared.uptake_known};
    put_changes(a, by->in, put, "changes", &told);
    view_put_text(a, put, "faces_text", balance_faces_text(a, by->in, by->of, note));
    view_put_bool(a, put, "no_promise", !compared.at[POINT_AS_RULED].there);
    view_put_bool(a, put, "uptake_unknown", !compared.uptake_known);
}
