/* Reads a plain page: front matter (title, summary, date, order, menu) and a Markdown body. */
#ifndef READ_PAGE_H
#define READ_PAGE_H

#include "base/problems.h"

typedef struct {
    const char *file, *slug, *title, *summary, *date;
    double order; /* in the menu, small first */
    bool in_menu;
    span body; /* borrowed from the file's bytes */
    unsigned body_line;
} plain_page;

/* Null, with a problem, when it has no front matter or no title. */
plain_page *page_read(arena *a, const char *file, span bytes, problems *found);

#endif
