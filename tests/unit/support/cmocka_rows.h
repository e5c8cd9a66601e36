/* cmocka with the headers that it wants first, and what table-driven tests need. */
#ifndef UNIT_SUPPORT_CMOCKA_ROWS_H
#define UNIT_SUPPORT_CMOCKA_ROWS_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "base/list.h"

/* Fails, naming the row, unless `got` is within `within` of `wanted`. */
static inline void expect_near(const char *row, double got, double wanted, double within) {
    if (!(fabs(got - wanted) <= within))
        fail_msg("%s: got %.6f, wanted %.6f", row, got, wanted);
}

/* Fails, naming the row, unless the texts are equal; null equals null only. */
static inline void expect_text(const char *row, const char *got, const char *wanted) {
    bool same = got && wanted ? strcmp(got, wanted) == 0 : got == wanted;
    if (!same)
        fail_msg("%s: got \"%s\", wanted \"%s\"", row, got ? got : "(none)",
                 wanted ? wanted : "(none)");
}

/* Fails, naming the row, unless `got` is `wanted`. */
static inline void expect_bool(const char *row, bool got, bool wanted) {
    if (got != wanted)
        fail_msg("%s: got %s", row, got ? "yes" : "no");
}

/* Fails, naming the row, unless `part` stands in `whole`. */
static inline void expect_holds_text(const char *row, const char *whole, const char *part) {
    if (!whole || !strstr(whole, part))
        fail_msg("%s: \"%s\" does not hold \"%s\"", row, whole ? whole : "(none)", part);
}

#endif
