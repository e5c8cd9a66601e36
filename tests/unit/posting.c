/* site/posting.h: sets of recipes as lists of steps or as bits, read back as the page's script
 * does.
 */
#include "support/cmocka_rows.h"

#include "site/posting.h"

static unsigned value_of(char digit) {
    static const char digits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    const char *at = strchr(digits, digit);
    assert_non_null(at);
    return (unsigned)(at - digits);
}

/* Reads a posting back into `out`; how many. */
static size_t read_back(span of, uint32_t out[]) {
    size_t count = 0;
    if (of.at[0] == '"') {
        for (size_t i = 1; i + 1 < of.length; i++)
            for (unsigned bit = 0, bits = value_of(of.at[i]); bits; bits >>= 1, bit++)
                if (bits & 1)
                    out[count++] = (uint32_t)((i - 1) * 6 + bit);
        return count;
    }
    uint32_t step = 0, at = 0;
    bool any = false;
    for (size_t i = 1; i < of.length; i++) {
        if (of.at[i] >= '0' && of.at[i] <= '9') {
            step = step * 10 + (uint32_t)(of.at[i] - '0');
            any = true;
            continue;
        }
        if (any)
            out[count++] = at += step;
        step = 0;
        any = false;
    }
    return count;
}

static void few_are_steps_and_many_are_bits(void **state) {
    (void)state;
    static const struct {
        const char *name;
        uint32_t ids[8];
        size_t count;
        const char *written;
    } rows[] = {{"none", {0}, 0, "[]"},
                {"one", {0}, 1, "\"B\""},
                {"one far out", {70000}, 1, "[70000]"},
                {"steps", {3, 7, 8000}, 3, "[3,4,7993]"},
                {"bits, the lowest first", {0, 5, 6, 7, 8}, 5, "\"hH\""},
                {"all of six", {0, 1, 2, 3, 4, 5}, 6, "\"/\""}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        text t = TEXT_EMPTY;
        posting_add(&t, rows[i].ids, rows[i].count);
        expect_text(rows[i].name, t.bytes, rows[i].written);
        text_free(&t);
    }
}

static void what_is_written_reads_back(void **state) {
    (void)state;
    enum { SETS = 200, ROOM = 3000 };
    uint64_t dice = 88172645463325252u; /* xorshift: Marsaglia, J. Stat. Software 8(14), 2003 */
    static uint32_t ids[ROOM], back[ROOM];
    for (size_t set = 0; set < SETS; set++) {
        size_t count = 0;
        unsigned one_in = 1 + (unsigned)(set % 40) * (unsigned)(set % 40);
        for (uint32_t i = 0; i < ROOM; i++) {
            dice ^= dice << 13, dice ^= dice >> 7, dice ^= dice << 17;
            if (dice % one_in == 0)
                ids[count++] = i;
        }
        text t = TEXT_EMPTY;
        posting_add(&t, ids, count);
        if (read_back(text_span(&t), back) != count || memcmp(ids, back, count * sizeof *ids) != 0)
            fail_msg("set %zu, one in %u, is not what it was", set, one_in);
        text_free(&t);
    }
}

static void columns_have_digits_enough(void **state) {
    (void)state;
    static const struct {
        uint64_t most;
        unsigned width;
    } rows[] = {{0, 1}, {63, 1}, {64, 2}, {4095, 2}, {4096, 3}, {1ull << 40, 7}};
    for (size_t i = 0; i < COUNT(rows); i++)
        assert_int_equal(posting_digits_for(rows[i].most), rows[i].width);
    text t = TEXT_EMPTY;
    posting_add_digits(&t, 67, 2);   /* 3 + 64 x 1 */
    posting_add_digits(&t, 9999, 2); /* the largest that fits */
    expect_text("digits", t.bytes, "DB//");
    text_free(&t);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(few_are_steps_and_many_are_bits),
        cmocka_unit_test(what_is_written_reads_back),
        cmocka_unit_test(columns_have_digits_enough),
    };
    return cmocka_run_group_tests_name("posting", tests, NULL, NULL);
}
