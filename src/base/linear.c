#include "base/linear.h"

#include "base/memory.h"

#include <assert.h>
#include <lpsolve/lp_lib.h>
#include <math.h>
#include <pthread.h>

/* lp_solve asks once an iteration whether to go on: after so many it is stopped, and what it has
 * found by then counts. A count, not a time, so that every machine answers alike. */
enum { TURNS_MOST = 200000 };

/* How exactly limits must hold, in units of their scale, and steps, in steps. */
#define EXACT 1e-6

/* -- the program as lp_solve has it -----------------------------------------------------------
 *
 * Columns: the variables (in steps where they have one), then for each goal how far its sum may lie
 * above and below; rows: the limits, then the goals, all divided by their scale. */

typedef struct {
    const linear_problem *of;
    lprec *program;
    double *numbers; /* room for a row */
    int *columns;
    unsigned turns;
} solving;

/* It has but one way to fail here: no memory. */
static void need(bool done) {
    if (!done)
        memory_failed();
}

static double unit_of(const linear_variable *of) {
    return of->step > 0 ? of->step : 1;
}

static double as_bound(double bound) {
    return fabs(bound) < INFINITY ? bound : copysign(1e30, bound); /* its infinity */
}

/* Column of the deviation `side` (0 above, 1 below) of a goal. */
static int deviation_column(const linear_problem *of, size_t goal, int side) {
    return (int)(of->variable_count + 2 * goal) + side + 1;
}

/* `goal`: its number, or goal_count for a limit. */
static void add_row(solving *s, const linear_row *row, size_t goal) {
    const linear_problem *of = s->of;
    int count = 0, kind = row->least >= row->most ? EQ : row->least > -INFINITY ? GE : LE;
    double side_value = (kind == LE ? row->most : row->least) / row->scale;
    assert(row->scale > 0 && row->least <= row->most);
    for (size_t i = 0; i < of->variable_count; i++) {
        s->columns[count] = (int)i + 1;
        s->numbers[count++] = row->times[i] * unit_of(&of->variables[i]) / row->scale;
    }
    for (int side = 0; goal < of->goal_count && side < 2; side++) {
        s->columns[count] = deviation_column(of, goal, side);
        s->numbers[count++] = side ? 1 : -1;
    }
    need(add_constraintex(s->program, count, s->numbers, s->columns, kind, side_value));
}

/* Rows that have both a least and a most, which a row is not made with. */
static void bound_rows(solving *s) {
    const linear_problem *of = s->of;
    for (size_t i = 0; i < of->limit_count + of->goal_count; i++) {
        const linear_row *row =
            i < of->limit_count ? &of->limits[i] : &of->goals[i - of->limit_count];
        double wide = (row->most - row->least) / row->scale;
        if (wide > 0 && wide < INFINITY)
            need(set_rh_range(s->program, (int)i + 1, wide));
    }
}

/* False when no whole step lies within the bounds. */
static bool bound_columns(solving *s) {
    bool some = true;
    for (size_t i = 0; i < s->of->variable_count; i++) {
        const linear_variable *x = &s->of->variables[i];
        double least = x->least, most = x->most;
        if (x->step > 0) {
            least = ceil(least / x->step - EXACT);
            most = floor(most / x->step + EXACT);
            need(set_int(s->program, (int)i + 1, TRUE));
        }
        some = some && least <= most;
        if (some)
            need(set_bounds(s->program, (int)i + 1, as_bound(least), as_bound(most)));
    }
    return some;
}

static void set_costs(solving *s) {
    int count = 0;
    for (size_t g = 0; g < s->of->goal_count; g++)
        for (int side = 0; side < 2; side++) {
            s->columns[count] = deviation_column(s->of, g, side);
            s->numbers[count++] = s->of->goals[g].weight;
        }
    need(set_obj_fnex(s->program, count, s->numbers, s->columns));
    set_minim(s->program);
}

static int stop(lprec *program, void *handle) {
    solving *s = handle;
    (void)program;
    return ++s->turns > TURNS_MOST;
}

/* Builds the program; false when it can't be met for want of a step. */
static bool build(arena *a, solving *s) {
    const linear_problem *of = s->of;
    size_t columns = of->variable_count + 2 * of->goal_count;
    s->numbers = ARENA_ARRAY(a, double, columns + 1);
    s->columns = ARENA_ARRAY(a, int, columns + 1);
    need((s->program = make_lp(0, (int)columns)) != NULL);
    set_verbose(s->program, NEUTRAL);
    set_scaling(s->program, SCALE_NONE); /* rows come scaled */
    set_mip_gap(s->program, FALSE, of->gap > 0 ? of->gap : 1e-9);
    put_abortfunc(s->program, stop, s);
    need(set_add_rowmode(s->program, TRUE));
    for (size_t i = 0; i < of->limit_count; i++)
        add_row(s, &of->limits[i], of->goal_count);
    for (size_t g = 0; g < of->goal_count; g++)
        add_row(s, &of->goals[g], g);
    (void)set_add_rowmode(s->program, FALSE);
    bound_rows(s);
    set_costs(s);
    return bound_columns(s);
}

static pthread_mutex_t turn = PTHREAD_MUTEX_INITIALIZER; /* why: see the header */

static int run(arena *a, solving *s, double values[]) {
    const linear_problem *of = s->of;
    double *all = ARENA_ARRAY(a, double, of->variable_count + 2 * of->goal_count + 1);
    pthread_mutex_lock(&turn);
    int code = build(a, s) ? solve(s->program) : INFEASIBLE;
    need(code != NOMEMORY);
    if (code == OPTIMAL || code == SUBOPTIMAL || code == PRESOLVED)
        need(get_variables(s->program, all));
    delete_lp(s->program);
    pthread_mutex_unlock(&turn);
    for (size_t i = 0; i < of->variable_count; i++) {
        const linear_variable *x = &of->variables[i];
        values[i] = x->step > 0 ? round(all[i]) * x->step : fmin(fmax(all[i], x->least), x->most);
    }
    return code;
}

/* -- what came of it --------------------------------------------------------------------------- */

static double sum_of(const linear_row *row, const double values[], size_t count) {
    double sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += row->times[i] * values[i];
    return sum;
}

static double outside(double sum, double least, double most) {
    return sum > most ? sum - most : sum < least ? sum - least : 0;
}

/* A solver's word is checked: its answer holds the limits, or it is none. */
static bool holds(const linear_problem *of, const double values[]) {
    for (size_t i = 0; i < of->variable_count; i++) {
        const linear_variable *x = &of->variables[i];
        if (fabs(outside(values[i], x->least, x->most)) > EXACT * unit_of(x))
            return false;
    }
    for (size_t i = 0; i < of->limit_count; i++) {
        const linear_row *row = &of->limits[i];
        double off = outside(sum_of(row, values, of->variable_count), row->least, row->most);
        if (fabs(off) >
            EXACT * (row->scale + fabs(row->least > -INFINITY ? row->least : row->most)))
            return false;
    }
    return true;
}

/* Solves once, without asking what must give. */
static linear_outcome solve_once(arena *a, const linear_problem *of, double values[]) {
    solving s = {.of = of};
    int code = run(a, &s, values);
    if (code == INFEASIBLE)
        return LINEAR_IMPOSSIBLE;
    bool found = code == OPTIMAL || code == SUBOPTIMAL || code == PRESOLVED;
    return found && holds(of, values) ? LINEAR_MET : LINEAR_GAVE_UP;
}

static void look_at_goals(const linear_problem *of, linear_answer *out) {
    for (size_t g = 0; g < of->goal_count; g++) {
        const linear_row *row = &of->goals[g];
        out->goals_off[g] =
            outside(sum_of(row, out->values, of->variable_count), row->least, row->most);
        out->cost += row->weight * fabs(out->goals_off[g]) / row->scale;
    }
}

/* -- what must give ---------------------------------------------------------------------------- */

/* The problem with its bounds, its limits or both turned into the only goals. */
typedef struct {
    linear_problem easier;
    linear_variable *variables;
    linear_row *goals;
} easing;

static easing easing_of(arena *a, const linear_problem *of) {
    easing e = {.easier = *of};
    e.variables = ARENA_ARRAY(a, linear_variable, of->variable_count + 1);
    e.goals = ARENA_ARRAY(a, linear_row, of->variable_count + of->limit_count + 1);
    memcpy(e.variables, of->variables, sizeof *e.variables * of->variable_count);
    e.easier.variables = e.variables;
    e.easier.goals = e.goals;
    e.easier.goal_count = 0;
    return e;
}

/* What is there can't be less than nothing: a bound of 0 or more gives down to 0. */
static void ease_bounds(arena *a, easing *e, const linear_problem *of) {
    for (size_t i = 0; i < of->variable_count; i++) {
        const linear_variable *x = &of->variables[i];
        double *times = ARENA_ARRAY(a, double, of->variable_count);
        times[i] = 1;
        if (!x->least_is_firm)
            e->variables[i].least = x->least >= 0 ? 0 : -INFINITY;
        if (!x->most_is_firm)
            e->variables[i].most = INFINITY;
        if (x->least > -INFINITY || x->most < INFINITY)
            e->goals[e->easier.goal_count++] = (linear_row){times, x->least, x->most, 1, 1};
    }
}

static void ease_limits(easing *e, const linear_problem *of) {
    e->easier.limit_count = 0;
    for (size_t i = 0; i < of->limit_count; i++) {
        e->goals[e->easier.goal_count] = of->limits[i];
        e->goals[e->easier.goal_count++].weight = 1;
    }
}

static void look_at_what_gives(const linear_problem *of, linear_answer *out) {
    for (size_t i = 0; i < of->variable_count; i++) {
        double off = outside(out->values[i], of->variables[i].least, of->variables[i].most);
        out->bounds_give[i] = fabs(off) > EXACT ? off : 0;
    }
    for (size_t i = 0; i < of->limit_count; i++) {
        const linear_row *row = &of->limits[i];
        double off = outside(sum_of(row, out->values, of->variable_count), row->least, row->most);
        out->limits_give[i] = fabs(off) > EXACT * row->scale ? off : 0;
    }
}

/* Which of the two is eased, in the order of the header. */
static const struct {
    bool bounds, limits;
} easings[] = {{true, false}, {false, true}, {true, true}};

static void find_what_gives(arena *a, const linear_problem *of, linear_answer *out) {
    linear_outcome outcome = LINEAR_IMPOSSIBLE;
    for (size_t k = 0; k < sizeof easings / sizeof easings[0] && outcome != LINEAR_MET; k++) {
        easing e = easing_of(a, of);
        if (easings[k].bounds)
            ease_bounds(a, &e, of);
        if (easings[k].limits)
            ease_limits(&e, of);
        outcome = solve_once(a, &e.easier, out->values);
    }
    out->outcome = outcome == LINEAR_MET ? LINEAR_IMPOSSIBLE : LINEAR_GAVE_UP;
    if (out->outcome == LINEAR_IMPOSSIBLE)
        look_at_what_gives(of, out);
}

linear_answer linear_solve(arena *a, const linear_problem *of) {
    linear_answer out = {.values = ARENA_ARRAY(a, double, of->variable_count + 1),
                         .goals_off = ARENA_ARRAY(a, double, of->goal_count + 1),
                         .bounds_give = ARENA_ARRAY(a, double, of->variable_count + 1),
                         .limits_give = ARENA_ARRAY(a, double, of->limit_count + 1)};
    out.outcome = solve_once(a, of, out.values);
    if (out.outcome == LINEAR_IMPOSSIBLE)
        find_what_gives(a, of, &out);
    if (out.outcome != LINEAR_GAVE_UP)
        look_at_goals(of, &out);
    return out;
}
