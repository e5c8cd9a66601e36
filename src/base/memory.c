#include "base/memory.h"

#include <malloc.h>
#include <stdbool.h>
#include <unistd.h>

void *memory_get(size_t size) {
    void *room = malloc(size ? size : 1);
    if (!room)
        memory_failed();
    return room;
}

void *memory_get_array(size_t count, size_t size) {
    bool any = count && size;
    void *room = calloc(any ? count : 1, any ? size : 1);
    if (!room)
        memory_failed();
    return room;
}

void *memory_get_zeroed(size_t size) {
    return memory_get_array(1, size);
}

void *memory_resize(void *old, size_t size) {
    void *room = realloc(old, size ? size : 1);
    if (!room)
        memory_failed();
    return room;
}

void memory_keep_little(void) {
    enum { LARGE = 256 * 1024 };
    (void)mallopt(M_MMAP_THRESHOLD, LARGE); /* by itself it grows with what is freed */
}

_Noreturn void memory_failed(void) {
    static const char message[] =
        "crumbnote: error: this machine has no memory left for the work\n";
    /* write, not stdio: stdio may allocate. Nothing can be done if even this fails. */
    if (write(STDERR_FILENO, message, sizeof message - 1) < 0)
        _exit(3);
    _exit(3);
}
