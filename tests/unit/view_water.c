/* site/view_water.h: the page of assumptions shows the figures that the program reckons with. */
#include "unit/support/cmocka_rows.h"

#include "base/number.h"
#include "measure/kitchen.h"
#include "pantry/borrowed.h"
#include "site/view_water.h"
#include "swap/balance_best.h"
#include "swap/balance_quantities.h"
#include "unit/support/build_swaps.h"

typedef struct {
    larder *l;
    site_folder folder;
    theme look;
    page_maker by;
} kitchen;

static kitchen *opened(void) {
    larder *l = larder_new();
    kitchen *k = ARENA_NEW(l->a, kitchen);
    *k = (kitchen){.l = l,
                   .folder = {.home = l->a, .settings = site_settings_default()},
                   .look = {.words = view_object(l->a)}};
    k->folder.settings.in = l->in;
    k->folder.settings.title = "Galley";
    k->folder.settings.address = "https://galley.example/";
    larder_rule(l, "all", (selector){0}, (selector){0}, VERDICT_ADJUST)->by = SAID_BY_OWN_RULE;
    rule_book_index(l->a, &l->book);
    k->folder.shelf = l->shelf;
    k->folder.book = l->book;
    k->folder.book.shelf = &k->folder.shelf;
    k->by = (page_maker){.folder = &k->folder, .look = &k->look};
    return k;
}

static const view *at(const view *of, const char *key) {
    const view *found = view_get(of, view_key_named(key));
    if (!found)
        fail_msg("there is no %s", key);
    return found;
}

static const char *text_at(kitchen *k, const view *of, const char *key) {
    return arena_copy(k->l->a, at(of, key)->bytes);
}

static void every_uptake_stands_once(void **state) {
    (void)state;
    kitchen *k = opened();
    const view *page = view_of_water(k->l->a, &k->by, NULL);
    for (size_t i = 0; i < k->l->shelf.count; i++) {
        const ingredient *what = k->l->shelf.items[i];
        size_t found = 0;
        for (const view *g = at(page, "groups")->first; g; g = g->next)
            for (const view *one = at(g, "items")->first; one; one = one->next) {
                if (strcmp(text_at(k, one, "name"), what->name) != 0)
                    continue;
                found++;
                expect_text(what->name, text_at(k, one, "sets_text"), heat_set_word(what->sets));
                expect_holds_text(what->name, text_at(k, one, "heated_text"),
                                  number_copy(k->l->a, what->heated_uptake.typical, 2));
            }
        if (found != what->has_uptake)
            fail_msg("%s stands there %zu times", what->name, found);
    }
    larder_free(k->l);
}

static void the_constants_are_those_of_the_program(void **state) {
    (void)state;
    static const double wanted[] = {UPTAKE_IN_BATTER,    FREE_PER_DRY_MOST, LIQUID_RESCUES_MOST,
                                    LIQUID_SHORT_MOST,   BEST_LEAST,        BEST_MOST,
                                    BEST_HELD_BACK_MOST, BEST_WATER_WEIGHT, BORROWED_WIDENED};
    kitchen *k = opened();
    const view *page = view_of_water(k->l->a, &k->by, NULL);
    for (size_t i = 0; i < COUNT(wanted); i++) {
        bool found = false;
        for (const view *one = at(page, "constants")->first; one; one = one->next) {
            const char *says = text_at(k, one, "text");
            found = found || strstr(says, number_copy(k->l->a, wanted[i], 3)) ||
                    strstr(says, arena_format(k->l->a, "%s %%",
                                              number_copy(k->l->a, wanted[i] * 100, 1)));
        }
        expect_bool(number_copy(k->l->a, wanted[i], 3), found, true);
    }
    assert_int_equal(at(page, "steps")->count, BALANCE_QUANTITIES);
    larder_free(k->l);
}

/* By hand: water 3.6 + 122.64 + 120 g; pea takes 0.375 x 3 x 60 g; egg white nothing. */
static void the_example_is_worked_by_the_program(void **state) {
    (void)state;
    kitchen *k = opened();
    const recipe *of = larder_recipe(
        k->l, "griddle cake",
        (portion_of[]){{"pea protein isolate", 60}, {"egg white", 140}, {"water", 120}}, 3);
    const water_example shown = {of, larder_find(k->l, "pea protein isolate"),
                                 larder_find(k->l, "whey protein isolate")};
    const view *page = view_of_water(k->l->a, &k->by, &shown), *example = at(page, "example");
    double white_g = 140 * balance_water_per_g(larder_find(k->l, "egg white"));
    expect_text("water", text_at(k, example, "water_text"),
                kitchen_weight(k->l->a, 3.6 + white_g + 120));
    expect_text("taken", text_at(k, example, "taken_text"), "68 g");
    assert_int_equal(at(example, "takers")->count, 1);
    expect_text("pea", text_at(k, at(example, "takers")->first, "taken_text"), "68 g");
    assert_int_equal(at(at(example, "balance"), "points")->count, 4);
    larder_free(k->l);
}

static void an_example_is_whey_for_plant_or_plant_for_whey(void **state) {
    (void)state;
    static const struct {
        const char *from, *to;
        bool shows;
    } rows[] = {{"pea protein isolate", "whey protein isolate", true},
                {"whey protein isolate", "brown rice protein", true},
                {"pea protein isolate", "brown rice protein", false},
                {"oat flour", "coconut flour", false},
                {"whey protein isolate", "oat flour", false}};
    kitchen *k = opened();
    for (size_t i = 0; i < COUNT(rows); i++) {
        size_t from = 99, to = 99;
        const row_swap swapped = {(uint16_t)larder_find(k->l, rows[i].from)->index,
                                  (uint16_t)larder_find(k->l, rows[i].to)->index, VERDICT_ADJUST};
        const recipe_row row = {.swaps = &swapped, .swap_count = 1};
        expect_bool(rows[i].to, water_example_in(&row, &k->folder.shelf, &from, &to),
                    rows[i].shows);
        if (rows[i].shows)
            assert_true(from == swapped.from && to == swapped.to);
    }
    larder_free(k->l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_uptake_stands_once),
        cmocka_unit_test(the_constants_are_those_of_the_program),
        cmocka_unit_test(the_example_is_worked_by_the_program),
        cmocka_unit_test(an_example_is_whey_for_plant_or_plant_for_whey),
    };
    return cmocka_run_group_tests_name("view_water", tests, NULL, NULL);
}
