/* crumbnote-pictures: makes the pictures of a site, apart from the program that makes the pages.
 *
 * Decoding files that somebody else wrote is what goes wrong in libraries of pictures; here each
 * is decoded by a process of its own, with little memory and time, and only by decoders that
 * libvips holds to be safe for untrusted files. And the main program starts without loading them.
 *
 *     crumbnote-pictures FOLDER FROM STEM [FROM STEM]…
 *
 * A photograph FROM is written upright, in sRGB, without its metadata (place, camera, preview), at
 * up to three widths, never enlarged, each as FOLDER/STEM-<width>x<height>.webp and .jpg; an SVG
 * drawing as it is, as STEM-<width>x<height>.svg. For each, in order, a line on standard output:
 * "fine" and its sizes ("fine 320x240 800x600"), or what is wrong with it, or "machine" and what is
 * wrong with the machine. Exit code 0, or 2 for wrong use.
 */
#include "pictures/drawing.h"
#include "pictures/photograph.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

enum { MEMORY_MOST_MIB = 1536, SECONDS_MOST = 60, TOLD_MOST = 400 };

/* The address sanitizer maps more memory than any limit allows. */
#ifdef __SANITIZE_ADDRESS__
enum { LIMITS_MEMORY = 0 };
#else
enum { LIMITS_MEMORY = 1 };
#endif

static void limit(int what, rlim_t most) {
    struct rlimit is = {most, most};
    (void)setrlimit(what, &is);
}

/* In the child: makes the picture and says on `tell` its sizes, or what is wrong. */
static void make_one(const char *folder, const char *from, const char *stem, int tell) {
    text told = TEXT_EMPTY;
    if (LIMITS_MEMORY)
        limit(RLIMIT_AS, (rlim_t)MEMORY_MOST_MIB << 20);
    limit(RLIMIT_CPU, SECONDS_MOST);
    limit(RLIMIT_CORE, 0);
    size_t length = strlen(from);
    bool drawn = length > 4 && strcasecmp(from + length - 4, ".svg") == 0;
    picture_outcome outcome = drawn ? drawing_make(folder, from, stem, &told)
                                    : photograph_make(folder, from, stem, &told);
    bool heard = write(tell, told.bytes ? told.bytes : "", told.length) >= 0;
    _exit(heard ? (int)outcome : PICTURE_MACHINE_FAILED);
}

/* What the child said, line ends made blanks. */
static void hear(int from, char *said, size_t size) {
    size_t length = 0;
    ssize_t got;
    while (length + 1 < size && ((got = read(from, said + length, size - 1 - length)) > 0 ||
                                 (got < 0 && errno == EINTR)))
        length += got > 0 ? (size_t)got : 0;
    said[length] = '\0';
    for (char *c = said; *c; c++)
        if ((unsigned char)*c < ' ')
            *c = ' ';
}

static const char *lead_of(int status) {
    return status == PICTURE_MADE ? "fine" : status == PICTURE_REFUSED ? "" : "machine ";
}

static void make_apart(const char *folder, const char *from, const char *stem) {
    int ends[2], status = 0;
    char said[TOLD_MOST] = "";
    if (pipe(ends) != 0) {
        puts("machine no pipe could be opened");
        return;
    }
    fflush(stdout);
    pid_t child = fork();
    if (child == 0)
        make_one(folder, from, stem, ends[1]);
    close(ends[1]);
    hear(ends[0], said, sizeof said);
    close(ends[0]);
    if (child < 0 || waitpid(child, &status, 0) < 0)
        puts("machine no process could be started");
    else if (WIFSIGNALED(status))
        puts("decoding it took too much memory or time, or failed in the middle");
    else
        printf("%s%s\n", lead_of(WEXITSTATUS(status)), said);
}

int main(int count, char **words) {
    enum { FIRST = 2, OF_EACH = 2 };
    if (count < FIRST || (count - FIRST) % OF_EACH != 0) {
        fputs("usage: crumbnote-pictures FOLDER FROM STEM [FROM STEM]…\n", stderr);
        return 2;
    }
    for (int i = FIRST; i < count; i += OF_EACH)
        make_apart(words[1], words[i], words[i + 1]);
    return fflush(stdout) == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
