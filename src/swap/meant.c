#include "swap/meant.h"

#include "base/words.h"

static span first_word(const char *words) {
    span rest = span_of(words);
    return span_next_word(&rest);
}

/* Two wheys, two oat flours: of one family, and their kinds begin with the same word. */
static bool is_akin(const ingredient *one, const ingredient *other) {
    return one->in == other->in && one->kind[0] &&
           span_equal(first_word(one->kind), first_word(other->kind));
}

/* True when `asked` are whole words of `name`, in either number; both folded. */
static bool holds_words(span name, span asked) {
    for (size_t at = 0; at + asked.length <= name.length; at++) {
        span from = span_from(name, at), rest = span_from(from, asked.length);
        bool begins = at == 0 || name.at[at - 1] == ' ';
        bool ends = rest.length == 0 || rest.at[0] == ' ' || span_is(rest, "s");
        if (begins && ends && span_equal(span_first(from, asked.length), asked))
            return true;
    }
    return false;
}

static bool is_called(arena *a, const ingredient *what, span asked) {
    bool called = span_is(asked, family_word(what->in)) ||
                  holds_words(words_fold(a, span_of(what->name)), asked);
    for (size_t i = 0; i < what->also_count && !called; i++)
        called = holds_words(words_fold(a, span_of(what->also[i])), asked);
    return called;
}

static bool is_there(const recipe *of, const meant_lines *lines, const ingredient *what) {
    for (size_t i = 0; i < lines->count; i++)
        if (of->lines.items[lines->items[i]].what == what)
            return true;
    return false;
}

meant_lines meant_in(arena *a, const recipe *of, const pantry *shelf, const char *words) {
    meant_lines exact = {0}, akin = {0};
    span asked = words_fold(a, span_of(words));
    const ingredient *named = pantry_find_folded(shelf, asked);
    for (size_t i = 0; i < of->lines.count && asked.length; i++) {
        const ingredient *here = of->lines.items[i].what;
        if (!here || of->weights[i].grams <= 0 || is_there(of, &akin, here))
            continue;
        if (here == named && exact.count == 0)
            LIST_ADD(a, &exact, i);
        else if ((named && is_akin(here, named)) || is_called(a, here, asked))
            LIST_ADD(a, &akin, i);
    }
    return exact.count ? exact : akin;
}
