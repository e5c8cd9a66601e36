/* swap/note_claims.h: claims that stop or start to hold, and cautions that come. */
#include "unit/support/cmocka_rows.h"

#include "nutrition/lines.h"
#include "swap/note_claims.h"
#include "unit/support/build_recipe.h"
#include "unit/support/in_english.h"

#include <stdint.h>

/* Of Regulation (EC) 1924/2006, Annex: high protein from 20 % of the energy, source of protein
 * from 12 %; high fibre from 6 g in 100 g. */
static const struct {
    const char *name;
    family in;
    origin from;
    raw_state raw;
    double protein_g, carbohydrate_g, fibre_g;
    double to_g, from_g;
    const char *gained, *lost, *open, *caution;
} rows[] = {
    {"a powder by a starch", FAMILY_STARCH, ORIGIN_PLANT, RAW_READY, 0, 90, 0, 60, 60, "",
     "source of protein and high protein", "", ""},
    {"by another powder", FAMILY_PROTEIN_POWDER, ORIGIN_PLANT, RAW_READY, 80, 5, 0, 60, 60, "", "",
     "", ""},
    {"by fibre", FAMILY_GUM, ORIGIN_PLANT, RAW_READY, 80, 90, 85, 60, 60,
     "source of fibre and high fibre", "", "", ""},
    {"by honey", FAMILY_SWEETENER, ORIGIN_BEE, RAW_READY, 80, 5, 0, 60, 60, "", "", "",
     "not for infants"},
    {"by raw egg", FAMILY_EGG, ORIGIN_EGG, RAW_EGG, 80, 5, 0, 60, 60, "", "", "", "71"},
    {"too little of it goes", FAMILY_SWEETENER, ORIGIN_BEE, RAW_READY, 0, 90, 0, 5, 5, "", "", "",
     ""},
    {"no amount is promised", FAMILY_STARCH, ORIGIN_PLANT, RAW_READY, 0, 90, 0, 0, 60, "", "", "",
     ""},
};

static ingredient *full_food(arena *a, const char *name, double protein_g, double carbohydrate_g,
                             double fibre_g) {
    ingredient *one = food_of_nothing(a, name);
    food_holds(one, protein_g, 1, carbohydrate_g, fibre_g);
    food_set(one, NUTRIENT_ENERGY, 4 * protein_g + 9 + 4 * (carbohydrate_g - fibre_g));
    return one;
}

static recipe *cake(arena *a) {
    recipe *of = recipe_new(a, "cake");
    recipe_add(a, of, full_food(a, "powder", 80, 5, 0), 60);
    recipe_add(a, of, full_food(a, "flour", 8, 80, 2), 140);
    of->minutes.bake = 20;
    recipe_finish(of, 4, 0);
    return of;
}

static void expect_words(arena *a, const char *row, const word_list *list, const char *wanted) {
    if (wanted[0] == '\0')
        assert_int_equal(list->count, 0);
    else
        expect_holds_text(row, words_joined(a, list), wanted);
}

static void a_swap_changes_claims_and_cautions(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        const recipe *of = cake(a);
        ingredient *to =
            full_food(a, rows[i].name, rows[i].protein_g, rows[i].carbohydrate_g, rows[i].fibre_g);
        to->in = rows[i].in;
        to->from = rows[i].from;
        to->raw = rows[i].raw;
        recipe_macros figures = macros_of(of);
        protein_quality quality = quality_of(a, of);
        claims held = claims_of(a, of, &figures, &quality, LAW_EU);
        swap_note note = {.second_line = SIZE_MAX,
                          .to = to,
                          .from_g = rows[i].from_g,
                          .to_g = rows[i].to_g,
                          .liquid_line = SIZE_MAX};
        swap_notes notes = {&note, 1, 1};
        claims_asked asked = {of, &figures, &held, LAW_EU, NULL};
        const note_claims *changes = note_claims_of(a, &asked, &notes);
        expect_words(a, rows[i].name, &changes->gained, rows[i].gained);
        expect_words(a, rows[i].name, &changes->lost, rows[i].lost);
        expect_words(a, rows[i].name, &changes->open, rows[i].open);
        word_list cautions = cautions_in_english(a, changes->cautions);
        expect_words(a, rows[i].name, &cautions, rows[i].caution);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_swap_changes_claims_and_cautions)};
    return cmocka_run_group_tests_name("note_claims", tests, NULL, NULL);
}
