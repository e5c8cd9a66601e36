#include "unit/support/cmocka_rows.h"

#include "swap/cupboard.h"
#include "unit/support/build_swaps.h"

/* Pea powder in egg white; whey may not stand in for it, rice works, almond meal is another
 * texture. */
static const portion_of rounds[] = {
    {"pea protein isolate", 60}, {"egg white", 140}, {"oat flour", 30}, {"baking powder", 3}};

static larder *with_rules(void) {
    larder *l = larder_new();
    selector pea = by_kind(l, FAMILY_PROTEIN_POWDER, "pea"), oat = by_name(l, "oat flour");
    larder_rule(l, "whey", pea, by_kind(l, FAMILY_PROTEIN_POWDER, "whey"), VERDICT_AVOID);
    larder_rule(l, "rice", pea, by_kind(l, FAMILY_PROTEIN_POWDER, "rice"), VERDICT_ADJUST);
    larder_rule(l, "almond", oat, by_name(l, "almond meal"), VERDICT_DIFFERENT);
    larder_rule(l, "coconut", oat, by_name(l, "coconut flour"), VERDICT_ADJUST);
    return l;
}

/* The plan for the ingredients named in `have`, up to the null. */
static cupboard_plan plan_with(larder *l, const recipe *r, bool staples, const char *const have[]) {
    cupboard own = {.has_staples = staples};
    recipe_facts about = larder_facts(l, r);
    for (size_t i = 0; have[i]; i++)
        LIST_ADD(l->a, &own, larder_find(l, have[i]));
    return cupboard_plan_of(l->a, &l->book, &about, &own);
}

/* "missing, missing | from>to verdict" */
static const char *plan_text(larder *l, const cupboard_plan *of) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < of->missing_count; i++)
        text_format(&t, "%s%s", i ? ", " : "", of->missing[i]);
    text_add(&t, " |");
    for (size_t i = 0; i < of->swap_count; i++)
        text_format(&t, " %s>%s %s", of->swaps[i].from->name, of->swaps[i].to->name,
                    verdict_word(of->swaps[i].says));
    const char *put = arena_copy(l->a, text_span(&t));
    text_free(&t);
    return put;
}

static void what_is_at_hand_or_answered_is_not_missing(void **state) {
    (void)state;
    larder *l = with_rules();
    const recipe *r = larder_recipe(l, "griddle cake", rounds, 4);
    const struct {
        const char *name, *own[6], *plan;
    } rows[] = {
        {"all of it", {"pea protein isolate", "egg white", "oat flour", "baking powder"}, " |"},
        {"all but one", {"pea protein isolate", "egg white", "oat flour"}, "baking powder |"},
        {"rice for pea",
         {"brown rice protein", "egg white", "oat flour"},
         "baking powder | pea protein isolate>brown rice protein adjust"},
        {"whey is to be avoided",
         {"whey protein isolate", "egg white", "oat flour", "baking powder"},
         "pea protein isolate |"},
        {"the better verdict, whatever stands first",
         {"almond meal", "coconut flour", "pea protein isolate", "egg white", "baking powder"},
         " | oat flour>coconut flour adjust"},
        {"another texture where nothing is better",
         {"almond meal", "pea protein isolate", "egg white", "baking powder"},
         " | oat flour>almond meal different"},
        {"nothing of use",
         {"butter"},
         "pea protein isolate, egg white, oat flour, baking powder |"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        cupboard_plan plan = plan_with(l, r, false, rows[i].own);
        expect_text(rows[i].name, plan_text(l, &plan), rows[i].plan);
    }
    cupboard_plan nothing = plan_with(l, r, false, rows[COUNT(rows) - 1].own);
    assert_true(cupboard_plan_is_empty(&nothing));
    larder_free(l);
}

static void staples_water_and_optional_lines_are_not_missed(void **state) {
    (void)state;
    larder *l = with_rules();
    const char *const own[] = {"pea protein isolate", "egg white", NULL};
    recipe *r = larder_recipe(l, "griddle cake", rounds, 4);
    cupboard_plan plan = plan_with(l, r, true, own);
    expect_text("staples", plan_text(l, &plan), "oat flour |");
    r->lines.items[2].optional = true;
    plan = plan_with(l, r, true, own);
    expect_text("optional", plan_text(l, &plan), " |");
    const portion_of watered[] = {{"pea protein isolate", 60}, {"egg white", 140}, {"water", 30}};
    plan = plan_with(l, larder_recipe(l, "griddle cake", watered, 3), false, own);
    expect_text("water", plan_text(l, &plan), " |");
    assert_int_equal(plan.as_written, 2);
    larder_free(l);
}

static void an_ingredient_on_two_lines_counts_once(void **state) {
    (void)state;
    larder *l = with_rules();
    const portion_of twice[] = {{"oat flour", 30}, {"egg white", 140}, {"oat flour", 20}};
    recipe *r = larder_recipe(l, "griddle cake", twice, 3);
    const char *const white[] = {"egg white", NULL}, *const coconut[] = {"coconut flour", NULL};
    cupboard_plan plan = plan_with(l, r, false, white);
    expect_text("missing once", plan_text(l, &plan), "oat flour |");
    plan = plan_with(l, r, false, coconut);
    expect_text("swapped once", plan_text(l, &plan), "egg white | oat flour>coconut flour adjust");
    r->lines.items[0].optional = true; /* the other line still wants it */
    plan = plan_with(l, r, false, white);
    expect_text("optional on one line alone", plan_text(l, &plan), "oat flour |");
    r->lines.items[0].what = NULL;
    r->lines.items[0].optional = false;
    r->lines.items[0].name = "moon dust";
    plan = plan_with(l, r, false, white);
    expect_text("unknown", plan_text(l, &plan), "moon dust, oat flour |");
    larder_free(l);
}

static void fewer_missing_then_fewer_and_better_swaps_go_first(void **state) {
    (void)state;
    cupboard_swap works = {.says = VERDICT_WORKS}, adjust = {.says = VERDICT_ADJUST},
                  different = {.says = VERDICT_DIFFERENT};
    cupboard_swap two_that_work[] = {works, works}, all_three[] = {works, adjust, different};
    const cupboard_plan order[] = {
        {.as_written = 1},
        {.swaps = &works, .swap_count = 1},
        {.swaps = &adjust, .swap_count = 1},
        {.swaps = &different, .swap_count = 1},
        {.swaps = all_three, .swap_count = 3},
        {.missing_count = 1},
        {.missing_count = 1, .swaps = two_that_work, .swap_count = 2},
        {.missing_count = 2},
    };
    for (size_t i = 1; i < COUNT(order); i++)
        if (cupboard_compare(&order[i - 1], &order[i]) >= 0 ||
            cupboard_compare(&order[i], &order[i - 1]) <= 0)
            fail_msg("plan %zu does not go before the next", i - 1);
    cupboard_plan adjusted = {.swaps = &adjust, .swap_count = 1},
                  twice = {.swaps = two_that_work, .swap_count = 2};
    assert_int_equal(cupboard_compare(&adjusted, &twice), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_at_hand_or_answered_is_not_missing),
        cmocka_unit_test(staples_water_and_optional_lines_are_not_missed),
        cmocka_unit_test(an_ingredient_on_two_lines_counts_once),
        cmocka_unit_test(fewer_missing_then_fewer_and_better_swaps_go_first),
    };
    return cmocka_run_group_tests_name("cupboard", tests, NULL, NULL);
}
