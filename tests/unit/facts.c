#include "unit/support/cmocka_rows.h"

#include "swap/facts.h"
#include "unit/support/build_swaps.h"

enum { LINES = 6 };

/* What sets and moistens recipes as bakers know them (common practice, no source). */
static const struct {
    const char *name, *kind;
    portion_of lines[LINES];
    setting sets;
    moisture moistened;
} recipes[] = {
    {"plant rounds on egg white",
     "griddle cake",
     {{"pea protein isolate", 60}, {"egg white", 140}, {"baking powder", 2}},
     SETTING_EGG_WHITE,
     MOISTURE_EGG_WHITE},
    {"cake of powder, egg white and almond",
     "cake",
     {{"pea protein isolate", 60},
      {"egg white", 160},
      {"almond meal", 100},
      {"sugar", 80},
      {"baking powder", 6}},
     SETTING_EGG_WHITE,
     MOISTURE_EGG_WHITE},
    {"egg white powder and water",
     "griddle cake",
     {{"oat flour", 60}, {"egg white powder", 12}, {"water", 90}},
     SETTING_EGG_WHITE,
     MOISTURE_WATER},
    {"press-in crust",
     "crust",
     {{"brown rice protein", 90}, {"almond butter", 125}, {"water", 50}},
     SETTING_NOTHING,
     MOISTURE_NUT_BUTTER},
    {"whey brownie",
     "brownie",
     {{"whey protein isolate", 90},
      {"apple purée", 244},
      {"almond butter", 125},
      {"cocoa powder", 30}},
     SETTING_WHEY,
     MOISTURE_FRUIT_PUREE},
    {"whey brownie with one egg",
     "brownie",
     {{"whey protein isolate", 90}, {"apple purée", 200}, {"almond butter", 125}, {"egg", 50}},
     SETTING_WHEY,
     MOISTURE_FRUIT_PUREE},
    {"hydrolysed whey sets nothing",
     "cookie",
     {{"whey protein hydrolysate", 90}, {"apple purée", 120}},
     SETTING_NOTHING,
     MOISTURE_FRUIT_PUREE},
    {"a scoop of whey in egg muffins",
     "muffin",
     {{"oat flour", 200}, {"whey protein isolate", 30}, {"egg", 100}, {"whole milk", 200}},
     SETTING_EGG,
     MOISTURE_DAIRY},
    {"whites and whole eggs",
     "muffin",
     {{"oat flour", 200}, {"egg", 100}, {"egg white", 35}, {"oat milk", 150}},
     SETTING_EGG,
     MOISTURE_PLANT_MILK},
    {"wheat muffins with two eggs",
     "muffin",
     {{"all-purpose flour", 250},
      {"egg", 100},
      {"whole milk", 240},
      {"sugar", 100},
      {"butter", 80}},
     SETTING_EGG,
     MOISTURE_DAIRY},
    {"wheat cookies with an egg",
     "cookie",
     {{"all-purpose flour", 250}, {"egg", 50}, {"sugar", 200}, {"butter", 170}},
     SETTING_GLUTEN,
     MOISTURE_FAT},
    {"yeast dough",
     "dough",
     {{"all-purpose flour", 500}, {"water", 320}, {"instant yeast", 5}},
     SETTING_GLUTEN,
     MOISTURE_WATER},
    {"psyllium loaf",
     "loaf",
     {{"oat flour", 300}, {"psyllium husk", 18}, {"water", 380}},
     SETTING_GEL,
     MOISTURE_WATER},
    {"flax crackers without water",
     "cracker",
     {{"flaxseed meal", 100}, {"almond butter", 100}},
     SETTING_NOTHING,
     MOISTURE_NUT_BUTTER},
    {"oat crackers",
     "cracker",
     {{"oat flour", 150}, {"water", 80}, {"butter", 20}},
     SETTING_STARCH,
     MOISTURE_WATER},
    {"unbaked bars",
     "no-bake",
     {{"whey protein isolate", 90},
      {"oat flour", 100},
      {"almond butter", 120},
      {"maple syrup", 80}},
     SETTING_NOTHING,
     MOISTURE_NUT_BUTTER},
    {"unbaked bars on syrup",
     "no-bake",
     {{"oat flour", 150}, {"maple syrup", 140}, {"almond butter", 60}},
     SETTING_NOTHING,
     MOISTURE_SYRUP},
    {"carrots bring the water",
     "cake",
     {{"oat flour", 200}, {"carrot", 200}, {"egg", 50}, {"sugar", 100}},
     SETTING_STARCH,
     MOISTURE_VEGETABLE},
    {"nothing but powder",
     "bar",
     {{"pea protein isolate", 100}},
     SETTING_NOTHING,
     MOISTURE_NOTHING},
    {"no lines", "cake", {{0}}, SETTING_NOTHING, MOISTURE_NOTHING},
};

static void recipes_are_set_and_moistened_as_bakers_know(void **state) {
    (void)state;
    larder *l = larder_new();
    for (size_t i = 0; i < COUNT(recipes); i++) {
        const recipe *r = larder_recipe(l, recipes[i].kind, recipes[i].lines, LINES);
        recipe_facts about = larder_facts(l, r);
        expect_text(recipes[i].name, setting_word(about.sets), setting_word(recipes[i].sets));
        expect_text(recipes[i].name, moisture_word(about.moistened),
                    moisture_word(recipes[i].moistened));
    }
    larder_free(l);
}

static void water_is_counted_by_who_brings_it(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "cake", (portion_of[]){{"oat flour", 100}, {"egg", 50}, {"whole milk", 200}}, 3);
    recipe_facts about = larder_facts(l, r);
    expect_near("egg", about.water_by[MOISTURE_EGG], 0.5 * 76.15, 1e-9);          /* SR28 01123 */
    expect_near("milk", about.water_by[MOISTURE_DAIRY], 2 * 88.13, 1e-9);         /* SR28 01077 */
    expect_near("the flour's own", about.water_by[MOISTURE_NOTHING], 8.55, 1e-9); /* SR28 20132 */
    larder_free(l);
}

static void baked_and_leavened(void **state) {
    (void)state;
    larder *l = larder_new();
    const struct {
        const char *name, *kind, *lifts;
        double oven_c, bake_min;
        pan_shape shape;
        bool baked, leavened;
    } rows[] = {
        {"a cake is baked, stated or not", "cake", "egg", 0, 0, PAN_NONE, true, false},
        {"a bar is baked when an oven is stated", "bar", "egg", 180, 0, PAN_SQUARE, true, false},
        {"or minutes are", "bar", "egg", 0, 12, PAN_SQUARE, true, false},
        {"or it is made on a griddle", "dough", "egg", 0, 0, PAN_GRIDDLE, true, false},
        {"a bar in a tin is not", "bar", "egg", 0, 0, PAN_SQUARE, false, false},
        {"no-bake is not, whatever is toasted", "no-bake", "egg", 180, 8, PAN_NONE, false, false},
        {"capitals count for nothing", "Griddle Cake", "egg", 0, 0, PAN_NONE, true, false},
        {"baking powder", "cake", "baking powder", 0, 0, PAN_NONE, true, true},
        {"yeast wants an oven", "dough", "instant yeast", 0, 0, PAN_NONE, true, true},
        {"self-raising flour", "cake", "self-raising flour", 0, 0, PAN_NONE, true, true},
        {"cream of tartar alone", "cake", "cream of tartar", 0, 0, PAN_NONE, true, false},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe *r = larder_recipe(l, rows[i].kind,
                                  (portion_of[]){{"oat flour", 100}, {rows[i].lifts, 10}}, 2);
        r->oven_c = rows[i].oven_c;
        r->minutes.bake = rows[i].bake_min;
        r->baked_in.shape = rows[i].shape;
        recipe_facts about = larder_facts(l, r);
        expect_bool(rows[i].name, about.baked, rows[i].baked);
        expect_bool(rows[i].name, about.leavened, rows[i].leavened);
    }
    larder_free(l);
}

static void shares_are_of_the_batch(void **state) {
    (void)state;
    larder *l = larder_new();
    recipe *r = larder_recipe(
        l, "cake", (portion_of[]){{"oat flour", 60}, {"coconut flour", 20}, {"egg", 80}}, 3);
    recipe_add_unknown(l->a, r, "moon dust", 40);
    recipe_add_to_taste(l->a, r, larder_find(l, "almond meal"));
    recipe_finish(r, 1, 0);
    recipe_facts about = larder_facts(l, r);
    selector flours = by_family(FAMILY_FLOUR), meals = by_family(FAMILY_MEAL);
    expect_near("80 g of 200 g", facts_share(&about, &flours), 0.4, 1e-12);
    expect_near("a line without weight", facts_share(&about, &meals), 0, 1e-12);
    recipe_facts empty = larder_facts(l, larder_recipe(l, "cake", NULL, 0));
    expect_near("an empty batch", facts_share(&empty, &flours), 0, 1e-12);
    larder_free(l);
}

/* A cake with a topping heavier than itself. */
static recipe *topped_cake(larder *l, const char *heading) {
    recipe *r = larder_recipe(
        l, "cake",
        (portion_of[]){
            {"oat flour", 100}, {"egg", 100}, {"baking powder", 4}, {"yogurt", 250}, {"sugar", 50}},
        5);
    larder_group(l, r, heading, 3);
    return r;
}

static void what_stands_on_top_is_not_mixed_in(void **state) {
    (void)state;
    larder *l = larder_new();
    static const struct {
        const char *heading;
        moisture moistened;
    } rows[] = {{"To serve", MOISTURE_EGG},
                {"on top", MOISTURE_EGG},
                {"For the icing (optional)", MOISTURE_EGG},
                {"Toppings:", MOISTURE_EGG},
                {"Wet", MOISTURE_DAIRY},
                {NULL, MOISTURE_DAIRY}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe_facts about = larder_facts(l, topped_cake(l, rows[i].heading));
        expect_text(rows[i].heading ? rows[i].heading : "no heading",
                    moisture_word(about.moistened), moisture_word(rows[i].moistened));
    }
    larder_free(l);
}

static void what_stands_on_top_is_judged_by_its_own_facts(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = topped_cake(l, "To serve");
    recipe_facts about = larder_facts(l, r);
    selector flours = by_family(FAMILY_FLOUR), dairy = by_family(FAMILY_DAIRY);
    const recipe_facts *top = facts_for(&about, 1u << 3);
    assert_true(top == about.beside && top != NULL);
    assert_true(facts_for(&about, 1u << 0) == &about);
    assert_true(facts_for(&about, 1u << 0 | 1u << 3) == &about); /* in both */
    assert_true(facts_for(&about, 0) == &about);
    assert_true(about.baked && about.leavened && !top->baked && !top->leavened);
    assert_int_equal(top->moistened, MOISTURE_DAIRY);
    assert_int_equal(top->sets, SETTING_NOTHING);
    expect_near("flour of the cake", facts_share(&about, &flours), 100 / 204.0, 1e-12);
    expect_near("yogurt of the cake", facts_share(&about, &dairy), 0, 1e-12);
    expect_near("yogurt of the top", facts_share(top, &dairy), 250 / 300.0, 1e-12);
    assert_null(facts_at(&about, 3));
    assert_null(facts_at(top, 0));
    conditions baked = {.baked = ANSWER_YES}, in_cakes = {0}, with_egg = {0};
    LIST_ADD(l->a, &in_cakes.kinds, span_of("cake"));
    LIST_ADD(l->a, &with_egg.has, by_family(FAMILY_EGG));
    const conditions *each[] = {&baked, &in_cakes, &with_egg};
    for (size_t i = 0; i < COUNT(each); i++) {
        expect_bool("flour", conditions_hold(each[i], &about, 1u << 0), true);
        expect_bool("sugar on top", conditions_hold(each[i], &about, 1u << 4), false);
    }
    larder_free(l);
}

static void lines_of_one_ingredient_are_known(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "cake", (portion_of[]){{"oat flour", 60}, {"egg", 50}, {"oat flour", 10}}, 3);
    recipe_facts about = larder_facts(l, r);
    assert_true(facts_same_lines(&about, 0) == 5 && facts_same_lines(&about, 2) == 5);
    assert_true(facts_same_lines(&about, 1) == 2);
    assert_true(facts_first_of(&about, 0) && facts_first_of(&about, 1));
    assert_false(facts_first_of(&about, 2));
    larder_free(l);
}

/* -- conditions ------------------------------------------------------------------------------ */

/* Sets one fact; `l` gives selectors room. */
typedef void state_fact(larder *l, conditions *when);

static void griddle(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->kinds, span_of("griddle cake"));
}
static void cake_or_griddle(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->kinds, span_of("cake"));
    griddle(l, when);
}
static void cake(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->kinds, span_of("cake"));
}
static void white_sets(larder *l, conditions *when) {
    (void)l;
    when->settings = 1u << SETTING_EGG_WHITE;
}
static void whey_or_egg_sets(larder *l, conditions *when) {
    (void)l;
    when->settings = 1u << SETTING_WHEY | 1u << SETTING_EGG;
}
static void white_moistens(larder *l, conditions *when) {
    (void)l;
    when->moistures = 1u << MOISTURE_EGG_WHITE;
}
static void water_moistens(larder *l, conditions *when) {
    (void)l;
    when->moistures = 1u << MOISTURE_WATER;
}
static void leavened(larder *l, conditions *when) {
    (void)l;
    when->leavened = ANSWER_YES;
}
static void not_leavened(larder *l, conditions *when) {
    (void)l;
    when->leavened = ANSWER_NO;
}
static void not_baked(larder *l, conditions *when) {
    (void)l;
    when->baked = ANSWER_NO;
}
static void has_powder(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->has, by_family(FAMILY_PROTEIN_POWDER));
}
static void has_egg_and_leavener(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->has, by_family(FAMILY_EGG));
    LIST_ADD(l->a, &when->has, by_family(FAMILY_LEAVENER));
}
static void has_egg_and_fat(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->has, by_family(FAMILY_EGG));
    LIST_ADD(l->a, &when->has, by_family(FAMILY_FAT));
}
static void lacks_powder(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->lacks, by_family(FAMILY_PROTEIN_POWDER));
}
static void lacks_egg(larder *l, conditions *when) {
    LIST_ADD(l->a, &when->lacks, by_family(FAMILY_EGG));
}
static void share(larder *l, conditions *when, family in, double over, double under) {
    LIST_ADD(l->a, &when->shares, (share_condition){by_family(in), over, under});
}
static void egg_over_half(larder *l, conditions *when) {
    share(l, when, FAMILY_EGG, 0.5, 1);
}
static void egg_over_its_share(larder *l, conditions *when) {
    share(l, when, FAMILY_EGG, 0.68, 1);
}
static void egg_under_its_share(larder *l, conditions *when) {
    share(l, when, FAMILY_EGG, 0, 0.68);
}
static void fat_under_a_tenth(larder *l, conditions *when) {
    share(l, when, FAMILY_FAT, 0, 0.1);
}
static void some_fat(larder *l, conditions *when) {
    share(l, when, FAMILY_FAT, 0, 1);
}
static void replaced_between(larder *l, conditions *when) {
    (void)l;
    when->has_replaced_share = true, when->replaced_over = 0.25, when->replaced_under = 0.35;
}
static void replaced_over_a_third(larder *l, conditions *when) {
    (void)l;
    when->has_replaced_share = true, when->replaced_over = 0.34, when->replaced_under = 1;
}
static void nothing_stated(larder *l, conditions *when) {
    (void)l;
    (void)when;
}

/* 60 g pea powder (replaced; 30 % of 200 g), 136 g egg white (68 %), 4 g baking powder. */
static const struct {
    const char *name;
    state_fact *state;
    bool holds;
} stated[] = {
    {"nothing stated", nothing_stated, true},
    {"its kind", griddle, true},
    {"one of two kinds", cake_or_griddle, true},
    {"another kind, of the same last word", cake, false},
    {"what sets it", white_sets, true},
    {"what else sets things", whey_or_egg_sets, false},
    {"what moistens it", white_moistens, true},
    {"what else moistens", water_moistens, false},
    {"leavened", leavened, true},
    {"not leavened", not_leavened, false},
    {"not baked", not_baked, false},
    {"has another powder than the replaced one", has_powder, false},
    {"lacks one", lacks_powder, true},
    {"has both of two", has_egg_and_leavener, true},
    {"has only one of two", has_egg_and_fat, false},
    {"lacks what is there", lacks_egg, false},
    {"over half", egg_over_half, true},
    {"over is strict", egg_over_its_share, false},
    {"under is strict", egg_under_its_share, false},
    {"nothing at all is under a tenth", fat_under_a_tenth, true},
    {"but over nothing asks for some", some_fat, false},
    {"the replaced one's share", replaced_between, true},
    {"more than its share", replaced_over_a_third, false},
};

static void each_condition_holds_or_not(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *r = larder_recipe(
        l, "griddle cake",
        (portion_of[]){{"pea protein isolate", 60}, {"egg white", 136}, {"baking powder", 4}}, 3);
    recipe_facts about = larder_facts(l, r);
    for (size_t i = 0; i < COUNT(stated); i++) {
        conditions when = {0};
        stated[i].state(l, &when);
        expect_bool(stated[i].name, conditions_hold(&when, &about, 1), stated[i].holds);
    }
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(recipes_are_set_and_moistened_as_bakers_know),
        cmocka_unit_test(water_is_counted_by_who_brings_it),
        cmocka_unit_test(baked_and_leavened),
        cmocka_unit_test(shares_are_of_the_batch),
        cmocka_unit_test(what_stands_on_top_is_not_mixed_in),
        cmocka_unit_test(what_stands_on_top_is_judged_by_its_own_facts),
        cmocka_unit_test(lines_of_one_ingredient_are_known),
        cmocka_unit_test(each_condition_holds_or_not),
    };
    return cmocka_run_group_tests_name("facts", tests, NULL, NULL);
}
