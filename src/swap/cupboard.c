#include "swap/cupboard.h"

static bool is_owned(const cupboard *of, const ingredient *what) {
    for (size_t i = 0; i < of->count; i++)
        if (of->items[i] == what)
            return true;
    return false;
}

/* Sets `*out` to the best swap for line `line`; false when nothing at hand stands in. */
static bool best_swap(const rule_book *book, const recipe_facts *about, size_t line,
                      const cupboard *of, cupboard_swap *out) {
    const ingredient *from = about->of->lines.items[line].what;
    *out = (cupboard_swap){.from = from, .says = VERDICT_AVOID};
    for (size_t i = 0; i < of->count; i++) {
        verdict says = decision_says(decide(book, about, line, of->items[i], NULL));
        if (says < out->says)
            *out = (cupboard_swap){from, of->items[i], says};
    }
    return out->to != NULL;
}

/* True when no line that is not optional names the ingredient of `line` before it. */
static bool is_first_asked(const recipe *of, size_t line) {
    if (of->lines.items[line].optional)
        return false;
    for (size_t i = 0; i < line; i++)
        if (of->lines.items[i].what == of->lines.items[line].what && !of->lines.items[i].optional)
            return false;
    return true;
}

static void look_at(cupboard_plan *plan, const rule_book *book, const recipe_facts *about,
                    size_t line, const cupboard *of) {
    const ingredient *what = about->of->lines.items[line].what;
    if (is_owned(of, what))
        plan->as_written++;
    else if (ingredient_is_water(what) || (of->has_staples && ingredient_is_staple(what)))
        return;
    else if (best_swap(book, about, line, of, &plan->swaps[plan->swap_count]))
        plan->swap_count++;
    else
        plan->missing[plan->missing_count++] = what->name;
}

cupboard_plan cupboard_plan_of(arena *a, const rule_book *book, const recipe_facts *about,
                               const cupboard *of) {
    const recipe_lines *lines = &about->of->lines;
    cupboard_plan plan = {.missing = ARENA_ARRAY(a, const char *, lines->count + 1),
                          .swaps = ARENA_ARRAY(a, cupboard_swap, lines->count + 1)};
    for (size_t i = 0; i < lines->count; i++) {
        const recipe_line *line = &lines->items[i];
        if (!line->what && !line->optional)
            plan.missing[plan.missing_count++] = line->name;
        else if (line->what && is_first_asked(about->of, i))
            look_at(&plan, book, about, i, of);
    }
    return plan;
}

/* Swaps by how far they are from the recipe as written. */
static size_t distance(const cupboard_plan *of) {
    size_t sum = 0;
    for (size_t i = 0; i < of->swap_count; i++)
        sum += 1 + (size_t)of->swaps[i].says;
    return sum;
}

int cupboard_compare(const cupboard_plan *one, const cupboard_plan *other) {
    if (one->missing_count != other->missing_count)
        return one->missing_count < other->missing_count ? -1 : 1;
    size_t left = distance(one), right = distance(other);
    return left < right ? -1 : left > right;
}

bool cupboard_plan_is_empty(const cupboard_plan *of) {
    return of->as_written == 0 && of->swap_count == 0;
}
