/* swap/main_swaps.h: which swaps of a recipe get a page of their own. */
#include "unit/support/cmocka_rows.h"

#include "base/text.h"
#include "swap/main_swaps.h"
#include "unit/support/build_recipe.h"

#include <stdint.h>

enum { FOODS = 13, NOTES = 10, POWDER = 0, FLOUR, BUTTER, SUGAR, LINES };

/* The first four are the recipe's. */
static const struct {
    const char *name, *kind;
    family in;
} foods[FOODS] = {{"pea", "pea isolate", FAMILY_PROTEIN_POWDER},
                  {"oat flour", "oat", FAMILY_FLOUR},
                  {"almond butter", "almond", FAMILY_NUT_BUTTER},
                  {"sugar", "sugar white", FAMILY_SWEETENER},
                  {"whey concentrate", "whey concentrate", FAMILY_PROTEIN_POWDER},
                  {"whey isolate", "whey isolate", FAMILY_PROTEIN_POWDER},
                  {"rice", "rice", FAMILY_PROTEIN_POWDER},
                  {"algae", "algae", FAMILY_PROTEIN_POWDER},
                  {"pea concentrate", "pea concentrate", FAMILY_PROTEIN_POWDER},
                  {"almond meal", "almond", FAMILY_MEAL},
                  {"almond flour", "almond defatted", FAMILY_FLOUR},
                  {"peanut butter", "peanut", FAMILY_NUT_BUTTER},
                  {"honey", "syrup honey", FAMILY_SWEETENER}};

/* One note of a row: of which line, what comes (null: no more notes), and what is said of it. */
typedef struct {
    size_t line;
    const char *to;
    verdict says;
    bool author, bake; /* who says so; neither: a rule */
    bool past_rescue, no_amount;
    bool two; /* the flour goes too */
} told;

static const struct {
    const char *name;
    told notes[NOTES];
    const char *chosen; /* in order, of six wanted */
} rows[] = {
    {"nothing said", {{.to = NULL}}, ""},
    {"what works, needs changes or differs",
     {{.to = "rice", .says = VERDICT_WORKS},
      {.to = "algae", .says = VERDICT_ADJUST},
      {.to = "pea concentrate", .says = VERDICT_DIFFERENT}},
     "rice, algae, pea concentrate"},
    {"what is advised against or untried has none",
     {{.to = "rice", .says = VERDICT_AVOID}, {.to = "algae", .says = VERDICT_UNTRIED}},
     ""},
    {"without an amount there is nothing to show",
     {{.to = "rice", .says = VERDICT_WORKS, .no_amount = true}},
     ""},
    {"nobody asks for sugar",
     {{.line = SUGAR, .to = "honey", .says = VERDICT_WORKS, .author = true}},
     ""},
    {"what most own goes before a better verdict",
     {{.to = "algae", .says = VERDICT_WORKS}, {.to = "whey isolate", .says = VERDICT_ADJUST}},
     "whey isolate, algae"},
    {"another texture goes last",
     {{.to = "algae", .says = VERDICT_ADJUST}, {.to = "whey isolate", .says = VERDICT_DIFFERENT}},
     "algae, whey isolate"},
    {"one a kind", {{.to = "whey isolate"}, {.to = "whey concentrate"}}, "whey concentrate"},
    {"almond is almond, as meal or as flour",
     {{.line = FLOUR, .to = "almond flour"}, {.line = FLOUR, .to = "almond meal"}},
     "almond meal"},
    {"another make of the same goes last",
     {{.to = "pea concentrate"}, {.to = "algae", .says = VERDICT_ADJUST}},
     "algae, pea concentrate"},
    {"the ingredients in turn",
     {{.to = "whey isolate"},
      {.to = "rice"},
      {.to = "algae"},
      {.line = FLOUR, .to = "almond meal"},
      {.line = BUTTER, .to = "peanut butter"}},
     "whey isolate, almond meal, peanut butter, rice, algae"},
    {"the author's word and trials first",
     {{.to = "whey isolate"},
      {.to = "algae", .says = VERDICT_ADJUST, .bake = true},
      {.line = BUTTER, .to = "peanut butter", .says = VERDICT_DIFFERENT, .author = true}},
     "algae, peanut butter, whey isolate"},
    {"past rescue only on somebody's word",
     {{.to = "rice", .past_rescue = true}, {.to = "algae", .past_rescue = true, .bake = true}},
     "algae"},
    {"a replacement has one page",
     {{.to = "almond meal"}, {.line = FLOUR, .to = "almond meal"}},
     "almond meal"},
    {"two that go have a turn of their own",
     {{.to = "rice"}, {.to = "algae"}, {.to = "almond meal", .two = true}},
     "rice, almond meal, algae"},
    {"no more than six",
     {{.to = "whey isolate"},
      {.to = "rice"},
      {.to = "algae"},
      {.to = "pea concentrate"},
      {.line = FLOUR, .to = "almond meal"},
      {.line = FLOUR, .to = "oat flour"},
      {.line = BUTTER, .to = "peanut butter"}},
     "whey isolate, almond meal, peanut butter, rice, oat flour, algae"},
};

static const ingredient *food_called(arena *a, const char *name) {
    for (size_t i = 0; i < FOODS; i++)
        if (strcmp(foods[i].name, name) == 0)
            return food(a, name, foods[i].in, foods[i].kind, ORIGIN_PLANT);
    fail_msg("no food %s", name);
    return NULL;
}

static swap_notes notes_told(arena *a, const told notes[NOTES]) {
    swap_notes all = {0};
    for (size_t i = 0; i < NOTES && notes[i].to; i++)
        LIST_ADD(a, &all,
                 (swap_note){.line = notes[i].line,
                             .second_line = notes[i].two ? FLOUR : SIZE_MAX,
                             .to = food_called(a, notes[i].to),
                             .says = notes[i].says,
                             .by = {.by = notes[i].author ? SAID_BY_RECIPE
                                          : notes[i].bake ? SAID_BY_TRIAL
                                                          : SAID_BY_REFERENCE},
                             .past_rescue = notes[i].past_rescue,
                             .to_g = notes[i].no_amount ? 0 : 50});
    /* One ingredient, one pantry entry. */
    for (size_t i = 0; i < all.count; i++)
        for (size_t k = i + 1; k < all.count; k++)
            if (strcmp(all.items[i].to->name, all.items[k].to->name) == 0)
                all.items[k].to = all.items[i].to;
    return all;
}

static text names_of_chosen(const main_swaps *chosen) {
    text listed = TEXT_EMPTY;
    text_add(&listed, "");
    for (size_t i = 0; i < chosen->count; i++)
        text_format(&listed, "%s%s", i ? ", " : "", chosen->items[i]->to->name);
    return listed;
}

static recipe *recipe_with_all(arena *a) {
    recipe *of = recipe_new(a, "cake");
    for (size_t i = 0; i < LINES; i++)
        recipe_add(a, of, food_called(a, foods[i].name), 100);
    return of;
}

static void the_most_asked_for_are_chosen(void **state) {
    (void)state;
    for (size_t r = 0; r < COUNT(rows); r++) {
        arena *a = arena_new();
        recipe *of = recipe_with_all(a);
        swap_notes notes = notes_told(a, rows[r].notes);
        main_swaps chosen = main_swaps_of(of, &notes, 6);
        text listed = names_of_chosen(&chosen);
        expect_text(rows[r].name, listed.bytes, rows[r].chosen);
        for (size_t i = 0; i < notes.count; i++)
            expect_bool(rows[r].name, main_swaps_have(&chosen, &notes.items[i]),
                        strstr(listed.bytes, notes.items[i].to->name) != NULL &&
                            (i == 0 || strcmp(rows[r].name, "a replacement has one page") != 0));
        text_free(&listed);
        arena_free(a);
    }
}

/* Whatever is wanted, what is chosen begins as of six. */
static void fewer_are_the_first_of_more(void **state) {
    (void)state;
    for (size_t r = 0; r < COUNT(rows); r++)
        for (size_t wanted = 0; wanted < 6; wanted++) {
            arena *a = arena_new();
            recipe *of = recipe_with_all(a);
            swap_notes notes = notes_told(a, rows[r].notes);
            main_swaps all = main_swaps_of(of, &notes, 6);
            main_swaps chosen = main_swaps_of(of, &notes, wanted);
            size_t expected = all.count < wanted ? all.count : wanted;
            expect_bool(rows[r].name, chosen.count == expected, true);
            for (size_t i = 0; i < chosen.count; i++)
                expect_text(rows[r].name, chosen.items[i]->to->name, all.items[i]->to->name);
            arena_free(a);
        }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_most_asked_for_are_chosen),
                                       cmocka_unit_test(fewer_are_the_first_of_more)};
    return cmocka_run_group_tests_name("main_swaps", tests, NULL, NULL);
}
