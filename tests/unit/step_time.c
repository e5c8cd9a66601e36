/* measure/step_time.h: what a step says of time, and what it does not mean by it. */
#include "checks.h"

#include "measure/step_time.h"

#include <math.h>

static void times_are_found(void **state) {
    (void)state;
    static const struct {
        const char *words, *time; /* null: none */
        double seconds;
    } rows[] = {
        {"Stand 5 minutes.", "5 minutes", 300},
        {"Bake 55 to 58 minutes, until", "55 to 58 minutes", 3300},
        {"bake 20\u201322 min", "20\u201322 min", 1200},
        {"cook 1 to 2 minutes more", "1 to 2 minutes", 60},
        {"Cool an hour.", "an hour", 3600},
        {"An hour later", "An hour", 3600},
        {"rest half an hour before kneading", "half an hour", 1800},
        {"an hour and a half", "an hour and a half", 5400},
        {"1 1/2 hours", "1 1/2 hours", 5400},
        {"for 1 hour and 20 minutes", "1 hour and 20 minutes", 4800},
        {"1 hour 20 minutes", "1 hour 20 minutes", 4800},
        {"two minutes", "two minutes", 120},
        {"stir a full minute and stand 20 minutes", "a full minute", 60},
        {"30 seconds to 1 minute", "30 seconds to 1 minute", 30},
        {"at least 2 hours", "2 hours", 7200},
        {"5 minutes and 2 hours", "5 minutes", 300},
        {"Backe ihn 55 bis 58 Minuten; dann", "55 bis 58 Minuten", 3300},
        {"eine halbe Stunde ruhen lassen", "eine halbe Stunde", 1800},
        {"1 Stunde und 20 Minuten", "1 Stunde und 20 Minuten", 4800},
        {"alle 5 Minuten", NULL, 0},
        {"zwei Minuten früher", NULL, 0},
        {"It keeps 2 days.", NULL, 0},
        {"keeps for 2 hours", NULL, 0},
        {"stir every 5 minutes", NULL, 0},
        {"within an hour", NULL, 0},
        {"2 minutes too long", NULL, 0},
        {"for the last 5 minutes", NULL, 0},
        {"5 minutes before the end", NULL, 0},
        {"ready in a minute", NULL, 0},
        {"every 5 minutes, 20 minutes in all", "20 minutes", 1200},
        {"Add a second egg", NULL, 0},
        {"5 minced cloves, 2 hourglasses", NULL, 0},
        {"a 10-minute rest", NULL, 0},
        {"0 minutes", NULL, 0},
        {"30 hours", NULL, 0},
        {"Mix 5 eggs", NULL, 0},
        {"", NULL, 0},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        span words = span_of(rows[i].words);
        step_time found;
        bool is = step_time_next(words, 0, &found);
        if (is != (rows[i].time != NULL))
            fail_msg("%s: %s", rows[i].words, is ? "a time" : "no time");
        if (!is)
            continue;
        span time = span_first(span_from(words, found.at), found.length);
        if (!span_is(time, rows[i].time) || fabs(found.seconds - rows[i].seconds) > 0.01)
            fail_msg("%s: %.*s, %g s", rows[i].words, SPAN(time), found.seconds);
    }
}

static void one_follows_the_other(void **state) {
    (void)state;
    span words = span_of("stir a full minute and stand 20 minutes");
    step_time found;
    assert_true(step_time_next(words, 0, &found));
    assert_true(step_time_next(words, found.at + found.length, &found));
    assert_true(span_is(span_from(words, found.at), "20 minutes"));
    assert_false(step_time_next(words, found.at + found.length, &found));
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(times_are_found),
                                       cmocka_unit_test(one_follows_the_other)};
    return cmocka_run_group_tests_name("step_time", tests, NULL, NULL);
}
