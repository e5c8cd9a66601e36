/* How long something takes: "PT1H30M", as ISO 8601 and schema.org have it, or "1 hour 30 min". */
#ifndef DRAFT_DURATION_H
#define DRAFT_DURATION_H

#include "base/span.h"

/* Reads the whole of `s` as minutes, 0 included. False when it can't be read: years and months
 * have no length in minutes, a bare number no unit, and a range no single length. */
bool duration_read(span s, double *minutes);

#endif
