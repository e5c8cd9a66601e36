#include "base/mapped.h"

#include <errno.h>
#include <fcntl.h>
#include <stdint.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

static bool map(int fd, span *bytes) {
    struct stat about;
    if (fstat(fd, &about) != 0)
        return false;
    if (!S_ISREG(about.st_mode)) {
        errno = EINVAL;
        return false;
    }
    *bytes = (span){"", (size_t)about.st_size};
    if (bytes->length == 0) /* nothing can't be mapped */
        return true;
    void *at = mmap(NULL, bytes->length, PROT_READ, MAP_PRIVATE, fd, 0);
    bytes->at = at;
    return at != MAP_FAILED;
}

bool file_map(const char *path, span *bytes, int *why) {
    int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    bool good = fd >= 0 && map(fd, bytes);
    *why = errno;
    if (fd >= 0)
        close(fd);
    return good;
}

void file_unmap(span bytes) {
    if (bytes.length)
        munmap((void *)(uintptr_t)bytes.at, bytes.length);
}
