/* Recipes: whole, at their least, and with one thing wrong. */
#include "reading.h"
#include "small_shelf.h"

#include "read/recipe.h"
#include "read/recipe_lines.h"
#include "swap/rule.h"

static recipe *read_from(arena *a, const char *bytes, const pantry *shelf, problems *found) {
    *found = problems_in(a);
    return recipe_read(a, "recipes/Towpath rounds.md", span_of(bytes), shelf, CUPS_US, found);
}

static const char whole[] =
    "---\n"
    "title: Towpath griddle rounds\n"
    "summary: Thin rounds.\n"
    "makes: 8 rounds\n"
    "portion: 2 rounds\n"
    "kind: griddle cake\n"
    "minutes: {prepare: 10, rest: 1 h, bake: 12 min}\n"
    "oven: 350 \u00b0F\n"
    "pan: round 20 x 5 cm\n"
    "bake-loss: 12 %\n"
    "ingredients:\n"
    "  - 60 g pea protein powder\n"
    "  - 1/2 cup egg white\n"
    "  - {ingredient: coconut flour, amount: 20 g, note: sifted}\n"
    "  - group: To serve\n"
    "    lines:\n"
    "      - 32 g almond butter\n"
    "      - {ingredient: apple puree, amount: 10 g, optional: yes}\n"
    "swaps:\n"
    "  - {replace: pea protein powder, with: whey isolate, verdict: avoid}\n"
    "tags: [breakfast, for the crew]\n"
    "date: 2026-05-02\n"
    "changed: 2026-05-09\n"
    "author: Maren Holt\n"
    "picture: rounds.jpg\n"
    "picture-text: Eight rounds\n"
    "publish: no\n"
    "---\n"
    "1. Whisk.\n";

static void test_words(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r = read_from(a, whole, &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    expect_words("file", r->file, "recipes/Towpath rounds.md");
    expect_words("slug", r->slug, "towpath-rounds");
    expect_words("title", r->title, "Towpath griddle rounds");
    expect_words("summary", r->summary, "Thin rounds.");
    expect_words("kind", r->kind, "griddle cake");
    expect_words("author", r->author, "Maren Holt");
    expect_words("date", r->date, "2026-05-02");
    expect_words("changed", r->changed, "2026-05-09");
    expect_words("picture", r->picture, "rounds.jpg");
    expect_words("picture-text", r->picture_text, "Eight rounds");
    assert_int_equal(r->tags.count, 2);
    expect_words("tag", r->tags.items[1], "for the crew");
    assert_false(r->publish);
    assert_int_equal(r->title_at.line, 2);
    assert_int_equal(r->title_at.column, 8);
    assert_int_equal(r->date_at.line, 22);
    expect_words("body", arena_copy(a, r->body), "1. Whisk.\n");
    assert_int_equal(r->body_line, 29);
    arena_free(a);
}

/* 350 F is 176.67 C: NIST SP 811, appendix B.8: (F - 32) / 1.8. */
static void test_baking(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r = read_from(a, whole, &shelf, &found);
    expect_number("makes", r->makes.count, 8);
    expect_words("noun", r->makes.noun, "rounds");
    expect_number("portion", r->portion.count, 2);
    expect_number("portions", r->portions, 4);
    expect_number("prepare", r->minutes.prepare, 10);
    expect_number("rest", r->minutes.rest, 60);
    expect_number("bake", r->minutes.bake, 12);
    expect_number("cool", r->minutes.cool, 0);
    expect_number("oven", r->oven_c, 318 / 1.8);
    expect_words("oven as written", r->oven, "350 \u00b0F");
    assert_int_equal(r->baked_in.shape, PAN_ROUND);
    expect_number("diameter", r->baked_in.length_cm, 20);
    expect_number("depth", r->baked_in.depth_cm, 5);
    expect_number("loss", r->bake_loss, 0.12);
    assert_true(r->bake_loss_stated);
    arena_free(a);
}

static void test_lines(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r = read_from(a, whole, &shelf, &found);
    assert_int_equal(r->lines.count, 5);
    assert_int_equal(r->groups.count, 2);
    assert_null(r->groups.items[0].heading);
    assert_int_equal(r->groups.items[0].count, 3);
    expect_words("heading", r->groups.items[1].heading, "To serve");
    assert_int_equal(r->groups.items[1].first, 3);
    assert_int_equal(r->groups.items[1].count, 2);
    expect_words("preparation", r->lines.items[2].preparation, "sifted");
    assert_true(r->lines.items[4].optional);
    assert_int_equal(r->lines.items[0].at.line, 12);
    assert_int_equal(r->lines.items[0].at.column, 5);
    expect_number("half a cup", r->weights[1].grams, 120);
    expect_number("batch", r->batch_g, 60 + 120 + 20 + 32 + 10);
    expect_number("baked", r->baked_g, 242 * 0.88);
    assert_int_equal(r->unweighed, 0);
    assert_int_equal(r->own_swaps->count, 1);
    assert_int_equal(r->own_swaps->items[0].says, VERDICT_AVOID);
    arena_free(a);
}

/* The least that is published without a word of warning. */
#define LEAST "title: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients: [60 g coconut flour]\n"

static void test_least(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r = read_from(a, "---\n" LEAST "---\n", &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    expect_number("a portion is one", r->portion.count, 1);
    expect_words("of the same", r->portion.noun, "bars");
    expect_number("portions", r->portions, 8);
    assert_true(r->publish);
    assert_null(r->own_swaps);
    assert_null(r->oven);
    assert_int_equal(r->baked_in.shape, PAN_NONE);
    assert_false(r->bake_loss_stated);
    expect_number("nothing lost", r->baked_g, 60);
    arena_free(a);
}

static void test_less_than_one(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r = read_from(a,
                                "---\ntitle: T\nsummary: S\nkind: loaf\nmakes: 1/2 loaf\n"
                                "ingredients: [60 g coconut flour]\n---\n",
                                &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    expect_number("the half", r->portion.count, 0.5);
    expect_number("portions", r->portions, 1);
    arena_free(a);
}

static void test_group_after_and_before(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r =
        read_from(a,
                  "---\ntitle: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients:\n"
                  "  - {group: A, lines: [1 g coconut flour]}\n"
                  "  - {group: B, lines: [2 g coconut flour]}\n"
                  "  - 3 g coconut flour\n  - 4 g coconut flour\n---\n",
                  &shelf, &found);
    expect_words("problems", printed(a, &found), "");
    assert_int_equal(r->groups.count, 3);
    expect_words("second", r->groups.items[1].heading, "B");
    assert_null(r->groups.items[2].heading);
    assert_int_equal(r->groups.items[2].count, 2);
    arena_free(a);
}

/* -- makes and portion ------------------------------------------------------------------------- */

static const struct {
    const char *makes, *portion;
    double portions; /* 0: problems */
} yields[] = {
    {"8 rounds", "2 rounds", 4},
    {"1 loaf", "1/12 loaf", 12},
    {"2 loaves", "1/6 loaf", 12},
    {"1 round", "1/8 rounds", 8},
    {"12 cookies", "1 cookie", 12},
    {"20 pastries", "2 pastry", 10},
    {"24 small bars", "2 bars", 12},
    {"8 dishes", "1 dish", 8},
    {"2 halves", "1 half", 2},
    {"6 Rounds", "\u00bd round", 12},
    {"8 rounds", "2", 4},
    {"8 rounds", "1 bar", 0},
    {"8 rounds", "9 rounds", 0},
    {"8 rounds", "some", 0},
    {"8 rounds", "0 rounds", 0},
    {"8", "2", 0},
    {"rounds", "1 round", 0},
    {"0 rounds", "1 round", 0},
};

static void test_yields(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(yields); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        char *bytes =
            arena_format(a,
                         "---\ntitle: T\nsummary: S\nkind: bar\nmakes: '%s'\nportion: '%s'\n"
                         "ingredients: [60 g coconut flour]\n---\n",
                         yields[i].makes, yields[i].portion);
        const recipe *r = read_from(a, bytes, &shelf, &found);
        char *name = arena_format(a, "%s by %s", yields[i].makes, yields[i].portion);
        if ((found.count == 0) != (yields[i].portions > 0))
            fail_msg("%s: %s", name, found.count ? printed(a, &found) : "no problem");
        if (yields[i].portions > 0)
            expect_number(name, r->portions, yields[i].portions);
        arena_free(a);
    }
}

/* -- oven and pan ----------------------------------------------------------------------------- */

static const struct {
    const char *oven;
    double celsius; /* 0: a problem */
} ovens[] = {{"180 C", 180},      {"180C", 180},        {"180 \u00b0C", 180},
             {"180\u00b0C", 180}, {"350 F", 318 / 1.8}, {"212 degrees F", 100},
             {"180", 0},          {"hot", 0},           {"180 K", 0},
             {"20 C", 0},         {"350 C", 0},         {"180 C fan", 0}};

static void test_ovens(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(ovens); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        const recipe *r = read_from(
            a, arena_format(a, "---\n" LEAST "oven: %s\n---\n", ovens[i].oven), &shelf, &found);
        if ((found.errors == 0) != (ovens[i].celsius > 0))
            fail_msg("%s: %s", ovens[i].oven, printed(a, &found));
        expect_number(ovens[i].oven, r->oven_c, ovens[i].celsius);
        arena_free(a);
    }
}

static const struct {
    const char *pan;
    pan_shape shape;
    double length_cm, width_cm, depth_cm, wells;
    bool fine;
} pans[] = {
    {"round 20 cm", PAN_ROUND, 20, 20, 0, 0, true},
    {"round 20 x 5 cm", PAN_ROUND, 20, 20, 5, 0, true},
    {"round 8 in", PAN_ROUND, 20.32, 20.32, 0, 0, true}, /* NIST SP 811: 1 in = 2.54 cm */
    {"square 20 cm", PAN_SQUARE, 20, 20, 0, 0, true},
    {"square 20 x 20 cm", PAN_SQUARE, 20, 20, 0, 0, true},
    {"square 20 x 20 x 4 cm", PAN_SQUARE, 20, 20, 4, 0, true},
    {"square 200 mm", PAN_SQUARE, 20, 20, 0, 0, true},
    {"loaf 23 x 13 cm", PAN_LOAF, 23, 13, 0, 0, true},
    {"loaf 23\u00d713\u00d77 cm", PAN_LOAF, 23, 13, 7, 0, true},
    {"tray 30 x 20 cm", PAN_RECTANGLE, 30, 20, 0, 0, true},
    {"8 inch square", PAN_SQUARE, 20.32, 20.32, 0, 0, true},
    {"8-inch round tin", PAN_ROUND, 20.32, 20.32, 0, 0, true},
    {"9x5 in loaf", PAN_LOAF, 22.86, 12.7, 0, 0, true},
    {"9 x 5 x 2.5 inch loaf pan", PAN_LOAF, 22.86, 12.7, 6.35, 0, true},
    {"9\u2033 x 13\u2033 pan", PAN_RECTANGLE, 22.86, 33.02, 0, 0, true},
    {"23 x 13 cm loaf tin", PAN_LOAF, 23, 13, 0, 0, true},
    {"8 inch", PAN_NONE, 0, 0, 0, 0, false},
    {"8 inch bucket", PAN_NONE, 0, 0, 0, 0, false},
    {"8 inch griddle", PAN_NONE, 0, 0, 0, 0, false},
    {"9 in x 13 cm tray", PAN_NONE, 0, 0, 0, 0, false},
    {"9 x 5 loaf", PAN_NONE, 0, 0, 0, 0, false},
    {"griddle", PAN_GRIDDLE, 0, 0, 0, 0, true},
    {"waffle iron", PAN_GRIDDLE, 0, 0, 0, 0, true},
    {"muffin tin 12", PAN_MUFFIN, 0, 0, 0, 12, true},
    {"Kastenform 25 x 11 cm", PAN_LOAF, 25, 11, 0, 0, true},
    {"rund 26 cm", PAN_ROUND, 26, 26, 0, 0, true},
    {"Pfanne", PAN_GRIDDLE, 0, 0, 0, 0, true},
    {"muffin tin", PAN_MUFFIN, 0, 0, 0, 0, false},
    {"muffin tin many", PAN_MUFFIN, 0, 0, 0, 0, false},
    {"bucket 20 cm", PAN_NONE, 0, 0, 0, 0, false},
    {"round 20", PAN_ROUND, 0, 0, 0, 0, false},
    {"round", PAN_ROUND, 0, 0, 0, 0, false},
    {"round 20 x cm", PAN_ROUND, 0, 0, 0, 0, false},
    {"round 1 x 2 x 3 cm", PAN_ROUND, 0, 0, 0, 0, false},
    {"round 1 x 2 x 3 x 4 cm", PAN_ROUND, 0, 0, 0, 0, false},
    {"loaf 23 cm", PAN_LOAF, 0, 0, 0, 0, false},
    {"loaf 0 x 13 cm", PAN_LOAF, 0, 0, 0, 0, false},
};

static void test_pans(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(pans); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        const recipe *r = read_from(a, arena_format(a, "---\n" LEAST "pan: %s\n---\n", pans[i].pan),
                                    &shelf, &found);
        if ((found.errors == 0) != pans[i].fine)
            fail_msg("%s: %s", pans[i].pan, printed(a, &found));
        expect_words("text", r->baked_in.text, pans[i].pan);
        if (r->baked_in.shape != pans[i].shape)
            fail_msg("%s: another shape", pans[i].pan);
        expect_number(pans[i].pan, r->baked_in.length_cm, pans[i].length_cm);
        expect_number(pans[i].pan, r->baked_in.width_cm, pans[i].width_cm);
        expect_number(pans[i].pan, r->baked_in.depth_cm, pans[i].depth_cm);
        expect_number(pans[i].pan, r->baked_in.wells, pans[i].wells);
        arena_free(a);
    }
}

/* -- what is wrong
 * ---------------------------------------------------------------------------------- */

#define F "recipes/Towpath rounds.md:"

/* Each row's front matter is whole; `read`: a recipe comes of it all the same. */
static const struct {
    const char *name, *front;
    bool read;
    const char *report;
} faults[] = {
    {"no title", "summary: S\nkind: bar\nmakes: 8 bars\ningredients: [60 g coconut flour]\n", false,
     F "2:1: error: a recipe needs \"title\"\n"
       "  hint: for example: title: Towpath griddle rounds\n"},
    {"no makes", "title: T\nsummary: S\nkind: bar\ningredients: [60 g coconut flour]\n", true,
     F "2:1: error: a recipe needs \"makes\"\n  hint: for example: makes: 8 rounds\n"},
    {"no ingredients", "title: T\nsummary: S\nkind: bar\nmakes: 8 bars\n", false,
     F "2:1: error: a recipe needs \"ingredients\"\n"
       "  hint: for example: ingredients: [60 g pea protein powder, 1/2 cup egg whites]\n"},
    {"an empty list of ingredients",
     "title: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients: []\n", false,
     F "6:14: error: the list of ingredients is empty\n"
       "  hint: for example: ingredients: [60 g pea protein powder]\n"},
    {"ingredients as text", "title: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients: flour\n",
     false,
     F "6:14: error: \"ingredients\" must be a list\n"
       "  hint: for example: ingredients: [60 g pea protein powder, 1/2 cup egg whites]\n"},
    {"front matter of a list", "- title: T\n", false,
     F "2:1: error: a recipe is made of keys and values\n"
       "  hint: write each part as \"key: value\"\n"},
    {"a key misspelt", LEAST "ovn: 180 C\n", true,
     F "7:1: error: a recipe has no key \"ovn\"\n  hint: did you mean \"oven\"?\n"},
    {"no summary, no kind", "title: T\nmakes: 8 bars\ningredients: [60 g coconut flour]\n", true,
     F "2:1: warning: the recipe has no \"summary\" [missing]\n"
       "  hint: one sentence: it stands in lists and in search results\n" F
       "2:1: warning: the recipe has no \"kind\" [missing]\n"
       "  hint: for example: kind: griddle cake; swap rules and the index go by it\n"},
    {"a portion that leaves something over", LEAST "portion: 3 bars\n", true,
     F "7:10: warning: this makes 2.67 portions [portion]\n"
       "  hint: choose a portion that leaves nothing over\n"},
    {"a portion of something else", LEAST "portion: 1 slice\n", true,
     F "7:10: error: the recipe makes bars, but a portion is of slice\n"
       "  hint: write it as a number of bars, or a part: 1/12\n"},
    {"a portion larger than all", LEAST "portion: 9 bars\n", true,
     F "7:10: error: a portion is more than the whole\n"
       "  hint: a portion is a part of what the recipe makes\n"},
    {"minutes as a number", LEAST "minutes: 25\n", true,
     F "7:10: error: \"minutes\" must be keys with values\n"
       "  hint: for example: minutes: {prepare: 10, bake: 12}\n"},
    {"minutes below nothing", LEAST "minutes: {bake: -1}\n", true,
     F "7:17: error: \"bake\" must be between nothing and a week\n"
       "  hint: minutes, or hours as \"2 h\"\n"},
    {"an oven without unit", LEAST "oven: 180\n", true,
     F "7:7: error: \"oven\" must be a temperature with C or F\n"
       "  hint: for example: oven: 180 C, or oven: 350 F; leave it out where there is no oven\n"},
    {"an oven as hot as a kiln", LEAST "oven: 900 C\n", true,
     F "7:7: error: no oven bakes at this temperature\n  hint: is it C or F?\n"},
    {"all of it lost", LEAST "bake-loss: 100 %\n", true,
     F "7:12: error: \"bake-loss\" must be at least 0 and under 100 %\n"
       "  hint: for example: bake-loss: 12 %\n"},
    {"a share where a percentage is meant", LEAST "bake-loss: 0.12\n", true,
     F "7:12: warning: this is an unusual \"bake-loss\" [bake-loss]\n"
       "  hint: weigh the batch before and after: it is the share that went\n"},
    {"30 February", LEAST "date: 2026-02-30\n", true,
     F "7:7: error: \"date\" must be a day that the calendar has\n"
       "  hint: for example: date: 2026-05-02\n"},
    {"changed before it was written", LEAST "date: 2026-05-02\nchanged: 2026-05-01\n", true,
     F "8:10: warning: \"changed\" is before \"date\" [dates]\n"
       "  hint: are the two the wrong way round?\n"},
    {"a picture elsewhere", LEAST "picture: /etc/x.jpg\npicture-text: X\n", true,
     F "7:10: error: \"/etc/x.jpg\" can't be the name of a picture\n"
       "  hint: for example: rounds.jpg, a file in pictures/\n"},
    {"a picture without words", LEAST "picture: x.jpg\n", true,
     F "7:10: warning: the picture has no \"picture-text\" [picture-text]\n"
       "  hint: say what it shows, for those who can't see it\n"},
    {"publish perhaps", LEAST "publish: perhaps\n", true,
     F "7:10: error: \"publish\" must be yes or no\n  hint: for example: publish: yes\n"},
    {"tags of mappings", LEAST "tags: [{a: b}]\n", true,
     F "7:8: error: \"tags\" must be a list of words\n"
       "  hint: for example: tags: [breakfast, for the crew]\n"},
    {"a swap of what is not in it",
     LEAST "swaps: [{replace: egg white, with: coconut flour, verdict: avoid}]\n", true,
     F "7:9: warning: the recipe has no egg white to replace [swap-of-nothing]\n"
       "  hint: take the swap out, or correct its \"replace\"\n"},
    {"swaps as keys", LEAST "swaps: {replace: egg white}\n", true,
     F "7:8: error: \"swaps\" must be a list\n"
       "  hint: for example: swaps: [{replace: milk, with: oat drink, verdict: works}]\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        const recipe *r =
            read_from(a, arena_format(a, "---\n%s---\n", faults[i].front), &shelf, &found);
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        if ((r != NULL) != faults[i].read)
            fail_msg("%s: %s", faults[i].name, r ? "was read" : "was not read");
        arena_free(a);
    }
}

/* The list of ingredients, item by item; another line keeps the recipe whole. */
static const struct {
    const char *name, *item, *report;
} line_faults[] = {
    {"an empty line", "  -\n",
     F "8:4: error: this line of ingredients is empty\n"
       "  hint: for example: - 60 g pea protein powder\n"},
    {"a list in the list", "  - [1 g egg white]\n",
     F "8:5: error: a list can't stand in the list of ingredients\n"
       "  hint: for a group write: - group: To serve, then lines: [...]\n"},
    {"a colon in the line", "  - 60 g egg white: cold\n",
     F "8:5: error: a colon and a space in a line of ingredients\n"
       "  hint: put the whole line in double quotes\n"},
    {"a line of parts without its name", "  - {amount: 60 g}\n",
     F "8:5: error: an ingredient line needs \"ingredient\"\n"},
    {"a part misspelt", "  - {ingredient: egg white, amount: 1 g, amont: 60 g}\n",
     F "8:42: error: an ingredient line has no key \"amont\"\n  hint: did you mean \"amount\"?\n"},
    {"a group without lines", "  - group: To serve\n",
     F "8:5: error: a group of ingredients needs \"lines\"\n"
       "  hint: for example: lines: [2 tbsp almond butter]\n"},
    {"lines without a group", "  - lines: [60 g egg white]\n",
     F "8:5: error: a group of ingredients needs \"group\"\n"},
    {"a group with an amount", "  - {group: A, lines: [60 g egg white], amount: 2}\n",
     F "8:41: error: a group of ingredients has no key \"amount\"\n"
       "  hint: it is one of: group, lines\n"},
};

static void test_line_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(line_faults); i++) {
        arena *a = arena_new();
        problems found;
        pantry shelf = small_shelf(a);
        char *bytes =
            arena_format(a,
                         "---\ntitle: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients:\n"
                         "  - 60 g coconut flour\n%s---\n",
                         line_faults[i].item);
        (void)read_from(a, bytes, &shelf, &found);
        expect_words(line_faults[i].name, printed(a, &found), line_faults[i].report);
        arena_free(a);
    }
}

static void test_unknown_ingredient(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    const recipe *r =
        read_from(a,
                  "---\ntitle: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients:\n"
                  "  - 60 g coconut flour\n  - 5 g unobtainium\n---\n",
                  &shelf, &found);
    assert_int_equal(found.errors, 1);
    assert_int_equal(found.items[0].at.line, 8);
    assert_int_equal(r->lines.count, 2);
    assert_int_equal(r->unweighed, 1);
    expect_number("the rest", r->batch_g, 60);
    arena_free(a);
}

static void test_too_many_lines(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found;
    pantry shelf = small_shelf(a);
    text bytes = TEXT_EMPTY;
    text_add(&bytes, "---\ntitle: T\nsummary: S\nkind: bar\nmakes: 8 bars\ningredients:\n");
    for (int i = 0; i < RECIPE_LINES_MOST + 1; i++)
        text_add(&bytes, "  - 1 g coconut flour\n");
    text_add(&bytes, "---\n");
    const recipe *r = read_from(a, bytes.bytes, &shelf, &found);
    expect_words("problems", printed(a, &found),
                 F "71:5: error: a recipe has 64 ingredient lines at the most\n"
                   "  hint: split the recipe in two\n");
    assert_int_equal(r->lines.count, RECIPE_LINES_MOST);
    text_free(&bytes);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_words),          cmocka_unit_test(test_baking),
        cmocka_unit_test(test_lines),          cmocka_unit_test(test_least),
        cmocka_unit_test(test_less_than_one),  cmocka_unit_test(test_group_after_and_before),
        cmocka_unit_test(test_yields),         cmocka_unit_test(test_ovens),
        cmocka_unit_test(test_pans),           cmocka_unit_test(test_faults),
        cmocka_unit_test(test_line_faults),    cmocka_unit_test(test_unknown_ingredient),
        cmocka_unit_test(test_too_many_lines),
    };
    return cmocka_run_group_tests_name("recipe", tests, NULL, NULL);
}
