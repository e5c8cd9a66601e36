/* site/method.h: a method as HTML, with what its steps say of the ingredients marked. */
#include "reference_shelf.h"

#include "site/method.h"

#include <stdint.h>

enum { LINES = 5, PEA = 0, MILK, EGGS, PEANUT, SALT };

static const char *const written[LINES] = {"60 g pea protein powder", "1 cup milk", "2 large eggs",
                                           "1/2 cup peanut butter", "1/4 tsp salt"};

/* What the swapped recipe of a test is: its line `at` is `change`. */
typedef struct {
    const char *now, *joined; /* names; null: none */
    double times;
    bool gone;
} changed;

static const recipe *recipe_read(arena *a, const pantry *shelf) {
    recipe *of = ARENA_NEW(a, recipe);
    problems found = problems_in(a);
    of->weights = ARENA_ARRAY(a, weight, LINES);
    for (size_t i = 0; i < LINES; i++) {
        recipe_line line;
        assert_true(
            line_read(a, (located){span_of(written[i]), {"test", 1, 1}}, shelf, &line, &found));
        LIST_ADD(a, &of->lines, line);
        assert_true(weigh_line(&line, CUPS_US, &of->weights[i], &found));
    }
    return of;
}

static method read_method(arena *a, const pantry *shelf, const line_change *changes,
                          const char *body) {
    mention_names called = mention_names_of(a, recipe_read(a, shelf), shelf, CUPS_US);
    method_words how = {
        &called, changes, NULL, changes ? "../" : "", NULL, NULL, language_english(a)};
    return method_of(a, &how, span_of(body));
}

static void as_written_the_steps_are_marked(void **state) {
    static const struct {
        const char *name, *body, *html, *notes;
    } rows[] = {
        {"a name", "1. Sift the pea protein powder.",
         "<li>Sift the <span data-line=\"0\">pea protein powder</span>.</li>", ""},
        {"a word that is less than the name", "1. Whip the whites.",
         "<li>Whip the <span data-line=\"2\" data-loose>whites</span>.</li>", ""},
        {"an amount", "1. Warm 2 tablespoons of the milk.",
         "<li>Warm <data value=\"30.5\" data-line=\"1\">2 tablespoons</data> of the "
         "<span data-line=\"1\">milk</span>.</li>",
         ""},
        {"a count", "1. Beat 1 of the eggs.",
         "<li>Beat <data value=\"50\" data-line=\"2\">1</data> of the "
         "<span data-line=\"2\">eggs</span>.</li>",
         ""},
        {"an amount that can't be changed where it stands", "1. Warm half the milk.",
         "<li>Warm half the <span data-line=\"1\">milk</span>.</li>", ""},
        {"what is no ingredient of the list", "1. Dust it with cocoa.",
         "<li>Dust it with cocoa.</li>", ""},
        {"mark-up stays", "1. Sift the *milk* & `salt`.",
         "<li>Sift the <em><span data-line=\"1\">milk</span></em> &amp; <code>salt</code>.</li>",
         ""},
        {"a time", "1. Bake it 55 to 58 minutes; wait 90 seconds.",
         "<li>Bake it <time datetime=\"PT3300S\">55 to 58 minutes</time>; wait "
         "<time datetime=\"PT90S\">90 seconds</time>.</li>",
         ""},
        {"a time behind an ingredient", "1. Warm the milk 5 minutes.",
         "<span data-line=\"1\">milk</span> <time datetime=\"PT300S\">5 minutes</time>.</li>", ""},
        {"a time outside of the steps is no step's", "1. Stir.\n\nChill 2 hours.", "<li>Stir.</li>",
         "<p>Chill 2 hours.</p>\n"},
        {"a link is left alone", "1. As in [milk bread](../milk/).",
         "<li>As in <a href=\"../milk/\">milk bread</a>.</li>", ""},
        {"what follows the steps is said of the recipe as written",
         "Before: milk.\n\n1. Milk.\n\n## Notes\n\nMilk keeps.", "<p>Before: milk.</p>",
         "<h2>Notes</h2>\n<p>Milk keeps.</p>\n"},
        {"without a numbered list nothing is marked", "Milk, milk.", "<p>Milk, milk.</p>", ""},
        {"raw HTML is left out", "1. Milk <script>x</script>.", "<!-- raw HTML omitted -->", ""},
    };
    const pantry *shelf = *state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        method how = read_method(a, shelf, NULL, rows[i].body);
        if (!strstr(how.steps_html, rows[i].html))
            fail_msg("%s: %s", rows[i].name, how.steps_html);
        if (strcmp(how.notes_html, rows[i].notes) != 0)
            fail_msg("%s: notes %s", rows[i].name, how.notes_html);
    }
    arena_free(a);
}

static void with_a_swap_the_steps_say_what_is_now(void **state) {
    /* milk 1 cup is 244 g and 2 tbsp of it 30.5 g (USDA SR28 01077); large eggs 50 g (01123) */
    static const struct {
        const char *name, *body;
        size_t line;
        changed to;
        const char *html, *step;
    } rows[] = {
        {"another ingredient",
         "1. Sift the pea protein powder.",
         PEA,
         {"whey protein isolate", NULL, 0.9, false},
         "<li>Sift the <ins>whey protein isolate</ins> "
         "<span class=\"aside\">(was pea protein powder)</span>.</li>",
         "Sift the whey protein isolate (was pea protein powder)."},
        {"what begins a sentence is said of itself",
         "1. Sift. Pea protein powder clumps.",
         PEA,
         {"whey protein isolate", NULL, 0.9, false},
         "<li>Sift. Pea protein powder clumps.</li>",
         "Sift. Pea protein powder clumps."},
        {"and what does something itself",
         "1. Wait until the pea protein powder drinks.",
         PEA,
         {"whey protein isolate", NULL, 0.9, false},
         "<li>Wait until the pea protein powder drinks.</li>",
         "Wait until the pea protein powder drinks."},
        {"behind an article the name stays",
         "1. Take a pea protein powder you like.",
         PEA,
         {"whey protein isolate", NULL, 0.9, false},
         "a pea protein powder <span class=\"aside\">(now whey protein isolate)</span> you",
         "Take a pea protein powder (now whey protein isolate) you like."},
        {"but not where it has an amount",
         "1. 20 g pea protein powder first.",
         PEA,
         {"whey protein isolate", NULL, 0.9, false},
         "<li><data value=\"18\" data-line=\"0\">18 g</data> <ins>whey protein isolate</ins> <span",
         "18 g whey protein isolate (was pea protein powder) first."},
        {"a drop stays a drop",
         "1. Try it with a drop of milk.",
         MILK,
         {NULL, NULL, 0.5, false},
         "<li>Try it with a drop of milk.</li>",
         "Try it with a drop of milk."},
        {"with its amount",
         "1. Sift 20 g of the pea protein powder.",
         PEA,
         {"whey protein isolate", NULL, 0.9, false},
         "Sift <data value=\"18\" data-line=\"0\">18 g</data> of the <ins>whey",
         "Sift 18 g of the whey protein isolate (was pea protein powder)."},
        {"a word that is less than the name",
         "1. Whip the whites.",
         EGGS,
         {"egg white", NULL, 1, false},
         "<li>Whip the whites <span class=\"aside\">(now egg white)</span>.</li>",
         "Whip the whites (now egg white)."},
        {"less of the same",
         "1. Warm 2 tablespoons of the milk.",
         MILK,
         {NULL, NULL, 0.5, false},
         "<data value=\"15.25\" data-line=\"1\">1 tbsp</data> of the milk.",
         "Warm 1 tbsp of the milk."},
        {"half a cup",
         "1. Warm half a cup of the milk.",
         MILK,
         {NULL, NULL, 0.5, false},
         "Warm <data value=\"61\" data-line=\"1\">1/4 cup</data> of",
         "Warm 1/4 cup of the milk."},
        {"where the number can't be changed",
         "1. Stir in 2 heaped tablespoons of the peanut butter.",
         PEANUT,
         {NULL, NULL, 0.5, false},
         "peanut butter <span class=\"aside\">(now 16 g)</span>.",
         "Stir in 2 heaped tablespoons of the peanut butter (now 16 g)."},
        {"a part of it goes",
         "1. Stir in the peanut butter.",
         PEANUT,
         {NULL, "almond meal", 0.5, false},
         "peanut butter <ins>and almond meal</ins>.",
         "Stir in the peanut butter and almond meal."},
        {"all of it is gone",
         "1. Stir in the peanut butter.",
         PEANUT,
         {NULL, NULL, 1, true},
         "peanut butter <span class=\"aside\">(left_out)</span>.",
         "Stir in the peanut butter (left_out)."},
        {"another line stays as it is",
         "1. Stir in the salt.",
         PEANUT,
         {"almond butter", NULL, 1, false},
         "<li>Stir in the salt.</li>",
         "Stir in the salt."},
        {"a link leads from a folder below",
         "1. Stir as in [this](../x/).",
         PEANUT,
         {NULL, NULL, 1, false},
         "<a href=\"../../x/\">this</a>",
         "Stir as in this."},
        {"a whole address stays",
         "1. Stir as in [this](https://galley.example/x).",
         PEANUT,
         {NULL, NULL, 1, false},
         "<a href=\"https://galley.example/x\">",
         "Stir as in this."},
    };
    const pantry *shelf = *state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(rows); i++) {
        line_change changes[LINES];
        for (size_t n = 0; n < LINES; n++)
            changes[n] = (line_change){.line = n, .times = 1};
        const changed *to = &rows[i].to;
        changes[rows[i].line] =
            (line_change){.line = to->gone ? SIZE_MAX : rows[i].line,
                          .times = to->times,
                          .now = to->now ? on_shelf(shelf, to->now) : NULL,
                          .joined = to->joined ? on_shelf(shelf, to->joined) : NULL};
        method how = read_method(a, shelf, changes, rows[i].body);
        assert_int_equal(how.step_count, 1);
        if (rows[i].html && !strstr(how.steps_html, rows[i].html))
            fail_msg("%s: %s", rows[i].name, how.steps_html);
        if (rows[i].step && strcmp(how.steps[0], rows[i].step) != 0)
            fail_msg("%s: %s", rows[i].name, how.steps[0]);
    }
    arena_free(a);
}

/* The items of the first numbered list, in plain words. */
static void steps_are_plain_words(void **state) {
    const pantry *shelf = *state;
    arena *a = arena_new();
    method how =
        read_method(a, shelf, NULL,
                    "A word.\n\n- no step\n\n1. Warm **the milk**\n   slowly.\n\n   Wait.\n"
                    "2. Stir.\n\nThen:\n\n1. Another list.");
    assert_int_equal(how.step_count, 2);
    assert_string_equal(how.steps[0], "Warm the milk slowly. Wait.");
    assert_string_equal(how.steps[1], "Stir.");
    assert_int_equal(read_method(a, shelf, NULL, "").step_count, 0);
    how =
        read_method(a, shelf, NULL, "## Method\n\nMix.\n\n- Rest.\n- Bake.\n\n## Notes\n\nKeeps.");
    assert_int_equal(how.step_count, 3);
    assert_string_equal(how.steps[0], "Mix.");
    assert_string_equal(how.steps[2], "Bake.");
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(as_written_the_steps_are_marked),
                                       cmocka_unit_test(with_a_swap_the_steps_say_what_is_now),
                                       cmocka_unit_test(steps_are_plain_words)};
    return cmocka_run_group_tests_name("method", tests, shelf_up, shelf_down);
}
