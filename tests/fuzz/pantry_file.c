/* Any bytes as a pantry file over the reference. Entries that are kept keep their promises. */
#include "fuzz/fuzz_shelf.h"

#include <math.h>
#include <stdlib.h>

static void check_entry(const ingredient *of) {
    for (nutrient i = 0; i < NUTRIENT_COUNT; i++)
        if (!isfinite(of->per_100_g.of[i]) || of->per_100_g.of[i] < 0)
            abort();
    for (size_t i = 0; i < of->measures.count; i++)
        if (!(of->measures.items[i].grams.low > 0))
            abort();
    if (!of->name[0] || !of->slug[0] || !of->plural || !of->kind)
        abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    pantry shelf = pantry_in(a);
    pantry_file_read(&shelf, "fuzz.yaml", (span){(const char *)data, size}, false, &found);
    pantry_file_read(&shelf, "fuzz-2.yaml", (span){(const char *)data, size}, true, &found);
    for (size_t i = 0; i < shelf.count; i++)
        check_entry(shelf.items[i]);
    arena_free(a);
    return 0;
}
