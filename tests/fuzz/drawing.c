/* Any bytes as an SVG drawing: what is taken is copied as it is, and its size is said. */
#include "pictures/drawing.h"
#include "base/files.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* A folder of this process. */
static const char *folder(void) {
    static char path[64];
    if (!path[0]) {
        snprintf(path, sizeof path, "/dev/shm/drawing-XXXXXX");
        if (!mkdtemp(path))
            abort();
    }
    return path;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    const char *from = path_join(a, folder(), "from.svg");
    text told = TEXT_EMPTY;
    int why;
    unsigned width, height;
    span bytes = {(const char *)data, size}, copied;
    if (!file_write(from, bytes, &why))
        abort();
    picture_outcome outcome = drawing_make(folder(), from, "it", &told);
    if (outcome == PICTURE_MADE) {
        if (sscanf(told.bytes, " %ux%u", &width, &height) != 2)
            abort();
        const char *to = arena_format(a, "%s/it-%ux%u.svg", folder(), width, height);
        if (!file_read(a, to, &copied, &why) || !span_equal(copied, bytes))
            abort();
        unlink(to);
    } else if (outcome != PICTURE_REFUSED || !told.length) {
        abort();
    }
    text_free(&told);
    arena_free(a);
    return 0;
}
