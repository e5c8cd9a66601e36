#include "swap/formula.h"

#include "base/linear.h"
#include "measure/step.h"

#include <math.h>

/* What being outside of the build's range counts beside being off its median; a missed target, in
 * steps of TARGET_STEP of it, when not all can be met. Nothing else is worth a target. */
#define OUTSIDE_WEIGHT 1.0
#define MEDIAN_WEIGHT  0.25
#define HABIT_WEIGHT   2.0
#define TARGET_WEIGHT  50.0
#define TARGET_STEP    0.05

/* How near to the best the search for whole steps may stop. */
#define NEAR_ENOUGH 0.02

double formula_brings(const formula_target *target, const ingredient *what) {
    if (target->is_cost)
        return what->price_per_100_g / 100;
    return what->per_100_g.of[target->which] / 100 * target->times;
}

bool formula_lacks(const formula_target *target, const ingredient *what) {
    return target->is_cost ? what->price_per_100_g <= 0
                           : !nutrient_known(&what->per_100_g, target->which);
}

/* A program in the making. Rows hold one figure a part. */
typedef struct {
    arena *a;
    const formula_brief *of;
    const build_norms *norms;
    double batch_g; /* what is expected: differences are noticed in it */
    linear_variable *amounts;
    linear_row *limits, *goals; /* limits: the targets, then the batch, then its free water */
    size_t limit_count, goal_count;
} formulating;

static double bake_loss_of(const formulating *f) {
    return f->of->bake_loss > 0 ? f->of->bake_loss : f->norms->bake_loss;
}

static double *row_of(const formulating *f) {
    return ARENA_ARRAY(f->a, double, f->of->parts.count);
}

/* -- hard ------------------------------------------------------------------------------------- */

/* What is not bounded, and yet never a filler, goes to that share of the batch (common practice, no
 * source). */
static const struct {
    family in;
    double share_most;
} seasonings[] = {{FAMILY_SALT, 0.01}, {FAMILY_FLAVOUR, 0.01}, {FAMILY_LEAVENER, 0.02}};

static double most_g(const formulating *f, const formula_part *part) {
    for (size_t i = 0; i < COUNT(seasonings); i++)
        if (part->most_g >= INFINITY && part->what->in == seasonings[i].in)
            return fmax(seasonings[i].share_most * f->batch_g, part->least_g);
    return part->most_g;
}

/* Water and the like are held by the build's free water already. */
static bool is_free(const formula_part *part, family in) {
    return part->what->in == in && part->most_g >= INFINITY && in != FAMILY_LIQUID;
}

double formula_share_most(const build_norms *norms, family in) {
    return fmax(norms->share_most[in] * FORMULA_SHARE_OFF, FORMULA_SHARE_LEAST);
}

double formula_share(const formula_brief *of, const formula_answer *by, family in) {
    double grams = 0;
    for (size_t i = 0; i < of->parts.count; i++)
        grams += is_free(&of->parts.items[i], in) ? by->grams[i] : 0;
    return by->batch_g > 0 ? grams / by->batch_g : 0;
}

/* A fixed amount is meant, and never the one to give; nor is a bound that the brief does not
 * state. */
static void bound_parts(formulating *f, const double grams[]) {
    for (size_t i = 0; i < f->of->parts.count; i++) {
        const formula_part *part = &f->of->parts.items[i];
        bool fixed = part->least_g >= part->most_g;
        double step = part->step_g > 0 ? part->step_g
                      : grams          ? step_handy_g(part->what, grams[i])
                                       : 0;
        f->amounts[i] = (linear_variable){.least = part->least_g,
                                          .most = most_g(f, part),
                                          .step = grams && !fixed ? step : 0,
                                          .least_is_firm = fixed,
                                          .most_is_firm = fixed || part->most_g >= INFINITY};
    }
}

static double magnitude(double least, double most) {
    return fmax(fabs(least) < INFINITY ? fabs(least) : 0, fabs(most) < INFINITY ? fabs(most) : 0);
}

/* The sum over the batch, from what is asked of a portion. */
static linear_row target_row(const formulating *f, const formula_target *target) {
    double *times = row_of(f), portions = f->of->portions;
    for (size_t i = 0; i < f->of->parts.count; i++)
        times[i] = formula_brings(target, f->of->parts.items[i].what);
    double scale = fmax(magnitude(target->least, target->most) * portions * TARGET_STEP, 1e-3);
    return (linear_row){times, target->least * portions, target->most * portions, TARGET_WEIGHT,
                        scale};
}

static void limit_targets(formulating *f) {
    for (size_t t = 0; t < f->of->targets.count; t++)
        f->limits[f->limit_count++] = target_row(f, &f->of->targets.items[t]);
}

static void batch_bounds(const formulating *f, double *least_g, double *most_g) {
    const range *portion = &f->norms->portion_g;
    if (f->of->batch_g > 0) {
        *least_g = f->of->batch_g * (1 - FORMULA_BATCH_OFF);
        *most_g = f->of->batch_g * (1 + FORMULA_BATCH_OFF);
    } else {
        *least_g = portion->low * f->of->portions * (1 - FORMULA_PORTION_OFF);
        *most_g = portion->high * f->of->portions * (1 + FORMULA_PORTION_OFF);
    }
}

static double *ones(const formulating *f) {
    double *times = row_of(f);
    for (size_t i = 0; i < f->of->parts.count; i++)
        times[i] = 1;
    return times;
}

static void limit_batch(formulating *f) {
    double least_g, most_g;
    batch_bounds(f, &least_g, &most_g);
    f->limits[f->limit_count++] = (linear_row){ones(f), least_g, most_g, 0, f->batch_g * 0.03};
}

/* above - ratio x below: at most 0 where the ratio is at most that. */
static double *ratio_row(const formulating *f, build_quantity which, double ratio) {
    double *times = row_of(f);
    for (size_t i = 0; i < f->of->parts.count; i++) {
        const ingredient *what = f->of->parts.items[i].what;
        times[i] = build_above(which, what, bake_loss_of(f)) - ratio * build_below(which, what);
    }
    return times;
}

/* Of two rows, the lower end and the upper one, so that the program stays linear. */
static void limit_water(formulating *f) {
    const range *r = &f->norms->ratio[BUILD_BOWL];
    double noticed_g = build_noticed(BUILD_BOWL) * f->batch_g;
    if (!f->norms->count)
        return;
    f->limits[f->limit_count++] = (linear_row){ratio_row(f, BUILD_BOWL, r->low - FORMULA_WATER_OFF),
                                               0, INFINITY, 0, noticed_g};
    f->limits[f->limit_count++] = (linear_row){
        ratio_row(f, BUILD_BOWL, r->high + FORMULA_WATER_OFF), -INFINITY, 0, 0, noticed_g};
}

/* -- as near as can be
 * ------------------------------------------------------------------------------ */

static void add_goal(formulating *f, linear_row goal) {
    f->goals[f->goal_count++] = goal;
}

static void aim_at_balance(formulating *f) {
    for (build_quantity q = 0; f->norms->count && q < BUILD_QUANTITIES; q++) {
        const range *r = &f->norms->ratio[q];
        double noticed_g = build_noticed(q) * f->batch_g;
        add_goal(f, (linear_row){ratio_row(f, q, r->low), 0, INFINITY, OUTSIDE_WEIGHT, noticed_g});
        add_goal(f,
                 (linear_row){ratio_row(f, q, r->high), -INFINITY, 0, OUTSIDE_WEIGHT, noticed_g});
        add_goal(f, (linear_row){ratio_row(f, q, r->typical), 0, 0, MEDIAN_WEIGHT, noticed_g});
    }
}

/* No more of a family than recipes of the build use: else whatever is cheapest in the other goals
 * fills the batch. */
static void keep_to_habits(formulating *f) {
    const double noticed = 0.02; /* of the batch */
    for (size_t in = 0; f->norms->count && in < FAMILY_COUNT; in++) {
        double *times = row_of(f), most = formula_share_most(f->norms, (family)in);
        bool any = false;
        for (size_t i = 0; i < f->of->parts.count; i++) {
            bool of_it = is_free(&f->of->parts.items[i], (family)in);
            any = any || of_it;
            times[i] = (of_it ? 1 : 0) - most;
        }
        if (any)
            add_goal(f, (linear_row){times, -INFINITY, 0, HABIT_WEIGHT, noticed * f->batch_g});
    }
}

/* As heavy as was asked, or as the build's portions are. */
static void aim_at_weight(formulating *f) {
    add_goal(f, (linear_row){ones(f), f->batch_g, f->batch_g, MEDIAN_WEIGHT, f->batch_g * 0.03});
}

/* -- solving
 * ----------------------------------------------------------------------------------------- */

static formulating formulating_of(arena *a, const formula_brief *of, const build_norms *norms) {
    enum { LIMITS_MORE = 3, GOALS_MOST = 3 * BUILD_QUANTITIES + FAMILY_COUNT + 1 };
    formulating f = {.a = a, .of = of, .norms = norms};
    f.batch_g = of->batch_g > 0 ? of->batch_g : norms->portion_g.typical * of->portions;
    f.amounts = ARENA_ARRAY(a, linear_variable, of->parts.count);
    f.limits = ARENA_ARRAY(a, linear_row, of->targets.count + LIMITS_MORE);
    f.goals = ARENA_ARRAY(a, linear_row, of->targets.count + GOALS_MOST);
    limit_targets(&f);
    limit_batch(&f);
    limit_water(&f);
    aim_at_balance(&f);
    aim_at_weight(&f);
    keep_to_habits(&f);
    return f;
}

static linear_answer solve(const formulating *f) {
    return linear_solve(f->a, &(linear_problem){.variables = f->amounts,
                                                .variable_count = f->of->parts.count,
                                                .limits = f->limits,
                                                .limit_count = f->limit_count,
                                                .goals = f->goals,
                                                .goal_count = f->goal_count,
                                                .gap = NEAR_ENOUGH});
}

/* Any amounts first: what they come to tells in which steps each is measured. */
static linear_answer solve_in_steps(formulating *f) {
    bound_parts(f, NULL);
    linear_answer any = solve(f);
    if (any.outcome != LINEAR_MET)
        return any;
    bound_parts(f, any.values);
    linear_answer whole = solve(f);
    return whole.outcome == LINEAR_MET ? whole : any; /* scales will have to do */
}

static void add_obstacle(formula_answer *out, obstacle_sort sort, size_t which, double by) {
    if (by != 0)
        out->obstacles[out->obstacle_count++] = (formula_obstacle){sort, which, by};
}

static void list_obstacles(const formulating *f, const linear_answer *by, formula_answer *out) {
    const formula_brief *of = f->of;
    out->obstacles = ARENA_ARRAY(f->a, formula_obstacle, of->parts.count + f->limit_count);
    for (size_t i = 0; i < of->parts.count; i++)
        add_obstacle(out, OBSTACLE_PART, i, by->bounds_give[i]);
    for (size_t t = 0; t < of->targets.count; t++)
        add_obstacle(out, OBSTACLE_TARGET, t, by->limits_give[t] / of->portions);
    add_obstacle(out, OBSTACLE_BATCH, 0, by->limits_give[of->targets.count]);
    for (size_t i = of->targets.count + 1; i < f->limit_count; i++)
        add_obstacle(out, OBSTACLE_WATER, 0, by->limits_give[i]);
}

/* Targets become the weightiest goals; only the batch and its water stay limits. */
static linear_answer solve_nearest(formulating *f) {
    for (size_t t = 0; t < f->of->targets.count; t++)
        add_goal(f, f->limits[t]);
    f->limits += f->of->targets.count;
    f->limit_count -= f->of->targets.count;
    return solve_in_steps(f);
}

static void look_at(const formulating *f, const double grams[], formula_answer *out) {
    const formula_brief *of = f->of;
    double below[BUILD_QUANTITIES] = {0};
    for (size_t i = 0; i < of->parts.count; i++) {
        const ingredient *what = of->parts.items[i].what;
        out->grams[i] = grams[i];
        out->batch_g += grams[i];
        for (size_t t = 0; t < of->targets.count; t++)
            out->reached[t] +=
                grams[i] * formula_brings(&of->targets.items[t], what) / of->portions;
        for (build_quantity q = 0; q < BUILD_QUANTITIES; q++) {
            out->ratio[q] += grams[i] * build_above(q, what, bake_loss_of(f));
            below[q] += grams[i] * build_below(q, what);
        }
    }
    for (build_quantity q = 0; q < BUILD_QUANTITIES; q++)
        out->ratio[q] = below[q] > 0 ? out->ratio[q] / below[q] : 0;
}

formula_answer formula_solve(arena *a, const formula_brief *of, const build_norms *norms) {
    formulating f = formulating_of(a, of, norms);
    formula_answer out = {.grams = ARENA_ARRAY(a, double, of->parts.count),
                          .reached = ARENA_ARRAY(a, double, of->targets.count + 1)};
    batch_bounds(&f, &out.batch_least_g, &out.batch_most_g);
    linear_answer by = solve_in_steps(&f);
    out.met = by.outcome == LINEAR_MET;
    if (by.outcome == LINEAR_IMPOSSIBLE) {
        list_obstacles(&f, &by, &out);
        by = solve_nearest(&f);
    }
    out.found = by.outcome == LINEAR_MET;
    if (out.found)
        look_at(&f, by.values, &out);
    return out;
}
