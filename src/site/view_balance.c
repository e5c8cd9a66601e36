#include "site/view_balance.h"

#include "site/balance_words.h"
#include "site/phrase.h"

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

static void put_changes(arena *a, view *to, const char *key, const balance_pair *of) {
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
        view_put_text(a, put, "text", balance_change_text(a, of->before, of->after, q));
        view_put_number(a, put, "zero", on.zero, 0);
        view_put_number(a, put, "was", was * on.per_g, 0);
        view_put_number(a, put, "is", is * on.per_g, 0);
    }
}

void view_put_balance_changes(arena *a, view *to, const char *key, const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    put_changes(a, to, key, &compared);
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

static const char *untried_text(arena *a, const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    const char *words[COUNT(decisive)];
    size_t count = 0;
    for (size_t i = 0; i < COUNT(decisive); i++)
        if (balance_is_told(&compared, decisive[i]))
            words[count++] = balance_change_word(compared.before, compared.after, decisive[i]);
    if (count)
        return phrase_list(a, words, count);
    if (!note->uptake_known)
        return "of unknown water uptake";
    /* a spoon of it moves no water, whatever it does */
    bool little = note->from_g < balance_step_g(&note->before, BALANCE_BOWL);
    return little ? "too little of it to tell by water" : "no difference in water or set";
}

/* Puts those of `notes` from the first on that are alike with it, and marks them placed. */
static void put_alike(arena *a, view *list, const swap_note *notes, size_t count, bool *placed) {
    const char **alike_names = ARENA_ARRAY(a, const char *, count);
    size_t found = 0;
    for (size_t i = 0; i < count; i++) {
        if (placed[i] || alike(&notes[i]) != alike(&notes[0]))
            continue;
        alike_names[found++] = notes[i].to->name;
        placed[i] = true;
    }
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "balance_text", untried_text(a, &notes[0]));
    view_put_text(a, put, "names_text", phrase_list(a, alike_names, found));
}

void view_put_untried_balance(arena *a, view *to, const swap_note *notes, size_t count) {
    bool *placed = ARENA_ARRAY(a, bool, count);
    view *list = view_list(a);
    for (size_t i = 0; i < count; i++)
        placed[i] = notes[i].tried.count > 0; /* said with what was tried */
    for (size_t i = 0; i < count; i++)
        if (!placed[i])
            put_alike(a, list, notes + i, count - i, placed + i);
    if (list->count)
        view_put(view_put_object(a, to, "untried"), "groups", list);
}

/* -- the whole comparison -------------------------------------------------------------------- */

/* "55\u201385 g"; null where the amount is as good as one figure. */
static const char *point_range_text(arena *a, const balance_at *at, const char *amount_text) {
    if (strncmp(amount_text, "about ", strlen("about ")) != 0)
        return NULL;
    return phrase_wide_range(a, at->to_g.low, at->to_g.high);
}

static const char *point_liquid_text(arena *a, const note_words *by, const balance_at *at) {
    const double worth_saying_g = 1.5;
    const recipe_line *lines = by->of->lines.items;
    if (!at->there || fabs(at->liquid_g.typical) < worth_saying_g)
        return NULL;
    bool added = at->liquid_g.typical > 0;
    range size = added ? at->liquid_g
                       : (range){-at->liquid_g.high, -at->liquid_g.typical, -at->liquid_g.low};
    const ingredient *liquid = at->liquid_line == SIZE_MAX
                                   ? pantry_find_folded(by->book->shelf, span_of("water"))
                                   : lines[at->liquid_line].what;
    return arena_format(a, "%s %s %s", phrase_about(a, liquid, size, by->cups),
                        added ? "more" : "less", liquid ? liquid->name : "water");
}

const char *balance_best_text(arena *a, const note_words *by, const swap_note *note) {
    recipe_facts about = facts_of(a, by->of, by->book->shelf);
    balance_comparison compared = balance_compare(&about, note);
    const balance_at *best = &compared.at[POINT_BEST];
    if (!best->there)
        return NULL;
    const char *liquid = point_liquid_text(a, by, best);
    return arena_format(a, "%s %s%s%s", phrase_about(a, note->to, best->to_g, by->cups),
                        note->to->name, liquid ? " and " : "", liquid ? liquid : "");
}

/* The second that goes or comes. */
static void put_also(arena *a, view *to, const note_words *by, const ingredient *what,
                     double grams) {
    view_put_text(a, to, "also_text",
                  arena_format(a, "%s %s", phrase_weighed(a, what, grams, by->cups), what->name));
}

static void put_points(arena *a, view *to, const note_words *by, const swap_note *note,
                       const balance_comparison *of) {
    view *list = view_put_list(a, to, "points"), *put = view_put_object(a, list, NULL);
    const ingredient *from = by->of->lines.items[note->line].what;
    view_put_text(a, put, "name", balance_point_names[0]);
    view_put_text(a, put, "key", "before");
    view_put_text(a, put, "amount_text", phrase_weighed(a, from, note->from_g, by->cups));
    view_put_text(a, put, "what", from->name);
    if (note->second_line != SIZE_MAX)
        put_also(a, put, by, by->of->lines.items[note->second_line].what, note->second_from_g);
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        if (!of->at[p].there)
            continue;
        put = view_put_object(a, list, NULL);
        view_put_text(a, put, "name", balance_point_names[p + 1]);
        view_put_text(a, put, "key", balance_point_key(p));
        const char *amount = phrase_about(a, note->to, of->at[p].to_g, by->cups);
        view_put_text(a, put, "amount_text", amount);
        view_put_text(a, put, "range_text", point_range_text(a, &of->at[p], amount));
        view_put_text(a, put, "what", note->to->name);
        if (note->also_to)
            put_also(a, put, by, note->also_to, of->at[p].also_to_g);
        view_put_text(a, put, "liquid_text", point_liquid_text(a, by, &of->at[p]));
    }
}

enum { BOX_WIDTH = 200 };

static void put_row(arena *a, view *rows, const char *name, const char *key, range grams,
                    const scale *on, double was) {
    view *put = view_put_object(a, rows, NULL);
    bool is_range = grams.high - grams.low >= 1;
    view_put_text(a, put, "name", name);
    view_put_text(a, put, "key", key);
    view_put_text(a, put, "text", balance_grams_text(a, grams.typical));
    view_put_text(a, put, "range_text", balance_range_text(a, grams, was));
    view_put_number(a, put, "zero", on->zero, 1);
    view_put_number(a, put, "length", grams.typical * on->per_g, 1);
    view_put_number(a, put, "low", on->zero + grams.low * on->per_g, 1);
    view_put_number(a, put, "high", on->zero + grams.high * on->per_g, 1);
    view_put_bool(a, put, "is_range", is_range);
}

static void put_quantity(arena *a, view *list, const balance_comparison *of, balance_quantity q) {
    double was = balance_quantity_g(&of->before, q).typical, low = was, high = was;
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        range is = of->at[p].there ? balance_quantity_at(of, p, q) : (range){was, was, was};
        low = fmin(low, is.low);
        high = fmax(high, is.high);
    }
    scale on = scale_of(low, high, BOX_WIDTH);
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", balance_quantity_facts(q)->name);
    view_put_text(a, put, "key", balance_quantity_facts(q)->key);
    view *rows = view_put_list(a, put, "rows");
    put_row(a, rows, balance_point_names[0], "before", (range){was, was, was}, &on, was);
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            put_row(a, rows, balance_point_names[p + 1], balance_point_key(p),
                    balance_quantity_at(of, p, q), &on, was);
}

void view_put_balance(arena *a, view *to, const char *key, const note_words *by,
                      const recipe_facts *about, const swap_note *note) {
    balance_comparison compared = balance_compare(about, note);
    view *put = view_put_object(a, to, key);
    put_points(a, put, by, note, &compared);
    view *list = view_put_list(a, put, "quantities");
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (balance_is_shown(&compared, q))
            put_quantity(a, list, &compared, q);
    const balance_at *swapped =
        &compared.at[compared.at[POINT_AS_RULED].there ? POINT_AS_RULED : POINT_EQUAL_WEIGHT];
    const balance_pair told = {&compared.before, &swapped->after, compared.heated,
                               compared.uptake_known};
    put_changes(a, put, "changes", &told);
    view_put_text(a, put, "faces_text", balance_faces_text(a, by->of, note));
    view_put_bool(a, put, "no_promise", !compared.at[POINT_AS_RULED].there);
    view_put_bool(a, put, "uptake_unknown", !compared.uptake_known);
}
