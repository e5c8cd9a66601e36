#include "swap/unanswered.h"

#include "swap/main_swaps.h"

/* Under this share a line is a seasoning: nobody buys another flour for dusting. Common practice,
 * no source. */
#define LEAST_SHARE 0.05

static bool is_asked_for(const recipe_facts *about, size_t line) {
    const unsigned asked =
        1u << FAMILY_PROTEIN_POWDER | 1u << FAMILY_FLOUR | 1u << FAMILY_NUT_BUTTER;
    const ingredient *what = facts_at(about, line);
    return what && asked >> what->in & 1u && facts_first_of(about, line) &&
           about->of->weights[line].grams >= LEAST_SHARE * about->part_g;
}

static bool is_answered(arena *a, const rule_book *book, const recipe_facts *about, size_t line,
                        bool *any) {
    decided_list all = {.home = a};
    decide_all(book, about, line, false, &all);
    *any = all.count > 0;
    for (size_t i = 0; i < all.count; i++)
        if (is_owned_by_many(all.items[i].to))
            return true;
    return false;
}

size_t unanswered_next(arena *a, const rule_book *book, const recipe_facts *about, size_t line,
                       bool *any) {
    while (line < about->of->lines.count &&
           (!is_asked_for(about, line) || is_answered(a, book, about, line, any)))
        line++;
    return line;
}
