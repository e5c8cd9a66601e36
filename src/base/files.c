#include "base/files.h"

#include "base/list.h"
#include "base/memory.h"
#include "base/text.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

static bool failed(int *why) {
    *why = errno;
    return false;
}

static bool refuse(int *why, int reason) {
    *why = reason;
    return false;
}

/* Reads up to `size` bytes, going on after interruptions and short reads. -1 on failure. */
static ssize_t read_fully(int fd, char *into, size_t size) {
    size_t got = 0;
    while (got < size) {
        ssize_t n = read(fd, into + got, size - got);
        if (n < 0 && errno == EINTR)
            continue;
        if (n < 0)
            return -1;
        if (n == 0)
            break;
        got += (size_t)n;
    }
    return (ssize_t)got;
}

static bool write_fully(int fd, span bytes) {
    while (bytes.length) {
        ssize_t n = write(fd, bytes.at, bytes.length);
        if (n < 0 && errno == EINTR)
            continue;
        if (n < 0)
            return false;
        bytes = span_from(bytes, (size_t)n);
    }
    return true;
}

/* Opens a regular file of up to `most` bytes for reading; never waits on a pipe. */
static int open_regular(const char *path, size_t most, struct stat *about, int *why) {
    int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (fd < 0) {
        *why = errno;
        return -1;
    }
    bool known = fstat(fd, about) == 0;
    int reason = errno;
    bool good = known && S_ISREG(about->st_mode);
    if (good && (size_t)about->st_size <= most)
        return fd;
    *why = good ? EFBIG : known ? EINVAL : reason;
    close(fd);
    return -1;
}

bool file_read(arena *a, const char *path, span *bytes, int *why) {
    return file_read_up_to(a, path, FILE_BYTES_MOST, bytes, why);
}

bool file_read_up_to(arena *a, const char *path, size_t most, span *bytes, int *why) {
    struct stat about;
    int fd = open_regular(path, most, &about, why);
    if (fd < 0)
        return false;
    size_t size = (size_t)about.st_size;
    char *room = arena_alloc(a, size + 1);
    ssize_t got = read_fully(fd, room, size);
    int reason = errno;
    close(fd);
    if (got < 0)
        return refuse(why, reason);
    *bytes = (span){room, (size_t)got};
    return true;
}

/* True when the file at `path` holds just `bytes`. */
static bool holds_already(const char *path, span bytes) {
    struct stat about;
    int why, fd = open_regular(path, SIZE_MAX, &about, &why);
    if (fd < 0)
        return false;
    bool same = (size_t)about.st_size == bytes.length;
    char chunk[16 * 1024];
    while (same && bytes.length) {
        ssize_t got =
            read_fully(fd, chunk, bytes.length < sizeof chunk ? bytes.length : sizeof chunk);
        same = got > 0 && memcmp(chunk, bytes.at, (size_t)got) == 0;
        if (same)
            bytes = span_from(bytes, (size_t)got);
    }
    close(fd);
    return same;
}

/* Opens `path` for writing, making its folder when that is what is missing. */
static int open_new(const char *path, int *why) {
    int flags = O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC | O_NOFOLLOW;
    int fd = open(path, flags, 0644);
    if (fd < 0 && errno == ENOENT) {
        arena *a = arena_new();
        bool made = folder_make(path_folder(a, path), why);
        arena_free(a);
        if (!made)
            return -1;
        fd = open(path, flags, 0644);
    }
    if (fd < 0)
        *why = errno;
    return fd;
}

static const char unfinished[] = ".new-";

/* Where what is to stand at `path` is written. */
static void add_beside(text *to, const char *path) {
    text_format(to, "%s%s%ld", path, unfinished, (long)getpid());
}

bool file_is_unfinished(span name, span *of) {
    size_t digits = 0;
    while (digits < name.length && isdigit((unsigned char)name.at[name.length - 1 - digits]))
        digits++;
    span before = span_first(name, name.length - digits);
    *of = span_first(name, before.length - strlen(unfinished));
    return digits && before.length > strlen(unfinished) && span_ends(before, unfinished);
}

void file_clear_unfinished(const char *path) {
    arena *a = arena_new();
    const char *folder = path_folder(a, path);
    DIR *listed = opendir(folder);
    struct dirent *entry;
    span of;
    while (listed && (entry = readdir(listed)) != NULL)
        if (file_is_unfinished(span_of(entry->d_name), &of) && span_is(of, path_name(path)))
            (void)unlink(path_join(a, folder, entry->d_name));
    if (listed)
        closedir(listed);
    arena_free(a);
}

int file_begin(const char *path, int *why) {
    text beside = TEXT_EMPTY;
    add_beside(&beside, path);
    int fd = open_new(beside.bytes, why);
    text_free(&beside);
    return fd;
}

bool file_go_on(int begun, span bytes, int *why) {
    return write_fully(begun, bytes) ? true : failed(why);
}

bool file_finish(int begun, const char *path, bool good, int *why) {
    text beside = TEXT_EMPTY;
    add_beside(&beside, path);
    if (close(begun) != 0 && good)
        good = failed(why);
    if (good && rename(beside.bytes, path) != 0)
        good = failed(why);
    if (!good)
        unlink(beside.bytes);
    text_free(&beside);
    return good;
}

bool file_write(const char *path, span bytes, int *why) {
    if (holds_already(path, bytes))
        return true;
    int begun = file_begin(path, why);
    return begun >= 0 && file_finish(begun, path, file_go_on(begun, bytes, why), why);
}

/* Writes `bytes` to the new file `beside`, with the mode and owner of `like` where there is one;
 * true when the disk has them. */
static bool write_safely(const char *beside, const struct stat *like, span bytes, int *why) {
    int fd = open_new(beside, why);
    if (fd < 0)
        return false;
    if (like && fchown(fd, like->st_uid, like->st_gid) != 0)
        errno = 0; /* only the superuser may give files away: then it is ours */
    bool good = (!like || fchmod(fd, like->st_mode & 07777) == 0) && write_fully(fd, bytes) &&
                fsync(fd) == 0;
    int reason = errno;
    if (close(fd) != 0 && good)
        return failed(why);
    if (!good)
        return refuse(why, reason);
    return holds_already(beside, bytes) ? true : refuse(why, EIO);
}

/* True when the file at `path` is as it was read: nothing, or just `was`. */
static bool is_as_it_was(const char *path, bool there, span was) {
    return there ? holds_already(path, was) : was.length == 0;
}

bool file_replace(const char *path, span was, span bytes, int *why) {
    struct stat about;
    char *real = path_real(path);
    bool there = real && stat(real, &about) == 0;
    const char *target = there ? real : path;
    text beside = TEXT_EMPTY;
    add_beside(&beside, target);
    bool good = write_safely(beside.bytes, there ? &about : NULL, bytes, why);
    if (good && !is_as_it_was(target, there, was))
        good = refuse(why, ESTALE);
    if (good && rename(beside.bytes, target) != 0)
        good = failed(why);
    if (!good)
        unlink(beside.bytes);
    text_free(&beside);
    free(real);
    return good;
}

bool file_copy(const char *from, const char *to, int *why) {
    arena *a = arena_new();
    span bytes;
    bool good = file_read(a, from, &bytes, why) && file_write(to, bytes, why);
    arena_free(a);
    return good;
}

static int64_t nanoseconds(struct timespec t) {
    return (int64_t)t.tv_sec * 1000000000 + t.tv_nsec;
}

static file_stamp stamp_of(const struct stat *about) {
    return (file_stamp){.bytes = about->st_size,
                        .written_ns = nanoseconds(about->st_mtim),
                        .changed_ns = nanoseconds(about->st_ctim),
                        .number = about->st_ino};
}

bool file_stamp_at(int folder, const char *path, file_stamp *out) {
    struct stat about;
    *out = (file_stamp){0};
    if (fstatat(folder, path, &about, 0) != 0 || !S_ISREG(about.st_mode))
        return false;
    *out = stamp_of(&about);
    return true;
}

bool file_stamp_of(const char *path, file_stamp *out) {
    return file_stamp_at(AT_FDCWD, path, out);
}

int folder_open(const char *path) {
    return open(path, O_PATH | O_DIRECTORY | O_CLOEXEC);
}

void folder_close(int folder) {
    if (folder >= 0)
        close(folder);
}

bool file_stamps_equal(const file_stamp *a, const file_stamp *b) {
    return a->bytes == b->bytes && a->written_ns == b->written_ns &&
           a->changed_ns == b->changed_ns && a->number == b->number;
}

/* The coarse clock: the one that file systems read, a few milliseconds a tick. */
int64_t file_clock_ns(void) {
    struct timespec now;
    return clock_gettime(CLOCK_REALTIME_COARSE, &now) == 0 ? nanoseconds(now) : 0;
}

static int compare_entries(const void *left, const void *right) {
    const file_entry *a = left, *b = right;
    return strcmp(a->name, b->name);
}

bool path_leads_inside(const char *folder, const char *path) {
    char *real = path_real(path), *home = path_real(folder);
    bool inside = real && home && span_begins(span_of(real), home) &&
                  (real[strlen(home)] == '/' || strcmp(home, "/") == 0);
    free(real);
    free(home);
    return inside;
}

/* A link's target is a regular file that stays inside `folder`. */
static bool link_stays_inside(const char *folder, const char *path, struct stat *about) {
    return path_leads_inside(folder, path) && stat(path, about) == 0 && S_ISREG(about->st_mode);
}

/* A regular file, or a link whose target stays inside `folder`. `*why`: the machine can't tell. */
static bool is_inside(DIR *listed, const char *folder, const char *name, file_stamp *stamp,
                      int *why) {
    struct stat about;
    if (fstatat(dirfd(listed), name, &about, AT_SYMLINK_NOFOLLOW) != 0) {
        *why = errno == ENOENT ? 0 : errno;
        return false;
    }
    bool inside = S_ISREG(about.st_mode);
    if (S_ISLNK(about.st_mode)) {
        arena *a = arena_new();
        inside = link_stays_inside(folder, path_join(a, folder, name), &about);
        arena_free(a);
    }
    *stamp = stamp_of(&about);
    return inside;
}

bool file_list_folder(arena *a, const char *path, const char *suffix, file_list *out, int *why) {
    *out = (file_list){0};
    DIR *folder = opendir(path);
    if (!folder)
        return errno == ENOENT ? true : failed(why);
    struct dirent *entry;
    int unknown = 0;
    while (errno = 0, !unknown && (entry = readdir(folder)) != NULL) {
        span name = span_of(entry->d_name);
        file_stamp stamp;
        if (name.at[0] == '.' || (suffix && !span_ends(name, suffix)))
            continue;
        if (is_inside(folder, path, entry->d_name, &stamp, &unknown))
            LIST_ADD(a, out, (file_entry){arena_copy(a, name), stamp});
    }
    int reason = unknown ? unknown : errno;
    closedir(folder);
    if (out->count > 1)
        qsort(out->items, out->count, sizeof out->items[0], compare_entries);
    return reason == 0 ? true : refuse(why, reason);
}

bool folder_make(const char *path, int *why) {
    if (mkdir(path, 0755) == 0)
        return true;
    if (errno == EEXIST)
        return folder_exists(path) ? true : refuse(why, ENOTDIR);
    if (errno != ENOENT)
        return failed(why);
    arena *a = arena_new();
    const char *parent = path_folder(a, path);
    *why = ENOENT;
    bool made = strcmp(parent, path) != 0 && folder_make(parent, why);
    arena_free(a);
    if (!made)
        return false;
    return mkdir(path, 0755) == 0 || errno == EEXIST ? true : failed(why);
}

bool file_exists(const char *path) {
    struct stat about;
    return stat(path, &about) == 0 && S_ISREG(about.st_mode);
}

bool folder_exists(const char *path) {
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

char *path_join(arena *a, const char *folder, const char *name) {
    if (!folder || !folder[0])
        return arena_copy(a, span_of(name));
    bool slash = folder[strlen(folder) - 1] == '/';
    return arena_format(a, "%s%s%s", folder, slash ? "" : "/", name);
}

char *path_folder(arena *a, const char *path) {
    const char *slash = strrchr(path, '/');
    if (!slash)
        return arena_copy(a, span_of("."));
    return arena_copy(a, slash == path ? span_of("/") : (span){path, (size_t)(slash - path)});
}

char *path_real(const char *path) {
    char *real = realpath(path, NULL);
    if (!real && errno == ENOMEM)
        memory_failed();
    return real;
}

const char *path_name(const char *path) {
    const char *slash = strrchr(path, '/');
    return slash ? slash + 1 : path;
}

static bool part_is_plain(span part) {
    return part.length > 0 && part.at[0] != '.' && !memchr(part.at, '\\', part.length) &&
           !memchr(part.at, '\0', part.length);
}

bool path_is_plain(span path) {
    if (path.length == 0)
        return false;
    for (;;) {
        size_t slash = span_find(path, "/");
        if (!part_is_plain(span_first(path, slash)))
            return false;
        if (slash == path.length)
            return true;
        path = span_from(path, slash + 1);
    }
}
