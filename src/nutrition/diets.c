#include "nutrition/diets.h"

#define BIT(n) (1u << (n))

/* What rules a diet out: an origin, an allergen that an ingredient of mixed origin carries (milk
 * in chocolate), or gluten. GlutenFreeDiet is a promise that no ingredient list can make. */
static const struct {
    const char *word, *schema;
    unsigned origins;
    allergen_set allergens;
    bool gluten_too;
} rows[DIET_COUNT] = {
    [DIET_VEGAN] = {"vegan", "VeganDiet",
                    BIT(ORIGIN_DAIRY) | BIT(ORIGIN_EGG) | BIT(ORIGIN_ANIMAL) | BIT(ORIGIN_BEE),
                    BIT(ALLERGEN_MILK) | BIT(ALLERGEN_EGG) | BIT(ALLERGEN_FISH) |
                        BIT(ALLERGEN_CRUSTACEAN) | BIT(ALLERGEN_MOLLUSC),
                    false},
    [DIET_VEGETARIAN] = {"vegetarian", "VegetarianDiet", BIT(ORIGIN_ANIMAL),
                         BIT(ALLERGEN_FISH) | BIT(ALLERGEN_CRUSTACEAN) | BIT(ALLERGEN_MOLLUSC),
                         false},
    [DIET_NO_DAIRY] = {"no dairy", NULL, BIT(ORIGIN_DAIRY), BIT(ALLERGEN_MILK), false},
    [DIET_NO_EGG] = {"no egg", NULL, BIT(ORIGIN_EGG), BIT(ALLERGEN_EGG), false},
    [DIET_NO_GLUTEN] = {"no gluten ingredient", NULL, 0,
                        BIT(ALLERGEN_WHEAT) | BIT(ALLERGEN_SPELT) | BIT(ALLERGEN_RYE) |
                            BIT(ALLERGEN_BARLEY) | BIT(ALLERGEN_OATS),
                        true},
};

static bool allows(diet which, const ingredient *what) {
    return !(rows[which].origins & BIT(what->from)) && !(rows[which].allergens & what->allergens) &&
           !(rows[which].gluten_too && what->has_gluten != GLUTEN_NONE);
}

diet_set diets_of_ingredient(const ingredient *what) {
    diet_set allowed = 0;
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (allows((diet)i, what))
            allowed |= BIT(i);
    return allowed;
}

diet_set diets_of(const recipe *of) {
    diet_set allowed = of->lines.count ? BIT(DIET_COUNT) - 1 : 0;
    for (size_t i = 0; i < of->lines.count; i++) {
        const ingredient *what = of->lines.items[i].what;
        allowed &= what ? diets_of_ingredient(what) : 0;
    }
    return allowed;
}

const char *diet_word(diet which) {
    return rows[which].word;
}

const char *diet_schema(diet which) {
    return rows[which].schema;
}
