#include "checks.h"

#include "base/linear.h"

#include <pthread.h>

enum { MOST = 4 }; /* variables, limits or goals of a problem here */

/* A problem written down in place: coefficients of up to MOST variables a row. */
typedef struct {
    const char *name;
    linear_variable variables[MOST];
    size_t variable_count;
    struct {
        double times[MOST], least, most, weight, scale;
    } limits[MOST], goals[MOST];
    size_t limit_count, goal_count;
    linear_outcome outcome;
    double values[MOST], goals_off[MOST], bounds_give[MOST], limits_give[MOST];
} row;

static const double NONE = INFINITY;

static linear_answer answer_of(arena *a, const row *r) {
    linear_row *limits = ARENA_ARRAY(a, linear_row, MOST),
               *goals = ARENA_ARRAY(a, linear_row, MOST);
    for (size_t i = 0; i < MOST; i++) {
        limits[i] = (linear_row){r->limits[i].times, r->limits[i].least, r->limits[i].most, 0,
                                 r->limits[i].scale};
        goals[i] = (linear_row){r->goals[i].times, r->goals[i].least, r->goals[i].most,
                                r->goals[i].weight, r->goals[i].scale};
    }
    return linear_solve(a, &(linear_problem){r->variables, r->variable_count, limits,
                                             r->limit_count, goals, r->goal_count, 0});
}

/* Worked by hand. */
static void nearest_amounts(void **state) {
    (void)state;
    const row rows[] = {
        {.name = "one target, reached",
         .variables = {{.least = 0, .most = NONE, .step = 0}},
         .variable_count = 1,
         .goals = {{{2}, 10, 10, 1, 1}},
         .goal_count = 1,
         .values = {5}},
        /* 7 g steps towards 30 g: 28 is nearer than 35 */
        {.name = "whole steps",
         .variables = {{.least = 0, .most = NONE, .step = 7}},
         .variable_count = 1,
         .goals = {{{1}, 30, 30, 1, 1}},
         .goal_count = 1,
         .values = {28},
         .goals_off = {-2}},
        /* x wants 10 with weight 3 and 4 with weight 1: the heavier goal is met */
        {.name = "the heavier goal wins",
         .variables = {{.least = 0, .most = NONE, .step = 0}},
         .variable_count = 1,
         .goals = {{{1}, 10, 10, 3, 1}, {{1}, 4, 4, 1, 1}},
         .goal_count = 2,
         .values = {10},
         .goals_off = {0, 6}},
        /* the same with the first counted in tens: 3 / 10 is lighter than 1 */
        {.name = "scales count",
         .variables = {{.least = 0, .most = NONE, .step = 0}},
         .variable_count = 1,
         .goals = {{{1}, 10, 10, 3, 10}, {{1}, 4, 4, 1, 1}},
         .goal_count = 2,
         .values = {4},
         .goals_off = {-6, 0}},
        {.name = "at least and at most",
         .variables = {{.least = 0, .most = 50, .step = 0}, {.least = 0, .most = 50, .step = 0}},
         .variable_count = 2,
         .limits = {{{1, 1}, 60, 60, 0, 1}, {{1, -2}, -NONE, 0, 0, 1}},
         .limit_count = 2,
         .goals = {{{0, 1}, -NONE, 5, 1, 1}},
         .goal_count = 1,
         .values = {40, 20},
         .goals_off = {15}},
        /* fat of 100 g peanut butter from defatted flour (0.5 % fat, 95 % dry) and oil: f + o as
         * dry 48 and fat 50: f = 48 / 0.95 = 50.526, o = 50 - 0.2526 = 49.747 */
        {.name = "two equations",
         .variables = {{.least = 0, .most = NONE, .step = 0},
                       {.least = 0, .most = NONE, .step = 0}},
         .variable_count = 2,
         .goals = {{{0.95, 0}, 48, 48, 1, 1}, {{0.005, 1}, 50, 50, 1, 1}},
         .goal_count = 2,
         .values = {50.526315789, 49.747368421}},
        {.name = "below nothing",
         .variables = {{.least = -10, .most = 10, .step = 0}},
         .variable_count = 1,
         .goals = {{{1}, -25, -25, 1, 1}},
         .goal_count = 1,
         .values = {-10},
         .goals_off = {15}},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        linear_answer got = answer_of(a, &rows[i]);
        if (got.outcome != LINEAR_MET)
            fail_msg("%s: outcome %d", rows[i].name, (int)got.outcome);
        for (size_t k = 0; k < rows[i].variable_count; k++)
            same_number(rows[i].name, got.values[k], rows[i].values[k], 1e-6);
        for (size_t k = 0; k < rows[i].goal_count; k++)
            same_number(rows[i].name, got.goals_off[k], rows[i].goals_off[k], 1e-6);
        arena_free(a);
    }
}

/* Worked by hand. */
static void what_must_give(void **state) {
    (void)state;
    const row rows[] = {
        /* 60 g of butter are there; 0.8 g fat a gram must make up 56 g: 70 g, 10 more */
        {.name = "not enough butter",
         .variables = {{.least = 0, .most = 60, .step = 0}},
         .variable_count = 1,
         .limits = {{{0.8}, 56, 56, 0, 1}},
         .limit_count = 1,
         .bounds_give = {10}},
        /* the same, but the butter may not give */
        {.name = "no more butter",
         .variables = {{.least = 0, .most = 60, .most_is_firm = true}},
         .variable_count = 1,
         .limits = {{{0.8}, 56, 56, 0, 1}},
         .limit_count = 1,
         .limits_give = {-8}},
        {.name = "more than half must stay",
         .variables = {{.least = 50, .most = 100, .step = 0}, {.least = 0, .most = 5, .step = 0}},
         .variable_count = 2,
         .limits = {{{1, 1}, -NONE, 30, 0, 1}},
         .limit_count = 1,
         .bounds_give = {-20, 0}},
        /* no amount is 10 and 12 at once; the limit in small units gives */
        {.name = "limits against each other",
         .variables = {{.least = 0, .most = NONE, .step = 0}},
         .variable_count = 1,
         .limits = {{{1}, 10, 10, 0, 1}, {{1}, 12, 12, 0, 5}},
         .limit_count = 2,
         .limits_give = {0, -2}},
        {.name = "no whole step",
         .variables = {{.least = 4, .most = 6, .step = 7}},
         .variable_count = 1,
         .limits = {{{1}, -NONE, 6, 0, 1}},
         .limit_count = 1,
         .bounds_give = {-4}},
        /* nothing with fat is there at all: the bound stays at nothing, the limit gives */
        {.name = "nothing brings it",
         .variables = {{.least = 0, .most = 100, .step = 0}},
         .variable_count = 1,
         .limits = {{{0}, 5, NONE, 0, 1}},
         .limit_count = 1,
         .limits_give = {-5}},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        linear_answer got = answer_of(a, &rows[i]);
        if (got.outcome != LINEAR_IMPOSSIBLE)
            fail_msg("%s: outcome %d", rows[i].name, (int)got.outcome);
        for (size_t k = 0; k < rows[i].variable_count; k++)
            same_number(rows[i].name, got.bounds_give[k], rows[i].bounds_give[k], 1e-6);
        for (size_t k = 0; k < rows[i].limit_count; k++)
            same_number(rows[i].name, got.limits_give[k], rows[i].limits_give[k], 1e-6);
        arena_free(a);
    }
}

/* -- against every possible amount ------------------------------------------------------------ */

/* A sequence that is the same everywhere: x 6364136223846793005 + 1442695040888963407, the
 * multiplier of D. Knuth's MMIX generator. */
static double next_of(unsigned long long *seed, double least, double most) {
    *seed = *seed * 6364136223846793005ull + 1442695040888963407ull;
    return least + (most - least) * (double)(*seed >> 40) / (double)(1u << 24);
}

/* Three amounts in whole steps up to five of them, one limit, three goals. */
static row random_row(unsigned long long *seed) {
    row r = {.name = "random", .variable_count = 3, .limit_count = 1, .goal_count = 3};
    for (size_t i = 0; i < r.variable_count; i++) {
        double step = 1 + floor(next_of(seed, 0, 6));
        r.variables[i] = (linear_variable){.most = 5 * step, .step = step};
        r.limits[0].times[i] = next_of(seed, 0, 1);
        for (size_t g = 0; g < r.goal_count; g++)
            r.goals[g].times[i] = next_of(seed, -1, 1);
    }
    r.limits[0].least = -INFINITY;
    r.limits[0].most = next_of(seed, 0, 20);
    r.limits[0].scale = 1;
    for (size_t g = 0; g < r.goal_count; g++) {
        r.goals[g].least = next_of(seed, 0, 20);
        r.goals[g].most = r.goals[g].least + (g ? 0 : 2);
        r.goals[g].weight = next_of(seed, 0, 3);
        r.goals[g].scale = next_of(seed, 0.5, 4);
    }
    return r;
}

static double cost_at(const row *r, const double values[]) {
    double cost = 0;
    for (size_t g = 0; g < r->goal_count; g++) {
        double sum = 0;
        for (size_t i = 0; i < r->variable_count; i++)
            sum += r->goals[g].times[i] * values[i];
        double off = fmax(fmax(sum - r->goals[g].most, r->goals[g].least - sum), 0);
        cost += r->goals[g].weight * off / r->goals[g].scale;
    }
    return cost;
}

/* The least cost of the 6 x 6 x 6 amounts within the limit. */
static double least_cost(const row *r) {
    double least = INFINITY;
    for (int n = 0; n < 216; n++) {
        double values[3] = {n % 6 * r->variables[0].step, n / 6 % 6 * r->variables[1].step,
                            n / 36 * r->variables[2].step};
        double sum = 0;
        for (size_t i = 0; i < 3; i++)
            sum += r->limits[0].times[i] * values[i];
        if (sum <= r->limits[0].most + 1e-9)
            least = fmin(least, cost_at(r, values));
    }
    return least;
}

static void no_amounts_come_nearer(void **state) {
    (void)state;
    unsigned long long seed = 7;
    for (int n = 0; n < 400; n++) {
        arena *a = arena_new();
        row r = random_row(&seed);
        linear_answer got = answer_of(a, &r);
        if (got.outcome != LINEAR_MET)
            fail_msg("problem %d: outcome %d", n, (int)got.outcome);
        same_number("cost as stated", got.cost, cost_at(&r, got.values), 1e-6);
        same_number(arena_format(a, "problem %d", n), got.cost, least_cost(&r), 1e-6);
        arena_free(a);
    }
}

/* -- several workers
 * ------------------------------------------------------------------------------- */

enum { WORKERS = 4, PROBLEMS = 200 };

static void *solve_all(void *room) {
    double(*values)[3] = room;
    unsigned long long seed = 11;
    for (size_t n = 0; n < PROBLEMS; n++) {
        arena *a = arena_new();
        row r = random_row(&seed);
        memcpy(values[n], answer_of(a, &r).values, sizeof values[n]);
        arena_free(a);
    }
    return NULL;
}

static void workers_find_the_same(void **state) {
    (void)state;
    static double values[WORKERS][PROBLEMS][3];
    pthread_t workers[WORKERS];
    for (size_t i = 0; i < WORKERS; i++)
        assert_int_equal(pthread_create(&workers[i], NULL, solve_all, values[i]), 0);
    for (size_t i = 0; i < WORKERS; i++)
        pthread_join(workers[i], NULL);
    for (size_t i = 1; i < WORKERS; i++)
        assert_memory_equal(values[i], values[0], sizeof values[0]);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nearest_amounts),
        cmocka_unit_test(what_must_give),
        cmocka_unit_test(no_amounts_come_nearer),
        cmocka_unit_test(workers_find_the_same),
    };
    return cmocka_run_group_tests_name("linear", tests, NULL, NULL);
}
