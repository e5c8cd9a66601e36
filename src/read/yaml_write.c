#include "read/yaml_write.h"

#include "base/list.h"

/* What may stand in a text without quotes, beside letters, digits and all that is not ASCII. A
 * colon or a number sign is kept out even where YAML would bear it: who edits the file later need
 * not know where that is. */
static const char fine[] = " .;/()'%+-_!?$";

static bool is_letter_or_digit(unsigned char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

/* Characters of three bytes that end a line or are never seen. */
static const struct {
    const char *bytes, *escape;
} strange[] = {{"\u2028", "\\L"},
               {"\u2029", "\\P"},
               {"\xEF\xBB\xBF", "\\uFEFF"},
               {"\xEF\xBF\xBE", "\\uFFFE"},
               {"\xEF\xBF\xBF", "\\uFFFF"}};

/* Which of the strange ones `rest` begins with; their number when with none. */
static size_t strange_at(span rest) {
    size_t i = 0;
    while (i < COUNT(strange) && !span_begins(rest, strange[i].bytes))
        i++;
    return i;
}

/* True when `rest` begins with one of the control characters U+0080 to U+009F. */
static bool is_high_control(span rest) {
    return rest.length > 1 && rest.at[0] == '\xC2' && (unsigned char)rest.at[1] < 0xA0;
}

/* -- without quotes -------------------------------------------------------------------------- */

/* Words that a reader of YAML would take for something other than text. */
static bool is_word_of_yaml(span words) {
    static const char *const known[] = {"null", "Null",  "NULL",  "true", "True",
                                        "TRUE", "false", "False", "FALSE"};
    for (size_t i = 0; i < COUNT(known); i++)
        if (span_is(words, known[i]))
            return true;
    return false;
}

static bool may_stand(span rest, bool in_list) {
    unsigned char c = (unsigned char)rest.at[0];
    if (c >= 0x80)
        return !is_high_control(rest) && strange_at(rest) == COUNT(strange);
    return c && (is_letter_or_digit(c) || strchr(fine, c) || (c == ',' && !in_list));
}

/* "-15 g" and "+15 g" may begin with a sign, since a digit follows. */
static bool may_begin(span words) {
    unsigned char c = (unsigned char)words.at[0];
    bool signed_number =
        (c == '-' || c == '+') && words.length > 1 && words.at[1] >= '0' && words.at[1] <= '9';
    return c >= 0x80 || is_letter_or_digit(c) || signed_number;
}

static bool needs_quotes(span words, bool in_list) {
    if (!words.length || is_word_of_yaml(words) || !may_begin(words) ||
        words.at[words.length - 1] == ' ')
        return true;
    for (size_t i = 0; i < words.length; i++)
        if (!may_stand(span_from(words, i), in_list))
            return true;
    return false;
}

/* -- in quotes ------------------------------------------------------------------------------- */

/* Adds the first character of `rest` as double quotes want it; returns its bytes. Bytes of longer
 * characters go one by one as they are. */
static size_t add_quoted(text *t, span rest) {
    unsigned char c = (unsigned char)rest.at[0];
    size_t which = strange_at(rest);
    if (which < COUNT(strange)) {
        text_add(t, strange[which].escape);
        return strlen(strange[which].bytes);
    }
    if (is_high_control(rest)) {
        text_format(t, "\\x%02X", (unsigned char)rest.at[1]);
        return 2;
    }
    if (c == '"' || c == '\\')
        text_format(t, "\\%c", c);
    else if (c == '\n')
        text_add(t, "\\n");
    else if (c < 0x20 || c == 0x7F)
        text_format(t, "\\x%02X", c);
    else
        text_add_char(t, (char)c);
    return 1;
}

void yaml_add_scalar(text *t, span words, bool in_list) {
    if (!needs_quotes(words, in_list)) {
        text_add_span(t, words);
        return;
    }
    text_add_char(t, '"');
    while (words.length)
        words = span_from(words, add_quoted(t, words));
    text_add_char(t, '"');
}
