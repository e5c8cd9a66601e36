/* Durations as schema.org pages state them. */
#include "checks.h"

#include "draft/duration.h"

static void reads_minutes(void **state) {
    (void)state;
    static const struct {
        const char *written;
        double minutes;
    } rows[] = {
        {"PT1H30M", 90},   /* schema.org/Recipe, example: cookTime "PT1H" and its like */
        {"PT20M", 20},     /* schema.org/prepTime, "in ISO 8601 duration format" */
        {"P4DT12H", 6480}, /* ISO 8601-1, 5.5.2: days and hours */
        {"P2W", 20160},    /* ISO 8601-1, 5.5.2.3: weeks */
        {"PT0.5H", 30},    /* a decimal fraction of the lowest part */
        {"PT0,5H", 30},    /* the standard prefers the comma */
        {"PT90M", 90},
        {"PT5400S", 90},
        {"P0Y0M0DT0H35M0.000S", 35},
        {"P1D", 1440},
        {"pt15m", 15},
        {" PT5M ", 5},
        {"PT0M", 0},
        {"20 minutes", 20},
        {"15 mins", 15},
        {"15 min.", 15},
        {"1 hour and 10 minutes", 70},
        {"1 hr, 5 min", 65},
        {"1h 20m", 80},
        {"2 days", 2880},
        {"1.5 hours", 90},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        double minutes = -1;
        if (!duration_read(span_of(rows[i].written), &minutes))
            fail_msg("%s: not read", rows[i].written);
        same_number(rows[i].written, minutes, rows[i].minutes, 1e-6);
    }
}

static void refuses_what_has_no_length(void **state) {
    (void)state;
    static const char *const rows[] = {
        "",
        "P",
        "PT",
        "20",
        "P1M",
        "P1Y",
        "-PT5M",
        "PT-5M",
        "PT+5M",
        "PT5",
        "PTM",
        "PT5M5H",
        "PT5M5M",
        "P5M2H",
        "overnight",
        "20-25 min",
        "about 20",
        "PT1HX",
        "1 minute 1 hour",
        "20 apples",
        "minutes 20",
        "PT1H30M x",
        "PT1e9H",
        "P1H",
        "PT1D",
        "10 min or so",
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        double minutes = -1;
        bool read = duration_read(span_of(rows[i]), &minutes);
        if (read)
            fail_msg("%s: read as %g", rows[i], minutes);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_minutes),
        cmocka_unit_test(refuses_what_has_no_length),
    };
    return cmocka_run_group_tests_name("duration", tests, NULL, NULL);
}
