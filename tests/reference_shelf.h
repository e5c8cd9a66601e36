/* The reference pantry as the program reads it, for tests that look at its figures. The group's
 * state is the `pantry *`, read once. */
#ifndef TESTS_REFERENCE_SHELF_H
#define TESTS_REFERENCE_SHELF_H

#include "checks.h"

#include "read/pantry_file.h"
#include "reference/reference.h"

/* Group setup: reads the reference pantry; what is wrong with it is printed and fails the
 * group. */
static int shelf_up(void **state) {
    arena *a = arena_new();
    pantry *shelf = ARENA_NEW(a, pantry);
    problems found = problems_in(a);
    *shelf = pantry_in(a);
    for (size_t i = 0; i < reference_pantry_count; i++)
        pantry_file_read(shelf, reference_pantry[i].name, reference_pantry[i].bytes, false, &found);
    for (size_t i = 0; i < found.count; i++)
        print_error("%s:%u: %s\n", found.items[i].at.file, found.items[i].at.line,
                    found.items[i].message);
    *state = shelf;
    return found.count > 0;
}

/* Group teardown. */
static int shelf_down(void **state) {
    const pantry *shelf = *state;
    arena_free(shelf->home);
    return 0;
}

/* The ingredient called `name`; the test fails when there is none. */
static inline const ingredient *on_shelf(const pantry *shelf, const char *name) {
    const ingredient *found = pantry_find(shelf, span_of(name), shelf->home);
    if (!found)
        fail_msg("%s: not in the pantry", name);
    return found;
}

#endif
