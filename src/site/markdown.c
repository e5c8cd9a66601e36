#include "site/markdown.h"

#include "site/markdown_tree.h"

void markdown_html(span markdown, const site_pictures *pictures, text *out) {
    if (markdown.length == 0)
        return;
    cmark_node *document = markdown_read(markdown);
    markdown_show_pictures(document, pictures);
    markdown_write(document, out);
    cmark_node_free(document);
}
