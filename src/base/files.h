/* Reading and writing files so that nothing already written is lost.
 *
 * A file is written beside its place and renamed, so a reader sees the old or the new one, never
 * a half. All functions return false (or null) with `*why` set to an errno value. */
#ifndef BASE_FILES_H
#define BASE_FILES_H

#include "base/arena.h"

#include <stdint.h>

enum {
    FILE_BYTES_MOST = 16 * 1024 * 1024
}; /* a recipe, table or picture larger than this is refused */

/* Reads the regular file at `path` whole into the arena, terminated. Refuses what is no regular
 * file (devices, pipes: EINVAL) and what is larger than FILE_BYTES_MOST (EFBIG). */
bool file_read(arena *a, const char *path, span *bytes, int *why);

/* The same for a file of up to `most` bytes. */
bool file_read_up_to(arena *a, const char *path, size_t most, span *bytes, int *why);

/* Writes `bytes` at `path`, making missing parent folders. When the file there already holds
 * these bytes it is left alone, its time too. */
bool file_write(const char *path, span bytes, int *why);

/* The same in pieces, for what is larger than memory should be: begin (-1: it can't be), go on as
 * often as there are pieces, finish. Only the last step puts it in its place, and only when all
 * was `good`; else what was written is removed. */
int file_begin(const char *path, int *why);
bool file_go_on(int begun, span bytes, int *why);
bool file_finish(int begun, const char *path, bool good, int *why);

/* Replaces the file at `path`, which somebody keeps by hand, so that nothing of it can be lost: it
 * must still hold `was` (ESTALE when not; a file that is not there holds nothing); its mode and
 * owner are kept, a link stays a link; `bytes` have reached the disk, and were read back, before
 * they take its place. */
bool file_replace(const char *path, span was, span bytes, int *why);

/* True for the name of a file that was being written ("page.html.new-123"); `*of` is then the name
 * it was to have. Only a program that was killed leaves one. */
bool file_is_unfinished(span name, span *of);

/* Removes the unfinished ones of the file at `path`. Nobody may be writing it. */
void file_clear_unfinished(const char *path);

/* Copies the regular file at `from` to `to`, as file_write writes. */
bool file_copy(const char *from, const char *to, int *why);

/* What the system says of a file that changes when its content does; all 0 where there is none. */
typedef struct {
    int64_t bytes, written_ns, changed_ns; /* ns since 1970; changed: content, name or mode */
    uint64_t number;                       /* its inode */
} file_stamp;

/* The stamp of the regular file at `path` (a link is followed); false when there is none. */
bool file_stamp_of(const char *path, file_stamp *out);

/* The same for `path` inside the folder open as `folder` (see folder_open). */
bool file_stamp_at(int folder, const char *path, file_stamp *out);

bool file_stamps_equal(const file_stamp *a, const file_stamp *b);

/* The time by the clock that stamps files, in ns since 1970. What happens to a file later has a
 * stamp that is not older. */
int64_t file_clock_ns(void);

typedef struct {
    const char *name; /* in the arena; relative to the folder listed */
    file_stamp stamp; /* when it was listed */
} file_entry;

typedef struct {
    file_entry *items;
    size_t count, capacity;
} file_list;

/* Lists regular files in the folder `path` whose names end in `suffix` (null: all), in byte order
 * of their names; names that begin with a dot and links that lead out of the folder are left out.
 * A folder that is not there gives an empty list and true. */
bool file_list_folder(arena *a, const char *path, const char *suffix, file_list *out, int *why);

/* Makes the folder `path` and its missing parents. */
bool folder_make(const char *path, int *why);

/* The folder `path` open for file_stamp_at, which finds files faster so; -1 when there is none.
 * The caller closes it with folder_close. */
int folder_open(const char *path);
void folder_close(int folder);

bool file_exists(const char *path);
bool folder_exists(const char *path);

/* `folder`/`name` in the arena; just `name` when folder is empty or null. */
char *path_join(arena *a, const char *folder, const char *name);

/* The folder part of `path` ("." when it has none), in the arena. */
char *path_folder(arena *a, const char *path);

/* The whole path that `path` leads to, links followed; null when it leads nowhere. The caller frees
 * it. */
char *path_real(const char *path);

/* True when what `path` leads to, links followed, stands below `folder`. */
bool path_leads_inside(const char *folder, const char *path);

/* The last part of `path`; borrows. */
const char *path_name(const char *path);

/* True for a relative path of plain parts: no leading slash, no "..", no backslash, no empty or
 * dot-led part. What content may name. */
bool path_is_plain(span path);

#endif
