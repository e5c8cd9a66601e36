/* What the method of a recipe says of its ingredients. */
#include "reference_shelf.h"

#include "base/number.h"
#include "measure/mention.h"

enum { LINES = 12 };

/* A weighed recipe of these ingredient lines. */
static const recipe *recipe_of(arena *a, const char *const lines[LINES], const pantry *shelf) {
    recipe *of = ARENA_NEW(a, recipe);
    problems found = problems_in(a);
    of->weights = ARENA_ARRAY(a, weight, LINES);
    for (size_t i = 0; i < LINES && lines[i]; i++) {
        located written = {span_of(lines[i]), {"test", 1, 1}};
        recipe_line line;
        if (!line_read(a, written, shelf, &line, &found))
            fail_msg("%s: no line", lines[i]);
        LIST_ADD(a, &of->lines, line);
        (void)weigh_line(&line, CUPS_US, &of->weights[i], &found);
    }
    return of;
}

static void add_flags(text *t, const mention *m) {
    const struct {
        bool on;
        const char *word;
    } flags[] = {
        {m->rest, " rest"}, {m->more, " more"}, {m->loose, " loose"}, {m->changeable, " change"}};
    for (size_t i = 0; i < COUNT(flags); i++)
        if (flags[i].on)
            text_add(t, flags[i].word);
}

/* "2 tablespoons|milk = 1 29g change": amount, name, line (- none, * several), grams, flags. */
static void add_mention(text *t, span words, const mention *m) {
    if (t->length)
        text_add(t, "; ");
    if (m->amount_length)
        text_format(t, "%.*s|", (int)m->amount_length, words.at + m->amount_at);
    text_format(t, "%.*s = ", (int)m->name_length, words.at + m->name_at);
    if (m->line != MENTION_NO_LINE)
        text_format(t, "%d", m->line);
    else
        text_add(t, m->lines ? "*" : "-");
    if (m->grams > 0) {
        text_add_char(t, ' ');
        number_add(t, m->grams, 0);
        text_add(t, "g");
    }
    if (m->share > 0) {
        text_add_char(t, ' ');
        number_add(t, m->share * 100, 0);
        text_add_char(t, '%');
    }
    add_flags(t, m);
}

static const char *printed_mentions(arena *a, const mention_names *called, const char *words) {
    text t = TEXT_EMPTY;
    mentions all = mentions_in(a, called, span_of(words));
    for (size_t i = 0; i < all.count; i++)
        add_mention(&t, span_of(words), &all.items[i]);
    const char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}

static const char *const cake[LINES] = {
    "60 g pea protein powder",               /* 0 */
    "1 cup almond meal",                     /* 1 */
    "120 g oat flour",                       /* 2 */
    "2 tsp baking powder",                   /* 3 */
    "1/4 tsp salt",                          /* 4 */
    "3 large eggs",                          /* 5 */
    "1 cup milk",                            /* 6 */
    "1/2 cup plain Greek yogurt",            /* 7 */
    "2 scoops (50 g) casein protein powder", /* 8 */
    "1 tsp vanilla extract",                 /* 9 */
    "1/3 cup almond butter",                 /* 10 */
    "2 medium bananas, mashed",              /* 11 */
};

static void finds_what_a_method_mentions(void **state) {
    static const struct {
        const char *words, *mentions;
    } rows[] = {
        /* names and short names */
        {"Fold in the pea protein powder.", "pea protein powder = 0"},
        {"Fold in the Pea Powder.", "Pea Powder = 0"},
        {"the oats, then the oat flour", "oats = -; oat flour = 2"},
        {"the flour, the yogurt and the vanilla", "flour = 2; yogurt = 7; vanilla = 9"},
        {"the powder", "powder = *"},
        {"the eggs one at a time; each egg", "eggs = 5; egg = 5"},
        {"whisk the whites, keep the yolks", "whites = 5 loose; yolks = 5 loose"},
        {"stir in the casein and salt", "casein = 8; salt = 4"},
        {"beat the mashed bananas", "bananas = 11"},
        {"the dry ingredients", "dry ingredients = * loose"},
        {"pour the wet over the dry in two goes", "wet = * loose; dry = * loose"},
        {"grease it with coconut oil", "coconut oil = -"},
        {"scatter the almonds", "almonds = -"},
        /* amounts */
        {"60 g of the almond meal", "60 g|almond meal = 1 60g change"},
        {"60g almond meal", "60g|almond meal = 1 60g change"},
        {"60\u00a0g almond meal", "60\u00a0g|almond meal = 1 60g change"},
        {"Whisk 1/2 cup of the almond meal with about 20 g oat flour",
         "1/2 cup|almond meal = 1 48g change; 20 g|oat flour = 2 20g change"},
        {"half a cup of the milk", "half a cup|milk = 6 122g change"},
        {"a tablespoon of cold milk", "a tablespoon|milk = 6 15g change"},
        {"2-3 tablespoons of milk", "2-3 tablespoons|milk = 6 38g change"},
        {"the remaining 2 tablespoons of milk", "2 tablespoons|milk = 6 31g rest change"},
        {"1 scoop of the casein protein powder", "1 scoop|casein protein powder = 8 25g change"},
        {"2 of the eggs", "2|eggs = 5 100g change"},
        {"another tablespoon of milk", "tablespoon|milk = 6 15g more"},
        {"2 more tablespoons of milk", "2 more tablespoons|milk = 6 31g more change"},
        {"1 tablespoon of rum", "1 tablespoon|rum = -"},
        {"2 heaped tablespoons of oat flour", "2 heaped tablespoons|oat flour = 2 13g"},
        {"2 tablespoons (30 g) milk", "2 tablespoons|milk = 6 31g"},
        {"a pinch of salt", "a pinch|salt = 4 0g"},
        {"10 g powder", "10 g|powder = *"},
        /* shares */
        {"half the flour", "flour = 2 60g 50%"},
        {"two thirds of the almond meal", "almond meal = 1 64g 67%"},
        {"the rest of the milk", "milk = 6 rest"},
        {"the other eggs", "eggs = 5 rest"},
        {"a third of the whites", "whites = 5 33% loose"},
        /* not mentions, or no amounts */
        {"Bake 5 minutes, to 9 cm, at 180 C. Milk it.", "Milk = 6"},
        {"at 180 C milk boils over", "milk = 6"},
        {"Drop in 2 heaped tablespoons of batter", ""},
        {"2 tablespoons of oat flour mixture", "oat flour = 2 loose"},
        {"Butter the tin and flour it; oil a bowl.", ""},
        {"Butter and line a tin", ""},
        {"until white and fluffy; pat dry", ""},
        {"an egg-free, milk-free cake", ""},
        {"Press into 12 balls of 40 g, flour on top", "flour = 2"},
        {"Add 2 cups. Milk comes later", "Milk = 6"},
        {"the 3 flour sacks", "flour = 2"},
        {"salted butter", "salted butter = -"},
        {"", ""},
        {"...", ""},
    };
    const pantry *shelf = *state;
    arena *a = arena_new();
    mention_names called = mention_names_of(a, recipe_of(a, cake, shelf), shelf, CUPS_US);
    for (size_t i = 0; i < COUNT(rows); i++)
        same_text(rows[i].words, printed_mentions(a, &called, rows[i].words), rows[i].mentions);
    arena_free(a);
}

/* One line of a kind takes the family's word; two share it, and the nearer name wins. */
static void tells_lines_apart(void **state) {
    static const struct {
        const char *lines[LINES], *words, *mentions;
    } rows[] = {
        {{"1 cup oat flour"}, "2 tbsp of the flour", "2 tbsp|flour = 0 13g change"},
        {{"1 cup oat flour", "1 cup coconut flour"}, "2 tbsp of the flour", "2 tbsp|flour = *"},
        {{"1 cup oat flour", "1 cup coconut flour"}, "coconut flour", "coconut flour = 1"},
        {{"1 cup soy milk"}, "2 tbsp milk", "2 tbsp|milk = 0 30g change"},
        {{"1 cup soy milk", "1 cup milk"}, "2 tbsp milk", "2 tbsp|milk = 1 31g change"},
        {{"1/2 cup almond butter"}, "2 tbsp butter", "2 tbsp|butter = -"},
        {{"60 g whey protein isolate", "1/3 cup cocoa powder"}, "the powder", "powder = 0"},
        {{"60 g whey protein isolate"}, "Whey sets", "Whey = 0 loose"},
        {{"3 tbsp flaxseed meal"}, "the flax goes on setting", "flax = 0 loose"},
        {{"1 cup egg whites"}, "a third of the whites", "whites = 0 81g 33%"},
        {{"1 cup egg whites"}, "an egg", "egg = -"},
        {{"150 g quark", "100 g quark"}, "50 g quark", "50 g|quark = *"},
        {{"1 cup almonds", "1 cup walnuts"}, "the nuts", "nuts = * loose"},
    };
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        const recipe *of = recipe_of(a, rows[i].lines, shelf);
        mention_names called = mention_names_of(a, of, shelf, CUPS_US);
        same_text(rows[i].lines[0], printed_mentions(a, &called, rows[i].words), rows[i].mentions);
        arena_free(a);
    }
}

/* The parts that are changed in place. */
static void knows_where_the_parts_stand(void **state) {
    const pantry *shelf = *state;
    arena *a = arena_new();
    mention_names called = mention_names_of(a, recipe_of(a, cake, shelf), shelf, CUPS_US);
    const char *words = "Whisk the remaining 2 tablespoons of the cold milk in.";
    mentions all = mentions_in(a, &called, span_of(words));
    assert_int_equal(all.count, 1);
    const mention *m = &all.items[0];
    same_span("all", (span){words + m->at, m->length},
              "the remaining 2 tablespoons of the cold milk");
    same_span("amount", (span){words + m->amount_at, m->amount_length}, "2 tablespoons");
    same_span("number", (span){words + m->amount_at, m->number_length}, "2");
    same_span("name", (span){words + m->name_at, m->name_length}, "milk");
    same_text("unit", m->in->name, "tbsp");
    same_text("ingredient", m->what->name, "whole milk");
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(finds_what_a_method_mentions),
        cmocka_unit_test(tells_lines_apart),
        cmocka_unit_test(knows_where_the_parts_stand),
    };
    return cmocka_run_group_tests_name("mention", tests, shelf_up, shelf_down);
}
