/* pantry/borrowed.h: water uptake for her own entries that state none. */
#include "unit/support/cmocka_rows.h"

#include "pantry/borrowed.h"

typedef struct {
    arena *a;
    problems found;
    pantry shelf;
} store;

static ingredient entry(const char *name, const char *kind, family in, bool hers) {
    return (ingredient){.name = name, .kind = kind, .in = in, .hers = hers};
}

static void put(store *s, ingredient one, double cold) {
    if (cold > 0) {
        one.has_uptake = true;
        one.cold_uptake = (range){cold / 2, cold, cold * 2};
        one.heated_uptake = (range){cold, 2 * cold, 3 * cold};
        one.sets = HEAT_SET_FIRM;
        one.sets_stated = true;
    }
    pantry_add(&s->shelf, &one, &s->found);
}

static store stocked(void) {
    const family powder = FAMILY_PROTEIN_POWDER;
    store s = {.a = arena_new()};
    s.found = problems_in(s.a);
    s.shelf = pantry_in(s.a);
    put(&s, entry("whey protein isolate", "whey isolate", powder, false), 0.8);
    put(&s, entry("whey protein concentrate", "whey concentrate", powder, false), 1);
    put(&s, entry("milled whey concentrate", "whey concentrate milled", powder, false), 1.5);
    put(&s, entry("pea protein isolate", "pea isolate", powder, false), 3);
    put(&s, entry("oat flour", "oat", FAMILY_FLOUR, false), 2.2);
    return s;
}

static void the_nearest_kind_lends_its_figures(void **state) {
    (void)state;
    static const struct {
        const char *name, *kind;
        family in;
        const char *from; /* null: nobody */
    } rows[] = {
        {"her whey", "whey concentrate vanilla", FAMILY_PROTEIN_POWDER, "whey protein concentrate"},
        {"her mill", "whey concentrate milled", FAMILY_PROTEIN_POWDER, "milled whey concentrate"},
        {"her pea", "pea", FAMILY_PROTEIN_POWDER, "pea protein isolate"},
        {"her peanut", "peanut", FAMILY_PROTEIN_POWDER, NULL}, /* a word, not its letters */
        {"her oat flour", "oat", FAMILY_FLOUR, "oat flour"},
        {"her oat butter", "oat", FAMILY_NUT_BUTTER, NULL}, /* takes nothing up */
        {"her rice", "rice", FAMILY_PROTEIN_POWDER, NULL},
        {"her powder", "", FAMILY_PROTEIN_POWDER, NULL},
        {"oat flour", "oat stone-ground", FAMILY_FLOUR, "oat flour"}, /* replaces it */
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        store s = stocked();
        put(&s, entry(rows[i].name, rows[i].kind, rows[i].in, true), 0);
        pantry_borrow(&s.shelf, &s.found);
        const ingredient *hers = pantry_find(&s.shelf, span_of(rows[i].name), s.a);
        const ingredient *from = hers->borrowed_from;
        expect_text(rows[i].name, from ? from->name : NULL, rows[i].from);
        expect_bool(rows[i].name, hers->has_uptake, rows[i].from != NULL);
        if (from) {
            expect_near(rows[i].name, hers->cold_uptake.typical, from->cold_uptake.typical, 0);
            expect_near(rows[i].name, hers->cold_uptake.low,
                        from->cold_uptake.low / BORROWED_WIDENED, 1e-12);
            expect_near(rows[i].name, hers->heated_uptake.high,
                        from->heated_uptake.high * BORROWED_WIDENED, 1e-12);
            expect_holds_text(rows[i].name, hers->uptake_source.text, "taken from");
            assert_int_equal(hers->sets, HEAT_SET_FIRM);
        }
        arena_free(s.a);
    }
}

static void what_she_states_stays(void **state) {
    (void)state;
    store s = stocked();
    put(&s, entry("her whey", "whey concentrate", FAMILY_PROTEIN_POWDER, true), 1.2);
    ingredient soft = entry("her soft whey", "whey concentrate", FAMILY_PROTEIN_POWDER, true);
    soft.sets_stated = true;
    soft.sets = HEAT_SET_SOFT;
    put(&s, soft, 0);
    pantry_borrow(&s.shelf, &s.found);
    const ingredient *stated = pantry_find(&s.shelf, span_of("her whey"), s.a);
    expect_near("uptake", stated->cold_uptake.low, 0.6, 0);
    assert_null(stated->borrowed_from);
    assert_int_equal(pantry_find(&s.shelf, span_of("her soft whey"), s.a)->sets, HEAT_SET_SOFT);
    arena_free(s.a);
}

static void she_may_say_what_it_is_like(void **state) {
    (void)state;
    static const struct {
        const char *like, *from, *wrong; /* null: nothing is wrong */
    } rows[] = {
        {"pea protein isolate", "pea protein isolate", NULL},
        {"Oat Flour", "oat flour", NULL}, /* of whatever family */
        {"pea protein isolat", NULL, "no ingredient is called \"pea protein isolat\""},
        {"her whey", NULL, "her whey has no water uptake of its own to lend"},
        {"her rice", NULL, "her rice has no water uptake of its own to lend"}, /* itself */
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        store s = stocked();
        put(&s, entry("her whey", "whey concentrate", FAMILY_PROTEIN_POWDER, true), 0);
        ingredient rice = entry("her rice", "rice", FAMILY_PROTEIN_POWDER, true);
        rice.uptake_like = rows[i].like;
        put(&s, rice, 0);
        pantry_borrow(&s.shelf, &s.found);
        const ingredient *hers = pantry_find(&s.shelf, span_of("her rice"), s.a);
        expect_text(rows[i].like, hers->borrowed_from ? hers->borrowed_from->name : NULL,
                    rows[i].from);
        expect_text(rows[i].like, s.found.count ? s.found.items[0].message : NULL, rows[i].wrong);
        size_t before = s.found.warnings;
        pantry_borrowed_report(&s.shelf, &s.found);
        assert_int_equal(s.found.warnings - before, 1); /* of the whey alone */
        arena_free(s.a);
    }
}

static void the_report_names_each_entry_once(void **state) {
    (void)state;
    store s = stocked();
    put(&s, entry("her whey", "whey concentrate", FAMILY_PROTEIN_POWDER, true), 0);
    put(&s, entry("her rice", "rice", FAMILY_PROTEIN_POWDER, true), 0);
    put(&s, entry("her pea", "pea", FAMILY_PROTEIN_POWDER, true), 2);
    put(&s, entry("her butter", "almond", FAMILY_NUT_BUTTER, true), 0);
    pantry_borrow(&s.shelf, &s.found);
    pantry_borrowed_report(&s.shelf, &s.found);
    assert_int_equal(s.found.warnings, 2);
    expect_holds_text("her whey", s.found.items[0].message, "that of whey protein concentrate");
    expect_holds_text("her rice", s.found.items[1].message, "is not worked out");
    arena_free(s.a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_nearest_kind_lends_its_figures),
        cmocka_unit_test(what_she_states_stays),
        cmocka_unit_test(she_may_say_what_it_is_like),
        cmocka_unit_test(the_report_names_each_entry_once),
    };
    return cmocka_run_group_tests_name("borrowed", tests, NULL, NULL);
}
