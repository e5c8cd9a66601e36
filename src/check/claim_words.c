/* Claims in words ("high in fibre", "low-fat", "no added sugar") against the rules of the law the
 * site goes by (nutrition/claims.h). */
#include "check/checks.h"
#include "check/wording.h"

#include "nutrition/claims.h"

/* -- the words --------------------------------------------------------------------------------- */

typedef enum { WORD_HIGH, WORD_SOURCE, WORD_LOW, WORD_FREE, WORD_NO_ADDED } claim_sort;

/* Each way to say it, # for the thing: words of a passage, folded (a hyphen is a blank). */
static const struct {
    const char *words;
    claim_sort sort;
} forms[] = {{"high in #", WORD_HIGH},
             {"rich in #", WORD_HIGH},
             {"high #", WORD_HIGH},
             {"# rich", WORD_HIGH},
             {"source of #", WORD_SOURCE},
             {"low in #", WORD_LOW},
             {"low #", WORD_LOW},
             {"# free", WORD_FREE},
             {"free of #", WORD_FREE},
             {"no added #", WORD_NO_ADDED},
             {"without added #", WORD_NO_ADDED}};

/* The names of the claim in the laws; the first that the site's law knows is judged. */
static const struct {
    const char *thing;
    claim_sort sort;
    const char *claims[3];
} claim_names[] = {
    {"protein", WORD_HIGH, {"high protein"}},
    {"protein", WORD_SOURCE, {"source of protein", "good source of protein"}},
    {"fibre", WORD_HIGH, {"high fibre", "high fiber"}},
    {"fiber", WORD_HIGH, {"high fibre", "high fiber"}},
    {"fibre", WORD_SOURCE, {"source of fibre", "good source of fiber"}},
    {"fiber", WORD_SOURCE, {"source of fibre", "good source of fiber"}},
    {"fat", WORD_LOW, {"low fat"}},
    {"fat", WORD_FREE, {"fat-free", "fat free"}},
    {"sugar", WORD_LOW, {"low sugars"}},
    {"sugar", WORD_FREE, {"sugars-free", "sugar free"}},
    {"sugar", WORD_NO_ADDED, {"no added sugars"}},
    {"sugars", WORD_NO_ADDED, {"no added sugars"}},
    {"salt", WORD_LOW, {"low salt", "low sodium"}},
    {"salt", WORD_FREE, {"salt-free", "sodium free"}},
    {"sodium", WORD_LOW, {"low salt", "low sodium"}},
};

/* Words `form` stands at word `i`; `*thing` is the word that # is; the words it takes, 0: not
 * there. */
static size_t form_at(const prose *all, size_t i, const char *form, size_t *thing) {
    span first = prose_word(all, i);
    if (form[0] != '#' && (!first.length || form[0] != first.at[0]))
        return 0; /* most words differ in their first letter */
    span rest = span_of(form);
    size_t at = i;
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest), at++) {
        bool joined =
            at == i || prose_goes_on(all, at) || (at < all->count && all->items[at].bound);
        if (at >= all->count || !joined)
            return 0;
        if (span_is(word, "#"))
            *thing = at;
        else if (!span_equal(word, prose_word(all, at)))
            return 0;
    }
    return at - i;
}

/* -- judging ----------------------------------------------------------------------------------- */

typedef struct {
    const passage *in;
    const prose *all;
    size_t from, count; /* words */
} words_claim;

/* "with low-fat quark": the words are about an ingredient, or, in a longer text, may be. */
static bool is_of_ingredient(const check_case *with, const words_claim *c, size_t passage_index) {
    const mentions *said = &with->said[passage_index];
    size_t end = c->all->items[c->from + c->count - 1].end;
    span sentence = sentence_around(c->in->words, c->all->items[c->from].at);
    size_t from = (size_t)(sentence.at - c->in->words.at);
    bool longer = c->in->sort == PASSAGE_METHOD || c->in->sort == PASSAGE_NOTE;
    for (size_t i = 0; i < said->count; i++) {
        const mention *m = &said->items[i];
        bool follows = m->name_at >= end && m->name_at <= end + 1 && !m->loose;
        bool covers = m->name_at <= c->all->items[c->from].at && m->name_at + m->name_length >= end;
        bool near = longer && m->at >= from && m->at < from + sentence.length;
        if (follows || covers || near)
            return true;
    }
    return false;
}

static const claim *claim_called(const claims *all, const char *const called[]) {
    for (size_t k = 0; called[k]; k++)
        for (size_t i = 0; i < all->count; i++)
            if (strcmp(all->items[i].claim, called[k]) == 0)
                return &all->items[i];
    return NULL;
}

static void judge(const check_case *with, const words_claim *c, const char *const called[]) {
    const site_settings *settings = &with->site->folder->settings;
    protein_quality quality = quality_of(with->a, with->of);
    claims all = claims_of(with->a, with->of, &with->figures, &quality, settings->law);
    const claim *it = claim_called(&all, called);
    if (!it || !it->tested || it->holds)
        return;
    size_t at = c->all->items[c->from].at, end = c->all->items[c->from + c->count - 1].end;
    problem_note(
        with->found, "claim-words", PROBLEM_WARNING, passage_place(&with->text, c->in, at),
        arena_format(with->a, "as %s has it; take the words out, or mend the recipe", it->rule),
        "\"%.*s\": %s", (int)(end - at), c->in->words.at + at, it->because);
}

static void take(const check_case *with, const words_claim *c, size_t passage_index,
                 claim_sort sort, span thing) {
    size_t end = c->all->items[c->from + c->count - 1].end;
    if (wording_is_asked(c->in->words, end) || wording_is_denied(c->all, c->from) ||
        is_of_ingredient(with, c, passage_index))
        return;
    for (size_t i = 0; i < COUNT(claim_names); i++)
        if (claim_names[i].sort == sort && span_is(thing, claim_names[i].thing)) {
            judge(with, c, claim_names[i].claims);
            return;
        }
}

static void search(const check_case *with, size_t passage_index) {
    const passage *in = &with->text.items[passage_index];
    prose all = prose_of(with->a, in->words);
    for (size_t i = 0; i < all.count; i++)
        for (size_t k = 0; k < COUNT(forms); k++) {
            size_t thing = i, count = form_at(&all, i, forms[k].words, &thing);
            if (!count)
                continue;
            words_claim told = {in, &all, i, count};
            take(with, &told, passage_index, forms[k].sort, prose_word(&all, thing));
            i += count - 1;
            break;
        }
}

void check_claim_words(check_case *with) {
    for (size_t i = 0; i < with->text.count; i++)
        search(with, i);
}
