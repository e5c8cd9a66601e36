/* Any bytes as what a recipe is drafted from. What is drafted is a recipe file: its front matter is
 * read, without a problem but of what the pantry lacks. */
#include "fuzz/fuzz_shelf.h"

#include "draft/draft.h"
#include "read/recipe.h"

#include <stdio.h>
#include <stdlib.h>

/* The errors a draft may have: names and measures the pantry has not, and no line at all. */
static const char *const expected[] = {"no ingredient is called", "can't weigh",
                                       "the list of ingredients is empty", "no oven bakes"};

static bool is_expected(const problem *one) {
    if (one->level == PROBLEM_WARNING)
        return true;
    for (size_t i = 0; i < COUNT(expected); i++)
        if (strstr(one->message, expected[i]))
            return true;
    return false;
}

static void check_promises(arena *a, const draft *made) {
    problems found = problems_in(a);
    if (!made->title || !made->slug[0] || strchr(made->slug, '/'))
        abort();
    (void)recipe_read(a, "recipes/draft.md", span_of(made->recipe), fuzz_shelf(), CUPS_US, &found);
    for (size_t i = 0; i < found.count; i++)
        if (!is_expected(&found.items[i])) {
            fprintf(stderr, "%s\n%s\n", found.items[i].message, made->recipe);
            abort();
        }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
    arena *a = arena_new();
    problems found = problems_in(a);
    draft_request asked = {"fuzz", {(const char *)data, size}, fuzz_shelf(), CUPS_US, 1};
    draft made;
    if (draft_make(a, &asked, &made, &found))
        check_promises(a, &made);
    else if (found.errors == 0)
        abort();
    arena_free(a);
    return 0;
}
