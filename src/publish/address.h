/* Where a link on a page leads: reference resolution after RFC 3986, section 5, for the pages of
 * one site. Pure. */
#ifndef PUBLISH_ADDRESS_H
#define PUBLISH_ADDRESS_H

#include "base/arena.h"

typedef enum {
    LEADS_INSIDE,    /* to a path of the site */
    LEADS_ELSEWHERE, /* to another host, or to a part of this one that is not the site's */
    LEADS_NOWHERE    /* it can't be read: a broken escape or an escaped NUL */
} leads;

typedef struct {
    leads to;
    const char *path;     /* inside the site, decoded, no leading slash; "" is the home page */
    const char *fragment; /* decoded; null when there is none */
} destination;

/* Where `href`, written on the page at `page` ("recipes/x/index.html"), leads. `address` is the
 * site's own ("https://galley.example/kitchen/"): links that begin with it are inside. What
 * comes back lives in `a`. */
destination destination_of(arena *a, const char *address, const char *page, span href);

/* `path` without "." and ".." parts, in the arena; a trailing slash stays, a leading one goes.
 * Parts that would lead above the top are dropped (RFC 3986, section 5.2.4) and set `*above`. */
char *path_without_dots(arena *a, span path, bool *above);

#endif
