#include "draft/western.h"

#include "base/list.h"
#include "base/text.h"
#include "base/words.h"

/* The HTML standard looks for a declaration this far (13.2.3.2). */
enum { DECLARED_WITHIN = 1024 };

bool western_is_declared(arena *a, span page) {
    static const char *const labels[] = {"windows-1252", "cp1252", "iso-8859-1",
                                         "iso8859-1",    "latin1", "us-ascii"};
    static const char key[] = "charset=";
    span near = span_first(page, DECLARED_WITHIN);
    char *lower = arena_copy(a, near);
    for (size_t i = 0; i < near.length; i++)
        if (lower[i] >= 'A' && lower[i] <= 'Z')
            lower[i] = (char)(lower[i] - 'A' + 'a');
    near.at = lower;
    span rest = span_from(near, span_find(near, key) + strlen(key));
    if (rest.length && strchr("\"'", rest.at[0]))
        rest = span_from(rest, 1);
    for (size_t i = 0; i < COUNT(labels); i++)
        if (span_begins(rest, labels[i]))
            return true;
    return false;
}

/* The bytes 80 to 9F; the others are the code points of their number. Encoding Standard, index
 * windows-1252. */
static const char *const upper_control[32] = {
    "\u20ac", "\ufffd", "\u201a", "\u0192", "\u201e", "\u2026", "\u2020", "\u2021",
    "\u02c6", "\u2030", "\u0160", "\u2039", "\u0152", "\ufffd", "\u017d", "\ufffd",
    "\ufffd", "\u2018", "\u2019", "\u201c", "\u201d", "\u2022", "\u2013", "\u2014",
    "\u02dc", "\u2122", "\u0161", "\u203a", "\u0153", "\ufffd", "\u017e", "\u0178"};

span western_to_utf8(arena *a, span page) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < page.length; i++) {
        unsigned char c = (unsigned char)page.at[i];
        if (c < 0x80) {
            text_add_char(&t, c ? (char)c : ' ');
        } else if (c < 0xa0) {
            text_add(&t, upper_control[c - 0x80]);
        } else {
            text_add_char(&t, (char)(0xc0 | c >> 6));
            text_add_char(&t, (char)(0x80 | (c & 0x3f)));
        }
    }
    span copied = arena_copy_span(a, text_span(&t));
    text_free(&t);
    return copied;
}
