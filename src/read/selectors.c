#include "read/selectors.h"

#include "base/words.h"

static const char *const keys[] = {"name", "family", "kind", "origin"};
static const char *const keys_of_new[] = {"name", "family", "kind", "origin", "same"};
static const char *const keys_of_share[] = {"name", "family", "kind", "origin", "over", "under"};

static const char *const family_words[] = {
#define FAMILY(constant, word) word,
    FAMILY_LIST(FAMILY)
#undef FAMILY
};

const ingredient *rule_reader_find(const rule_reader *by, located name) {
    const ingredient *what = pantry_find(by->shelf, name.bytes, by->found->home);
    if (what)
        return what;
    const char *near = pantry_nearest(by->shelf, name.bytes, by->found->home);
    problem_add(by->found, name.at,
                near ? arena_format(by->found->home, "did you mean \"%s\"?", near)
                     : "add it to the pantry, in pantry/*.yaml",
                "the pantry has no \"%.*s\"", SPAN(name.bytes));
    return NULL;
}

static void read_names(const rule_reader *by, const yaml_node *node, selector *out) {
    field_list list = {0};
    (void)field_words(node, "name", &list, by->found);
    for (size_t i = 0; i < list.count; i++) {
        const ingredient *what = rule_reader_find(by, yaml_located(list.items[i]));
        if (what)
            LIST_ADD(by->home, &out->names, words_fold(by->home, span_of(what->name)));
    }
}

unsigned rule_reader_bits(const rule_reader *by, const yaml_node *node, const char *key,
                          field_choices among) {
    unsigned bits = 0;
    field_list list = {0};
    (void)field_words(node, key, &list, by->found);
    for (size_t i = 0; i < list.count; i++) {
        size_t which;
        if (field_word_index(list.items[i]->scalar, among, &which, by->found->home))
            bits |= 1u << which;
        else
            field_add_unknown(yaml_located(list.items[i]),
                              arena_format(by->found->home, "a value of \"%s\"", key), among,
                              by->found);
    }
    return bits;
}

static unsigned read_origins(const rule_reader *by, const yaml_node *node) {
    const char *words[ORIGIN_COUNT];
    for (size_t i = 0; i < ORIGIN_COUNT; i++)
        words[i] = origin_word((origin)i);
    return rule_reader_bits(by, node, "origin", FIELD_CHOICES(words));
}

static bool is_in_families(const ingredient *what, unsigned families) {
    return families == 0 || (families >> what->in & 1u);
}

typedef struct {
    const char **items;
    size_t count, capacity;
} kind_list;

/* The kind itself and its leading words: all that a rule may call it by. */
static void add_kinds(arena *home, const char *kind, kind_list *to) {
    span whole = span_of(kind);
    for (size_t i = 1; i <= whole.length; i++)
        if (i == whole.length || whole.at[i] == ' ')
            LIST_ADD(home, to, arena_copy(home, span_first(whole, i)));
}

/* The nearest kind of an ingredient of `families`, for a hint. */
static const char *nearest_kind(const rule_reader *by, span kind, unsigned families) {
    kind_list kinds = {0};
    for (size_t i = 0; i < by->shelf->count; i++)
        if (is_in_families(by->shelf->items[i], families))
            add_kinds(by->found->home, by->shelf->items[i]->kind, &kinds);
    return words_nearest(kind, kinds.items, kinds.count);
}

static void check_kind(const rule_reader *by, located kind, unsigned families) {
    for (size_t i = 0; i < by->shelf->count; i++)
        if (is_in_families(by->shelf->items[i], families) &&
            kind_matches(kind.bytes.at, by->shelf->items[i]->kind))
            return;
    const char *near = nearest_kind(by, kind.bytes, families);
    problem_note(by->found, "rule-kind", PROBLEM_WARNING, kind.at,
                 near ? arena_format(by->found->home, "did you mean \"%s\"?", near)
                      : "the rule says nothing until an ingredient is of this kind",
                 "no ingredient%s is of the kind \"%.*s\"", families ? " of that family" : "",
                 SPAN(kind.bytes));
}

static void read_kinds(const rule_reader *by, const yaml_node *node, selector *out) {
    field_list list = {0};
    (void)field_words(node, "kind", &list, by->found);
    for (size_t i = 0; i < list.count; i++) {
        LIST_ADD(by->home, &out->kinds, list.items[i]->scalar);
        if (by->check_kinds)
            check_kind(by, yaml_located(list.items[i]), out->families);
    }
}

static void read_same(const rule_reader *by, const yaml_node *node, selector *out) {
    static const char *const same[] = {"kind"};
    size_t which;
    out->same_kind = field_choice(node, "same", FIELD_CHOICES(same), &which, by->found);
}

static bool read_parts(const rule_reader *by, const yaml_node *node, field_choices known,
                       selector *out) {
    size_t before = by->found->errors;
    *out = (selector){0};
    if (!fields_are_keys(node, "a choice of ingredients", by->found))
        return false;
    fields_known(node, known.words, known.count, "a choice of ingredients", by->found);
    out->families = rule_reader_bits(by, node, "family", FIELD_CHOICES(family_words));
    out->origins = read_origins(by, node);
    read_kinds(by, node, out);
    read_names(by, node, out);
    read_same(by, node, out);
    if (by->found->errors > before)
        return false;
    if (out->families || out->origins || out->kinds.count || out->names.count || out->same_kind)
        return true;
    problem_add(by->found, node->at, "for example: {family: protein powder, kind: whey}",
                "a choice of ingredients needs a name, a family, a kind or an origin");
    return false;
}

bool selector_read(const rule_reader *by, const yaml_node *node, selector *out) {
    return read_parts(by, node, FIELD_CHOICES(keys), out);
}

bool selector_read_new(const rule_reader *by, const yaml_node *node, selector *out) {
    return read_parts(by, node, FIELD_CHOICES(keys_of_new), out);
}

bool share_condition_read(const rule_reader *by, const yaml_node *node, share_condition *out) {
    *out = (share_condition){.under = 1};
    if (!read_parts(by, node, FIELD_CHOICES(keys_of_share), &out->of))
        return false;
    size_t before = by->found->errors;
    bool over = field_share(node, "over", &out->over, by->found);
    bool under = field_share(node, "under", &out->under, by->found);
    if (by->found->errors > before)
        return false;
    if ((over || under) && out->over < out->under)
        return true;
    problem_add(by->found, node->at, "for example: share: {family: flour, over: 20 %}",
                over || under ? "no share is over the one and under the other at once"
                              : "a share needs \"over\" or \"under\"");
    return false;
}
