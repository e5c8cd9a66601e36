/* Publishes a site in one step: builds it beside the live one, verifies it, then switches.
 *
 *     build -> verify -> compress -> on the disk -> whole -> switch -> earlier ones go
 *
 * Whatever fails or crashes before the switch leaves the live site as it was. Files that did not
 * change are shared with the release before (hard links). How the folder looks: release_folder.h.
 */
#ifndef PUBLISH_RELEASE_H
#define PUBLISH_RELEASE_H

#include "base/problems.h"
#include "base/progress.h"

typedef struct {
    const char *folder;    /* the site folder */
    const char *to;        /* the folder of releases */
    unsigned keep;         /* earlier releases to keep, at least 1 */
    unsigned workers;      /* as for a build */
    bool gzip, brotli;     /* compressed files beside the others */
    progress *seen;        /* moved with each recipe; may be null */
    void (*waiting)(void); /* called when another release is under way; may be null */
} release_request;

typedef struct {
    unsigned live, before; /* release numbers; 0: none */
    bool switched;         /* false when nothing changed or something was wrong */
    size_t recipes, files, pages, links;
    size_t shared;  /* files that are the earlier release's */
    size_t removed; /* releases taken away */
    bool machine_failed;
} release_report;

/* Makes a release. With errors in the content, or a site that does not hold together, the live
 * one stays and `found` says why. Nothing changed: no new release. */
release_report release_site(const release_request *asked, problems *found);

/* Returns to the release before the live one. An error in `found` when there is none. */
release_report release_back(const release_request *asked, problems *found);

#endif
