#include "swap/swapped.h"

#include <math.h>
#include <stdint.h>

/* Less than this is nothing. */
#define NOTHING_G 1e-9

static void add_line(arena *a, recipe *to, const ingredient *what, double grams) {
    recipe_line line = {.what = what, .name = what->name, .written = what->name};
    LIST_ADD(a, &to->lines, line);
    to->weights[to->lines.count - 1] =
        (weight){.way = WEIGHT_WRITTEN, .grams = grams, .low_g = grams, .high_g = grams};
}

/* Takes up to `*left_g` off a line of `what`. */
static double taken_off(const ingredient *here, const ingredient *what, double line_g,
                        double *left_g) {
    if (here != what || *left_g <= 0)
        return 0;
    double taken_g = fmin(line_g, *left_g);
    *left_g -= taken_g;
    return taken_g;
}

static void keep_line(arena *a, recipe *to, const recipe *of, size_t i, double grams) {
    LIST_ADD(a, &to->lines, of->lines.items[i]);
    weight *kept = &to->weights[to->lines.count - 1];
    *kept = of->weights[i];
    kept->grams = grams;
}

static void sum_up(recipe *of) {
    of->batch_g = 0;
    for (size_t i = 0; i < of->lines.count; i++)
        of->batch_g += of->weights[i].grams;
    of->baked_g = of->batch_g * (1 - of->bake_loss);
}

recipe *recipe_swapped(arena *a, const recipe *of, const swap_note *note, const ingredient *water) {
    enum { LINES_MORE = 2 };
    bool two = note->second_line != SIZE_MAX;
    const ingredient *first = of->lines.items[note->line].what;
    const ingredient *second = two ? of->lines.items[note->second_line].what : NULL;
    double first_left_g = note->from_g, second_left_g = two ? note->second_from_g : 0;
    recipe *to = ARENA_NEW(a, recipe);
    *to = *of;
    to->lines = (recipe_lines){0};
    to->groups = (line_groups){0};
    to->weights = ARENA_ARRAY(a, weight, of->lines.count + LINES_MORE);
    for (size_t i = 0; i < of->lines.count; i++) {
        const ingredient *here = of->lines.items[i].what;
        double line_g = of->weights[i].grams;
        double left_g = line_g - taken_off(here, first, line_g, &first_left_g);
        left_g -= taken_off(here, second, left_g, &second_left_g);
        bool gone = left_g < line_g && left_g <= NOTHING_G;
        if (!gone)
            keep_line(a, to, of, i, left_g + (i == note->liquid_line ? note->liquid_change_g : 0));
    }
    add_line(a, to, note->to, note->to_g);
    if (note->liquid_line == SIZE_MAX && note->liquid_change_g > NOTHING_G)
        add_line(a, to, water, note->liquid_change_g);
    sum_up(to);
    return to;
}
