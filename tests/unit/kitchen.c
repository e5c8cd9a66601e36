#include "shelf.h"

#include "measure/kitchen.h"
#include "measure/weigh.h"

typedef struct {
    arena *a;
    problems found;
    pantry shelf;
} kitchen;

static kitchen opened(void) {
    kitchen k = {.a = arena_new()};
    k.found = problems_in(k.a);
    k.shelf = shelf_filled(k.a, &k.found);
    return k;
}

static const ingredient *taken(const kitchen *k, const char *name) {
    const ingredient *what = pantry_find(&k->shelf, span_of(name), k->a);
    if (!what)
        fail_msg("%s is not on the shelf", name);
    return what;
}

static void finds_the_nearest_sensible_measure(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double grams;
        const char *text; /* null: weigh it */
    } rows[] = {
        {"oat flour", 104, "1 cup"},
        {"oat flour", 52, "1/2 cup"},
        {"oat flour", 104 * 0.4583, "1/3 cup + 2 tbsp"}, /* never 0.4583 cup */
        {"oat flour", 156, "1 1/2 cups"},
        {"oat flour", 104 * 2.333, "2 1/3 cups"},
        {"oat flour", 6.5, "1 tbsp"},
        {"oat flour", 13 + 6.5 / 3, "2 tbsp + 1 tsp"},
        {"oat flour", 26, "1/4 cup"},
        {"oat flour", 105, "1 cup"}, /* 1 % off: one scoop */
        {"oat flour", 32.5, "1/4 cup + 1 tbsp"},
        {"oat flour", 1040, "10 cups"},
        {"milk", 244 * 2.0 / 3, "2/3 cup"},
        {"almond butter", 32, "2 tbsp"},
        {"baking powder", 1.15, "1/4 tsp"},
        {"baking powder", 4.6 * 0.75, "3/4 tsp"},
        {"baking powder", 6.9, "1 1/2 tsp"},
        {"salt", 0.75, "1/8 tsp"},
        {"salt", 0.3, "a pinch"},
        {"salt", 0.01, "a pinch"},
        {"egg", 100, "2 large"},
        {"egg", 75, "1 1/2 large"},
        {"egg", 25, "1/2 large"},
        {"egg", 114, "2 1/2 large"},
        {"egg", 37, "2 tbsp + 1 1/4 tsp"},
        {"egg white", 121.5, "1/2 cup"},
        {"egg white", 243, "1 cup"},
        {"egg white", 66, "2 large"},
        {"lemon", 84, "1"},
        {"lemon", 126, "1 1/2"},
        {"lemon", 5, NULL}, /* half a one is nine times too much */
        {"pea protein powder", 60, "2 scoops"},
        {"pea protein powder", 30, "1 scoop"},
        {"pea protein powder", 16, "1/2 scoop"},
        {"chia seed", 60, NULL},
        {"oat flour", 0, NULL},
        {"oat flour", -5, NULL},
        {"oat flour", 1e9, NULL},
        {"pea protein powder", 1e9, NULL},
    };
    kitchen k = opened();
    for (size_t i = 0; i < COUNT(rows); i++) {
        kitchen_measure m = {.text = ""};
        bool found = kitchen_measure_of(k.a, taken(&k, rows[i].name), rows[i].grams, CUPS_US, &m);
        same_text(rows[i].name, found ? m.text : "(weigh it)",
                  rows[i].text ? rows[i].text : "(weigh it)");
        if (found)
            same_number(m.text, m.grams - rows[i].grams, m.error_g, 1e-9);
    }
    kitchen_measure m;
    assert_false(kitchen_measure_of(k.a, taken(&k, "oat flour"), NAN, CUPS_US, &m));
    arena_free(k.a);
}

/* Grams of the measure's own text, read and weighed like any line. */
static double weighed_again(kitchen *k, const char *measure, const char *name, cup_standard cups) {
    recipe_line line;
    weight got;
    span written = span_of(arena_format(k->a, "%s %s", measure, name));
    if (!line_read(k->a, (located){written, {0}}, &k->shelf, &line, &k->found) ||
        !weigh_line(&line, cups, &got, &k->found))
        fail_msg("%.*s is not weighed", SPAN(written));
    return got.grams;
}

/* Grams to a measure and back by its text: off by just the error that was stated. */
static void a_measure_weighs_what_it_says(void **state) {
    (void)state;
    static const char *const foods[] = {"oat flour", "almond butter",      "baking powder", "milk",
                                        "egg",       "pea protein powder", "lemon",         "salt"};
    kitchen k = opened();
    for (size_t n = 0; n < COUNT(foods); n++)
        for (int standard = CUPS_US; standard <= CUPS_AUSTRALIAN; standard++)
            for (double grams = 0.2; grams < 1500; grams = grams * 1.07 + 0.01) {
                kitchen_measure all[4];
                size_t count = kitchen_measures_of(k.a, taken(&k, foods[n]), grams,
                                                   (cup_standard)standard, all, COUNT(all));
                for (size_t i = 0; i < count; i++) {
                    double again = weighed_again(&k, all[i].text, foods[n], (cup_standard)standard);
                    same_number(all[i].text, again, all[i].grams, 1e-9);
                    same_number(all[i].text, again - all[i].error_g, grams, 1e-6);
                }
            }
    assert_int_equal(k.found.count, 0);
    arena_free(k.a);
}

/* Without a decimal, in three terms at the most, and within 5 % from 2 tablespoons up, within half
 * a step of the spoons below. */
static void a_measure_is_near_and_plain(void **state) {
    (void)state;
    kitchen k = opened();
    const ingredient *flour = taken(&k, "oat flour");
    const double tsp_g = 104.0 / 48, half_step_g = 1.02 * tsp_g / 8;
    for (int standard = CUPS_US; standard <= CUPS_AUSTRALIAN; standard++)
        for (double grams = tsp_g / 8; grams < 2000; grams *= 1.013) {
            kitchen_measure m;
            assert_true(kitchen_measure_of(k.a, flour, grams, (cup_standard)standard, &m));
            span said = span_of(m.text);
            size_t first = span_find(said, " + ");
            span rest = span_from(said, first + 3);
            int terms = 1 + (first < said.length) + (span_find(rest, " + ") < rest.length);
            if (span_find(said, ".") < said.length || terms > 3)
                fail_msg("%s is not plain", m.text);
            if (fabs(m.error_g) > fmax(grams < 6 * tsp_g ? half_step_g : 0, 0.05 * grams) + 1e-9)
                fail_msg("%s for %.3f g is off by %.3f g", m.text, grams, m.error_g);
        }
    arena_free(k.a);
}

static void gives_ways_in_one_vessel(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double grams;
        size_t most, count;
        const char *text[4];
    } rows[] = {{"oat flour", 104.0 / 4, 4, 3, {"1/4 cup", "4 tbsp", "12 tsp"}},
                {"oat flour", 13, 4, 2, {"2 tbsp", "6 tsp"}},
                {"oat flour", 47.66, 4, 3, {"1/3 cup + 2 tbsp", "7 1/2 tbsp", "1/2 cup"}},
                {"oat flour", 104, 1, 1, {"1 cup"}},
                {"oat flour", 104, 0, 0, {NULL}},
                {"butter", 113, 4, 3, {"1/2 cup", "1 stick", "8 tbsp"}},
                {"chia seed", 60, 4, 0, {NULL}}};
    kitchen k = opened();
    for (size_t i = 0; i < COUNT(rows); i++) {
        kitchen_measure all[4];
        size_t count = kitchen_measures_of(k.a, taken(&k, rows[i].name), rows[i].grams, CUPS_US,
                                           all, rows[i].most);
        for (size_t n = 0; n < count && n < rows[i].count; n++)
            same_text(rows[i].name, all[n].text, rows[i].text[n]);
        same_count(rows[i].name, count, rows[i].count);
    }
    arena_free(k.a);
}

static void rough_amounts_take_one_vessel(void **state) {
    (void)state;
    static const struct {
        const char *name;
        double grams;
        const char *text; /* null: there is none */
    } rows[] = {{"oat flour", 54, "1/2 cup"},
                {"oat flour", 150, "1 1/2 cups"},
                {"oat flour", 24, "1/4 cup"},
                {"oat flour", 16, "2 1/2 tbsp"},
                {"oat flour", 6.2, "1 tbsp"},
                {"oat flour", 4, "2 tsp"},
                {"baking powder", 2.1, "1/2 tsp"},
                {"egg", 105, "1/2 cup"},
                {"oat flour", 0, NULL}};
    kitchen k = opened();
    for (size_t i = 0; i < COUNT(rows); i++) {
        kitchen_measure rough = {0};
        bool found =
            kitchen_rough_measure_of(k.a, taken(&k, rows[i].name), rows[i].grams, CUPS_US, &rough);
        same_count(rows[i].name, found, rows[i].text != NULL);
        if (found)
            same_text(rows[i].name, rough.text, rows[i].text);
    }
    arena_free(k.a);
}

static void weights_as_scales_show_them(void **state) {
    (void)state;
    static const struct {
        double grams;
        const char *text;
    } rows[] = {{46, "46 g"},    {46.4, "46 g"},   {4.5, "4.5 g"},    {4.04, "4 g"},
                {9.96, "10 g"},  {0.25, "0.25 g"}, {0.997, "1 g"},    {1000, "1 kg"},
                {999.6, "1 kg"}, {999.4, "999 g"}, {1250, "1.25 kg"}, {12345, "12.35 kg"},
                {0, "0 g"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i].text, kitchen_weight(a, rows[i].grams), rows[i].text);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(finds_the_nearest_sensible_measure),
        cmocka_unit_test(a_measure_weighs_what_it_says),
        cmocka_unit_test(a_measure_is_near_and_plain),
        cmocka_unit_test(gives_ways_in_one_vessel),
        cmocka_unit_test(rough_amounts_take_one_vessel),
        cmocka_unit_test(weights_as_scales_show_them),
    };
    return cmocka_run_group_tests_name("kitchen", tests, NULL, NULL);
}
