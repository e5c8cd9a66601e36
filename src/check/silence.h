/* What an author allows, with her reason: a comment on the line, or alone on the line above.
 *
 *     portion: 3 rounds   # crumbnote: allow portion because the last two are for the cook
 *     <!-- crumbnote: allow claim-figure because measured by a laboratory -->
 *
 * In Markdown the comment may also stand at the end of the line; no page shows it. Several names
 * are parted by commas. Only checks with a name can be allowed, never what can't be read. */
#ifndef CHECK_SILENCE_H
#define CHECK_SILENCE_H

#include "base/problems.h"

/* Takes out of `found` the problems of `file`, whose bytes are `bytes`, that a comment in it
 * allows. A comment without a reason or with an unknown name allows nothing and is a warning; so
 * is one that nothing is found for, when `all_checked` says that every check was run. `a` is for
 * scratch. */
void silence_apply(arena *a, const char *file, span bytes, bool all_checked, problems *found);

#endif
