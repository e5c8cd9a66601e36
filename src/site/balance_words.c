#include "site/balance_words.h"

#include "base/number.h"
#include "site/phrase.h"

#include <math.h>
#include <stdint.h>

/* The first is of the batch before the swap. */
const char *const balance_point_names[POINT_COUNT + 1] = {"as written", "at equal weight",
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
const char *balance_change_word(const balance *before, const balance *after,
                                balance_quantity which) {
    bool more = balance_change_g(before, after, which) > 0;
    /* dry things that could take up more than there is leave dry spots */
    if (which == BALANCE_BOWL && balance_free_cold_g(before).typical >= 0 &&
        balance_free_cold_g(after).typical < 0)
        return "crumbs in the bowl";
    return more ? said[which].more : said[which].less;
}

const char *balance_change_text(arena *a, const balance *before, const balance *after,
                                balance_quantity which) {
    double change_g = balance_change_g(before, after, which);
    bool more = change_g > 0;
    const char *word = balance_change_word(before, after, which);
    if (which == BALANCE_SETTING)
        return arena_format(a, "%s: %s", word, setting_text(a, before, after));
    return arena_format(a, "%s: about %s %s %s", word,
                        phrase_amount(a, told_g(change_g, which), "g"), more ? "more" : "less",
                        said[which].of);
}

bool balance_tells(balance_quantity which, bool heated, bool known) {
    bool of_water = which == BALANCE_BOWL || which == BALANCE_BAKE;
    return (heated || !balance_quantity_facts(which)->of_heat) && (known || !of_water);
}

balance_pair balance_pair_of(const swap_note *note) {
    return (balance_pair){&note->before, &note->after, note->heated, note->uptake_known};
}

bool balance_is_told(const balance_pair *of, balance_quantity q) {
    return balance_tells(q, of->heated, of->known) && balance_noticed(of->before, of->after, q);
}

const char *balance_changes_text(arena *a, const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    const char *words[BALANCE_QUANTITIES];
    size_t count = 0;
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (balance_is_told(&compared, q))
            words[count++] = balance_change_word(&note->before, &note->after, q);
    return count ? phrase_capitalised(a, phrase_list(a, words, count)) : NULL;
}

/* g of a quantity at a point, its range that of the change; the two waters have one. */
range balance_quantity_at(const balance_comparison *of, balance_point p, balance_quantity q) {
    const balance_at *at = &of->at[p];
    double is = balance_quantity_g(&at->after, q).typical;
    double was = balance_quantity_g(&of->before, q).typical;
    const range *change = q == BALANCE_BOWL   ? &at->bowl_change_g
                          : q == BALANCE_BAKE ? &at->bake_change_g
                                              : NULL;
    return change ? (range){was + change->low, is, was + change->high} : (range){is, is, is};
}

/* "84 g", "\u22127 g". */
const char *balance_grams_text(arena *a, double grams) {
    double whole = number_round(grams, 1);
    return arena_format(a, "%s%s g", whole < 0 ? "\u2212" : "", number_copy(a, fabs(whole), 0));
}

/* "+20 to +75 g": what the range of a change is. */
const char *balance_range_text(arena *a, range is, double was) {
    double step = is.high - is.low >= 20 ? 5 : 1;
    const double ends[] = {number_round(is.low - was, step), number_round(is.high - was, step)};
    const char *words[COUNT(ends)];
    if (is.high - is.low < 1)
        return NULL;
    for (size_t i = 0; i < COUNT(ends); i++)
        words[i] = arena_format(a, "%s%s",
                                ends[i] < 0   ? "\u2212"
                                : ends[i] > 0 ? "+"
                                              : "",
                                number_copy(a, fabs(ends[i]), 0));
    return arena_format(a, "%s to %s g", words[0], words[1]);
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

bool balance_is_shown(const balance_comparison *of, balance_quantity q) {
    return balance_tells(q, of->heated, of->uptake_known) && !is_nothing(of, q);
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

/* "3 times its weight", "its own weight". */
static const char *times_text(arena *a, double uptake) {
    const char *times = number_copy(a, uptake, 1);
    return strcmp(times, "1") == 0 ? "its own weight"
                                   : arena_format(a, "%s times its weight", times);
}

static const char *uptake_text(arena *a, const ingredient *what) {
    return arena_format(a, "%s takes up %s of water cold and holds %s once heated", what->name,
                        times_text(a, what->cold_uptake.typical),
                        times_text(a, what->heated_uptake.typical));
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
