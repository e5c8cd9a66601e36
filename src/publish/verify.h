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
    size_t links; /* followed within the site */
} verify_report;

/* Verifies the site in `folder`, published at `address`, with `workers` threads (0: as
 * workers_for has it). What is wrong
 * is an error in `found`, placed in the file as written; the same fault on many pages is said
 * once. False, with a problem, when a file can't be read. */
bool verify_site(const char *folder, const char *address, unsigned workers, verify_report *out,
                 problems *found);

#endif
