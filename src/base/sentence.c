#include "base/sentence.h"

#include "base/list.h"

#include <assert.h>

/* The name in front of `*rest`, past which it is put; empty behind the last. */
static span next_name(span *rest) {
    size_t length = span_find(*rest, " ");
    span name = span_first(*rest, length);
    *rest = span_from(*rest, length < rest->length ? length + 1 : length);
    return name;
}

/* The number of the place `name`; -1 where it is none. */
static int place_named(sentence_places places, span name) {
    span rest = span_of(places);
    for (int i = 0; rest.length; i++)
        if (span_equal(next_name(&rest), name))
            return i;
    return -1;
}

bool sentence_cut(arena *a, span words, sentence_places places, cut_sentence *out, span *fault) {
    struct {
        sentence_piece *items;
        size_t count, capacity;
    } pieces = {0};
    span rest = words;
    for (;;) {
        size_t open = span_find(rest, "{"), close = span_find(rest, "}");
        sentence_piece one = {span_first(rest, open), -1};
        if (open == rest.length && close == rest.length) {
            LIST_ADD(a, &pieces, one);
            break;
        }
        bool paired = open < close && close < rest.length;
        size_t from = open < close ? open : close;
        *fault = (span){rest.at + from, paired ? close + 1 - from : 1};
        if (paired)
            one.place = place_named(places, (span){rest.at + open + 1, close - open - 1});
        if (one.place < 0)
            return false;
        LIST_ADD(a, &pieces, one);
        rest = span_from(rest, close + 1);
    }
    *out = (cut_sentence){pieces.items, pieces.count};
    return true;
}

static bool has_place(const cut_sentence *of, int place) {
    for (size_t i = 0; i < of->count; i++)
        if (of->pieces[i].place == place)
            return true;
    return false;
}

span sentence_lacks(const cut_sentence *of, sentence_places places, const char *but) {
    span rest = span_of(places);
    for (int i = 0; rest.length; i++) {
        span name = next_name(&rest);
        if (!has_place(of, i) && !(but && span_is(name, but)))
            return name;
    }
    return span_of("");
}

const char *sentence_fill(arena *a, const cut_sentence *of, const char *const values[]) {
    size_t lengths[SENTENCE_PLACES_MOST] = {0}, whole = 0;
    if (of->count == 1)
        return of->pieces[0].words.at;
    for (size_t i = 0; i < of->count; i++) {
        int place = of->pieces[i].place;
        whole += of->pieces[i].words.length;
        if (place < 0)
            continue;
        assert(place < SENTENCE_PLACES_MOST);
        lengths[place] = strlen(values[place]);
        whole += lengths[place];
    }
    char *filled = arena_alloc(a, whole + 1), *at = filled;
    for (size_t i = 0; i < of->count; i++) {
        const sentence_piece *piece = &of->pieces[i];
        memcpy(at, piece->words.at, piece->words.length);
        at += piece->words.length;
        if (piece->place < 0)
            continue;
        memcpy(at, values[piece->place], lengths[piece->place]);
        at += lengths[piece->place];
    }
    return filled;
}
