/* Claims in words ("high in fibre", "low-fat", "no added sugar") against the rules of the law the
 * site goes by (nutrition/claims.h). */
#include "check/checks.h"
#include "check/wording.h"
#include "site/say.h"

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
    const mentions *said;
    size_t from, count; /* words */
    sentence *around;
} words_claim;

static size_t claim_start(const words_claim *c) {
    return c->all->items[c->from].at;
}

static size_t claim_end(const words_claim *c) {
    return c->all->items[c->from + c->count - 1].end;
}

/* Names do not overlap, so that of those from a byte on only the first two can be so near. */
enum { NEAR_MOST = 2 };

/* "low-fat quark", or part of an ingredient's name. */
static bool is_beside_name(const words_claim *c) {
    size_t first = mentions_from(c->said, claim_end(c) - 1);
    for (size_t i = first; i < c->said->count && i < first + NEAR_MOST; i++) {
        const mention *m = &c->said->items[i];
        bool follows = m->name_at >= claim_end(c) && m->name_at <= claim_end(c) + 1 && !m->loose;
        if (follows || m->name_at <= claim_start(c))
            return true;
    }
    return false;
}

/* The sentence mentions an ingredient. */
static bool is_among_ingredients(const words_claim *c) {
    sentence_move(c->around, c->in->words, claim_start(c));
    size_t from = (size_t)(c->around->words.at - c->in->words.at);
    size_t first = mentions_from(c->said, from);
    for (size_t i = first; i < c->said->count && i < first + NEAR_MOST; i++)
        if (c->said->items[i].at >= from && c->said->items[i].at < from + c->around->words.length)
            return true;
    return false;
}

/* "with low-fat quark": the words are about an ingredient, or, in a longer text, may be. */
static bool is_of_ingredient(const words_claim *c) {
    bool longer = c->in->sort == PASSAGE_METHOD || c->in->sort == PASSAGE_NOTE;
    return is_beside_name(c) || (longer && is_among_ingredients(c));
}

static const claim *claim_called(const claims *all, const char *const called[]) {
    for (size_t k = 0; called[k]; k++)
        for (size_t i = 0; i < all->count; i++)
            if (strcmp(all->items[i].claim, called[k]) == 0)
                return &all->items[i];
    return NULL;
}

/* What the recipe may claim, by the site's law: asked for only where words claim something. */
typedef struct {
    const check_case *with;
    claims all;
    bool known;
} law_book;

static const claims *claims_by(law_book *book) {
    const check_case *with = book->with;
    if (!book->known) {
        protein_quality quality = quality_of(with->a, with->of);
        book->all = claims_of(with->a, with->of, &with->figures, &quality,
                              with->site->folder->settings.law);
        book->known = true;
    }
    return &book->all;
}

static void judge(law_book *book, const words_claim *c, const char *const called[]) {
    const check_case *with = book->with;
    const claim *it = claim_called(claims_by(book), called);
    if (!it || !it->tested || it->holds)
        return;
    size_t at = claim_start(c), end = claim_end(c);
    problem_note(
        with->found, "claim-words", PROBLEM_WARNING, passage_place(&with->text, c->in, at),
        arena_format(with->a, "as %s has it; take the words out, or mend the recipe", it->rule),
        "\"%.*s\": %s", (int)(end - at), c->in->words.at + at,
        say_message(with->a, with->site->folder->settings.in, it->because));
}

static void take(law_book *book, const words_claim *c, claim_sort sort, span thing) {
    if (wording_is_asked(c->in->words, claim_end(c)) || wording_is_denied(c->all, c->from) ||
        is_of_ingredient(c))
        return;
    for (size_t i = 0; i < COUNT(claim_names); i++)
        if (claim_names[i].sort == sort && span_is(thing, claim_names[i].thing)) {
            judge(book, c, claim_names[i].claims);
            return;
        }
}

static void search(law_book *book, size_t passage_index) {
    const check_case *with = book->with;
    const passage *in = &with->text.items[passage_index];
    prose all = prose_of(with->a, in->words);
    sentence around = {.a = with->a};
    for (size_t i = 0; i < all.count; i++)
        for (size_t k = 0; k < COUNT(forms); k++) {
            size_t thing = i, count = form_at(&all, i, forms[k].words, &thing);
            if (!count)
                continue;
            words_claim told = {in, &all, &with->said[passage_index], i, count, &around};
            take(book, &told, forms[k].sort, prose_word(&all, thing));
            i += count - 1;
            break;
        }
}

void check_claim_words(check_case *with) {
    law_book book = {.with = with};
    for (size_t i = 0; i < with->text.count; i++)
        search(&book, i);
}
