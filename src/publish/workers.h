/* How many threads work at a time. */
#ifndef PUBLISH_WORKERS_H
#define PUBLISH_WORKERS_H

#include <stddef.h>

enum { WORKERS_MOST = 64 };

/* `asked`, or with 0 as many as there are processors, eight at the most; never more than there
 * are `pieces` of work, nor than WORKERS_MOST. */
unsigned workers_for(unsigned asked, size_t pieces);

#endif
