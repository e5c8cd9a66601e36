/* Looks at a written site as a reader's browser would: does everything that a page refers to
 * exist?
 *
 * Every page is parsed; links, assets, images and anchors must be there. The search index must be
 * JSON, feed and sitemap well-formed XML, and every address in the sitemap a page. Links to other
 * hosts are not followed. */
#ifndef PUBLISH_VERIFY_H
#define PUBLISH_VERIFY_H

#include "base/problems.h"

typedef struct {
    size_t files, pages;
    size_t links; /* followed within the site, on the pages that were parsed */
} verify_report;

typedef struct {
    const char *folder;  /* the site */
    const char *address; /* where it is published */
    const char *earlier; /* one verified before, that shares files with it; or null */
    unsigned workers;    /* threads, as for a build */
} verify_request;

/* Verifies a site. What is wrong is an error in `found`, placed in the file as written; the same
 * fault on many pages is said once. Pages shared with `earlier` are parsed again only when a file
 * or an anchor that was there is gone. False, with a problem, when a file can't be read. */
bool verify_site(const verify_request *asked, verify_report *out, problems *found);

#endif
