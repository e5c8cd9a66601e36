/* What the preview answers: pages with its script added, other files as they are, news. */
#ifndef PREVIEW_ANSWER_H
#define PREVIEW_ANSWER_H

#include "base/arena.h"
#include "base/text.h"
#include "preview/clients.h"

/* What is served, and what is known of it. */
typedef struct {
    const http_library *http; /* borrowed, as are the next two */
    clients *all;
    const char *site;      /* the folder with the written site */
    pthread_mutex_t guard; /* of what follows */
    text notices;          /* JSON */
    text address;          /* what the site is published at */
    unsigned notices_number;
    uint64_t assets; /* changes with any file but a page's own */
} served;

/* A request being answered. */
typedef struct {
    served *by;
    struct MHD_Connection *connection;
    client *from;
    arena *a; /* as long as the answer is made */
} request;

/* Answers a GET or HEAD of `target` (path as sent). `woken`: it has waited for news. */
enum MHD_Result answer(const request *r, const char *target, bool woken);

/* Answers with `status` and plain words. */
enum MHD_Result answer_refusing(const request *r, unsigned status, const char *words);

/* A number that changes whenever a file under the site's folders for style, scripts, pictures and
 * indexes does. */
uint64_t answer_assets_mark(const char *site);

#endif
