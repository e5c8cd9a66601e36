/* Markdown to HTML through cmark: raw HTML off (safe mode), so what an author pastes can't run. */
#ifndef SITE_MARKDOWN_H
#define SITE_MARKDOWN_H

#include "base/text.h"
#include "site/pictures.h"

/* Adds the HTML of `markdown` (UTF-8) to `out`; pictures of the site are shown as `pictures` (may
 * be null) has them. Never fails: every text is a document. */
void markdown_html(span markdown, const site_pictures *pictures, text *out);

#endif
