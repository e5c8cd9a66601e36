/* Prints COUNT goal programs (base/linear.h) in the LP format that solvers read, each with what
 * ours makes of it: one JSON object a line, {"program", "outcome", "cost"}. Seeded: the same every
 * time. Some variables go in steps, some limits can't all hold.
 *   linear [COUNT] */
#include "base/linear.h"
#include "base/list.h"
#include "base/number.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { VARIABLES_MOST = 5, ROWS_MOST = 4 };

typedef struct {
    linear_variable variables[VARIABLES_MOST];
    linear_row limits[ROWS_MOST], goals[ROWS_MOST];
    double times[2 * ROWS_MOST][VARIABLES_MOST];
    linear_problem all;
} puzzle;

/* The multiplier of D. Knuth's MMIX generator. */
static double next_of(unsigned long long *seed, double least, double most) {
    *seed = *seed * 6364136223846793005ull + 1442695040888963407ull;
    return least + (most - least) * (double)(*seed >> 40) / (double)(1u << 24);
}

static linear_row row_of(puzzle *p, size_t at, unsigned long long *seed) {
    double least = next_of(seed, 0, 40), wide = next_of(seed, -3, 12);
    for (size_t i = 0; i < p->all.variable_count; i++)
        p->times[at][i] = next_of(seed, 0, 1) < 0.3 ? 0 : round(next_of(seed, -20, 40)) / 20;
    return (linear_row){p->times[at], wide > 8 ? -INFINITY : least,
                        wide > 5 && wide <= 8 ? INFINITY : least + fmax(wide, 0),
                        round(next_of(seed, 1, 9)), next_of(seed, 0.5, 4)};
}

static void fill(puzzle *p, unsigned long long *seed) {
    p->all = (linear_problem){.variables = p->variables,
                              .variable_count = 2 + (size_t)next_of(seed, 0, 3.99),
                              .limits = p->limits,
                              .limit_count = (size_t)next_of(seed, 0, 3.99),
                              .goals = p->goals,
                              .goal_count = 1 + (size_t)next_of(seed, 0, 2.99)};
    for (size_t i = 0; i < p->all.variable_count; i++) {
        double step = next_of(seed, 0, 1) < 0.5 ? round(next_of(seed, 1, 6)) : 0;
        p->variables[i] = (linear_variable){
            .most = (step > 0 ? step : 1) * round(next_of(seed, 2, 15)), .step = step};
    }
    for (size_t i = 0; i < p->all.limit_count; i++)
        p->limits[i] = row_of(p, i, seed);
    for (size_t i = 0; i < p->all.goal_count; i++)
        p->goals[i] = row_of(p, ROWS_MOST + i, seed);
}

static double unit_of(const linear_variable *of) {
    return of->step > 0 ? of->step : 1;
}

static void put_sum(const puzzle *p, const linear_row *row) {
    printf(" 0 x0");
    for (size_t i = 0; i < p->all.variable_count; i++)
        if (row->times[i] != 0)
            printf(" %+.15g x%zu", row->times[i] * unit_of(&p->variables[i]), i);
}

/* `deviations`: the goal's number, or SIZE_MAX for a limit. */
static void put_row(const puzzle *p, const linear_row *row, const char *name, size_t number,
                    bool is_goal) {
    if (row->most < INFINITY) {
        printf(" %s%zua:", name, number);
        put_sum(p, row);
        if (is_goal)
            printf(" - o%zu", number);
        printf(" <= %.15g\\n", row->most);
    }
    if (row->least > -INFINITY) {
        printf(" %s%zub:", name, number);
        put_sum(p, row);
        if (is_goal)
            printf(" + u%zu", number);
        printf(" >= %.15g\\n", row->least);
    }
}

static void put_program(const puzzle *p) {
    printf("Minimize\\n obj: 0 x0");
    for (size_t g = 0; g < p->all.goal_count; g++)
        printf(" + %.15g o%zu + %.15g u%zu", p->goals[g].weight / p->goals[g].scale, g,
               p->goals[g].weight / p->goals[g].scale, g);
    printf("\\nSubject To\\n");
    for (size_t i = 0; i < p->all.limit_count; i++)
        put_row(p, &p->limits[i], "l", i, false);
    for (size_t g = 0; g < p->all.goal_count; g++)
        put_row(p, &p->goals[g], "g", g, true);
    printf("Bounds\\n");
    for (size_t i = 0; i < p->all.variable_count; i++)
        printf(" 0 <= x%zu <= %.15g\\n", i, p->variables[i].most / unit_of(&p->variables[i]));
    printf("General\\n");
    for (size_t i = 0; i < p->all.variable_count; i++)
        if (p->variables[i].step > 0)
            printf(" x%zu\\n", i);
    printf("End");
}

int main(int count, char **words) {
    static const char *const outcomes[] = {"met", "impossible", "gave up"};
    double wanted = 200;
    unsigned long long seed = 20;
    if (count > 1 && !number_is(span_of(words[1]), &wanted))
        return 2;
    for (size_t n = 0; n < (size_t)wanted; n++) {
        arena *a = arena_new();
        puzzle p = {0};
        fill(&p, &seed);
        linear_answer by = linear_solve(a, &p.all);
        printf("{\"program\":\"");
        put_program(&p);
        printf("\",\"outcome\":\"%s\",\"cost\":%.15g}\n", outcomes[by.outcome], by.cost);
        arena_free(a);
    }
    return 0;
}
