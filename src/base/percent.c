#include "base/percent.h"

#include "base/text.h"

static int hex_digit(char c) {
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

bool percent_decode(arena *a, span bytes, span *out) {
    char *room = arena_alloc(a, bytes.length + 1);
    size_t length = 0;
    for (size_t i = 0; i < bytes.length; i++) {
        char c = bytes.at[i];
        if (c == '%') {
            int high = i + 2 < bytes.length ? hex_digit(bytes.at[i + 1]) : -1;
            int low = high >= 0 ? hex_digit(bytes.at[i + 2]) : -1;
            if (low < 0 || high * 16 + low == 0)
                return false;
            c = (char)(high * 16 + low);
            i += 2;
        }
        room[length++] = c;
    }
    *out = (span){room, length};
    return true;
}

/* RFC 3986, section 2.3, and the slash. */
static bool stays(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           (c && strchr("-._~/", c));
}

char *percent_encode(arena *a, const char *path) {
    text t = TEXT_EMPTY;
    for (const char *c = path; *c; c++)
        if (stays(*c))
            text_add_char(&t, *c);
        else
            text_format(&t, "%%%02X", (unsigned char)*c);
    char *escaped = arena_copy(a, text_span(&t));
    text_free(&t);
    return escaped;
}
