/* Reads JSON text (through jansson) into a view. */
#ifndef SITE_VIEW_JSON_H
#define SITE_VIEW_JSON_H

#include "base/problems.h"
#include "site/view.h"

/* The view of the JSON document `bytes`, copied into `a`; null, with a problem that has line and
 * column, when it is no JSON. */
view *view_read_json(arena *a, const char *file, span bytes, problems *found);

#endif
