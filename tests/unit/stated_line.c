/* Ingredients as pages state them, and where the method states the oven. */
#include "checks.h"
#include "small_shelf.h"

#include "draft/stated_line.h"
#include "draft/stated_oven.h"

static void puts_right_what_can_not_be_misread(void **state) {
    (void)state;
    static const struct {
        const char *stated;
        stated_sort sort;
        const char *words;
    } rows[] = {
        {"60 g coconut flour", STATED_LINE, "60 g coconut flour"},
        {"\u00bd cup Coconut Flour, sifted", STATED_LINE, "\u00bd cup Coconut Flour, sifted"},
        {"\u2022 60 g coconut flour", STATED_LINE, "60 g coconut flour"},
        {"\u25a2 60 g coconut flour*", STATED_LINE, "60 g coconut flour"},
        {"- 60 g coconut flour,", STATED_LINE, "60 g coconut flour"},
        {"1 cup coconut flour ((112 g))", STATED_LINE, "1 cup coconut flour (112 g)"},
        {"0.333333 cup coconut flour", STATED_LINE, "1/3 cup coconut flour"},
        {"1.6666667 cups coconut flour", STATED_LINE, "1 2/3 cups coconut flour"},
        {"0.25 cup coconut flour", STATED_LINE, "0.25 cup coconut flour"},
        {"0.4142135 cup coconut flour", STATED_LINE, "0.4142135 cup coconut flour"},
        {"Coconut flour: 60 g", STATED_LINE, "60 g Coconut flour"},
        {"coconut flour \u2013 60 g", STATED_LINE, "60 g coconut flour"},
        {"coconut flour, 1/2 cup", STATED_LINE, "1/2 cup coconut flour"},
        {"60 g coconut flour - 2 tbsp", STATED_UNREADABLE, "60 g coconut flour - 2 tbsp"},
        {"60 g moon dust", STATED_UNKNOWN, "60 g moon dust"},
        {"1 can coconut flour", STATED_UNWEIGHED, "1 can coconut flour"},
        {"For the crust:", STATED_HEADING, "For the crust"},
        {"1,000 g coconut flour", STATED_UNREADABLE, "1,000 g coconut flour"},
        {"(", STATED_UNREADABLE, "("},
        {":", STATED_UNREADABLE, ":"},
        {"- : ", STATED_UNREADABLE, "- : "},
        {"", STATED_UNREADABLE, ""},
    };
    arena *home = arena_new();
    pantry shelf = small_shelf(home);
    for (size_t i = 0; i < COUNT(rows); i++) {
        stated_line got = line_stated(home, rows[i].stated, &shelf, CUPS_US);
        if (got.sort != rows[i].sort)
            fail_msg("%s: sort %d", rows[i].stated, (int)got.sort);
        same_text(rows[i].stated, got.words, rows[i].words);
        bool remarked = got.sort != STATED_LINE && got.sort != STATED_HEADING;
        if ((got.remarks.count > 0) != remarked)
            fail_msg("%s: %zu remarks", rows[i].stated, got.remarks.count);
    }
    arena_free(home);
}

static void finds_the_oven_in_the_method(void **state) {
    (void)state;
    static const struct {
        const char *step, *oven;
    } rows[] = {
        {"Heat the oven to 180 C.", "180 C"},
        {"Preheat oven to 350\u00b0F (175\u00b0C).", "350 F"},
        {"OVEN at 200 degrees Celsius", "200 C"},
        {"Oven: 180\u00b0 C, 25 minutes", "180 C"},
        {"Bake in the oven for 25 minutes.", NULL},
        {"Bake at 180 C.", NULL}, /* of what? */
        {"Heat the oven to 180.", NULL},
        {"Heat the oven to 1800 C.", NULL},
        {"Heat the oven to gas mark 4.", NULL},
        {"Oven mitts at the ready, 180 cups", NULL},
    };
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        draft_item step = {NULL, rows[i].step};
        const char *got = oven_stated(a, &(draft_items){&step, 1, 1});
        same_text(rows[i].step, got ? got : "-", rows[i].oven ? rows[i].oven : "-");
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(puts_right_what_can_not_be_misread),
        cmocka_unit_test(finds_the_oven_in_the_method),
    };
    return cmocka_run_group_tests_name("stated_line", tests, NULL, NULL);
}
