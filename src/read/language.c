#include "read/language.h"

#include "base/files.h"
#include "base/list.h"
#include "read/fields.h"
#include "read/yaml_packed.h"
#include "reference/reference.h"
#include "swap/balance_points.h"

#include <errno.h>

static const struct {
    const char *name;
    sentence_places places;
    bool counted;
} sentences[SENTENCE_COUNT] = {
#define PLAIN(constant, name, count, places)   {name, places, false},
#define COUNTED(constant, name, count, places) {name, places, true},
    SENTENCES(PLAIN, COUNTED)
#undef PLAIN
#undef COUNTED
};

static const char *month_key(size_t month) {
    static const char *const keys[LANGUAGE_MONTHS] = {
        "january", "february", "march",     "april",   "may",      "june",
        "july",    "august",   "september", "october", "november", "december"};
    return keys[month];
}

/* Only what the law lists has a group. */
static const char *listed_key(allergen which, label_law law) {
    return allergen_group(which, law) ? allergen_word(which) : NULL;
}

static const char *allergen_us_key(allergen which) {
    return listed_key(which, LAW_US);
}

static const char *allergen_eu_key(allergen which) {
    return listed_key(which, LAW_EU);
}

static const char *allergen_uk_key(allergen which) {
    return listed_key(which, LAW_UK);
}

static const char *label_us_key(size_t which) {
    return label_row_name(LABEL_US, which);
}

static const char *label_eu_key(size_t which) {
    return label_row_name(LABEL_EU, which);
}

static const char *label_plain_key(size_t which) {
    return label_row_name(LABEL_NONE, which);
}

static const char *claim_us_key(size_t which) {
    return claim_name(LAW_US, which);
}

static const char *claim_eu_key(size_t which) {
    return claim_name(LAW_EU, which);
}

static const char *fact_key(first_fact which) {
    static const char *const keys[FACT_COUNT] = {"protein",      "energy", "fat",
                                                 "carbohydrate", "fibre",  "sugars"};
    return keys[which];
}

/* What is measured of a bake. */
static const char *measured_key(size_t which) {
    static const char *const keys[LANGUAGE_MEASURED] = {"height", "spread", "weight"};
    return keys[which];
}

_Static_assert(LANGUAGE_POINTS == POINT_COUNT + 1, "the batch as written, and each point");

/* The batch as written, then the points it is compared with. */
static const char *balance_row_key(size_t which) {
    return which ? balance_point_key((balance_point)(which - 1)) : "before";
}

static const char *balance_quantity_key(balance_quantity which) {
    return balance_quantity_facts(which)->key;
}

/* Null for those that only other rules reckon with: they bear the names of what they are. */
static const char *nutrient_name(nutrient which) {
    return nutrient_key(which)[0] ? nutrient_key(which) : NULL;
}

static const char *certainty_name(certainty which) {
    return which == CERTAINTY_UNSTATED ? NULL : certainty_word(which);
}

/* The keys of the lists, behind functions of one type. */
#define KEYED(field, name, type, count, key)                                                       \
    static const char *key_in_##field(size_t which) {                                              \
        return key((type)which);                                                                   \
    }
WORD_LISTS(KEYED)
#undef KEYED

typedef struct {
    const char *name;
    size_t count;
    const char *(*key)(size_t which); /* null: the file says nothing of this one */
    size_t offset;                    /* of the words in a language */
} word_list_facts;

static const word_list_facts lists[] = {
#define DESCRIBED(field, name, type, count, key)                                                   \
    {name, count, key_in_##field, offsetof(language, field)},
    WORD_LISTS(DESCRIBED)
#undef DESCRIBED
};

/* -- reading ---------------------------------------------------------------------------------- */

typedef struct {
    arena *home;
    const char *file;
    const language *english; /* for hints; null while English itself is read */
    language *out;
    problems *found;
} language_reader;

static const char **words_in(const language *of, const word_list_facts *list) {
    return (const char **)((char *)of + list->offset);
}

/* Adds an error for a key that nobody asks for. */
static void add_unknown(const language_reader *r, const yaml_pair *pair, const char *section,
                        field_choices known) {
    field_add_unknown((located){pair->key, pair->key_at},
                      arena_format(r->found->home, "asked for in \"%s\"", section), known,
                      r->found);
}

static void read_plurals(const language_reader *r, const yaml_node *root) {
    const field_choices forms = {plural_names, PLURAL_OTHER};
    const yaml_node *rules = field_node(root, "plural-rules", YAML_MAPPING, r->found);
    for (size_t i = 0; rules && i < rules->count; i++) {
        const yaml_pair *pair = &rules->pairs[i];
        size_t form, offset;
        if (!field_word_index(pair->key, forms, &form, r->found->home))
            add_unknown(r, pair, "plural-rules", forms);
        else if (pair->value->sort != YAML_SCALAR ||
                 !plural_rule_read(r->home, pair->value->scalar, &r->out->plurals.of[form],
                                   &offset))
            problem_add(r->found, pair->value->at,
                        "for example: i = 1 and v = 0; as in Unicode's plural rules",
                        "this is no rule of counting");
    }
}

static void read_numbers(const language_reader *r, const yaml_node *root) {
    static const char *const keys[] = {"decimal", "group"};
    const yaml_node *marks = field_node(root, "numbers", YAML_MAPPING, r->found);
    if (!marks)
        return;
    fields_known(marks, keys, COUNT(keys), "\"numbers\"", r->found);
    (void)field_text(marks, "decimal", &r->out->decimal, r->found);
    /* a group may be parted by a space or by nothing, which no other text may be */
    const yaml_node *group = yaml_get(marks, "group");
    if (group && group->sort == YAML_SCALAR)
        r->out->group = arena_copy(r->home, group->scalar);
}

static void cut(const language_reader *r, const yaml_node *value, size_t which, plural_form form) {
    span fault, words = value->scalar;
    cut_sentence *out = &r->out->said[which][form];
    sentence_places places = sentences[which].places;
    if (!sentence_cut(r->home, words, places, out, &fault)) {
        problem_add(r->found, value->at,
                    places[0] ? arena_format(r->found->home, "its places: %s", places)
                              : "it has none",
                    "\"%s\" has no place %.*s", sentences[which].name, SPAN(fault));
        return;
    }
    span count = span_of(places);
    const char *may_lack = sentences[which].counted
                               ? arena_copy(r->home, span_first(count, span_find(count, " ")))
                               : NULL;
    span lacks = sentence_lacks(out, places, may_lack);
    if (lacks.length)
        problem_add(r->found, value->at, "put it where it belongs in the sentence",
                    "\"%s\" lacks the place {%.*s}", sentences[which].name, SPAN(lacks));
}

/* True when `value` is words; else an error. A space alone is words here. */
static bool is_words(const language_reader *r, const yaml_node *value, span key) {
    if (value->sort == YAML_SCALAR && value->scalar.length)
        return true;
    problem_add(r->found, value->at, "put it in quotes: \"{amount} more\"",
                "\"%.*s\" must be words", SPAN(key));
    return false;
}

static bool has_form(const language *of, plural_form form) {
    return form == PLURAL_OTHER || of->plurals.of[form].items;
}

/* A sentence with a form for each way of counting. */
static void read_forms(const language_reader *r, const yaml_pair *pair, size_t which) {
    const char *used[PLURAL_FORMS];
    size_t count = 0;
    for (plural_form form = 0; form < PLURAL_FORMS; form++)
        if (has_form(r->out, form))
            used[count++] = plural_names[form];
    if (pair->value->sort != YAML_MAPPING) {
        problem_add(r->found, pair->value->at,
                    "{one: \"{count} recipe\", other: \"{count} recipes\"}",
                    "\"%.*s\" must have a form for each way of counting", SPAN(pair->key));
        return;
    }
    fields_known(pair->value, used, count,
                 arena_format(r->found->home, "\"%.*s\"", SPAN(pair->key)), r->found);
    for (plural_form form = 0; form < PLURAL_FORMS; form++) {
        const yaml_node *words = yaml_get(pair->value, plural_names[form]);
        if (!has_form(r->out, form))
            continue;
        if (!words)
            problem_add(r->found, pair->value->at, NULL, "\"%.*s\" lacks the form \"%s\"",
                        SPAN(pair->key), plural_names[form]);
        else if (is_words(r, words, pair->key))
            cut(r, words, which, form);
    }
}

/* The number of the sentence `name`, looked for from `first` on and then from the beginning;
 * SENTENCE_COUNT when there is none. */
static size_t sentence_named(span name, const char *const known[], size_t first) {
    for (size_t i = 0; i < SENTENCE_COUNT; i++) {
        size_t which = (first + i) % SENTENCE_COUNT;
        if (span_is(name, known[which]))
            return which;
    }
    return SENTENCE_COUNT;
}

static void read_sentences(const language_reader *r, const yaml_node *root) {
    static const char *known[SENTENCE_COUNT] = {
#define NAMED(constant, name, count, places) name,
        SENTENCES(NAMED, NAMED)
#undef NAMED
    };
    const yaml_node *all = field_node(root, "sentences", YAML_MAPPING, r->found);
    size_t next = 0; /* files mostly keep the order of the table */
    for (size_t i = 0; all && i < all->count; i++) {
        const yaml_pair *pair = &all->pairs[i];
        size_t which = sentence_named(pair->key, known, next);
        next = which + 1;
        if (which == SENTENCE_COUNT)
            add_unknown(r, pair, "sentences", (field_choices){known, SENTENCE_COUNT});
        else if (sentences[which].counted)
            read_forms(r, pair, which);
        else if (is_words(r, pair->value, pair->key))
            cut(r, pair->value, which, PLURAL_OTHER);
    }
}

static void read_list(const language_reader *r, const yaml_node *root,
                      const word_list_facts *list) {
    const char **words = words_in(r->out, list);
    const char **keys = ARENA_ARRAY(r->home, const char *, list->count);
    size_t known = 0;
    const yaml_node *all = field_node(root, list->name, YAML_MAPPING, r->found);
    for (size_t i = 0; i < list->count; i++)
        if (list->key(i))
            keys[known++] = list->key(i);
    if (!all)
        return;
    for (size_t i = 0; i < list->count; i++) {
        const yaml_node *value = list->key(i) ? yaml_get(all, list->key(i)) : NULL;
        if (value && is_words(r, value, span_of(list->key(i))))
            words[i] = value->scalar.at;
    }
    fields_known(all, keys, known, arena_format(r->found->home, "\"%s\"", list->name), r->found);
}

static void read_kinds(const language_reader *r, const yaml_node *root) {
    const yaml_node *all = field_node(root, "kinds", YAML_MAPPING, r->found);
    for (size_t i = 0; all && i < all->count; i++) {
        const yaml_pair *pair = &all->pairs[i];
        if (is_words(r, pair->value, pair->key))
            LIST_ADD(r->home, &r->out->kinds,
                     ((kind_word){arena_copy(r->home, pair->key),
                                  arena_copy(r->home, pair->value->scalar)}));
    }
}

static void read_root(const language_reader *r, const yaml_node *root) {
    static const char *keys[COUNT(lists) + 4] = {"plural-rules", "numbers", "sentences", "kinds"};
    const char *known[COUNT(keys)];
    memcpy(known, keys, sizeof known);
    for (size_t i = 0; i < COUNT(lists); i++)
        known[4 + i] = lists[i].name;
    fields_known(root, known, COUNT(known), "a language", r->found);
    read_plurals(r, root);
    read_numbers(r, root);
    read_sentences(r, root);
    read_kinds(r, root);
    for (size_t i = 0; i < COUNT(lists); i++)
        read_list(r, root, &lists[i]);
}

/* -- what is lacking -------------------------------------------------------------------------- */

/* Words of `english` as a hint. */
static const char *in_english(const language_reader *r, const cut_sentence *of) {
    const char *gaps[SENTENCE_PLACES_MOST];
    for (size_t i = 0; i < SENTENCE_PLACES_MOST; i++)
        gaps[i] = "{\u2026}";
    return arena_format(r->found->home, "in English: \"%s\"",
                        sentence_fill(r->found->home, of, gaps));
}

/* A sentence that neither file has is said in English, so that nothing is ever empty. */
static void fill_sentence(const language_reader *r, size_t which) {
    cut_sentence *said = r->out->said[which];
    for (plural_form form = 0; sentences[which].counted && form < PLURAL_OTHER; form++)
        if (!said[form].pieces)
            said[form] = said[PLURAL_OTHER];
    if (said[PLURAL_OTHER].pieces)
        return;
    const cut_sentence *english = r->english ? r->english->said[which] : said;
    problem_add(r->found, (place){r->file, 1, 1},
                r->english ? in_english(r, &english[PLURAL_OTHER]) : NULL,
                "\"sentences\" lack \"%s\"", sentences[which].name);
    memcpy(said, english, sizeof r->out->said[which]);
}

static void fill_list(const language_reader *r, const word_list_facts *list) {
    const char **words = words_in(r->out, list);
    for (size_t i = 0; i < list->count; i++) {
        if (words[i] || !list->key(i))
            continue;
        words[i] = r->english ? words_in(r->english, list)[i] : list->key(i);
        problem_add(r->found, (place){r->file, 1, 1},
                    arena_format(r->found->home, "in English: \"%s\"", words[i]),
                    "\"%s\" lack \"%s\"", list->name, list->key(i));
    }
}

static void fill_gaps(const language_reader *r) {
    for (size_t i = 0; i < SENTENCE_COUNT; i++)
        fill_sentence(r, i);
    for (size_t i = 0; i < COUNT(lists); i++)
        fill_list(r, &lists[i]);
}

/* -- files ------------------------------------------------------------------------------------ */

static const char *file_of(arena *a, span tag) {
    return arena_format(a, "language-%.*s.yaml", SPAN(tag));
}

static const reference_file *compiled_in(arena *a, span tag) {
    const char *name = arena_format(a, "reference/%s", file_of(a, tag));
    for (size_t i = 0; i < reference_languages_count; i++)
        if (strcmp(reference_languages[i].name, name) == 0)
            return &reference_languages[i];
    return NULL;
}

/* Reads the site's own file of `tag`. False when there is none. */
static bool read_own(language_reader *r, const char *folder, span tag) {
    span bytes;
    int why;
    const char *file = file_of(r->home, tag);
    if (!folder)
        return false;
    if (!file_read(r->home, path_join(r->home, folder, file), &bytes, &why)) {
        if (why != ENOENT)
            problem_add(r->found, (place){.file = file}, NULL, "can't read it: %s", strerror(why));
        return why != ENOENT;
    }
    r->file = file;
    r->out->own = digest_of(bytes);
    const yaml_node *root =
        fields_read_keys(r->home, (located){bytes, {file, 1, 1}}, "a language", r->found);
    if (root)
        read_root(r, root);
    return true;
}

/* Reads what is compiled in of `tag`, and the site's own over it. False when there is neither. */
static bool read_files(language_reader *r, const char *folder, span tag) {
    const reference_file *base = compiled_in(r->home, tag);
    if (base) {
        r->file = base->name;
        read_root(r, yaml_unpack(r->home, base->name, base->tree));
    }
    return read_own(r, folder, tag) || base;
}

static void add_no_language(const language_reader *r, const char *tag) {
    const char *all = "";
    for (size_t i = 0; i < reference_languages_count; i++) {
        span name = span_from(span_of(reference_languages[i].name), strlen("reference/language-"));
        all = arena_format(r->found->home, "%s%s%.*s", all, i ? ", " : "",
                           SPAN(span_first(name, span_find(name, ".yaml"))));
    }
    problem_add(r->found, (place){"site.yaml", 0, 0},
                arena_format(r->found->home,
                             "there are: %s; or put language-%s.yaml into the site folder", all,
                             tag),
                "there is no language \"%s\"", tag);
}

static void settle(language *of) {
    for (nutrient n = NUTRIENT_ENERGY_ATWATER; n < NUTRIENT_COUNT; n++)
        of->nutrients[n] = of->nutrients[NUTRIENT_ENERGY];
    of->nutrients[NUTRIENT_AVAILABLE_CARBOHYDRATE] = of->nutrients[NUTRIENT_CARBOHYDRATE];
    if (!of->decimal)
        of->decimal = ".";
    if (!of->group)
        of->group = "";
    of->writes_plainly = strcmp(of->decimal, ".") == 0 && !of->group[0];
}

const language *language_english(arena *home) {
    problems unsaid = problems_in(home);
    language *english = ARENA_NEW(home, language);
    language_reader r = {.home = home, .out = english, .found = &unsaid};
    (void)read_files(&r, NULL, span_of("en"));
    fill_gaps(&r);
    english->tag = "en";
    english->measures_plainly = true;
    settle(english);
    return english;
}

bool language_read(arena *home, const char *folder, const char *tag, language *out,
                   problems *found) {
    size_t errors = found->errors;
    const language *english = language_english(home);
    *out = (language){.tag = tag};
    language_reader r = {home, "site.yaml", english, out, found};
    span primary = span_first(span_of(tag), span_find(span_of(tag), "-"));
    if (!read_files(&r, folder, span_of(tag)) &&
        (primary.length == strlen(tag) || !read_files(&r, folder, primary))) {
        *out = *english;
        add_no_language(&r, tag);
        return false;
    }
    out->measures_plainly = span_is(primary, "en") && !out->own;
    fill_gaps(&r);
    settle(out);
    return found->errors == errors;
}

/* From the end on: the site's own words stand behind those compiled in. */
const char *language_kind(const language *in, const char *kind) {
    for (size_t i = in->kinds.count; kind && i-- > 0;)
        if (strcmp(in->kinds.items[i].kind, kind) == 0)
            return in->kinds.items[i].word;
    return kind;
}
