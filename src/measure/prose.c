#include "measure/prose.h"

#include "base/text.h"
#include "base/words.h"

static bool is_letter_byte(span s, size_t i) {
    unsigned char c = (unsigned char)s.at[i];
    if (c < 0x80)
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    /* U+00A0 and U+2000 to U+206F, spaces, dashes and quotes, are no letters. */
    size_t first = i;
    while (first > 0 && i - first < 3 && ((unsigned char)s.at[first] & 0xC0) == 0x80)
        first--;
    span from = span_from(s, first);
    return !span_begins(from, "\u00a0") && !span_begins(from, "\xe2\x80") &&
           !span_begins(from, "\xe2\x81");
}

static size_t skip_letters(span s, size_t i, bool letters) {
    while (i < s.length && is_letter_byte(s, i) == letters)
        i++;
    return i;
}

bool prose_gap_is_blank(span gap) {
    for (size_t i = 0; i < gap.length; i++)
        if (gap.at[i] != ' ' && gap.at[i] != '\n' && gap.at[i] != '\t' && gap.at[i] != '\r')
            return span_is(gap, "\u00a0");
    return true;
}

static bool is_bound_gap(span gap) {
    static const char *const marks[] = {"-", "'", "\u2019", "\u2010", "\u2011"};
    return words_index(gap, marks, COUNT(marks)) < COUNT(marks);
}

prose prose_of(arena *a, span words) {
    prose all = {.text = words};
    text folded = TEXT_EMPTY;
    size_t last = 0;
    for (size_t at = skip_letters(words, 0, false); at < words.length;) {
        size_t end = skip_letters(words, at, true);
        span gap = {words.at + last, at - last};
        if (folded.length)
            text_add_char(&folded, ' ');
        prose_token one = {at, end, folded.length, 0, !prose_gap_is_blank(gap), is_bound_gap(gap)};
        text_add_span(&folded, words_fold(a, (span){words.at + at, end - at}));
        one.keyend = folded.length;
        LIST_ADD(a, &all, one);
        last = end;
        at = skip_letters(words, end, false);
    }
    all.folded = arena_copy_span(a, text_span(&folded));
    text_free(&folded);
    return all;
}

span prose_word(const prose *all, size_t i) {
    if (i >= all->count)
        return (span){0};
    return (span){all->folded.at + all->items[i].key, all->items[i].keyend - all->items[i].key};
}

span prose_run(const prose *all, size_t from, size_t to) {
    size_t start = all->items[from].key;
    return (span){all->folded.at + start, all->items[to - 1].keyend - start};
}

bool prose_word_among(const prose *all, size_t i, const char *const list[], size_t count) {
    span word = prose_word(all, i);
    return word.length && words_index(word, list, count) < count;
}

bool prose_goes_on(const prose *all, size_t i) {
    return i < all->count && !all->items[i].cut;
}
