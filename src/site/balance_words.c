#include "site/balance_words.h"

#include "base/number.h"
#include "site/phrase.h"
#include "site/say.h"

#include <math.h>
#include <stdint.h>

/* -- what is noticed ------------------------------------------------------------------------- */

/* Waters rest on uptakes, which are known to a fifth at best. */
static double told_g(double change_g, balance_quantity which) {
    double size_g = fabs(change_g);
    bool of_water = which == BALANCE_BOWL || which == BALANCE_BAKE;
    return number_round(size_g, of_water && size_g >= 20 ? 5 : size_g < 3 ? 0.5 : 1);
}

/* Of setting protein, the strength that changed: "40 g more firm-setting protein". */
static const char *setting_text(arena *a, const language *in, const balance *before,
                                const balance *after) {
    double firm_g = after->firm_g - before->firm_g, soft_g = after->soft_g - before->soft_g;
    bool firmly = fabs(firm_g) >= fabs(soft_g) / 2;
    double change_g = firmly ? firm_g : soft_g;
    const size_t sentences[] = {SAY_LESS_SOFT_SETTING, SAY_MORE_SOFT_SETTING, SAY_LESS_FIRM_SETTING,
                                SAY_MORE_FIRM_SETTING};
    const char *amount[] = {say_amount(a, in, told_g(change_g, BALANCE_SETTING), "g")};
    const char *first = say(a, in, sentences[2 * firmly + (change_g > 0)], amount);
    double other_g = firmly ? soft_g : firm_g;
    if (other_g * change_g >= 0 || fabs(other_g) < balance_step_g(before, BALANCE_SETTING))
        return first;
    const char *other = say_amount(a, in, told_g(other_g, BALANCE_SETTING), "g");
    return firmly ? SAY(a, in, FOR_SOFT_SETTING, first, other)
                  : SAY(a, in, FOR_FIRM_SETTING, first, other);
}

const char *balance_change_word(const language *in, const balance *before, const balance *after,
                                balance_quantity which) {
    bool more = balance_change_g(before, after, which) > 0;
    /* dry things that could take up more than there is leave dry spots */
    if (which == BALANCE_BOWL && balance_free_cold_g(before).typical >= 0 &&
        balance_free_cold_g(after).typical < 0)
        return SAID(in, CRUMBS_IN_THE_BOWL);
    return more ? in->quantities_up[which] : in->quantities_down[which];
}

const char *balance_change_text(arena *a, const language *in, const balance_pair *of,
                                balance_quantity which) {
    double change_g = balance_change_g(of->before, of->after, which);
    const char *word = balance_change_word(in, of->before, of->after, which);
    if (which == BALANCE_SETTING)
        return SAY(a, in, CHANGE_OF_SETTING, word, setting_text(a, in, of->before, of->after));
    const char *amount = say_amount(a, in, told_g(change_g, which), "g");
    const char *what = in->quantities_changed[which];
    return change_g > 0 ? SAY(a, in, CHANGE_UP, word, amount, what)
                        : SAY(a, in, CHANGE_DOWN, word, amount, what);
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

const char *balance_changes_text(arena *a, const language *in, const swap_note *note) {
    const balance_pair compared = balance_pair_of(note);
    const char *words[BALANCE_QUANTITIES];
    size_t count = 0;
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++)
        if (balance_is_told(&compared, q))
            words[count++] = balance_change_word(in, &note->before, &note->after, q);
    return count ? phrase_capitalised(a, say_list(a, in, words, count)) : NULL;
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
const char *balance_grams_text(arena *a, const language *in, double grams) {
    double whole = number_round(grams, 1);
    return arena_format(a, "%s%s g", whole < 0 ? "\u2212" : "", say_figure(a, in, fabs(whole), 0));
}

/* "+20 to +75 g": what the range of a change is. */
const char *balance_range_text(arena *a, const language *in, range is, double was) {
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
                                say_figure(a, in, fabs(ends[i]), 0));
    return SAY(a, in, GRAMS_FROM_TO, words[0], words[1]);
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
static const char *times_text(arena *a, const language *in, double uptake) {
    const char *times = say_figure(a, in, uptake, 1);
    return strcmp(times, "1") == 0 ? SAID(in, ITS_OWN_WEIGHT) : SAY(a, in, TIMES_ITS_WEIGHT, times);
}

static const char *uptake_text(arena *a, const language *in, const ingredient *what) {
    return SAY(a, in, UPTAKE_OF, what->name, times_text(a, in, what->cold_uptake.typical),
               times_text(a, in, what->heated_uptake.typical));
}

const char *balance_faces_text(arena *a, const language *in, const recipe *of,
                               const swap_note *note) {
    const ingredient *from = of->lines.items[note->line].what;
    balance equal = at_equal_weight(of, note);
    two_faces faces = balance_faces(&note->before, &equal);
    if (!note->heated || !note->uptake_known || faces == FACES_ALIKE || !from->has_uptake ||
        !note->to->has_uptake || note->also_to)
        return NULL;
    const char *new_one = uptake_text(a, in, note->to), *old_one = uptake_text(a, in, from);
    return faces == FACES_RUNS_AND_DRIES ? SAY(a, in, RUNS_AND_DRIES, new_one, old_one)
                                         : SAY(a, in, STIFF_AND_MOIST, new_one, old_one);
}
