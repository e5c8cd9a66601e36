#include "checks.h"

#include "measure/units.h"

static void reads_units_as_written(void **state) {
    (void)state;
    static const struct {
        const char *written, *name;
        size_t used;
    } rows[] = {
        {"g", "g", 1},
        {"g flour", "g", 1},
        {"G", "g", 1},
        {"grams", "g", 5},
        {"gramme", "g", 6},
        {"gr.", "g", 3},
        {"kg", "kg", 2},
        {"Kilograms", "kg", 9},
        {"mg", "mg", 2},
        {"oz", "oz", 2},
        {"oz.", "oz", 3},
        {"ounces", "oz", 6},
        {"lb", "lb", 2},
        {"lbs", "lb", 3},
        {"pounds", "lb", 6},
        {"ml", "ml", 2},
        {"mL", "ml", 2},
        {"cl", "cl", 2},
        {"dl", "dl", 2},
        {"l", "l", 1},
        {"L", "l", 1},
        {"litres", "l", 6},
        {"liter", "l", 5},
        {"tsp", "tsp", 3},
        {"tsp.", "tsp", 4},
        {"t", "tsp", 1},
        {"t.", "tsp", 2},
        {"Teaspoons", "tsp", 9},
        {"tbsp", "tbsp", 4},
        {"TBSP.", "tbsp", 5},
        {"Tbs", "tbsp", 3},
        {"T", "tbsp", 1},
        {"tablespoons", "tbsp", 11},
        {"cup", "cup", 3},
        {"cups", "cup", 4},
        {"Cup", "cup", 3},
        {"c.", "cup", 2},
        {"metric cups", "metric cup", 11},
        {"fl oz", "fl oz", 5},
        {"fl. oz.", "fl oz", 7},
        {"fl.oz", "fl oz", 5},
        {"floz", "fl oz", 4},
        {"fluid ounces", "fl oz", 12},
        {"UK fl oz", "imperial fl oz", 8},
        {"pint", "pint", 4},
        {"imperial pints", "imperial pint", 14},
        {"quarts", "quart", 6},
        {"gallon", "gallon", 6},
        {"dessertspoons", "dessertspoon", 13},
        {"EL", "tbsp", 2},
        {"TL.", "tsp", 3},
        {"Esslöffel", "tbsp", 10},
        {"Tassen", "cup", 6},
        {"Prise", "pinch", 5},
        {"Päckchen", "packet", 9},
        {"Stück", "piece", 6},
        {"pinch", "pinch", 5},
        {"pinches", "pinch", 7},
        {"dashes", "dash", 6},
        {"scoops", "scoop", 6},
        {"sticks", "stick", 6},
        {"packets", "packet", 7},
        {"sachet", "sachet", 6},
        {"slices", "slice", 6},
        {"cloves", "clove", 6},
        {"handfuls", "handful", 8},
        {"leaves", "leaf", 6},
        {"large", "large", 5},
        {"medium", "medium", 6},
        {"medium-sized", "medium", 12},
        {"extra large", "extra large", 11},
        {"extra-large", "extra large", 11},
        {"XL", "extra large", 2},
        {"jumbo", "jumbo", 5},
        {"whole", "each", 5},
        {"", NULL, 0},
        {"garlic", NULL, 0},
        {"gs", NULL, 0},
        {"g\u00e9", NULL, 0},
        {"cupboard", NULL, 0},
        {"t4", NULL, 0},
        {"largely", NULL, 0},
        {" g", NULL, 0},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        size_t used = 0;
        const unit *in = unit_read(span_of(rows[i].written), &used);
        same_text(rows[i].written, in ? in->name : "(none)",
                  rows[i].name ? rows[i].name : "(none)");
        same_count(rows[i].written, used, rows[i].used);
    }
}

static void a_cup_is_what_the_site_says(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double us, us_label, metric, australian;
    } rows[] = {{"cup", 236.5882365, 240, 250, 250},
                {"tbsp", 14.78676478125, 15, 15, 20},
                {"tsp", 4.92892159375, 5, 5, 5},
                {"dessertspoon", 9.8578431875, 10, 10, 10},
                {"fl oz", 29.5735295625, 30, 29.5735295625, 29.5735295625},
                {"ml", 1, 1, 1, 1},
                {"metric cup", 250, 250, 250, 250},
                {"pinch", 4.92892159375 / 16, 5.0 / 16, 5.0 / 16, 5.0 / 16},
                {"g", 0, 0, 0, 0},
                {"large", 0, 0, 0, 0}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        const unit *of = unit_named(rows[i].name);
        assert_non_null(of);
        same_number(rows[i].name, unit_ml(of, CUPS_US), rows[i].us, 0);
        same_number(rows[i].name, unit_ml(of, CUPS_US_LABEL), rows[i].us_label, 0);
        same_number(rows[i].name, unit_ml(of, CUPS_METRIC), rows[i].metric, 0);
        same_number(rows[i].name, unit_ml(of, CUPS_AUSTRALIAN), rows[i].australian, 0);
    }
    same_number("cup", cup_ml(CUPS_METRIC), 250, 0);
    same_number("tablespoon", tablespoon_ml(CUPS_AUSTRALIAN), 20, 0);
    same_number("teaspoon", teaspoon_ml(CUPS_US_LABEL), 5, 0);
}

static void knows_units_by_name(void **state) {
    (void)state;
    assert_null(unit_named("tablespoon"));
    assert_null(unit_named(""));
    assert_int_equal(unit_named("scoop")->sort, UNIT_COUNT);
    assert_true(unit_is_size(unit_named("extra large")));
    assert_false(unit_is_size(unit_named("scoop")));
    assert_string_equal(unit_nearest_weight(span_of("gg")), "g");
    assert_string_equal(unit_nearest_weight(span_of("oc")), "oz");
    assert_null(unit_nearest_weight(span_of("bananas")));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_units_as_written),
        cmocka_unit_test(a_cup_is_what_the_site_says),
        cmocka_unit_test(knows_units_by_name),
    };
    return cmocka_run_group_tests_name("units", tests, NULL, NULL);
}
