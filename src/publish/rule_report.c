#include "publish/rule_report.h"

#include "swap/evidence.h"
#include "swap/unanswered.h"

/* The names by which a comment in a file can allow what is reported. */
static const char contradicted[] = "rule-contradicted", never_holds[] = "rule-never-holds",
                  hidden[] = "rule-hidden", unanswered[] = "swap-unanswered";

static const char *at_text(arena *a, const trial *bake) {
    return arena_format(a, "%s:%u", bake->at.file, bake->at.line);
}

/* -- one recipe ------------------------------------------------------------------------------ */

/* The author's word on a recipe goes before a bake of it; that she said otherwise than it came out
 * may be meant, or forgotten. */
static void report_own_word(arena *a, const swap_rule *own, const trial *bake, problems *found) {
    problem_note(found, contradicted, PROBLEM_WARNING, own->at,
                 "it goes before the bake: mend it, or say in `note` what was different",
                 "this says %s of %s for %s, and the bake at %s came out %s",
                 verdict_word(own->says), bake->with.what->name, bake->replaced.what->name,
                 at_text(a, bake), verdict_word(bake->outcome));
}

/* What she says on the recipe of the swap that was baked; null when nothing. */
static const swap_rule *own_word_on(const rule_book *book, const recipe_facts *about,
                                    const trial *bake) {
    const recipe_lines *lines = &about->of->lines;
    for (size_t i = 0; bake->with.what && i < lines->count; i++) {
        if (lines->items[i].what != bake->replaced.what)
            continue;
        decision by = decide(book, about, i, bake->with.what, NULL);
        return by.by == SAID_BY_RECIPE ? by.rule : NULL;
    }
    return NULL;
}

static void report_own_words(arena *a, const rule_book *book, const recipe_facts *about,
                             problems *found) {
    size_t count;
    const trial *const *bakes = trials_on(book, about, &count);
    for (size_t i = 0; about->of->own_swaps && i < count; i++) {
        const swap_rule *own = own_word_on(book, about, bakes[i]);
        if (own && !trial_is_overtaken(bakes, i) &&
            verdicts_contradict(own->says, bakes[i]->outcome))
            report_own_word(a, own, bakes[i], found);
    }
}

static void report_unanswered(arena *a, const rule_book *book, const recipe_facts *about,
                              problems *found) {
    const recipe_lines *lines = &about->of->lines;
    bool any;
    for (size_t i = unanswered_next(a, book, about, 0, &any); i < lines->count;
         i = unanswered_next(a, book, about, i + 1, &any))
        problem_note(found, unanswered, PROBLEM_WARNING, lines->items[i].at,
                     "say a word in the recipe's `swaps`, or write a rule in rules/",
                     any ? "of what readers own most, nothing is said to stand in for %s here"
                         : "nothing is said to stand in for %s here, and readers will ask",
                     lines->items[i].what->name);
}

void rule_report_recipe(arena *a, rule_tally *tally, const recipe_facts *about, problems *found) {
    rule_tally_recipe(tally, a, about);
    report_own_words(a, tally->book, about, found);
    report_unanswered(a, tally->book, about, found);
}

/* -- all recipes ----------------------------------------------------------------------------- */

/* One rule and what became of it. */
typedef struct {
    const rule_tally *tally;
    const swap_rule *rule;
    const rule_fate *fate;
    problems *found;
} reporting;

/* A rule is doubted when at least as many bakes contradict it as bear it out. */
static size_t doubts(const reporting *of, const trial **first) {
    const trial *none;
    size_t against = rule_tally_count(of->tally, of->fate->contradict, first);
    return against < rule_tally_count(of->tally, of->fate->agree, &none) ? 0 : against;
}

static void report_doubted_own(const reporting *of, size_t against, const trial *first) {
    arena *a = of->found->home;
    const char *others = against > 1 ? arena_format(a, ", and so did %zu more", against - 1) : "";
    problem_note(of->found, contradicted, PROBLEM_WARNING, of->rule->at,
                 "mend its verdict, or state in `when` what is different there",
                 "\"%s\" says %s, but the bake at %s (%s for %s in %s) came out %s%s", of->rule->id,
                 verdict_word(of->rule->says), at_text(a, first), first->with.what->name,
                 first->replaced.what->name, first->recipe, verdict_word(first->outcome), others);
}

static void report_doubted_reference(const reporting *of, const trial *first) {
    const tallied_swap *still = &of->fate->against;
    problem_note(of->found, contradicted, PROBLEM_WARNING, first->at,
                 "a rule of your own in rules/ makes it count for recipes like it",
                 "this came out %s, but of %s for %s in %s the reference rule \"%s\" says %s",
                 verdict_word(first->outcome), still->to->name, still->from->name, still->recipe,
                 of->rule->id, verdict_word(of->rule->says));
}

/* A name or kind that nothing in the pantry has was reported when the rule was read. */
static bool speaks_of_something(const reporting *of) {
    const pantry *shelf = of->tally->book->shelf;
    for (size_t i = 0; i < shelf->count; i++)
        if (selector_fits(&of->rule->replace.items[0], shelf->items[i], shelf))
            return true;
    return false;
}

static void report_never(const reporting *of) {
    problem_note(of->found, never_holds, PROBLEM_WARNING, of->rule->at,
                 of->fate->has_replaced ? "look at the facts under `when`"
                                        : "look at the names; or keep it for recipes to come",
                 of->fate->has_replaced
                     ? "\"%s\" holds in no recipe: what it replaces is there, its facts never"
                     : "\"%s\" holds in no recipe: none has what it replaces",
                 of->rule->id);
}

static void report_hidden(const reporting *of) {
    const swap_rule *by = of->fate->hidden_by;
    problem_note(of->found, hidden, PROBLEM_WARNING, of->rule->at,
                 "make it more specific, or take it out",
                 by->by == SAID_BY_OWN_RULE
                     ? "\"%s\" never decides: \"%s\" (%s:%u) and the like go before it"
                     : "\"%s\" never decides: \"%s\" (%s:%u) of the reference goes before it",
                 of->rule->id, by->id, by->at.file, by->at.line);
}

static void report_rule(const reporting *of) {
    const trial *first;
    size_t against = doubts(of, &first);
    bool own = of->rule->by == SAID_BY_OWN_RULE;
    if (against && own)
        report_doubted_own(of, against, first);
    else if (against)
        report_doubted_reference(of, first);
    if (own && !of->fate->holds && speaks_of_something(of))
        report_never(of);
    else if (own && !of->fate->decides && of->fate->hidden_by)
        report_hidden(of);
}

void rule_report_site(const rule_tally *tally, problems *found) {
    for (size_t i = 0; i < tally->book->rules.count; i++)
        report_rule(&(reporting){tally, &tally->book->rules.items[i], &tally->of[i], found});
}
