#include "read/yaml_fault.h"

#include "base/list.h"
#include "base/memory.h"
#include "read/encoding.h"

place yaml_source_place(const yaml_source *of, yaml_mark_t mark) {
    return (place){of->file, of->first_line + (unsigned)mark.line, (unsigned)mark.column + 1};
}

/* What libyaml 0.2.5 says, word for word, and what we say for it. `at_start`: the place that helps
 * is where the thing began, not where reading stopped. */
static const struct {
    const char *said;
    bool at_start;
    const char *message, *hint;
} faults[] = {
    {"could not find expected ':'", true, "this line is no key with a value",
     "write it as \"key: value\", or indent it to go on with the line above"},
    {"block sequence entries are not allowed in this context", false,
     "a list can't begin on the line of its key",
     "put each item on a line of its own that begins with \"- \", or use [brackets, and commas]"},
    {"mapping keys are not allowed in this context", false, "a key can't stand here",
     "put the value in double quotes"},
    {"found unexpected end of stream", true, "this quote is never closed",
     "close it with the same quote mark"},
    {"found unexpected document indicator", true,
     "this quote is not closed before the line of hyphens or full stops",
     "close it with the same quote mark"},
    {"found unknown escape character", false, "a backslash in double quotes means something else",
     "use single quotes, or write two backslashes"},
    {"did not find expected hexdecimal number", false,
     "a backslash in double quotes means something else",
     "use single quotes, or write two backslashes"},
    {"found invalid Unicode character escape code", false, "there is no such character",
     "write the character itself: the file is UTF-8"},
    {"did not find expected comment or line break", false,
     "nothing may follow the sign | or > on its line",
     "begin the text on the next line, indented; or put the value in double quotes"},
    {"found an indentation indicator equal to 0", false, "an indentation of 0 is none",
     "leave the number out"},
    {"did not find expected alphabetic or numeric character", false,
     "a value that begins with * or & means something else", "put the value in double quotes"},
    {"did not find expected '-' indicator", false, "this line does not fit the list above it",
     "each item of a list begins with \"- \" at the same indentation"},
    {"did not find expected ',' or ']'", true,
     "this list is not closed, or a comma is missing in it", "write it as [one, two]"},
    {"did not find expected ',' or '}'", true,
     "these braces are not closed, or a comma is missing in them",
     "write it as {key: value, key: value}"},
    {"did not find expected node content", false, "something is missing before this sign",
     "take out the comma or bracket too many, or put the value in double quotes"},
    {"did not find expected <document start>", false, "this line does not fit the lines above it",
     "keys of one list or file stand at the same indentation"},
    {"found unknown directive name", true, "a line that begins with % means something else",
     "put the value in double quotes"},
    {"could not find expected directive name", true,
     "a line that begins with % means something else", "put the value in double quotes"},
    {"found undefined tag handle", false, "a value that begins with ! means something else",
     "put the value in double quotes"},
};

static span line_number(span bytes, size_t number) {
    span line = {0};
    for (size_t i = 0; i <= number; i++)
        if (!span_next_line(&bytes, &line))
            return (span){0};
    return line;
}

/* How many bytes of white space begin the line; `*tab` is the offset of the first tab. */
static size_t indentation(span line, size_t *tab) {
    size_t i = 0;
    *tab = line.length;
    for (; i < line.length && (line.at[i] == ' ' || line.at[i] == '\t'); i++)
        if (line.at[i] == '\t' && *tab == line.length)
            *tab = i;
    return i;
}

static bool is_key_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
}

/* Where a line like "title:Rounds" has its colon, or 0. A web address has none. */
static size_t colon_without_space(span line) {
    size_t tab, i = indentation(line, &tab);
    while (span_begins(span_from(line, i), "- "))
        i += 2;
    size_t start = i;
    while (i < line.length && is_key_letter(line.at[i]))
        i++;
    bool bare =
        i > start && i + 1 < line.length && line.at[i] == ':' && !strchr(" \t/", line.at[i + 1]);
    return bare ? i : 0;
}

/* The faults that libyaml notices late: looked for on the line where it stopped, the line before
 * and the line where the thing began. */
static bool add_layout_fault(const yaml_source *of, size_t number, problems *found) {
    size_t tab, colon;
    span line = line_number(of->bytes, number);
    place at = {of->file, of->first_line + (unsigned)number, 1};
    if (indentation(line, &tab) > tab) {
        at.column = (unsigned)tab + 1;
        problem_add(found, at, "use spaces: YAML takes no tabs there",
                    "this line is indented with a tab");
        return true;
    }
    colon = colon_without_space(line);
    if (colon == 0)
        return false;
    at.column = (unsigned)colon + 1;
    problem_add(found, at, "write \"key: value\", with a space after the colon",
                "there is no space after the colon");
    return true;
}

/* The last byte before character `column` of `line` that is no space; 0 when there is none. */
static char byte_before(span line, size_t column) {
    size_t i = 0;
    for (size_t passed = 0; i < line.length; i++)
        if (((unsigned char)line.at[i] & 0xC0) != 0x80 && passed++ == column)
            break;
    while (i > 0 && line.at[i - 1] == ' ')
        i--;
    return i > 0 ? line.at[i - 1] : '\0';
}

/* "did not find expected key": something after a closing quote, or a line out of line. */
static void add_no_key(const yaml_source *of, yaml_mark_t mark, problems *found) {
    char before = byte_before(line_number(of->bytes, mark.line), mark.column);
    place at = yaml_source_place(of, mark);
    if (before == '"' || before == '\'')
        problem_add(found, at,
                    before == '"' ? "write \\\" for a double quote inside double quotes"
                                  : "write '' for an apostrophe inside single quotes",
                    "there is more text after the closing quote");
    else
        problem_add(found, at, "keys that belong together stand at the same indentation",
                    "this line does not fit the lines above it");
}

/* "mapping values are not allowed": a colon inside a value, or a key that begins its line but is
 * indented deeper than the keys above it. */
static void add_second_key(const yaml_source *of, yaml_mark_t mark, problems *found) {
    size_t tab, i;
    span line = line_number(of->bytes, mark.line);
    size_t start = indentation(line, &tab);
    for (i = start; i < line.length && is_key_letter(line.at[i]);)
        i++;
    bool first = mark.line > 0 && i == mark.column; /* bytes are columns here: all ASCII */
    place at = yaml_source_place(of, mark);
    if (first) {
        at.column = (unsigned)start + 1;
        problem_add(found, at, "keys that belong together stand at the same indentation",
                    "this key is indented deeper than the line above it, which has a value");
    } else {
        problem_add(found, at, "put the whole value in double quotes",
                    "a colon and a space inside a value: it reads as a second key");
    }
}

static void add_bad_start(const yaml_source *of, yaml_mark_t mark, problems *found) {
    span line = line_number(of->bytes, mark.line);
    char sign = mark.column < line.length ? line.at[mark.column] : '?';
    problem_add(found, yaml_source_place(of, mark), "put the value in double quotes",
                sign == '\t' ? "a tab can't stand here" : "a value can't begin with this sign");
}

static void add_by_table(const yaml_source *of, const yaml_parser_t *parser, problems *found) {
    const char *said = parser->problem ? parser->problem : "";
    for (size_t i = 0; i < COUNT(faults); i++) {
        if (strcmp(faults[i].said, said) != 0)
            continue;
        bool at_start = faults[i].at_start && parser->context;
        place at = yaml_source_place(of, at_start ? parser->context_mark : parser->problem_mark);
        problem_add(found, at, faults[i].hint, "%s", faults[i].message);
        return;
    }
    problem_add(found, yaml_source_place(of, parser->problem_mark),
                "put the value in double quotes", "this is not YAML (%s)", said);
}

/* A quote that is never closed swallows all that follows it: then the lines tell nothing. */
static bool is_about_quote(const yaml_parser_t *parser) {
    return parser->context && strcmp(parser->context, "while scanning a quoted scalar") == 0;
}

static void add_syntax_fault(const yaml_source *of, const yaml_parser_t *parser, problems *found) {
    yaml_mark_t stop = parser->problem_mark;
    bool layout = !is_about_quote(parser) &&
                  (add_layout_fault(of, stop.line, found) ||
                   (stop.line > 0 && add_layout_fault(of, stop.line - 1, found)) ||
                   (parser->context && add_layout_fault(of, parser->context_mark.line, found)));
    if (layout)
        return;
    const char *said = parser->problem ? parser->problem : "";
    if (strcmp(said, "did not find expected key") == 0)
        add_no_key(of, stop, found);
    else if (strcmp(said, "mapping values are not allowed in this context") == 0)
        add_second_key(of, stop, found);
    else if (strcmp(said, "found character that cannot start any token") == 0)
        add_bad_start(of, stop, found);
    else
        add_by_table(of, parser, found);
}

static void add_byte_fault(const yaml_source *of, const yaml_parser_t *parser, problems *found) {
    if (!encoding_check(of->file, of->bytes, of->first_line, found))
        return;
    problem_add(found, encoding_place(of->file, of->bytes, of->first_line, parser->problem_offset),
                "delete it and write the line again",
                "there is a control character (code %02X) here", (unsigned)parser->problem_value);
}

void yaml_fault_add(const yaml_source *of, const yaml_parser_t *parser, problems *found) {
    if (parser->error == YAML_MEMORY_ERROR)
        memory_failed();
    if (parser->error == YAML_READER_ERROR)
        add_byte_fault(of, parser, found);
    else
        add_syntax_fault(of, parser, found);
}
