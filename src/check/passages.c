#include "check/passages.h"

#include "base/text.h"
#include "base/words.h"
#include "site/markdown_tree.h"

/* -- places ------------------------------------------------------------------------------------ */

enum { STRETCH = 512 };

/* Made once a file, so that a file of one line or of many thousand problems costs no more. */
struct passage_lines {
    size_t *starts; /* the byte where each line begins */
    size_t count;
    unsigned *columns; /* characters before each STRETCH of bytes */
};

static struct passage_lines *lines_of(arena *a, span source) {
    struct passage_lines *of = ARENA_NEW(a, struct passage_lines);
    size_t count = 1, line = 1;
    for (size_t i = 0; i < source.length; i++)
        count += source.at[i] == '\n';
    of->count = count;
    of->starts = ARENA_ARRAY(a, size_t, count);
    of->columns = ARENA_ARRAY(a, unsigned, source.length / STRETCH + 2);
    for (size_t i = 0; i < source.length; i++)
        if (source.at[i] == '\n')
            of->starts[line++] = i + 1;
    for (size_t i = 0; (i + 1) * STRETCH <= source.length; i++)
        of->columns[i + 1] = of->columns[i] + words_columns(source.at + i * STRETCH, STRETCH);
    return of;
}

/* Characters before byte `offset`. */
static unsigned columns_before(const passages *of, size_t offset) {
    size_t stretch = offset / STRETCH, from = stretch * STRETCH;
    return of->lines->columns[stretch] + words_columns(of->source.at + from, offset - from);
}

passages passages_in(arena *a, const char *file, span source) {
    return (passages){.home = a, .file = file, .source = source, .lines = lines_of(a, source)};
}

/* Index of the line that holds byte `offset`. */
static size_t line_at(const struct passage_lines *of, size_t offset) {
    size_t low = 0, high = of->count;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (of->starts[middle] <= offset)
            low = middle;
        else
            high = middle;
    }
    return low;
}

place passages_place(const passages *of, size_t offset) {
    if (offset > of->source.length)
        offset = of->source.length;
    size_t line = line_at(of->lines, offset);
    unsigned columns = columns_before(of, offset) - columns_before(of, of->lines->starts[line]);
    return (place){of->file, (unsigned)line + 1, columns + 1};
}

/* The byte where line `line` begins. */
static size_t line_offset(const passages *of, unsigned line) {
    if (line < 1 || line > of->lines->count)
        return line < 1 ? 0 : of->source.length;
    return of->lines->starts[line - 1];
}

size_t passages_offset(const passages *of, place at) {
    size_t i = line_offset(of, at.line);
    for (unsigned column = 1; column < at.column && i < of->source.length; column++)
        do
            i++;
        while (i < of->source.length && ((unsigned char)of->source.at[i] & 0xC0) == 0x80);
    return i;
}

place passage_place(const passages *of, const passage *in, size_t offset) {
    if (in->bits.count == 0)
        return (place){of->file, 1, 1};
    size_t low = 0, high = in->bits.count; /* the last that begins at or before it, by halves */
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (in->bits.items[middle].at <= offset)
            low = middle;
        else
            high = middle;
    }
    const passage_bit *bit = &in->bits.items[low];
    return passages_place(of, bit->source + (offset > bit->at ? offset - bit->at : 0));
}

/* -- front matter ------------------------------------------------------------------------------ */

void passages_add_value(passages *to, passage_sort sort, const char *words, place at) {
    if (!words)
        return;
    passage one = {.sort = sort, .words = span_of(words)};
    size_t start = passages_offset(to, at);
    /* In quotes, in a list or folded, the words stand a little further on. */
    span rest = span_from(to->source, start);
    size_t found = span_find(rest, words);
    LIST_ADD(to->home, &one.bits, (passage_bit){0, start + (found < rest.length ? found : 0)});
    LIST_ADD(to->home, to, one);
}

/* -- Markdown ---------------------------------------------------------------------------------- */

/* One paragraph being gathered. */
typedef struct {
    passages *to;
    span body;     /* a part of the source */
    size_t cursor; /* byte of the source: what was found lies before it */
    size_t end;    /* where the paragraph ends */
    passage one;
    text words;
    bool in_notes, any_steps;
    int pictures;          /* how many pictures the walk is inside of */
    size_t before_picture; /* bits there were before them: their words are left out */
} gatherer;

static bool is_inside_steps(cmark_node *node) {
    for (cmark_node *n = node; n; n = cmark_node_parent(n))
        if (cmark_node_get_type(n) == CMARK_NODE_LIST &&
            cmark_node_get_list_type(n) == CMARK_ORDERED_LIST)
            return true;
    return false;
}

static void add_bit(gatherer *g, size_t at, size_t source) {
    LIST_ADD(g->to->home, &g->one.bits, (passage_bit){at, source});
}

/* Bytes of the character at the front of `s`. */
static size_t character_length(span s) {
    size_t i = s.length > 0;
    while (i < s.length && ((unsigned char)s.at[i] & 0xC0) == 0x80)
        i++;
    return i;
}

/* Bytes of the entity ("&amp;") at the front of `s`; 0: none. */
static size_t entity_length(span s) {
    size_t end = span_begins(s, "&") ? span_find(s, ";") : s.length;
    return end < s.length && span_find(span_first(s, end), " ") == end ? end + 1 : 0;
}

/* Goes through `literal` and the source side by side where it is written some other way there: an
 * escape has a backslash more, an entity stands for one character. */
static void align(gatherer *g, span literal) {
    span source = span_first(g->to->source, g->end);
    add_bit(g, g->words.length, g->cursor);
    for (size_t i = 0; i < literal.length && g->cursor < source.length;) {
        span rest = span_from(source, g->cursor);
        size_t entity = entity_length(rest);
        bool same = !entity && rest.at[0] == literal.at[i];
        g->cursor += entity ? entity : 1;
        i += entity ? character_length(span_from(literal, i)) : same;
        if (!same)
            add_bit(g, g->words.length + i, g->cursor);
    }
}

/* Notes where `literal` stands in the source, from the cursor on. */
static void note_places(gatherer *g, const char *literal) {
    size_t length = strlen(literal);
    span rest = span_first(span_from(g->to->source, g->cursor), g->end - g->cursor);
    size_t found = span_find(rest, literal);
    if (length && found == rest.length) {
        align(g, span_of(literal));
        return;
    }
    add_bit(g, g->words.length, g->cursor + found);
    g->cursor += found + length;
}

static void add_words(gatherer *g, const char *literal) {
    note_places(g, literal);
    if (g->pictures)
        g->one.bits.count = g->before_picture;
    else
        text_add(&g->words, literal);
}

/* The words of a picture, as its text. */
static span picture_text(arena *a, cmark_node *picture) {
    text said = TEXT_EMPTY;
    for (cmark_node *n = cmark_node_first_child(picture); n; n = cmark_node_next(n))
        if (cmark_node_get_literal(n))
            text_add(&said, cmark_node_get_literal(n));
    span copy = arena_copy_span(a, text_span(&said));
    text_free(&said);
    return copy;
}

static void add_link(gatherer *g, cmark_node *node) {
    const char *url = cmark_node_get_url(node);
    bool picture = cmark_node_get_type(node) == CMARK_NODE_IMAGE;
    span rest = span_first(span_from(g->to->source, g->cursor), g->end - g->cursor);
    size_t found = span_find(rest, picture ? "![" : "[");
    prose_link one = {.picture = picture,
                      .target = arena_copy_span(g->to->home, span_of(url)),
                      .at = g->cursor + (found < rest.length ? found : 0)};
    if (picture)
        one.text = picture_text(g->to->home, node);
    LIST_ADD(g->to->home, &g->to->links, one);
}

static void begin(gatherer *g, cmark_node *node, passage_sort sort) {
    size_t body = (size_t)(g->body.at - g->to->source.at);
    unsigned before = (unsigned)line_at(g->to->lines, body); /* lines of front matter */
    g->cursor = line_offset(g->to, before + (unsigned)cmark_node_get_start_line(node));
    g->end = line_offset(g->to, before + (unsigned)cmark_node_get_end_line(node) + 1);
    g->one = (passage){.sort = sort};
    text_clear(&g->words);
}

static void finish(gatherer *g) {
    g->one.words = arena_copy_span(g->to->home, text_span(&g->words));
    if (g->one.sort == PASSAGE_HEADING) {
        static const char *const notes[] = {"note",    "tip",        "variation", "swap",
                                            "storage", "keep",       "serving",   "story",
                                            "about",   "background", "trial",     "why"};
        span folded = words_fold(g->to->home, g->one.words);
        g->in_notes = false;
        for (size_t i = 0; i < COUNT(notes); i++)
            g->in_notes = g->in_notes || span_begins(folded, notes[i]);
    }
    LIST_ADD(g->to->home, g->to, g->one);
}

static passage_sort sort_of(const gatherer *g, cmark_node *node) {
    if (cmark_node_get_type(node) == CMARK_NODE_HEADING)
        return PASSAGE_HEADING;
    if (g->in_notes || (g->any_steps && !is_inside_steps(node)))
        return PASSAGE_NOTE;
    return PASSAGE_METHOD;
}

static void take(gatherer *g, cmark_node *node, bool entering) {
    switch (cmark_node_get_type(node)) {
    case CMARK_NODE_PARAGRAPH:
    case CMARK_NODE_HEADING:
        if (entering)
            begin(g, node, sort_of(g, node));
        else
            finish(g);
        break;
    case CMARK_NODE_TEXT:
    case CMARK_NODE_CODE:
        add_words(g, cmark_node_get_literal(node));
        break;
    case CMARK_NODE_SOFTBREAK:
    case CMARK_NODE_LINEBREAK:
        text_add_char(&g->words, ' ');
        break;
    case CMARK_NODE_IMAGE:
        g->before_picture = g->pictures ? g->before_picture : g->one.bits.count;
        g->pictures += entering ? 1 : -1;
        /* fallthrough */
    case CMARK_NODE_LINK:
        if (entering)
            add_link(g, node);
        break;
    default:
        break;
    }
}

static bool has_steps(cmark_node *document) {
    for (cmark_node *n = cmark_node_first_child(document); n; n = cmark_node_next(n))
        if (cmark_node_get_type(n) == CMARK_NODE_LIST && is_inside_steps(n))
            return true;
    return false;
}

void passages_add_markdown(passages *to, span body) {
    if (body.length == 0)
        return;
    cmark_node *document = markdown_read(body);
    gatherer g = {.to = to, .body = body, .words = TEXT_EMPTY, .any_steps = has_steps(document)};
    cmark_iter *walk = cmark_iter_new(document);
    for (cmark_event_type event = cmark_iter_next(walk); event != CMARK_EVENT_DONE;
         event = cmark_iter_next(walk))
        take(&g, cmark_iter_get_node(walk), event == CMARK_EVENT_ENTER);
    cmark_iter_free(walk);
    cmark_node_free(document);
    text_free(&g.words);
}

/* -- sentences --------------------------------------------------------------------------------- */

/* A stop, not the point of a decimal. */
static bool ends_sentence(span words, size_t i) {
    static const char stops[] = ".!?;:";
    bool stop = strchr(stops, words.at[i]) != NULL;
    return stop && (i + 1 >= words.length || words.at[i + 1] == ' ' || words.at[i + 1] == '"');
}

span sentence_around(span words, size_t offset) {
    size_t from = offset, to = offset;
    while (from > 0 && !ends_sentence(words, from - 1))
        from--;
    while (to < words.length && !ends_sentence(words, to))
        to++;
    return span_trim((span){words.at + from, to - from});
}
