/* Which recipes and pictures need no work: their input, all they depend on, and their files are as
 * an earlier build left them. */
#ifndef PUBLISH_UNCHANGED_H
#define PUBLISH_UNCHANGED_H

#include "base/names.h"
#include "publish/ground.h"
#include "publish/outputs.h"

/* What is compared with; constant, shared by the workers. */
typedef struct {
    const record *earlier; /* null: there is none to be trusted, and everything is made */
    ground_change change;
    bool common_changed; /* or the recipes can't be told one by one: all are made again */
    const site_folder *folder;
    const names *slugs; /* of recipes: which file, the first in order, has each */
    names redrawn;      /* pictures whose files are called otherwise than before, or are gone */
    names baked;        /* slugs of recipes that have trials */
} comparison;

/* Notes that the files of the picture `now` are others than those of `was` (either may be null), if
 * so: recipes that show it are made again; where a trial shows it, all are. */
void comparison_note_picture(comparison *with, const made *was, const made *now);

/* Compares the ground `now` with that of `earlier` (null: there is none). In `a`. */
comparison comparison_of(arena *a, const record *earlier, const ground *now,
                         const site_folder *folder, const names *slugs);

/* True when nothing has to be done for the recipe file `file`, of which the earlier record keeps
 * `was` (null: nothing). `*stays` is then what the next record keeps of it, its stamps brought up
 * to date, in to->home. */
bool recipe_stays(const comparison *with, const made *was, const file_entry *file,
                  const outputs *to, made *stays);

/* The same for a picture. */
bool picture_stays(const comparison *with, const made *was, const file_entry *file,
                   const outputs *to, made *stays);

#endif
