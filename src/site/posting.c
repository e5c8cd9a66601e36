#include "site/posting.h"

#include "base/number.h"

enum { BITS_EACH = 6 };

static const char digits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

static size_t decimal_digits(uint32_t value) {
    size_t count = 1;
    while (value >= 10) {
        value /= 10;
        count++;
    }
    return count;
}

/* Bytes of the list, brackets and commas included. */
static size_t list_bytes(const uint32_t ids[], size_t count) {
    size_t bytes = 2;
    for (size_t i = 0; i < count; i++)
        bytes += 1 + decimal_digits(i ? ids[i] - ids[i - 1] : ids[i]);
    return bytes;
}

static void add_list(text *t, const uint32_t ids[], size_t count) {
    text_add_char(t, '[');
    for (size_t i = 0; i < count; i++) {
        if (i)
            text_add_char(t, ',');
        number_add(t, i ? ids[i] - ids[i - 1] : ids[i], 0);
    }
    text_add_char(t, ']');
}

static void add_bits(text *t, const uint32_t ids[], size_t count) {
    text_add_char(t, '"');
    size_t next = 0;
    for (uint32_t at = 0; next < count; at += BITS_EACH) {
        unsigned digit = 0;
        for (; next < count && ids[next] < at + BITS_EACH; next++)
            digit |= 1u << (ids[next] - at);
        text_add_char(t, digits[digit]);
    }
    text_add_char(t, '"');
}

void posting_add(text *t, const uint32_t ids[], size_t count) {
    size_t bits_bytes = count ? ids[count - 1] / BITS_EACH + 3 : 3;
    if (list_bytes(ids, count) <= bits_bytes)
        add_list(t, ids, count);
    else
        add_bits(t, ids, count);
}

void posting_add_digits(text *t, uint64_t value, unsigned width) {
    uint64_t most = ((uint64_t)1 << (BITS_EACH * width)) - 1;
    if (value > most)
        value = most;
    for (unsigned i = 0; i < width; i++, value >>= BITS_EACH)
        text_add_char(t, digits[value & 63]);
}

unsigned posting_digits_for(uint64_t most) {
    unsigned width = 1;
    while (width < 10 && most >> (BITS_EACH * width))
        width++;
    return width;
}
