#include "draft/stated_yield.h"

#include "base/number.h"
#include "base/words.h"
#include "measure/units.h"
#include "read/yield.h"

enum { STATED_BYTES_MOST = 200 }; /* longer than this no yield is */

/* Words before the number, folded; `of_people`: the number is one of servings. */
static const struct {
    const char *word;
    bool of_people;
} leads[] = {{"makes", false},   {"make", false},          {"yields", false}, {"yield", false},
             {"servings", true}, {"serves", true},         {"serving", true}, {"for", true},
             {"about", false},   {"approximately", false}, {"approx", false}, {"ca", false},
             {"roughly", false}, {"recipe", false}};

/* Nouns that mean those who eat. */
static const char *const eaters[] = {"person", "people", "persons", "guests", "adults", "eaters"};

/* Nouns that say no more than a number does. */
static const char *const shares[] = {"serving", "servings", "portion", "portions"};

static bool is_lead(span word, bool *of_people) {
    while (word.length && strchr(":.", word.at[word.length - 1]))
        word.length--;
    for (size_t i = 0; i < COUNT(leads); i++)
        if (span_is(word, leads[i].word)) {
            *of_people = *of_people || leads[i].of_people;
            return true;
        }
    return false;
}

static span without_leads(arena *a, span s, bool *of_people) {
    for (;;) {
        span rest = span_trim(s), word = span_next_word(&rest);
        if (word.length == 0 || !is_lead(words_fold(a, word), of_people))
            return span_begins(s, "~") ? span_from(s, 1) : s;
        s = span_trim(rest);
    }
}

/* What is counted, up to a bracket, a comma or a full stop. */
static span noun_of(span rest) {
    static const char *const ends[] = {"(", ")", ",", ";", "/", ". ", " \u2013 ", " - ", ":", "\n"};
    size_t end = rest.length;
    for (size_t i = 0; i < COUNT(ends); i++) {
        size_t at = span_find(rest, ends[i]);
        end = at < end ? at : end;
    }
    rest = span_trim(span_first(rest, end));
    if (span_ends(rest, "."))
        rest.length--;
    return rest;
}

typedef enum { FIT_NONE, FIT_NUMBER, FIT_SERVINGS, FIT_NOUN } fit;

static bool is_among(arena *a, span noun, const char *const list[], size_t count) {
    return words_index(words_fold(a, noun), list, count) < count;
}

/* "500 g" says how heavy, not how many. Cups may be for eating from. */
static bool is_weight(span noun) {
    static const char *const litres[] = {"ml", "cl", "dl", "l"};
    size_t used;
    const unit *in = unit_read(noun, &used);
    return in && (in->sort == UNIT_MASS ||
                  words_index(span_of(in->name), litres, COUNT(litres)) < COUNT(litres));
}

/* The reader of recipe files must see in `makes` what was meant. */
static bool reads_back(arena *a, const char *makes, double count) {
    yield got;
    problems ignored = problems_in(a);
    return yield_read(a, (located){span_of(makes), {"makes", 1, 1}}, &got, &ignored) &&
           got.count >= count && got.count <= count;
}

static fit read_one(arena *a, const char *stated, const char **makes) {
    bool of_people = false;
    amount_range amount;
    if (strlen(stated) > STATED_BYTES_MOST)
        return FIT_NONE;
    span words = without_leads(a, span_trim(span_of(stated)), &of_people);
    size_t used = amount_read(words, &amount);
    if (used == 0 || amount.low <= 0)
        return FIT_NONE;
    span noun = noun_of(span_from(words, used));
    bool people = is_among(a, noun, eaters, COUNT(eaters)) || (noun.length == 0 && of_people);
    if (is_weight(noun))
        return FIT_NONE;
    *makes = arena_format(a, "%.*s %.*s", SPAN(span_trim(span_first(words, used))),
                          SPAN(people        ? span_of("servings")
                               : noun.length ? noun
                                             : span_of("pieces")));
    if (!reads_back(a, *makes, amount_middle(amount)))
        return FIT_NONE;
    people = people || of_people || is_among(a, noun, shares, COUNT(shares));
    return people ? FIT_SERVINGS : noun.length ? FIT_NOUN : FIT_NUMBER;
}

static const char *stated_list(arena *a, const word_list *stated) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < stated->count; i++)
        text_format(&t, "%s\"%s\"", i ? ", " : "", stated->items[i]);
    const char *all = arena_copy(a, text_span(&t));
    text_free(&t);
    return all;
}

stated_yield yield_stated(arena *a, const word_list *stated) {
    fit best = FIT_NONE;
    stated_yield out = {"1 batch", NULL};
    for (size_t i = 0; i < stated->count; i++) {
        const char *makes;
        fit one = read_one(a, stated->items[i], &makes);
        if (one > best) {
            best = one;
            out.makes = makes;
        }
    }
    const char *all = stated_list(a, stated);
    if (stated->count == 0)
        out.remark = "makes: not stated; how many of what? For example: 8 rounds";
    else if (best == FIT_NONE)
        out.remark =
            arena_format(a, "could not read: the yield %s, because it is no number of things", all);
    else if (best == FIT_NUMBER)
        out.remark = arena_format(a, "makes: stated is %s alone; of what?", all);
    else if (stated->count > 1 || strcmp(stated->items[0], out.makes) != 0)
        out.remark = arena_format(a, "makes: stated is %s", all);
    return out;
}

/* What one whole is cut into. */
static const char *const cuts[] = {"slices", "pieces", "servings", "portions", "squares",
                                   "wedges", "bars",   "fingers",  "people"};

/* "10 slices" behind "1 loaf": the words of it, from its number on; empty: none. */
static span cut_of(arena *a, span stated, amount_range *amount) {
    for (size_t i = 1; i < stated.length && stated.length <= STATED_BYTES_MOST; i++) {
        span rest = span_from(stated, i);
        bool begins = strchr(" (,", stated.at[i - 1]) && rest.at[0] >= '1' && rest.at[0] <= '9';
        size_t used = begins ? amount_read(rest, amount) : 0;
        span noun = noun_of(span_from(rest, used));
        if (used && amount->low > 1 && is_among(a, noun, cuts, COUNT(cuts)))
            return span_first(rest, (size_t)(noun.at - rest.at) + noun.length);
    }
    return (span){0};
}

const char *portion_asked(arena *a, const char *makes, const word_list *stated) {
    amount_range amount;
    if (stated->count == 0 || span_ends(span_of(makes), "servings"))
        return NULL;
    if (!span_begins(span_of(makes), "1 ") && !span_begins(span_of(makes), "one "))
        return "portion: how many are one? Left out, each is a portion";
    for (size_t i = 0; i < stated->count; i++) {
        span cut = cut_of(a, span_of(stated->items[i]), &amount);
        if (cut.length)
            return arena_format(a,
                                "portion: 1/%s, if one of \"%.*s\" is one? Left out, all of it is",
                                number_copy(a, amount.low, 0), SPAN(cut));
    }
    return "portion: what part of it is one, for example 1/12? Left out, all of it is";
}

const char *portion_stated(arena *a, const char *makes, const char *serving) {
    yield whole, portion;
    amount_range amount;
    problems ignored = problems_in(a);
    span words = span_of(serving);
    size_t used = amount_read(words, &amount);
    span noun = noun_of(span_from(words, used));
    if (used == 0 || noun.length == 0)
        return NULL;
    const char *said =
        arena_format(a, "%.*s %.*s", SPAN(span_trim(span_first(words, used))), SPAN(noun));
    bool good =
        yield_read(a, (located){span_of(makes), {"makes", 1, 1}}, &whole, &ignored) &&
        portion_read(a, (located){span_of(said), {"portion", 1, 1}}, &whole, &portion, &ignored) &&
        ignored.count == 0;
    return good ? said : NULL;
}
