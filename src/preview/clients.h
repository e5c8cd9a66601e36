/* The connections of the preview: who dawdles over a request, who waits for news.
 *
 * A client that sends a byte now and then would never be idle; so a request must be complete
 * within REQUEST_SECONDS of the connection's begin or of the answer before. All functions may be
 * called from any thread. */
#ifndef PREVIEW_CLIENTS_H
#define PREVIEW_CLIENTS_H

#include "preview/http_library.h"

#include <pthread.h>

enum { REQUEST_SECONDS = 10, WAIT_SECONDS = 20 };

typedef struct client client;

typedef struct {
    const http_library *http; /* borrowed */
    pthread_mutex_t guard;
    client *first;
    bool closing; /* nobody may wait any more */
} clients;

void clients_begin(clients *all, const http_library *http);
void clients_end(clients *all);

/* A connection began on socket `fd`; null when there is no memory for it. */
client *client_new(clients *all, int fd);

/* It ended; `of` is freed. */
void client_gone(clients *all, client *of);

/* Its request is complete, or the answer to it is and another may follow. */
void client_asked(clients *all, client *of);
void client_answered(clients *all, client *of);

/* Suspends `connection` until news come. False when it may not wait: the server is closing. */
bool client_wait(clients *all, client *of, struct MHD_Connection *connection);

/* Resumes all who wait; with `closing` nobody waits afterwards. */
void clients_wake(clients *all, bool closing);

/* Shuts the sockets of those who dawdle, resumes those who wait for WAIT_SECONDS. */
void clients_tick(clients *all);

#endif
