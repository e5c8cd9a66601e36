/* Any bytes as the brief of a new recipe, with the reference pantry; what can be read is solved. */
#include "fuzz/fuzz_shelf.h"

#include "read/formula_brief.h"

#include <math.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    const brief_setting with = {fuzz_shelf(), CUPS_US, ENERGY_BY_SOURCE};
    const build_norms norms = {.portion_g = {50, 80, 120}};
    const formula_brief *of =
        formula_brief_read(a, "fuzz.yaml", (span){(const char *)data, size}, &with, &found);
    if (!of && !found.errors)
        abort();
    if (of && of->parts.count <= 8) {
        formula_answer by = formula_solve(a, of, &norms);
        for (size_t i = 0; by.found && i < of->parts.count; i++)
            if (!(by.grams[i] >= of->parts.items[i].least_g - 1e-3))
                abort();
    }
    arena_free(a);
    return 0;
}
