/* Any bytes as a file of bakes: what is read of them names ingredients and a verdict. */
#include "fuzz/fuzz_shelf.h"

#include "read/trials.h"

#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    trials log = {0};
    trials_read(a, "trials/fuzz.yaml", (span){(const char *)data, size}, fuzz_shelf(), &log,
                &found);
    for (size_t i = 0; i < log.count; i++)
        if (!log.items[i].replaced.what || !log.items[i].with.what || !log.items[i].date)
            abort();
    arena_free(a);
    return 0;
}
