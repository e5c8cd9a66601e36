/* What other programs read of a site: the Atom feed (RFC 4287), the sitemap (sitemaps.org 0.9) and
 * robots.txt (RFC 9309). */
#ifndef SITE_FEEDS_H
#define SITE_FEEDS_H

#include "site/page.h"
#include "site/row.h"

/* Adds feed.xml: the newest recipes that have a date. Dates come from the recipes alone, so the
 * feed changes only when they do. */
void feed_write(arena *a, const page_maker *by, const recipe_rows *rows, text *out);

/* Adds sitemap.xml with the addresses of `paths`. */
void sitemap_write(arena *a, const site_folder *of, const char *const *paths, size_t count,
                   text *out);

/* Adds robots.txt: everything may be read, and where the sitemap is. */
void robots_write(arena *a, const site_folder *of, text *out);

#endif
