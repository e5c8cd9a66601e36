#include "draft/html.h"

#include "base/list.h"

#include <gumbo.h>
#include <setjmp.h>

/* -- reading ----------------------------------------------------------------------------------- */

/* libgumbo asks for its memory here. It can't be told that there is none left, so the way out past
 * a limit is a jump; as all its memory is in the arena, nothing is lost by that. */
typedef struct {
    arena *home;
    size_t bytes_left, pieces_left;
    jmp_buf full;
} budget;

static void *take(void *state, size_t size) {
    budget *left = state;
    if (size > left->bytes_left || left->pieces_left == 0)
        longjmp(left->full, 1);
    left->bytes_left -= size;
    left->pieces_left--;
    return arena_alloc(left->home, size);
}

static void give_back(void *state, void *piece) {
    (void)state, (void)piece; /* the arena is freed whole */
}

static const html_node *parse(budget *left, span bytes) {
    GumboOptions how = kGumboDefaultOptions;
    how.allocator = take;
    how.deallocator = give_back;
    how.userdata = left;
    how.max_errors = 0;
    if (setjmp(left->full))
        return NULL;
    return gumbo_parse_with_options(&how, bytes.at, bytes.length)->root;
}

const html_node *html_read(arena *a, span bytes) {
    if (bytes.length > HTML_BYTES_MOST)
        return NULL;
    budget left = {.home = a, .bytes_left = HTML_MEMORY_MOST, .pieces_left = HTML_PIECES_MOST};
    return parse(&left, bytes.at ? bytes : span_of(""));
}

/* -- walking ----------------------------------------------------------------------------------- */

static bool is_element(const html_node *at) {
    return at->type == GUMBO_NODE_ELEMENT || at->type == GUMBO_NODE_TEMPLATE;
}

static const html_node *first_inside(const html_node *at) {
    bool any = is_element(at) && at->v.element.children.length > 0;
    return any ? at->v.element.children.data[0] : NULL;
}

static const html_node *sibling_after(const html_node *at) {
    const html_node *parent = at->parent;
    if (!parent || !is_element(parent))
        return NULL;
    size_t next = at->index_within_parent + 1;
    const GumboVector *all = &parent->v.element.children;
    return next < all->length ? all->data[next] : NULL;
}

const html_node *html_next_beside(const html_node *at, const html_node *root) {
    for (; at && at != root; at = at->parent) {
        const html_node *next = sibling_after(at);
        if (next)
            return next;
    }
    return NULL;
}

const html_node *html_next(const html_node *at, const html_node *root) {
    const html_node *inside = first_inside(at);
    return inside ? inside : html_next_beside(at, root);
}

bool html_is(const html_node *at, const char *name) {
    return is_element(at) && at->v.element.tag != GUMBO_TAG_UNKNOWN &&
           strcmp(gumbo_normalized_tagname(at->v.element.tag), name) == 0;
}

const char *html_attribute(const html_node *at, const char *name) {
    if (!is_element(at))
        return NULL;
    const GumboAttribute *got = gumbo_get_attribute(&at->v.element.attributes, name);
    return got ? got->value : NULL;
}

bool html_has_word(const html_node *at, const char *attribute, const char *word) {
    span rest = span_of(html_attribute(at, attribute));
    for (span one = span_next_word(&rest); one.length; one = span_next_word(&rest))
        if (span_is(one, word))
            return true;
    return false;
}

span html_script(const html_node *at) {
    const html_node *inside = first_inside(at);
    return inside && inside->type != GUMBO_NODE_COMMENT && !is_element(inside)
               ? span_of(inside->v.text.text)
               : (span){0};
}

/* -- words ------------------------------------------------------------------------------------- */

static bool is_any(const html_node *at, const char *const names[], size_t count) {
    for (size_t i = 0; i < count; i++)
        if (html_is(at, names[i]))
            return true;
    return false;
}

static bool is_heading(const html_node *at) {
    static const char *const names[] = {"h1", "h2", "h3", "h4", "h5", "h6"};
    return is_any(at, names, COUNT(names));
}

/* Elements that begin a line of their own: the rendering section of the HTML standard. */
static bool is_block(const html_node *at) {
    static const char *const names[] = {
        "p",   "div",     "li",      "ol",     "ul",     "br",         "tr",    "table",
        "dt",  "dd",      "dl",      "hr",     "figure", "blockquote", "aside", "figcaption",
        "pre", "section", "article", "header", "footer", "main",       "nav",   "address"};
    return is_heading(at) || is_any(at, names, COUNT(names));
}

static bool is_hidden(const html_node *at) {
    static const char *const names[] = {"script", "style", "template", "head", "noscript"};
    return at->type == GUMBO_NODE_COMMENT || is_any(at, names, COUNT(names));
}

/* Words being added; the blank or line end before the next one is written with it. */
typedef struct {
    text *out;
    size_t start;
    bool keep_lines, blank, line_end;
} writing;

static void add_run(writing *to, span words) {
    for (size_t i = 0; i < words.length; i++) {
        char c = words.at[i];
        bool is_line_end = c == '\n' || c == '\r';
        to->line_end = to->line_end || (is_line_end && to->keep_lines);
        if (is_line_end || c == ' ' || c == '\t' || c == '\f') {
            to->blank = true;
            continue;
        }
        if (to->out->length > to->start && (to->blank || to->line_end))
            text_add_char(to->out, to->line_end ? '\n' : ' ');
        to->blank = to->line_end = false;
        text_add_char(to->out, c);
    }
}

static bool ends_in_digit(const text *t) {
    char last = t->length ? t->bytes[t->length - 1] : ' ';
    return last >= '0' && last <= '9';
}

static void enter(writing *to, const html_node *at) {
    to->line_end = to->line_end || is_block(at);
    /* "1<sup>1</sup>/<sub>2</sub>" is one and a half, not eleven halves. */
    if (html_is(at, "sup") && ends_in_digit(to->out))
        to->blank = true;
    if (html_is(at, "td") || html_is(at, "th"))
        to->blank = true;
}

static void leave(writing *to, const html_node *at) {
    bool written = to->out->length > to->start && !to->line_end;
    if (is_heading(at) && written && to->out->bytes[to->out->length - 1] != ':')
        text_add_char(to->out, ':');
    to->line_end = to->line_end || is_block(at);
}

void html_add_words(const html_node *root, bool keep_lines, text *out) {
    writing to = {.out = out, .start = out->length, .keep_lines = keep_lines};
    const html_node *at = root;
    while (at) {
        const html_node *inside = is_hidden(at) ? NULL : first_inside(at);
        if (is_element(at))
            enter(&to, at);
        else if (at->type != GUMBO_NODE_COMMENT)
            add_run(&to, span_of(at->v.text.text));
        for (; !inside && at; at = at == root ? NULL : at->parent) {
            if (is_element(at) && at != root)
                leave(&to, at);
            if (at != root && (inside = sibling_after(at)) != NULL)
                break;
        }
        at = inside;
    }
}
