/* Pages in the Western encoding that came before UTF-8: windows-1252, which the Encoding Standard
 * (encoding.spec.whatwg.org) takes for iso-8859-1 and latin1 too. */
#ifndef DRAFT_WESTERN_H
#define DRAFT_WESTERN_H

#include "base/arena.h"

/* True when the page says so itself near its beginning: <meta charset="windows-1252">. */
bool western_is_declared(arena *a, span page);

/* `page` as UTF-8, in the arena. Bytes that stand for nothing become U+FFFD. */
span western_to_utf8(arena *a, span page);

#endif
