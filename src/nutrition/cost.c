#include "nutrition/cost.h"

double cost_of_ingredient(const ingredient *what, double grams) {
    return what->price_per_100_g * grams / 100;
}

double cost_of(const recipe *of, size_t *lacking) {
    double cost = 0;
    size_t without = 0;
    for (size_t i = 0; i < of->lines.count; i++) {
        const weight *w = &of->weights[i];
        const ingredient *what = of->lines.items[i].what;
        if (w->way == WEIGHT_UNKNOWN || w->way == WEIGHT_NONE)
            continue;
        if (what && what->price_per_100_g > 0)
            cost += cost_of_ingredient(what, w->grams);
        else
            without++;
    }
    if (lacking)
        *lacking = without;
    return cost;
}
