/* base/format.h: the same as vsnprintf, which is the standard's own (C11 7.21.6.12). */
#include "support/cmocka_rows.h"

#include "base/format.h"

#include <limits.h>
#include <stdio.h>
#include <string.h>

static size_t ours(char *room, size_t size, const char *format, ...) {
    va_list values;
    va_start(values, format);
    size_t length = format_into(room, size, format, values);
    va_end(values);
    return length;
}

/* Each format with some values, into rooms of every size from none to more than enough. */
#define EXPECT_SAME(...)                                                                           \
    do {                                                                                           \
        char want[128], got[128];                                                                  \
        size_t length = (size_t)snprintf(want, sizeof want, __VA_ARGS__);                          \
        for (size_t size = 0; size <= length + 2; size++) {                                        \
            snprintf(want, size, __VA_ARGS__);                                                     \
            memset(got, '~', sizeof got);                                                          \
            assert_int_equal(ours(got, size, __VA_ARGS__), length);                                \
            if (size)                                                                              \
                expect_text(#__VA_ARGS__, got, want);                                              \
            assert_int_equal(got[size], '~'); /* nothing behind the room is touched */             \
        }                                                                                          \
    } while (0)

static void our_own_conversions(void **state) {
    (void)state;
    EXPECT_SAME("%s", "plain words");
    EXPECT_SAME("no conversion");
    EXPECT_SAME("%s (%s), %s", "46 g", "1/2 cup", "");
    EXPECT_SAME("%u %u %u", 0u, 7u, UINT_MAX);
    EXPECT_SAME("%d %d %d", 0, INT_MIN, INT_MAX);
    EXPECT_SAME("%zu of %zu", (size_t)0, SIZE_MAX);
    EXPECT_SAME("%c%c", 'a', '}');
    EXPECT_SAME("100 %% of %s", "it");
    EXPECT_SAME("%.*s|%.*s|%.*s", 3, "cocoa", 0, "oat", 9, "rye");
}

static void all_others(void **state) {
    (void)state;
    EXPECT_SAME("%04u %02d", 7u, 3);
    EXPECT_SAME("\\u%04x", 0x1fu);
    EXPECT_SAME("%s and %-9s|", "two", "wide");
    EXPECT_SAME("%.4s", "2026-05-02");
    EXPECT_SAME("%ld %llu", LONG_MIN, ULLONG_MAX);
    EXPECT_SAME("%*s", 4, "x");
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(our_own_conversions),
                                       cmocka_unit_test(all_others)};
    return cmocka_run_group_tests_name("format", tests, NULL, NULL);
}
