/* What the tests of reading share: problems as they are printed, compared with what is expected. */
#ifndef TESTS_READING_H
#define TESTS_READING_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/list.h"
#include "base/problems.h"

/* All of `found` as printed, in the order found; in the arena. */
static inline const char *printed(arena *a, const problems *found) {
    text all = TEXT_EMPTY;
    for (size_t i = 0; i < found->count; i++)
        problem_print(&found->items[i], &all);
    const char *copy = arena_copy(a, text_span(&all));
    text_free(&all);
    return copy;
}

/* Fails, naming the row, unless `got` is `expected`. */
static inline void expect_words(const char *row, const char *got, const char *expected) {
    if (!got || strcmp(got, expected) != 0)
        fail_msg("%s: got\n%s\nexpected\n%s", row, got ? got : "(null)", expected);
}

/* Fails, naming the row, unless the two are within a millionth of each other. */
static inline void expect_number(const char *row, double got, double expected) {
    double apart = got - expected, close = 1e-6 * (expected < 0 ? 1 - expected : 1 + expected);
    if (!(apart <= close && apart >= -close))
        fail_msg("%s: got %f, expected %f", row, got, expected);
}

#endif
