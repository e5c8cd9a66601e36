#include "read/rules.h"

#include "base/words.h"
#include "measure/amount.h"
#include "read/conditions.h"
#include "read/fields.h"
#include "read/yaml_digest.h"
#include "swap/also.h"

static const char *const keys[] = {"rule",   "replace", "with",   "when",    "verdict", "amount",
                                   "liquid", "also",    "expect", "because", "basis"};
static const char *const own_keys[] = {"replace", "with",   "verdict", "amount",
                                       "liquid",  "expect", "because", "note"};

/* The verdicts one may give, in the order of `verdict`; its last, "untried", is what nobody has
 * said. */
static const char *const verdict_words[] = {"works", "adjust", "different", "avoid"};

/* -- the parts that a site's rules and a recipe's own swaps share ----------------------------- */

bool verdict_read(const yaml_node *node, const char *what, verdict *out, problems *found) {
    size_t chosen;
    if (!fields_need(node, "verdict", what, found) ||
        !field_choice(node, "verdict", FIELD_CHOICES(verdict_words), &chosen, found))
        return false;
    *out = (verdict)chosen;
    return true;
}

/* A ratio as cooks write it: 1, 0.5, 1/2, 1 1/2. */
static void read_ratio(const yaml_node *amount, const char *key, double *out, problems *found) {
    located words;
    amount_range ratio;
    if (!field_located(amount, key, &words, found))
        return;
    bool whole = amount_read(words.bytes, &ratio) == words.bytes.length;
    if (whole && ratio.low == ratio.high && ratio.low > 0 && ratio.low <= 1000)
        *out = ratio.low;
    else
        problem_add(found, words.at, "for example: amount: {volume: 1/2}",
                    "\"%s\" must be how much of the new replaces 1 of the old", key);
}

static const char *const kept_words[] = {
#define KEPT(constant, word) word,
    KEPT_LIST(KEPT)
#undef KEPT
};

static void read_keeps(const yaml_node *amount, swap_rule *out, problems *found) {
    field_list list = {0};
    out->keeps = KEPT_USUALLY;
    if (!field_words(amount, "keep", &list, found))
        return;
    out->keeps = 0;
    if (list.count > 2 && out->replace.count == 2)
        problem_add(found, yaml_get(amount, "keep")->at, "for example: keep: [fat, bulk]",
                    "one ingredient in the place of two can keep two things, not %zu", list.count);
    for (size_t i = 0; i < list.count; i++) {
        size_t which;
        if (field_word_index(list.items[i]->scalar, FIELD_CHOICES(kept_words), &which, found->home))
            out->keeps |= 1u << which;
        else
            field_add_unknown(yaml_located(list.items[i]), "something to keep",
                              FIELD_CHOICES(kept_words), found);
    }
}

/* A share for each replaced ingredient, in their order. */
static void read_most(const yaml_node *amount, swap_rule *out, problems *found) {
    const yaml_node *most = field_node(amount, "most", YAML_SEQUENCE, found);
    if (!most)
        return;
    if (most->count != out->replace.count) {
        problem_add(found, most->at, "for example: most: [100 %, 25 %]",
                    "\"most\" needs a share for each replaced ingredient");
        return;
    }
    for (size_t i = 0; i < most->count; i++)
        (void)field_item_share(most->items[i], "most", &out->most[i], found);
}

static void read_match(const yaml_node *amount, swap_rule *out, problems *found) {
    static const char *const words[] = {"water uptake", "protein", "sweetness", "balance"};
    static const amount_rule rules[] = {AMOUNT_MATCH_WATER_UPTAKE, AMOUNT_MATCH_PROTEIN,
                                        AMOUNT_MATCH_SWEETNESS, AMOUNT_MATCH_BALANCE};
    size_t chosen;
    if (!field_choice(amount, "match", FIELD_CHOICES(words), &chosen, found))
        return;
    out->amount = rules[chosen];
    if (out->amount == AMOUNT_MATCH_BALANCE) {
        if (out->replace.count + out->with.count != 3)
            problem_add(found, yaml_get(amount, "match")->at,
                        "list two under \"replace\" or under \"with\"",
                        "\"balance\" is for two ingredients replaced by one, or one by two");
        read_keeps(amount, out, found);
        read_most(amount, out, found);
    } else if (amount->count != 1) {
        problem_add(found, amount->at, "for example: amount: {match: balance, keep: [fat, bulk]}",
                    "\"keep\" and \"most\" go with \"match: balance\"");
    }
}

static void read_amount(const yaml_node *node, swap_rule *out, problems *found) {
    static const char *const known[] = {"weight", "volume", "match", "keep", "most"};
    const yaml_node *amount = field_node(node, "amount", YAML_MAPPING, found);
    out->ratio = 1;
    if (!amount)
        return;
    fields_known(amount, known, COUNT(known), "an amount", found);
    if (amount->count != 1 && !yaml_get(amount, "match")) {
        problem_add(found, amount->at, "for example: amount: {weight: 1}",
                    "an amount is one of \"weight\", \"volume\" and \"match\"");
        return;
    }
    if (yaml_get(amount, "match")) {
        read_match(amount, out, found);
        return;
    }
    const char *key = yaml_get(amount, "volume") ? "volume" : "weight";
    out->amount = key[0] == 'v' ? AMOUNT_VOLUME : AMOUNT_WEIGHT;
    read_ratio(amount, key, &out->ratio, found);
}

static void read_answer_parts(const yaml_node *node, const char *what, swap_rule *out,
                              problems *found) {
    static const char *const liquid_words[] = {"rebalance", "keep"};
    size_t chosen;
    (void)verdict_read(node, what, &out->says, found);
    read_amount(node, out, found);
    if (field_choice(node, "liquid", FIELD_CHOICES(liquid_words), &chosen, found))
        out->keep_liquid = chosen == 1;
    (void)field_text(node, "expect", &out->expect, found);
    (void)field_text(node, "because", &out->because, found);
}

/* -- rules
 * ------------------------------------------------------------------------------------------ */

/* One selector, or a list of two, under `key`. */
static void read_side(const rule_reader *by, const yaml_node *node, const char *key,
                      selectors *out) {
    const yaml_node *side = yaml_get(node, key);
    bool several = side && side->sort == YAML_SEQUENCE;
    size_t count = several ? side->count : 1;
    selector one;
    if (!fields_need(node, key, "a rule", by->found))
        return;
    if (count == 0 || count > 2) {
        problem_add(by->found, side->at, "a rule replaces one or two by one, or one by two",
                    "\"%s\" lists %zu choices of ingredients", key, count);
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const yaml_node *item = several ? side->items[i] : side;
        bool new_one = key[0] == 'w' && !several;
        if (new_one ? selector_read_new(by, item, &one) : selector_read(by, item, &one))
            LIST_ADD(by->home, out, one);
    }
}

static void check_sides(const rule_reader *by, const yaml_node *node, const swap_rule *out) {
    if (out->replace.count == 2 && out->with.count == 2)
        problem_add(by->found, yaml_get(node, "with")->at,
                    "a rule replaces one or two by one, or one by two", "two are replaced by two");
}

static void read_sides(const rule_reader *by, const yaml_node *node, swap_rule *out) {
    read_side(by, node, "replace", &out->replace);
    read_side(by, node, "with", &out->with);
    check_sides(by, node, out);
}

static void read_id(const rule_reader *by, const yaml_node *node, swap_rule *out) {
    located id;
    if (!fields_need(node, "rule", "a rule", by->found) ||
        !field_located(node, "rule", &id, by->found))
        return;
    const char *slug = words_slug(by->found->home, id.bytes);
    if (!span_is(id.bytes, slug))
        problem_add(by->found, id.at, arena_format(by->found->home, "for example: rule: %s", slug),
                    "the name of a rule is made of small letters, digits and hyphens");
    out->id = id.bytes.at;
}

/* What a basis may be, alone or with words after it ("published: J Food Sci 2016"). */
static bool is_basis(span basis) {
    static const char *const starts[] = {"common practice", "published", "trial", "from memory",
                                         "estimate"};
    for (size_t i = 0; i < COUNT(starts); i++) {
        span after = span_from(basis, strlen(starts[i]));
        if (span_begins(basis, starts[i]) && (after.length == 0 || strchr(":,; (", after.at[0])))
            return true;
    }
    return false;
}

static void read_basis(const rule_reader *by, const yaml_node *node, swap_rule *out) {
    located basis;
    (void)fields_need(node, "because", "a rule", by->found);
    if (!fields_need(node, "basis", "a rule", by->found) ||
        !field_located(node, "basis", &basis, by->found))
        return;
    if (!is_basis(basis.bytes))
        problem_add(by->found, basis.at,
                    "it begins with: common practice, published, trial, from memory or estimate",
                    "\"basis\" must say what the rule rests on");
    out->basis = basis.bytes.at;
}

static bool read_rule(const rule_reader *by, const yaml_node *node, swap_rule *out) {
    size_t before = by->found->errors;
    if (!fields_are_keys(node, "a rule", by->found))
        return false;
    fields_known(node, keys, COUNT(keys), "a rule", by->found);
    read_id(by, node, out);
    read_sides(by, node, out);
    const yaml_node *when = field_node(node, "when", YAML_MAPPING, by->found);
    if (when)
        (void)conditions_read(by, when, &out->when);
    read_answer_parts(node, "a rule", out, by->found);
    if (field_text(node, "also", &out->also, by->found))
        out->also_asks = also_asks_amounts(out->also);
    read_basis(by, node, out);
    return by->found->errors == before;
}

/* A rule's name may stand once among those of the same authority. */
static bool is_new(const swap_rules *all, const swap_rule *one, problems *found) {
    for (size_t i = 0; i < all->count; i++) {
        const swap_rule *earlier = &all->items[i];
        if (earlier->by != one->by || strcmp(earlier->id, one->id) != 0)
            continue;
        problem_add(found, one->at,
                    arena_format(found->home, "the other stands in %s, line %u", earlier->at.file,
                                 earlier->at.line),
                    "two rules are called \"%s\"", one->id);
        return false;
    }
    return true;
}

void rules_read_list(const rule_reader *with, const yaml_node *list, authority by,
                     swap_rules *into) {
    for (size_t i = 0; i < list->count; i++) {
        swap_rule one = {.at = list->items[i]->at, .by = by};
        if (by != SAID_BY_REFERENCE)
            one.words = yaml_digest(list->items[i]);
        if (read_rule(with, list->items[i], &one) && is_new(into, &one, with->found))
            LIST_ADD(with->home, into, one);
    }
}

void rules_read(arena *a, const char *file, span bytes, authority by, const pantry *shelf,
                swap_rules *into, problems *found) {
    const yaml_node *list = fields_read_list(a, file, bytes, "a rule", found);
    if (list)
        rules_read_list(&(rule_reader){a, shelf, by != SAID_BY_REFERENCE, found}, list, by, into);
}

/* -- a recipe's own swaps
 * ------------------------------------------------------------------------------ */

/* A name, or a list of two. */
static void read_own_side(const rule_reader *by, const yaml_node *node, const char *key,
                          selectors *out) {
    field_list list = {0};
    if (!fields_need(node, key, "a swap", by->found) || !field_words(node, key, &list, by->found))
        return;
    if (list.count > 2)
        problem_add(by->found, yaml_get(node, key)->at, "two at the most",
                    "\"%s\" names %zu ingredients", key, list.count);
    for (size_t i = 0; i < list.count; i++) {
        const ingredient *what = rule_reader_find(by, yaml_located(list.items[i]));
        selector one = {0};
        if (!what)
            continue;
        LIST_ADD(by->home, &one.names, words_fold(by->home, span_of(what->name)));
        LIST_ADD(by->home, out, one);
    }
}

static bool read_own(const rule_reader *by, const yaml_node *node, swap_rule *out) {
    size_t before = by->found->errors;
    if (node->sort != YAML_MAPPING) {
        problem_add(by->found, node->at,
                    "write it as {replace: whey, with: pea protein powder, verdict: adjust}",
                    "a swap is made of keys and values");
        return false;
    }
    fields_known(node, own_keys, COUNT(own_keys), "a swap", by->found);
    read_own_side(by, node, "replace", &out->replace);
    read_own_side(by, node, "with", &out->with);
    check_sides(by, node, out);
    read_answer_parts(node, "a swap", out, by->found);
    if (field_text(node, "note", &out->also, by->found))
        out->also_asks = also_asks_amounts(out->also);
    return by->found->errors == before;
}

void rules_read_own(arena *a, const yaml_node *list, const pantry *shelf, swap_rules *into,
                    problems *found) {
    rule_reader r = {a, shelf, true, found};
    for (size_t i = 0; i < list->count; i++) {
        swap_rule one = {.at = list->items[i]->at, .by = SAID_BY_RECIPE};
        one.id = arena_format(a, "swap-%zu", i + 1);
        one.basis = "the author's own word";
        if (read_own(&r, list->items[i], &one))
            LIST_ADD(a, into, one);
    }
}
