/* Any bytes as a table of rules and as a log of trials, with the reference pantry. */
#include "fuzz/fuzz_shelf.h"

#include "read/rules.h"
#include "read/trials.h"

#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    swap_rules all = {0};
    trials log = {0};
    span bytes = {(const char *)data, size};
    rules_read(a, "fuzz.yaml", bytes, SAID_BY_OWN_RULE, fuzz_shelf(), &all, &found);
    trials_read(a, "fuzz.yaml", bytes, fuzz_shelf(), &log, &found);
    for (size_t i = 0; i < all.count; i++)
        if (all.items[i].replace.count < 1 || all.items[i].replace.count > 2 ||
            all.items[i].with.count < 1 ||
            all.items[i].replace.count + all.items[i].with.count > 3 || !(all.items[i].ratio > 0) ||
            !all.items[i].basis)
            abort();
    arena_free(a);
    return 0;
}
