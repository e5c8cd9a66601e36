/* What is done to Markdown once cmark has read it: for site/markdown.c and site/method.c. */
#ifndef SITE_MARKDOWN_TREE_H
#define SITE_MARKDOWN_TREE_H

#include "base/text.h"
#include "site/pictures.h"

#include <cmark.h>

/* The document that `markdown` (UTF-8) says; never null. The caller frees it with
 * cmark_node_free. */
cmark_node *markdown_read(span markdown);

/* A new node, to be put into a document or freed. */
cmark_node *markdown_node(cmark_node_type sort);

/* Adds its HTML to `out`, raw HTML left out. */
void markdown_write(cmark_node *document, text *out);

/* Adds the words of `node` without any mark-up, line ends as spaces. */
void markdown_plain(cmark_node *node, text *out);

/* True for a numbered list, which is what the steps of a method are. */
bool markdown_is_numbered(cmark_node *node);

/* Puts `up` ("../") before each relative address that is linked to: for a page that stands
 * elsewhere than the one that the text was written for. */
void markdown_lead_up(cmark_node *document, const char *up);

/* Leads what is written "../../pictures/rounds.jpg" to the largest file there is of that picture:
 * its files have other names than the one the author put into pictures/. */
void markdown_show_pictures(cmark_node *document, const site_pictures *all);

#endif
