/* A machine that fails on request: preloaded into crumbnote, it makes the nth call of one kind
 * fail, or ends the program there as a power cut would.
 *
 *   FAULT=CALL:N:WHAT     the Nth CALL (from 1); N+ is the Nth and all after it
 *       WHAT is an errno name, `short` (a read or write of half of what was asked), `kill-before`
 *       or `kill-after`
 *   FAULT_COUNTS=FILE     how often each call was made, written there at the end: "write 31"
 *   FAULT_SHUFFLE=SEED    folders are listed in an order that hangs on SEED
 *   FAULT_IN=NAME         the program that fails (crumbnote); children of another name do not
 *
 * Writes to standard output and error are not counted: what is said must be heard. */
#define _GNU_SOURCE
#include <dirent.h>
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <signal.h>
#include <spawn.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

/* clang-format off */
#define CALLS(X)                                                                                   \
    X(open) X(read) X(write) X(close) X(stat) X(fsync) X(rename) X(mkdir) X(rmdir) X(unlink)       \
    X(link) X(symlink) X(chmod) X(flock) X(opendir) X(readdir) X(mmap) X(thread) X(spawn)          \
    X(malloc)
/* clang-format on */

#define NUMBER_OF(name) CALL_##name,
enum { CALLS(NUMBER_OF) CALL_COUNT };
#define NAME_OF(name) #name,
static const char *const call_names[] = {CALLS(NAME_OF)};

static const struct {
    const char *name;
    int value;
} errors[] = {{"ENOSPC", ENOSPC}, {"EIO", EIO},       {"EINTR", EINTR}, {"EMFILE", EMFILE},
              {"ENOENT", ENOENT}, {"EACCES", EACCES}, {"EROFS", EROFS}, {"ENOMEM", ENOMEM},
              {"EAGAIN", EAGAIN}, {"EDQUOT", EDQUOT}, {"EXDEV", EXDEV}, {"EINVAL", EINVAL}};

enum { SHORT = -1, KILL_BEFORE = -2, KILL_AFTER = -3, FINE = 0 };

static atomic_long counted[CALL_COUNT];
static int faulty = CALL_COUNT; /* the call that fails */
static long from;
static bool and_after, armed;
static int what;
static unsigned shuffle;

static int what_of(const char *word) {
    for (size_t i = 0; i < sizeof errors / sizeof errors[0]; i++)
        if (strcmp(word, errors[i].name) == 0)
            return errors[i].value;
    if (strcmp(word, "short") == 0)
        return SHORT;
    return strcmp(word, "kill-after") == 0 ? KILL_AFTER : KILL_BEFORE;
}

static void read_fault(const char *asked) {
    char call[16] = "", word[16] = "", plus[2] = "";
    if (sscanf(asked, "%15[a-z]:%ld%1[+]:%15s", call, &from, plus, word) != 4)
        sscanf(asked, "%15[a-z]:%ld:%15s", call, &from, word);
    and_after = plus[0] == '+';
    what = what_of(word);
    for (int i = 0; i < CALL_COUNT; i++)
        if (strcmp(call, call_names[i]) == 0)
            faulty = i;
    if (faulty == CALL_COUNT || !word[0]) {
        fprintf(stderr, "FAULT=%s can't be read\n", asked);
        _exit(125);
    }
}

__attribute__((constructor)) static void begin(void) {
    const char *asked = getenv("FAULT"), *seed = getenv("FAULT_SHUFFLE"), *in = getenv("FAULT_IN");
    if (strcmp(program_invocation_short_name, in ? in : "crumbnote") != 0)
        return;
    if (asked)
        read_fault(asked);
    if (seed)
        shuffle = (unsigned)atoi(seed);
    armed = true;
}

__attribute__((destructor)) static void end(void) {
    const char *path = getenv("FAULT_COUNTS");
    bool wanted = armed && path;
    armed = false;
    FILE *to = wanted ? fopen(path, "w") : NULL;
    for (int i = 0; to && i < CALL_COUNT; i++)
        fprintf(to, "%s %ld\n", call_names[i], (long)counted[i]);
    if (to)
        fclose(to);
}

/* What is to become of this call: FINE, SHORT, KILL_AFTER, or the errno value it fails with. */
static int fate(int call) {
    if (!armed)
        return FINE;
    long number = atomic_fetch_add(&counted[call], 1) + 1;
    if (call != faulty || number < from || (number > from && !and_after))
        return FINE;
    if (what == KILL_BEFORE)
        kill(getpid(), SIGKILL);
    return what;
}

static bool fails(int fate_of) {
    if (fate_of > 0)
        errno = fate_of;
    return fate_of > 0;
}

static void after(int fate_of) {
    if (fate_of == KILL_AFTER)
        kill(getpid(), SIGKILL);
}

/* Defines NAME as the next definition of it, unless the fault says otherwise. */
#define WRAP(call, type, bad, name, declared, given)                                               \
    type name declared {                                                                           \
        static type(*real) declared;                                                               \
        if (!real)                                                                                 \
            *(void **)&real = dlsym(RTLD_NEXT, #name);                                             \
        int now = fate(CALL_##call);                                                               \
        if (fails(now))                                                                            \
            return bad;                                                                            \
        type result = real given;                                                                  \
        after(now);                                                                                \
        return result;                                                                             \
    }

WRAP(stat, int, -1, stat, (const char *path, struct stat *out), (path, out))
WRAP(stat, int, -1, lstat, (const char *path, struct stat *out), (path, out))
WRAP(stat, int, -1, fstat, (int fd, struct stat *out), (fd, out))
WRAP(stat, int, -1, fstatat, (int fd, const char *path, struct stat *out, int flags),
     (fd, path, out, flags))

/* Linux lets go of the descriptor whatever it says: one that stayed would keep a pipe open. */
static int let_go(int fd) {
    static int (*real)(int);
    if (!real)
        *(void **)&real = dlsym(RTLD_NEXT, "close");
    return real(fd);
}

int close(int fd) {
    int now = fate(CALL_close), result = let_go(fd);
    after(now);
    return fails(now) ? -1 : result;
}

WRAP(fsync, int, -1, fsync, (int fd), (fd))
WRAP(fsync, int, -1, syncfs, (int fd), (fd))
WRAP(rename, int, -1, rename, (const char *a, const char *b), (a, b))
WRAP(rename, int, -1, renameat, (int d, const char *a, int e, const char *b), (d, a, e, b))
WRAP(rename, int, -1, renameat2, (int d, const char *a, int e, const char *b, unsigned flags),
     (d, a, e, b, flags))
WRAP(mkdir, int, -1, mkdir, (const char *path, mode_t mode), (path, mode))
WRAP(mkdir, char *, NULL, mkdtemp, (char *path), (path))
WRAP(rmdir, int, -1, rmdir, (const char *path), (path))
WRAP(unlink, int, -1, unlink, (const char *path), (path))
WRAP(unlink, int, -1, unlinkat, (int fd, const char *path, int flags), (fd, path, flags))
WRAP(link, int, -1, link, (const char *a, const char *b), (a, b))
WRAP(symlink, int, -1, symlinkat, (const char *a, int fd, const char *b), (a, fd, b))
WRAP(chmod, int, -1, chmod, (const char *path, mode_t mode), (path, mode))
WRAP(chmod, int, -1, fchmod, (int fd, mode_t mode), (fd, mode))
WRAP(flock, int, -1, flock, (int fd, int how), (fd, how))
WRAP(opendir, DIR *, NULL, opendir, (const char *path), (path))
WRAP(mmap, void *, MAP_FAILED, mmap, (void *at, size_t n, int how, int flags, int fd, off_t off),
     (at, n, how, flags, fd, off))
WRAP(thread, int, errno, pthread_create,
     (pthread_t * thread, const pthread_attr_t *how, void *(*work)(void *), void *with),
     (thread, how, work, with))
WRAP(spawn, int, errno, posix_spawn,
     (pid_t * child, const char *path, const posix_spawn_file_actions_t *actions,
      const posix_spawnattr_t *how, char *const words[], char *const env[]),
     (child, path, actions, how, words, env))

static size_t cut(int now, size_t size) {
    return now == SHORT && size > 1 ? size / 2 : size;
}

ssize_t write(int fd, const void *bytes, size_t size) {
    static ssize_t (*real)(int, const void *, size_t);
    if (!real)
        *(void **)&real = dlsym(RTLD_NEXT, "write");
    int now = fd > STDERR_FILENO ? fate(CALL_write) : FINE;
    if (fails(now))
        return -1;
    /* A program that is killed there may have written a part. */
    ssize_t wrote = real(fd, bytes, now == KILL_AFTER ? (size + 1) / 2 : cut(now, size));
    after(now);
    return wrote;
}

ssize_t read(int fd, void *bytes, size_t size) {
    static ssize_t (*real)(int, void *, size_t);
    if (!real)
        *(void **)&real = dlsym(RTLD_NEXT, "read");
    int now = fate(CALL_read);
    return fails(now) ? -1 : real(fd, bytes, cut(now, size));
}

ssize_t __read_chk(int fd, void *bytes, size_t size, size_t room);
ssize_t __read_chk(int fd, void *bytes, size_t size, size_t room) {
    if (size > room)
        abort();
    return read(fd, bytes, size);
}

int open(const char *path, int flags, ...) {
    static int (*real)(const char *, int, ...);
    if (!real)
        *(void **)&real = dlsym(RTLD_NEXT, "open");
    va_list more;
    va_start(more, flags);
    mode_t mode = flags & O_CREAT ? va_arg(more, mode_t) : 0;
    va_end(more);
    int now = fate(CALL_open);
    if (fails(now))
        return -1;
    int fd = real(path, flags, mode);
    after(now);
    return fd;
}

/* -- memory ---------------------------------------------------------------------------------- */

/* glibc's own, since finding the next definition would ask for memory. */
extern void *__libc_malloc(size_t), *__libc_calloc(size_t, size_t), *__libc_realloc(void *, size_t);
extern void __libc_free(void *); /* of those: the sanitizers have another */

#ifndef WITHOUT_MEMORY
void *malloc(size_t size) {
    return fails(fate(CALL_malloc)) ? NULL : __libc_malloc(size);
}

void *calloc(size_t count, size_t size) {
    return fails(fate(CALL_malloc)) ? NULL : __libc_calloc(count, size);
}

void *realloc(void *old, size_t size) {
    return fails(fate(CALL_malloc)) ? NULL : __libc_realloc(old, size);
}
#endif

/* -- folders --------------------------------------------------------------------------------- */

/* Entries of one folder, kept until it is closed, handed out from `next` on in another order. */
typedef struct listing {
    DIR *of;
    struct dirent *items;
    size_t count, next;
    struct listing *more;
} listing;

static listing *open_listings;
static pthread_mutex_t listings = PTHREAD_MUTEX_INITIALIZER;

static struct dirent *real_readdir(DIR *of) {
    static struct dirent *(*real)(DIR *);
    if (!real)
        *(void **)&real = dlsym(RTLD_NEXT, "readdir");
    return real(of);
}

static listing *list_all(DIR *of) {
    listing *all = __libc_calloc(1, sizeof *all);
    all->of = of;
    for (struct dirent *entry; (entry = real_readdir(of)) != NULL;) {
        all->items = __libc_realloc(all->items, (all->count + 1) * sizeof *entry);
        all->items[all->count++] = *entry;
    }
    unsigned state = shuffle;
    for (size_t i = all->count; i > 1; i--) {
        size_t k = (size_t)rand_r(&state) % i;
        struct dirent kept = all->items[k];
        all->items[k] = all->items[i - 1];
        all->items[i - 1] = kept;
    }
    return all;
}

static struct dirent *shuffled_readdir(DIR *of) {
    pthread_mutex_lock(&listings);
    listing *all = open_listings;
    while (all && all->of != of)
        all = all->more;
    if (!all) {
        all = list_all(of);
        all->more = open_listings;
        open_listings = all;
    }
    struct dirent *entry = all->next < all->count ? &all->items[all->next++] : NULL;
    pthread_mutex_unlock(&listings);
    return entry;
}

struct dirent *readdir(DIR *of) {
    int now = fate(CALL_readdir);
    if (fails(now))
        return NULL;
    return shuffle ? shuffled_readdir(of) : real_readdir(of);
}

int closedir(DIR *of) {
    static int (*real)(DIR *);
    if (!real)
        *(void **)&real = dlsym(RTLD_NEXT, "closedir");
    pthread_mutex_lock(&listings);
    for (listing **at = &open_listings; *at; at = &(*at)->more)
        if ((*at)->of == of) {
            listing *gone = *at;
            *at = gone->more;
            __libc_free(gone->items);
            __libc_free(gone);
            break;
        }
    pthread_mutex_unlock(&listings);
    return real(of);
}
