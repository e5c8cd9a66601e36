#include "site/markdown_tree.h"

#include "base/memory.h"
#include "base/percent.h"

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

/* Calls `change` for each relative address that is linked to or shown; it leaves the new one in
 * `url`, or nothing. */
static void each_address(cmark_node *document, const void *with,
                         void (*change)(const void *with, const char *was, text *url)) {
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
        change(with, cmark_node_get_url(at), &url);
        if (url.length)
            cmark_node_set_url(at, url.bytes);
    }
    text_free(&url);
    cmark_iter_free(walk);
}

static void lead_up(const void *up, const char *was, text *url) {
    text_format(url, "%s%s", (const char *)up, was);
}

void markdown_lead_up(cmark_node *document, const char *up) {
    each_address(document, up, lead_up);
}

static void show_picture(const void *all, const char *was, text *url) {
    static const char folder[] = "pictures/";
    span address = span_of(was), name;
    size_t before = span_find(address, folder);
    if (before == address.length || (before > 0 && was[before - 1] != '/'))
        return;
    arena *a = arena_new();
    bool readable = percent_decode(a, span_from(address, before + strlen(folder)), &name);
    const site_picture *of = readable ? picture_find(all, name.at) : NULL;
    if (of)
        text_format(url, "%.*s%s", (int)before, was,
                    percent_encode(a, picture_path_largest(a, of)));
    arena_free(a);
}

void markdown_show_pictures(cmark_node *document, const site_pictures *all) {
    each_address(document, all, show_picture);
}
