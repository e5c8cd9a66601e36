/* The log of trial bakes. */
#include "reading.h"
#include "small_shelf.h"

#include "read/trials.h"

static trials read_from(arena *a, const char *yaml, const pantry *shelf, problems *found) {
    *found = problems_in(a);
    trials all = {0};
    trials_read(a, "t.yaml", span_of(yaml), shelf, &all, found);
    return all;
}

static const char whole[] = "- recipe: Towpath griddle rounds.md\n"
                            "  replace: 60 g pea protein powder\n"
                            "  with: 2 scoops whey isolate\n"
                            "  liquid: -15 g\n"
                            "  date: 2026-03-01\n"
                            "  verdict: avoid\n"
                            "  texture: [rubbery, dry]\n"
                            "  measured: {height: 9 mm, spread: 9.2 cm, weight: 210 g}\n"
                            "  pictures: {as-written: rounds.svg, swapped: whey/rounds.svg}\n"
                            "  remarks: Thin batter.\n"
                            "  by: Ines\n";

static void test_whole(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    trials all = read_from(a, whole, &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(all.count, 1);
    const trial *t = &all.items[0];
    expect_words("recipe", t->recipe, "towpath-griddle-rounds");
    expect_words("replaced", t->replaced.what->name, "pea protein powder");
    expect_words("with", t->with.what->name, "whey protein isolate");
    expect_number("amount", t->with.quantity.low, 2);
    assert_true(t->has_amounts);
    expect_number("liquid", t->liquid_g, -15);
    expect_words("date", t->date, "2026-03-01");
    assert_int_equal(t->outcome, VERDICT_AVOID);
    assert_int_equal(t->texture.count, 2);
    expect_words("texture", t->texture.items[1], "dry");
    expect_number("height", t->swapped.height_mm, 9);
    expect_number("spread", t->swapped.spread_mm, 92);
    expect_number("weight", t->swapped.weight_g, 210);
    expect_words("picture", t->picture_as_written, "rounds.svg");
    expect_words("other picture", t->picture_swapped, "whey/rounds.svg");
    expect_words("remarks", t->remarks, "Thin batter.");
    expect_words("by", t->by, "Ines");
    arena_free(a);
}

static void test_least(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    trials all = read_from(a,
                           "- {recipe: x, replace: pea protein powder, with: egg white, date: "
                           "2026-03-01, verdict: works}\n",
                           &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_false(all.items[0].has_amounts);
    expect_number("liquid", all.items[0].liquid_g, 0);
    assert_null(all.items[0].remarks);
    assert_null(all.items[0].picture_swapped);
    arena_free(a);
}

static void test_liquids(void **state) {
    (void)state;
    static const struct {
        const char *written, *of;
        double grams;
    } rows[] = {{"-15 g", "", -15},
                {"15", "", 15},
                {"+30 g egg white", "egg white", 30},
                {"-1/2 lb egg white", "egg white", -226.796185}, /* NIST HB 44: lb = 453.59237 g */
                {"\u22125 g egg whites", "egg white", -5}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        trials all = read_from(a,
                               arena_format(a,
                                            "- {recipe: x, replace: pea protein powder, with: "
                                            "almond butter, liquid: %s, date: 2026-03-01, "
                                            "verdict: adjust}\n",
                                            rows[i].written),
                               &shelf, &found);
        expect_words(rows[i].written, printed(a, &found), "");
        expect_number(rows[i].written, all.items[0].liquid_g, rows[i].grams);
        const ingredient *of = all.items[0].liquid;
        expect_words(rows[i].written, of ? of->name : "", rows[i].of);
        arena_free(a);
    }
}

/* "works" is as it is; an amount in the same measure is. */
static void test_works_is_as_it_is(void **state) {
    (void)state;
    static const struct {
        const char *old, *new, *liquid;
        bool doubted;
    } rows[] = {{"pea protein powder", "egg white", "0", false},
                {"60 g pea protein powder", "60 g egg white", "0", false},
                {"60 g pea protein powder", "64 g egg white", "0", false},
                {"60 g pea protein powder", "80 g egg white", "0", true},
                {"2 cups pea protein powder", "2 cups egg white", "0", false},
                {"60 g pea protein powder", "60 g egg white", "-15 g", true}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        (void)read_from(a,
                        arena_format(a,
                                     "- {recipe: x, replace: %s, with: %s, liquid: %s, date: "
                                     "2026-03-01, verdict: works}\n",
                                     rows[i].old, rows[i].new, rows[i].liquid),
                        &shelf, &found);
        if ((found.warnings == 1) != rows[i].doubted || found.errors)
            fail_msg("%s for %s: %s", rows[i].new, rows[i].old, printed(a, &found));
        arena_free(a);
    }
}

#define START "- recipe: x\n  replace: egg white\n  with: almond butter\n"
#define END   "  date: 2026-03-01\n  verdict: works\n"

static const struct {
    const char *name, *yaml, *report;
} faults[] = {
    {"no date", START "  verdict: works\n",
     "t.yaml:1:3: error: a trial needs \"date\"\n  hint: for example: date: 2026-05-02\n"},
    {"no verdict", START "  date: 2026-03-01\n", "t.yaml:1:3: error: a trial needs \"verdict\"\n"},
    {"no recipe", "- replace: egg white\n  with: almond butter\n" END,
     "t.yaml:1:3: error: a trial needs \"recipe\"\n"
     "  hint: for example: recipe: towpath-griddle-rounds\n"},
    {"a day that is none", START "  date: 2026-02-29\n  verdict: works\n",
     "t.yaml:4:9: error: \"date\" must be a day that the calendar has\n"
     "  hint: for example: date: 2026-05-02\n"},
    {"liquid in spoons", START END "  liquid: 1 tbsp\n",
     "t.yaml:6:11: error: \"liquid\" must be a number in g\n"
     "  hint: for example: liquid: -15 g\n"},
    {"a height by weight", START END "  measured: {height: 9 g}\n",
     "t.yaml:6:22: error: \"height\" must be a number in mm\n"
     "  hint: for example: height: 9 mm\n"},
    {"a height below nothing", START END "  measured: {height: -9}\n",
     "t.yaml:6:13: error: nothing measures less than 0\n"
     "  hint: leave out what was not measured\n"},
    {"a picture elsewhere", START END "  pictures: {swapped: ../x.jpg}\n",
     "t.yaml:6:23: error: \"../x.jpg\" can't be the name of a picture\n"
     "  hint: for example: rounds.jpg, a file in pictures/\n"},
    {"a strange key", START END "  remark: Good.\n",
     "t.yaml:6:3: error: a trial has no key \"remark\"\n  hint: did you mean \"remarks\"?\n"},
    {"a word", "- works\n",
     "t.yaml:1:3: error: a trial is made of keys and values\n"
     "  hint: write each part as \"key: value\"\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        trials all = read_from(a, faults[i].yaml, &shelf, &found);
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        if (all.count)
            fail_msg("%s: was kept", faults[i].name);
        arena_free(a);
    }
}

/* What the measure room says of a line it can't read is its own; that a trial is lost is ours. */
static void test_unknown_ingredient(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    trials all = read_from(a, "- recipe: x\n  replace: unobtainium\n  with: egg white\n" END,
                           &shelf, &found);
    assert_int_equal(all.count, 0);
    assert_int_equal(found.errors, 1);
    assert_int_equal(found.items[0].at.line, 2);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_whole),   cmocka_unit_test(test_least),
        cmocka_unit_test(test_liquids), cmocka_unit_test(test_works_is_as_it_is),
        cmocka_unit_test(test_faults),  cmocka_unit_test(test_unknown_ingredient),
    };
    return cmocka_run_group_tests_name("trials", tests, NULL, NULL);
}
