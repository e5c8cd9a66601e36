#include "unit/support/cmocka_rows.h"

#include "nutrition/remarks.h"
#include "unit/support/build_recipe.h"
#include "unit/support/in_english.h"

static word_list remarks(arena *a, const recipe *r, label_law law) {
    word_list said = {0};
    recipe_macros m = macros_of(r);
    messages all = remarks_of(a, r, &m, law);
    for (size_t i = 0; i < all.count; i++)
        LIST_ADD(a, &said, in_english(a, all.items[i]));
    return said;
}

static recipe *plain(arena *a) {
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, food_of_nothing(a, "dough"), 40);
    recipe_finish(r, 1, 0);
    return r;
}

static void nothing_to_remark(void **state) {
    (void)state;
    arena *a = arena_new();
    recipe *r = plain(a);
    assert_int_equal(remarks(a, r, LAW_US).count, 0);
    r->oven_c = 180;
    r->bake_loss_stated = true;
    assert_int_equal(remarks(a, r, LAW_US).count, 0);
    arena_free(a);
}

static void add_unweighed(arena *a, recipe *r) {
    recipe_add_unweighed(a, r, food_of_nothing(a, "salt"));
    recipe_add_unweighed(a, r, food_of_nothing(a, "sugar"));
    recipe_finish(r, 1, 0);
}

static void add_to_taste(arena *a, recipe *r) {
    recipe_add_to_taste(a, r, food_of_nothing(a, "salt"));
}

static void add_optional(arena *a, recipe *r) {
    recipe_add(a, r, food_of_nothing(a, "nuts"), 10);
    r->lines.items[1].optional = true;
    recipe_add_to_taste(a, r, food_of_nothing(a, "icing"));
    r->lines.items[2].optional = true;
}

static void add_marinade(arena *a, recipe *r) {
    recipe_add(a, r, food_of_nothing(a, "soy sauce"), 10);
    r->lines.items[1].preparation = "for the marinade, discarded";
}

static void bake_without_loss(arena *a, recipe *r) {
    (void)a;
    r->oven_c = 180;
}

static void bake_with_rum(arena *a, recipe *r) {
    ingredient *rum = food_of_nothing(a, "rum");
    food_set(rum, NUTRIENT_ALCOHOL, 40);
    recipe_add(a, r, rum, 5);
    recipe_finish(r, 2, 0);
    r->oven_c = 180;
    r->bake_loss_stated = true;
}

static void use_griddle(arena *a, recipe *r) {
    (void)a;
    r->baked_in.shape = PAN_GRIDDLE;
    r->bake_loss_stated = true;
}

static void add_pack(arena *a, recipe *r) {
    ingredient *pack = food_of_nothing(a, "pack");
    pack->serving_g = 5;
    pack->composition_source.sure = CERTAINTY_LABEL;
    food_set(pack, NUTRIENT_PROTEIN, 20); /* 1 g */
    recipe_add(a, r, pack, 10);
    recipe_finish(r, 1, 0);
}

static void halve(arena *a, recipe *r) {
    (void)a;
    recipe_finish(r, 4, 0);
}

static const struct {
    const char *name;
    void (*change)(arena *a, recipe *r);
    label_law law;
    const char *first, *second; /* null: no such remark */
} rows[] = {
    {"unweighed", add_unweighed, LAW_EU, "Not counted, as no weight is known: salt and sugar.",
     NULL},
    {"to taste", add_to_taste, LAW_EU, "Not counted, being to taste: salt.", NULL},
    {"optional", add_optional, LAW_EU, "Not counted, being to taste: icing.",
     "Counted, though optional: nuts."},
    {"poured away", add_marinade, LAW_EU,
     "Counted whole, though part of it is poured away: soy sauce.", NULL},
    {"no loss stated", bake_without_loss, LAW_EU, "No bake loss is stated", NULL},
    {"rum", bake_with_rum, LAW_EU, "All the alcohol is counted", NULL},
    {"griddle", use_griddle, LAW_EU, "Fat to grease the griddle", NULL},
    {"pack", add_pack, LAW_EU, "Pack labels are rounded, so a portion may hold protein 1 to 3 g.",
     NULL},
    {"small portion", halve, LAW_US, "A portion weighs 10 g; US law takes 40 g", NULL},
    {"no US law, no hint", halve, LAW_EU, NULL, NULL},
};

static void remarks_where_there_is_cause(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe *r = plain(a);
        rows[i].change(a, r);
        word_list got = remarks(a, r, rows[i].law);
        size_t wanted = rows[i].second ? 2 : rows[i].first ? 1 : 0;
        if (got.count != wanted)
            fail_msg("%s: %zu remarks: %s", rows[i].name, got.count,
                     got.count ? got.items[got.count - 1] : "");
        if (rows[i].first)
            expect_holds_text(rows[i].name, got.items[0], rows[i].first);
        if (rows[i].second)
            expect_holds_text(rows[i].name, got.items[1], rows[i].second);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_to_remark),
        cmocka_unit_test(remarks_where_there_is_cause),
    };
    return cmocka_run_group_tests_name("remarks", tests, NULL, NULL);
}
