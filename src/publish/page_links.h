/* What a written page refers to and what can be referred to on it, as an HTML parser sees it. */
#ifndef PUBLISH_PAGE_LINKS_H
#define PUBLISH_PAGE_LINKS_H

#include "base/arena.h"

typedef struct {
    span href; /* as it stands, references to characters resolved */
    unsigned line, column;
} page_link;

typedef struct {
    page_link *items;
    size_t count, capacity;
} page_link_list;

typedef struct {
    span *items;
    size_t count, capacity;
} page_anchor_list;

typedef struct {
    page_link_list links;     /* href, src, srcset, poster, … in the order of the page */
    page_anchor_list anchors; /* values of id, and of name on old-fashioned anchors */
} page_links;

/* Parses `html` (UTF-8). Any bytes are a page; everything lives in `a`. */
page_links page_links_of(arena *a, span html);

#endif
