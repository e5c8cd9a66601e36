#include "base/words.h"

#include <utf8proc.h>

enum { SLUG_BYTES = 80, LONGEST_WORD = 64 };

bool words_are_utf8(span bytes, size_t *bad) {
    size_t i = 0;
    while (i < bytes.length) {
        utf8proc_int32_t point;
        utf8proc_ssize_t took = utf8proc_iterate((const utf8proc_uint8_t *)bytes.at + i,
                                                 (utf8proc_ssize_t)(bytes.length - i), &point);
        if (took <= 0 || point == 0) {
            if (bad)
                *bad = i;
            return false;
        }
        i += (size_t)took;
    }
    return true;
}

static bool joins_words(utf8proc_int32_t point) {
    switch (utf8proc_category(point)) {
    case UTF8PROC_CATEGORY_ZS:
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
    case UTF8PROC_CATEGORY_CC:
    case UTF8PROC_CATEGORY_PD:
        return true;
    default:
        return point == '\'' || point == 0x2019;
    }
}

static bool is_letter_or_digit(utf8proc_int32_t point) {
    if (point < 0x80)
        return (point >= 'a' && point <= 'z') || (point >= 'A' && point <= 'Z') ||
               (point >= '0' && point <= '9');
    utf8proc_category_t category = utf8proc_category(point);
    return (category >= UTF8PROC_CATEGORY_LU && category <= UTF8PROC_CATEGORY_LO) ||
           (category >= UTF8PROC_CATEGORY_MN && category <= UTF8PROC_CATEGORY_NO);
}

/* Calls for each code point of the folded decomposition of `words`, marks left out. */
typedef void point_taker(utf8proc_int32_t point, void *state);

/* Takes the code point at the front of `words`; returns its bytes. */
static size_t take_folded(span words, point_taker *take, void *state) {
    utf8proc_int32_t point, parts[32];
    utf8proc_ssize_t took = utf8proc_iterate((const utf8proc_uint8_t *)words.at,
                                             (utf8proc_ssize_t)words.length, &point);
    if (took <= 0)
        return 1;
    int boundary = 0;
    utf8proc_ssize_t count =
        utf8proc_decompose_char(point, parts, 32,
                                UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_CASEFOLD |
                                    UTF8PROC_STRIPMARK | UTF8PROC_IGNORE,
                                &boundary);
    for (utf8proc_ssize_t k = 0; k < count && k < 32; k++)
        take(parts[k], state);
    return (size_t)took;
}

static void each_folded_point(span words, point_taker *take, void *state) {
    for (size_t i = 0; i < words.length;) {
        unsigned char c = (unsigned char)words.at[i];
        if (c < 0x80) { /* most by far, and each decomposes to itself */
            take(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c, state);
            i++;
        } else {
            i += take_folded(span_from(words, i), take, state);
        }
    }
}

typedef struct {
    char *bytes;
    size_t length;
    size_t most;  /* bytes at the most */
    bool slug;    /* joints become hyphens, all else than letters and digits too */
    bool waiting; /* a joint is due before the next letter */
    bool full;    /* a character did not fit: nothing after it is taken */
} folded;

static void fold_point(utf8proc_int32_t point, void *state) {
    folded *f = state;
    bool joint = f->slug ? !is_letter_or_digit(point) : joins_words(point);
    if (joint) {
        f->waiting = f->length > 0;
        return;
    }
    utf8proc_uint8_t encoded[4];
    utf8proc_ssize_t size = utf8proc_encode_char(point, encoded);
    f->full = f->full || f->length + (size_t)size + f->waiting > f->most;
    if (size <= 0 || f->full)
        return;
    if (f->waiting)
        f->bytes[f->length++] = f->slug ? '-' : ' ';
    f->waiting = false;
    memcpy(f->bytes + f->length, encoded, (size_t)size);
    f->length += (size_t)size;
}

/* Names are nearly always plain lower-case ASCII: no need to ask for decompositions. */
static bool is_folded_already(span words) {
    for (size_t i = 0; i < words.length; i++) {
        char c = words.at[i];
        bool single_space = c == ' ' && i > 0 && i + 1 < words.length && words.at[i - 1] != ' ';
        if (!((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || single_space))
            return false;
    }
    return true;
}

/* No text grows more than this under NFKD in UTF-8: Unicode Standard Annex 15, table of maximum
 * expansion factors (U+FDFA). */
enum { GROWTH = 11 };

span words_fold(arena *a, span words) {
    if (is_folded_already(words))
        return arena_copy_span(a, words);
    folded f = {.most = words.length * GROWTH};
    f.bytes = arena_alloc(a, f.most + 1);
    each_folded_point(words, fold_point, &f);
    f.bytes[f.length] = '\0';
    return (span){f.bytes, f.length};
}

/* Where a letter without its marks is the same letter: Latin, Greek, Cyrillic and signs. Elsewhere
 * marks are letters (kana, Devanagari) or a letter is made of several (Hangul). */
static bool loses_marks(utf8proc_int32_t point) {
    return point < 0x530 || (point >= 0x1e00 && point < 0x2c00) || point >= 0xfb00;
}

/* Points of Hebrew and Arabic, which most leave out. */
static bool is_point(utf8proc_int32_t point) {
    return point >= 0x591 && point <= 0x670 && utf8proc_category(point) == UTF8PROC_CATEGORY_MN;
}

char *words_slug(arena *a, span words) {
    char room[SLUG_BYTES + 1];
    folded f = {.bytes = room, .most = SLUG_BYTES, .slug = true};
    for (size_t i = 0, took; i < words.length; i += took) {
        utf8proc_int32_t point;
        utf8proc_ssize_t bytes = utf8proc_iterate((const utf8proc_uint8_t *)words.at + i,
                                                  (utf8proc_ssize_t)(words.length - i), &point);
        took = bytes > 0 ? (size_t)bytes : 1;
        if (bytes <= 0 || loses_marks(point))
            each_folded_point(span_first(span_from(words, i), took), fold_point, &f);
        else if (!is_point(point))
            fold_point(utf8proc_tolower(point), &f);
    }
    if (f.length == 0)
        f.bytes[f.length++] = 'x';
    return arena_copy(a, (span){f.bytes, f.length});
}

/* A word being gathered; what is past the end of a longer one is left off. */
typedef struct {
    char bytes[LONGEST_WORD];
    size_t length;
    word_taker *take;
    void *state;
} gathered;

static void end_word(gathered *of) {
    if (of->length)
        of->take((span){of->bytes, of->length}, of->state);
    of->length = 0;
}

static void gather_point(utf8proc_int32_t point, void *state) {
    gathered *of = state;
    utf8proc_uint8_t encoded[4];
    if (!is_letter_or_digit(point)) {
        end_word(of);
        return;
    }
    utf8proc_ssize_t size = utf8proc_encode_char(point, encoded);
    if (size <= 0 || of->length + (size_t)size > sizeof of->bytes)
        return;
    memcpy(of->bytes + of->length, encoded, (size_t)size);
    of->length += (size_t)size;
}

void words_each(span words, word_taker *take, void *state) {
    gathered of = {.take = take, .state = state};
    each_folded_point(words, gather_point, &of);
    end_word(&of);
}

static size_t smallest(size_t a, size_t b, size_t c) {
    size_t least = a < b ? a : b;
    return least < c ? least : c;
}

/* Optimal string alignment distance; three rows of the table are enough. */
size_t words_distance(span a, span b, size_t most) {
    size_t rows[3][LONGEST_WORD + 1];
    size_t apart = a.length > b.length ? a.length - b.length : b.length - a.length;
    if (a.length > LONGEST_WORD || b.length > LONGEST_WORD || apart > most)
        return most + 1;
    size_t *before = rows[0], *last = rows[1], *now = rows[2];
    for (size_t j = 0; j <= b.length; j++)
        last[j] = j;
    memcpy(before, last, sizeof rows[0]);
    for (size_t i = 1, least = 0; i <= a.length && least <= most; i++) {
        least = now[0] = i;
        for (size_t j = 1; j <= b.length; j++) {
            bool same = a.at[i - 1] == b.at[j - 1];
            now[j] = smallest(last[j] + 1, now[j - 1] + 1, last[j - 1] + !same);
            bool swapped =
                i > 1 && j > 1 && a.at[i - 1] == b.at[j - 2] && a.at[i - 2] == b.at[j - 1];
            if (swapped && before[j - 2] + 1 < now[j])
                now[j] = before[j - 2] + 1;
            least = now[j] < least ? now[j] : least;
        }
        size_t *free_row = before;
        before = last;
        last = now;
        now = free_row;
    }
    return last[b.length] > most ? most + 1 : last[b.length];
}

const char *words_nearest(span word, const char *const candidates[], size_t count) {
    size_t allowed = word.length < 6 ? 1 : word.length / 3;
    const char *nearest = NULL;
    for (size_t i = 0; i < count && allowed > 0; i++) {
        size_t distance = words_distance(word, span_of(candidates[i]), allowed);
        if (distance <= allowed && (!nearest || distance < allowed)) {
            nearest = candidates[i];
            allowed = distance;
        }
    }
    return nearest;
}

size_t words_index(span word, const char *const list[], size_t count) {
    for (size_t i = 0; i < count; i++)
        if (!word.length || list[i][0] == word.at[0]) /* most differ in their first letter */
            if (span_is(word, list[i]))
                return i;
    return count;
}

unsigned words_columns(const char *bytes, size_t length) {
    unsigned columns = 0;
    for (size_t i = 0; i < length; i++)
        columns += ((unsigned char)bytes[i] & 0xC0) != 0x80;
    return columns;
}

size_t words_unseen(const char *words) {
    const unsigned char *at = (const unsigned char *)words;
    if (at[0] == 0xC2 && at[1] >= 0x80 && at[1] <= 0x9F) /* U+0080 to U+009F */
        return 2;
    if (at[0] == 0xE2 && at[1] == 0x80 && at[2] >= 0xA8 && at[2] <= 0xAE) /* U+2028 to U+202E */
        return 3;
    if (at[0] == 0xE2 && at[1] == 0x81 && at[2] >= 0xA6 && at[2] <= 0xA9) /* U+2066 to U+2069 */
        return 3;
    return at[0] && (at[0] < 0x20 || at[0] == 0x7F);
}
