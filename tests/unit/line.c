#include "shelf.h"

#include "measure/line.h"

static const place start = {"recipes/rounds.md", 14, 5};

typedef struct {
    arena *a;
    problems found;
    pantry shelf;
    recipe_line line;
    bool good;
} reading;

static reading read_it(const char *written) {
    reading r = {.a = arena_new()};
    r.found = problems_in(r.a);
    r.shelf = shelf_filled(r.a, &r.found);
    r.good = line_read(r.a, (located){span_of(written), start}, &r.shelf, &r.line, &r.found);
    return r;
}

static const char *shown(const char *words) {
    return words ? words : "";
}

static void reads_lines(void **state) {
    (void)state;
    static const struct {
        const char *written;
        double low, high; /* 0: no amount */
        const char *in, *name, *what, *preparation;
    } rows[] = {
        /* amount, unit, name */
        {"60 g pea protein powder", 60, 60, "g", "pea protein powder", "pea protein powder", ""},
        {"60g pea protein", 60, 60, "g", "pea protein", "pea protein powder", ""},
        {"60\u00a0g oat flour", 60, 60, "g", "oat flour", "oat flour", ""},
        {"1/2 cup egg whites", 0.5, 0.5, "cup", "egg whites", "egg white", ""},
        {"\u00bd cup Egg Whites", 0.5, 0.5, "cup", "Egg Whites", "egg white", ""},
        {"1 1/2 cups oat-flour", 1.5, 1.5, "cup", "oat-flour", "oat flour", ""},
        {"0,5 l milk", 0.5, 0.5, "l", "milk", "milk", ""},
        {"2-3 tbsp. milk", 2, 3, "tbsp", "milk", "milk", ""},
        {"2 to 3 T milk", 2, 3, "tbsp", "milk", "milk", ""},
        {"2 t milk", 2, 2, "tsp", "milk", "milk", ""},
        {"1 fl. oz. milk", 1, 1, "fl oz", "milk", "milk", ""},
        {"half a cup of rolled oats", 0.5, 0.5, "cup", "rolled oats", "rolled oats", ""},
        {"about 60 g oat flour", 60, 60, "g", "oat flour", "oat flour", ""},
        {"60 g of oat flour", 60, 60, "g", "oat flour", "oat flour", ""},
        /* counts and sizes */
        {"2 eggs", 2, 2, "", "eggs", "egg", ""},
        {"Two large eggs", 2, 2, "large", "eggs", "egg", ""},
        {"2 large egg whites", 2, 2, "large", "egg whites", "egg white", ""},
        {"1 medium-sized banana", 1, 1, "medium", "banana", "banana", ""},
        {"3 eggs, small", 3, 3, "small", "eggs", "egg", "small"},
        {"3 eggs (medium)", 3, 3, "medium", "eggs", "egg", "medium"},
        {"an egg", 1, 1, "", "egg", "egg", ""},
        {"half a lemon", 0.5, 0.5, "", "lemon", "lemon", ""},
        {"2 dozen almonds", 24, 24, "", "almonds", "almond", ""},
        {"1 small handful almonds", 1, 1, "handful", "almonds", "almond", "small"},
        {"2 scoops pea protein", 2, 2, "scoop", "pea protein", "pea protein powder", ""},
        {"1 stick butter, softened", 1, 1, "stick", "butter", "butter", "softened"},
        {"2 wedges lemon", 2, 2, "wedge", "lemon", "lemon", ""},
        {"2 lemon wedges", 2, 2, "wedge", "lemon", "lemon", ""},
        {"3 large garlic cloves, crushed", 3, 3, "clove", "garlic", "garlic", "large, crushed"},
        {"10 walnut halves", 10, 10, "half", "walnut", "walnut", ""},
        {"2 cloves", 2, 2, "", "cloves", "clove", ""},
        {"2 packets of pea protein", 2, 2, "packet", "pea protein", "pea protein powder", ""},
        /* a little */
        {"a pinch of salt", 1, 1, "pinch", "salt", "salt", ""},
        {"pinch salt", 1, 1, "pinch", "salt", "salt", ""},
        {"handful of almonds", 1, 1, "handful", "almonds", "almond", ""},
        {"2 dashes vanilla", 2, 2, "dash", "vanilla", "vanilla extract", ""},
        /* what is done to it */
        {"1 ripe banana, mashed", 1, 1, "", "banana", "banana", "ripe, mashed"},
        {"1 cup oat flour, sifted, then dried", 1, 1, "cup", "oat flour", "oat flour",
         "sifted, then dried"},
        {"1 cup chickpeas cooked until soft", 1, 1, "cup", "chickpeas", "chickpea",
         "cooked until soft"},
        {"1 packed cup oat flour", 1, 1, "cup", "oat flour", "oat flour", "packed"},
        {"2 level tbsp oat flour", 2, 2, "tbsp", "oat flour", "oat flour", "level"},
        {"1 cup 2% milk", 1, 1, "cup", "milk", "milk", "2%"},
        {"2 scoops vanilla whey protein isolate", 2, 2, "scoop", "whey protein isolate",
         "whey protein isolate", "vanilla"},
        {"1 scoop vanilla pea protein", 1, 1, "scoop", "pea protein", "pea protein powder",
         "vanilla"},
        {"60 g butter \u2013 cold", 60, 60, "g", "butter", "butter", "cold"},
        {"1 lemon, zest only", 1, 1, "", "lemon", "lemon", "zest only"},
        {"60 g butter for the tin", 60, 60, "g", "butter", "butter", "for the tin"},
        {"1 cup oat flour; sifted", 1, 1, "cup", "oat flour", "oat flour", "sifted"},
        /* brackets that are no weight */
        {"1 cup (240 ml) milk", 1, 1, "cup", "milk", "milk", "240 ml"},
        {"60 g almonds (toasted (lightly))", 60, 60, "g", "almonds", "almond", "toasted (lightly)"},
        {"1 cup milk (2% fat)", 1, 1, "cup", "milk", "milk", "2% fat"},
        /* two measures */
        {"2 tbsp to 3 tbsp milk", 2, 3, "tbsp", "milk", "milk", ""},
        {"100g/3\u00bdoz oat flour", 100, 100, "g", "oat flour", "oat flour", ""},
        /* the amount behind the name */
        {"oat flour 60 g", 60, 60, "g", "oat flour", "oat flour", ""},
        {"oat flour: 60-70 g, sifted", 60, 70, "g", "oat flour", "oat flour", "sifted"},
        {"oat flour \u2013 1 1/2 cups", 1.5, 1.5, "cup", "oat flour", "oat flour", ""},
        {"eggs 2 large", 2, 2, "large", "eggs", "egg", ""},
        {"oat flour, 60 g", 60, 60, "g", "oat flour", "oat flour", ""},
        {"oat flour, sifted, about 60 g", 60, 60, "g", "oat flour", "oat flour", "sifted"},
        /* in what it is bought */
        {"2 x 400 g cans chickpeas", 800, 800, "g", "chickpeas", "chickpea", "cans"},
        {"2 x large eggs", 2, 2, "large", "eggs", "egg", ""},
        {"2 x-large eggs", 2, 2, "extra large", "eggs", "egg", ""},
        {"3 x tbsp milk", 3, 3, "tbsp", "milk", "milk", ""},
        {"2\u00d7400g chickpeas, drained", 800, 800, "g", "chickpeas", "chickpea", "drained"},
        {"400 g tin of chickpeas", 400, 400, "g", "chickpeas", "chickpea", "tin"},
        /* a part of a whole one */
        {"butter of 2 almonds", 2, 2, "", "almond butter", "almond butter", ""},
        {"smooth butter of half an almond, cold", 0.5, 0.5, "", "almond butter", "almond butter",
         "smooth, cold"},
        /* no amount */
        {"salt to taste", 0, 0, "", "salt", "salt", "to taste"},
        {"salt", 0, 0, "", "salt", "salt", ""},
        {"2% milk", 0, 0, "", "milk", "milk", "2%"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *row = rows[i].written;
        reading r = read_it(row);
        if (!r.good || r.found.count)
            fail_msg("%s: %s", row, r.found.count ? r.found.items[0].message : "not read");
        assert_int_equal(r.line.has_amount, rows[i].low > 0);
        same_number(row, r.line.quantity.low, rows[i].low, 0);
        same_number(row, r.line.quantity.high, rows[i].high, 0);
        same_text(row, r.line.in ? r.line.in->name : "", rows[i].in);
        same_text(row, r.line.name, rows[i].name);
        same_text(row, r.line.what->name, rows[i].what);
        same_text(row, shown(r.line.preparation), rows[i].preparation);
        same_text(row, r.line.written, row);
        assert_false(r.line.has_own_weight);
        arena_free(r.a);
    }
}

static void reads_the_authors_own_weight(void **state) {
    (void)state;
    static const struct {
        const char *written;
        double low_g, high_g;
        const char *preparation;
    } rows[] = {
        {"1/2 cup (46 g) oat flour", 46, 46, ""},
        {"1/2 cup oat flour (46 g)", 46, 46, ""},
        {"1/2 cup oat (46 g) flour", 46, 46, ""},
        {"1/2 cup oat flour (about 46g), sifted", 46, 46, "sifted"},
        {"1/2 cup (45-50 g) oat flour", 45, 50, ""},
        {"1/2 cup (46 g / 1.6 oz) oat flour", 46, 46, ""},
        {"1/2 cup (1 oz) oat flour", 28.349523125, 28.349523125, ""},
        {"1/2 cup / 46 g oat flour", 46, 46, ""},
        {"1 (14 oz) can chickpeas", 396.89332375, 396.89332375, ""},
        {"2 (400 g) cans chickpeas", 800, 800, ""},
        {"2-3 (400 g) cans chickpeas", 800, 1200, ""},
        {"2 cans (400 g each) chickpeas", 800, 800, ""},
        {"2 cans chickpeas (800 g)", 800, 800, ""},
        {"2 (50 g) eggs", 50, 50, ""},
        {"2 eggs (50 g each)", 100, 100, ""},
        {"1 can chickpeas (240 g drained)", 240, 240, "drained"},
        {"1 cup (104 g) oat flour (sifted)", 104, 104, "sifted"},
        {"oat flour (46 g)", 46, 46, ""},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *row = rows[i].written;
        reading r = read_it(row);
        if (!r.good || r.found.count || !r.line.has_own_weight)
            fail_msg("%s: %s", row, r.found.count ? r.found.items[0].message : "no own weight");
        same_number(row, r.line.own_weight_g.low, rows[i].low_g, 0);
        same_number(row, r.line.own_weight_g.high, rows[i].high_g, 0);
        same_text(row, shown(r.line.preparation), rows[i].preparation);
        arena_free(r.a);
    }
}

static void adds_further_measures(void **state) {
    (void)state;
    static const struct {
        const char *written, *in;
        size_t count;
        double last;
        const char *last_in;
    } rows[] = {{"1 cup + 2 tbsp oat flour", "cup", 1, 2, "tbsp"},
                {"1 cup plus 1/2 tsp oat flour", "cup", 1, 0.5, "tsp"},
                {"1 lb and 2 oz oat flour", "lb", 1, 2, "oz"},
                {"1 cup & 1 tbsp of oat flour", "cup", 1, 1, "tbsp"},
                {"1/2 cup + 1 tbsp + 2 tsp oat flour", "cup", 2, 2, "tsp"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        reading r = read_it(rows[i].written);
        assert_true(r.good);
        same_count(rows[i].written, r.found.count, 0);
        same_text(rows[i].written, r.line.in->name, rows[i].in);
        same_count(rows[i].written, r.line.more_count, rows[i].count);
        const further_measure *last = &r.line.more[rows[i].count - 1];
        same_text(rows[i].written, last->in->name, rows[i].last_in);
        same_number(rows[i].written, last->quantity.low, rows[i].last, 0);
        same_text(rows[i].written, r.line.name, "oat flour");
        arena_free(r.a);
    }
}

static void tells_optional_and_to_taste(void **state) {
    (void)state;
    static const struct {
        const char *written;
        bool optional, to_taste;
        const char *preparation;
    } rows[] = {{"60 g oat flour (optional)", true, false, ""},
                {"60 g oat flour (Optional, sifted)", true, false, "sifted"},
                {"(optional) 60 g oat flour", true, false, ""},
                {"60 g oat flour, sifted, optional", true, false, "sifted"},
                {"60 g oat flour optional", true, false, ""},
                {"1/2 cup (46 g, optional) oat flour", true, false, ""},
                {"60 g oat flour", false, false, ""},
                {"salt, to taste", false, true, "to taste"},
                {"Salt to taste", false, true, "to taste"},
                {"oat flour for dusting", false, true, "for dusting"},
                {"butter, for the tin", false, true, "for the tin"},
                {"milk as needed", false, true, "as needed"},
                {"almonds, to serve (optional)", true, true, "to serve"},
                {"1 tsp salt, or to taste", false, false, "or to taste"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        reading r = read_it(rows[i].written);
        assert_true(r.good);
        if (r.line.optional != rows[i].optional || r.line.to_taste != rows[i].to_taste)
            fail_msg("%s", rows[i].written);
        same_text(rows[i].written, shown(r.line.preparation), rows[i].preparation);
        arena_free(r.a);
    }
}

static void says_what_is_wrong_and_where(void **state) {
    (void)state;
    static const struct {
        const char *written;
        bool read;
        unsigned column; /* of the file: the line stands at column 5 */
        const char *message, *hint;
    } rows[] = {
        {"", false, 5, "this ingredient line is empty", "write it as 60 g oat flour, sifted"},
        {"   ", false, 5, "this ingredient line is empty", "write it as 60 g oat flour, sifted"},
        {"\u00bd\u00bd cup milk", false, 5, "can't read the amount \"\u00bd\u00bd\"",
         "write 1/2, 0.5 or 0,5; a range as 2-3; at most 100000"},
        {"  1/0 cup milk", false, 7, "can't read the amount \"1/0\"", "write 1/2"},
        {"3-2 tbsp milk", false, 5, "can't read the amount \"3-2\"", "write 1/2"},
        {"-5 g milk", false, 5, "can't read the amount \"-5\"", "write 1/2"},
        {"200000 g milk", false, 5, "can't read the amount \"200000\"", "write 1/2"},
        {"1,000 g milk", false, 5, "can't read the amount \"1,000\"", "write 1000 or 1.0"},
        {"0 g milk", false, 5, "can't read the amount \"0\"", "leave the line out"},
        {"1 cup", false, 10, "this line names no ingredient", "write it as"},
        {"60 g, sifted", false, 9, "this line names no ingredient", "write it as"},
        {"\u00bd cup (46 milk", false, 11, "this bracket is not closed", "close it: (46 g)"},
        {"\u00bd cup 46) milk", false, 13, "a bracket is closed that was not opened", "take it"},
        {"1 cup (46) milk", false, 11, "can't read the weight in brackets \"(46)\"",
         "write it as (46 g)"},
        {"1 cup (46 gg) milk", false, 11, "can't read the weight in brackets \"(46 gg)\"", "write"},
        {"1 cup (0 g) milk", false, 11, "can't read the weight in brackets \"(0 g)\"", "write"},
        {"1 cup (\u00bd\u00bd g) milk", false, 11,
         "can't read the weight in brackets \"(\u00bd\u00bd g)\"", "write"},
        {"1 cup 2 tbsp milk", false, 11, "can't tell what \"2 tbsp\" is of", "join two measures"},
        {"1 12-oz can chickpeas", false, 7, "can't tell what \"12-oz\" is of", "is it 2 x 12-oz?"},
        {"2 eggs + 1 white", false, 14, "can't tell what \"1 white\" is of", "join"},
        {"2 eggs and 1 egg white", false, 16, "can't tell what \"1 egg white\" is of", "join"},
        {"2 eggs + 1 tbsp milk", false, 14, "can't tell what \"1 tbsp\" is of", "join"},
        {"1 cup + 1 tbsp + 1 tsp + 1 tsp milk", false, 30, "can't tell what \"1 tsp\" is of",
         "join"},
        {"oat flour 60 g sifted", false, 15, "can't tell what \"60 g\" is of",
         "write the amount first: 60 g oat flour"},
        {"juice of 2 pomelos", true, 5, "no ingredient is called \"juice of 2 pomelos\"",
         "write the amount first: 2 pomelos, juice only"},
        {"1 cup ot flour", true, 11, "no ingredient is called \"ot flour\"",
         "did you mean \"oat flour\"?"},
        {"\u00bd cup r\u00f4lled otas", true, 11, "no ingredient is called \"r\u00f4lled otas\"",
         "did you mean \"rolled oats\"?"},
        {"1 cup oat flower", true, 11, "no ingredient is called \"oat flower\"",
         "did you mean \"oat flour\"?"},
        {"2 tbsp almnd butter", true, 12, "no ingredient is called \"almnd butter\"",
         "did you mean \"almond butter\"?"},
        {"1 cup dragon scales", true, 11, "no ingredient is called \"dragon scales\"",
         "add it to a file in pantry/"},
        {"1 tsp almond extract", true, 11, "no ingredient is called \"almond extract\"",
         "add it to a file in pantry/; if \"extract\" says how it is prepared, put a comma"},
        {"1 cup chickpea flour", true, 11, "no ingredient is called \"chickpea flour\"", "add it"},
        {"1 cup almond milk", true, 11, "no ingredient is called \"almond milk\"", "add it"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        reading r = read_it(rows[i].written);
        same_count(rows[i].written, r.found.errors, 1);
        const problem *p = &r.found.items[0];
        if (r.good != rows[i].read || (r.good && r.line.what))
            fail_msg("%s: read or known", rows[i].written);
        same_text(rows[i].written, p->message, rows[i].message);
        same_count(rows[i].written, p->at.line, 14);
        same_count(rows[i].written, p->at.column, rows[i].column);
        if (!span_begins(span_of(p->hint), rows[i].hint))
            fail_msg("%s: hint \"%s\"", rows[i].written, p->hint);
        arena_free(r.a);
    }
}

static void warns_of_what_is_in_doubt(void **state) {
    (void)state;
    static const struct {
        const char *written, *message;
        unsigned column;
    } rows[] = {
        {"2 heaped tbsp almond butter", "\"heaped\" is no measure: it is weighed as level", 7},
        {"1 cup soy milk", "\"soy milk\" is weighed as milk: \"soy\" before it is not looked at",
         11},
        {"1 tsp salt, plus 1 tsp for dusting", "\"1 tsp\" is not weighed", 22},
        {"2 eggs, beaten, ~ 90g", "\"90g\" behind the comma is not looked at", 23},
        {"1 cup milk, about 240 g", "\"240 g\" behind the comma is not looked at", 23},
        {"tsp salt", "\"tsp\" has no number before it: it is weighed as one", 5},
        {"Cup oat flour", "\"Cup\" has no number before it: it is weighed as one", 5},
        {"scoop pea protein", "\"scoop\" has no number before it: it is weighed as one", 5},
        {"1 cup milk, heaped", "\"heaped\" is no measure: it is weighed as level", 17},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        reading r = read_it(rows[i].written);
        assert_true(r.good);
        same_count(rows[i].written, r.found.warnings, 1);
        same_count(rows[i].written, r.found.errors, 0);
        same_text(rows[i].written, r.found.items[0].message, rows[i].message);
        same_count(rows[i].written, r.found.items[0].at.column, rows[i].column);
        arena_free(r.a);
    }
}

static void a_line_that_is_none_leaves_out_untouched(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = shelf_filled(a, &found);
    static const char with_nul[] = "1 cup\0milk";
    char *endless = ARENA_ARRAY(a, char, 5000);
    memset(endless, 'x', 5000);
    const span rows[] = {
        span_of(""), {with_nul, sizeof with_nul - 1}, {endless, 5000}, span_of("1/0 g milk")};
    for (size_t i = 0; i < COUNT(rows); i++) {
        recipe_line line = {.written = "untouched"};
        size_t before = found.errors;
        assert_false(line_read(a, (located){rows[i], start}, &shelf, &line, &found));
        assert_string_equal(line.written, "untouched");
        assert_int_equal(found.errors, before + 1);
    }
    arena_free(a);
}

static void reads_the_mapping_form(void **state) {
    (void)state;
    static const struct {
        const char *name, *quantity, *note;
        bool good, to_taste;
        double low, own_g;
        const char *in, *what, *preparation, *written;
    } rows[] = {
        {"oat flour", "60 g", NULL, true, false, 60, 0, "g", "oat flour", "", "60 g oat flour"},
        {"oat flour, sifted", "1/2 cup (46 g)", "fine", true, false, 0.5, 46, "cup", "oat flour",
         "sifted, fine", "1/2 cup (46 g) oat flour, sifted, fine"},
        {"eggs", "2 large", NULL, true, false, 2, 0, "large", "egg", "", "2 large eggs"},
        {"eggs", "2", NULL, true, false, 2, 0, "", "egg", "", "2 eggs"},
        {"chickpeas (400 g)", "2 cans", NULL, true, false, 2, 400, "can", "chickpea", "",
         "2 cans chickpeas (400 g)"},
        {"2 eggs", "", NULL, true, false, 2, 0, "", "egg", "", "2 eggs"},
        {"salt", "to taste", NULL, true, true, 0, 0, "", "salt", "to taste", "to taste salt"},
        {"salt", "", "to taste", true, true, 0, 0, "", "salt", "to taste", "salt, to taste"},
        {"oat flour", "a lot", NULL, false, false, 0, 0, "", "", "", ""},
        {"oat flour", "60 gg", NULL, false, false, 0, 0, "", "", "", ""},
        {"oat flour", "1/0", NULL, false, false, 0, 0, "", "", "", ""},
        {"oat flour", "60 g (", NULL, false, false, 0, 0, "", "", "", ""},
        {"60 g oat flour", "60 g", NULL, false, false, 0, 0, "", "", "", ""},
        {"", "60 g", NULL, false, false, 0, 0, "", "", "", ""},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        pantry shelf = shelf_filled(a, &found);
        recipe_line line = {0};
        const char *row = rows[i].written[0] ? rows[i].written : rows[i].quantity;
        bool good = line_read_parts(a, (located){span_of(rows[i].name), start},
                                    (located){span_of(rows[i].quantity), start}, rows[i].note, true,
                                    &shelf, &line, &found);
        same_count(row, good, rows[i].good);
        same_count(row, found.errors, !rows[i].good);
        if (good) {
            assert_true(line.optional);
            same_count(row, line.to_taste, rows[i].to_taste);
            same_number(row, line.quantity.low, rows[i].low, 0);
            same_number(row, line.own_weight_g.low, rows[i].own_g, 0);
            same_text(row, line.in ? line.in->name : "", rows[i].in);
            same_text(row, line.what->name, rows[i].what);
            same_text(row, shown(line.preparation), rows[i].preparation);
            same_text(row, line.written, rows[i].written);
        }
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_lines),
        cmocka_unit_test(reads_the_authors_own_weight),
        cmocka_unit_test(adds_further_measures),
        cmocka_unit_test(tells_optional_and_to_taste),
        cmocka_unit_test(says_what_is_wrong_and_where),
        cmocka_unit_test(warns_of_what_is_in_doubt),
        cmocka_unit_test(a_line_that_is_none_leaves_out_untouched),
        cmocka_unit_test(reads_the_mapping_form),
    };
    return cmocka_run_group_tests_name("line", tests, NULL, NULL);
}
