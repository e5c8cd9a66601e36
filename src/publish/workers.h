/* How many threads work at a time. */
#ifndef PUBLISH_WORKERS_H
#define PUBLISH_WORKERS_H

#include <stddef.h>

enum { WORKERS_MOST = 64 };

/* `asked`, or with 0 as many as there are processors, eight at the most; never more than there
 * are `pieces` of work, nor than WORKERS_MOST. */
unsigned workers_for(unsigned asked, size_t pieces);

/* Does piece number `piece` with what worker number `worker`, which does one at a time, has. */
typedef void worker_piece(void *state, unsigned worker, size_t piece);

/* Does all pieces, 0 to `pieces` - 1, begun in that order, with the workers 0 to `count` - 1; the
 * caller is worker 0. Where no thread is to be had fewer work, and it only takes longer. */
void workers_run(unsigned count, size_t pieces, worker_piece *work, void *state);

#endif
