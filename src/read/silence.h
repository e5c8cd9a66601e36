/* What an author allows, with her reason: a comment on the line, or alone on the line above.
 *
 *     portion: 3 rounds   # crumbnote: allow portion because the last two are for the cook
 *     <!-- crumbnote: allow claim-figure because measured by a laboratory -->
 *
 * In Markdown the comment may also stand at the end of the line; no page shows it. Several names
 * are parted by commas. Only checks with a name can be allowed, never what can't be read. */
#ifndef READ_SILENCE_H
#define READ_SILENCE_H

#include "base/problems.h"
#include "read/site_folder.h"

/* What comments are held to: the names of all checks, and whether each was run, so that a comment
 * that nothing is found for is one too many. */
typedef struct {
    const char *const *names;
    size_t count;
    bool all_run;
} silence_known;

/* Takes out of `found` the problems of `file`, whose bytes are `bytes`, that a comment in it
 * allows. A comment without a reason allows nothing. With `known`, warns of that, of unknown names,
 * and of comments too many; null: not. `a` is for scratch. */
void silence_apply(arena *a, const char *file, span bytes, const silence_known *known,
                   problems *found);

/* The same for the files of `site` that are read once: settings, tables and pages. Recipes are
 * for who reads them. */
void silence_site(const site_folder *site, const silence_known *known, problems *found);

#endif
