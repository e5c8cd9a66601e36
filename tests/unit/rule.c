#include "unit/support/cmocka_rows.h"

#include "swap/rule.h"
#include "unit/support/build_swaps.h"

static void every_verdict_has_word_sentence_and_sign(void **state) {
    (void)state;
    for (verdict v = 0; v < VERDICT_COUNT; v++) {
        verdict named = VERDICT_COUNT;
        assert_true(verdict_named(span_of(verdict_word(v)), &named));
        assert_int_equal(named, v);
        assert_true(strlen(verdict_sign(v)) > 0);
        for (verdict other = 0; other < v; other++)
            if (strcmp(verdict_sign(v), verdict_sign(other)) == 0)
                fail_msg("%s and %s share a sign", verdict_word(v), verdict_word(other));
    }
}

static void settings_and_moistures_are_named_by_their_words(void **state) {
    (void)state;
    for (setting s = 0; s < SETTING_COUNT; s++) {
        setting named = SETTING_COUNT;
        assert_true(setting_named(span_of(setting_word(s)), &named));
        assert_int_equal(named, s);
    }
    for (moisture m = 0; m < MOISTURE_COUNT; m++) {
        moisture named = MOISTURE_COUNT;
        assert_true(moisture_named(span_of(moisture_word(m)), &named));
        assert_int_equal(named, m);
    }
}

static void unknown_words_name_nothing(void **state) {
    (void)state;
    verdict v = VERDICT_WORKS;
    setting s = SETTING_GEL;
    moisture m = MOISTURE_FAT;
    assert_false(verdict_named(span_of("work"), &v));
    assert_false(setting_named(span_of("yolk"), &s));
    assert_false(moisture_named(span_of("juice"), &m));
    assert_true(v == VERDICT_WORKS && s == SETTING_GEL && m == MOISTURE_FAT);
    assert_true(moisture_named(span_of("fruit puree"), &m)); /* folded */
    assert_int_equal(m, MOISTURE_FRUIT_PUREE);
}

static const selector anything;

static void selectors_fit_by_their_parts(void **state) {
    (void)state;
    larder *l = larder_new();
    selector whey_or_rice = by_kind(l, FAMILY_PROTEIN_POWDER, "whey");
    LIST_ADD(l->a, &whey_or_rice.kinds, span_of("rice"));
    selector powders_of_plants = with_origin(by_family(FAMILY_PROTEIN_POWDER), ORIGIN_PLANT);
    selector flours_and_meals = by_family(FAMILY_FLOUR);
    flours_and_meals.families |= 1u << FAMILY_MEAL;
    const struct {
        const char *name;
        selector by;
        const char *what;
        bool fits;
    } rows[] = {
        {"nothing stated fits all", anything, "butter", true},
        {"family", by_family(FAMILY_FLOUR), "oat flour", true},
        {"another family", by_family(FAMILY_MEAL), "oat flour", false},
        {"any of two families", flours_and_meals, "almond meal", true},
        {"none of two families", flours_and_meals, "almond butter", false},
        {"leading word of a kind", whey_or_rice, "whey protein isolate", true},
        {"any of two kinds", whey_or_rice, "brown rice protein", true},
        {"no leading word", by_kind(l, FAMILY_PROTEIN_POWDER, "isolate"), "whey protein isolate",
         false},
        {"half a word", by_kind(l, FAMILY_PROTEIN_POWDER, "whe"), "whey protein isolate", false},
        {"longer than the kind", by_kind(l, FAMILY_FLOUR, "oat fine"), "oat flour", false},
        {"kind of another family", by_kind(l, FAMILY_MEAL, "almond"), "almond butter", false},
        {"kind with a space for its hyphen", by_kind(l, FAMILY_FLOUR, "wheat self raising"),
         "self-raising flour", true},
        {"origin", powders_of_plants, "pea protein isolate", true},
        {"another origin", powders_of_plants, "whey protein isolate", false},
        {"name", by_name(l, "oat flour"), "oat flour", true},
        {"name in plural", by_name(l, "Oat Flours"), "oat flour", true},
        {"name with an accent", by_name(l, "apple puree"), "apple purée", true},
        {"another name", by_name(l, "oat flour"), "coconut flour", false},
        {"a name nobody has", by_name(l, "moon flour"), "oat flour", false},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_bool(rows[i].name,
                    selector_fits(&rows[i].by, larder_find(l, rows[i].what), &l->shelf),
                    rows[i].fits);
    larder_free(l);
}

static void ranks_follow_name_kind_origin_family(void **state) {
    (void)state;
    larder *l = larder_new();
    selector kind = by_kind(l, FAMILY_FLOUR, "oat"), family_only = by_family(FAMILY_FLOUR);
    const selector order[] = {by_name(l, "oat flour"),
                              with_origin(kind, ORIGIN_PLANT),
                              kind,
                              with_origin(family_only, ORIGIN_PLANT),
                              family_only,
                              anything};
    for (size_t i = 1; i < COUNT(order); i++)
        if (selector_rank(&order[i - 1]) <= selector_rank(&order[i]))
            fail_msg("selector %zu does not go before the next", i - 1);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_verdict_has_word_sentence_and_sign),
        cmocka_unit_test(settings_and_moistures_are_named_by_their_words),
        cmocka_unit_test(unknown_words_name_nothing),
        cmocka_unit_test(selectors_fit_by_their_parts),
        cmocka_unit_test(ranks_follow_name_kind_origin_family),
    };
    return cmocka_run_group_tests_name("rule", tests, NULL, NULL);
}
