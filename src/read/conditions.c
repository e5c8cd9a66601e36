#include "read/conditions.h"

#include "base/words.h"
#include "read/fields.h"

static const char *const keys[] = {"kind", "set-by", "moistened-by", "leavened",      "baked",
                                   "has",  "lacks",  "share",        "replaced-share"};

static const char *const setting_words[] = {
#define SETTING(constant, word) word,
    SETTING_LIST(SETTING)
#undef SETTING
};
static const char *const moisture_words[] = {
#define MOISTURE(constant, word) word,
    MOISTURE_LIST(MOISTURE)
#undef MOISTURE
};

static void read_kinds(const rule_reader *by, const yaml_node *node, conditions *out) {
    field_list list = {0};
    if (!field_words(node, "kind", &list, by->found))
        return;
    for (size_t i = 0; i < list.count; i++)
        LIST_ADD(by->home, &out->kinds, words_fold(by->home, list.items[i]->scalar));
    out->count++;
}

/* A bit for each word under `key`; together they are one fact. */
static unsigned read_any_of(const rule_reader *by, const yaml_node *node, const char *key,
                            field_choices among, int *count) {
    unsigned bits = rule_reader_bits(by, node, key, among);
    *count += bits != 0;
    return bits;
}

static void read_answer(const rule_reader *by, const yaml_node *node, const char *key, answer *to,
                        conditions *out) {
    bool yes;
    if (!field_answer(node, key, &yes, by->found))
        return;
    *to = yes ? ANSWER_YES : ANSWER_NO;
    out->count++;
}

/* A mapping or a list of mappings under `key`, as if it were a list; an empty one where there is
 * none. */
static field_list mappings_of(const yaml_node *node, const char *key) {
    for (size_t i = 0; node && i < node->count; i++) {
        const yaml_node *value = node->pairs[i].value;
        if (!span_is(node->pairs[i].key, key) || field_is_empty(value))
            continue;
        if (value->sort == YAML_SEQUENCE)
            return (field_list){value->items, value->count};
        return (field_list){&node->pairs[i].value, 1};
    }
    return (field_list){0};
}

static void read_selectors(const rule_reader *by, const yaml_node *node, const char *key,
                           selectors *to, conditions *out) {
    field_list list = mappings_of(node, key);
    for (size_t i = 0; i < list.count; i++) {
        selector one;
        if (!selector_read(by, list.items[i], &one))
            continue;
        LIST_ADD(by->home, to, one);
        out->count++;
    }
}

static void read_shares(const rule_reader *by, const yaml_node *node, conditions *out) {
    field_list list = mappings_of(node, "share");
    for (size_t i = 0; i < list.count; i++) {
        share_condition one;
        if (!share_condition_read(by, list.items[i], &one))
            continue;
        LIST_ADD(by->home, &out->shares, one);
        out->count++;
    }
}

static void read_replaced_share(const rule_reader *by, const yaml_node *node, conditions *out) {
    static const char *const known[] = {"over", "under"};
    const yaml_node *share = field_node(node, "replaced-share", YAML_MAPPING, by->found);
    if (!share)
        return;
    out->replaced_under = 1;
    fields_known(share, known, COUNT(known), "replaced-share", by->found);
    (void)field_share(share, "over", &out->replaced_over, by->found);
    (void)field_share(share, "under", &out->replaced_under, by->found);
    if (out->replaced_over >= out->replaced_under)
        problem_add(by->found, share->at, "for example: replaced-share: {over: 10 %, under: 30 %}",
                    "no share is over the one and under the other at once");
    out->has_replaced_share = true;
    out->count++;
}

bool conditions_read(const rule_reader *by, const yaml_node *node, conditions *out) {
    size_t before = by->found->errors;
    *out = (conditions){0};
    fields_known(node, keys, COUNT(keys), "\"when\"", by->found);
    read_kinds(by, node, out);
    out->settings = read_any_of(by, node, "set-by", FIELD_CHOICES(setting_words), &out->count);
    out->moistures =
        read_any_of(by, node, "moistened-by", FIELD_CHOICES(moisture_words), &out->count);
    read_answer(by, node, "leavened", &out->leavened, out);
    read_answer(by, node, "baked", &out->baked, out);
    read_selectors(by, node, "has", &out->has, out);
    read_selectors(by, node, "lacks", &out->lacks, out);
    read_shares(by, node, out);
    read_replaced_share(by, node, out);
    return by->found->errors == before;
}
