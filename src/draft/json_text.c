#include "draft/json_text.h"

#include "base/list.h"
#include "base/text.h"

/* What may stand around the whole, taken off as often as it is there. */
static const char *const fronts[] = {"\xef\xbb\xbf", "<!--",          "//<![CDATA[",
                                     "// <![CDATA[", "/*<![CDATA[*/", "/* <![CDATA[ */",
                                     "<![CDATA["};
static const char *const backs[] = {"//-->",   "// -->",    "-->", "//]]>", "// ]]>",
                                    "/*]]>*/", "/* ]]> */", "]]>", ";"};

static bool peel_once(span *s) {
    *s = span_trim(*s);
    for (size_t i = 0; i < COUNT(fronts); i++)
        if (span_begins(*s, fronts[i])) {
            *s = span_from(*s, strlen(fronts[i]));
            return true;
        }
    for (size_t i = 0; i < COUNT(backs); i++)
        if (span_ends(*s, backs[i])) {
            s->length -= strlen(backs[i]);
            return true;
        }
    return false;
}

/* A string from its quote to the quote that ends it; raw control characters written as JSON wants
 * them. Returns the bytes it takes. */
static size_t add_string(text *out, span s) {
    size_t i = 1;
    text_add_char(out, '"');
    for (; i < s.length && s.at[i] != '"'; i++) {
        unsigned char c = (unsigned char)s.at[i];
        if (c == '\\' && i + 1 < s.length) {
            text_add_char(out, (char)c);
            c = (unsigned char)s.at[++i];
        }
        if (c < ' ')
            text_format(out, "\\u%04x", c);
        else
            text_add_char(out, (char)c);
    }
    if (i == s.length)
        return i; /* not ended: JSON will say so */
    text_add_char(out, '"');
    return i + 1;
}

/* The comma at the front of `s` has only blanks between it and a closing bracket. */
static bool is_last_comma(span s) {
    span rest = span_trim(span_from(s, 1));
    return rest.length && (rest.at[0] == ']' || rest.at[0] == '}');
}

static void add_repaired(text *out, span s) {
    while (s.length) {
        if (s.at[0] == '"') {
            s = span_from(s, add_string(out, s));
            continue;
        }
        if (s.at[0] != ',' || !is_last_comma(s))
            text_add_char(out, s.at[0]);
        s = span_from(s, 1);
    }
}

json_t *json_text_read(arena *a, span bytes, const char **why) {
    json_error_t fault;
    text repaired = TEXT_EMPTY;
    if (bytes.length > JSON_TEXT_BYTES_MOST) {
        *why = "it is too long";
        return NULL;
    }
    while (peel_once(&bytes))
        ;
    add_repaired(&repaired, bytes);
    json_t *got = json_loadb(repaired.bytes, repaired.length, JSON_ALLOW_NUL, &fault);
    text_free(&repaired);
    if (!got)
        *why = arena_format(a, "it is no JSON: %s", fault.text);
    return got;
}
