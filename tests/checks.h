/* What the test programs share: cmocka with its headers, and comparisons that name their row. */
#ifndef TESTS_CHECKS_H
#define TESTS_CHECKS_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/list.h"

#include <math.h>

static inline void same_span(const char *row, span got, const char *wanted) {
    if (!span_is(got, wanted))
        fail_msg("%s: got \"%.*s\", wanted \"%s\"", row, SPAN(got), wanted);
}

static inline void same_text(const char *row, const char *got, const char *wanted) {
    if (strcmp(got, wanted) != 0)
        fail_msg("%s: got \"%s\", wanted \"%s\"", row, got, wanted);
}

/* Equal within `most`, or a hair when `most` is 0. */
static inline void same_number(const char *row, double got, double wanted, double most) {
    if (!(fabs(got - wanted) <= most + 1e-9 * fabs(wanted)))
        fail_msg("%s: got %.10g, wanted %.10g", row, got, wanted);
}

static inline void same_count(const char *row, size_t got, size_t wanted) {
    if (got != wanted)
        fail_msg("%s: got %zu, wanted %zu", row, got, wanted);
}

#endif
