#include "checks.h"

#include "pantry/pantry.h"

typedef struct {
    const char *name, *also, *plural;
} row;

static const row shelf_rows[] = {{"oat flour", "oatmeal flour", NULL},
                                 {"rolled oats", "porridge oats", NULL},
                                 {"egg", NULL, NULL},
                                 {"egg white", "liquid egg white", NULL},
                                 {"egg white protein powder", NULL, NULL},
                                 {"vanilla extract", "vanilla", NULL},
                                 {"whey protein isolate", "isolate", NULL},
                                 {"butter", NULL, NULL},
                                 {"peanut butter", NULL, NULL},
                                 {"blueberry", NULL, NULL},
                                 {"tomato", NULL, NULL},
                                 {"half and half", NULL, "half and half"},
                                 {"crème fraîche", NULL, NULL},
                                 {"banana", "mashed banana", NULL}};

static void add(pantry *shelf, const row *from, bool hers, problems *found) {
    const char **also = ARENA_ARRAY(shelf->home, const char *, 1);
    also[0] = from->also;
    ingredient entry = {.name = from->name,
                        .plural = from->plural,
                        .also = also,
                        .also_count = from->also != NULL,
                        .hers = hers};
    pantry_add(shelf, &entry, found);
}

static pantry filled(arena *a, problems *found) {
    pantry shelf = pantry_in(a);
    for (size_t i = 0; i < COUNT(shelf_rows); i++)
        add(&shelf, &shelf_rows[i], false, found);
    return shelf;
}

static const char *name_of(const ingredient *what) {
    return what ? what->name : "(none)";
}

static void finds_names_however_written(void **state) {
    (void)state;
    static const struct {
        const char *written, *name;
    } rows[] = {{"oat flour", "oat flour"},
                {"OAT  Flours", "oat flour"},
                {"Oat-flour", "oat flour"},
                {"oatmeal flours", "oat flour"},
                {"rolled oat", "rolled oats"},
                {"porridge oats", "rolled oats"},
                {"eggs", "egg"},
                {"egg whites", "egg white"},
                {"blueberries", "blueberry"},
                {"tomatoes", "tomato"},
                {"half-and-half", "half and half"},
                {"creme fraiche", "crème fraîche"},
                {"CRÈME FRAÎCHE", "crème fraîche"},
                {"oat", "(none)"},
                {"", "(none)"},
                {"flour", "(none)"}};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = filled(a, &found);
    assert_int_equal(found.count, 0);
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i].written, name_of(pantry_find(&shelf, span_of(rows[i].written), a)),
                  rows[i].name);
    arena_free(a);
}

static void finds_the_longest_name(void **state) {
    (void)state;
    static const struct {
        const char *folded, *name, *before, *after;
    } rows[] = {{"egg", "egg", "", ""},
                {"egg white", "egg white", "", ""},
                {"egg whites beaten", "egg white", "", "beaten"},
                {"egg white protein powder", "egg white protein powder", "", ""},
                {"egg wash", "egg", "", "wash"},
                {"ripe mashed banana", "banana", "ripe", ""},
                {"very ripe bananas sliced", "banana", "very ripe", "sliced"},
                {"vanilla whey protein isolate", "whey protein isolate", "vanilla", ""},
                {"butter for the peanut butter layer", "butter", "", "for the peanut butter layer"},
                {"fat free half and half", "half and half", "fat free", ""},
                {"plain dragon scales", "(none)", "", "plain dragon scales"},
                {"", "(none)", "", ""}};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = filled(a, &found);
    for (size_t i = 0; i < COUNT(rows); i++) {
        span before, after;
        const ingredient *what =
            pantry_find_longest(&shelf, span_of(rows[i].folded), &before, &after);
        same_text(rows[i].folded, name_of(what), rows[i].name);
        same_span(rows[i].folded, before, rows[i].before);
        same_span(rows[i].folded, after, rows[i].after);
    }
    arena_free(a);
}

static void plurals_follow_the_rule(void **state) {
    (void)state;
    static const char *const rows[][2] = {{"egg", "eggs"},
                                          {"oat flour", "oat flours"},
                                          {"blueberry", "blueberries"},
                                          {"turkey", "turkeys"},
                                          {"radish", "radishes"},
                                          {"peach", "peaches"},
                                          {"flax", "flaxes"},
                                          {"tomato", "tomatoes"},
                                          {"avocado", "avocados"},
                                          {"bay leaf", "bay leaves"},
                                          {"rolled oats", "rolled oats"},
                                          {"molasses", "molasses"},
                                          {"watercress", "watercresses"}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i][0], pantry_plural(a, rows[i][0]), rows[i][1]);
    arena_free(a);
}

static void her_own_entry_replaces_the_reference(void **state) {
    (void)state;
    static const row own = {"Oat flour", "mill oats", NULL};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = filled(a, &found);
    size_t count = shelf.count;
    const ingredient *before = pantry_find(&shelf, span_of("oat flour"), a);
    add(&shelf, &own, true, &found);
    assert_int_equal(found.count, 0);
    assert_int_equal(shelf.count, count);
    assert_ptr_equal(pantry_find(&shelf, span_of("oat flour"), a), before);
    assert_true(before->hers);
    assert_ptr_equal(pantry_find(&shelf, span_of("oatmeal flour"), a), before);
    assert_ptr_equal(pantry_find(&shelf, span_of("mill oats"), a), before);
    arena_free(a);
}

static void a_taken_name_is_a_problem(void **state) {
    (void)state;
    static const struct {
        row entry;
        bool hers;
        const char *message;
        bool added;
    } rows[] = {
        {{"egg", NULL, NULL},
         false,
         "the ingredient \"egg\" is there already: it is a name of egg",
         false},
        {{"Isolate", NULL, NULL},
         true,
         "the ingredient \"Isolate\" is there already: it is a name of whey protein isolate",
         false},
        {{"pea protein", "isolate", NULL},
         false,
         "\"isolate\" of pea protein is already a name of whey protein isolate",
         true},
        {{"ova", NULL, "egg"}, false, "\"egg\" of ova is already a name of egg", true},
        {{" - ", NULL, NULL}, false, "an ingredient needs a name", false}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        pantry shelf = filled(a, &found);
        size_t count = shelf.count;
        add(&shelf, &rows[i].entry, rows[i].hers, &found);
        assert_int_equal(found.errors, 1);
        same_text(rows[i].entry.name, found.items[0].message, rows[i].message);
        assert_int_equal(shelf.count, count + rows[i].added);
        arena_free(a);
    }
}

static void a_stated_name_beats_a_made_plural(void **state) {
    (void)state;
    static const row oat = {"oat", NULL, NULL}, oats = {"oats", NULL, NULL};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = pantry_in(a);
    add(&shelf, &oat, false, &found);
    same_text("made", name_of(pantry_find(&shelf, span_of("oats"), a)), "oat");
    add(&shelf, &oats, false, &found);
    same_text("stated", name_of(pantry_find(&shelf, span_of("oats"), a)), "oats");
    assert_int_equal(found.count, 0);
    arena_free(a);
}

static void the_nearest_name_is_a_hint(void **state) {
    (void)state;
    static const char *const rows[][2] = {{"ot flour", "oat flour"},
                                          {"peanut buter", "peanut butter"},
                                          {"very fine oat fluor", "oat flour"},
                                          {"banna", "banana"},
                                          {"whey", "whey protein isolate"},
                                          {"oat", "oat flour"}, /* and not "egg" or the like */
                                          {"dragon scale", NULL},
                                          {"", NULL}};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = filled(a, &found);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *near = pantry_nearest(&shelf, span_of(rows[i][0]), a);
        same_text(rows[i][0], near ? near : "(none)", rows[i][1] ? rows[i][1] : "(none)");
    }
    arena_free(a);
}

static void an_entry_knows_its_place_and_slug(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = filled(a, &found);
    for (size_t i = 0; i < shelf.count; i++)
        assert_int_equal(pantry_index(&shelf, shelf.items[i]), i);
    assert_string_equal(pantry_find(&shelf, span_of("crème fraîche"), a)->slug, "creme-fraiche");
    assert_string_equal(pantry_find(&shelf, span_of("blueberry"), a)->plural, "blueberries");
    arena_free(a);
}

static void water_answers_to_its_english_name(void **state) {
    (void)state;
    static const char *const others[] = {"Wasser", NULL};
    for (size_t i = 0; i < COUNT(others); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        pantry shelf = filled(a, &found);
        const ingredient own = {.name = others[i], .in = FAMILY_LIQUID, .kind = "water"};
        if (others[i])
            pantry_add(&shelf, &own, &found);
        size_t before = shelf.count;
        pantry_need_water(&shelf, &found);
        pantry_need_water(&shelf, &found);
        const ingredient *water = pantry_find_folded(&shelf, span_of("water"));
        assert_non_null(water);
        same_text("name", water->name, others[i] ? others[i] : "water");
        assert_true(ingredient_is_water(water));
        assert_int_equal(shelf.count, before + !others[i]);
        assert_int_equal(found.count, 0);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(finds_names_however_written),
        cmocka_unit_test(finds_the_longest_name),
        cmocka_unit_test(plurals_follow_the_rule),
        cmocka_unit_test(her_own_entry_replaces_the_reference),
        cmocka_unit_test(a_taken_name_is_a_problem),
        cmocka_unit_test(a_stated_name_beats_a_made_plural),
        cmocka_unit_test(the_nearest_name_is_a_hint),
        cmocka_unit_test(an_entry_knows_its_place_and_slug),
        cmocka_unit_test(water_answers_to_its_english_name),
    };
    return cmocka_run_group_tests_name("pantry", tests, NULL, NULL);
}
