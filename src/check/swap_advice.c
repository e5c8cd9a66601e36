/* Swap advice written by hand ("use whey instead of the pea powder", "rice powder works too")
 * against what decides on that swap: the recipe's own swaps, a trial, a rule. */
#include "base/words.h"
#include "check/checks.h"
#include "check/wording.h"

#include "swap/match.h"

/* One sentence with what it mentions. */
typedef struct {
    const passage *in;
    span words;
    size_t from; /* where it begins in the passage */
    prose all;
    const mention *said; /* the mentions inside it */
    size_t count;
} saying;

/* -- what is advised --------------------------------------------------------------------------- */

typedef struct {
    size_t line;            /* what goes */
    const ingredient *with; /* what comes */
    span name;              /* as written */
    size_t at;              /* byte of the passage */
    bool against;           /* "do not swap …" */
} advice;

static span between(const saying *s, const mention *one, const mention *other) {
    size_t from = one->name_at + one->name_length;
    return (span){s->in->words.at + from, other->at > from ? other->at - from : 0};
}

static span name_of(const saying *s, const mention *m) {
    return (span){s->in->words.at + m->name_at, m->name_length};
}

static bool is_line(const mention *m) {
    return m->line != MENTION_NO_LINE && m->what;
}

static bool is_newcomer(const mention *m) {
    return m->lines == 0 && m->what;
}

static span before(const saying *s, const mention *m) {
    return span_first(s->words, m->at > s->from ? m->at - s->from : 0);
}

static span behind(const saying *s, const mention *m) {
    return span_from(s->words, m->name_at + m->name_length - s->from);
}

/* "instead of", "in place of" between new and old. */
static bool is_instead(const check_case *with, span gap) {
    static const char *const words[] = {"instead", "place", "rather", "replaces", "replace"};
    return WORDING_HAS(with->a, gap, words);
}

/* "swap OLD for NEW": a verb before the old one, a joint between. */
static bool is_swapped_for(const check_case *with, const saying *s, const mention *old, span gap) {
    static const char *const verbs[] = {"swap", "replace", "exchange", "trade", "change"};
    static const char *const joints[] = {"for", "with", "by"};
    return WORDING_HAS(with->a, before(s, old), verbs) && WORDING_HAS(with->a, gap, joints);
}

/* "substitute NEW for OLD" */
static bool is_substituted(const check_case *with, const saying *s, const mention *new_, span gap) {
    static const char *const verbs[] = {"substitute"};
    static const char *const joints[] = {"for"};
    return WORDING_HAS(with->a, before(s, new_), verbs) && WORDING_HAS(with->a, gap, joints);
}

/* Only what is advised counts, not what is told ("with whey in place of casein it weeps"). */
static bool is_advice(const check_case *with, const saying *s) {
    static const char *const words[] = {"use",   "swap",  "replace", "substitute", "can",
                                        "could", "works", "work",    "take",       "try",
                                        "fine",  "put",   "may",     "exchange"};
    return WORDING_HAS(with->a, s->words, words);
}

/* Denied, by a word ahead of byte `end` of the passage. */
static bool is_against(const check_case *with, const saying *s, size_t end) {
    static const char *const words[] = {"not", "never", "no", "cannot", "avoid", "don"};
    span said = span_first(s->words, end - s->from);
    return WORDING_HAS(with->a, said, words) || span_find(said, "n't") < said.length ||
           span_find(said, "n\u2019t") < said.length;
}

/* Two mentions side by side of which one replaces the other. */
static bool pair_read(const check_case *with, const saying *s, size_t i, advice *out) {
    const mention *one = &s->said[i], *other = &s->said[i + 1];
    span gap = between(s, one, other);
    bool new_first = is_newcomer(one) && is_line(other);
    bool old_first = is_line(one) && is_newcomer(other);
    bool advised = (new_first && (is_instead(with, gap) || is_substituted(with, s, one, gap))) ||
                   (old_first && is_swapped_for(with, s, one, gap));
    if (!advised || !is_advice(with, s))
        return false;
    const mention *old = new_first ? other : one, *new_ = new_first ? one : other;
    *out = (advice){(size_t)old->line, new_->what, name_of(s, new_), one->at,
                    is_against(with, s, other->name_at)};
    return true;
}

/* The only line of the family of `what`; false when there is none or more than one. */
static bool only_line_of(const recipe *of, const ingredient *what, size_t *line) {
    size_t found = 0;
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what && of->lines.items[i].what->in == what->in) {
            *line = i;
            found++;
        }
    return found == 1;
}

/* "whey works too": instead of the one line of its family. */
static bool works_too(const check_case *with, const saying *s, size_t i, advice *out) {
    static const char *const works[] = {"works", "work", "do"};
    static const char *const too[] = {"too", "well", "instead", "also", "fine"};
    const mention *m = &s->said[i];
    span rest = behind(s, m), after = rest;
    span first = span_next_word(&after);
    size_t line;
    bool says = words_index(words_fold(with->a, first), works, COUNT(works)) < COUNT(works) ||
                span_begins(span_trim(rest), "will do");
    if (!is_newcomer(m) || !says || !WORDING_HAS(with->a, rest, too) ||
        !only_line_of(with->of, m->what, &line))
        return false;
    *out = (advice){line, m->what, name_of(s, m), m->at, is_against(with, s, m->name_at)};
    return true;
}

/* -- what decides ------------------------------------------------------------------------------ */

static const char *decider(arena *a, decision by) {
    if (by.by == SAID_BY_RECIPE)
        return "the recipe's own swaps say";
    if (by.by == SAID_BY_TRIAL)
        return arena_format(a, "the trial of %s says", by.bake->date ? by.bake->date : "it");
    return arena_format(a, "the rule \"%s\" says", by.rule->id ? by.rule->id : "?");
}

static void judge(const check_case *with, const saying *s, const advice *given) {
    decision by = decide(&with->site->folder->book, with->about, given->line, given->with, NULL);
    verdict says = decision_says(by);
    if (says != (given->against ? VERDICT_WORKS : VERDICT_AVOID))
        return;
    problem_note(with->found, "swap-advice", PROBLEM_WARNING,
                 passage_place(&with->text, s->in, given->at),
                 "mend the words, or write a swap of the recipe's own",
                 "the words advise %s %.*s for %s, but %s %s",
                 given->against ? "against" : "to use", SPAN(given->name),
                 with->of->lines.items[given->line].name, decider(with->a, by), verdict_word(says));
}

/* -- sentences --------------------------------------------------------------------------------- */

/* What is longer is no sentence that advises; and each pair in it is asked for all before it. */
enum { SAYING_MOST = 2000 };

static void take(const check_case *with, const saying *s) {
    for (size_t i = 0; s->words.length <= SAYING_MOST && i < s->count; i++) {
        advice given;
        if ((i + 1 < s->count && pair_read(with, s, i, &given)) || works_too(with, s, i, &given))
            judge(with, s, &given);
    }
}

static void search(const check_case *with, size_t passage_index) {
    const passage *in = &with->text.items[passage_index];
    const mentions *said = &with->said[passage_index];
    for (size_t i = 0; i < said->count;) {
        saying s = {.in = in, .words = sentence_around(in->words, said->items[i].at)};
        s.from = (size_t)(s.words.at - in->words.at);
        s.said = &said->items[i];
        while (i < said->count && said->items[i].at < s.from + s.words.length) {
            s.count++;
            i++;
        }
        if (s.count == 0)
            i++; /* a mention that begins at a stop */
        take(with, &s);
    }
}

void check_swap_advice(check_case *with) {
    for (size_t i = 0; i < with->text.count; i++)
        if (with->text.items[i].sort == PASSAGE_METHOD ||
            with->text.items[i].sort == PASSAGE_NOTE || with->text.items[i].sort == PASSAGE_SUMMARY)
            search(with, i);
}
