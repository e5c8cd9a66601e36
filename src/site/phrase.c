#include "site/phrase.h"

#include <math.h>

char *phrase_minutes_iso(arena *a, double minutes) {
    unsigned whole = (unsigned)lround(minutes);
    if (whole < 60)
        return arena_format(a, "PT%uM", whole);
    if (whole % 60 == 0)
        return arena_format(a, "PT%uH", whole / 60);
    return arena_format(a, "PT%uH%uM", whole / 60, whole % 60);
}

char *phrase_capitalised(arena *a, const char *words) {
    char *copy = arena_copy(a, span_of(words));
    if (copy[0] >= 'a' && copy[0] <= 'z')
        copy[0] = (char)(copy[0] - 'a' + 'A');
    return copy;
}

char *phrase_count(arena *a, size_t count, const char *noun) {
    return arena_format(a, "%zu %s%s", count, noun, count == 1 ? "" : "s");
}
