#include "swap/rule_tally.h"

#include "swap/evidence.h"
#include "swap/match_combined.h"

#include <assert.h>

enum { BITS = 64 };

rule_tally rule_tally_new(arena *home, const rule_book *book) {
    return (rule_tally){home, book, ARENA_ARRAY(home, rule_fate, book->rules.count + 1)};
}

/* -- sets of trials -------------------------------------------------------------------------- */

static size_t words_of(const rule_tally *tally) {
    return tally->book->log.count / BITS + 1;
}

static void add_trial(const rule_tally *tally, unsigned long long **set, const trial *bake) {
    size_t which = (size_t)(bake - tally->book->log.items);
    if (!*set)
        *set = ARENA_ARRAY(tally->home, unsigned long long, words_of(tally));
    (*set)[which / BITS] |= 1ull << (which % BITS);
}

static void join_sets(const rule_tally *tally, unsigned long long **set,
                      const unsigned long long *more) {
    if (more && !*set)
        *set = ARENA_ARRAY(tally->home, unsigned long long, words_of(tally));
    for (size_t i = 0; more && i < words_of(tally); i++)
        (*set)[i] |= more[i];
}

size_t rule_tally_count(const rule_tally *tally, const unsigned long long *set,
                        const trial **first) {
    size_t count = 0;
    *first = NULL;
    for (size_t i = 0; set && i < tally->book->log.count; i++) {
        if (!(set[i / BITS] >> (i % BITS) & 1u))
            continue;
        *first = count++ ? *first : &tally->book->log.items[i];
    }
    return count;
}

/* -- what the trials say --------------------------------------------------------------------- */

static rule_fate *fate_of(const rule_tally *tally, const swap_rule *rule) {
    return &tally->of[rule - tally->book->rules.items];
}

static bool add_outcome(const rule_tally *tally, const swap_rule *rule, const trial *bake) {
    rule_fate *fate = fate_of(tally, rule);
    bool against = verdicts_contradict(rule->says, bake->outcome);
    add_trial(tally, against ? &fate->contradict : &fate->agree, bake);
    return against;
}

/* The first line that holds `what`; the number of lines when none does. */
static size_t line_of(const recipe_facts *about, const ingredient *what) {
    size_t i = 0;
    while (i < about->of->lines.count && about->of->lines.items[i].what != what)
        i++;
    return i;
}

/* Sets each bake on this recipe against her rule that would decide without it. A rule of the
 * reference is not blamed: where the bake counts, it does no harm. */
static void tally_bakes(const rule_tally *tally, const recipe_facts *about) {
    size_t count;
    const trial *const *bakes = trials_on(tally->book, about, &count);
    for (size_t i = 0; i < count; i++) {
        size_t line = line_of(about, bakes[i]->replaced.what);
        if (line == about->of->lines.count || !bakes[i]->with.what || trial_is_overtaken(bakes, i))
            continue;
        decision by = decide_by_rules(tally->book, about, line, bakes[i]->with.what, NULL);
        if (by.by == SAID_BY_OWN_RULE)
            (void)add_outcome(tally, by.rule, bakes[i]);
    }
}

/* Keeps the first by name, whichever worker finds it; of one recipe the first found, which is the
 * first of its lines. */
static void keep_against(const rule_tally *tally, rule_fate *fate, tallied_swap one) {
    assert(one.recipe);
    if (fate->against.recipe && strcmp(fate->against.recipe, one.recipe) <= 0)
        return;
    fate->against = one;
    fate->against.recipe = arena_copy(tally->home, span_of(one.recipe));
}

/* Sets the bakes of recipes like this one against the rule that decides here. The reference is not
 * blamed for a bake of this very recipe, as above. */
static void tally_decided(const rule_tally *tally, arena *a, const recipe_facts *about,
                          const decided *said) {
    const ingredient *from = about->of->lines.items[said->first].what;
    const recipe_facts *mixed = facts_for(about, facts_same_lines(about, said->first));
    evidence tried = evidence_of(a, tally->book, mixed, said);
    for (size_t i = 0; i < tried.count; i++) {
        const trial *bake = tried.items[i].bake;
        bool here = said->by.by == SAID_BY_REFERENCE && strcmp(bake->recipe, about->of->slug) == 0;
        if (tried.items[i].counts && !here && add_outcome(tally, said->by.rule, bake))
            keep_against(tally, fate_of(tally, said->by.rule),
                         (tallied_swap){about->of->slug, from, said->to});
    }
}

static void tally_evidence(const rule_tally *tally, arena *a, const recipe_facts *about) {
    for (size_t line = 0; line < about->of->lines.count; line++) {
        decided_list all = {.home = a};
        if (facts_first_of(about, line))
            decide_all(tally->book, about, line, false, &all);
        for (size_t i = 0; i < all.count; i++)
            if (all.items[i].by.by == SAID_BY_OWN_RULE || all.items[i].by.by == SAID_BY_REFERENCE)
                tally_decided(tally, a, about, &all.items[i]);
    }
}

/* -- what holds and decides ------------------------------------------------------------------ */

/* One of her rules, asked about one recipe. */
typedef struct {
    const rule_tally *tally;
    const recipe_facts *about;
    const swap_rule *rule;
    rule_fate *fate;
} asking;

static const ingredient *what_at(const asking *of, size_t line) {
    return of->about->of->lines.items[line].what;
}

static bool replaces(const asking *of, size_t which, size_t line) {
    return facts_first_of(of->about, line) &&
           selector_fits(&of->rule->replace.items[which], what_at(of, line), of->about->shelf);
}

/* True when the rule speaks of `to` in the place of `from`. */
static bool brings(const asking *of, const ingredient *from, const ingredient *to) {
    const selector *with = &of->rule->with.items[0];
    bool kinds = !with->same_kind ||
                 (to->in == from->in && from->kind[0] && strcmp(to->kind, from->kind) == 0);
    return to != from && kinds && selector_fits(with, to, of->about->shelf);
}

/* Keeps who goes before the rule: of several the first of the book. */
static void note_outcome(const asking *of, decision by, const swap_rule *tied) {
    rule_fate *fate = of->fate;
    if (by.rule == of->rule || tied == of->rule)
        fate->decides = true;
    else if (by.rule && (!fate->hidden_by || by.rule < fate->hidden_by))
        fate->hidden_by = by.rule;
}

static void ask_one(const asking *of, size_t line) {
    const pantry *shelf = of->about->shelf;
    for (size_t i = 0; i < shelf->count && !of->fate->decides; i++) {
        const ingredient *to = shelf->items[i];
        if (!brings(of, what_at(of, line), to))
            continue;
        const swap_rule *tied;
        decision by = decide_by_rules(of->tally->book, of->about, line, to, &tied);
        note_outcome(of, by, tied);
    }
}

static void ask_pair(const asking *of, size_t first, size_t second) {
    const pantry *shelf = of->about->shelf;
    for (size_t i = 0; i < shelf->count && !of->fate->decides; i++) {
        const ingredient *to = shelf->items[i];
        if (to == what_at(of, second) || !brings(of, what_at(of, first), to))
            continue;
        const swap_rule *tied;
        decision by = decide_two_by_rules(of->tally->book, of->about, first, second, to, &tied);
        note_outcome(of, by, tied);
    }
}

static bool holds_for(const asking *of, unsigned long long lines) {
    bool holds = conditions_hold(&of->rule->when, of->about, lines);
    of->fate->has_replaced = true;
    of->fate->holds = of->fate->holds || holds;
    return holds;
}

static void ask_pairs(const asking *of, size_t first) {
    for (size_t second = 0; second < of->about->of->lines.count; second++)
        if (second != first && replaces(of, 1, second) &&
            holds_for(of, facts_same_lines(of->about, first) | facts_same_lines(of->about, second)))
            ask_pair(of, first, second);
}

static void ask_line(const asking *of, size_t line) {
    if (!replaces(of, 0, line))
        return;
    if (of->rule->replace.count == 2)
        ask_pairs(of, line);
    else if (holds_for(of, facts_same_lines(of->about, line))) {
        if (of->rule->with.count == 1)
            ask_one(of, line);
        else
            of->fate->decides = true;
    }
}

void rule_tally_recipe(rule_tally *tally, arena *a, const recipe_facts *about) {
    const swap_rules *rules = &tally->book->rules;
    if (tally->book->log.count) {
        tally_bakes(tally, about);
        tally_evidence(tally, a, about);
    }
    for (size_t i = 0; i < rules->count; i++) {
        asking of = {tally, about, &rules->items[i], &tally->of[i]};
        if (of.rule->by != SAID_BY_OWN_RULE)
            continue;
        for (size_t line = 0; line < about->of->lines.count; line++)
            ask_line(&of, line);
    }
}

void rule_tally_join(rule_tally *tally, const rule_tally *more) {
    for (size_t i = 0; i < tally->book->rules.count; i++) {
        rule_fate *fate = &tally->of[i];
        const rule_fate *other = &more->of[i];
        fate->has_replaced = fate->has_replaced || other->has_replaced;
        fate->holds = fate->holds || other->holds;
        fate->decides = fate->decides || other->decides;
        if (other->hidden_by && (!fate->hidden_by || other->hidden_by < fate->hidden_by))
            fate->hidden_by = other->hidden_by;
        if (other->against.recipe)
            keep_against(tally, fate, other->against);
        join_sets(tally, &fate->agree, other->agree);
        join_sets(tally, &fate->contradict, other->contradict);
    }
}
