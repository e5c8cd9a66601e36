#include "swap/match_combined.h"

#include "swap/match_index.h"

#include <assert.h>
#include <stdint.h>

bool decided_is_combined(const decided *of) {
    return of->second != SIZE_MAX || of->also;
}

/* -- one decision ---------------------------------------------------------------------------- */

/* True when the selectors speak of these: `other` null for one. In either order. */
static bool speaks_of(const selectors *side, const recipe_facts *about, const ingredient *one,
                      const ingredient *other) {
    const selector *by = side->items;
    if (side->count != (other ? 2 : 1))
        return false;
    if (!other)
        return selector_fits(by, one, about->shelf);
    return (selector_fits(&by[0], one, about->shelf) &&
            selector_fits(&by[1], other, about->shelf)) ||
           (selector_fits(&by[0], other, about->shelf) && selector_fits(&by[1], one, about->shelf));
}

/* What the recipe itself says of a combined swap, or null: of several the first by precedence. */
static const swap_rule *own_combined(const recipe_facts *about, const ingredient *const from[2],
                                     const ingredient *const to[2]) {
    const swap_rules *own = about->of->own_swaps;
    const swap_rule *best = NULL;
    for (size_t i = 0; own && i < own->count; i++) {
        const swap_rule *rule = &own->items[i];
        if (speaks_of(&rule->replace, about, from[0], from[1]) &&
            speaks_of(&rule->with, about, to[0], to[1]) && (!best || rules_compare(rule, best) < 0))
            best = rule;
    }
    return best;
}

static question question_of_two(const rule_book *book, const recipe_facts *about, size_t first,
                                size_t second) {
    question asked = question_of(book, about, first);
    asked.from[1] = pantry_index(book->shelf, what_at(about, second));
    asked.two = true;
    asked.replaced |= facts_same_lines(about, second);
    return asked;
}

decision decide_two_by_rules(const rule_book *book, const recipe_facts *about, size_t first,
                             size_t second, const ingredient *to, const swap_rule **tied) {
    assert(book->index);
    const swap_rule *none = NULL, **other = tied ? tied : &none;
    *other = NULL;
    if (what_at(about, first) == to || what_at(about, second) == to)
        return decision_by(NULL);
    question asked = question_of_two(book, about, first, second);
    asked.to[0] = pantry_index(book->shelf, to);
    return decision_by(index_answer(&book->index->twos, &asked, other));
}

decision decide_two(const rule_book *book, const recipe_facts *about, size_t first, size_t second,
                    const ingredient *to, const swap_rule **tied) {
    const ingredient *const from[] = {what_at(about, first), what_at(about, second)};
    const swap_rule *own = own_combined(about, from, (const ingredient *const[2]){to, NULL});
    if (!own)
        return decide_two_by_rules(book, about, first, second, to, tied);
    if (tied)
        *tied = NULL;
    return decision_by(own);
}

decision decide_split(const rule_book *book, const recipe_facts *about, size_t from,
                      const ingredient *const to[2], const swap_rule **tied) {
    assert(book->index);
    const swap_rule *none = NULL, **other = tied ? tied : &none;
    *other = NULL;
    const ingredient *const old[] = {what_at(about, from), NULL};
    if (old[0] == to[0] || old[0] == to[1])
        return decision_by(NULL);
    const swap_rule *own = own_combined(about, old, to);
    if (own)
        return decision_by(own);
    question asked = question_of(book, about, from);
    asked.split = true;
    asked.to[0] = pantry_index(book->shelf, to[0]);
    asked.to[1] = pantry_index(book->shelf, to[1]);
    return decision_by(index_answer(&book->index->splits[asked.from[0]], &asked, other));
}

/* -- two by one ------------------------------------------------------------------------------ */

/* What a recipe's own swap names on one side, in its order. */
static const ingredient *named_by(const pantry *shelf, const selectors *side, size_t which) {
    const selector *by = &side->items[which];
    return by->names.count ? pantry_find_folded(shelf, by->names.items[0]) : NULL;
}

/* What the recipe itself says may stand in for the pair. */
static void claim_own_pair(claims_made *made, const question *asked, const size_t lines[2]) {
    const recipe_facts *about = asked->about;
    const swap_rules *own = about->of->own_swaps;
    for (size_t i = 0; own && i < own->count; i++) {
        const swap_rule *rule = &own->items[i];
        const ingredient *first = what_at(about, lines[0]);
        if (rule->with.count != 1 ||
            !speaks_of(&rule->replace, about, first, what_at(about, lines[1])))
            continue;
        const ingredient *to = named_by(made->shelf, &rule->with, 0);
        bool straight = selector_fits(&rule->replace.items[0], first, about->shelf);
        if (to)
            claim_one(made, pantry_index(made->shelf, to), lines[!straight], lines[straight],
                      decision_by(rule));
    }
}

static void claim_pair(claims_made *made, const ranked_list *twos, const question *asked,
                       const size_t lines[2]) {
    set_bit(made->claimed, asked->from[0]);
    set_bit(made->claimed, asked->from[1]);
    claim_own_pair(made, asked, lines);
    for (size_t i = 0; i < twos->count; i++) {
        const ranked_rule *one = twos->items[i];
        if (!pair_fits(one->replaces, asked->from) ||
            !conditions_hold(&one->rule->when, asked->about, asked->replaced))
            continue;
        bool straight =
            has_bit(one->replaces[0], asked->from[0]) && has_bit(one->replaces[1], asked->from[1]);
        claim_set(made, one->with[0], lines[!straight], lines[straight], decision_by(one->rule));
    }
}

/* Nobody mixes a part of the dough with a part of the icing. */
static bool in_one_part(const recipe_facts *about, size_t first, size_t second) {
    return facts_for(about, facts_same_lines(about, first)) ==
           facts_for(about, facts_same_lines(about, second));
}

void decide_all_twos(const rule_book *book, const recipe_facts *about, decided_list *out) {
    assert(book->index);
    bool some = book->index->twos.count || about->of->own_swaps;
    for (size_t i = 0; some && i < about->of->lines.count; i++)
        for (size_t j = i + 1; facts_first_of(about, i) && j < about->of->lines.count; j++) {
            if (!facts_first_of(about, j) || !in_one_part(about, i, j))
                continue;
            question asked = question_of_two(book, about, i, j);
            claims_made made = claims_for(book, out);
            claim_pair(&made, &book->index->twos, &asked, (const size_t[2]){i, j});
        }
}

/* -- one by two ------------------------------------------------------------------------------ */

/* What of `set` the recipe has most of, the replaced lines apart; null where it has none. */
static const ingredient *at_hand(const rule_book *book, const recipe_facts *about,
                                 unsigned long long replaced, const bits *set) {
    const ingredient *most = NULL;
    double most_g = 0;
    for (size_t i = 0; i < about->of->lines.count; i++) {
        const ingredient *what = what_at(about, i);
        bool gone = i < FACTS_LINES_MOST && (replaced >> i & 1u);
        if (!what || gone || about->of->weights[i].grams <= most_g ||
            !has_bit(set, pantry_index(book->shelf, what)))
            continue;
        most = what;
        most_g = about->of->weights[i].grams;
    }
    return most;
}

static const ingredient *first_named(const rule_book *book, const ranked_rule *one) {
    const selector *by = &one->rule->with.items[1];
    if (by->names.count)
        return pantry_find_folded(book->shelf, by->names.items[0]);
    for (size_t i = 0; i < book->shelf->count; i++)
        if (has_bit(one->with[1], i))
            return book->shelf->items[i];
    return NULL;
}

/* Claims what `one` brings first, each with the same second. */
static void claim_split(claims_made *made, const rule_book *book, const question *asked,
                        const ranked_rule *one, size_t from) {
    const ingredient *also = at_hand(book, asked->about, asked->replaced, one->with[1]);
    if (!also)
        also = first_named(book, one);
    if (!also || also == what_at(asked->about, from))
        return;
    for (size_t to = 0; to < made->shelf->count; to++) {
        const ingredient *what = made->shelf->items[to];
        if (!has_bit(one->with[0], to) || has_bit(made->claimed, to) || what == also)
            continue;
        set_bit(made->claimed, to);
        LIST_ADD(made->out->home, made->out,
                 (decided){from, SIZE_MAX, what, also, decision_by(one->rule)});
    }
}

/* What the recipe itself says stands in by two. */
static void claim_own_splits(claims_made *made, const recipe_facts *about, size_t from) {
    const swap_rules *own = about->of->own_swaps;
    for (size_t i = 0; own && i < own->count; i++) {
        const swap_rule *rule = &own->items[i];
        if (rule->with.count != 2 || !speaks_of(&rule->replace, about, what_at(about, from), NULL))
            continue;
        const ingredient *to = named_by(made->shelf, &rule->with, 0);
        const ingredient *also = named_by(made->shelf, &rule->with, 1);
        if (!to || !also || has_bit(made->claimed, pantry_index(made->shelf, to)))
            continue;
        set_bit(made->claimed, pantry_index(made->shelf, to));
        LIST_ADD(made->out->home, made->out,
                 (decided){from, SIZE_MAX, to, also, decision_by(rule)});
    }
}

void decide_all_splits(const rule_book *book, const recipe_facts *about, size_t from,
                       decided_list *out) {
    assert(book->index);
    question asked = question_of(book, about, from);
    const ranked_list *rules = &book->index->splits[asked.from[0]];
    if (!rules->count && !about->of->own_swaps)
        return;
    claims_made made = claims_for(book, out);
    set_bit(made.claimed, asked.from[0]);
    claim_own_splits(&made, about, from);
    for (size_t i = 0; i < rules->count; i++)
        if (conditions_hold(&rules->items[i]->rule->when, about, asked.replaced))
            claim_split(&made, book, &asked, rules->items[i], from);
}
