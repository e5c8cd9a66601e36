/* The folder that releases live in. A web server serves `live` in it.
 *
 *     DIR/live -> release-0007       a symbolic link; renaming another over it is the switch
 *     DIR/release-0007/              what readers see
 *     DIR/release-0006/              an earlier one, kept
 *     DIR/release-0008.making/       being made, or left by a crash
 *     DIR/release-0003.going/        being taken away, or left by a crash
 *
 * Numbers only grow, so that names sort without a clock. One above the live number was left by
 * going back (or by a crash just before the switch); it is never returned to, and goes before
 * the next release is made. A release lists its own files in MANIFEST_NAME, and only what is
 * listed there is ever deleted. One process at a time works on the folder: it holds a lock. */
#ifndef PUBLISH_RELEASE_FOLDER_H
#define PUBLISH_RELEASE_FOLDER_H

#include "base/folders.h"
#include "base/problems.h"

#define MANIFEST_NAME ".crumbnote-release"
#define LIVE_NAME     "live"

typedef struct {
    unsigned *items; /* numbers of whole releases, growing */
    size_t count, capacity;
} release_numbers;

typedef struct {
    arena *home; /* borrowed: what follows lives there */
    const char *path;
    int lock;        /* the open, locked folder */
    unsigned live;   /* the release that readers see; 0: none yet */
    unsigned newest; /* the highest number ever seen here, whole or not */
    release_numbers kept;
} release_folder;

/* Opens the folder at `path`, making it when `make`, and waits until no other release works on
 * it; `waiting` is called (once) when there is one. Clears away what a crash left. False, with a
 * problem, when that can't be done or `live` is not ours. The caller closes it. */
bool release_folder_open(arena *a, const char *path, bool make, void (*waiting)(void),
                         release_folder *out, problems *found);

/* Gives the lock back. */
void release_folder_close(release_folder *of);

/* "DIR/release-0007", and with `suffix` ".making" and the like; in the arena. */
char *release_path(const release_folder *of, unsigned number, const char *suffix);

/* The new, empty folder of the next release, for its maker alone; null with a problem. Its
 * number is `of->newest` afterwards. */
const char *release_begin(release_folder *of, problems *found);

/* Removes the folder release_begin made. */
void release_abandon(release_folder *of);

/* Writes the manifest of the folder release_begin made and puts all of it on the disk; then it
 * counts as whole. */
bool release_complete(release_folder *of, problems *found);

/* Points `live` at release `number`: one rename, seen whole or not at all. */
bool release_switch(release_folder *of, unsigned number, problems *found);

/* The newest whole release before the live one; 0 when there is none. */
unsigned release_before(const release_folder *of);

/* Takes away the releases above the live one, and of those before it all but the `keep` newest.
 * Files that are in no manifest stay, with a warning. Returns how many releases went. */
size_t release_prune(release_folder *of, size_t keep, problems *found);

/* The files of release `number` by its manifest; empty when it has none. */
file_list release_files(arena *a, const release_folder *of, unsigned number);

#endif
