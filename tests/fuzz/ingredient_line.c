/* Reads any bytes as an ingredient line, weighs it and finds a kitchen measure for the weight.
 * The first byte picks the cups. A line that is not read leaves a problem. */
#include "fuzz/fuzz_shelf.h"

#include "measure/kitchen.h"
#include "measure/weigh.h"

#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    if (size == 0)
        return 0;
    arena *a = arena_new();
    problems found = problems_in(a);
    located written = {{(const char *)data + 1, size - 1}, {"line", 1, 1}};
    cup_standard cups = (cup_standard)(data[0] % (CUPS_AUSTRALIAN + 1));
    recipe_line line;
    weight got;
    kitchen_measure measure;
    bool good = line_read(a, written, fuzz_shelf(), &line, &found);
    if (!good && found.errors == 0)
        abort();
    if (good && weigh_line(&line, cups, &got, &found)) {
        if (!(got.low_g <= got.grams && got.grams <= got.high_g))
            abort();
        if (line.what)
            (void)kitchen_measure_of(a, line.what, got.grams, cups, &measure);
    }
    arena_free(a);
    return 0;
}
