#include "checks.h"

#include "measure/step.h"
#include "shelf.h"

/* Spoons of the shelf: oat flour 104 g a cup (20132), so 6.5 g a tablespoon. */
static void steps_of_a_kitchen(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double grams, fine_g, handy_g;
    } rows[] = {{"oat flour", 2, 104.0 / 48 / 4, 104.0 / 48 / 4},
                {"oat flour", 20, 104.0 / 48, 104.0 / 48},
                {"oat flour", 60, 104.0 / 48, 104.0 / 16},
                {"salt", 1, 1.5, 1.5},
                {"chia seed", 20, 1, 1},
                {"chia seed", 120, 5, 5}};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = shelf_filled(a, &found);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const ingredient *what = pantry_find(&shelf, span_of(rows[i].name), a);
        const char *row = arena_format(a, "row %zu, %s", i, rows[i].name);
        same_number(row, step_fine_g(what, rows[i].grams), rows[i].fine_g, 1e-9);
        same_number(row, step_handy_g(what, rows[i].grams), rows[i].handy_g, 1e-9);
    }
    arena_free(a);
}

static void whole_eggs_go_whole(void **state) {
    (void)state;
    ingredient egg = {.name = "egg", .kind = "whole", .in = FAMILY_EGG};
    household_measure measures[] = {{"large", {50, 50, 50}}, {"cup", {243, 243, 243}}};
    egg.measures = (household_measures){measures, COUNT(measures), COUNT(measures)};
    same_number("a cake's", step_handy_g(&egg, 150), 50, 0);
    same_number("weighed", step_fine_g(&egg, 150), 243.0 / 48, 1e-9);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(steps_of_a_kitchen),
        cmocka_unit_test(whole_eggs_go_whole),
    };
    return cmocka_run_group_tests_name("step", tests, NULL, NULL);
}
