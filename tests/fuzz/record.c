/* A record of an earlier build with any bytes written over a part of it, and its digest made to
 * fit: it is read as a whole, or as none. The first two bytes say where. */
#include "publish/record.h"
#include "base/files.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const char *folder(void) {
    static char path[64];
    if (!path[0]) {
        snprintf(path, sizeof path, "/dev/shm/record-XXXXXX");
        if (!mkdtemp(path))
            abort();
    }
    return path;
}

/* The bytes of a small record. */
static span whole_record(arena *a) {
    written_file files[] = {{.path = "index.html", .content = 7}};
    recipe_row row = {.slug = "rounds", .title = "Rounds", .kind = "griddle cake"};
    made recipes[] = {{.name = "rounds.md", .files = {files, 1, 1}, .row = &row}};
    record of = {.program = 1, .recipes = {recipes, 1, 1}, .files = {files, 1, 1}};
    span bytes;
    int why;
    if (!record_write(&of, folder(), &why) ||
        !file_read(a, path_join(a, folder(), RECORD_NAME), &bytes, &why))
        abort();
    return bytes;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    static arena *home;
    static span original;
    if (!home) {
        home = arena_new();
        original = whole_record(home);
    }
    if (size < 2)
        return 0;
    arena *a = arena_new();
    record got;
    int why;
    size_t body = original.length - sizeof(digest);
    size_t at = (data[0] | (size_t)data[1] << 8) % body;
    size_t length = size - 2 < body - at ? size - 2 : body - at;
    char *bytes = arena_copy(a, original);
    memcpy(bytes + at, data + 2, length);
    digest fitting = digest_of((span){bytes, body});
    memcpy(bytes + body, &fitting, sizeof fitting);
    if (!file_write(path_join(a, folder(), RECORD_NAME), (span){bytes, original.length}, &why))
        abort();
    if (record_read(a, folder(), 1, &got, NULL))
        for (size_t i = 0; i < got.recipes.count; i++)
            if (!got.recipes.items[i].name ||
                (got.recipes.items[i].row && !made_find(&got.recipes, got.recipes.items[i].name)))
                abort();
    arena_free(a);
    return 0;
}
