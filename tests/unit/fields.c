/* Typed values out of YAML, and what is said when they are wrong. */
#include "reading.h"

#include "base/number.h"
#include "read/fields.h"

/* Each reader takes the key "k" of the row's YAML and writes what it got; "-" for nothing. */
typedef bool taker(const yaml_node *node, text *out, problems *found);

static bool take_text(const yaml_node *node, text *out, problems *found) {
    const char *words;
    if (!field_text(node, "k", &words, found))
        return false;
    text_add(out, words);
    return true;
}

static bool take_number(const yaml_node *node, text *out, problems *found) {
    double value;
    if (!field_number(node, "k", &value, found))
        return false;
    number_add(out, value, 6);
    return true;
}

static bool take_quantity(const yaml_node *node, const char *unit, text *out, problems *found) {
    double value;
    if (!field_quantity(node, "k", unit, &value, found))
        return false;
    number_add(out, value, 6);
    return true;
}

static bool take_grams(const yaml_node *node, text *out, problems *found) {
    return take_quantity(node, "g", out, found);
}

static bool take_milligrams(const yaml_node *node, text *out, problems *found) {
    return take_quantity(node, "mg", out, found);
}

static bool take_millimetres(const yaml_node *node, text *out, problems *found) {
    return take_quantity(node, "mm", out, found);
}

static bool take_minutes(const yaml_node *node, text *out, problems *found) {
    return take_quantity(node, "min", out, found);
}

static bool take_percent(const yaml_node *node, text *out, problems *found) {
    return take_quantity(node, "%", out, found);
}

static bool take_kilocalories(const yaml_node *node, text *out, problems *found) {
    return take_quantity(node, "kcal", out, found);
}

static bool take_share(const yaml_node *node, text *out, problems *found) {
    double value;
    if (!field_share(node, "k", &value, found))
        return false;
    number_add(out, value, 6);
    return true;
}

static bool take_answer(const yaml_node *node, text *out, problems *found) {
    bool value;
    if (!field_answer(node, "k", &value, found))
        return false;
    text_add(out, value ? "yes" : "no");
    return true;
}

static bool take_range(const yaml_node *node, text *out, problems *found) {
    range of;
    if (!field_range(node, "k", &of, found))
        return false;
    number_add(out, of.low, 6);
    text_add_char(out, ' ');
    number_add(out, of.typical, 6);
    text_add_char(out, ' ');
    number_add(out, of.high, 6);
    return true;
}

static bool take_date(const yaml_node *node, text *out, problems *found) {
    const char *date;
    if (!field_date(node, "k", &date, found))
        return false;
    text_add(out, date);
    return true;
}

static bool take_choice(const yaml_node *node, text *out, problems *found) {
    static const char *const words[] = {"works", "adjust", "avoid"};
    size_t which;
    if (!field_choice(node, "k", FIELD_CHOICES(words), &which, found))
        return false;
    text_add(out, words[which]);
    return true;
}

static bool take_words(const yaml_node *node, text *out, problems *found) {
    field_list list;
    if (!field_words(node, "k", &list, found))
        return false;
    for (size_t i = 0; i < list.count; i++)
        text_format(out, "%s%s", i ? "|" : "", list.items[i]->scalar.at);
    return true;
}

static bool take_list(const yaml_node *node, text *out, problems *found) {
    const yaml_node *list = field_node(node, "k", YAML_SEQUENCE, found);
    if (list)
        text_format(out, "%zu items", list->count);
    return list != NULL;
}

static const struct {
    const char *name;
    taker *take;
    const char *yaml, *got;
} rows[] = {
    {"text", take_text, "k: two words", "two words"},
    {"text that is a number", take_text, "k: 12", "12"},
    {"text not there", take_text, "j: 1", "-"},
    {"a key without a value is not there", take_text, "k:\n", "-"},
    {"text that is a list", take_text, "k: [a]", "f:1:4: error: \"k\" must be text\n"},
    {"text of white space", take_text, "k: ' '", "f:1:4: error: \"k\" must be text\n"},
    {"number", take_number, "k: -1.5", "-1.5"},
    {"decimal comma", take_number, "k: 0,5", "0.5"},
    {"a number in quotes", take_number, "k: '2'", "2"},
    {"a number with a unit", take_number, "k: 2 g", "f:1:4: error: \"k\" must be a number\n"},
    {"no number", take_number, "k: many", "f:1:4: error: \"k\" must be a number\n"},
    {"grams bare", take_grams, "k: 24", "24"},
    {"grams", take_grams, "k: 24 g", "24"},
    {"grams without a space", take_grams, "k: 24g", "24"},
    {"milligrams to grams", take_grams, "k: 500 mg", "0.5"},
    {"kilograms to grams", take_grams, "k: 1.5 kg", "1500"},
    {"grams held back", take_grams, "k: -15 g", "-15"},
    {"grams to milligrams", take_milligrams, "k: 0.19 g", "190"},
    {"micrograms to milligrams", take_milligrams, "k: 20 \u00b5g", "0.02"},
    {"millimetres", take_millimetres, "k: 9 mm", "9"},
    {"centimetres to millimetres", take_millimetres, "k: 9.2 cm", "92"},
    {"hours to minutes", take_minutes, "k: 2 h", "120"},
    {"percent", take_percent, "k: 12 %", "0.12"},
    {"percent bare", take_percent, "k: 12", "0.12"},
    {"percent without a space", take_percent, "k: 12%", "0.12"},
    {"kilocalories", take_kilocalories, "k: 120 kcal", "120"},
    {"kilojoules are not taken", take_kilocalories, "k: 500 kJ",
     "f:1:4: error: \"k\" must be a number in kcal\n"},
    {"a weight for a length", take_millimetres, "k: 9 g",
     "f:1:4: error: \"k\" must be a number in mm\n"},
    {"share in percent", take_share, "k: 20 %", "0.2"},
    {"share as a number", take_share, "k: 0.2", "0.2"},
    {"share over the whole", take_share, "k: 120 %",
     "f:1:4: error: \"k\" must be a share: 0 % to 100 %\n"},
    {"a bare 20 is no share", take_share, "k: 20",
     "f:1:4: error: \"k\" must be a share: 0 % to 100 %\n"},
    {"yes", take_answer, "k: yes", "yes"},
    {"no", take_answer, "k: no", "no"},
    {"true", take_answer, "k: true", "yes"},
    {"False", take_answer, "k: False", "no"},
    {"neither", take_answer, "k: maybe", "f:1:4: error: \"k\" must be yes or no\n"},
    {"range of one number", take_range, "k: 104", "104 104 104"},
    {"range in grams", take_range, "k: 104 g", "104 104 104"},
    {"range of three", take_range, "k: {low: 90, typical: 104, high: 120}", "90 104 120"},
    {"range without low", take_range, "k: {typical: 104, high: 120}", "104 104 120"},
    {"range without typical", take_range, "k: {low: 1, high: 2}",
     "f:1:4: error: a range needs \"typical\"\n"},
    {"range upside down", take_range, "k: {low: 5, typical: 4, high: 6}",
     "f:1:4: error: \"k\" must be none below 0, and low <= typical <= high\n"},
    {"range below 0", take_range, "k: -1",
     "f:1:4: error: \"k\" must be none below 0, and low <= typical <= high\n"},
    {"range with a strange key", take_range, "k: {typical: 4, hgh: 6}",
     "f:1:17: error: a range has no key \"hgh\"\n  hint: did you mean \"high\"?\n"},
    {"range of words", take_range, "k: lots",
     "f:1:4: error: \"k\" must be a number, or low, typical and high\n"},
    {"date", take_date, "k: 2026-05-02", "2026-05-02"},
    {"a leap day", take_date, "k: 2024-02-29", "2024-02-29"},
    {"2000 was a leap year", take_date, "k: 2000-02-29", "2000-02-29"},
    {"1900 was none", take_date, "k: 1900-02-29",
     "f:1:4: error: \"k\" must be a day that the calendar has\n"},
    {"30 February", take_date, "k: 2026-02-30",
     "f:1:4: error: \"k\" must be a day that the calendar has\n"},
    {"month 13", take_date, "k: 2026-13-01",
     "f:1:4: error: \"k\" must be a day that the calendar has\n"},
    {"day first", take_date, "k: 02-05-2026",
     "f:1:4: error: \"k\" must be a date: year-month-day\n"},
    {"letters in a date", take_date, "k: 2026-O5-02",
     "f:1:4: error: \"k\" must be a date: year-month-day\n"},
    {"choice", take_choice, "k: adjust", "adjust"},
    {"choice misspelt", take_choice, "k: ajust",
     "f:1:4: error: \"ajust\" is not a value of \"k\"\n  hint: did you mean \"adjust\"?\n"},
    {"choice far off", take_choice, "k: perhaps",
     "f:1:4: error: \"perhaps\" is not a value of \"k\"\n"
     "  hint: it is one of: works, adjust, avoid\n"},
    {"words, one", take_words, "k: milk", "milk"},
    {"words, a list", take_words, "k: [milk, egg]", "milk|egg"},
    {"words, an empty list", take_words, "k: []", ""},
    {"words, a mapping", take_words, "k: {a: 1}",
     "f:1:4: error: \"k\" must be a word or a list of words\n"},
    {"words, a list in the list", take_words, "k: [a, [b]]",
     "f:1:8: error: \"k\" must be a list of words\n"},
    {"words, an empty item", take_words, "k:\n  - a\n  -\n",
     "f:3:4: error: \"k\" must be a list of words\n"},
    {"a list", take_list, "k: [1, 2]", "2 items"},
    {"no list", take_list, "k: 1", "f:1:4: error: \"k\" must be a list\n"},
};

static void test_fields(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        text got = TEXT_EMPTY;
        const yaml_node *node = yaml_read(a, "f", span_of(rows[i].yaml), 1, &found);
        bool took = rows[i].take(node, &got, &found);
        if (took && found.count)
            fail_msg("%s: taken, but with problems", rows[i].name);
        const char *shown = took ? got.bytes : found.count ? printed(a, &found) : "-";
        expect_words(rows[i].name, shown, rows[i].got);
        text_free(&got);
        arena_free(a);
    }
}

static void test_example_in_hint(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    double loss;
    const yaml_node *node = yaml_read(a, "f", span_of("bake-loss: some\n"), 1, &found);
    assert_false(field_quantity(node, "bake-loss", "%", &loss, &found));
    expect_words("hint", printed(a, &found),
                 "f:1:12: error: \"bake-loss\" must be a number in %\n"
                 "  hint: for example: bake-loss: 12 %\n");
    arena_free(a);
}

static void test_known_keys(void **state) {
    (void)state;
    static const char *const keys[] = {"title", "oven", "pan"};
    arena *a = arena_new();
    problems found = problems_in(a);
    const yaml_node *node =
        yaml_read(a, "f", span_of("title: x\novn: 1\nquantities: 2\n"), 1, &found);
    fields_known(node, keys, COUNT(keys), "a recipe", &found);
    expect_words("keys", printed(a, &found),
                 "f:2:1: error: a recipe has no key \"ovn\"\n"
                 "  hint: did you mean \"oven\"?\n"
                 "f:3:1: error: a recipe has no key \"quantities\"\n"
                 "  hint: it is one of: title, oven, pan\n");
    arena_free(a);
}

static const struct {
    const char *name, *yaml;
    bool list;
    const char *report;
} documents[] = {
    {"keys", "a: 1\n", false, ""},
    {"a list where keys are meant", "- 1\n", false,
     "f:1:1: error: a thing is made of keys and values\n"
     "  hint: write each part as \"key: value\"\n"},
    {"no keys at all", "", false,
     "f:1:1: error: a thing has nothing in it\n  hint: write each part as \"key: value\"\n"},
    {"a list", "- 1\n", true, ""},
    {"an empty list", "# none yet\n", true, ""},
    {"keys where a list is meant", "a: 1\n", true,
     "f:1:1: error: this must be a list, each item a thing\n"
     "  hint: begin each item with \"- \"\n"},
};

static void test_documents(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(documents); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        span bytes = span_of(documents[i].yaml);
        if (documents[i].list)
            (void)fields_read_list(a, "f", bytes, "a thing", &found);
        else
            (void)fields_read_keys(a, (located){bytes, {"f", 1, 1}}, "a thing", &found);
        expect_words(documents[i].name, printed(a, &found), documents[i].report);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_fields),
        cmocka_unit_test(test_example_in_hint),
        cmocka_unit_test(test_known_keys),
        cmocka_unit_test(test_documents),
    };
    return cmocka_run_group_tests_name("fields", tests, NULL, NULL);
}
