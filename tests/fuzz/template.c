/* Any bytes as a template of a theme, filled from a view with values of every sort. One that is
 * taken is filled, or ended soon where it calls itself without end. */
#include "site/template.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static view *sample(arena *a) {
    view *page = view_object(a);
    view_put_text(a, page, "title", "Rye & <b>seed</b>");
    view_put_bool(a, page, "yes", true);
    view_put_number(a, page, "grams", 46.5, 1);
    view *loaf = view_put_object(a, page, "loaf");
    view_put_text(a, loaf, "name", "tin");
    view *lines = view_put_list(a, page, "lines");
    view_put_text(a, lines, NULL, "a");
    view_put_text(a, lines, NULL, "b");
    view_put_text(a, view_put_object(a, lines, NULL), "name", "c");
    return page;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    template_set *set = template_set_new(a);
    span bytes = {(const char *)data, size};
    text page = TEXT_EMPTY;
    bool taken = template_add(set, "it", "theme/it.mustache", bytes, &found);
    (void)template_add(set, "part", "theme/part.mustache", bytes, &found);
    template_check(set, &found);
    if (taken != template_has(set, "it") && found.errors == 0)
        abort();
    if (taken)
        (void)template_fill(set, "it", sample(a), &page);
    if (page.length > TEMPLATE_BYTES_MOST + size)
        abort();
    if (!taken && found.errors == 0)
        abort();
    text_free(&page);
    arena_free(a);
    return 0;
}
