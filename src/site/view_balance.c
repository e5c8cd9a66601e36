#include "site/view_balance.h"

#include "base/number.h"
#include "site/phrase.h"

#include <math.h>
#include <stdint.h>

/* The first is of the batch before the swap. */
static const char *const point_names[POINT_COUNT + 1] = {"as written", "at equal weight",
                                                         "as advised", "closest by the figures"};

/* -- what is noticed ------------------------------------------------------------------------- */

/* What a baker says of more and of less, and of what. */
static const struct {
    const char *more, *less, *of;
} said[BALANCE_QUANTITIES] = {
    [BALANCE_BOWL] = {"runnier in the bowl", "stiffer in the bowl", "free water"},
    [BALANCE_BAKE] = {"moister once baked", "drier once baked", "free water"},
    [BALANCE_SETTING] = {"sets firmer", "sets softer", "heat-setting protein"},
    [BALANCE_BULK] = {"more body", "less body", "dry solids"},
    [BALANCE_FAT] = {"richer", "leaner", "fat"},
    [BALANCE_SWEETNESS] = {"sweeter", "less sweet", "sugar's sweetness"},
};

/* Waters rest on uptakes, which are known to a fifth at best. */
static double told_g(double change_g, balance_quantity which) {
    double size_g = fabs(change_g);
    bool of_water = which == BALANCE_BOWL || which == BALANCE_BAKE;
    return number_round(size_g, of_water && size_g >= 20 ? 5 : size_g < 3 ? 0.5 : 1);
}

/* Of setting protein, the strength that changed: "40 g more firm-setting protein". */
static const char *setting_text(arena *a, const balance *before, const balance *after) {
    double firm_g = after->firm_g - before->firm_g, soft_g = after->soft_g - before->soft_g;
    bool firmly = fabs(firm_g) >= fabs(soft_g) / 2;
    double change_g = firmly ? firm_g : soft_g;
    const char *first = arena_format(a, "about %s %s %s-setting protein",
                                     phrase_amount(a, told_g(change_g, BALANCE_SETTING), "g"),
                                     change_g > 0 ? "more" : "less", firmly ? "firm" : "soft");
    double other_g = firmly ? soft_g : firm_g;
    if (other_g * change_g >= 0 || fabs(other_g) < balance_step_g(before, BALANCE_SETTING))
        return first;
    return arena_format(a, "%s for %s %s", first,
                        phrase_amount(a, told_g(other_g, BALANCE_SETTING), "g"),
                        firmly ? "soft-setting" : "firm-setting");
}

/* "runnier in the bowl". */
static const char *change_word(const balance *before, const balance *after,
                               balance_quantity which) {
    bool more = balance_change_g(before, after, which) > 0;
    /* dry things that could take up more than there is leave dry spots */
    if (which == BALANCE_BOWL && !more && balance_free_cold_g(after).typical < 0)
        return "crumbs in the bowl";
    return more ? said[which].more : said[which].less;
}

static const char *change_text(arena *a, const balance *before, const balance *after,
                               balance_quantity which) {
    double change_g = balance_change_g(before, after, which);
    bool more = change_g > 0;
    const char *word = change_word(before, after, which);
    if (which == BALANCE_SETTING)
        return arena_format(a, "%s: %s", word, setting_text(a, before, after));
    return arena_format(a, "%s: about %s %s %s", word,
                        phrase_amount(a, told_g(change_g, which), "g"), more ? "more" : "less",
                        said[which].of);
}

static bool tells(balance_quantity which, bool heated, bool known) {
    bool of_water = which == BALANCE_BOWL || which == BALANCE_BAKE;
    return (heated || !balance_quantity_facts(which)->of_heat) && (known || !of_water);
}

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

/* What is compared, and what of it can be told. */
typedef struct {
    const balance *before, *after;
    bool heated, known;
} pair;

static pair pair_of(const swap_note *note) {
    return (pair){&note->before, &note->after, note->heated, note->uptake_known};
}

static bool is_noticed(const pair *of, balance_quantity q) {
    return tells(q, of->heated, of->known) && balance_noticed(of->before, of->after, q);
}

static void put_changes(arena *a, view *to, const char *key, const pair *of) {
    enum { BAR_WIDTH = 90 };
    view *list = NULL;
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++) {
        if (!is_noticed(of, q))
            continue;
        double was = balance_quantity_g(of->before, q).typical;
        double is = balance_quantity_g(of->after, q).typical;
        scale on = scale_of(fmin(was, is), fmax(was, is), BAR_WIDTH);
        list = list ? list : view_put_list(a, to, key);
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "text", change_text(a, of->before, of->after, q));
        view_put_number(a, put, "zero", on.zero, 0);
        view_put_number(a, put, "was", was * on.per_g, 0);
        view_put_number(a, put, "is", is * on.per_g, 0);
    }
}

void view_put_balance_changes(arena *a, view *to, const char *key, const swap_note *note) {
    const pair compared = pair_of(note);
    put_changes(a, to, key, &compared);
}

const char *balance_changes_text(arena *a, const swap_note *note) {
    const pair compared = pair_of(note);
    const char *words[BALANCE_QUANTITIES];
    size_t count = 0;
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (is_noticed(&compared, q))
            words[count++] = change_word(&note->before, &note->after, q);
    return count ? phrase_capitalised(a, phrase_list(a, words, count)) : NULL;
}

/* -- what nobody tried ----------------------------------------------------------------------- */

/* What is said of an untried swap: of water and of what sets, which decide whether it is a bake at
 * all. As a number, so that those alike stand together. */
static const balance_quantity decisive[] = {BALANCE_BOWL, BALANCE_BAKE, BALANCE_SETTING};

static unsigned alike(const swap_note *note) {
    const pair compared = pair_of(note);
    unsigned key = note->uptake_known;
    for (size_t i = 0; i < COUNT(decisive); i++) {
        bool more = balance_change_g(compared.before, compared.after, decisive[i]) > 0;
        key = key * 3 + (is_noticed(&compared, decisive[i]) ? 1u + more : 0);
    }
    return key;
}

static const char *untried_text(arena *a, const swap_note *note) {
    const pair compared = pair_of(note);
    const char *words[COUNT(decisive)];
    size_t count = 0;
    for (size_t i = 0; i < COUNT(decisive); i++)
        if (is_noticed(&compared, decisive[i]))
            words[count++] = change_word(compared.before, compared.after, decisive[i]);
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

/* -- two faces ------------------------------------------------------------------------------- */

/* The batch with equal weight of the new for the old; where two come, of the first alone. */
static balance at_equal_weight(const recipe *of, const swap_note *note) {
    balance after = note->before, moved;
    double all_g = note->from_g + note->second_from_g;
    moved = balance_of_ingredient(of->lines.items[note->line].what, note->from_g);
    after = balance_difference(&after, &moved);
    if (note->second_line != SIZE_MAX) {
        moved = balance_of_ingredient(of->lines.items[note->second_line].what, note->second_from_g);
        after = balance_difference(&after, &moved);
    }
    moved = balance_of_ingredient(note->to, all_g);
    return balance_sum(&after, &moved);
}

static const char *uptake_text(arena *a, const ingredient *what) {
    return arena_format(a,
                        "%s takes up %s times its weight of water cold and holds %s times once "
                        "heated",
                        what->name, number_copy(a, what->cold_uptake.typical, 1),
                        number_copy(a, what->heated_uptake.typical, 1));
}

const char *balance_faces_text(arena *a, const recipe *of, const swap_note *note) {
    const ingredient *from = of->lines.items[note->line].what;
    balance equal = at_equal_weight(of, note);
    two_faces faces = balance_faces(&note->before, &equal);
    if (!note->heated || !note->uptake_known || faces == FACES_ALIKE || !from->has_uptake ||
        !note->to->has_uptake || note->also_to)
        return NULL;
    const char *figures = arena_format(a, "%s; %s", uptake_text(a, note->to), uptake_text(a, from));
    if (faces == FACES_RUNS_AND_DRIES)
        return arena_format(a,
                            "It runs in the bowl and yet bakes dry: %s. Holding liquid back mends "
                            "the bowl and dries the bake further.",
                            figures);
    return arena_format(a,
                        "It stays stiff or crumbly in the bowl and yet leaves the bake wetter: %s. "
                        "Liquid mends the bowl and wets the bake further.",
                        figures);
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
    view_put_text(a, put, "name", point_names[0]);
    view_put_text(a, put, "key", "before");
    view_put_text(a, put, "amount_text", phrase_weighed(a, from, note->from_g, by->cups));
    view_put_text(a, put, "what", from->name);
    if (note->second_line != SIZE_MAX)
        put_also(a, put, by, by->of->lines.items[note->second_line].what, note->second_from_g);
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        if (!of->at[p].there)
            continue;
        put = view_put_object(a, list, NULL);
        view_put_text(a, put, "name", point_names[p + 1]);
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

/* g of a quantity at a point, its range that of the change; the two waters have one. */
static range quantity_at(const balance_comparison *of, balance_point p, balance_quantity q) {
    const balance_at *at = &of->at[p];
    double is = balance_quantity_g(&at->after, q).typical;
    double was = balance_quantity_g(&of->before, q).typical;
    const range *change = q == BALANCE_BOWL   ? &at->bowl_change_g
                          : q == BALANCE_BAKE ? &at->bake_change_g
                                              : NULL;
    return change ? (range){was + change->low, is, was + change->high} : (range){is, is, is};
}

enum { BOX_WIDTH = 200 };

/* "84 g", "\u22127 g". */
static const char *grams_text(arena *a, double grams) {
    double whole = number_round(grams, 1);
    return arena_format(a, "%s%s g", whole < 0 ? "\u2212" : "", number_copy(a, fabs(whole), 0));
}

/* "+20 to +75 g": what the range of a change is. */
static const char *change_range_text(arena *a, range is, double was) {
    double step = is.high - is.low >= 20 ? 5 : 1;
    const double ends[] = {number_round(is.low - was, step), number_round(is.high - was, step)};
    const char *words[COUNT(ends)];
    if (is.high - is.low < 1)
        return NULL;
    for (size_t i = 0; i < COUNT(ends); i++)
        words[i] =
            arena_format(a, "%s%s", ends[i] < 0 ? "\u2212" : "+", number_copy(a, fabs(ends[i]), 0));
    return arena_format(a, "%s to %s g", words[0], words[1]);
}

static void put_row(arena *a, view *rows, const char *name, const char *key, range grams,
                    const scale *on, double was) {
    view *put = view_put_object(a, rows, NULL);
    bool is_range = grams.high - grams.low >= 1;
    view_put_text(a, put, "name", name);
    view_put_text(a, put, "key", key);
    view_put_text(a, put, "text", grams_text(a, grams.typical));
    view_put_text(a, put, "range_text", change_range_text(a, grams, was));
    view_put_number(a, put, "zero", on->zero, 1);
    view_put_number(a, put, "length", grams.typical * on->per_g, 1);
    view_put_number(a, put, "low", on->zero + grams.low * on->per_g, 1);
    view_put_number(a, put, "high", on->zero + grams.high * on->per_g, 1);
    view_put_bool(a, put, "is_range", is_range);
}

/* Nothing of it before, and nothing at any point. */
static bool is_nothing(const balance_comparison *of, balance_quantity q) {
    const double least_g = 0.5;
    bool nothing = fabs(balance_quantity_g(&of->before, q).typical) < least_g;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            nothing = nothing && fabs(balance_quantity_g(&of->at[p].after, q).typical) < least_g;
    return nothing;
}

static bool is_shown(const balance_comparison *of, balance_quantity q) {
    return tells(q, of->heated, of->uptake_known) && !is_nothing(of, q);
}

static void put_quantity(arena *a, view *list, const balance_comparison *of, balance_quantity q) {
    double was = balance_quantity_g(&of->before, q).typical, low = was, high = was;
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        range is = of->at[p].there ? quantity_at(of, p, q) : (range){was, was, was};
        low = fmin(low, is.low);
        high = fmax(high, is.high);
    }
    scale on = scale_of(low, high, BOX_WIDTH);
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", balance_quantity_facts(q)->name);
    view_put_text(a, put, "key", balance_quantity_facts(q)->key);
    view *rows = view_put_list(a, put, "rows");
    put_row(a, rows, point_names[0], "before", (range){was, was, was}, &on, was);
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            put_row(a, rows, point_names[p + 1], balance_point_key(p), quantity_at(of, p, q), &on,
                    was);
}

void view_put_balance(arena *a, view *to, const char *key, const note_words *by,
                      const recipe_facts *about, const swap_note *note) {
    balance_comparison compared = balance_compare(about, note);
    view *put = view_put_object(a, to, key);
    put_points(a, put, by, note, &compared);
    view *list = view_put_list(a, put, "quantities");
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (is_shown(&compared, q))
            put_quantity(a, list, &compared, q);
    const balance_at *swapped =
        &compared.at[compared.at[POINT_AS_RULED].there ? POINT_AS_RULED : POINT_EQUAL_WEIGHT];
    const pair told = {&compared.before, &swapped->after, compared.heated, compared.uptake_known};
    put_changes(a, put, "changes", &told);
    view_put_text(a, put, "faces_text", balance_faces_text(a, by->of, note));
    view_put_bool(a, put, "no_promise", !compared.at[POINT_AS_RULED].there);
    view_put_bool(a, put, "uptake_unknown", !compared.uptake_known);
}

/* -- for programs ---------------------------------------------------------------------------- */

static void put_range(arena *a, view *to, const char *key, range grams) {
    view *put = view_put_object(a, to, key);
    view_put_number(a, put, "low", grams.low, 1);
    view_put_number(a, put, "typical", grams.typical, 1);
    view_put_number(a, put, "high", grams.high, 1);
}

static void put_figures(arena *a, view *to, const balance *of, bool known) {
    if (known) {
        view_put_number(a, to, "free_water_bowl_g", balance_free_cold_g(of).typical, 1);
        view_put_number(a, to, "free_water_bake_g", balance_free_heated_g(of).typical, 1);
    } else {
        view_put_text(a, to, "free_water_bowl_g", NULL);
        view_put_text(a, to, "free_water_bake_g", NULL);
    }
    view_put_number(a, to, "firm_setting_protein_g", of->firm_g, 1);
    view_put_number(a, to, "soft_setting_protein_g", of->soft_g, 1);
    view_put_number(a, to, "bulk_g", of->dry_g, 1);
    view_put_number(a, to, "fat_g", of->fat_g, 1);
    view_put_number(a, to, "sweetness_g", of->sweetness_g, 1);
}

view *view_of_balance_data(arena *a, const balance_comparison *of) {
    view *all = view_object(a), *put = view_put_object(a, all, "before");
    put_figures(a, put, &of->before, of->uptake_known);
    for (balance_point p = 0; p < POINT_COUNT; p++) {
        const balance_at *at = &of->at[p];
        if (!at->there) {
            view_put_text(a, all, balance_point_key(p), NULL);
            continue;
        }
        put = view_put_object(a, all, balance_point_key(p));
        put_range(a, put, "to_g", at->to_g);
        put_range(a, put, "liquid_change_g", at->liquid_g);
        put_figures(a, put, &at->after, of->uptake_known);
        if (!of->uptake_known)
            continue;
        put_range(a, put, "free_water_bowl_change_g", at->bowl_change_g);
        put_range(a, put, "free_water_bake_change_g", at->bake_change_g);
    }
    return all;
}

/* -- for a terminal -------------------------------------------------------------------------- */

/* A line of the table: what, then a cell a column, each filled up to its width. */
static void add_cells(text *t, const char *name, const char *const cells[], size_t count) {
    enum { NAME_WIDTH = 26, CELL_WIDTH = 24 };
    text_format(t, "  %-*s", NAME_WIDTH, name);
    for (size_t i = 0; i < count; i++) {
        /* a minus sign is three bytes and takes one place */
        int wider = 0;
        for (const char *at = cells[i]; (at = strstr(at, "\u2212")); at++)
            wider += 2;
        text_format(t, "%-*s", i + 1 < count ? CELL_WIDTH + wider : 0, cells[i]);
    }
    text_add(t, "\n");
}

/* "84 g", "84 g, 60 to 99 g". */
static const char *amount_cell(arena *a, range grams) {
    if (grams.high - grams.low < 1)
        return grams_text(a, grams.typical);
    const char *low = grams_text(a, grams.low), *high = grams_text(a, grams.high);
    return arena_format(a, "%s, %.*s to %s", grams_text(a, grams.typical), (int)strlen(low) - 2,
                        low, high);
}

/* "84 g, -20 to +5 g". */
static const char *quantity_cell(arena *a, range grams, double was) {
    const char *change = change_range_text(a, grams, was);
    return arena_format(a, "%s%s%s", grams_text(a, grams.typical), change ? ", " : "",
                        change ? change : "");
}

static void add_amounts(arena *a, text *t, const balance_comparison *of, bool liquid) {
    const char *cells[POINT_COUNT + 1] = {""};
    size_t count = 1;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            cells[count++] = amount_cell(a, liquid ? of->at[p].liquid_g : of->at[p].to_g);
    add_cells(t, liquid ? "  liquid" : "  replacement", cells, count);
}

static void add_quantity(arena *a, text *t, const balance_comparison *of, balance_quantity q) {
    double was = balance_quantity_g(&of->before, q).typical;
    const char *cells[POINT_COUNT + 1] = {quantity_cell(a, (range){was, was, was}, was)};
    size_t count = 1;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of->at[p].there)
            cells[count++] = quantity_cell(a, quantity_at(of, p, q), was);
    add_cells(t, arena_format(a, "  %s", balance_quantity_facts(q)->name), cells, count);
}

void balance_table_add(arena *a, text *t, const recipe_facts *about, const swap_note *note) {
    balance_comparison of = balance_compare(about, note);
    const char *cells[POINT_COUNT + 1] = {point_names[0]};
    size_t count = 1;
    for (balance_point p = 0; p < POINT_COUNT; p++)
        if (of.at[p].there)
            cells[count++] = point_names[p + 1];
    add_cells(t, "Balance", cells, count);
    add_amounts(a, t, &of, false);
    add_amounts(a, t, &of, true);
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (is_shown(&of, q))
            add_quantity(a, t, &of, q);
}
