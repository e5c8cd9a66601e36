/* Water uptake and sweeteners of the reference pantry against what was measured or is law.
 *
 * Dairy powders: Nutrients 2013 5(11):4503-4520, Table 1, water absorption index at room
 * temperature and after 90 C. Oat flour: J Food Sci Technol 2016 53(4):1856-1866, abstract, three
 * varieties 1.98 to 2.36. Hemp isolate: Journal of Food Science 2023 88(3):942-951, abstract, 0.83
 * to 1.05. Soy isolate: Foods 2021 10(3):667 Table 1 and Korean Journal of Food Preservation
 * 30(5):875 Table 2. Soy flours: the latter. Polyols: Regulation (EU) 1169/2011, Annex XIV. */
#include "reference_shelf.h"

/* The measured figures must lie within the pantry's range, and its typical figure within theirs,
 * give or take the rounding to a tenth. */
static void uptake_meets_the_measurements(void **state) {
    static const struct {
        const char *name;
        bool heated;
        double low, high; /* measured, g/g */
    } rows[] = {{"whey protein isolate", false, 0.82, 0.82},
                {"whey protein isolate", true, 6.12, 6.12},
                {"whey protein hydrolysate", true, 5.30, 5.30},
                {"calcium caseinate", false, 2.81, 2.81},
                {"calcium caseinate", true, 1.21, 1.21},
                {"sodium caseinate", false, 1.84, 1.84},
                {"sodium caseinate", true, 1.54, 1.54},
                {"micellar casein", true, 1.21, 1.54},
                {"oat flour", false, 1.98, 2.36},
                {"hemp protein isolate", false, 0.83, 1.05},
                {"soy protein isolate", false, 3.67, 5.26},
                {"soy flour", false, 1.61, 1.61},
                {"defatted soy flour", false, 2.01, 2.01}};
    const double rounding = 0.05;
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const ingredient *ours = on_shelf(shelf, rows[i].name);
        range held = rows[i].heated ? ours->heated_uptake : ours->cold_uptake;
        if (held.low > rows[i].low + rounding || held.high < rows[i].high - rounding ||
            held.typical < rows[i].low - rounding || held.typical > rows[i].high + rounding)
            fail_msg("%s, %s: %.2f (%.2f to %.2f), measured %.2f to %.2f", rows[i].name,
                     rows[i].heated ? "heated" : "cold", held.typical, held.low, held.high,
                     rows[i].low, rows[i].high);
    }
}

static void polyols_give_the_energy_the_law_states(void **state) {
    static const struct {
        const char *name;
        double kcal_per_g;
    } rows[] = {{"erythritol", 0},
                {"powdered erythritol", 0},
                {"xylitol", 2.4},
                {"sorbitol", 2.4},
                {"isomalt", 2.4}};
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const nutrients *ours = &on_shelf(shelf, rows[i].name)->per_100_g;
        same_number(rows[i].name, ours->of[NUTRIENT_ENERGY],
                    rows[i].kcal_per_g * ours->of[NUTRIENT_POLYOLS], 0.5);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(uptake_meets_the_measurements),
        cmocka_unit_test(polyols_give_the_energy_the_law_states),
    };
    return cmocka_run_group_tests_name("pantry against measurements", tests, shelf_up, shelf_down);
}
