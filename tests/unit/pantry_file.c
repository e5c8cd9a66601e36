/* Pantry files: entries whole, labels of packs, and what is wrong with the others. */
#include "reading.h"

#include "read/pantry_file.h"
#include "reference/reference.h"

static pantry read_from(arena *a, const char *yaml, bool hers, problems *found) {
    *found = problems_in(a);
    pantry shelf = pantry_in(a);
    pantry_file_read(&shelf, "p.yaml", span_of(yaml), hers, found);
    return shelf;
}

static const char whole[] =
    "- name: oat flour\n"
    "  also: [ground oats, oatmeal flour]\n"
    "  plural: oat flours\n"
    "  family: flour\n"
    "  kind: oat\n"
    "  origin: plant\n"
    "  about: Oats milled fine.\n"
    "  per-100-g: {energy: 404, water: 8.55 g, protein: 14.66, fat: 9.12, saturates: 1.606,\n"
    "    carbohydrate: 65.7, fibre: 6.5, sugars: 800 mg, sodium: 0.019 g, calcium: 55 mg,\n"
    "    source: USDA SR28 20132}\n"
    "  measures:\n"
    "    cups: {low: 90, typical: 104, high: 120}\n"
    "    scoop: 30 g\n"
    "    source: common practice\n"
    "  water-uptake:\n"
    "    cold: {low: 1.2, typical: 2.2, high: 2.4}\n"
    "    heated: 2.6\n"
    "    source: \"estimate: of ours\"\n"
    "  heat-set: soft\n"
    "  sweetness: 0.1\n"
    "  sweetness-source: from memory\n"
    "  allergens: [oats, brazil nut]\n"
    "  may-contain: wheat\n"
    "  gluten: oats\n"
    "  amino-acids: {histidine: 2.24, valine: 5.17, lysine: }\n"
    "  amino-acids-source: USDA SR28 20132\n"
    "  digestibility: 86 %\n"
    "  digestibility-source: from memory\n"
    "  raw: flour\n"
    "  price: {pack: 0.5 kg, costs: 3.20}\n";

static void test_identity(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a, whole, false, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(shelf.count, 1);
    const ingredient *of = shelf.items[0];
    expect_words("name", of->name, "oat flour");
    expect_words("plural", of->plural, "oat flours");
    assert_int_equal(of->also_count, 2);
    expect_words("alias", of->also[1], "oatmeal flour");
    assert_ptr_equal(pantry_find(&shelf, span_of("Ground oats"), a), of);
    assert_int_equal(of->in, FAMILY_FLOUR);
    expect_words("kind", of->kind, "oat");
    assert_int_equal(of->from, ORIGIN_PLANT);
    expect_words("about", of->about, "Oats milled fine.");
    assert_int_equal(of->at.line, 1);
    assert_false(of->hers);
    arena_free(a);
}

static void test_figures(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a, whole, false, &found);
    const ingredient *of = shelf.items[0];
    expect_number("water", of->per_100_g.of[NUTRIENT_WATER], 8.55);
    expect_number("sugars in mg", of->per_100_g.of[NUTRIENT_SUGARS], 0.8);
    expect_number("sodium in g", of->per_100_g.of[NUTRIENT_SODIUM], 19);
    assert_false(nutrient_known(&of->per_100_g, NUTRIENT_IRON));
    assert_true(nutrient_known(&of->per_100_g, NUTRIENT_ENERGY_EU));
    expect_words("source", of->composition_source.text, "USDA SR28 20132");
    assert_int_equal(of->composition_source.sure, CERTAINTY_PUBLISHED);
    assert_int_equal(of->measures.count, 2);
    expect_words("cups is cup", of->measures.items[0].unit, "cup");
    expect_number("cup", of->measures.items[0].grams.low, 90);
    expect_number("scoop", of->measures.items[1].grams.high, 30);
    assert_int_equal(of->measures_source.sure, CERTAINTY_COMMON_PRACTICE);
    assert_true(of->has_uptake);
    expect_number("cold", of->cold_uptake.high, 2.4);
    expect_number("heated", of->heated_uptake.low, 2.6);
    assert_int_equal(of->uptake_source.sure, CERTAINTY_ESTIMATE);
    arena_free(a);
}

static void test_properties(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a, whole, false, &found);
    const ingredient *of = shelf.items[0];
    assert_int_equal(of->sets, HEAT_SET_SOFT);
    expect_number("sweetness", of->sweetness, 0.1);
    assert_int_equal(of->sweetness_source.sure, CERTAINTY_MEMORY);
    assert_int_equal(of->allergens, 1u << ALLERGEN_OATS | 1u << ALLERGEN_BRAZIL_NUT);
    assert_int_equal(of->may_contain, 1u << ALLERGEN_WHEAT);
    assert_int_equal(of->has_gluten, GLUTEN_OATS);
    assert_true(of->has_amino_acids[AMINO_HISTIDINE]);
    assert_false(of->has_amino_acids[AMINO_LYSINE]);
    expect_number("valine", of->amino_acids_g[AMINO_VALINE], 5.17);
    expect_number("digestibility", of->digestibility, 0.86);
    assert_int_equal(of->raw, RAW_FLOUR);
    expect_number("price", of->price_per_100_g, 0.64);
    arena_free(a);
}

/* Salt 0.5 g is 200 mg sodium: Regulation (EU) 1169/2011, Annex I (salt = sodium x 2.5). */
static const char label[] = "- name: club whey\n"
                            "  family: protein powder\n"
                            "  kind: whey\n"
                            "  origin: dairy\n"
                            "  label: {serving: 25 g, energy: 100, protein: 20 g, fat: 1.5,\n"
                            "    available-carbohydrate: 2, fibre: 0.5, salt: 0.125 g}\n";

static void test_label(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a, label, true, &found);
    expect_words("problems", printed(a, &found), "");
    const ingredient *of = shelf.items[0];
    expect_number("serving", of->serving_g, 25);
    expect_number("energy", of->per_100_g.of[NUTRIENT_ENERGY], 400);
    expect_number("protein", of->per_100_g.of[NUTRIENT_PROTEIN], 80);
    expect_number("total carbohydrate", of->per_100_g.of[NUTRIENT_CARBOHYDRATE], 10);
    expect_number("available", of->per_100_g.of[NUTRIENT_AVAILABLE_CARBOHYDRATE], 8);
    expect_number("sodium", of->per_100_g.of[NUTRIENT_SODIUM], 200);
    expect_words("source", of->composition_source.text, "label");
    assert_int_equal(of->composition_source.sure, CERTAINTY_LABEL);
    assert_true(of->hers);
    arena_free(a);
}

static void test_no_fibre_on_the_label(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a,
                             "- name: x\n  family: flour\n  origin: plant\n"
                             "  label: {serving: 10 g, protein: 1, fat: 1, "
                             "available-carbohydrate: 7}\n",
                             true, &found);
    expect_words("warning", printed(a, &found),
                 "p.yaml:4:70: warning: without \"fibre\" the total carbohydrate stays unknown "
                 "[pantry-figures]\n"
                 "  hint: add \"fibre\", as the maker or a table of foods has it\n");
    assert_false(nutrient_known(&shelf.items[0]->per_100_g, NUTRIENT_CARBOHYDRATE));
    assert_true(nutrient_known(&shelf.items[0]->per_100_g, NUTRIENT_AVAILABLE_CARBOHYDRATE));
    arena_free(a);
}

static void test_hers_overrides(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a, whole, false, &found);
    pantry_file_read(&shelf, "pantry/own.yaml",
                     span_of("- name: Oat flour\n  family: flour\n  origin: plant\n"
                             "  label: {serving: 100 g, protein: 13, fat: 7, carbohydrate: 70, "
                             "fibre: 9}\n"),
                     true, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(shelf.count, 1);
    const ingredient *of = pantry_find(&shelf, span_of("oat flour"), a);
    expect_number("her figure", of->per_100_g.of[NUTRIENT_PROTEIN], 13);
    assert_false(nutrient_known(&of->per_100_g, NUTRIENT_WATER));
    arena_free(a);
}

/* Each row follows these four lines. */
#define START                                                                                      \
    "- name: x\n  family: flour\n  origin: plant\n"                                                \
    "  per-100-g: {protein: 10, source: label}\n"

static const struct {
    const char *name, *yaml, *report;
} faults[] = {
    {"a strange key", START "  measurs: {cup: 1}\n",
     "p.yaml:5:3: error: an ingredient has no key \"measurs\"\n"
     "  hint: did you mean \"measures\"?\n"},
    {"no name", "- family: flour\n  origin: plant\n  per-100-g: {protein: 1, source: label}\n",
     "p.yaml:1:3: error: an ingredient needs \"name\"\n  hint: for example: name: oat flour\n"},
    {"no family", "- name: x\n  origin: plant\n  per-100-g: {protein: 1, source: label}\n",
     "p.yaml:1:3: error: an ingredient needs \"family\"\n"},
    {"a family misspelt",
     "- name: x\n  family: flower\n  origin: plant\n  per-100-g: {protein: 1, source: label}\n",
     "p.yaml:2:11: error: \"flower\" is not a value of \"family\"\n"
     "  hint: did you mean \"flour\"?\n"},
    {"no such origin",
     "- name: x\n  family: flour\n  origin: outer space\n  per-100-g: {protein: 1, source: "
     "label}\n",
     "p.yaml:3:11: error: \"outer space\" is not a value of \"origin\"\n"
     "  hint: it is one of: plant, dairy, egg, animal, bee, mineral\n"},
    {"an entry that is a word", "- oat flour\n",
     "p.yaml:1:3: error: an ingredient is made of keys and values\n"
     "  hint: write each part as \"key: value\"\n"},
    {"a nutrient misspelt",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {protien: 1, source: label}\n",
     "p.yaml:4:15: error: per-100-g has no key \"protien\"\n"
     "  hint: did you mean \"protein\"?\n"},
    {"too much in 100 g",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {protein: 120, source: label}\n",
     "p.yaml:4:24: error: no food has this much \"protein\"\n"
     "  hint: figures are for 100 g; those of a pack's serving go under \"label\"\n"},
    {"less than nothing",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {fat: -1, source: label}\n",
     "p.yaml:4:20: error: no food has this much \"fat\"\n"
     "  hint: figures are for 100 g; those of a pack's serving go under \"label\"\n"},
    {"too much in a serving",
     "- name: x\n  family: flour\n  origin: plant\n  label: {serving: 10 g, protein: 11}\n",
     "p.yaml:4:35: error: no food has this much \"protein\"\n"
     "  hint: figures are for 100 g; those of a pack's serving go under \"label\"\n"},
    {"kilojoules",
     "- name: x\n  family: flour\n  origin: plant\n  label: {serving: 10 g, energy: 150 kJ}\n",
     "p.yaml:4:34: error: \"energy\" must be a number in kcal\n"
     "  hint: for example: energy: 120 kcal\n"},
    {"a label without serving",
     "- name: x\n  family: flour\n  origin: plant\n  label: {protein: 11}\n",
     "p.yaml:4:10: error: a label needs \"serving\"\n  hint: for example: serving: 31 g\n"},
    {"a serving of nothing",
     "- name: x\n  family: flour\n  origin: plant\n  label: {serving: 0 g, protein: 1}\n",
     "p.yaml:4:20: error: a serving weighs more than nothing and less than 5 kg\n"
     "  hint: for example: serving: 31 g\n"},
    {"a label and figures", START "  label: {serving: 10 g, protein: 1}\n",
     "p.yaml:5:10: error: \"per-100-g\" and \"label\" say the same twice\n"
     "  hint: keep one of them\n"},
    {"sodium and salt",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {sodium: 40 mg, salt: 0.1, source: "
     "label}\n",
     "p.yaml:4:36: error: \"sodium\" and \"salt\" say the same twice\n"
     "  hint: keep one of them\n"},
    {"both carbohydrates",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {carbohydrate: 5, "
     "available-carbohydrate: 5, source: label}\n",
     "p.yaml:4:56: error: \"carbohydrate\" and \"available-carbohydrate\" say the same twice\n"
     "  hint: keep one of them\n"},
    {"figures without source",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {protein: 1}\n",
     "p.yaml:4:14: error: figures per 100 g have no source\n"
     "  hint: for example: source: label\n"},
    {"measures without source", START "  measures: {cup: 100}\n",
     "p.yaml:5:13: error: measures have no source\n  hint: for example: source: label\n"},
    {"a certainty that is none", START "  measures: {cup: 100, source: label, certainty: sure}\n",
     "p.yaml:5:50: error: \"sure\" is not a value of \"certainty\"\n"
     "  hint: it is one of: published, label, common practice, estimate, memory\n"},
    {"a weight as a measure", START "  measures: {oz: 28, source: label}\n",
     "p.yaml:5:14: error: \"oz\" can't be a household measure\n"
     "  hint: state what a cup, a tbsp, a tsp or a piece weighs\n"},
    {"a cup of nothing", START "  measures: {cup: 0, source: label}\n",
     "p.yaml:5:19: error: a \"cup\" weighs more than nothing\n  hint: for example: cup: 104\n"},
    {"uptake without heated", START "  water-uptake: {cold: 1, source: label}\n",
     "p.yaml:5:17: error: water-uptake needs \"heated\"\n"
     "  hint: for example: heated: {low: 1.5, typical: 2.6, high: 3.5}\n"},
    {"no such allergen", START "  allergens: [almonds, everything]\n",
     "p.yaml:5:15: error: \"almonds\" is not an allergen of the list\n"
     "  hint: did you mean \"almond\"?\n"
     "p.yaml:5:24: error: \"everything\" is not an allergen of the list\n"
     "  hint: it is one of: milk, egg, wheat, spelt, rye, barley, oats, soy, peanut, almond, "
     "hazelnut, walnut, cashew, pecan, brazil nut, pistachio, macadamia, pine nut, coconut, "
     "chestnut, sesame, lupin, fish, crustacean, mollusc, celery, mustard, sulphites\n"},
    {"an amino acid misspelt", START "  amino-acids: {lysin: 3}\n  amino-acids-source: label\n",
     "p.yaml:5:17: error: amino-acids has no key \"lysin\"\n"
     "  hint: did you mean \"lysine\"?\n"},
    {"digestibility over 1", START "  digestibility: 1.1\n  digestibility-source: label\n",
     "p.yaml:5:18: error: \"digestibility\" must be a share: 0 % to 100 %\n"},
    {"a price without pack", START "  price: {costs: 3}\n",
     "p.yaml:5:10: error: a price needs \"pack\"\n  hint: for example: pack: 500 g\n"},
    {"a pack of nothing", START "  price: {pack: 0 g, costs: 3}\n",
     "p.yaml:5:10: error: a pack weighs more than nothing and costs no less than nothing\n"
     "  hint: for example: price: {pack: 500 g, costs: 3.20}\n"},
    {"sweetness below nothing", START "  sweetness: -1\n  sweetness-source: label\n",
     "p.yaml:5:14: error: \"sweetness\" can't be below 0\n  hint: sugar is 1\n"},
    {"an amino acid of more than all",
     START "  amino-acids: {lysine: 101}\n  amino-acids-source: label\n",
     "p.yaml:5:25: error: no protein has this much lysine\n  hint: g per 100 g of protein\n"},
    {"raw meat", START "  raw: meat\n",
     "p.yaml:5:8: error: \"meat\" is not a value of \"raw\"\n"
     "  hint: it is one of: egg, flour\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = read_from(a, faults[i].yaml, false, &found);
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        if (shelf.count)
            fail_msg("%s: the entry was kept", faults[i].name);
        arena_free(a);
    }
}

/* What is an error in the reference, or nothing, is a warning in a site's own pantry. */
static const struct {
    const char *name, *yaml, *report;
} warnings[] = {
    {"figures without source",
     "- name: x\n  family: flour\n  origin: plant\n  per-100-g: {protein: 1}\n",
     "p.yaml:4:14: warning: figures per 100 g have no source [source]\n"
     "  hint: for example: source: label\n"},
    {"no figures", "- name: x\n  family: flour\n  origin: plant\n",
     "p.yaml:1:3: warning: \"x\" has no figures: no recipe with it can have macros "
     "[pantry-figures]\n"
     "  hint: add \"label\" with what the pack says\n"},
    {"polyols of no kind",
     "- name: x\n  family: sweetener\n  origin: plant\n  per-100-g: {carbohydrate: 99, polyols: "
     "99, source: label}\n",
     "p.yaml:4:42: warning: \"polyols\" without \"polyol\": they differ in energy "
     "[pantry-figures]\n"
     "  hint: for example: polyol: erythritol\n"},
};

static void test_warnings(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(warnings); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = read_from(a, warnings[i].yaml, true, &found);
        expect_words(warnings[i].name, printed(a, &found), warnings[i].report);
        if (shelf.count != 1)
            fail_msg("%s: the entry was left out", warnings[i].name);
        arena_free(a);
    }
}

static void test_others_are_read_on(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = read_from(a,
                             "- name: bad\n- name: good\n  family: flour\n  origin: plant\n"
                             "  per-100-g: {protein: 1, source: label}\n",
                             false, &found);
    assert_int_equal(shelf.count, 1);
    expect_words("kept", shelf.items[0]->name, "good");
    assert_true(found.errors > 0);
    arena_free(a);
}

static void test_reference(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = pantry_in(a);
    for (size_t i = 0; i < reference_pantry_count; i++)
        pantry_file_read(&shelf, reference_pantry[i].name, reference_pantry[i].bytes, false,
                         &found);
    expect_words("the reference pantry", printed(a, &found), "");
    assert_true(shelf.count >= 160);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_identity),
        cmocka_unit_test(test_figures),
        cmocka_unit_test(test_properties),
        cmocka_unit_test(test_label),
        cmocka_unit_test(test_no_fibre_on_the_label),
        cmocka_unit_test(test_hers_overrides),
        cmocka_unit_test(test_faults),
        cmocka_unit_test(test_warnings),
        cmocka_unit_test(test_others_are_read_on),
        cmocka_unit_test(test_reference),
    };
    return cmocka_run_group_tests_name("pantry_file", tests, NULL, NULL);
}
