/* The record of what was built: it lies in the output folder and lets the next build do only what
 * changed.
 *
 *     input  recipes/x.md     stamp, digest  ->  its files: stamp, digest   and its row
 *     input  pictures/y.jpg   stamp, digest  ->  its file
 *     all rows and tables                    ->  home, lists, ingredient pages, search index, …
 *     ground  for each ingredient, what her pantry and her rules say of it
 *
 * The rows let the pages that need all recipes be made without reading the unchanged ones. A
 * record that is missing, cut short, damaged or of another format is as good as none: everything
 * is made again, and nothing is deleted, since only files that a record names ever are. */
#ifndef PUBLISH_RECORD_H
#define PUBLISH_RECORD_H

#include "base/digest.h"
#include "publish/written.h"
#include "site/row.h"

#define RECORD_NAME ".crumbnote-record"

/* What was made of one input file. */
typedef struct {
    const char *name; /* inside recipes/ or pictures/ */
    file_stamp stamp; /* of the input, when it was listed */
    digest content;   /* of its bytes */
    digest bakes;     /* of the trials of this recipe */
    bool troubled;    /* looked at each time: its problems are told */
    bool shows;       /* its words show pictures */
    bool asks_all;    /* its own swaps may name any ingredient */
    written_files files;
    digest listed;         /* of what the pages that need all recipes show of it */
    const recipe_row *row; /* null: not on the site, or a picture */
} made;

typedef struct {
    made *items; /* sorted by name */
    size_t count, capacity;
} made_list;

/* What the site's own files say of one ingredient, in the order of the pantry. */
typedef struct {
    digest figures; /* her entry; 0: the reference's */
    digest rules;   /* her rules that replace it, trials that replace what is like it */
} standing;

typedef struct {
    digest program;     /* who wrote it */
    digest common;      /* what every page depends on */
    digest whole;       /* what the pages of all recipes depend on, rows included */
    int64_t started_ns; /* by file_clock_ns: inputs changed since may differ from what was read */
    int64_t settled_ns; /* outputs changed since were changed by somebody else */
    const standing *ground;
    size_t ground_count;
    made_list recipes, pictures;
    written_files files; /* of the pages that need all recipes, and the theme's */
} record;

/* Reads the record in the output folder `folder` into `a`. False when there is none to be
 * trusted; `*why` (may be null) is then 0, or says why the machine can't read the one that is
 * there. When another program than `program` wrote it, the recipes come without their rows. */
bool record_read(arena *a, const char *folder, digest program, record *out, int *why);

/* Writes it, beside and renamed. */
bool record_write(const record *of, const char *folder, int *why);

/* What was made of the input `name`, or null. */
const made *made_find(const made_list *list, const char *name);

/* True when both have the same stamps, so that a record need not be written anew for them. */
bool made_equal(const made *now, const made *was);

#endif
