#include "measure/naming.h"

#include "base/words.h"

#include <assert.h>

/* One written word and where its folded form stands in the folded whole. A written word may fold
 * to two ("low-fat") or to none ("–"). */
typedef struct {
    span written;
    size_t start, end;
} token;

typedef struct {
    token *items;
    size_t count, capacity;
    span folded; /* all words folded, single spaces between */
} tokens;

static tokens tokens_of(arena *a, span words) {
    tokens all = {0};
    text folded = TEXT_EMPTY;
    for (span word = span_next_word(&words); word.length; word = span_next_word(&words)) {
        span part = words_fold(a, word);
        if (part.length && folded.length)
            text_add_char(&folded, ' ');
        size_t start = folded.length;
        text_add_span(&folded, part);
        LIST_ADD(a, &all, (token){word, start, folded.length});
    }
    all.folded = arena_copy_span(a, text_span(&folded));
    text_free(&folded);
    return all;
}

/* The written words from token `from` up to `to`, single spaces between. */
static char *written_words(arena *a, const tokens *all, size_t from, size_t to) {
    text joined = TEXT_EMPTY;
    for (size_t i = from; i < to; i++) {
        if (joined.length)
            text_add_char(&joined, ' ');
        text_add_span(&joined, all->items[i].written);
    }
    char *copy = arena_copy(a, text_span(&joined));
    text_free(&joined);
    return copy;
}

static bool is_among(span word, const char *const list[], size_t count) {
    for (size_t i = 0; i < count; i++)
        if (span_is(word, list[i]))
            return true;
    return false;
}

/* Behind a name these make another food of it. Singular; the plural s is taken off first. */
static const char *const heads[] = {
    "bran",    "bread",   "butter",  "cake",    "cheese", "chip",   "concentrate",
    "cream",   "crisp",   "essence", "extract", "fibre",  "fiber",  "flake",
    "flour",   "germ",    "honey",   "isolate", "jam",    "juice",  "kefir",
    "liqueur", "meal",    "milk",    "oil",     "paste",  "peel",   "powder",
    "protein", "puree",   "sauce",   "seed",    "spread", "starch", "sugar",
    "syrup",   "vinegar", "water",   "yoghurt", "yogurt", "zest"};

/* What follows these says what the thing is for, or in what it lies. */
static const char *const joints[] = {"for", "with", "without", "or", "and", "plus", "from", "to",
                                     "in",  "into", "as",      "on", "at",  "cut",  "+"};

/* Ahead of a name these leave it the food it is. Words in -ed and -ly do too. */
static const char *const plain_words[] = {
    "a",        "ground",   "an",        "the",     "of",          "fresh",   "freshly", "ripe",
    "very",     "overripe", "large",     "small",   "medium",      "big",     "cold",    "cool",
    "warm",     "hot",      "lukewarm",  "room",    "temperature", "soft",    "hard",    "firm",
    "fine",     "coarse",   "plain",     "natural", "pure",        "organic", "good",    "quality",
    "free",     "range",    "raw",       "whole",   "dry",         "frozen",  "thin",    "thick",
    "smooth",   "crunchy",  "runny",     "light",   "dark",        "mild",    "extra",   "virgin",
    "low",      "full",     "fat",       "reduced", "skim",        "level",   "heaped",  "scant",
    "generous", "your",     "favourite", "any",     "some",        "little",  "few",     "bit",
    "more",     "split",    "cut",       "new",     "old",         "young",   "tart",    "no",
    "neutral",  "stick",    "piece",     "still",   "boiling",     "ice",     "tap",     "ready",
    "to",       "eat",      "about",     "each",    "other",       "half",    "all",     "purpose",
    "not"};

/* A powder is sold in these; the rest of it is the same. */
static const char *const flavours[] = {"vanilla", "chocolate", "strawberry", "caramel", "cocoa"};

static bool is_plain(span word, const ingredient *what) {
    if (what->in == FAMILY_PROTEIN_POWDER && is_among(word, flavours, COUNT(flavours)))
        return true;
    bool figure = word.length && word.at[0] >= '0' && word.at[0] <= '9';
    return figure || span_ends(word, "ed") || span_ends(word, "ly") ||
           is_among(word, plain_words, COUNT(plain_words));
}

static span without_plural(span word) {
    return span_ends(word, "s") ? span_first(word, word.length - 1) : word;
}

/* The bytes of `words` that are `measure` in either number and end a word; 0: they are not. */
static size_t measure_length(span words, const char *measure) {
    static const char *const endings[] = {"", "s", "es"};
    size_t length = strlen(measure);
    if (strcmp(measure, "half") == 0 && span_begins(words, "halves"))
        return strlen("halves");
    for (size_t i = 0; i < COUNT(endings) && span_begins(words, measure); i++) {
        span rest = span_from(words, length);
        size_t end = length + strlen(endings[i]);
        if (span_begins(rest, endings[i]) && (words.length == end || words.at[end] == ' '))
            return end;
    }
    return 0;
}

const char *naming_measure(const ingredient *of, span words, size_t *used) {
    for (size_t i = 0; i < of->measures.count; i++) {
        *used = measure_length(words, of->measures.items[i].unit);
        if (*used)
            return of->measures.items[i].unit;
    }
    return NULL;
}

/* The word of `after` (folded) that makes another food, or empty: a head such as "extract", or
 * the name of a further ingredient, up to the first joining word. */
static span turning_word(const pantry *shelf, span after) {
    span rest = after;
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest)) {
        if (is_among(word, joints, COUNT(joints)))
            break;
        if (is_among(without_plural(word), heads, COUNT(heads)) || pantry_find_folded(shelf, word))
            return word;
    }
    return (span){0};
}

/* The first word of `before` (folded) that is not known to be harmless, or empty. */
static span odd_word(span before, const ingredient *what) {
    for (span word = span_next_word(&before); word.length; word = span_next_word(&before))
        if (!is_plain(word, what))
            return word;
    return (span){0};
}

static const char *copied(arena *a, span word) {
    return word.length ? arena_copy(a, word) : NULL;
}

/* All of it is the name, since no ingredient can be told from it. */
static naming unknown(arena *a, const tokens *all, span turns) {
    return (naming){.name = written_words(a, all, 0, all->count),
                    .before = "",
                    .after = "",
                    .turns = copied(a, turns)};
}

/* "vanilla whey": what is found first is the flavour of the powder behind it. */
static const ingredient *flavoured(const pantry *shelf, const tokens *all, span *before,
                                   span *after) {
    span rest = all->folded, flavour = span_next_word(&rest);
    rest = span_trim(rest);
    if (!rest.length || !is_among(flavour, flavours, COUNT(flavours)) ||
        pantry_find_folded(shelf, all->folded))
        return NULL;
    const ingredient *what = pantry_find_longest(shelf, rest, before, after);
    if (!what || what->in != FAMILY_PROTEIN_POWDER || before->length)
        return NULL;
    *before = flavour;
    return what;
}

naming naming_read(arena *a, span words, const pantry *shelf) {
    tokens all = tokens_of(a, words);
    span before, after;
    const ingredient *what = flavoured(shelf, &all, &before, &after);
    if (!what)
        what = pantry_find_longest(shelf, all.folded, &before, &after);
    size_t measure = 0;
    if (what)
        (void)naming_measure(what, after, &measure); /* "garlic cloves" are no spice */
    span turns = what ? turning_word(shelf, span_from(after, measure)) : (span){0};
    if (!what || turns.length)
        return unknown(a, &all, turns);
    size_t ends = all.folded.length - after.length - (after.length > 0), first = 0;
    assert(all.items); /* what was found is named by words */
    while (all.items[first].end <= before.length)
        first++;
    size_t last = first;
    while (last < all.count && all.items[last].start < ends)
        last++;
    return (naming){.what = what,
                    .name = written_words(a, &all, first, last),
                    .name_at = (size_t)(all.items[first].written.at - words.at),
                    .before = written_words(a, &all, 0, first),
                    .after = written_words(a, &all, last, all.count),
                    .may_turn = copied(a, odd_word(before, what))};
}
