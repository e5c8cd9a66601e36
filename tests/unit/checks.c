/* The checks on prose as bakers write it: what they say, and what they let stand. The places are
 * tested in tests/site/broken. */
#include "reading.h"

#include "check/checks.h"

enum { LINES_MOST = 8 };

typedef struct {
    const char *title, *summary, *tags, *lines[LINES_MOST], *method, *notes;
    const char *found; /* "check: message" lines; empty: nothing */
} prose_row;

/* The file of a row; what it leaves out is plain. */
static const char *file_of(arena *a, const prose_row *row) {
    const char *lines =
        row->lines[0] ? "" : "  - 60 g pea protein powder\n  - 1/2 cup egg whites\n";
    for (size_t i = 0; i < LINES_MOST && row->lines[i]; i++)
        lines = arena_format(a, "%s  - %s\n", lines, row->lines[i]);
    return arena_format(
        a,
        "---\ntitle: %s\nsummary: \"%s\"\ntags: [%s]\nmakes: 8 rounds\nportion: 2 rounds\n"
        "kind: griddle cake\nminutes: {bake: 10}\nbake-loss: 0 %%\ningredients:\n%s---\n1. "
        "%s\n\n## Notes\n\n%s\n",
        row->title ? row->title : "Rounds", row->summary ? row->summary : "Rounds.",
        row->tags ? row->tags : "tea", lines, row->method ? row->method : "Mix and bake.",
        row->notes ? row->notes : "None.");
}

static const char *report_of(arena *a, const problems *found) {
    const char *all = "";
    for (size_t i = 0; i < found->count; i++)
        all =
            arena_format(a, "%s%s: %s\n", all, found->items[i].check ? found->items[i].check : "-",
                         found->items[i].message);
    return all;
}

static void check_rows(const check_site *site, const prose_row rows[], size_t count) {
    for (size_t i = 0; i < count; i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        const char *file = file_of(a, &rows[i]);
        const recipe *of =
            recipe_read(a, "recipes/x.md", span_of(file), &site->folder->shelf, CUPS_US, &found);
        if (!of || found.count)
            fail_msg("row %zu: %s", i, printed(a, &found));
        recipe_facts about = facts_of(a, of, &site->folder->shelf);
        check_recipe(site, a, of, &about, &found);
        problems_sort(&found);
        expect_words(file, report_of(a, &found), rows[i].found);
        arena_free(a);
    }
}

#define CHECK_ROWS(state, rows) check_rows(*(state), (rows), COUNT(rows))

/* 60 g of pea protein powder and 122 g of egg white: 61 g of protein, 300 kcal; a quarter of each
 * in a portion. */
static void figures_in_words(void **state) {
    static const prose_row rows[] = {
        {.summary = "15 g protein a portion.", .found = ""},
        {.summary = "About 15 g of protein per portion, under 90 kcal.", .found = ""},
        {.summary = "Over 14 g protein and 75 calories.", .found = ""},
        {.summary = "14-16 g protein.", .found = ""},
        {.summary = "8 g protein a round.", .found = ""},
        {.summary = "61 g protein in the batch.", .found = ""},
        {.summary = "35 g protein in 100 g.", .found = ""},
        {.summary = "Made with 30 g protein powder and 20 g of whey protein isolate.", .found = ""},
        {.summary = "30 g of protein-free fun, 5 g below zero.", .found = ""},
        {.title = "22g protein rounds",
         .found = "claim-figure: \"22g protein\", but a portion has 15 g\n"},
        {.summary = "Under 10 g protein.",
         .found = "claim-figure: \"10 g protein\", but a portion has 15 g\n"},
        {.summary = "At least 20 g protein.",
         .found = "claim-figure: \"20 g protein\", but a portion has 15 g\n"},
        {.summary = "No less than 12 g protein.", .found = ""},
        {.notes = "The batch has 1,900 kcal.",
         .found = "claim-figure: \"1,900 kcal\", but the batch has 300 kcal\n"},
        {.summary = "14,5 g protein.", .found = ""},
        {.notes = "A round has 200 kcal.",
         .found = "claim-figure: \"200 kcal\", but one round has 38 kcal\n"},
        {.notes = "The whole batch has 90 g of protein.",
         .found = "claim-figure: \"90 g of protein\", but the batch has 61 g\n"},
        {.notes = "Each portion has 12 g fat.",
         .found = "claim-figure: \"12 g fat\", but a portion has 1 g\n"},
        /* in a step, fat and sugar are what goes in */
        {.method = "Mix with 20 g fat and bake.", .found = ""},
    };
    CHECK_ROWS(state, rows);
}

static void claims_in_words(void **state) {
    static const prose_row rows[] = {
        {.title = "High-protein rounds", .found = ""},
        {.summary = "High in fibre.",
         .found = "claim-words: \"High in fibre\": 0.66 g of fibre in 100 g; the rule asks for at "
                  "least 6 g\n"},
        {.tags = "high-fibre",
         .found = "claim-words: \"high-fibre\": 0.66 g of fibre in 100 g; the rule asks for at "
                  "least 6 g\n"},
        {.notes = "It is a source of fibre.",
         .found = "claim-words: \"source of fibre\": 0.66 g of fibre in 100 g; the rule asks for "
                  "at least 3 g\n"},
        {.summary = "Not high in fibre.", .found = ""},
        {.summary = "High in fibre? Hardly.", .found = ""},
        {.notes = "Oat flour is high in fibre.", .found = ""},
        {.summary = "With high-fibre oat flour.", .found = ""},
        {.summary = "With no added sugar.",
         .lines = {"60 g pea protein powder", "1 tbsp sugar"},
         .found = "claim-words: \"no added sugar\": sugar is added to sweeten\n"},
        {.summary = "Low-fat.",
         .lines = {"60 g pea protein powder", "1 cup egg whites"},
         .found = ""},
    };
    CHECK_ROWS(state, rows);
}

static void freedom_in_words(void **state) {
    static const prose_row rows[] = {
        {.title = "Nut-free, dairy-free rounds", .found = ""},
        {.title = "Eggless rounds",
         .found = "free-of: \"Eggless\", but the list has egg whites (egg)\n"},
        {.summary = "Made without egg or milk.",
         .found = "free-of: \"without egg\", but the list has egg whites (egg)\n"},
        {.summary = "No egg white left behind.", .found = ""},
        {.summary = "These are not vegan.", .found = ""},
        {.summary = "These aren't egg-free.", .found = ""},
        {.summary = "Vegan if you take aquafaba.", .found = ""},
        {.tags = "egg-free option", .found = ""},
        {.notes = "For a vegan batch use aquafaba.", .found = ""},
        {.notes = "The rounds are vegan.",
         .found = "free-of: \"vegan\", but the list has egg whites (not vegan)\n"},
        {.notes = "Take gluten-free oats.", .lines = {"60 g rolled oats"}, .found = ""},
        {.summary = "With gluten-free rolled oats.", .lines = {"60 g rolled oats"}, .found = ""},
        {.title = "Gluten-free rounds",
         .lines = {"60 g spelt flour"},
         .found = "free-of: \"Gluten-free\", but the list has spelt flour (gluten)\n"},
        {.title = "Vegan rounds",
         .lines = {"60 g pea protein powder", "7 g gelatin powder"},
         .found = "free-of: \"Vegan\", but the list has gelatin powder (not vegan)\n"},
        {.title = "Vegetarian rounds",
         .lines = {"60 g pea protein powder", "7 g gelatin powder"},
         .found = "free-of: \"Vegetarian\", but the list has gelatin powder (not vegetarian)\n"},
        {.tags = "nut-free",
         .lines = {"60 g peanut butter"},
         .found = "free-of: \"nut-free\", but the list has peanut butter (nuts)\n"},
        {.tags = "peanut-free", .lines = {"60 g almond butter"}, .found = ""},
        {.tags = "dairy-free",
         .lines = {"60 g dark chocolate", "60 g whey protein isolate"},
         .found = "free-of: \"dairy-free\", but the list has whey protein isolate (milk)\n"},
    };
    CHECK_ROWS(state, rows);
}

#define CAKE                                                                                       \
    {                                                                                              \
        "60 g pea protein powder", "1 cup almond meal", "1/2 cup milk", "2 large eggs",            \
            "1/4 tsp salt", "1 tbsp sugar"                                                         \
    }
#define ALL "Whisk the pea powder, almond meal, milk, eggs, salt and sugar. "

static void the_method_and_the_list(void **state) {
    static const prose_row rows[] = {
        {.lines = CAKE, .method = ALL, .found = ""},
        {.lines = CAKE, .method = "Mix everything.", .found = ""},
        {.lines = CAKE, .method = "Mix all the ingredients and bake.", .found = ""},
        {.lines = CAKE,
         .method = "Whisk the dry ingredients, then the milk and the eggs.",
         .found = ""},
        {.lines = CAKE,
         .method = "Whisk the pea powder, almond meal and sugar. Add the milk and "
                   "eggs to the dry mixture.",
         .found = "unused: the method never uses salt\n"},
        {.lines = CAKE, .method = ALL "Serve with yogurt.", .found = ""},
        {.lines = CAKE,
         .method = ALL "It should look like custard and smell of vanilla.",
         .found = ""},
        {.lines = CAKE,
         .method = ALL "Brush the tin with melted butter and dust it with flour.",
         .found = ""},
        {.lines = CAKE,
         .method = ALL "Stir in 50 g butter.",
         .found = "unlisted: the method takes butter, but the list has none\n"},
        {.lines = CAKE,
         .method = ALL "Pour 100 ml water over it.",
         .found = "unlisted: the method takes water, but the list has none\n"},
        {.lines = CAKE, .method = ALL "Add a little water if it is dry.", .found = ""},
        {.lines = CAKE,
         .method = ALL "Fold in the rolled oats.",
         .found = "unlisted: the method takes rolled oats, but the list has none\n"},
        /* amounts */
        {.lines = CAKE,
         .method = "Whisk 40 g of the pea powder, almond meal, milk, eggs, salt and "
                   "sugar, then the remaining 20 g of pea powder.",
         .found = ""},
        {.lines = CAKE, .method = ALL "Add 3 tablespoons of milk.", .found = ""},
        {.lines = CAKE,
         .method = ALL "Add 1 cup of the milk.",
         .found = "amounts: the method takes 244 g of milk in all, but the list has 122 g\n"},
        {.lines = CAKE,
         .method = ALL "Beat 3 eggs.",
         .found = "amounts: the method takes 150 g of eggs in all, but the list has 100 g\n"},
        {.lines = CAKE, .method = ALL "If it is stiff, add 1 cup of milk.", .found = ""},
        {.lines = CAKE, .method = ALL "Bake 60 g rounds for 5 minutes at 180 C.", .found = ""},
        {.lines = CAKE,
         .method = "Mix 20 g of the pea powder, the almond meal, milk, eggs, salt "
                   "and sugar.",
         .found = "amounts: the method takes 20 g of pea protein powder in all, but the list has "
                  "60 g\n"},
    };
    CHECK_ROWS(state, rows);
}

static void swap_advice(void **state) {
    static const char against[] =
        "swap-advice: the words advise to use whey protein isolate for pea protein powder, but the "
        "rule \"whey-in-an-egg-white-griddle-cake-of-plant-powder\" says avoid\n";
    static const prose_row rows[] = {
        {.notes = "You can use whey protein isolate instead of the pea powder.", .found = against},
        {.notes = "Swap the pea powder for whey protein isolate.", .found = against},
        {.notes = "Replace the pea protein powder with whey protein isolate.", .found = against},
        {.notes = "Substitute whey protein isolate for the pea powder.", .found = against},
        {.notes = "Try whey protein isolate in place of the pea powder.", .found = against},
        {.notes = "The whey protein isolate works too.",
         .found = "swap-advice: the words advise to use whey protein isolate for pea protein "
                  "powder, but the rule "
                  "\"whey-in-an-egg-white-griddle-cake-of-plant-powder\" says avoid\n"},
        {.notes = "Do not use whey protein isolate instead of the pea powder.", .found = ""},
        {.notes = "With whey protein isolate in place of the pea powder it runs.", .found = ""},
        {.notes = "Whey protein isolate never works instead.", .found = ""},
        {.notes = "You can swap the pea powder for soy protein isolate.", .found = ""},
        {.notes = "Use whey protein isolate. The pea powder is better.", .found = ""},
    };
    CHECK_ROWS(state, rows);
}

static int site_up(void **state) {
    arena *a = arena_new();
    site_folder *folder = ARENA_NEW(a, site_folder);
    check_site *site = ARENA_NEW(a, check_site);
    problems found = problems_in(a);
    bool failed;
    if (!site_folder_read(a, NULL, folder, &found, &failed))
        return 1;
    folder->settings.law = LAW_EU;
    *site = check_site_of(a, folder);
    *state = site;
    return 0;
}

static int site_down(void **state) {
    const check_site *site = *state;
    arena_free(site->folder->home);
    return 0;
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(figures_in_words), cmocka_unit_test(claims_in_words),
        cmocka_unit_test(freedom_in_words), cmocka_unit_test(the_method_and_the_list),
        cmocka_unit_test(swap_advice),
    };
    return cmocka_run_group_tests_name("checks", tests, site_up, site_down);
}
