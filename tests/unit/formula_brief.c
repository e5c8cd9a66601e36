#include "unit/reading.h"

#include "checks.h"
#include "read/formula_brief.h"
#include "unit/small_shelf.h"

static const char top[] = "title: Rounds\nkind: griddle cake\nset-by: [egg white, egg]\n"
                          "makes: 8 rounds\nportion: 2 rounds\nbatch: 330 g\nbake-loss: 12 %\n";

static const formula_brief *brief_of(arena *a, const char *rest, problems *found) {
    static pantry shelf;
    shelf = small_shelf(a);
    const brief_setting with = {&shelf, CUPS_US, ENERGY_BY_EU};
    const char *bytes = arena_format(a, "%s%s", top, rest);
    *found = problems_in(a);
    return formula_brief_read(a, "b.yaml", span_of(bytes), &with, found);
}

static void test_whole(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    const formula_brief *of =
        brief_of(a,
                 "oven: 180 C\npan: griddle\ningredients:\n"
                 "  - {ingredient: pea protein powder, least: 40 g, most: 3 scoops, step: 5 g}\n"
                 "  - 1/2 cup egg white, whisked\n"
                 "  - {ingredient: coconut flour, amount: 20 g}\n"
                 "  - almond butter\n"
                 "targets:\n  protein: at least 24 g\n  energy: 150 to 220 kcal\n"
                 "  sugars: at most 5\n  salt: 1 g\n",
                 &found);
    expect_words("problems", printed(a, &found), "");
    assert_non_null(of);
    assert_int_equal(of->settings, 1u << SETTING_EGG_WHITE | 1u << SETTING_EGG);
    expect_number("portions", of->portions, 4);
    expect_number("batch", of->batch_g, 330);
    expect_number("bake loss", of->bake_loss, 0.12);
    expect_words("oven", of->oven, "180 C");
    assert_int_equal(of->parts.count, 4);
    const formula_part *parts = of->parts.items;
    expect_number("least", parts[0].least_g, 40);
    expect_number("most", parts[0].most_g, 90);
    expect_number("step", parts[0].step_g, 5);
    expect_number("half a cup", parts[1].least_g, 120);
    expect_number("and no more", parts[1].most_g, 120);
    expect_words("note", parts[1].note, "whisked");
    expect_number("fixed", parts[2].least_g, 20);
    assert_true(parts[3].least_g > 0 && parts[3].most_g == INFINITY);
    assert_int_equal(of->targets.count, 4);
    expect_number("protein", of->targets.items[0].least, 24);
    assert_true(of->targets.items[0].most == INFINITY);
    assert_int_equal(of->targets.items[1].which, NUTRIENT_ENERGY_EU);
    expect_number("energy", of->targets.items[1].most, 220);
    assert_true(of->targets.items[2].least == -INFINITY);
    expect_number("about", of->targets.items[3].least, 0.95);
    expect_number("salt of sodium", of->targets.items[3].times, 0.0025);
    arena_free(a);
}

static void test_faults(void **state) {
    (void)state;
    static const struct {
        const char *name, *rest, *report;
    } rows[] = {
        {"no ingredients", "targets: {protein: 24 g}\n",
         "b.yaml:1:1: error: a brief needs \"ingredients\"\n"
         "  hint: for example: ingredients: [60 g pea protein powder, 1/2 cup egg whites]\n"},
        {"none in the list", "ingredients: []\n",
         "b.yaml:1:1: error: the brief names no ingredient\n"
         "  hint: for example: ingredients: [oat flour, egg white]\n"},
        {"an unknown one", "ingredients: [coconut flower]\n",
         "b.yaml:8:15: error: no ingredient is called \"coconut flower\"\n"
         "  hint: did you mean \"coconut flour\"?\n"},
        {"twice", "ingredients: [coconut flour, coconut flour]\n",
         "b.yaml:8:30: error: coconut flour is listed twice\n  hint: name each once\n"},
        {"bounds crossed",
         "ingredients:\n  - {ingredient: coconut flour, least: 40 g, most: 20 g}\n",
         "b.yaml:9:5: error: no amount of coconut flour is so much and so little\n"
         "  hint: \"least\" is the smaller of the two\n"},
        {"a target that is none", "ingredients: [coconut flour]\ntargets: {protein: much}\n",
         "b.yaml:9:20: error: can't read the target \"much\"\n"
         "  hint: for example: protein: at least 5 g\n"},
        {"another unit", "ingredients: [coconut flour]\ntargets: {energy: 500 kJ}\n",
         "b.yaml:9:19: error: can't read the target \"500 kJ\"\n"
         "  hint: for example: energy: at least 5 kcal\n"},
        {"an unknown figure", "ingredients: [coconut flour]\ntargets: {proteins: 24 g}\n",
         "b.yaml:9:11: error: the targets of a portion has no key \"proteins\"\n"
         "  hint: did you mean \"protein\"?\n"},
        {"an unknown key", "ingredients: [coconut flour]\ntarget: {protein: 24 g}\n",
         "b.yaml:9:1: error: a brief has no key \"target\"\n  hint: did you mean \"targets\"?\n"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found;
        assert_null(brief_of(a, rows[i].rest, &found));
        expect_words(rows[i].name, printed(a, &found), rows[i].report);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_whole),
        cmocka_unit_test(test_faults),
    };
    return cmocka_run_group_tests_name("formula_brief", tests, NULL, NULL);
}
