#include "site/markdown.h"

#include "base/list.h"

#include <cmark.h>

void markdown_html(span markdown, text *out) {
    if (markdown.length == 0)
        return;
    char *html = cmark_markdown_to_html(markdown.at, markdown.length,
                                        CMARK_OPT_DEFAULT | CMARK_OPT_VALIDATE_UTF8);
    text_add(out, html);
    free(html);
}

/* True for "../weir-crust/": an address that depends on where the page is. */
static bool is_relative(const char *url) {
    size_t before = strcspn(url, "/?#:");
    return url[0] != '\0' && url[0] != '/' && url[0] != '#' && url[0] != '?' && url[before] != ':';
}

static void lead_up(cmark_node *document, const char *up) {
    cmark_iter *walk = cmark_iter_new(document);
    text url = TEXT_EMPTY;
    cmark_event_type event;
    while ((event = cmark_iter_next(walk)) != CMARK_EVENT_DONE) {
        cmark_node *at = cmark_iter_get_node(walk);
        cmark_node_type sort = cmark_node_get_type(at);
        bool links = sort == CMARK_NODE_LINK || sort == CMARK_NODE_IMAGE;
        if (event != CMARK_EVENT_ENTER || !links || !is_relative(cmark_node_get_url(at)))
            continue;
        text_clear(&url);
        text_format(&url, "%s%s", up, cmark_node_get_url(at));
        cmark_node_set_url(at, url.bytes);
    }
    text_free(&url);
    cmark_iter_free(walk);
}

void markdown_html_below(span markdown, const char *up, text *out) {
    int options = CMARK_OPT_DEFAULT | CMARK_OPT_VALIDATE_UTF8;
    cmark_node *document =
        cmark_parse_document(markdown.at ? markdown.at : "", markdown.length, options);
    lead_up(document, up);
    char *html = cmark_render_html(document, options);
    text_add(out, html);
    free(html);
    cmark_node_free(document);
}

static cmark_node *first_ordered_list(cmark_node *document) {
    for (cmark_node *n = cmark_node_first_child(document); n; n = cmark_node_next(n))
        if (cmark_node_get_type(n) == CMARK_NODE_LIST &&
            cmark_node_get_list_type(n) == CMARK_ORDERED_LIST)
            return n;
    return NULL;
}

/* The words of a node without any mark-up, line ends as spaces. */
static void add_plain(cmark_node *node, text *out) {
    cmark_iter *walk = cmark_iter_new(node);
    cmark_event_type event;
    while ((event = cmark_iter_next(walk)) != CMARK_EVENT_DONE) {
        cmark_node *at = cmark_iter_get_node(walk);
        cmark_node_type sort = cmark_node_get_type(at);
        if (sort == CMARK_NODE_TEXT || sort == CMARK_NODE_CODE)
            text_add(out, cmark_node_get_literal(at));
        else if (sort == CMARK_NODE_SOFTBREAK || sort == CMARK_NODE_LINEBREAK)
            text_add_char(out, ' ');
        else if (sort == CMARK_NODE_PARAGRAPH && event == CMARK_EVENT_ENTER && out->length)
            text_add_char(out, ' ');
    }
    cmark_iter_free(walk);
}

typedef struct {
    const char **items;
    size_t count, capacity;
} step_list;

size_t markdown_steps(arena *a, span markdown, const char ***steps) {
    step_list found = {0};
    cmark_node *document =
        cmark_parse_document(markdown.at ? markdown.at : "", markdown.length, CMARK_OPT_DEFAULT);
    cmark_node *list = first_ordered_list(document);
    text words = TEXT_EMPTY;
    for (cmark_node *n = list ? cmark_node_first_child(list) : NULL; n; n = cmark_node_next(n)) {
        text_clear(&words);
        add_plain(n, &words);
        LIST_ADD(a, &found, arena_copy(a, text_span(&words)));
    }
    text_free(&words);
    cmark_node_free(document);
    *steps = found.items;
    return found.count;
}
