/* Swap rules: whole ones, a recipe's own, and what is wrong with the others. */
#include "reading.h"
#include "small_shelf.h"

#include "read/rules.h"
#include "reference/reference.h"

static swap_rules read_from(arena *a, const char *yaml, const pantry *shelf, problems *found) {
    *found = problems_in(a);
    swap_rules all = {0};
    rules_read(a, "r.yaml", span_of(yaml), SAID_BY_OWN_RULE, shelf, &all, found);
    return all;
}

static const char whole[] = "- rule: whey-where-egg-white-sets\n"
                            "  replace: {family: protein powder, origin: [plant, egg]}\n"
                            "  with: {family: protein powder, kind: whey, name: Whey isolate}\n"
                            "  when:\n"
                            "    kind: [Griddle cake, waffle]\n"
                            "    set-by: [egg white, egg]\n"
                            "    moistened-by: fruit puree\n"
                            "    leavened: no\n"
                            "    baked: yes\n"
                            "    has: [{family: flour}, {kind: almond}]\n"
                            "    lacks: {family: protein powder, kind: pea}\n"
                            "    share: {family: flour, over: 20 %, under: 60 %}\n"
                            "    replaced-share: {over: 10 %}\n"
                            "  verdict: avoid\n"
                            "  amount: {volume: 1 1/2}\n"
                            "  liquid: keep\n"
                            "  also: Let it stand.\n"
                            "  expect: Thin batter.\n"
                            "  because: It pushes water out.\n"
                            "  basis: \"published: a journal, 2018\"\n";

static void test_sides(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    swap_rules all = read_from(a, whole, &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(all.count, 1);
    const swap_rule *r = &all.items[0];
    expect_words("id", r->id, "whey-where-egg-white-sets");
    assert_int_equal(r->at.line, 1);
    assert_int_equal(r->by, SAID_BY_OWN_RULE);
    assert_int_equal(r->replace.count, 1);
    assert_int_equal(r->replace.items[0].families, 1u << FAMILY_PROTEIN_POWDER);
    assert_int_equal(r->replace.items[0].origins, 1u << ORIGIN_PLANT | 1u << ORIGIN_EGG);
    assert_int_equal(r->with.count, 1);
    expect_words("kind", r->with.items[0].kinds.items[0].at, "whey");
    expect_words("alias to name", r->with.items[0].names.items[0].at, "whey protein isolate");
    assert_int_equal(r->says, VERDICT_AVOID);
    assert_int_equal(r->amount, AMOUNT_VOLUME);
    expect_number("ratio", r->ratio, 1.5);
    assert_true(r->keep_liquid);
    expect_words("also", r->also, "Let it stand.");
    expect_words("expect", r->expect, "Thin batter.");
    expect_words("because", r->because, "It pushes water out.");
    expect_words("basis", r->basis, "published: a journal, 2018");
    arena_free(a);
}

static void test_facts(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const conditions when = read_from(a, whole, &shelf, &found).items[0].when;
    assert_int_equal(when.kinds.count, 2);
    expect_words("kind is folded", when.kinds.items[0].at, "griddle cake");
    assert_int_equal(when.settings, 1u << SETTING_EGG_WHITE | 1u << SETTING_EGG);
    assert_int_equal(when.moistures, 1u << MOISTURE_FRUIT_PUREE);
    assert_int_equal(when.leavened, ANSWER_NO);
    assert_int_equal(when.baked, ANSWER_YES);
    assert_int_equal(when.has.count, 2);
    assert_int_equal(when.lacks.count, 1);
    assert_int_equal(when.shares.count, 1);
    expect_number("over", when.shares.items[0].over, 0.2);
    expect_number("under", when.shares.items[0].under, 0.6);
    assert_true(when.has_replaced_share);
    expect_number("replaced over", when.replaced_over, 0.1);
    expect_number("replaced under", when.replaced_under, 1);
    /* kind, set-by, moistened-by, leavened, baked, two has, lacks, share, replaced-share */
    assert_int_equal(when.count, 10);
    arena_free(a);
}

static void test_same_kind(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const char *yaml = "- rule: a\n  replace: {family: flour}\n  with: {same: kind}\n"
                       "  verdict: works\n  because: Alike.\n  basis: trial\n";
    swap_rules all = read_from(a, yaml, &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(all.count, 1);
    assert_true(all.items[0].with.items[0].same_kind && !all.items[0].replace.items[0].same_kind);
    arena_free(a);
}

static void test_two_for_one(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    swap_rules all =
        read_from(a,
                  "- rule: two\n"
                  "  replace: [{family: flour, kind: coconut}, {family: fruit pur\u00e9e}]\n"
                  "  with: {family: nut butter}\n  verdict: adjust\n  amount: {match: balance}\n"
                  "  because: So.\n  basis: from memory\n",
                  &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(all.items[0].replace.count, 2);
    assert_int_equal(all.items[0].replace.items[1].families, 1u << FAMILY_FRUIT_PUREE);
    assert_int_equal(all.items[0].amount, AMOUNT_MATCH_BALANCE);
    assert_int_equal(all.items[0].when.count, 0);
    assert_false(all.items[0].keep_liquid);
    arena_free(a);
}

static const struct {
    const char *name, *amount;
    amount_rule rule;
    double ratio;
} amounts[] = {
    {"none stated", "", AMOUNT_UNSTATED, 1},
    {"weight", "  amount: {weight: 1}\n", AMOUNT_WEIGHT, 1},
    {"a fraction by weight", "  amount: {weight: 6/5}\n", AMOUNT_WEIGHT, 1.2},
    {"volume", "  amount: {volume: 1/2}\n", AMOUNT_VOLUME, 0.5},
    {"a decimal comma in quotes", "  amount: {volume: '0,25'}\n", AMOUNT_VOLUME, 0.25},
    {"uptake", "  amount: {match: water uptake}\n", AMOUNT_MATCH_WATER_UPTAKE, 1},
    {"protein", "  amount: {match: protein}\n", AMOUNT_MATCH_PROTEIN, 1},
    {"sweetness", "  amount: {match: sweetness}\n", AMOUNT_MATCH_SWEETNESS, 1},
};

#define RULE                                                                                       \
    "- rule: a\n  replace: {kind: pea}\n  with: {kind: whey}\n  verdict: works\n"                  \
    "  because: So.\n  basis: trial\n"

static void test_amounts(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(amounts); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        char *yaml = arena_format(a, RULE "%s", amounts[i].amount);
        swap_rules all = read_from(a, yaml, &shelf, &found);
        expect_words(amounts[i].name, printed(a, &found), "");
        if (all.items[0].amount != amounts[i].rule)
            fail_msg("%s: another way", amounts[i].name);
        expect_number(amounts[i].name, all.items[0].ratio, amounts[i].ratio);
        arena_free(a);
    }
}

/* Rules with one thing wrong: the sides, then what follows them. */
#define SIDES "- rule: a\n  replace: {kind: pea}\n  with: {kind: whey}\n"
#define END   "  verdict: works\n  because: So.\n  basis: trial\n"

static const struct {
    const char *name, *yaml, *report;
} faults[] = {
    {"a strange key", SIDES END "  wen: {baked: yes}\n",
     "r.yaml:7:3: error: a rule has no key \"wen\"\n  hint: did you mean \"when\"?\n"},
    {"no verdict", SIDES "  because: So.\n  basis: trial\n",
     "r.yaml:1:3: error: a rule needs \"verdict\"\n"},
    {"untried is no verdict to give", SIDES "  verdict: untried\n  because: So.\n  basis: trial\n",
     "r.yaml:4:12: error: \"untried\" is not a value of \"verdict\"\n"
     "  hint: it is one of: works, adjust, different, avoid\n"},
    {"no reason", SIDES "  verdict: works\n  basis: trial\n",
     "r.yaml:1:3: error: a rule needs \"because\"\n"
     "  hint: for example: because: Both set firm on heat and push water out.\n"},
    {"a basis that is none", SIDES "  verdict: works\n  because: So.\n  basis: everybody knows\n",
     "r.yaml:6:10: error: \"basis\" must say what the rule rests on\n"
     "  hint: it begins with: common practice, published, trial, from memory or estimate\n"},
    {"a basis that only begins like one",
     SIDES "  verdict: works\n  because: So.\n  basis: trials of others\n",
     "r.yaml:6:10: error: \"basis\" must say what the rule rests on\n"
     "  hint: it begins with: common practice, published, trial, from memory or estimate\n"},
    {"a name that is no slug",
     "- rule: Whey for Pea\n  replace: {kind: pea}\n  with: {kind: whey}\n" END,
     "r.yaml:1:9: error: the name of a rule is made of small letters, digits and hyphens\n"
     "  hint: for example: rule: whey-for-pea\n"},
    {"a name used twice", SIDES END SIDES END,
     "r.yaml:7:3: error: two rules are called \"a\"\n"
     "  hint: the other stands in r.yaml, line 1\n"},
    {"nothing selected", "- rule: a\n  replace: {}\n  with: {kind: whey}\n" END,
     "r.yaml:2:12: error: a choice of ingredients needs a name, a family, a kind or an origin\n"
     "  hint: for example: {family: protein powder, kind: whey}\n"},
    {"a side that is a word", "- rule: a\n  replace: pea\n  with: {kind: whey}\n" END,
     "r.yaml:2:12: error: a choice of ingredients is made of keys and values\n"
     "  hint: write each part as \"key: value\"\n"},
    {"three replaced",
     "- rule: a\n  replace: [{kind: pea}, {kind: white}, {kind: apple}]\n"
     "  with: {kind: whey}\n" END,
     "r.yaml:2:12: error: \"replace\" lists 3 choices of ingredients\n"
     "  hint: a rule replaces one or two by one, or one by two\n"},
    {"a family misspelt",
     "- rule: a\n  replace: {family: protien powder}\n  with: {kind: whey}\n" END,
     "r.yaml:2:21: error: \"protien powder\" is not a value of \"family\"\n"
     "  hint: did you mean \"protein powder\"?\n"},
    {"a name not in the pantry",
     "- rule: a\n  replace: {name: almond buter}\n  with: {kind: whey}\n" END,
     "r.yaml:2:19: error: the pantry has no \"almond buter\"\n"
     "  hint: did you mean \"almond butter\"?\n"},
    {"a rule that is a word", "- a\n",
     "r.yaml:1:3: error: a rule is made of keys and values\n"
     "  hint: write each part as \"key: value\"\n"},
    {"no name", "- replace: {kind: pea}\n  with: {kind: whey}\n" END,
     "r.yaml:1:3: error: a rule needs \"rule\"\n"
     "  hint: for example: rule: whey-for-pea-in-cookies\n"},
    {"nothing replaced", "- rule: a\n  with: {kind: whey}\n" END,
     "r.yaml:1:3: error: a rule needs \"replace\"\n"
     "  hint: for example: replace: {family: protein powder, origin: plant}\n"},
    {"an amount that matches nothing", SIDES END "  amount: {match: colour}\n",
     "r.yaml:7:19: error: \"colour\" is not a value of \"match\"\n"
     "  hint: it is one of: water uptake, protein, sweetness, balance\n"},
    {"an amount as a list", SIDES END "  amount: {weight: [1]}\n",
     "r.yaml:7:20: error: \"weight\" must be text\n  hint: for example: weight: 210 g\n"},
    {"a share by no ingredient", SIDES END "  when: {share: {over: 20 %}}\n",
     "r.yaml:7:17: error: a choice of ingredients needs a name, a family, a kind or an origin\n"
     "  hint: for example: {family: protein powder, kind: whey}\n"},
    {"a share in grams", SIDES END "  when: {share: {family: flour, over: 20 g}}\n",
     "r.yaml:7:39: error: \"over\" must be a share: 0 % to 100 %\n"
     "  hint: for example: over: 20 %\n"},
    {"no such setting", SIDES END "  when: {set-by: concrete}\n",
     "r.yaml:7:18: error: \"concrete\" is not a value of \"set-by\"\n"
     "  hint: it is one of: egg white, egg, whey, gluten, gel, starch, nothing\n"},
    {"a fact misspelt", SIDES END "  when: {leavend: yes}\n",
     "r.yaml:7:10: error: \"when\" has no key \"leavend\"\n  hint: did you mean \"leavened\"?\n"},
    {"a share of nothing in particular", SIDES END "  when: {share: {family: flour}}\n",
     "r.yaml:7:17: error: a share needs \"over\" or \"under\"\n"
     "  hint: for example: share: {family: flour, over: 20 %}\n"},
    {"a share that none is",
     SIDES END "  when: {share: {family: flour, over: 60 %, under: 20 %}}\n",
     "r.yaml:7:17: error: no share is over the one and under the other at once\n"
     "  hint: for example: share: {family: flour, over: 20 %}\n"},
    {"a replaced share that none is",
     SIDES END "  when: {replaced-share: {over: 30 %, under: 30 %}}\n",
     "r.yaml:7:26: error: no share is over the one and under the other at once\n"
     "  hint: for example: replaced-share: {over: 10 %, under: 30 %}\n"},
    {"two amounts", SIDES END "  amount: {weight: 1, volume: 1}\n",
     "r.yaml:7:11: error: an amount is one of \"weight\", \"volume\" and \"match\"\n"
     "  hint: for example: amount: {weight: 1}\n"},
    {"an amount of nothing", SIDES END "  amount: {weight: 0}\n",
     "r.yaml:7:20: error: \"weight\" must be how much of the new replaces 1 of the old\n"
     "  hint: for example: amount: {volume: 1/2}\n"},
    {"an amount in words", SIDES END "  amount: {volume: the same}\n",
     "r.yaml:7:20: error: \"volume\" must be how much of the new replaces 1 of the old\n"
     "  hint: for example: amount: {volume: 1/2}\n"},
    {"too much kept",
     "- rule: a\n  replace: [{kind: pea}, {kind: white}]\n  with: {kind: whey}\n" END
     "  amount: {match: balance, keep: [fat, bulk, weight]}\n",
     "r.yaml:7:34: error: one ingredient in the place of two can keep two things, not 3\n"
     "  hint: for example: keep: [fat, bulk]\n"},
    {"kept what",
     "- rule: a\n  replace: {kind: pea}\n  with: [{kind: white}, {kind: whey}]\n" END
     "  amount: {match: balance, keep: fats}\n",
     "r.yaml:7:34: error: \"fats\" is not something to keep\n  hint: did you mean \"fat\"?\n"},
    {"a share for each",
     "- rule: a\n  replace: [{kind: pea}, {kind: white}]\n  with: {kind: whey}\n" END
     "  amount: {match: balance, most: [50 %]}\n",
     "r.yaml:7:34: error: \"most\" needs a share for each replaced ingredient\n"
     "  hint: for example: most: [100 %, 25 %]\n"},
    {"keep without balance", SIDES END "  amount: {match: protein, keep: fat}\n",
     "r.yaml:7:11: error: \"keep\" and \"most\" go with \"match: balance\"\n"
     "  hint: for example: amount: {match: balance, keep: [fat, bulk]}\n"},
    {"two by two",
     "- rule: a\n  replace: [{kind: pea}, {kind: white}]\n"
     "  with: [{kind: whey}, {kind: apple}]\n" END,
     "r.yaml:3:9: error: two are replaced by two\n"
     "  hint: a rule replaces one or two by one, or one by two\n"},
    {"balance of one", SIDES END "  amount: {match: balance}\n",
     "r.yaml:7:19: error: \"balance\" is for two ingredients replaced by one, or one by two\n"
     "  hint: list two under \"replace\" or under \"with\"\n"},
    {"the same as what", "- rule: a\n  replace: {family: flour}\n  with: {same: family}\n" END,
     "r.yaml:3:16: error: \"family\" is not a value of \"same\"\n  hint: it is one of: kind\n"},
    {"the same on the wrong side",
     "- rule: a\n  replace: {same: kind}\n  with: {family: flour}\n" END,
     "r.yaml:2:13: error: a choice of ingredients has no key \"same\"\n"
     "  hint: did you mean \"name\"?\n"},
    {"liquid neither way", SIDES END "  liquid: more\n",
     "r.yaml:7:11: error: \"more\" is not a value of \"liquid\"\n"
     "  hint: it is one of: rebalance, keep\n"},
    {"keys where a list is meant", "rule: a\n",
     "r.yaml:1:1: error: this must be a list, each item a rule\n"
     "  hint: begin each item with \"- \"\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        (void)read_from(a, faults[i].yaml, &shelf, &found);
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        arena_free(a);
    }
}

static void test_kind_of_nothing(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    swap_rules all = read_from(a,
                               "- rule: a\n  replace: {family: flour, kind: coconutt}\n"
                               "  with: {kind: whey isolat}\n" END,
                               &shelf, &found);
    assert_int_equal(all.count, 1);
    expect_words("warnings", printed(a, &found),
                 "r.yaml:2:34: warning: no ingredient of that family is of the kind \"coconutt\" "
                 "[rule-kind]\n"
                 "  hint: did you mean \"coconut\"?\n"
                 "r.yaml:3:16: warning: no ingredient is of the kind \"whey isolat\" [rule-kind]\n"
                 "  hint: did you mean \"whey isolate\"?\n");
    arena_free(a);
}

static swap_rules read_own_from(arena *a, const char *yaml, const pantry *shelf, problems *found) {
    *found = problems_in(a);
    swap_rules own = {0};
    const yaml_node *list = yaml_read(a, "x.md", span_of(yaml), 1, found);
    rules_read_own(a, list, shelf, &own, found);
    return own;
}

static void test_own(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    swap_rules own = read_own_from(
        a,
        "- {replace: Pea protein powders, with: whey isolate, verdict: adjust, note: A spoon "
        "of water.}\n",
        &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(own.count, 1);
    assert_int_equal(own.items[0].by, SAID_BY_RECIPE);
    assert_int_equal(own.items[0].says, VERDICT_ADJUST);
    expect_words("replaced", own.items[0].replace.items[0].names.items[0].at, "pea protein powder");
    expect_words("new", own.items[0].with.items[0].names.items[0].at, "whey protein isolate");
    expect_words("note", own.items[0].also, "A spoon of water.");
    own = read_own_from(
        a,
        "- {replace: [coconut flour, apple pur\u00e9e], with: almond butter, "
        "verdict: works, amount: {match: balance, keep: [fat]}}\n"
        "- {replace: egg white, with: [whey isolate, almond butter], verdict: avoid}\n",
        &shelf, &found);
    expect_words("problems of two", printed(a, &found), "");
    assert_int_equal(own.items[0].replace.count, 2);
    assert_int_equal(own.items[0].keeps, 1u << KEPT_FAT);
    assert_int_equal(own.items[1].with.count, 2);
    arena_free(a);
}

static const struct {
    const char *name, *yaml, *report;
} own_faults[] = {
    {"an unknown name", "- {replace: pea protein powder, with: sand, verdict: avoid}\n",
     "x.md:1:39: error: the pantry has no \"sand\"\n"
     "  hint: add it to the pantry, in pantry/*.yaml\n"},
    {"no verdict", "- {replace: pea protein powder, with: egg white}\n",
     "x.md:1:3: error: a swap needs \"verdict\"\n"},
    {"a key of rules", "- {replace: egg white, with: egg white, verdict: works, when: x}\n",
     "x.md:1:57: error: a swap has no key \"when\"\n"
     "  hint: it is one of: replace, with, verdict, amount, liquid, expect, because, note\n"},
    {"two by two",
     "- {replace: [egg white, almond butter], with: [whey isolate, coconut flour], verdict: "
     "avoid}\n",
     "x.md:1:47: error: two are replaced by two\n"
     "  hint: a rule replaces one or two by one, or one by two\n"},
    {"a word", "- egg white\n",
     "x.md:1:3: error: a swap is made of keys and values\n"
     "  hint: write it as {replace: whey, with: pea protein powder, verdict: adjust}\n"},
};

static void test_own_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(own_faults); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        swap_rules own = read_own_from(a, own_faults[i].yaml, &shelf, &found);
        expect_words(own_faults[i].name, printed(a, &found), own_faults[i].report);
        if (own.count)
            fail_msg("%s: was kept", own_faults[i].name);
        arena_free(a);
    }
}

/* Read as a site's own, so that kinds are checked too. */
static void test_reference(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = pantry_in(a);
    swap_rules all = {0};
    for (size_t i = 0; i < reference_pantry_count; i++)
        pantry_file_read(&shelf, reference_pantry[i].name, reference_pantry[i].bytes, false,
                         &found);
    for (size_t i = 0; i < reference_rules_count; i++)
        rules_read(a, reference_rules[i].name, reference_rules[i].bytes, SAID_BY_OWN_RULE, &shelf,
                   &all, &found);
    expect_words("the reference rules", printed(a, &found), "");
    assert_true(all.count >= 60);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_sides),           cmocka_unit_test(test_facts),
        cmocka_unit_test(test_same_kind),       cmocka_unit_test(test_two_for_one),
        cmocka_unit_test(test_amounts),         cmocka_unit_test(test_faults),
        cmocka_unit_test(test_kind_of_nothing), cmocka_unit_test(test_own),
        cmocka_unit_test(test_own_faults),      cmocka_unit_test(test_reference),
    };
    return cmocka_run_group_tests_name("rules", tests, NULL, NULL);
}
