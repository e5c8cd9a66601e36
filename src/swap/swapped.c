#include "swap/swapped.h"

#include "measure/kitchen.h"

#include <math.h>
#include <stdint.h>

/* Less than this is nothing. */
#define NOTHING_G 1e-9

/* A recipe in the making. */
typedef struct {
    arena *a;
    const recipe *of;
    const swap_note *note;
    const ingredient *water;
    recipe *to;
    bool in_words;    /* changed lines are written anew */
    size_t *was;      /* for each line of `to` */
    size_t *starts;   /* for each line of `of`: how many lines of `to` stand before it */
    double left_g[2]; /* of what goes, still to be taken off */
} swapping;

/* "55 g rice protein powder": a line as somebody would write it who only has scales. */
static const char *written_in_grams(arena *a, const recipe_line *line, double grams) {
    return arena_format(a, "%s %s%s%s", kitchen_weight(a, grams), line->name,
                        line->preparation ? ", " : "", line->preparation ? line->preparation : "");
}

static recipe_line line_in_grams(const swapping *s, const recipe_line *like, double grams) {
    recipe_line line = *like;
    if (s->in_words)
        line.written = written_in_grams(s->a, like, grams);
    line.has_amount = true;
    line.quantity = (amount_range){.low = grams, .high = grams};
    line.in = NULL;
    line.unit_written = "g";
    line.more_count = 0;
    line.has_own_weight = false;
    line.to_taste = false;
    return line;
}

static void put_line(swapping *s, recipe_line line, weight weighs, size_t was) {
    size_t at = s->to->lines.count;
    LIST_ADD(s->a, &s->to->lines, line);
    s->to->weights[at] = weighs;
    s->was[at] = was;
}

static weight exactly(double grams) {
    return (weight){
        .way = WEIGHT_WRITTEN, .grams = grams, .low_g = grams, .high_g = grams, .source = NULL};
}

static void put_new(swapping *s, const ingredient *what, double grams) {
    recipe_line bare = {
        .at = s->of->lines.items[s->note->line].at, .what = what, .name = what->name};
    put_line(s, line_in_grams(s, &bare, grams), exactly(grams), SIZE_MAX);
}

/* What of line `i` goes. */
static double taken_off(swapping *s, size_t i) {
    const size_t first[] = {s->note->line, s->note->second_line};
    double left_g = s->of->weights[i].grams;
    for (size_t k = 0; k < COUNT(first); k++) {
        if (first[k] == SIZE_MAX || !s->of->lines.items[i].what ||
            s->of->lines.items[i].what != s->of->lines.items[first[k]].what)
            continue;
        double taken_g = fmin(left_g, s->left_g[k]);
        s->left_g[k] -= taken_g;
        left_g -= taken_g;
    }
    return s->of->weights[i].grams - left_g;
}

/* A line that goes is gone; one of which all is held back stays, with nothing of it. */
static void put_rest(swapping *s, size_t i) {
    const recipe_line *line = &s->of->lines.items[i];
    double taken_g = taken_off(s, i), left_g = s->of->weights[i].grams - taken_g;
    double liquid_g = i == s->note->liquid_line ? s->note->liquid_change_g : 0;
    if (taken_g > 0 && left_g <= NOTHING_G)
        return;
    if (taken_g <= NOTHING_G && fabs(liquid_g) <= NOTHING_G)
        put_line(s, *line, s->of->weights[i], i);
    else
        put_line(s, line_in_grams(s, line, left_g + liquid_g), exactly(left_g + liquid_g), i);
}

static void put_what_comes(swapping *s) {
    put_new(s, s->note->to, s->note->to_g);
    if (s->note->also_to)
        put_new(s, s->note->also_to, s->note->also_to_g);
    if (s->note->liquid_line == SIZE_MAX && s->note->liquid_change_g > NOTHING_G)
        put_new(s, s->note->liquid_apart ? s->note->liquid_apart : s->water,
                s->note->liquid_change_g);
}

/* The groups as they were, around the lines that there are now. */
static void keep_groups(swapping *s) {
    const line_groups *groups = &s->of->groups;
    s->to->groups = (line_groups){0};
    for (size_t g = 0; g < groups->count; g++) {
        line_group group = groups->items[g];
        size_t end = group.first + group.count;
        group.first = s->starts[group.first];
        group.count = s->starts[end] - group.first;
        if (group.count)
            LIST_ADD(s->a, &s->to->groups, group);
    }
}

static void sum_up(recipe *of) {
    of->batch_g = 0;
    for (size_t i = 0; i < of->lines.count; i++)
        of->batch_g += of->weights[i].grams;
    of->baked_g = of->batch_g * (1 - of->bake_loss);
}

static recipe *swapped(swapping *s) {
    enum { LINES_MORE = 3 };
    const recipe *of = s->of;
    size_t most = of->lines.count + LINES_MORE;
    s->to = ARENA_NEW(s->a, recipe);
    s->was = ARENA_ARRAY(s->a, size_t, most);
    s->starts = ARENA_ARRAY(s->a, size_t, of->lines.count + 1);
    s->left_g[0] = s->note->from_g;
    s->left_g[1] = s->note->second_from_g;
    *s->to = *of;
    s->to->lines =
        (recipe_lines){.items = ARENA_ARRAY(s->a, recipe_line, most), .count = 0, .capacity = most};
    s->to->weights = ARENA_ARRAY(s->a, weight, most);
    for (size_t i = 0; i < of->lines.count; i++) {
        s->starts[i] = s->to->lines.count;
        put_rest(s, i);
        if (i == s->note->line)
            put_what_comes(s);
    }
    s->starts[of->lines.count] = s->to->lines.count;
    keep_groups(s);
    sum_up(s->to);
    return s->to;
}

recipe *recipe_swapped_lines(arena *a, const recipe *of, const swap_note *note,
                             const ingredient *water, const size_t **was) {
    swapping s = {.a = a, .of = of, .note = note, .water = water, .in_words = true};
    recipe *to = swapped(&s);
    *was = s.was;
    return to;
}

recipe *recipe_swapped(arena *a, const recipe *of, const swap_note *note, const ingredient *water) {
    return swapped(&(swapping){.a = a, .of = of, .note = note, .water = water});
}
