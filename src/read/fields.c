#include "read/fields.h"

#include "base/files.h"
#include "base/number.h"
#include "base/words.h"

/* What a right value looks like, for hints. Keys that are not here need none. */
static const struct {
    const char *key, *example;
} examples[] = {
    {"title", "Towpath griddle rounds"},
    {"summary", "Thin rounds that hold together on egg white."},
    {"makes", "8 rounds"},
    {"portion", "2 rounds"},
    {"kind", "griddle cake"},
    {"minutes", "{prepare: 10, bake: 12}"},
    {"prepare", "10"},
    {"rest", "30"},
    {"bake", "12"},
    {"cool", "20"},
    {"oven", "180 C"},
    {"pan", "round 20 cm"},
    {"bake-loss", "12 %"},
    {"ingredients", "[60 g pea protein powder, 1/2 cup egg whites]"},
    {"lines", "[2 tbsp almond butter]"},
    {"swaps", "[{replace: milk, with: oat drink, verdict: works}]"},
    {"tags", "[breakfast, for the crew]"},
    {"date", "2026-05-02"},
    {"changed", "2026-05-09"},
    {"author", "Maren Holt"},
    {"picture", "rounds.jpg"},
    {"picture-text", "Eight pale rounds on a rack"},
    {"publish", "yes"},
    {"optional", "yes"},
    {"menu", "yes"},
    {"order", "10"},
    {"address", "https://example.org/galley/"},
    {"language", "en"},
    {"cautions", "[Our kitchen handles nuts.]"},
    {"per-100-g", "{energy: 404, protein: 14.7, source: label}"},
    {"label", "{serving: 31 g, energy: 120, protein: 24 g}"},
    {"serving", "31 g"},
    {"energy", "120 kcal"},
    {"protein", "24 g"},
    {"sodium", "190 mg"},
    {"measures", "{cup: 104, source: label}"},
    {"cup", "{low: 90, typical: 104, high: 120}"},
    {"water-uptake", "{cold: 1.2, heated: 1.5, source: common practice}"},
    {"cold", "{low: 1.2, typical: 2.2, high: 2.4}"},
    {"heated", "{low: 1.5, typical: 2.6, high: 3.5}"},
    {"allergens", "[milk]"},
    {"also", "[ground oats]"},
    {"price", "{pack: 500 g, costs: 3.20}"},
    {"pack", "500 g"},
    {"costs", "3.20"},
    {"replace", "{family: protein powder, origin: plant}"},
    {"with", "{family: protein powder, kind: whey}"},
    {"when", "{set-by: egg white}"},
    {"amount", "{weight: 1}"},
    {"share", "{family: flour, over: 20 %}"},
    {"replaced-share", "{over: 10 %}"},
    {"over", "20 %"},
    {"under", "60 %"},
    {"because", "Both set firm on heat and push water out."},
    {"basis", "common practice"},
    {"rule", "whey-for-pea-in-cookies"},
    {"recipe", "towpath-griddle-rounds"},
    {"liquid", "-15 g"},
    {"measured", "{height: 9 mm, spread: 92 mm, as-written: {height: 11 mm}}"},
    {"height", "9 mm"},
    {"spread", "92 mm"},
    {"weight", "210 g"},
    {"pictures", "{as-written: rounds.jpg, swapped: rounds-whey.jpg}"},
    {"name", "oat flour"},
    {"texture", "[rubbery, dry]"},
};

/* "for example: bake-loss: 12 %", or null. In the problems' arena. */
static const char *example_of(const char *key, problems *found) {
    for (size_t i = 0; i < COUNT(examples); i++)
        if (strcmp(examples[i].key, key) == 0)
            return arena_format(found->home, "for example: %s: %s", key, examples[i].example);
    return NULL;
}

/* "must be …", at the value of `key`. Always false. */
static bool wrong(const yaml_node *value, const char *key, const char *expected, problems *found) {
    problem_add(found, value->at, example_of(key, found), "\"%s\" must be %s", key, expected);
    return false;
}

bool field_is_empty(const yaml_node *node) {
    return node->sort == YAML_SCALAR && node->scalar.length == 0 && !node->quoted;
}

/* The value of `key`, or null when it is not there or empty. */
static const yaml_node *value_of(const yaml_node *node, const char *key) {
    const yaml_node *value = yaml_get(node, key);
    return value && !field_is_empty(value) ? value : NULL;
}

/* -- whole documents -------------------------------------------------------------------------- */

bool fields_are_keys(const yaml_node *item, const char *what, problems *found) {
    if (item->sort == YAML_MAPPING)
        return true;
    problem_add(found, item->at, "write each part as \"key: value\"",
                "%s is made of keys and values", what);
    return false;
}

const yaml_node *fields_read_keys(arena *a, located bytes, const char *what, problems *found) {
    size_t before = found->errors;
    const yaml_node *root = yaml_read(a, bytes.at.file, bytes.bytes, bytes.at.line, found);
    if (!root && found->errors == before)
        problem_add(found, bytes.at, "write each part as \"key: value\"", "%s has nothing in it",
                    what);
    return root && fields_are_keys(root, what, found) ? root : NULL;
}

const yaml_node *fields_read_list(arena *a, const char *file, span bytes, const char *what,
                                  problems *found) {
    const yaml_node *root = yaml_read(a, file, bytes, 1, found);
    if (!root || root->sort == YAML_SEQUENCE)
        return root;
    problem_add(found, root->at, "begin each item with \"- \"", "this must be a list, each item %s",
                what);
    return NULL;
}

/* -- which keys are there --------------------------------------------------------------------- */

static bool is_among(span word, const char *const words[], size_t count) {
    for (size_t i = 0; i < count; i++)
        if (span_is(word, words[i]))
            return true;
    return false;
}

static const char *all_of(field_choices among, arena *home) {
    const char *list = "";
    for (size_t i = 0; i < among.count; i++)
        list = arena_format(home, "%s%s%s", list, i ? ", " : "", among.words[i]);
    return list;
}

static const char *hint_for(span word, field_choices among, arena *home) {
    const char *near = words_nearest(word, among.words, among.count);
    return near ? arena_format(home, "did you mean \"%s\"?", near)
                : arena_format(home, "it is one of: %s", all_of(among, home));
}

void fields_known(const yaml_node *node, const char *const known[], size_t count, const char *what,
                  problems *found) {
    for (size_t i = 0; i < node->count; i++) {
        const yaml_pair *pair = &node->pairs[i];
        if (!is_among(pair->key, known, count))
            problem_add(found, pair->key_at,
                        hint_for(pair->key, (field_choices){known, count}, found->home),
                        "%s has no key \"%.*s\"", what, SPAN(pair->key));
    }
}

bool fields_need(const yaml_node *node, const char *key, const char *what, problems *found) {
    if (value_of(node, key))
        return true;
    problem_add(found, node->at, example_of(key, found), "%s needs \"%s\"", what, key);
    return false;
}

/* -- text, words, choices
 * ----------------------------------------------------------------------------- */

bool field_located(const yaml_node *node, const char *key, located *out, problems *found) {
    const yaml_node *value = value_of(node, key);
    if (!value)
        return false;
    if (value->sort != YAML_SCALAR || span_trim(value->scalar).length == 0)
        return wrong(value, key, "text", found);
    *out = yaml_located(value);
    return true;
}

bool field_text(const yaml_node *node, const char *key, const char **out, problems *found) {
    located words;
    if (!field_located(node, key, &words, found))
        return false;
    *out = words.bytes.at;
    return true;
}

void field_add_unknown(located word, const char *what, field_choices among, problems *found) {
    problem_add(found, word.at, hint_for(word.bytes, among, found->home), "\"%.*s\" is not %s",
                SPAN(word.bytes), what);
}

bool field_word_index(span word, field_choices among, size_t *out, arena *scratch) {
    for (size_t i = 0; i < among.count; i++)
        if (span_is(word, among.words[i])) {
            *out = i;
            return true;
        }
    span folded = words_fold(scratch, word);
    for (size_t i = 0; i < among.count; i++)
        if (span_equal(folded, words_fold(scratch, span_of(among.words[i])))) {
            *out = i;
            return true;
        }
    return false;
}

bool field_choice(const yaml_node *node, const char *key, field_choices among, size_t *out,
                  problems *found) {
    located word;
    if (!field_located(node, key, &word, found))
        return false;
    if (field_word_index(word.bytes, among, out, found->home))
        return true;
    field_add_unknown(word, arena_format(found->home, "a value of \"%s\"", key), among, found);
    return false;
}

bool field_words(const yaml_node *node, const char *key, field_list *out, problems *found) {
    const yaml_node *value = value_of(node, key);
    if (!value)
        return false;
    for (size_t i = 0; i < node->count && value->sort == YAML_SCALAR; i++)
        if (node->pairs[i].value == value) {
            *out = (field_list){&node->pairs[i].value, 1};
            return true;
        }
    if (value->sort != YAML_SEQUENCE)
        return wrong(value, key, "a word or a list of words", found);
    for (size_t i = 0; i < value->count; i++)
        if (value->items[i]->sort != YAML_SCALAR || value->items[i]->scalar.length == 0)
            return wrong(value->items[i], key, "a list of words", found);
    *out = (field_list){value->items, value->count};
    return true;
}

bool field_picture(const yaml_node *node, const char *key, const char **out, problems *found) {
    located path;
    if (!field_located(node, key, &path, found))
        return false;
    if (!path_is_plain(path.bytes)) {
        problem_add(found, path.at, "for example: rounds.jpg, a file in pictures/",
                    "\"%.*s\" can't be the name of a picture", SPAN(path.bytes));
        return false;
    }
    *out = path.bytes.at;
    return true;
}

const yaml_node *field_node(const yaml_node *node, const char *key, yaml_sort sort,
                            problems *found) {
    static const char *const expected[] = {"a single value", "a list", "keys with values"};
    const yaml_node *value = value_of(node, key);
    if (!value || value->sort == sort)
        return value;
    wrong(value, key, expected[sort], found);
    return NULL;
}

/* -- numbers
 * --------------------------------------------------------------------------------------------- */

/* Units that convert into each other: those of one `dimension`. */
static const struct {
    const char *name;
    char dimension;
    double size;
} sizes[] = {{"kg", 'g', 1000},      {"g", 'g', 1},   {"mg", 'g', 1e-3}, {"ug", 'g', 1e-6},
             {"\u00b5g", 'g', 1e-6}, /* micro sign */
             {"\u03bcg", 'g', 1e-6}, /* Greek letter mu */
             {"mm", 'm', 1},         {"cm", 'm', 10}, {"min", 't', 1},   {"h", 't', 60}};

static bool converted(double value, span from, const char *to, double *out) {
    size_t f = COUNT(sizes), t = COUNT(sizes);
    if (from.length == 0 || span_is(from, to)) {
        *out = value;
        return true;
    }
    for (size_t i = 0; i < COUNT(sizes); i++) {
        f = span_is(from, sizes[i].name) ? i : f;
        t = strcmp(to, sizes[i].name) == 0 ? i : t;
    }
    if (f == COUNT(sizes) || t == COUNT(sizes) || sizes[f].dimension != sizes[t].dimension)
        return false;
    *out = value * sizes[f].size / sizes[t].size;
    return true;
}

static bool read_quantity(span words, const char *unit, double *out) {
    double value;
    words = span_trim(words);
    size_t used = number_read(words, &value);
    if (used == 0 || !converted(value, span_trim(span_from(words, used)), unit, &value))
        return false;
    *out = strcmp(unit, "%") == 0 ? value / 100 : value;
    return true;
}

static bool scalar_quantity(const yaml_node *value, const char *unit, double *out) {
    return value->sort == YAML_SCALAR && read_quantity(value->scalar, unit, out);
}

bool field_number(const yaml_node *node, const char *key, double *out, problems *found) {
    const yaml_node *value = value_of(node, key);
    if (!value)
        return false;
    return scalar_quantity(value, "", out) || wrong(value, key, "a number", found);
}

bool field_quantity(const yaml_node *node, const char *key, const char *unit, double *out,
                    problems *found) {
    const yaml_node *value = value_of(node, key);
    if (!value)
        return false;
    if (scalar_quantity(value, unit, out))
        return true;
    return wrong(value, key, arena_format(found->home, "a number in %s", unit), found);
}

bool field_share(const yaml_node *node, const char *key, double *out, problems *found) {
    const yaml_node *value = value_of(node, key);
    return value && field_item_share(value, key, out, found);
}

bool field_item_share(const yaml_node *value, const char *key, double *out, problems *found) {
    double share;
    bool read = scalar_quantity(value, "", &share) || scalar_quantity(value, "%", &share);
    if (!read || share < 0 || share > 1)
        return wrong(value, key, "a share: 0 % to 100 %", found);
    *out = share;
    return true;
}

bool field_answer(const yaml_node *node, const char *key, bool *out, problems *found) {
    static const char *const yes[] = {"yes", "true", "Yes", "True", "YES", "TRUE"};
    static const char *const no[] = {"no", "false", "No", "False", "NO", "FALSE"};
    const yaml_node *value = value_of(node, key);
    if (!value)
        return false;
    bool is_word = value->sort == YAML_SCALAR;
    if (is_word && is_among(value->scalar, yes, COUNT(yes)))
        return *out = true;
    if (!is_word || !is_among(value->scalar, no, COUNT(no)))
        return wrong(value, key, "yes or no", found);
    *out = false;
    return true;
}

static bool read_three(const yaml_node *value, range *out, problems *found) {
    static const char *const keys[] = {"low", "typical", "high"};
    range of;
    size_t before = found->errors;
    fields_known(value, keys, COUNT(keys), "a range", found);
    if (!fields_need(value, "typical", "a range", found) ||
        !field_quantity(value, "typical", "g", &of.typical, found))
        return false;
    of.low = of.high = of.typical;
    (void)field_quantity(value, "low", "g", &of.low, found);
    (void)field_quantity(value, "high", "g", &of.high, found);
    if (found->errors > before)
        return false;
    *out = of;
    return true;
}

bool field_range(const yaml_node *node, const char *key, range *out, problems *found) {
    const yaml_node *value = value_of(node, key);
    range of;
    if (!value)
        return false;
    if (value->sort == YAML_MAPPING) {
        if (!read_three(value, &of, found))
            return false;
    } else if (scalar_quantity(value, "g", &of.typical)) {
        of.low = of.high = of.typical;
    } else {
        return wrong(value, key, "a number, or low, typical and high", found);
    }
    if (of.low < 0 || of.low > of.typical || of.typical > of.high)
        return wrong(value, key, "none below 0, and low <= typical <= high", found);
    *out = of;
    return true;
}

/* -- dates
 * -------------------------------------------------------------------------------------------------
 */

/* `count` digits of `s` from byte `from` on; -1 when one of them is none. */
static int digits(span s, size_t from, size_t count) {
    int value = 0;
    for (size_t i = from; i < from + count; i++) {
        if (s.at[i] < '0' || s.at[i] > '9')
            return -1;
        value = value * 10 + (s.at[i] - '0');
    }
    return value;
}

/* Gregorian calendar (ISO 8601). */
static int days_in(int year, int month) {
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap);
}

bool field_is_day(span s) {
    if (s.length != 10 || s.at[4] != '-' || s.at[7] != '-')
        return false;
    int year = digits(s, 0, 4), month = digits(s, 5, 2), day = digits(s, 8, 2);
    return year >= 0 && month >= 1 && month <= 12 && day >= 1 && day <= days_in(year, month);
}

bool field_date(const yaml_node *node, const char *key, const char **out, problems *found) {
    located date;
    if (!field_located(node, key, &date, found))
        return false;
    const yaml_node *value = yaml_get(node, key);
    span s = date.bytes;
    if (s.length != 10 || s.at[4] != '-' || s.at[7] != '-')
        return wrong(value, key, "a date: year-month-day", found);
    int year = digits(s, 0, 4), month = digits(s, 5, 2), day = digits(s, 8, 2);
    if (year < 0 || month < 0 || day < 0)
        return wrong(value, key, "a date: year-month-day", found);
    if (!field_is_day(s))
        return wrong(value, key, "a day that the calendar has", found);
    *out = s.at;
    return true;
}
