#include "shelf.h"

#include "measure/naming.h"

static void parts_a_name_from_its_words(void **state) {
    (void)state;
    static const struct {
        const char *words, *what, *name;
        size_t at;
        const char *before, *after, *turns, *may_turn;
    } rows[] = {
        {"oat flour", "oat flour", "oat flour", 0, "", "", "", ""},
        {"very ripe Bananas", "banana", "Bananas", 10, "very ripe", "", "", ""},
        {"bananas mashed well", "banana", "bananas", 0, "", "mashed well", "", ""},
        {"fine Oat-Flour", "oat flour", "Oat-Flour", 5, "fine", "", "", ""},
        {"oat \u2013 flour", "oat flour", "oat \u2013 flour", 0, "", "", "", ""},
        {"\u2013 butter \u2013 cold", "butter", "butter", 4, "\u2013", "\u2013 cold", "", ""},
        {"butter for the walnut layer", "butter", "butter", 0, "", "for the walnut layer", "", ""},
        {"chickpeas in salt water", "chickpea", "chickpeas", 0, "", "in salt water", "", ""},
        {"2% milk", "milk", "milk", 3, "2%", "", "", ""},
        {"vanilla whey protein isolate", "whey protein isolate", "whey protein isolate", 8,
         "vanilla", "", "", ""},
        {"chocolate milk", "milk", "milk", 10, "chocolate", "", "", "chocolate"},
        {"soy milk", "milk", "milk", 4, "soy", "", "", "soy"},
        {"finely ground toasted almonds", "almond", "almonds", 22, "finely ground toasted", "", "",
         ""},
        {"garlic cloves", "garlic", "garlic", 0, "", "cloves", "", ""},
        {"almond extract", NULL, "almond extract", 0, "", "", "extract", ""},
        {"walnut oils", NULL, "walnut oils", 0, "", "", "oils", ""},
        {"banana walnut", NULL, "banana walnut", 0, "", "", "walnut", ""},
        {"dragon scales", NULL, "dragon scales", 0, "", "", "", ""},
        {"", NULL, "", 0, "", "", "", ""},
    };
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = shelf_filled(a, &found);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *row = rows[i].words;
        naming got = naming_read(a, span_of(row), &shelf);
        same_text(row, got.what ? got.what->name : "(none)",
                  rows[i].what ? rows[i].what : "(none)");
        same_text(row, got.name, rows[i].name);
        same_count(row, got.name_at, rows[i].at);
        same_text(row, got.before, rows[i].before);
        same_text(row, got.after, rows[i].after);
        same_text(row, got.turns ? got.turns : "", rows[i].turns);
        same_text(row, got.may_turn ? got.may_turn : "", rows[i].may_turn);
    }
    arena_free(a);
}

static void knows_the_measures_of_an_entry(void **state) {
    (void)state;
    static const struct {
        const char *of, *words, *measure;
        size_t used;
    } rows[] = {{"lemon", "wedges", "wedge", 6}, {"lemon", "wedge of", "wedge", 5},
                {"lemon", "wedged", NULL, 0},    {"walnut", "halves chopped", "half", 6},
                {"walnut", "half", "half", 4},   {"salt", "dashes", "dash", 6},
                {"salt", "", NULL, 0},           {"garlic", "clove", "clove", 5}};
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = shelf_filled(a, &found);
    for (size_t i = 0; i < COUNT(rows); i++) {
        size_t used = 0;
        const char *measure = naming_measure(pantry_find(&shelf, span_of(rows[i].of), a),
                                             span_of(rows[i].words), &used);
        same_text(rows[i].words, measure ? measure : "(none)",
                  rows[i].measure ? rows[i].measure : "(none)");
        if (measure)
            same_count(rows[i].words, used, rows[i].used);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parts_a_name_from_its_words),
        cmocka_unit_test(knows_the_measures_of_an_entry),
    };
    return cmocka_run_group_tests_name("naming", tests, NULL, NULL);
}
