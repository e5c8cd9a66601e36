/* What bakers of high-protein recipes know about swapping, asked of the reference pantry and the
 * reference rules. All verdicts and amounts here are common practice, no source: the trade agrees
 * on them and nobody has published them. The recipes are our own; each build stands in two forms,
 * so that a rule which fits only one of them fails. */
#include "checks.h"

#include "read/pantry_file.h"
#include "read/recipe.h"
#include "read/rules.h"
#include "reference/reference.h"
#include "swap/note.h"

/* -- recipes
 * ---------------------------------------------------------------------------------------- */

#define RECIPE(title, kind, more, lines)                                                           \
    "---\ntitle: " title "\nmakes: 8 pieces\nportion: 2 pieces\nkind: " kind "\n" more             \
    "ingredients:\n" lines "---\n1. Mix and bake.\n"
#define OVEN    "oven: 180 C\nminutes: {prepare: 10, bake: 15}\n"
#define GRIDDLE "pan: griddle\nminutes: {prepare: 10, bake: 8}\n"

static const char pea_rounds[] =
    RECIPE("Pea rounds", "griddle cake", GRIDDLE,
           "  - 40 g pea protein powder\n  - 1/2 cup egg whites\n  - 2 tbsp water\n");
static const char rice_rounds[] =
    RECIPE("Rice rounds", "griddle cake", GRIDDLE,
           "  - 1/2 cup brown rice protein\n  - 4 large egg whites\n  - 1/2 mashed banana\n"
           "  - 1/2 tsp baking powder\n  - 1/2 tsp cinnamon\n");
static const char pea_almond_cake[] =
    RECIPE("Pea and almond cake", "cake", OVEN,
           "  - 60 g pea protein powder\n  - 3/4 cup egg whites\n  - 50 g almond meal\n"
           "  - 1 tsp baking powder\n  - 2 tbsp maple syrup\n");
static const char blend_almond_muffins[] =
    RECIPE("Blend and almond muffins", "muffin", OVEN,
           "  - 50 g pea-rice protein blend\n  - 150 g egg whites\n  - 1 cup almond meal\n"
           "  - 100 g apple purée\n  - 1 1/2 tsp baking powder\n  - 40 g erythritol\n");
static const char rice_crust[] =
    RECIPE("Rice crust", "crust", OVEN,
           "  - 60 g brown rice protein\n  - 1/4 cup almond butter\n  - 3 tbsp water\n");
static const char pea_cashew_crust[] =
    RECIPE("Pea and cashew crust", "crust", OVEN,
           "  - 50 g pea protein powder\n  - 20 g coconut flour\n  - 80 g cashew butter\n"
           "  - 60 g water\n  - a pinch of salt\n");
static const char whey_brownie[] =
    RECIPE("Whey brownie", "brownie", OVEN,
           "  - 60 g whey protein concentrate\n  - 1/2 cup apple purée\n  - 1/4 cup almond butter\n"
           "  - 2 tbsp cocoa powder\n");
static const char isolate_brownie[] =
    RECIPE("Isolate brownie", "brownie", OVEN,
           "  - 3/4 cup whey protein isolate\n  - 3/4 cup pumpkin purée\n  - 90 g peanut butter\n"
           "  - 25 g cocoa powder\n  - 1/2 tsp baking powder\n  - 30 g maple syrup\n");
static const char whey_cookie[] =
    RECIPE("Whey cookie", "cookie", OVEN,
           "  - 60 g whey protein concentrate\n  - 1/3 cup apple purée\n  - 1 tbsp coconut flour\n"
           "  - 1/2 tsp baking powder\n");
static const char isolate_cookie[] =
    RECIPE("Isolate cookie", "cookie", OVEN,
           "  - 90 g whey protein isolate\n  - 120 g apple purée\n  - 15 g coconut flour\n"
           "  - 1 tsp baking powder\n  - 20 g erythritol\n  - 1 tsp vanilla extract\n");
static const char oat_cake[] =
    RECIPE("Oat cake", "cake", OVEN,
           "  - 1/2 cup oat flour\n  - 30 g whey protein isolate\n  - 2 eggs\n"
           "  - 1/2 cup greek yogurt\n  - 1 tsp baking powder\n");
static const char coconut_cake[] =
    RECIPE("Coconut cake", "cake", OVEN,
           "  - 1/4 cup coconut flour\n  - 30 g whey protein isolate\n  - 2 eggs\n"
           "  - 1/2 cup apple purée\n  - 1 tsp baking powder\n");
static const char butter_bars[] =
    RECIPE("Butter bars", "no-bake", "",
           "  - 60 g whey protein isolate\n  - 1/2 cup almond butter\n  - 60 g honey\n"
           "  - 1 cup rolled oats\n");
static const char butter_cookies[] =
    RECIPE("Butter cookies", "cookie", OVEN,
           "  - 120 g cashew butter\n  - 1 egg\n  - 30 g oat flour\n  - 40 g coconut sugar\n");
static const char coconut_butter_bars[] =
    RECIPE("Coconut butter bars", "bar", OVEN,
           "  - 100 g coconut butter\n  - 50 g pea protein powder\n  - 60 g maple syrup\n");
static const char authors_word[] =
    RECIPE("Rounds with the author's word", "griddle cake", GRIDDLE,
           "  - 40 g pea protein powder\n  - 1/2 cup egg whites\n"
           "swaps:\n  - {replace: pea protein powder, with: whey protein isolate, verdict: works, "
           "note: With half the egg white it holds.}\n");
static const char little_pea_cake[] =
    RECIPE("Plain cake with a little pea", "cake", OVEN,
           "  - 120 g all-purpose flour\n  - 20 g pea protein powder\n  - 120 g greek yogurt\n"
           "  - 60 g sugar\n  - 40 g canola oil\n  - 2 tsp baking powder\n");

/* -- the kitchen
 * ------------------------------------------------------------------------------------- */

typedef struct {
    arena *room;
    pantry shelf;
    rule_book book;
    problems found;
} kitchen;

static int open_kitchen(void **state) {
    arena *room = arena_new();
    kitchen *k = ARENA_NEW(room, kitchen);
    k->room = room;
    k->found = problems_in(room);
    k->shelf = pantry_in(room);
    for (size_t i = 0; i < reference_pantry_count; i++)
        pantry_file_read(&k->shelf, reference_pantry[i].name, reference_pantry[i].bytes, false,
                         &k->found);
    k->book.shelf = &k->shelf;
    for (size_t i = 0; i < reference_rules_count; i++)
        rules_read(room, reference_rules[i].name, reference_rules[i].bytes, SAID_BY_REFERENCE,
                   &k->shelf, &k->book.rules, &k->found);
    rule_book_index(room, &k->book);
    *state = k;
    return 0;
}

static int close_kitchen(void **state) {
    arena_free(((kitchen *)*state)->room);
    return 0;
}

static void no_problems(const char *row, const kitchen *k) {
    for (size_t i = 0; i < k->found.count; i++)
        if (k->found.items[i].level == PROBLEM_ERROR)
            fail_msg("%s: %s:%u: %s", row, k->found.items[i].at.file, k->found.items[i].at.line,
                     k->found.items[i].message);
}

static const ingredient *named(kitchen *k, const char *name) {
    const ingredient *what = pantry_find(&k->shelf, span_of(name), k->room);
    if (!what)
        fail_msg("%s is not in the pantry", name);
    return what;
}

static recipe_facts facts_in(kitchen *k, const char *bytes) {
    recipe *of =
        recipe_read(k->room, "recipes/a.md", span_of(bytes), &k->shelf, CUPS_US, &k->found);
    if (!of)
        fail_msg("can't read: %s", bytes);
    no_problems(bytes, k);
    return facts_of(k->room, of, &k->shelf);
}

static size_t line_of(kitchen *k, const recipe_facts *about, const char *name) {
    const ingredient *what = named(k, name);
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (about->of->lines.items[i].what == what)
            return i;
    fail_msg("%s: no %s in it", about->of->title, name);
    return 0;
}

static swap_note ask(kitchen *k, const recipe_facts *about, const char *from, const char *to) {
    return note_of(k->room, &k->book, about, line_of(k, about, from), named(k, to));
}

/* -- the facts
 * ---------------------------------------------------------------------------------------- */

typedef struct {
    const char *fact, *recipe, *from, *to;
    verdict says;
    const char *expect; /* words the note must say of the outcome; null: not asked */
} swap_row;

static void answers(kitchen *k, const swap_row *rows, size_t count) {
    for (size_t i = 0; i < count; i++) {
        recipe_facts about = facts_in(k, rows[i].recipe);
        swap_note note = ask(k, &about, rows[i].from, rows[i].to);
        char *row = arena_format(k->room, "%s: %s, %s by %s", rows[i].fact, about.of->title,
                                 rows[i].from, rows[i].to);
        same_text(row, verdict_word(note.says), verdict_word(rows[i].says));
        if (rows[i].expect && (!note.expect || !strstr(note.expect, rows[i].expect)))
            fail_msg("%s: expects \"%s\", not \"%s\"", row, note.expect, rows[i].expect);
        same_text(row, note.basis, "common practice");
    }
}

/* Facts 1 to 3; common practice, no source. */
static void whey_where_plant_powder_was(void **state) {
    static const swap_row rows[] = {
        {"1", pea_rounds, "pea protein isolate", "whey protein isolate", VERDICT_AVOID, "thin"},
        {"1", pea_rounds, "pea protein isolate", "whey protein concentrate", VERDICT_AVOID,
         "dry and rubbery"},
        {"1", rice_rounds, "brown rice protein", "whey protein isolate", VERDICT_AVOID, "rubbery"},
        {"2", pea_almond_cake, "pea protein isolate", "whey protein isolate", VERDICT_AVOID,
         "spongy and yet dry"},
        {"2", blend_almond_muffins, "pea-rice protein blend", "whey protein concentrate",
         VERDICT_AVOID, "hard, crisp outside"},
        {"3", rice_crust, "brown rice protein", "whey protein isolate", VERDICT_AVOID, "no flake"},
        {"3", pea_cashew_crust, "pea protein isolate", "whey protein concentrate", VERDICT_AVOID,
         "dry and hard"}};
    answers(*state, rows, COUNT(rows));
}

/* Facts 4 and 5; common practice, no source. */
static void plant_powder_where_whey_was(void **state) {
    static const swap_row rows[] = {
        {"4", whey_brownie, "whey protein concentrate", "pea protein isolate", VERDICT_DIFFERENT,
         "like a thick cookie"},
        {"4", isolate_brownie, "whey protein isolate", "pea-rice protein blend", VERDICT_DIFFERENT,
         "Not a brownie: a stiff batter"},
        {"4", isolate_brownie, "whey protein isolate", "hemp protein powder", VERDICT_DIFFERENT,
         "Still good to eat"},
        {"5", whey_cookie, "whey protein concentrate", "pea protein isolate", VERDICT_AVOID,
         "more liquid does not rescue it"},
        {"5", isolate_cookie, "whey protein isolate", "brown rice protein", VERDICT_AVOID,
         "never becomes a dough"}};
    answers(*state, rows, COUNT(rows));
}

/* Fact 6: half the volume of coconut flour for oat flour, drier crumb, and twice the other way;
 * common practice, no source. Cup weights: oat flour 104 g, USDA SR28 20132; coconut flour 112 g,
 * common practice. */
static void coconut_flour_goes_half_as_far_by_volume(void **state) {
    static const swap_row rows[] = {
        {"6", oat_cake, "oat flour", "coconut flour", VERDICT_ADJUST, "drier"},
        {"6", coconut_cake, "coconut flour", "oat flour", VERDICT_ADJUST, NULL}};
    answers(*state, rows, COUNT(rows));
    kitchen *k = *state;
    recipe_facts oat = facts_in(k, oat_cake), coconut = facts_in(k, coconut_cake);
    same_number("1/2 cup oat flour to 1/4 cup coconut flour",
                ask(k, &oat, "oat flour", "coconut flour").to_g, 112 * 0.25, 1);
    same_number("1/4 cup coconut flour to 1/2 cup oat flour",
                ask(k, &coconut, "coconut flour", "oat flour").to_g, 104 * 0.5, 1);
    same_number("the rest stays", ask(k, &oat, "oat flour", "coconut flour").liquid_change_g, 0,
                0.01);
}

/* Fact 7; common practice, no source. */
static void almond_meal_alone_is_no_flour(void **state) {
    static const swap_row rows[] = {
        {"7", oat_cake, "oat flour", "almond meal", VERDICT_AVOID, NULL},
        {"7", oat_cake, "oat flour", "natural almond meal", VERDICT_AVOID, NULL},
        {"7", coconut_cake, "coconut flour", "almond meal", VERDICT_AVOID, NULL}};
    answers(*state, rows, COUNT(rows));
}

static const swap_note *two_for_one(const swap_notes *all, size_t first, size_t second,
                                    const ingredient *to) {
    for (size_t i = 0; i < all->count; i++) {
        const swap_note *note = &all->items[i];
        bool these = (note->line == first && note->second_line == second) ||
                     (note->line == second && note->second_line == first);
        if (these && note->to == to)
            return note;
    }
    return NULL;
}

/* Fact 8: almond meal for some coconut flour with some of the wet part; common practice, no
 * source. The amounts keep the batch weight, to what whole teaspoons leave. */
static void almond_meal_for_coconut_flour_and_puree(void **state) {
    static const char *const recipes[] = {coconut_cake, isolate_cookie};
    kitchen *k = *state;
    for (size_t i = 0; i < COUNT(recipes); i++) {
        recipe_facts about = facts_in(k, recipes[i]);
        swap_notes all = notes_of(k->room, &k->book, &about, false);
        const swap_note *note =
            two_for_one(&all, line_of(k, &about, "coconut flour"),
                        line_of(k, &about, "apple purée"), named(k, "almond meal"));
        const char *row = about.of->title;
        if (!note)
            fail_msg("%s: no note on coconut flour and apple purée by almond meal", row);
        same_text(row, verdict_word(note->says), "adjust");
        same_text(row, note->basis, "common practice");
        same_number(row, note->to_g + note->liquid_change_g, note->from_g + note->second_from_g, 2);
        if (note->to_g <= 0 || note->from_g <= 0 || note->second_from_g <= 0)
            fail_msg("%s: some of each must change", row);
    }
}

/* Fact 9: one for one; common practice, no source. */
static void almond_cashew_and_coconut_butter_for_one_another(void **state) {
    static const swap_row rows[] = {
        {"9", butter_bars, "almond butter", "cashew butter", VERDICT_WORKS, NULL},
        {"9", butter_bars, "almond butter", "coconut butter", VERDICT_WORKS, NULL},
        {"9", butter_cookies, "cashew butter", "almond butter", VERDICT_WORKS, NULL},
        {"9", butter_cookies, "cashew butter", "coconut butter", VERDICT_WORKS, NULL},
        {"9", coconut_butter_bars, "coconut butter", "almond butter", VERDICT_WORKS, NULL},
        {"9", coconut_butter_bars, "coconut butter", "cashew butter", VERDICT_WORKS, NULL}};
    answers(*state, rows, COUNT(rows));
    kitchen *k = *state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe_facts about = facts_in(k, rows[i].recipe);
        swap_note note = ask(k, &about, rows[i].from, rows[i].to);
        same_number(rows[i].to, note.to_g, note.from_g, 0.01);
        same_number(rows[i].to, note.liquid_change_g, 0, 0.01);
    }
}

/* Fact 10: what the author wrote on the recipe wins over any rule; common practice, no source. */
static void the_author_of_the_recipe_has_the_last_word(void **state) {
    kitchen *k = *state;
    recipe_facts about = facts_in(k, authors_word);
    swap_note note = ask(k, &about, "pea protein isolate", "whey protein isolate");
    same_text("the author's verdict", verdict_word(note.says), "works");
    assert_int_equal(note.by.by, SAID_BY_RECIPE);
    note = ask(k, &about, "pea protein isolate", "whey protein concentrate");
    same_text("not a word on the concentrate", verdict_word(note.says), "avoid");
}

/* The same swaps where the build does not forbid them; common practice, no source. */
static void other_builds_bear_the_same_swaps(void **state) {
    static const swap_row rows[] = {{"no egg white", little_pea_cake, "pea protein isolate",
                                     "whey protein isolate", VERDICT_ADJUST, NULL},
                                    {"plant by plant", pea_rounds, "pea protein isolate",
                                     "brown rice protein", VERDICT_ADJUST, NULL},
                                    {"plant by plant", rice_crust, "brown rice protein",
                                     "pea protein isolate", VERDICT_ADJUST, NULL},
                                    {"whey by whey", whey_brownie, "whey protein concentrate",
                                     "whey protein isolate", VERDICT_WORKS, NULL},
                                    {"unbaked", butter_bars, "whey protein isolate",
                                     "pea protein isolate", VERDICT_ADJUST, NULL}};
    answers(*state, rows, COUNT(rows));
}

/* No two rules of the reference may disagree on a swap of these recipes. */
static void no_ties(void **state) {
    static const char *const recipes[] = {
        pea_rounds,     rice_rounds,     pea_almond_cake, blend_almond_muffins, rice_crust,
        whey_brownie,   isolate_brownie, whey_cookie,     isolate_cookie,       pea_cashew_crust,
        oat_cake,       coconut_cake,    butter_bars,     butter_cookies,       coconut_butter_bars,
        little_pea_cake};
    kitchen *k = *state;
    for (size_t i = 0; i < COUNT(recipes); i++) {
        recipe_facts about = facts_in(k, recipes[i]);
        problems found = problems_in(k->room);
        notes_check(k->room, &k->book, &about, &found);
        if (found.count)
            fail_msg("%s: %s", about.of->title, found.items[0].message);
    }
}

static void the_reference_reads_without_a_problem(void **state) {
    kitchen *k = *state;
    no_problems("reference", k);
    if (k->book.rules.count < 60)
        fail_msg("only %zu rules", k->book.rules.count);
}

/* -- does uptake times density predict the rule?
 * -------------------------------------------------------- Volume of coconut flour for a volume of
 * oat flour that takes up the same water:
 *
 *     (grams a cup x uptake of oat) / (grams a cup x uptake of coconut)
 *
 * Oat: 104 g, USDA SR28 20132, and 2.2 g/g, within the 1.98 to 2.36 of J Food Sci Technol 2016
 * 53(4):1856-1866. Coconut: 112 g and 4.0 g/g, common practice, no source. By hand: 228.8 / 448 =
 * 0.51. Over all ranges of the tables it spans 0.12 to 1.15: a plausibility check, not a proof. */
static void uptake_predicts_half_the_volume(void **state) {
    kitchen *k = *state;
    const ingredient *oat = named(k, "oat flour"), *coconut = named(k, "coconut flour");
    range room[2];
    const range *oat_cup_g = ingredient_measure(oat, span_of("cup"), &room[0]);
    const range *coconut_cup_g = ingredient_measure(coconut, span_of("cup"), &room[1]);
    assert_non_null(oat_cup_g);
    assert_non_null(coconut_cup_g);
    const range *a = &oat->cold_uptake, *b = &coconut->cold_uptake;
    range ratio = {oat_cup_g->low * a->low / (coconut_cup_g->high * b->high),
                   oat_cup_g->typical * a->typical / (coconut_cup_g->typical * b->typical),
                   oat_cup_g->high * a->high / (coconut_cup_g->low * b->low)};
    same_number("typical", ratio.typical, 0.51, 0.02);
    same_number("low", ratio.low, 0.12, 0.02);
    same_number("high", ratio.high, 1.15, 0.05);
    same_number("the trade's half", ratio.typical, 0.5, 0.05);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_reference_reads_without_a_problem),
        cmocka_unit_test(whey_where_plant_powder_was),
        cmocka_unit_test(plant_powder_where_whey_was),
        cmocka_unit_test(coconut_flour_goes_half_as_far_by_volume),
        cmocka_unit_test(almond_meal_alone_is_no_flour),
        cmocka_unit_test(almond_meal_for_coconut_flour_and_puree),
        cmocka_unit_test(almond_cashew_and_coconut_butter_for_one_another),
        cmocka_unit_test(the_author_of_the_recipe_has_the_last_word),
        cmocka_unit_test(other_builds_bear_the_same_swaps),
        cmocka_unit_test(no_ties),
        cmocka_unit_test(uptake_predicts_half_the_volume),
    };
    return cmocka_run_group_tests_name("trade facts", tests, open_kitchen, close_kitchen);
}
