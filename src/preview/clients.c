#include "preview/clients.h"

#include <stdlib.h>
#include <sys/socket.h>
#include <time.h>

struct client {
    int fd;
    time_t since;                   /* of its state, by a clock that is never set */
    bool reading;                   /* its request is not complete */
    struct MHD_Connection *waiting; /* suspended; null when it is not */
    client *before, *next;
};

static time_t now(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec;
}

void clients_begin(clients *all, const http_library *http) {
    *all = (clients){.http = http};
    pthread_mutex_init(&all->guard, NULL);
}

void clients_end(clients *all) {
    while (all->first)
        client_gone(all, all->first);
    pthread_mutex_destroy(&all->guard);
}

client *client_new(clients *all, int fd) {
    client *of = calloc(1, sizeof *of);
    if (!of)
        return NULL;
    *of = (client){.fd = fd, .since = now(), .reading = true};
    pthread_mutex_lock(&all->guard);
    of->next = all->first;
    if (of->next)
        of->next->before = of;
    all->first = of;
    pthread_mutex_unlock(&all->guard);
    return of;
}

void client_gone(clients *all, client *of) {
    pthread_mutex_lock(&all->guard);
    if (of->next)
        of->next->before = of->before;
    *(of->before ? &of->before->next : &all->first) = of->next;
    pthread_mutex_unlock(&all->guard);
    free(of);
}

static void set_reading(clients *all, client *of, bool reading) {
    pthread_mutex_lock(&all->guard);
    of->reading = reading;
    of->since = now();
    pthread_mutex_unlock(&all->guard);
}

void client_asked(clients *all, client *of) {
    set_reading(all, of, false);
}

void client_answered(clients *all, client *of) {
    set_reading(all, of, true);
}

bool client_wait(clients *all, client *of, struct MHD_Connection *connection) {
    pthread_mutex_lock(&all->guard);
    bool may = !all->closing;
    if (may) {
        all->http->suspend_connection(connection);
        of->waiting = connection;
        of->since = now();
    }
    pthread_mutex_unlock(&all->guard);
    return may;
}

static void wake(clients *all, client *of) {
    struct MHD_Connection *connection = of->waiting;
    of->waiting = NULL;
    all->http->resume_connection(connection);
}

void clients_wake(clients *all, bool closing) {
    pthread_mutex_lock(&all->guard);
    all->closing = all->closing || closing;
    for (client *of = all->first; of; of = of->next)
        if (of->waiting)
            wake(all, of);
    pthread_mutex_unlock(&all->guard);
}

void clients_tick(clients *all) {
    time_t at = now();
    pthread_mutex_lock(&all->guard);
    for (client *of = all->first; of; of = of->next) {
        if (of->waiting && at - of->since >= WAIT_SECONDS)
            wake(all, of);
        else if (of->reading && at - of->since >= REQUEST_SECONDS)
            shutdown(of->fd, SHUT_RDWR);
    }
    pthread_mutex_unlock(&all->guard);
}
