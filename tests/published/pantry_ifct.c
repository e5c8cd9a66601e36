/* The reference pantry against a second, independent table: Indian Food Composition Tables 2017
 * (National Institute of Nutrition, Hyderabad), by its food codes, energy turned from kJ by
 * 4.184. No figure of the pantry is from there, so agreement says that the right food was taken
 * and no column slipped.
 *
 * Tolerance, in per cent of the figure there: the same animal food 10; a plant food grown
 * elsewhere 20 (variety and soil alone move protein that much); more only where the row says why.
 * Energy there is by 17, 37 and 17 kJ/g with soluble fibre at 8, here by factors of each food.
 * Small amounts get a floor of 8 kcal, 0.5 g of protein and 1 g of fat. */
#include "reference_shelf.h"

typedef struct {
    const char *name, *code;
    double energy_kcal, protein_g, fat_g; /* per 100 g */
    /* per cent; 0: not compared */
    double energy_within, protein_within, fat_within;
    const char *why;
} food;

static const food foods[] = {
    {"almond", "H001", 609.2, 18.41, 58.49, 20, 20, 20, "same kind grown elsewhere"},
    {"cashew", "H005", 582.7, 18.78, 45.2, 20, 20, 20, "same kind grown elsewhere"},
    {"desiccated coconut", "H006", 624, 7.27, 63.26, 20, 20, 20, "same kind grown elsewhere"},
    {"fresh coconut", "H007", 408.9, 3.84, 41.38, 20, 20, 25,
     "drier nut: 36 against 47 g of water"},
    {"all-purpose flour", "A018", 351.8, 10.36, 0.76, 10, 10, 10, "refined flour of another mill"},
    {"whole wheat flour", "A019", 320.3, 10.57, 1.53, 10, 25, 10,
     "another wheat: atta of 10.6 % protein"},
    {"quinoa", "A009", 328.4, 13.11, 5.5, 15, 20, 20, "same kind grown elsewhere"},
    {"chickpea flour", "B001", 329.1, 21.55, 5.31, 20, 20, 30,
     "split pulse there; energy by other factors"},
    {"soy flour", "B025", 377.4, 37.8, 19.42, 20, 20, 20,
     "whole bean there; energy by other factors"},
    {"whole sesame seed", "H011", 519.6, 21.7, 43.05, 20, 25, 20, "same kind grown elsewhere"},
    {"flaxseed", "H014", 443.8, 18.55, 35.67, 25, 20, 20,
     "more of its energy counted as fibre there"},
    {"sunflower seed", "H020", 586.3, 23.53, 51.85, 20, 20, 20, "same kind grown elsewhere"},
    {"peanut", "H012", 520.1, 23.65, 39.63, 20, 20, 25,
     "leaner variety: 39.6 against 49.2 g of fat"},
    {"walnut", "H021", 671.4, 14.92, 64.27, 20, 20, 20, "same kind grown elsewhere"},
    {"pistachio", "H018", 539.4, 23.35, 42.49, 20, 20, 20, "same kind grown elsewhere"},
    {"egg", "M001", 134.8, 13.28, 9.15, 10, 10, 10, "same animal"},
    {"egg white", "M002", 44.7, 10.84, 0.06, 20, 10, 10,
     "energy by other factors, 52 against 45 kcal"},
    {"egg yolk", "M003", 296.8, 15.74, 26.34, 10, 10, 10, "same animal"},
    {"whole milk", "L002", 72.9, 3.26, 4.48, 25, 10, 40,
     "fatter milk: 4.5 g against 3.25 g standardised"},
    {"banana", "E012", 105.2, 1.23, 0.33, 20, 20, 20, "another variety, 3 g less water"},
    {"apple", "E001", 62.4, 0.29, 0.64, 25, 20, 20, "another variety, 2.5 g less water"},
    {"date", "E019", 286.1, 1.18, 0.41, 20, 0, 20,
     "another variety, half the protein: not compared"},
    {"raisin", "E057", 305.7, 2.57, 0.34, 20, 20, 20, "same kind grown elsewhere"},
    {"pumpkin", "D066", 23.2, 0.84, 0.16, 15, 20, 20, "same kind grown elsewhere"},
    {"carrot", "F002", 33.2, 0.95, 0.47, 20, 20, 20, "another variety"},
    {"sweet potato", "F013", 109, 1.33, 0.26, 30, 20, 20, "drier root: 69 against 77 g of water"},
    {"courgette", "D077", 20.1, 1.1, 0.51, 20, 20, 20, "another variety"},
};

typedef struct {
    nutrient which;
    double wanted, within, floor;
} figure;

static void near(const food *row, const pantry *shelf, figure f) {
    const ingredient *ours = on_shelf(shelf, row->name);
    double most = fmax(f.floor, fabs(f.wanted) * f.within / 100);
    if (f.within > 0)
        same_number(arena_format(shelf->home, "%s (%s; %s), %s", row->name, row->code, row->why,
                                 nutrient_key(f.which)),
                    ours->per_100_g.of[f.which], f.wanted, most);
}

static void the_two_tables_agree(void **state) {
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(foods); i++) {
        const food *row = &foods[i];
        near(row, shelf, (figure){NUTRIENT_ENERGY, row->energy_kcal, row->energy_within, 8});
        near(row, shelf, (figure){NUTRIENT_PROTEIN, row->protein_g, row->protein_within, 0.5});
        near(row, shelf, (figure){NUTRIENT_FAT, row->fat_g, row->fat_within, 1});
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_two_tables_agree),
    };
    return cmocka_run_group_tests_name("pantry against IFCT 2017", tests, shelf_up, shelf_down);
}
