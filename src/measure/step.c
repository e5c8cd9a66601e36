#include "measure/step.h"

#include "base/list.h"

enum { FINE_BELOW_SPOONS = 2, HANDY_FROM_SPOONS = 4, WHOLE_GRAMS_BELOW = 50, GRAMS_AT_A_TIME = 5 };

/* Grams of one, 0 where the entry has no such measure. */
static double one_g(const ingredient *what, const char *unit) {
    range room;
    const range *grams = ingredient_measure(what, span_of(unit), &room);
    return grams ? grams->typical : 0;
}

double step_fine_g(const ingredient *what, double grams) {
    double spoon_g = one_g(what, "tsp");
    if (spoon_g <= 0)
        return grams < WHOLE_GRAMS_BELOW ? 1 : GRAMS_AT_A_TIME;
    return grams < FINE_BELOW_SPOONS * spoon_g ? spoon_g / 4 : spoon_g;
}

double step_handy_g(const ingredient *what, double grams) {
    double spoon_g = one_g(what, "tbsp"), egg_g = one_g(what, "large");
    if (what->in == FAMILY_EGG && kind_matches("whole", what->kind) && egg_g > 0)
        return egg_g;
    return spoon_g > 0 && grams >= HANDY_FROM_SPOONS * spoon_g ? spoon_g : step_fine_g(what, grams);
}
