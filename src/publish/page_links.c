#include "publish/page_links.h"

#include "base/list.h"

#include <gumbo.h>

/* Attributes that hold an address, and on which element; null: on any. */
static const struct {
    const char *attribute, *element;
} address_attributes[] = {
    {"href", NULL},     {"src", NULL},      {"xlink:href", NULL}, {"poster", "video"},
    {"data", "object"}, {"action", "form"}, {"formaction", NULL}, {"srcset", NULL},
};

/* Properties of Open Graph whose content is an address. */
static const char *const address_properties[] = {"og:url", "og:image"};

/* The parser's memory is the arena's: nothing is freed one by one, however deep the page. */
static void *allocate(void *home, size_t size) {
    return arena_alloc(home, size);
}

static void keep(void *home, void *bytes) {
    (void)home;
    (void)bytes;
}

static void add_link(arena *a, const GumboAttribute *from, span href, page_links *out) {
    LIST_ADD(a, &out->links, (page_link){href, from->value_start.line, from->value_start.column});
}

/* srcset: addresses each followed by a blank and a width or density, parted by commas. */
static void add_set(arena *a, const GumboAttribute *from, page_links *out) {
    span rest = span_of(from->value), word;
    bool expected = true;
    while ((word = span_next_word(&rest)).length) {
        bool ends = span_ends(word, ",");
        if (expected)
            add_link(a, from, span_first(word, word.length - ends), out);
        expected = ends;
    }
}

static bool is_address(const GumboElement *of, const char *attribute) {
    const char *element = gumbo_normalized_tagname(of->tag);
    for (size_t i = 0; i < COUNT(address_attributes); i++)
        if (strcmp(attribute, address_attributes[i].attribute) == 0)
            return !address_attributes[i].element ||
                   strcmp(element, address_attributes[i].element) == 0;
    return false;
}

static void add_meta(arena *a, const GumboElement *of, page_links *out) {
    const GumboAttribute *property = gumbo_get_attribute(&of->attributes, "property");
    const GumboAttribute *content = gumbo_get_attribute(&of->attributes, "content");
    for (size_t i = 0; property && content && i < COUNT(address_properties); i++)
        if (strcmp(property->value, address_properties[i]) == 0)
            add_link(a, content, span_of(content->value), out);
}

static void add_element(arena *a, const GumboElement *of, page_links *out) {
    for (unsigned i = 0; i < of->attributes.length; i++) {
        const GumboAttribute *at = of->attributes.data[i];
        bool anchor = strcmp(at->name, "id") == 0 ||
                      (of->tag == GUMBO_TAG_A && strcmp(at->name, "name") == 0);
        if (anchor)
            LIST_ADD(a, &out->anchors, span_of(at->value));
        else if (strcmp(at->name, "srcset") == 0)
            add_set(a, at, out);
        else if (is_address(of, at->name))
            add_link(a, at, span_of(at->value), out);
    }
    if (of->tag == GUMBO_TAG_META)
        add_meta(a, of, out);
}

static const GumboVector *children_of(const GumboNode *of) {
    static const GumboVector none = {0};
    if (of->type == GUMBO_NODE_DOCUMENT)
        return &of->v.document.children;
    bool element = of->type == GUMBO_NODE_ELEMENT || of->type == GUMBO_NODE_TEMPLATE;
    return element ? &of->v.element.children : &none;
}

/* The node after `of` in the order of the page: no recursion, so that depth costs nothing. */
static const GumboNode *next_node(const GumboNode *of) {
    if (children_of(of)->length)
        return children_of(of)->data[0];
    while (of->parent && of->index_within_parent + 1 >= children_of(of->parent)->length)
        of = of->parent;
    return of->parent ? children_of(of->parent)->data[of->index_within_parent + 1] : NULL;
}

page_links page_links_of(arena *a, span html) {
    page_links out = {0};
    GumboOptions options = kGumboDefaultOptions;
    options.allocator = allocate;
    options.deallocator = keep;
    options.userdata = a;
    options.max_errors = 0;
    options.tab_stop = 1; /* columns count characters */
    const GumboOutput *parsed = gumbo_parse_with_options(&options, html.at, html.length);
    for (const GumboNode *node = parsed->document; node; node = next_node(node))
        if (node->type == GUMBO_NODE_ELEMENT || node->type == GUMBO_NODE_TEMPLATE)
            add_element(a, &node->v.element, &out);
    return out;
}
