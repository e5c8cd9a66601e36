#include "publish/workers.h"

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
