#include "unit/support/cmocka_rows.h"

#include "nutrition/cost.h"
#include "unit/support/build_recipe.h"

static ingredient *priced(arena *a, const char *name, double per_100_g) {
    ingredient *one = food_of_nothing(a, name);
    one->price_per_100_g = per_100_g;
    return one;
}

static void costs_weighed_lines_with_a_price(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double first_price, second_price;
        bool unknown_too, unweighed_too, to_taste_too;
        double cost;
        size_t lacking;
    } rows[] = {
        {"both priced", 2, 0.5, false, false, false, 60 * 0.02 + 200 * 0.005, 0},
        {"one priced", 2, 0, false, false, false, 1.2, 1},
        {"none priced", 0, 0, false, false, false, 0, 2},
        {"an unknown thing has no price", 2, 0.5, true, false, false, 2.2, 1},
        {"what is not weighed is told by the recipe", 2, 0.5, false, true, false, 2.2, 0},
        {"to taste costs nothing", 2, 0.5, false, false, true, 2.2, 0},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe *r = recipe_new(a, "bar");
        recipe_add(a, r, priced(a, "powder", rows[i].first_price), 60);
        recipe_add(a, r, priced(a, "egg", rows[i].second_price), 200);
        if (rows[i].unknown_too)
            recipe_add_unknown(a, r, "mystery", 30);
        if (rows[i].unweighed_too)
            recipe_add_unweighed(a, r, priced(a, "salt", 0.1));
        if (rows[i].to_taste_too)
            recipe_add_to_taste(a, r, priced(a, "salt", 0.1));
        size_t lacking = 99;
        expect_near(rows[i].name, cost_of(r, &lacking), rows[i].cost, 1e-9);
        if (lacking != rows[i].lacking)
            fail_msg("%s: %zu lacking", rows[i].name, lacking);
        expect_near(rows[i].name, cost_of(r, NULL), rows[i].cost, 1e-9);
    }
    arena_free(a);
}

/* What a swap changes: 60 g of one for 50 g of another. */
static void one_ingredient(void **state) {
    (void)state;
    arena *a = arena_new();
    double change =
        cost_of_ingredient(priced(a, "new", 3), 50) - cost_of_ingredient(priced(a, "old", 2), 60);
    expect_near("change", change, 0.3, 1e-9);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(costs_weighed_lines_with_a_price),
        cmocka_unit_test(one_ingredient),
    };
    return cmocka_run_group_tests_name("cost", tests, NULL, NULL);
}
