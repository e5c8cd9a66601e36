#include "swap/match.h"

#include "swap/evidence.h"
#include "swap/match_index.h"

#include <assert.h>
#include <stdint.h>

/* -- precedence ------------------------------------------------------------------------------ */

static int rank_of(const selectors *side) {
    int rank = 0;
    for (size_t i = 0; i < side->count; i++)
        rank += selector_rank(&side->items[i]);
    return rank;
}

/* Negative when `a` goes before `b`, 0 when neither has more to say. */
static int compare_precedence(const swap_rule *a, const swap_rule *b) {
    int authority_first = (int)a->by - (int)b->by;
    int rank_first =
        rank_of(&b->replace) + rank_of(&b->with) - rank_of(&a->replace) - rank_of(&a->with);
    int order = authority_first ? authority_first : rank_first;
    return order ? order : b->when.count - a->when.count;
}

/* A full order: among equals the more cautious verdict, then the name, so that neither the order
 * of files nor that of rules in a file matters. */
int rules_compare(const swap_rule *a, const swap_rule *b) {
    int order = compare_precedence(a, b);
    if (!order)
        order = (int)b->says - (int)a->says;
    return order ? order : span_compare(span_of(a->id), span_of(b->id));
}

static int compare_ranked(const void *left, const void *right) {
    return rules_compare(((const ranked_rule *)left)->rule, ((const ranked_rule *)right)->rule);
}

static bool disagree(const swap_rule *a, const swap_rule *b) {
    return a->says != b->says && compare_precedence(a, b) == 0;
}

int trial_compare(const trial *one, const trial *other) {
    int order = span_compare(span_of(one->recipe), span_of(other->recipe));
    if (!order)
        order = span_compare(span_of(other->date), span_of(one->date));
    if (!order)
        order = (int)other->outcome - (int)one->outcome;
    if (!order)
        order = span_compare(span_of(one->at.file), span_of(other->at.file));
    return order ? order : (one->at.line > other->at.line) - (one->at.line < other->at.line);
}

static int compare_bakes(const void *left, const void *right) {
    return trial_compare(*(const trial *const *)left, *(const trial *const *)right);
}

/* -- building -------------------------------------------------------------------------------- */

static const bits *fitting(arena *a, const pantry *shelf, const selector *by) {
    bits *set = ARENA_ARRAY(a, bits, shelf->count / BITS + 1);
    for (size_t i = 0; i < by->names.count; i++) { /* only what is named can fit */
        const ingredient *what = pantry_find_folded(shelf, by->names.items[i]);
        if (what && selector_fits(by, what, shelf))
            set_bit(set, pantry_index(shelf, what));
    }
    for (size_t i = 0; by->names.count == 0 && i < shelf->count; i++)
        if (selector_fits(by, shelf->items[i], shelf))
            set_bit(set, i);
    return set;
}

/* One thing takes the place of one or of two, or two that of one; other shapes answer nothing. */
static bool is_usable(const swap_rule *rule) {
    size_t replaced = rule->replace.count, new = rule->with.count;
    if (replaced == 1 && new == 1)
        return true;
    bool same_kind = new && rule->with.items[0].same_kind;
    return !same_kind && ((replaced == 2 && new == 1) || (replaced == 1 && new == 2));
}

static ranked_rule *ranked_rules(arena *a, const rule_book *book, size_t *count) {
    ranked_rule *ranked = ARENA_ARRAY(a, ranked_rule, book->rules.count + 1);
    *count = 0;
    for (size_t i = 0; i < book->rules.count; i++) {
        const swap_rule *rule = &book->rules.items[i];
        if (!is_usable(rule))
            continue;
        ranked_rule *slot = &ranked[(*count)++];
        slot->rule = rule;
        for (size_t k = 0; k < rule->with.count; k++)
            slot->with[k] = fitting(a, book->shelf, &rule->with.items[k]);
        for (size_t k = 0; k < rule->replace.count; k++)
            slot->replaces[k] = fitting(a, book->shelf, &rule->replace.items[k]);
    }
    qsort(ranked, *count, sizeof *ranked, compare_ranked);
    return ranked;
}

/* Of what `one` brings, that which is of the family and kind of ingredient `from`. */
static const bits *of_same_kind(arena *a, const pantry *shelf, const ranked_rule *one,
                                size_t from) {
    bits *set = ARENA_ARRAY(a, bits, shelf->count / BITS + 1);
    const ingredient *old = shelf->items[from];
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *what = shelf->items[i];
        if (has_bit(one->with[0], i) && what->in == old->in && old->kind[0] &&
            strcmp(what->kind, old->kind) == 0)
            set_bit(set, i);
    }
    return set;
}

/* `one` as it stands among the rules that replace ingredient `from`. */
static const ranked_rule *ranked_for(arena *a, const pantry *shelf, const ranked_rule *one,
                                     size_t from) {
    if (!one->rule->with.items[0].same_kind)
        return one;
    ranked_rule *own = ARENA_NEW(a, ranked_rule);
    *own = *one;
    own->with[0] = of_same_kind(a, shelf, one, from);
    return own;
}

static void index_rules(arena *a, const rule_book *book, struct rule_index *index) {
    size_t count;
    const ranked_rule *ranked = ranked_rules(a, book, &count);
    index->words = book->shelf->count / BITS + 1;
    index->by_from = ARENA_ARRAY(a, ranked_list, book->shelf->count + 1);
    index->splits = ARENA_ARRAY(a, ranked_list, book->shelf->count + 1);
    for (size_t i = 0; i < count; i++)
        if (ranked[i].replaces[1])
            LIST_ADD(a, &index->twos, &ranked[i]);
        else
            for (size_t from = 0; from < book->shelf->count; from++)
                if (has_bit(ranked[i].replaces[0], from))
                    LIST_ADD(a, ranked[i].with[1] ? &index->splits[from] : &index->by_from[from],
                             ranked_for(a, book->shelf, &ranked[i], from));
}

static void index_bakes(arena *a, const rule_book *book, struct rule_index *index) {
    index->bake_count = book->log.count;
    index->bakes = ARENA_ARRAY(a, const trial *, book->log.count + 1);
    for (size_t i = 0; i < book->log.count; i++)
        index->bakes[i] = &book->log.items[i];
    qsort(index->bakes, index->bake_count, sizeof *index->bakes, compare_bakes);
}

void rule_book_index(arena *a, rule_book *book) {
    struct rule_index *index = ARENA_NEW(a, struct rule_index);
    index_rules(a, book, index);
    index_bakes(a, book, index);
    book->index = index;
    evidence_file(a, book);
}

/* -- one decision ---------------------------------------------------------------------------- */

static bool own_replaces(const swap_rule *rule, const recipe_facts *about, size_t from) {
    return rule->replace.count == 1 && rule->with.count == 1 &&
           selector_fits(&rule->replace.items[0], what_at(about, from), about->shelf) &&
           conditions_hold(&rule->when, about, facts_same_lines(about, from));
}

static bool own_answers(const swap_rule *rule, const recipe_facts *about, size_t from,
                        const ingredient *to) {
    return own_replaces(rule, about, from) && selector_fits(&rule->with.items[0], to, about->shelf);
}

/* What the recipe itself says of it, or null. */
static const swap_rule *own_word(const recipe_facts *about, size_t from, const ingredient *to,
                                 const swap_rule **tied) {
    const swap_rules none = {0}, *own = about->of->own_swaps ? about->of->own_swaps : &none;
    const swap_rule *best = NULL;
    for (size_t i = 0; i < own->count; i++)
        if (own_answers(&own->items[i], about, from, to) &&
            (!best || rules_compare(&own->items[i], best) < 0))
            best = &own->items[i];
    for (size_t i = 0; best && i < own->count; i++)
        if (disagree(&own->items[i], best) && own_answers(&own->items[i], about, from, to))
            *tied = &own->items[i];
    return best;
}

/* The first of the recipe's bakes; `*end` is one past its last. Null where it has none. */
static const trial **bakes_of(const rule_book *book, const recipe_facts *about,
                              const trial ***end) {
    const trial **bakes = book->index->bakes;
    span slug = span_of(about->of->slug);
    size_t low = 0, high = book->index->bake_count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (span_compare(span_of(bakes[middle]->recipe), slug) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    while (high < book->index->bake_count && span_is(slug, bakes[high]->recipe))
        high++;
    *end = bakes + high;
    return bakes + low;
}

static const trial *bake_of(const rule_book *book, const recipe_facts *about, size_t from,
                            const ingredient *to) {
    const trial **end, **bake = bakes_of(book, about, &end);
    for (; bake < end; bake++)
        if ((*bake)->replaced.what == what_at(about, from) && (*bake)->with.what == to)
            return *bake;
    return NULL;
}

/* A list of rules that replace one is the ingredient's own. */
static bool replaces_these(const ranked_rule *one, const question *asked) {
    return !asked->two || pair_fits(one->replaces, asked->from);
}

static bool brings_these(const ranked_rule *one, const question *asked) {
    return asked->split ? pair_fits(one->with, asked->to) : has_bit(one->with[0], asked->to[0]);
}

static bool answers(const ranked_rule *one, const question *asked) {
    return brings_these(one, asked) && replaces_these(one, asked) &&
           conditions_hold(&one->rule->when, asked->about, asked->replaced);
}

/* The first of `list` that answers; `*tied` another of its rank that says otherwise. */
const swap_rule *index_answer(const ranked_list *list, const question *asked,
                              const swap_rule **tied) {
    const swap_rule *best = NULL;
    *tied = NULL;
    for (size_t i = 0; i < list->count && !*tied; i++) {
        const swap_rule *rule = list->items[i]->rule;
        if (best && compare_precedence(best, rule) != 0)
            break;
        if ((best && rule->says == best->says) || !answers(list->items[i], asked))
            continue;
        if (best)
            *tied = rule;
        else
            best = rule;
    }
    return best;
}

verdict decision_says(decision by) {
    if (by.rule)
        return by.rule->says;
    return by.bake ? by.bake->outcome : VERDICT_UNTRIED;
}

question question_of(const rule_book *book, const recipe_facts *about, size_t from) {
    return (question){.about = about,
                      .from = {pantry_index(book->shelf, what_at(about, from))},
                      .replaced = facts_same_lines(about, from)};
}

decision decide_by_rules(const rule_book *book, const recipe_facts *about, size_t from,
                         const ingredient *to, const swap_rule **tied) {
    assert(book->index);
    const swap_rule *none = NULL, **other = tied ? tied : &none;
    *other = NULL;
    if (what_at(about, from) == to)
        return decision_by(NULL);
    question asked = question_of(book, about, from);
    asked.to[0] = pantry_index(book->shelf, to);
    return decision_by(index_answer(&book->index->by_from[asked.from[0]], &asked, other));
}

decision decide(const rule_book *book, const recipe_facts *about, size_t from, const ingredient *to,
                const swap_rule **tied) {
    assert(book->index);
    const swap_rule *none = NULL, **other = tied ? tied : &none;
    *other = NULL;
    if (what_at(about, from) == to)
        return decision_by(NULL);
    const swap_rule *own = own_word(about, from, to, other);
    if (own)
        return decision_by(own);
    const trial *bake = bake_of(book, about, from, to);
    if (bake)
        return (decision){SAID_BY_TRIAL, NULL, bake};
    return decide_by_rules(book, about, from, to, tied);
}

const trial *const *trials_on(const rule_book *book, const recipe_facts *about, size_t *count) {
    const trial **end, **first = bakes_of(book, about, &end);
    *count = (size_t)(end - first);
    return (const trial *const *)first;
}

bool trial_is_overtaken(const trial *const *bakes, size_t which) {
    for (size_t i = 0; i < which; i++)
        if (bakes[i]->replaced.what == bakes[which]->replaced.what &&
            bakes[i]->with.what == bakes[which]->with.what)
            return true;
    return false;
}

/* -- all decisions --------------------------------------------------------------------------- */

claims_made claims_for(const rule_book *book, decided_list *out) {
    size_t words = book->index->words;
    return (claims_made){book->shelf, ARENA_ARRAY(out->home, bits, words), words, out};
}

void claim_one(claims_made *made, size_t to, size_t first, size_t second, decision by) {
    if (has_bit(made->claimed, to))
        return;
    set_bit(made->claimed, to);
    LIST_ADD(made->out->home, made->out,
             (decided){first, second, made->shelf->items[to], NULL, by});
}

/* Everything in `with` that nothing has claimed yet. */
void claim_set(claims_made *made, const bits *with, size_t first, size_t second, decision by) {
    for (size_t w = 0; w < made->words; w++)
        for (bits fresh = with[w] & ~made->claimed[w]; fresh; fresh &= fresh - 1)
            claim_one(made, w * BITS + (size_t)__builtin_ctzll(fresh), first, second, by);
}

static void claim_own_words(claims_made *made, const rule_book *book, const recipe_facts *about,
                            size_t from) {
    const swap_rules *own = about->of->own_swaps;
    for (size_t i = 0; own && i < own->count; i++) {
        if (!own_replaces(&own->items[i], about, from))
            continue;
        const selector *with = &own->items[i].with.items[0];
        for (size_t to = 0; to < book->shelf->count; to++)
            if (selector_fits(with, book->shelf->items[to], book->shelf))
                claim_one(made, to, from, SIZE_MAX,
                          decide(book, about, from, book->shelf->items[to], NULL));
    }
}

static void claim_bakes(claims_made *made, const rule_book *book, const recipe_facts *about,
                        size_t from) {
    const trial **end, **bake = bakes_of(book, about, &end);
    for (; bake < end; bake++)
        if ((*bake)->replaced.what == what_at(about, from) && (*bake)->with.what)
            claim_one(made, pantry_index(book->shelf, (*bake)->with.what), from, SIZE_MAX,
                      (decision){SAID_BY_TRIAL, NULL, *bake});
}

static void claim_family(claims_made *made, family in, size_t from) {
    for (size_t to = 0; to < made->shelf->count; to++)
        if (made->shelf->items[to]->in == in)
            claim_one(made, to, from, SIZE_MAX, decision_by(NULL));
}

void decide_all(const rule_book *book, const recipe_facts *about, size_t from, bool untried,
                decided_list *out) {
    assert(book->index);
    size_t old = pantry_index(book->shelf, what_at(about, from));
    const ranked_list *rules = &book->index->by_from[old];
    unsigned long long replaced = facts_same_lines(about, from);
    claims_made made = claims_for(book, out);
    set_bit(made.claimed, old); /* nothing stands in for itself */
    claim_own_words(&made, book, about, from);
    claim_bakes(&made, book, about, from);
    for (size_t i = 0; i < rules->count; i++)
        if (conditions_hold(&rules->items[i]->rule->when, about, replaced))
            claim_set(&made, rules->items[i]->with[0], from, SIZE_MAX,
                      decision_by(rules->items[i]->rule));
    if (untried)
        claim_family(&made, what_at(about, from)->in, from);
}
