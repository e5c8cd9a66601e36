/* What the two laws make of each food: the US nine (FALCPA 2004, FASTER Act 2021, FDA questions
 * and answers of 6 January 2025) and the EU fourteen (Regulation (EU) 1169/2011, Annex II, as the
 * food allergy programme of the University of Nebraska lists them). */
#include "unit/support/cmocka_rows.h"

#include "nutrition/allergens.h"

static const struct {
    const char *food;
    allergen_set set;
    const char *us, *eu;
} rows[] = {
#define HOLDS(allergen) (1u << ALLERGEN_##allergen)
    /* FDA 2025: coconut is off the list, named among the ingredients only; never on the EU's */
    {"coconut flour", HOLDS(COCONUT), "", ""},
    /* gluten is no US allergen; oats are on the EU's list */
    {"oat flour", HOLDS(OATS), "", "cereals containing gluten (oats)"},
    {"rye flour", HOLDS(RYE), "", "cereals containing gluten (rye)"},
    {"barley malt", HOLDS(BARLEY), "", "cereals containing gluten (barley)"},
    {"wheat flour", HOLDS(WHEAT), "wheat", "cereals containing gluten (wheat)"},
    {"spelt flour", HOLDS(SPELT), "wheat (spelt)", "cereals containing gluten (spelt)"},
    {"whey, casein", HOLDS(MILK), "milk", "milk"},
    {"egg white", HOLDS(EGG), "egg", "eggs"},
    /* the kind of nut has to be named */
    {"almond flour", HOLDS(ALMOND), "tree nuts (almond)", "nuts (almond)"},
    {"almond and cashew", HOLDS(ALMOND) | HOLDS(CASHEW), "tree nuts (almond, cashew)",
     "nuts (almond, cashew)"},
    {"pine nut", HOLDS(PINE_NUT), "tree nuts (pine nut)", ""},
    {"chestnut flour", HOLDS(CHESTNUT), "", ""}, /* FDA 2025: off the list */
    {"tahini", HOLDS(SESAME), "sesame", "sesame"},
    {"lupin flour", HOLDS(LUPIN), "", "lupin"},
    {"pea, rice, hemp protein", 0, "", ""},
    {"soy protein", HOLDS(SOY), "soybeans", "soybeans"},
    /* peanut is no tree nut: peanut butter for almond butter moves the allergen */
    {"peanut butter", HOLDS(PEANUT), "peanuts", "peanuts"},
    {"fish", HOLDS(FISH), "fish", "fish"},
    {"prawn", HOLDS(CRUSTACEAN), "crustacean shellfish", "crustaceans"},
    {"squid", HOLDS(MOLLUSC), "", "molluscs"},
    {"celery", HOLDS(CELERY), "", "celery"},
    {"mustard", HOLDS(MUSTARD), "", "mustard"},
    {"dried apricot", HOLDS(SULPHITES), "", "sulphur dioxide and sulphites"},
};

static void statements_by_law(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        expect_text(rows[i].food, allergen_statement(a, rows[i].set, LAW_US), rows[i].us);
        expect_text(rows[i].food, allergen_statement(a, rows[i].set, LAW_EU), rows[i].eu);
    }
    arena_free(a);
}

/* Food Standards Agency, list of the fourteen allergens; from memory: the EU's, with "tree nuts".
 */
static void uk_words(void **state) {
    (void)state;
    arena *a = arena_new();
    allergen_set set = HOLDS(MILK) | HOLDS(OATS) | HOLDS(ALMOND) | HOLDS(PINE_NUT) | HOLDS(COCONUT);
    expect_text("UK", allergen_statement(a, set, LAW_UK),
                "milk; cereals containing gluten (oats); tree nuts (almond)");
    arena_free(a);
}

static size_t groups_of(label_law law) {
    const char *seen[ALLERGEN_COUNT];
    size_t count = 0;
    for (size_t i = 0; i < ALLERGEN_COUNT; i++) {
        const char *group = allergen_group((allergen)i, law);
        bool known = !group;
        for (size_t j = 0; j < count; j++)
            known = known || strcmp(seen[j], group) == 0;
        if (!known)
            seen[count++] = group;
    }
    return count;
}

static void nine_and_fourteen(void **state) {
    (void)state;
    assert_int_equal(groups_of(LAW_US), 9);
    assert_int_equal(groups_of(LAW_EU), 14);
    assert_int_equal(groups_of(LAW_UK), 14);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(statements_by_law),
        cmocka_unit_test(uk_words),
        cmocka_unit_test(nine_and_fourteen),
    };
    return cmocka_run_group_tests_name("published: allergen laws", tests, NULL, NULL);
}
