/* Any bytes as a recipe, with the reference pantry. A recipe that is read keeps its promises. */
#include "fuzz/fuzz_shelf.h"

#include "read/recipe.h"
#include "read/recipe_lines.h"

#include <math.h>
#include <stdlib.h>

static void check_promises(const recipe *r) {
    bool kept = r->title && r->slug[0] && r->lines.count && r->lines.count <= RECIPE_LINES_MOST &&
                r->makes.count > 0 && r->portion.count > 0 && r->portions >= 0.999 &&
                isfinite(r->batch_g) && r->batch_g >= 0 && r->bake_loss >= 0 && r->bake_loss < 1;
    size_t lines = 0;
    for (size_t i = 0; i < r->groups.count; i++)
        lines += r->groups.items[i].count;
    if (!kept || lines != r->lines.count)
        abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    const recipe *r = recipe_read(a, "recipes/fuzz.md", (span){(const char *)data, size},
                                  fuzz_shelf(), CUPS_US, &found);
    if (r)
        check_promises(r);
    arena_free(a);
    return 0;
}
