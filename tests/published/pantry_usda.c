/* The reference pantry against the table that most of its figures are from:
 * US Department of Agriculture, National Nutrient Database for Standard Reference, release 28
 * (September 2015), by its food numbers. Public domain. Rows were typed from the table, not from
 * the pantry.
 *
 * Tolerance: half a unit of the last place the table prints, as both are the same figure: 0.5
 * kcal, 0.005 g of a nutrient, 0.5 g of a cup, 0.05 g of a piece or spoon. */
#include "reference_shelf.h"

typedef struct {
    const char *name, *number;
    double energy_kcal, protein_g, fat_g, carbohydrate_g; /* per 100 g, carbohydrate with fibre */
    double cup_g;                                         /* 0: the table has no cup of it */
} food;

static const food foods[] = {
    {"oat flour", "20132", 404, 14.66, 9.12, 65.7, 104},
    {"all-purpose flour", "20481", 364, 10.33, 0.98, 76.31, 125},
    {"bread flour", "20083", 361, 11.98, 1.66, 72.53, 137},
    {"whole wheat flour", "20080", 340, 13.21, 2.5, 71.97, 120},
    {"cake flour", "20084", 362, 8.2, 0.86, 78.03, 137},
    {"self-raising flour", "20082", 354, 9.89, 0.97, 74.22, 125},
    {"dark rye flour", "20063", 325, 15.91, 2.22, 68.63, 128},
    {"rye flour", "20064", 349, 10.88, 1.52, 75.43, 102},
    {"barley flour", "20130", 345, 10.5, 1.6, 74.52, 148},
    {"rice flour", "20061", 366, 5.95, 1.42, 80.13, 158},
    {"brown rice flour", "20090", 363, 7.23, 2.78, 76.48, 158},
    {"buckwheat flour", "20011", 335, 12.62, 3.1, 70.59, 120},
    {"chickpea flour", "16157", 387, 22.39, 6.69, 57.82, 92},
    {"millet flour", "20647", 382, 10.75, 4.25, 75.12, 119},
    {"sorghum flour", "20648", 359, 8.43, 3.34, 76.64, 121},
    {"corn flour", "20016", 361, 6.93, 3.86, 76.85, 117},
    {"cornmeal", "20020", 362, 8.12, 3.59, 76.89, 122},
    {"potato flour", "11413", 357, 6.9, 0.34, 83.1, 160},
    {"soy flour", "16115", 434, 37.81, 20.65, 31.92, 84},
    {"defatted soy flour", "16117", 327, 51.46, 1.22, 33.92, 105},
    {"peanut flour", "16099", 327, 52.2, 0.55, 34.7, 60},
    {"defatted sunflower flour", "12041", 326, 48.06, 1.61, 35.83, 64},
    {"carob powder", "16055", 222, 4.62, 0.65, 88.88, 103},
    {"vital wheat gluten", "48052", 370, 75.16, 1.85, 13.79, 0},
    {"natural almond meal", "12061", 579, 21.15, 49.93, 21.55, 95},
    {"hazelnut meal", "12120", 628, 14.95, 60.75, 16.7, 75},
    {"walnut meal", "12155", 654, 15.23, 65.21, 13.71, 80},
    {"flaxseed meal", "12220", 534, 18.29, 42.16, 28.88, 0},
    {"wheat bran", "20077", 216, 15.55, 4.25, 64.51, 58},
    {"oat bran", "20033", 246, 17.3, 7.03, 66.22, 94},
    {"wheat germ", "20078", 360, 23.15, 9.72, 51.8, 115},
    {"soy protein isolate", "16122", 335, 88.32, 3.39, 0, 0},
    {"egg white powder", "01173", 382, 81.1, 0, 7.8, 0},
    {"almond butter", "12195", 614, 20.96, 55.5, 18.82, 250},
    {"peanut butter", "16398", 598, 22.21, 51.36, 22.31, 258},
    {"cashew butter", "12088", 587, 17.56, 49.41, 27.57, 0},
    {"tahini", "12166", 595, 17, 53.76, 21.19, 0},
    {"coconut butter", "12177", 684, 5.3, 69.08, 21.52, 0},
    {"desiccated coconut", "12108", 660, 6.88, 64.53, 23.65, 0},
    {"pumpkin seed", "12014", 559, 30.23, 49.05, 10.71, 129},
    {"sunflower seed", "12036", 584, 20.78, 51.46, 20, 140},
    {"chia seed", "12006", 486, 16.54, 30.74, 42.12, 0},
    {"rolled oats", "08120", 379, 13.15, 6.52, 67.7, 81.08108108},
    {"quinoa", "20035", 368, 14.12, 6.07, 64.16, 170},
    {"cooked black bean", "16018", 91, 6.03, 0.29, 16.55, 240},
    {"firm tofu", "16126", 78, 9.04, 4.17, 2.85, 252},
    {"egg", "01123", 143, 12.56, 9.51, 0.72, 243},
    {"egg white", "01124", 52, 10.9, 0.17, 0.73, 243},
    {"egg yolk", "01125", 322, 15.86, 26.54, 3.59, 243},
    {"whole milk", "01077", 61, 3.15, 3.25, 4.8, 244},
    {"skim milk", "01085", 34, 3.37, 0.08, 4.96, 245},
    {"buttermilk", "01088", 40, 3.31, 0.88, 4.79, 245},
    {"skim milk powder", "01091", 362, 36.16, 0.77, 51.98, 0},
    {"yogurt", "01116", 61, 3.47, 3.25, 4.66, 245},
    {"nonfat greek yogurt", "01256", 59, 10.19, 0.39, 3.6, 0},
    {"low-fat cottage cheese", "01015", 81, 10.45, 2.27, 4.76, 226},
    {"cream cheese", "01017", 350, 6.15, 34.44, 5.52, 232},
    {"heavy cream", "01053", 340, 2.84, 36.08, 2.74, 238},
    {"apple purée", "09019", 42, 0.17, 0.1, 11.27, 244},
    {"mashed banana", "09040", 89, 1.09, 0.33, 22.84, 225},
    {"pumpkin purée", "11424", 34, 1.1, 0.28, 8.09, 245},
    {"courgette", "11477", 17, 1.21, 0.32, 3.11, 124},
    {"carrot", "11124", 41, 0.93, 0.24, 9.58, 110},
    {"blueberry", "09050", 57, 0.74, 0.33, 14.49, 148},
    {"raisin", "09298", 299, 3.07, 0.46, 79.18, 145},
    {"date", "09087", 282, 2.45, 0.39, 75.03, 147},
    {"sugar", "19335", 387, 0, 0, 99.98, 200},
    {"brown sugar", "19334", 380, 0.12, 0, 98.09, 220},
    {"honey", "19296", 304, 0.3, 0, 82.4, 339},
    {"maple syrup", "19353", 260, 0.04, 0.06, 67.04, 315},
    {"molasses", "19304", 290, 0, 0.1, 74.73, 337},
    {"butter", "01145", 717, 0.85, 81.11, 0.06, 227},
    {"coconut oil", "04047", 892, 0, 99.06, 0, 218},
    {"olive oil", "04053", 884, 0, 100, 0, 216},
    {"cornstarch", "20027", 381, 0.26, 0.05, 91.27, 128},
    {"arrowroot", "20003", 357, 0.3, 0.1, 88.15, 128},
    {"cocoa powder", "19165", 228, 19.6, 13.7, 57.9, 86},
    {"extra-dark chocolate", "19904", 598, 7.79, 42.63, 45.9, 0},
    {"baking powder", "18369", 53, 0, 0, 27.7, 0},
    {"baking soda", "18372", 0, 0, 0, 0, 0},
    {"active dry yeast", "18375", 325, 40.44, 7.61, 41.22, 0},
    {"salt", "02047", 0, 0, 0, 0, 292},
    {"cinnamon", "02010", 247, 3.99, 1.24, 80.59, 0},
    {"soy milk", "16222", 33, 2.86, 1.61, 1.74, 243},
    {"lemon juice", "09152", 22, 0.35, 0.24, 6.9, 244},
    {"gelatine", "19177", 335, 85.6, 0.1, 0, 0},
};

typedef struct {
    const char *name, *unit;
    double grams;
} piece;

/* Household weights of the same release. */
static const piece pieces[] = {{"egg", "small", 38},
                               {"egg", "medium", 44},
                               {"egg", "large", 50},
                               {"egg white", "large", 33},
                               {"egg yolk", "large", 17},
                               {"banana", "medium", 118},
                               {"banana", "large", 136},
                               {"apple", "medium", 182},
                               {"courgette", "medium", 196},
                               {"carrot", "medium", 61},
                               {"date", "each", 7.1},
                               {"medjool date", "each", 24},
                               {"butter", "stick", 113},
                               {"butter", "tbsp", 14.2},
                               {"active dry yeast", "packet", 7.2},
                               {"baking powder", "tsp", 4.6},
                               {"baking soda", "tsp", 4.6},
                               {"cream of tartar", "tsp", 3.0},
                               {"salt", "tsp", 6.0},
                               {"cinnamon", "tsp", 2.6},
                               {"vanilla extract", "tsp", 4.2},
                               {"flaxseed meal", "tbsp", 7.0},
                               {"hemp heart", "tbsp", 10},
                               {"tahini", "tbsp", 15},
                               {"honey", "tbsp", 21},
                               {"agave syrup", "tsp", 6.9},
                               {"lemon juice", "lemon", 48},
                               {"gelatine", "sachet", 7}};

static double amount(const ingredient *of, nutrient which) {
    if (!nutrient_known(&of->per_100_g, which))
        fail_msg("%s: %s is not known", of->name, nutrient_key(which));
    return of->per_100_g.of[which];
}

static double grams(const ingredient *of, const char *unit) {
    range room;
    const range *found = ingredient_measure(of, span_of(unit), &room);
    if (!found)
        fail_msg("%s: no %s", of->name, unit);
    return found->typical;
}

static void composition_is_the_table_s(void **state) {
    pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(foods); i++) {
        const food *row = &foods[i];
        const ingredient *ours = on_shelf(shelf, row->name);
        same_number(row->name, amount(ours, NUTRIENT_ENERGY), row->energy_kcal, 0.5);
        same_number(row->name, amount(ours, NUTRIENT_PROTEIN), row->protein_g, 0.005);
        same_number(row->name, amount(ours, NUTRIENT_FAT), row->fat_g, 0.005);
        same_number(row->name, amount(ours, NUTRIENT_CARBOHYDRATE), row->carbohydrate_g, 0.005);
    }
}

static void the_source_names_the_food(void **state) {
    pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(foods); i++) {
        const source_note *source = &on_shelf(shelf, foods[i].name)->composition_source;
        const char *wanted = arena_format(shelf->home, "USDA SR28 %s", foods[i].number);
        if (!span_begins(span_of(source->text), wanted))
            fail_msg("%s: source \"%s\", wanted \"%s\"", foods[i].name, source->text, wanted);
        same_count(foods[i].name, source->sure, CERTAINTY_PUBLISHED);
    }
}

static void cups_are_the_table_s(void **state) {
    pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(foods); i++)
        if (foods[i].cup_g > 0)
            same_number(foods[i].name, grams(on_shelf(shelf, foods[i].name), "cup"), foods[i].cup_g,
                        0.5);
}

static void pieces_and_spoons_are_the_table_s(void **state) {
    pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(pieces); i++)
        same_number(arena_format(shelf->home, "%s, %s", pieces[i].name, pieces[i].unit),
                    grams(on_shelf(shelf, pieces[i].name), pieces[i].unit), pieces[i].grams, 0.05);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(composition_is_the_table_s),
        cmocka_unit_test(the_source_names_the_food),
        cmocka_unit_test(cups_are_the_table_s),
        cmocka_unit_test(pieces_and_spoons_are_the_table_s),
    };
    return cmocka_run_group_tests_name("pantry against USDA SR28", tests, shelf_up, shelf_down);
}
