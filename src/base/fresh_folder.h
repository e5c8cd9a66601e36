/* A folder, or a file, that comes to be whole or not at all.
 *
 * Files are written to a folder beside the place (or inside it, where an empty folder is there
 * already) and moved in at the end, over nothing:
 *
 *     fresh_folder made;
 *     if (fresh_folder_begin(a, "galley", &made, &why)) {
 *         bool good = fresh_folder_write(&made, "site.yaml", bytes, &why) && ...;
 *         good = good && fresh_folder_finish(&made, &why);
 *         if (!good)
 *             fresh_folder_abandon(&made);
 *     }
 *
 * All functions return false with `*why` set to an errno value. */
#ifndef BASE_FRESH_FOLDER_H
#define BASE_FRESH_FOLDER_H

#include "base/files.h"

typedef struct {
    arena *home;      /* borrowed: all strings live there */
    const char *path; /* the folder to be */
    const char *stage;
    bool exists;     /* an empty folder is at `path` already */
    file_list names; /* written so far */
} fresh_folder;

/* Begins a folder at `path`, making its missing parents. ENOTEMPTY when a folder with anything in
 * it is there, EEXIST when something else is. Nothing is at `path` yet after that. */
bool fresh_folder_begin(arena *home, const char *path, fresh_folder *out, int *why);

/* Writes a file `name` (a relative path, its folders are made). One that begins with "#!" may be
 * run. */
bool fresh_folder_write(fresh_folder *to, const char *name, span bytes, int *why);

/* Puts all that was written in its place. On failure nothing of it is there. */
bool fresh_folder_finish(fresh_folder *from, int *why);

/* Removes what was written; after fresh_folder_begin or any function that failed. */
void fresh_folder_abandon(fresh_folder *from);

/* Writes `bytes` as a new file at `path`, whole or not at all, making missing parent folders.
 * EEXIST when anything is there. */
bool file_write_new(const char *path, span bytes, int *why);

#endif
