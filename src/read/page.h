/* Reads a plain page: front matter (title, summary, date, order, menu) and a Markdown body. */
#ifndef READ_PAGE_H
#define READ_PAGE_H

#include "base/problems.h"

typedef struct {
    const char *file, *slug, *title, *summary, *date; /* the last two may be null */
    double order;                                     /* in the menu, small first */
    bool in_menu;
    span source; /* the file's bytes, borrowed */
    span body;   /* a part of them */
    unsigned body_line;
} plain_page;

/* The order of a page that states none: after all that do. */
#define PAGE_ORDER_LAST 1e6

/* The slug of the Markdown file `file`: its name without folder and .md, as a slug. */
char *page_slug(arena *a, const char *file);

/* Null, with a problem, when it has no front matter or no title. */
plain_page *page_read(arena *a, const char *file, span bytes, problems *found);

#endif
