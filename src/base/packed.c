#include "base/packed.h"

/* A text is its length + 1, or 0 for null, then its bytes and a zero. */

void packed_add_number(text *to, uint64_t value) {
    text_add_span(to, (span){(const char *)&value, sizeof value});
}

void packed_add_text(text *to, const char *words) {
    size_t length = words ? strlen(words) : 0;
    packed_add_number(to, words ? length + 1 : 0);
    if (words)
        text_add_span(to, (span){words, length + 1});
}

void packed_add_array(text *to, const void *bytes, size_t size) {
    static const char zeros[PACKED_UNIT] = {0};
    size_t over = to->length % PACKED_UNIT;
    text_add_span(to, (span){zeros, over ? PACKED_UNIT - over : 0});
    text_add_span(to, (span){bytes, size});
}

/* The next `size` bytes, or null. */
static const char *take(packed_reader *from, size_t size) {
    if (from->broken || from->all.length - from->at < size) {
        from->broken = true;
        return NULL;
    }
    const char *bytes = from->all.at + from->at;
    from->at += size;
    return bytes;
}

uint64_t packed_number(packed_reader *from) {
    uint64_t value = 0;
    const char *bytes = take(from, sizeof value);
    if (bytes)
        memcpy(&value, bytes, sizeof value);
    return value;
}

const char *packed_text(packed_reader *from) {
    uint64_t length = packed_number(from);
    if (length == 0)
        return NULL;
    const char *words = take(from, length);
    if (words && words[length - 1] == '\0')
        return words;
    from->broken = true;
    return "";
}

const void *packed_array(packed_reader *from, size_t size) {
    size_t over = from->at % PACKED_UNIT;
    (void)take(from, over ? PACKED_UNIT - over : 0);
    return take(from, size);
}

size_t packed_count(packed_reader *from, size_t size) {
    uint64_t count = packed_number(from);
    if (from->broken || count > (from->all.length - from->at) / size) {
        from->broken = true;
        return 0;
    }
    return count;
}
