/* Serves a written site over HTTP to the one who is writing it.
 *
 * GET and HEAD alone, nothing is cached, the policy for content is as strict as a careful host's.
 * A small script is added to pages as they are served, never to the files: it asks
 * /.preview/changes, which answers when something is new, and then shows the problems or loads
 * the page again. One thread serves; the others call the functions below. */
#ifndef PREVIEW_SERVER_H
#define PREVIEW_SERVER_H

#include "base/problems.h"

typedef struct server server;

typedef struct {
    const char *site;   /* the folder with the written site */
    const char *listen; /* an IPv4 or IPv6 address */
    unsigned port;      /* 0: any that is free */
} server_request;

/* Starts to serve. Null, with a problem in `found`, when the port is taken, the address is none,
 * or the library is not there. Arguments are copied. The caller stops it. */
server *server_start(const server_request *asked, problems *found);

/* The port it listens on. */
unsigned server_port(const server *of);

/* Tells the pages that the site was written anew, with these problems. `address` is what the
 * site is published at; both are copied. */
void server_publish(server *of, const char *address, const problems *found);

/* To be called every second or so: ends connections that dawdle, answers those that wait long. */
void server_tick(server *of);

/* Ends all connections and frees everything. */
void server_stop(server *of);

#endif
