#include "site/mustache.h"

#include "base/list.h"
#include "base/words.h"

typedef struct {
    size_t node;
    span name;
} open_section;

typedef struct {
    arena *home;
    const char *file;
    span source;
    size_t at; /* read so far, in bytes */
    span open, close;
    open_section sections[MUSTACHE_NESTING_MOST];
    size_t depth;
    mustache_nodes *out;
    problems *found;
    size_t complaints;
} reader;

/* More than these help nobody, and each costs a walk through the source for its line. */
enum { COMPLAINTS_MOST = 20 };

/* A tag as found: `{{#name}}` from `start` to `end`, with its sigil '#' (0 for a plain name). */
typedef struct {
    size_t start, end;
    char sigil;
    span content; /* trimmed */
} tag;

place mustache_place(const char *file, span source, size_t offset) {
    place at = {file, 1, 1};
    size_t line_start = 0;
    for (size_t i = 0; i < offset && i < source.length; i++)
        if (source.at[i] == '\n') {
            at.line++;
            line_start = i + 1;
        }
    at.column = 1 + words_columns(source.at + line_start, offset - line_start);
    return at;
}

static void complain(reader *r, size_t offset, const char *hint, const char *format, span what) {
    if (r->complaints++ >= COMPLAINTS_MOST)
        return;
    char *message = arena_format(r->home, format, SPAN(span_first(what, 60)));
    problem_add(r->found, mustache_place(r->file, r->source, offset), hint, "%s", message);
}

/* Where `needle` first is in the source from byte `from` on; false when it is not. */
static bool find(const reader *r, span needle, size_t from, size_t *at) {
    span rest = span_from(r->source, from);
    if (rest.length == 0)
        return false;
    const char *hit = memmem(rest.at, rest.length, needle.at, needle.length);
    if (!hit)
        return false;
    *at = (size_t)(hit - r->source.at);
    return true;
}

static bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

static bool at_line_start(const reader *r, size_t offset) {
    return offset == 0 || r->source.at[offset - 1] == '\n';
}

/* A tag stands alone when its line (or lines) holds nothing else but blanks. Then `*line` is
 * where the line begins and `*next` where the next one does. */
static bool stands_alone(const reader *r, const tag *t, size_t *line, size_t *next) {
    const char *bytes = r->source.at;
    size_t before = t->start, after = t->end;
    while (before > 0 && is_blank(bytes[before - 1]))
        before--;
    while (after < r->source.length && is_blank(bytes[after]))
        after++;
    if (!at_line_start(r, before))
        return false;
    if (after + 1 < r->source.length && bytes[after] == '\r' && bytes[after + 1] == '\n')
        after++;
    if (after < r->source.length && bytes[after] != '\n')
        return false;
    *line = before;
    *next = after < r->source.length ? after + 1 : after;
    return true;
}

static void add_text(reader *r, size_t from, size_t to) {
    LIST_ADD(r->home, r->out,
             (mustache_node){.sort = NODE_TEXT,
                             .starts_line = at_line_start(r, from),
                             .bytes = {r->source.at + from, to - from}});
}

/* Adds the text from what was read up to a tag at `end`. A tag that begins a line without taking
 * it gets an empty text before it: a partial's indentation goes there. */
static void add_text_before(reader *r, size_t end, bool line_stays) {
    if (end > r->at)
        add_text(r, r->at, end);
    if (line_stays && at_line_start(r, end))
        add_text(r, end, end);
}

static size_t count_dots(span name) {
    size_t dots = 0;
    for (size_t i = 0; i < name.length; i++)
        dots += name.at[i] == '.';
    return dots;
}

/* "a.b.c" into its three parts; none for the implicit iterator ".". */
static void cut_name(arena *home, span name, mustache_node *node) {
    if (span_is(name, "."))
        return;
    view_key *parts = ARENA_ARRAY(home, view_key, count_dots(name) + 1);
    size_t count = 0, from = 0;
    for (size_t i = 0; i <= name.length; i++)
        if (i == name.length || name.at[i] == '.') {
            parts[count++] = view_key_of(name.at + from, i - from);
            from = i + 1;
        }
    node->parts = parts;
    node->part_count = count;
}

static bool has_white_space(span s) {
    span rest = s;
    return span_next_word(&rest).length != s.length;
}

/* The node of a tag that names something. */
static mustache_node named(reader *r, const tag *t, mustache_sort sort) {
    mustache_node node = {.sort = sort, .bytes = t->content, .offset = t->start};
    if (t->content.length == 0)
        complain(r, t->start, "write a name between the braces", "a tag without a name%.*s",
                 t->content);
    else if (has_white_space(t->content))
        complain(r, t->start, "a name holds no white space", "can't read the tag name \"%.*s\"",
                 t->content);
    else if (sort != NODE_PARTIAL)
        cut_name(r->home, t->content, &node);
    return node;
}

static void open_one(reader *r, const tag *t, mustache_sort sort) {
    if (r->depth == MUSTACHE_NESTING_MOST) {
        complain(r, t->start, "move the inner part to a partial",
                 "section \"%.*s\" is nested too deep", t->content);
        return;
    }
    r->sections[r->depth++] = (open_section){r->out->count, t->content};
    LIST_ADD(r->home, r->out, named(r, t, sort));
}

static void close_one(reader *r, const tag *t) {
    if (r->depth == 0) {
        complain(r, t->start, NULL, "\"%.*s\" is closed but was never opened", t->content);
        return;
    }
    open_section section = r->sections[--r->depth];
    r->out->items[section.node].past = r->out->count;
    if (!span_equal(section.name, t->content))
        complain(r, t->start,
                 arena_format(r->home, "close \"%.*s\" first", SPAN(span_first(section.name, 60))),
                 "\"%.*s\" is closed inside another section", t->content);
}

static void set_delimiters(reader *r, const tag *t) {
    span rest = t->content;
    span open = span_next_word(&rest), close = span_next_word(&rest);
    bool fine = open.length && close.length && span_trim(rest).length == 0 &&
                !memchr(open.at, '=', open.length) && !memchr(close.at, '=', close.length);
    if (!fine) {
        complain(r, t->start, "write two, for example {{=<% %>=}}",
                 "can't read the delimiters \"%.*s\"", t->content);
        return;
    }
    r->open = open;
    r->close = close;
}

static void add_partial(reader *r, const tag *t, bool alone, size_t line) {
    mustache_node node = named(r, t, NODE_PARTIAL);
    node.stands_alone = alone;
    if (alone)
        node.indent = (span){r->source.at + line, t->start - line};
    LIST_ADD(r->home, r->out, node);
}

static void take_tag(reader *r, const tag *t) {
    size_t line = t->start, next = t->end;
    bool may_stand_alone = t->sigil != 0 && strchr("#^/>!=", t->sigil);
    bool alone = may_stand_alone && stands_alone(r, t, &line, &next);
    add_text_before(r, line, !alone);
    r->at = next;
    switch (t->sigil) {
    case '#':
        open_one(r, t, NODE_SECTION);
        break;
    case '^':
        open_one(r, t, NODE_INVERTED);
        break;
    case '/':
        close_one(r, t);
        break;
    case '>':
        add_partial(r, t, alone, line);
        break;
    case '=':
        set_delimiters(r, t);
        break;
    case '!':
        break;
    default: /* a plain name, or '{' and '&': not escaped */
        LIST_ADD(r->home, r->out, named(r, t, t->sigil ? NODE_RAW : NODE_VALUE));
    }
}

/* "{{{name}}}" and "{{=<% %>=}}" end in a mark of their own before the closing delimiter. */
static span closing(const reader *r, char sigil) {
    if (sigil != '{' && sigil != '=')
        return r->close;
    const char *mark = sigil == '{' ? "}" : "=";
    char *both = arena_format(r->home, "%s%.*s", mark, SPAN(r->close));
    return (span){both, r->close.length + 1};
}

/* Finds the next tag; false at the end, and when it is left open, which is a problem. */
static bool next_tag(reader *r, tag *t) {
    if (!find(r, r->open, r->at, &t->start))
        return false;
    size_t from = t->start + r->open.length, end;
    char first = from < r->source.length ? r->source.at[from] : '\0';
    t->sigil = first && strchr("#^/>!={&", first) ? first : '\0';
    from += t->sigil != '\0';
    span close = closing(r, t->sigil);
    if (!find(r, close, from, &end)) {
        complain(r, t->start, "close it on the same line", "a tag is left open: \"%.*s\"",
                 span_first(span_from(r->source, t->start), 20));
        return false;
    }
    t->content = span_trim((span){r->source.at + from, end - from});
    t->end = end + close.length;
    return true;
}

bool mustache_read(arena *home, const char *file, span source, mustache_nodes *out,
                   problems *found) {
    reader r = {.home = home, .file = file, .source = source, .out = out, .found = found};
    r.open = span_of("{{");
    r.close = span_of("}}");
    tag t;
    while (next_tag(&r, &t))
        take_tag(&r, &t);
    if (r.complaints == 0)
        add_text_before(&r, source.length, false);
    while (r.depth > 0) {
        open_section section = r.sections[--r.depth];
        complain(&r, out->items[section.node].offset, "close it with {{/name}}",
                 "section \"%.*s\" is never closed", section.name);
    }
    return r.complaints == 0;
}
