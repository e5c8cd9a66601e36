/* The reference pantry, read once for all inputs of a fuzz target. */
#ifndef TESTS_FUZZ_SHELF_H
#define TESTS_FUZZ_SHELF_H

#include "read/pantry_file.h"
#include "reference/reference.h"

#include <stdint.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static inline const pantry *fuzz_shelf(void) {
    static pantry shelf;
    if (shelf.count == 0) {
        arena *home = arena_new(); /* lives as long as the fuzzer */
        problems found = problems_in(home);
        shelf = pantry_in(home);
        for (size_t i = 0; i < reference_pantry_count; i++)
            pantry_file_read(&shelf, reference_pantry[i].name, reference_pantry[i].bytes, false,
                             &found);
    }
    return &shelf;
}

#endif
