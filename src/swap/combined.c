#include "swap/combined.h"

#include "base/linear.h"
#include "measure/kitchen.h"
#include "measure/step.h"
#include "swap/balance.h"

#include <assert.h>
#include <math.h>

/* -- what is kept ---------------------------------------------------------------------------- */

static double weight_per_g(const ingredient *what) {
    (void)what;
    return 1;
}

static double free_water_per_g(const ingredient *what) {
    balance one = balance_of_ingredient(what, 1);
    return balance_free_cold_g(&one).typical;
}

static double fat_per_g(const ingredient *what) {
    return what->per_100_g.of[NUTRIENT_FAT] / 100;
}

/* Fat is kept by itself, wherever it is: of a flour, too, only what is not fat counts. */
static double bulk_per_g(const ingredient *what) {
    const double *of = what->per_100_g.of;
    double dry = 1 - balance_water_per_g(what) - (of[NUTRIENT_FAT] + of[NUTRIENT_ALCOHOL]) / 100;
    return fmax(dry, 0);
}

static double setting_per_g(const ingredient *what) {
    return balance_of_ingredient(what, 1).setting_g;
}

static double sweetness_per_g(const ingredient *what) {
    return what->sweetness;
}

static const struct {
    double (*per_g)(const ingredient *what);
    double noticed; /* share of the batch */
} kept_facts[KEPT_COUNT] = {
    [KEPT_WEIGHT] = {weight_per_g, 0.03},    [KEPT_FREE_WATER] = {free_water_per_g, 0.03},
    [KEPT_BULK] = {bulk_per_g, 0.03},        [KEPT_FAT] = {fat_per_g, 0.03},
    [KEPT_SETTING] = {setting_per_g, 0.005}, [KEPT_SWEETNESS] = {sweetness_per_g, 0.03},
};

double kept_noticed(kept_thing which) {
    return kept_facts[which].noticed;
}

/* -- the goal program ------------------------------------------------------------------------- */

enum { THINGS_MOST = 3, ROWS_MOST = KEPT_COUNT + 2 };

/* What goes stands first, then what comes. */
typedef struct {
    const combination *of;
    size_t things;
    const ingredient *what[THINGS_MOST];
    double most_g[THINGS_MOST];   /* of what goes: how much may */
    kept_thing keeps[KEPT_COUNT]; /* row by row */
    size_t kept_count;
    double times[ROWS_MOST][THINGS_MOST];
    linear_variable amounts[THINGS_MOST];
    linear_row kept_rows[KEPT_COUNT], goals[ROWS_MOST];
    size_t goal_count;
} combining;

/* What may go of one of two, unless the rule says. */
static double usual_share(const ingredient *what) {
    const unsigned builds = 1u << FAMILY_FLOUR | 1u << FAMILY_MEAL | 1u << FAMILY_FRUIT_PUREE;
    return builds >> what->in & 1u ? BALANCED_PART_MOST : 1;
}

static bool goes(const combining *c, size_t thing) {
    return thing < c->of->goes_count;
}

static void list_things(combining *c) {
    const combination *of = c->of;
    for (size_t i = 0; i < of->goes_count; i++) {
        double usual = of->goes_count == 1 ? 1 : usual_share(of->goes[i].what);
        c->most_g[c->things] = of->goes[i].grams * (of->most[i] > 0 ? of->most[i] : usual);
        c->what[c->things++] = of->goes[i].what;
    }
    for (size_t i = 0; i < of->comes_count; i++)
        c->what[c->things++] = of->to[i];
}

/* Of what may go of each of two, at least a tenth does: less is no combined swap (an estimate). Of
 * what comes, at least a gram of each of two. */
#define GOES_LEAST 0.1

static void bound_amounts(combining *c) {
    bool whole = c->of->goes_count == 1;
    for (size_t i = 0; i < c->things; i++)
        c->amounts[i] =
            goes(c, i) ? (linear_variable){.least = c->most_g[i] * (whole ? 1 : GOES_LEAST),
                                           .most = c->most_g[i],
                                           .least_is_firm = true,
                                           .most_is_firm = whole}
                       : (linear_variable){.least = whole, .most = INFINITY, .least_is_firm = true};
}

/* A kept thing is a goal, and its miss has a limit. */
static void keep(combining *c, kept_thing which) {
    size_t row = c->kept_count++;
    double noticed_g = kept_facts[which].noticed * c->of->batch_g;
    c->keeps[row] = which;
    for (size_t i = 0; i < c->things; i++)
        c->times[row][i] = kept_facts[which].per_g(c->what[i]) * (goes(c, i) ? -1 : 1);
    c->kept_rows[row] = (linear_row){c->times[row], -noticed_g, noticed_g, 0, noticed_g};
    c->goals[c->goal_count++] = (linear_row){c->times[row], 0, 0, 1, noticed_g};
}

/* What a gram that goes is worth beside a gram by which a kept thing is missed: so little that as
 * much goes as keeps it. */
#define GOES_WORTH 0.1

static void take_out_much(combining *c) {
    double noticed_g = kept_facts[KEPT_WEIGHT].noticed * c->of->batch_g;
    for (size_t i = 0; i < c->of->goes_count && c->of->goes_count > 1; i++) {
        double *times = c->times[c->goal_count];
        times[i] = 1;
        c->goals[c->goal_count++] =
            (linear_row){times, c->most_g[i], INFINITY, GOES_WORTH, noticed_g};
    }
}

static linear_problem problem_of(const combining *c) {
    return (linear_problem){.variables = c->amounts,
                            .variable_count = c->things,
                            .limits = c->kept_rows,
                            .limit_count = c->kept_count,
                            .goals = c->goals,
                            .goal_count = c->goal_count};
}

/* -- without a program --------------------------------------------------------------------------
 *
 * Mostly two things are kept, and then exactly: two equations. With one amount given the other two
 * follow, which is what the program would find at forty times the cost. */

/* x[a] and x[b] that make both kept sums nothing, x[given] being set; false where there are none.
 */
static bool follow_from(const combining *c, size_t given, double x[THINGS_MOST]) {
    size_t a = given == 0 ? 1 : 0, b = given == 2 ? 1 : 2;
    const double *one = c->times[0], *two = c->times[1];
    double area = one[a] * two[b] - one[b] * two[a];
    x[a] = (one[b] * two[given] - two[b] * one[given]) * x[given] / area;
    x[b] = (two[a] * one[given] - one[a] * two[given]) * x[given] / area;
    return isfinite(x[a]) && isfinite(x[b]);
}

static bool within(const combining *c, const double x[THINGS_MOST]) {
    for (size_t i = 0; i < c->things; i++)
        if (x[i] < c->amounts[i].least * (1 - 1e-9) || x[i] > c->amounts[i].most * (1 + 1e-9))
            return false;
    return true;
}

/* Sets the amounts that keep two things exactly, within all bounds; false where none do, or where
 * it is not two things that are kept. */
static bool kept_exactly(const combining *c, double x[THINGS_MOST]) {
    if (c->kept_count != 2)
        return false;
    bool two_go = c->of->goes_count == 2;
    size_t given = two_go ? 2 : 0;
    x[given] = two_go ? 1 : c->most_g[0];
    if (!follow_from(c, given, x))
        return false;
    if (two_go && (x[0] <= 0 || x[1] <= 0)) /* it does not lie between the two */
        return false;
    double times = two_go ? fmin(c->most_g[0] / x[0], c->most_g[1] / x[1]) : 1;
    for (size_t i = 0; i < c->things; i++)
        x[i] *= times;
    return within(c, x);
}

/* -- in spoons -------------------------------------------------------------------------------- */

/* What an amount may be moved to: the step below, the step above, or all that may go. */
enum { WAYS = 3 };

static double moved(const combining *c, size_t thing, double grams, int way) {
    double step = step_fine_g(c->what[thing], grams);
    if (way == WAYS - 1)
        return goes(c, thing) ? c->most_g[thing] : grams;
    return step * (floor(grams / step + 1e-9) + way);
}

/* What the goal program makes least, or infinite where a limit or bound does not hold. */
static double cost_of(const combining *c, const double grams[]) {
    double cost = 0;
    for (size_t i = 0; i < c->things; i++)
        if (grams[i] <= 0 || grams[i] > c->amounts[i].most * (1 + 1e-9))
            return INFINITY;
    for (size_t g = 0; g < c->goal_count; g++) {
        const linear_row *goal = &c->goals[g];
        double sum = 0;
        for (size_t i = 0; i < c->things; i++)
            sum += goal->times[i] * grams[i];
        double off = sum < goal->least ? goal->least - sum : fmax(sum - goal->most, 0);
        if (g < c->kept_count && off > goal->scale)
            return INFINITY;
        cost += goal->weight * off / goal->scale;
    }
    return cost;
}

/* True for what goes and leaves nothing in the recipe. */
static bool goes_whole(const combining *c, size_t thing, double grams) {
    return goes(c, thing) && c->most_g[thing] >= c->of->goes[thing].grams &&
           grams >= c->most_g[thing] * (1 - 1e-9);
}

/* Moves each amount to a step beside it, together as near as can be; leaves them where no step
 * keeps what is to be kept. What goes whole goes whole. */
static void move_to_steps(const combining *c, double grams[]) {
    double best[THINGS_MOST], tried[THINGS_MOST], least = INFINITY;
    assert(c->things <= THINGS_MOST);
    for (int n = 0; n < WAYS * WAYS * WAYS; n++) {
        const int ways[THINGS_MOST] = {n % WAYS, n / WAYS % WAYS, n / WAYS / WAYS};
        for (size_t i = 0; i < c->things; i++)
            tried[i] = goes_whole(c, i, grams[i]) ? grams[i] : moved(c, i, grams[i], ways[i]);
        double cost = cost_of(c, tried);
        if (cost >= least)
            continue;
        least = cost;
        memcpy(best, tried, sizeof best);
    }
    if (least < INFINITY)
        memcpy(grams, best, sizeof *grams * c->things);
}

/* -- what stands in the way ------------------------------------------------------------------- */

/* What `thing` brings most of among what is kept, weight apart. */
static kept_thing brings(const combining *c, size_t thing) {
    kept_thing most = KEPT_WEIGHT;
    double steps = 0;
    for (size_t row = 0; row < c->kept_count; row++) {
        double of = fabs(c->times[row][thing]) / c->kept_rows[row].scale;
        if (c->keeps[row] == KEPT_WEIGHT || of <= steps)
            continue;
        steps = of;
        most = c->keeps[row];
    }
    return most;
}

static message_value names_of(arena *a, const ingredient *const what[], size_t count) {
    if (count == 1)
        return value_text(what[0]->name);
    return value_inner(
        MESSAGE(a, ONE_WITH_OTHER, value_text(what[0]->name), value_text(what[1]->name)));
}

/* A weight as scales show it. */
static message_value value_weight(arena *a, double grams) {
    return value_figures(kitchen_weight(a, grams));
}

static const message *too_little(arena *a, const combining *c, size_t thing, double more_g) {
    return MESSAGE(a, NOT_ENOUGH_TO_MAKE_UP, value_text(c->what[thing]->name),
                   value_word(WORD_KEPT, brings(c, thing)), value_weight(a, more_g));
}

static const message *not_kept(arena *a, const combining *c, size_t row, double over_g) {
    size_t first = c->of->goes_count;
    const message_value values[] = {names_of(a, c->what + first, c->things - first),
                                    value_word(WORD_KEPT, c->keeps[row]),
                                    value_weight(a, fabs(over_g) + c->kept_rows[row].scale)};
    return message_new(a, over_g > 0 ? SAY_NO_AMOUNT_KEEPS_TOO_MUCH : SAY_NO_AMOUNT_KEEPS_MISSING,
                       values, COUNT(values));
}

/* The first that must give: how much may go, or a kept thing. */
static const message *in_the_way(arena *a, const combining *c, const linear_answer *by) {
    for (size_t i = 0; i < c->of->goes_count; i++)
        if (by->bounds_give[i] > 0)
            return too_little(a, c, i, by->bounds_give[i]);
    for (size_t row = 0; row < c->kept_count; row++)
        if (by->limits_give[row] != 0)
            return not_kept(a, c, row, by->limits_give[row]);
    return MESSAGE_PLAIN(a, NO_AMOUNTS_FOUND);
}

/* Free water can't be kept without the uptakes. Null when they are known. */
static const message *unknown_uptake(arena *a, const combining *c) {
    for (size_t i = 0; c->of->keeps >> KEPT_FREE_WATER & 1u && i < c->things; i++)
        if (!balance_known(c->what[i]))
            return MESSAGE(a, UPTAKE_NOT_KNOWN, value_text(c->what[i]->name));
    return NULL;
}

/* Sets the amounts of the program; false, and why, when it has none. */
static bool nearest(arena *a, const combining *c, double grams[THINGS_MOST], const message **why) {
    linear_problem asked = problem_of(c);
    linear_answer by = linear_solve(a, &asked);
    if (by.outcome == LINEAR_MET)
        memcpy(grams, by.values, sizeof *grams * c->things);
    else
        *why = in_the_way(a, c, &by);
    return by.outcome == LINEAR_MET;
}

/* -- the whole -------------------------------------------------------------------------------- */

/* Where two go and free water is kept, what comes is as uncertain as the uptakes. */
static range range_of(const combination *of, double comes_g) {
    balanced_amounts by;
    if (of->goes_count != 2 || of->keeps != KEPT_USUALLY ||
        !amounts_balanced(of->goes, of->to[0], &by) || by.comes_g.typical <= 0)
        return (range){comes_g, comes_g, comes_g};
    double times = comes_g / by.comes_g.typical;
    return (range){by.comes_g.low * times, comes_g, by.comes_g.high * times};
}

combined_amounts combined_amounts_of(arena *a, const combination *of) {
    combining c = {.of = of};
    combined_amounts out = {0};
    list_things(&c);
    out.in_the_way = unknown_uptake(a, &c);
    if (out.in_the_way)
        return out;
    bound_amounts(&c);
    for (kept_thing k = 0; k < KEPT_COUNT; k++)
        if (of->keeps >> k & 1u)
            keep(&c, k);
    take_out_much(&c);
    double grams[THINGS_MOST];
    if (!kept_exactly(&c, grams) && !nearest(a, &c, grams, &out.in_the_way))
        return out;
    if (!of->exactly)
        move_to_steps(&c, grams);
    out.possible = true;
    for (size_t i = 0; i < of->goes_count; i++)
        out.goes_g[i] = grams[i];
    for (size_t i = 0; i < of->comes_count; i++)
        out.comes_g[i] = range_of(of, grams[of->goes_count + i]);
    return out;
}
