/* Builds a site: reads the folder, works on the recipes with several workers, then makes the pages
 * that need all of them.
 *
 *     site.yaml, pantry/, rules/, trials/, pages/  ->  read once, constant
 *     recipes/x.md  ->  a worker: read, weigh, figures, swap notes, page, recipe.json  ->  a row
 *     all rows      ->  home, lists, ingredient pages, chart, search index, feed, sitemap
 *
 * A recipe with errors is reported and left as it was; all others are written. The bytes do not
 * depend on the number of workers. */
#ifndef PUBLISH_BUILD_H
#define PUBLISH_BUILD_H

#include "base/problems.h"
#include "base/progress.h"
#include "publish/workers.h"

typedef struct {
    const char *folder; /* the site folder */
    const char *out;    /* where the site goes */
    bool show_views;    /* write each page's JSON beside it, as view.json */
    unsigned workers;   /* 0: as many as there are processors, eight at the most */
    progress *seen;     /* moved with each recipe; may be null */
} build_request;

typedef struct {
    size_t recipes; /* read, broken ones included */
    size_t made;    /* worked on this time; the others had not changed */
    size_t written; /* recipes on the site */
    size_t files;   /* files of the site */
    bool machine_failed;
} build_report;

/* Builds as asked. All problems are in `found`; messages live in its arena. */
build_report build_site(const build_request *asked, problems *found);

#endif
