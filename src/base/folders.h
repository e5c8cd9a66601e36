/* Whole folders: what is in them, linking, removing, making sure that they are on the disk.
 *
 * Symbolic links are never followed. All functions return false with `*why` set to an errno
 * value. */
#ifndef BASE_FOLDERS_H
#define BASE_FOLDERS_H

#include "base/files.h"

/* All regular files below `path`, relative to it, in byte order; those led by a dot too. Copies
 * into `a`. */
bool folder_walk(arena *a, const char *path, file_list *out, int *why);

/* Names of all that is directly in `path`, folders and links too, in byte order. Copies. */
bool folder_entries(arena *a, const char *path, file_list *out, int *why);

/* Removes the folder or file at `path` with everything below it. One that is not there is fine. */
bool folder_remove(const char *path, int *why);

/* Removes the empty folders at and below `path`; true when `path` itself is gone. */
bool folder_remove_empty(const char *path);

/* Returns when all that was written below `path` is on the disk. */
bool folder_sync(const char *path, int *why);

/* Makes `to` another name of the file at `from`, with missing parent folders. */
bool file_link(const char *from, const char *to, int *why);

/* True when both names are of one file. */
bool file_is_same(const char *one, const char *other);

#endif
