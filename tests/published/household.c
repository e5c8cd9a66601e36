/* Lines weighed with the reference pantry against USDA household weights (SR28, September 2015,
 * file WEIGHT): from the written line to grams. A measure is right when it is within half the
 * last digit that the source prints, times the amount. */
#include "reference_shelf.h"

#include "base/files.h"
#include "measure/weigh.h"

#include <stdlib.h>

static double weighed(const pantry *shelf, const char *line, cup_standard cups) {
    arena *a = arena_new();
    problems found = problems_in(a);
    recipe_line read;
    weight got = {0};
    bool good = line_read(a, (located){span_of(line), {0}}, shelf, &read, &found) &&
                weigh_line(&read, cups, &got, &found);
    if (!good || found.count)
        fail_msg("%s: %s", line, found.count ? found.items[0].message : "not weighed");
    arena_free(a);
    return got.grams;
}

static const struct {
    const char *line;
    double grams, within;
    const char *code;
} usda[] = {
    {"1 cup butter", 227, 0.5, "01001"},
    {"1 stick butter", 113, 0.5, "01001"},
    {"1 tbsp butter", 14.2, 0.05, "01001"},
    {"1 tbsp cream cheese", 14.5, 0.05, "01017"},
    {"1 cup whole milk", 244, 0.5, "01077"},
    {"2 tbsp milk", 30, 1, "01077"},
    {"1 quart milk", 976, 0.5, "01077"},
    {"1 fl oz milk", 30.5, 0.05, "01077"},
    {"1 cup skim milk", 245, 0.5, "01085"},
    {"1 cup buttermilk", 245, 0.5, "01088"},
    {"1 large egg", 50, 0.5, "01123"},
    {"2 Eggs, beaten", 100, 1, "01123"},
    {"1 medium egg", 44, 0.5, "01123"},
    {"3 small eggs", 114, 1.5, "01123"},
    {"1 extra-large egg", 56, 0.5, "01123"},
    {"2 large egg whites", 66, 1, "01124"},
    {"\u00bd cup egg whites", 121.5, 0.25, "01124"},
    {"1 large egg yolk", 17, 0.5, "01125"},
    {"1 tsp ground cinnamon", 2.6, 0.05, "02010"},
    {"1 tbsp cinnamon", 7.8, 0.05, "02010"},
    {"1 tsp ground ginger", 1.8, 0.05, "02021"},
    {"1 tsp salt", 6, 0.05, "02047"},
    {"1 tbsp salt", 18, 0.5, "02047"},
    {"a dash of salt", 0.4, 0.05, "02047"},
    {"1 tsp vanilla extract", 4.2, 0.05, "02050"},
    {"1 tbsp coconut oil", 13.6, 0.05, "04047"},
    {"1 tsp coconut oil", 4.5, 0.05, "04047"},
    {"1 cup olive oil", 216, 0.5, "04053"},
    {"1 tbsp olive oil", 13.5, 0.05, "04053"},
    {"1/3 cup rolled oats", 27, 0.5, "08120"},
    {"1 cup rolled oats", 81, 0.5, "08120"},
    {"1 cup mashed banana", 225, 0.5, "09040"},
    {"1 medium banana, ripe", 118, 0.5, "09040"},
    {"1 large banana", 136, 0.5, "09040"},
    {"1 cup blueberries", 148, 0.5, "09050"},
    {"1 cup raspberries", 123, 0.5, "09302"},
    {"1 cup unsweetened apple pur\u00e9e", 244, 0.5, "09019"},
    {"1 cup pumpkin pur\u00e9e", 245, 0.5, "11424"},
    {"1 medium carrot", 61, 0.5, "11124"},
    {"1 cup almonds", 143, 0.5, "12061"},
    {"1 cup walnuts", 100, 0.5, "12155"},
    {"1 tbsp almond butter", 16, 0.5, "12195"},
    {"1 cup almond butter", 250, 0.5, "12195"},
    {"1 tbsp tahini", 15, 0.5, "12166"},
    {"1 cup peanut butter", 258, 0.5, "16098"},
    {"1 tsp baking powder", 4.6, 0.05, "18369"},
    {"1/2 tsp baking soda", 2.3, 0.05, "18372"},
    {"1 cup cocoa powder", 86, 0.5, "19165"},
    {"1 cup honey", 339, 0.5, "19296"},
    {"1 tbsp honey", 21, 0.5, "19296"},
    {"1 cup packed brown sugar", 220, 0.5, "19334"},
    {"1 cup sugar", 200, 0.5, "19335"},
    {"1 tsp sugar", 4.2, 0.05, "19335"},
    {"1 cup cornstarch", 128, 0.5, "20027"},
    {"1 cup oat bran", 94, 0.5, "20033"},
    {"1 cup buckwheat flour", 120, 0.5, "20011"},
    {"1 cup rice flour", 158, 0.5, "20061"},
    {"1 cup whole wheat flour", 120, 0.5, "20080"},
    {"1 cup all-purpose flour", 125, 0.5, "20081"},
    {"1 cup oat flour", 104, 0.5, "20132"},
    {"3/4 cup oat flour", 78, 0.375, "20132"},
    {"1 1/2 cups oat flour", 156, 0.75, "20132"},
    {"1 cup chickpea flour", 92, 0.5, "16157"},
    {"1 oz cheddar", 28.35, 0.005, "01009"},
};

static void lines_weigh_what_is_published(void **state) {
    for (size_t i = 0; i < COUNT(usda); i++)
        same_number(usda[i].line, weighed(*state, usda[i].line, CUPS_US), usda[i].grams,
                    usda[i].within);
}

/* The table itself, where the environment names a copy of it: REFERENCE=folder. */
static void the_rows_stand_in_the_table(void **state) {
    (void)state;
    const char *folder = getenv("REFERENCE");
    if (!folder || !folder[0])
        skip();
    arena *a = arena_new();
    span table, row;
    int why;
    assert_true(file_read(a, path_join(a, folder, "usda_household_weights.csv"), &table, &why));
    for (size_t i = 0; i < COUNT(usda); i++) {
        bool there = false;
        span rest = table;
        while (span_next_line(&rest, &row))
            there = there || span_begins(row, usda[i].code);
        if (!there)
            fail_msg("%s: no row %s", usda[i].line, usda[i].code);
    }
    arena_free(a);
}

/* A cup weight is of the US customary cup; a metric cup holds 250 / 236.5882365 as much. */
static void other_cups_weigh_in_proportion(void **state) {
    static const struct {
        const char *line;
        cup_standard cups;
        double grams, within;
    } rows[] = {{"3/4 cup oat flour", CUPS_US, 78.0, 0.05},
                {"1 cup oat flour", CUPS_METRIC, 109.9, 0.05},
                {"1 cup oat flour", CUPS_US_LABEL, 104 * 1.0144, 0.01},
                {"250 ml oat flour", CUPS_US, 109.9, 0.05},
                {"1 tbsp almond butter", CUPS_AUSTRALIAN, 16 * 20 / 14.78676478125, 0.001},
                {"1 large egg", CUPS_METRIC, 50, 0.5},
                {"60 g oat flour", CUPS_METRIC, 60, 0}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_number(rows[i].line, weighed(*state, rows[i].line, rows[i].cups), rows[i].grams,
                    rows[i].within);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lines_weigh_what_is_published),
        cmocka_unit_test(the_rows_stand_in_the_table),
        cmocka_unit_test(other_cups_weigh_in_proportion),
    };
    return cmocka_run_group_tests_name("published household weights", tests, shelf_up, shelf_down);
}
