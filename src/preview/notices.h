/* What the preview adds to a page as it is served, and what it says when asked for news. Pure. */
#ifndef PREVIEW_NOTICES_H
#define PREVIEW_NOTICES_H

#include "base/problems.h"

/* Adds `page` to `out` with the preview's script and style put before the end of its head.
 * `token` stands for the page as it is now. */
void notices_add_script(span page, const char *token, text *out);

/* Adds `page` with each address under `address` made one under this server: for the one page
 * whose links are absolute, 404.html. */
void notices_make_local(span page, const char *address, text *out);

/* Adds {errors, warnings, problems: [{file, line, column, level, message, hint}]} as JSON: errors
 * first, as many as a page can show. */
void notices_add_problems(const problems *found, text *out);

#endif
