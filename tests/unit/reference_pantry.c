/* The reference pantry as a whole: complete, sound, and found by what bakers write. */
#include "reference_shelf.h"

static void every_family_is_stocked(void **state) {
    const pantry *shelf = *state;
    size_t stocked[FAMILY_COUNT] = {0};
    for (size_t i = 0; i < shelf->count; i++)
        stocked[shelf->items[i]->in]++;
    for (family in = 0; in < FAMILY_COUNT; in++)
        if (stocked[in] < 3)
            fail_msg("%s: only %zu in the pantry", family_word(in), stocked[in]);
}

/* What a recipe's totals need: an entry without one of these makes every sum lack it. */
static void the_core_figures_are_known(void **state) {
    static const nutrient core[] = {NUTRIENT_ENERGY, NUTRIENT_WATER,     NUTRIENT_PROTEIN,
                                    NUTRIENT_FAT,    NUTRIENT_SATURATES, NUTRIENT_CARBOHYDRATE,
                                    NUTRIENT_FIBRE,  NUTRIENT_SUGARS,    NUTRIENT_SODIUM};
    const pantry *shelf = *state;
    for (size_t i = 0; i < shelf->count; i++)
        for (size_t k = 0; k < COUNT(core); k++)
            if (!nutrient_known(&shelf->items[i]->per_100_g, core[k]))
                fail_msg("%s: no %s", shelf->items[i]->name, nutrient_key(core[k]));
}

static double of(const ingredient *food, nutrient which) {
    return food->per_100_g.of[which];
}

static void no_food_weighs_more_than_itself(void **state) {
    const pantry *shelf = *state;
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *food = shelf->items[i];
        double sum_g = of(food, NUTRIENT_WATER) + of(food, NUTRIENT_PROTEIN) +
                       of(food, NUTRIENT_FAT) + of(food, NUTRIENT_CARBOHYDRATE) +
                       of(food, NUTRIENT_ALCOHOL);
        if (sum_g > 100.5)
            fail_msg("%s: %.2f g in 100 g", food->name, sum_g);
    }
}

static void expect_source(const ingredient *food, const char *group, source_note source) {
    if (!source.text || source.text[0] == '\0' || source.sure == CERTAINTY_UNSTATED)
        fail_msg("%s: no source for its %s", food->name, group);
}

static void every_group_of_figures_has_a_source(void **state) {
    const pantry *shelf = *state;
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *food = shelf->items[i];
        expect_source(food, "composition", food->composition_source);
        expect_source(food, "measures", food->measures_source);
        if (food->has_uptake)
            expect_source(food, "water uptake", food->uptake_source);
        if (food->sweetness > 0)
            expect_source(food, "sweetness", food->sweetness_source);
        if (food->digestibility > 0)
            expect_source(food, "digestibility", food->digestibility_source);
        if (food->has_amino_acids[AMINO_LYSINE])
            expect_source(food, "amino acids", food->amino_acids_source);
    }
}

static void dry_things_know_their_water_uptake(void **state) {
    static const family thirsty[] = {FAMILY_PROTEIN_POWDER, FAMILY_FLOUR, FAMILY_MEAL,
                                     FAMILY_STARCH, FAMILY_GUM};
    const pantry *shelf = *state;
    for (size_t i = 0; i < shelf->count; i++)
        for (size_t k = 0; k < COUNT(thirsty); k++)
            if (shelf->items[i]->in == thirsty[k] && !shelf->items[i]->has_uptake)
                fail_msg("%s: no water uptake", shelf->items[i]->name);
}

static void proteins_set_as_their_kind_does(void **state) {
    static const struct {
        const char *name;
        heat_set sets;
    } rows[] = {{"whey protein concentrate", HEAT_SET_FIRM},
                {"whey protein isolate", HEAT_SET_FIRM},
                {"egg white powder", HEAT_SET_FIRM},
                {"egg white", HEAT_SET_FIRM},
                {"egg", HEAT_SET_FIRM},
                {"vital wheat gluten", HEAT_SET_FIRM},
                {"soy protein isolate", HEAT_SET_SOFT},
                {"pea protein isolate", HEAT_SET_SOFT},
                {"hemp protein isolate", HEAT_SET_SOFT},
                {"micellar casein", HEAT_SET_NONE},
                {"calcium caseinate", HEAT_SET_NONE},
                {"brown rice protein", HEAT_SET_NONE},
                {"hemp protein powder", HEAT_SET_NONE},
                {"collagen peptides", HEAT_SET_NONE},
                {"coconut flour", HEAT_SET_NONE},
                {"oat flour", HEAT_SET_NONE}};
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i].name, heat_set_word(on_shelf(shelf, rows[i].name)->sets),
                  heat_set_word(rows[i].sets));
}

static void what_bakers_write_is_found(void **state) {
    static const struct {
        const char *written, *name;
    } rows[] = {{"whey", "whey protein concentrate"},
                {"Whey Protein Powder", "whey protein concentrate"},
                {"casein powder", "micellar casein"},
                {"egg white protein powder", "egg white powder"},
                {"pea protein powder", "pea protein isolate"},
                {"rice protein powder", "brown rice protein"},
                {"hemp protein", "hemp protein powder"},
                {"soya protein isolate", "soy protein isolate"},
                {"plant-based protein powder", "pea-rice protein blend"},
                {"vegan protein powder", "pea-rice protein blend"},
                {"pea and rice protein", "pea-rice protein blend"},
                {"collagen powder", "collagen peptides"},
                {"flour", "all-purpose flour"},
                {"plain flour", "all-purpose flour"},
                {"strong white flour", "bread flour"},
                {"wholemeal flour", "whole wheat flour"},
                {"self-rising flour", "self-raising flour"},
                {"gram flour", "chickpea flour"},
                {"powdered peanut butter", "peanut flour"},
                {"almond flour", "almond meal"},
                {"ground almonds", "almond meal"},
                {"partially defatted almond flour", "defatted almond flour"},
                {"ground flax", "flaxseed meal"},
                {"porridge oats", "rolled oats"},
                {"cornflour", "cornstarch"},
                {"tapioca flour", "tapioca starch"},
                {"zucchini", "courgette"},
                {"applesauce", "apple purée"},
                {"pumpkin puree", "pumpkin purée"},
                {"eggs", "egg"},
                {"liquid egg whites", "egg white"},
                {"curd cheese", "quark"},
                {"Greek yoghurt", "greek yogurt"},
                {"double cream", "heavy cream"},
                {"bicarbonate of soda", "baking soda"},
                {"icing sugar", "icing sugar"},
                {"powdered sugar", "icing sugar"},
                {"confectioners' sugar", "icing sugar"},
                {"caster sugar", "sugar"},
                {"monk fruit sweetener", "erythritol-monk fruit blend"},
                {"cacao powder", "cocoa powder"},
                {"chocolate chips", "chocolate chip"},
                {"rapeseed oil", "canola oil"},
                {"creamed coconut", "coconut butter"},
                {"sesame paste", "tahini"},
                {"psyllium", "psyllium husk"},
                {"unsweetened soya milk", "soy milk"},
                {"Medjool dates", "medjool date"},
                {"blueberries", "blueberry"},
                {"vanilla", "vanilla extract"}};
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i].written, on_shelf(shelf, rows[i].written)->name, rows[i].name);
}

#define ONE(which) (1u << ALLERGEN_##which)

static void allergens_follow_the_food(void **state) {
    static const struct {
        const char *name;
        allergen_set holds;
    } rows[] = {{"whey protein isolate", ONE(MILK)},
                {"micellar casein", ONE(MILK)},
                {"egg white powder", ONE(EGG)},
                {"oat flour", ONE(OATS)},
                {"all-purpose flour", ONE(WHEAT)},
                {"spelt flour", ONE(SPELT)},
                {"rye flour", ONE(RYE)},
                {"vital wheat gluten", ONE(WHEAT)},
                {"almond meal", ONE(ALMOND)},
                {"peanut flour", ONE(PEANUT)},
                {"tahini", ONE(SESAME)},
                {"lupin flour", ONE(LUPIN)},
                {"firm tofu", ONE(SOY)},
                {"coconut flour", ONE(COCONUT)},
                {"butter", ONE(MILK)},
                {"milk chocolate", ONE(MILK)},
                {"pea protein isolate", 0},
                {"brown rice protein", 0},
                {"hemp protein powder", 0},
                {"sunflower seed butter", 0}};
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++)
        if (on_shelf(shelf, rows[i].name)->allergens != rows[i].holds)
            fail_msg("%s: allergens %#x, wanted %#x", rows[i].name,
                     on_shelf(shelf, rows[i].name)->allergens, rows[i].holds);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_family_is_stocked),
        cmocka_unit_test(the_core_figures_are_known),
        cmocka_unit_test(no_food_weighs_more_than_itself),
        cmocka_unit_test(every_group_of_figures_has_a_source),
        cmocka_unit_test(dry_things_know_their_water_uptake),
        cmocka_unit_test(proteins_set_as_their_kind_does),
        cmocka_unit_test(what_bakers_write_is_found),
        cmocka_unit_test(allergens_follow_the_food),
    };
    return cmocka_run_group_tests_name("reference pantry", tests, shelf_up, shelf_down);
}
