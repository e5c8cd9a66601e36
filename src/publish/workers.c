#include "publish/workers.h"

#include <assert.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <unistd.h>

enum { WORKERS_USUAL = 8 };

unsigned workers_for(unsigned asked, size_t pieces) {
    long processors = sysconf(_SC_NPROCESSORS_ONLN);
    unsigned count = asked ? asked : processors > 0 ? (unsigned)processors : 1;
    if (!asked && count > WORKERS_USUAL)
        count = WORKERS_USUAL;
    if (count > WORKERS_MOST)
        count = WORKERS_MOST;
    return count > pieces && pieces ? (unsigned)pieces : count;
}

/* What all hands share. */
typedef struct {
    worker_piece *work;
    void *state;
    size_t pieces;
    atomic_size_t next;
} shared_work;

typedef struct {
    shared_work *shared;
    unsigned number;
    pthread_t thread;
    bool started;
} hand;

static void *take_pieces(void *state) {
    const hand *h = state;
    size_t i;
    while ((i = atomic_fetch_add(&h->shared->next, 1)) < h->shared->pieces)
        h->shared->work(h->shared->state, h->number, i);
    return NULL;
}

void workers_run(unsigned count, size_t pieces, worker_piece *work, void *state) {
    shared_work shared = {.work = work, .state = state, .pieces = pieces};
    hand hands[WORKERS_MOST];
    assert(count > 0);
    for (unsigned i = 0; i < count; i++) {
        hands[i] = (hand){.shared = &shared, .number = i};
        hands[i].started =
            i > 0 && pthread_create(&hands[i].thread, NULL, take_pieces, &hands[i]) == 0;
    }
    (void)take_pieces(&hands[0]);
    for (unsigned i = 0; i < count; i++)
        if (hands[i].started)
            pthread_join(hands[i].thread, NULL);
}
