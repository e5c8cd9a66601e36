#include "draft/plain.h"

#include "base/list.h"
#include "draft/html.h"

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool has_tag(span s) {
    for (size_t i = 0; i + 1 < s.length; i++)
        if (s.at[i] == '<' && (is_letter(s.at[i + 1]) || strchr("/!", s.at[i + 1])))
            return true;
    return false;
}

/* "&frac12;", "&#189;", "&#xBD;" */
static bool has_entity(span s) {
    enum { LONGEST = 32 }; /* the longest name of the HTML standard has 31 letters */
    for (size_t i = 0; i < s.length; i++) {
        size_t k = i + 1;
        while (s.at[i] == '&' && k < s.length && k - i < LONGEST &&
               (is_letter(s.at[k]) || s.at[k] == '#' || (s.at[k] >= '0' && s.at[k] <= '9')))
            k++;
        if (k > i + 1 && k < s.length && s.at[k] == ';')
            return true;
    }
    return false;
}

/* What stands for a byte sequence: null: itself. */
static const struct {
    const char *bytes, *instead;
} replaced[] = {
    {"\u00a0", " "},      {"\u2002", " "},      {"\u2003", " "},    {"\u2007", " "},
    {"\u2009", " "},      {"\u200a", " "},      {"\u202f", " "},    {"\u3000", " "},
    {"\u2028", "\n"},     {"\u2029", "\n"},     {"\xc2\x85", "\n"}, {"\u00ad", ""},
    {"\u200b", ""},       {"\u200c", ""},       {"\u200d", ""},     {"\u200e", ""},
    {"\u200f", ""},       {"\u202a", ""},       {"\u202b", ""},     {"\u202c", ""},
    {"\u202d", ""},       {"\u202e", ""},       {"\u2060", ""},     {"\u2066", ""},
    {"\u2067", ""},       {"\u2068", ""},       {"\u2069", ""},     {"\ufeff", ""},
    {"\xef\xbf\xbe", ""}, {"\xef\xbf\xbf", ""},
};

/* Adds the character at the front of `s`, or what stands for it; the bytes it has. */
static size_t add_character(text *t, span s) {
    unsigned char c = (unsigned char)s.at[0];
    if (c < 0x80) {
        if (c != 0x7f)
            text_add_char(t, c == '\n' || c == '\r' ? '\n' : c < ' ' ? ' ' : (char)c);
        return 1;
    }
    for (size_t i = 0; i < COUNT(replaced); i++)
        if (span_begins(s, replaced[i].bytes)) {
            text_add(t, replaced[i].instead);
            return strlen(replaced[i].bytes);
        }
    if (c == 0xc2 && s.length > 1 && (unsigned char)s.at[1] < 0xa0)
        return 2; /* a control character past ASCII */
    text_add_char(t, (char)c);
    return 1;
}

/* Blanks at both ends of each line and all but one between words go, and empty lines. */
static void add_tidy(text *out, span s) {
    span line;
    while (span_next_line(&s, &line)) {
        span word = span_next_word(&line);
        if (word.length && out->length)
            text_add_char(out, '\n');
        for (bool first = true; word.length; word = span_next_word(&line), first = false) {
            if (!first)
                text_add_char(out, ' ');
            text_add_span(out, word);
        }
    }
}

static span cleaned(arena *a, span s) {
    text characters = TEXT_EMPTY, tidy = TEXT_EMPTY;
    while (s.length)
        s = span_from(s, add_character(&characters, s));
    add_tidy(&tidy, text_span(&characters));
    span kept = arena_copy_span(a, text_span(&tidy));
    text_free(&characters);
    text_free(&tidy);
    return kept;
}

/* Takes one layer of mark-up and entities off. */
static span without_markup(arena *a, span s) {
    arena *scratch = arena_new();
    text words = TEXT_EMPTY;
    const html_node *page = html_read(scratch, s);
    if (page)
        html_add_words(page, !has_tag(s), &words);
    span kept = arena_copy_span(a, text_span(&words));
    text_free(&words);
    arena_free(scratch);
    return kept;
}

span plain_words(arena *a, span written) {
    enum { LAYERS = 3 }; /* an entity of an entity is met in the wild, a third layer is not */
    if (written.length > PLAIN_BYTES_MOST)
        return (span){"", 0};
    for (int i = 0; i < LAYERS && (has_tag(written) || has_entity(written)); i++)
        written = without_markup(a, written);
    return cleaned(a, written);
}

const char *plain_line(arena *a, span written) {
    char *line = arena_copy(a, plain_words(a, written));
    for (char *c = line; *c; c++)
        if (*c == '\n')
            *c = ' ';
    return line;
}
