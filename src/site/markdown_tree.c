#include "site/markdown_tree.h"

#include "base/memory.h"

#include <stdlib.h>

/* cmark's own would end the program in its way. */
static cmark_mem *memory(void) {
    static cmark_mem ours = {memory_get_array, memory_resize, free};
    return &ours;
}

cmark_node *markdown_read(span markdown) {
    cmark_parser *by =
        cmark_parser_new_with_mem(CMARK_OPT_DEFAULT | CMARK_OPT_VALIDATE_UTF8, memory());
    cmark_parser_feed(by, markdown.at ? markdown.at : "", markdown.length);
    cmark_node *document = cmark_parser_finish(by);
    cmark_parser_free(by);
    return document;
}

cmark_node *markdown_node(cmark_node_type sort) {
    return cmark_node_new_with_mem(sort, memory());
}

void markdown_write(cmark_node *document, text *out) {
    char *html = cmark_render_html(document, CMARK_OPT_DEFAULT);
    text_add(out, html);
    free(html);
}

void markdown_plain(cmark_node *node, text *out) {
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

bool markdown_is_numbered(cmark_node *node) {
    return cmark_node_get_type(node) == CMARK_NODE_LIST &&
           cmark_node_get_list_type(node) == CMARK_ORDERED_LIST;
}

/* True for "../weir-crust/": an address that depends on where the page is. */
static bool is_relative(const char *url) {
    size_t before = strcspn(url, "/?#:");
    return url[0] != '\0' && !strchr("/?#", url[0]) && url[before] != ':';
}

void markdown_lead_up(cmark_node *document, const char *up) {
    cmark_iter *walk = cmark_iter_new(document);
    cmark_event_type event;
    text url = TEXT_EMPTY;
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
