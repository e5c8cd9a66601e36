#include "base/span.h"

static bool is_white(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

int span_compare(span a, span b) {
    size_t shorter = a.length < b.length ? a.length : b.length;
    int order = shorter ? memcmp(a.at, b.at, shorter) : 0;
    if (order)
        return order;
    return a.length < b.length ? -1 : a.length > b.length;
}

span span_trim(span s) {
    while (s.length && is_white(s.at[0]))
        s = span_from(s, 1);
    while (s.length && is_white(s.at[s.length - 1]))
        s.length--;
    return s;
}

bool span_ends(span s, const char *end) {
    size_t length = strlen(end);
    return s.length >= length && memcmp(s.at + s.length - length, end, length) == 0;
}

size_t span_find(span s, const char *needle) {
    size_t length = strlen(needle);
    if (length == 0)
        return 0;
    for (size_t i = 0; i + length <= s.length; i++)
        if (s.at[i] == needle[0] && memcmp(s.at + i, needle, length) == 0)
            return i;
    return s.length;
}

span span_next_word(span *rest) {
    size_t start = 0, end;
    while (start < rest->length && is_white(rest->at[start]))
        start++;
    for (end = start; end < rest->length && !is_white(rest->at[end]);)
        end++;
    span word = {rest->at ? rest->at + start : NULL, end - start};
    *rest = span_from(*rest, end);
    return word;
}

bool span_next_line(span *rest, span *line) {
    if (rest->length == 0)
        return false;
    const char *end = memchr(rest->at, '\n', rest->length);
    size_t length = end ? (size_t)(end - rest->at) : rest->length;
    *line = span_first(*rest, length);
    if (line->length && line->at[line->length - 1] == '\r')
        line->length--;
    *rest = span_from(*rest, end ? length + 1 : length);
    return true;
}
