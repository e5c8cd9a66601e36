/* Phrases that belong to no language's file: durations for programs, and counts on a terminal,
 * which speaks English. What pages say is in site/say.h. Everything is in the arena. */
#ifndef SITE_PHRASE_H
#define SITE_PHRASE_H

#include "base/arena.h"

/* "PT1H20M" (ISO 8601). */
char *phrase_minutes_iso(arena *a, double minutes);

/* "Griddle cake" from "griddle cake"; only ASCII letters change. */
char *phrase_capitalised(arena *a, const char *words);

/* "1 recipe", "3 recipes": `count` and the noun, an s added unless it is one. */
char *phrase_count(arena *a, size_t count, const char *noun);

#endif
