/* Markdown to HTML through cmark: raw HTML off (safe mode), so what an author pastes can't run. */
#ifndef SITE_MARKDOWN_H
#define SITE_MARKDOWN_H

#include "base/arena.h"
#include "base/text.h"

/* Adds the HTML of `markdown` (UTF-8) to `out`. Never fails: every text is a document. */
void markdown_html(span markdown, text *out);

/* The same for a page that stands elsewhere than the one that `markdown` was written for: `up`
 * ("../") goes before each relative address. */
void markdown_html_below(span markdown, const char *up, text *out);

/* The steps of a method: the items of its first ordered list as plain text, one arena string
 * each; empty when there is no ordered list. For schema.org HowToStep. */
size_t markdown_steps(arena *a, span markdown, const char ***steps);

#endif
