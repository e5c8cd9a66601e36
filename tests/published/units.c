#include "checks.h"

#include "measure/amount.h"
#include "measure/units.h"

/* The size of one unit as read from its written name: grams of a mass, millilitres of a volume. */
static double size_of(const char *written, cup_standard cups) {
    size_t used = 0;
    const unit *in = unit_read(span_of(written), &used);
    if (!in || used != strlen(written))
        fail_msg("%s is no unit", written);
    return in->sort == UNIT_MASS ? in->size : unit_ml(in, cups);
}

static void units_are_those_of_the_handbooks(void **state) {
    (void)state;
    static const struct {
        const char *unit;
        double size, within; /* g or mL; half the last digit that the source prints */
        const char *source;
    } rows[] = {
        {"ounce", 28.349523125, 0, "NIST Handbook 44, appendix C: avoirdupois ounce, exact"},
        {"pound", 453.59237, 0, "NIST Handbook 44, appendix C: avoirdupois pound, exact"},
        {"oz", 28.34952, 5e-6, "NIST SP 811, appendix B.8 (from memory)"},
        {"lb", 453.5924, 5e-5, "NIST SP 811, appendix B.8 (from memory)"},
        {"fluid ounce", 29.57353, 5e-6, "NIST Handbook 44, appendix C"},
        {"fl oz", 29.57353, 5e-6, "NIST SP 811, appendix B.8 (from memory)"},
        {"cup", 237, 0.5, "NIST Handbook 44, appendix C"},
        {"cup", 236.5882, 5e-5, "NIST SP 811, appendix B.8 (from memory)"},
        {"tablespoon", 14.78676, 5e-6, "NIST SP 811, appendix B.8 (from memory)"},
        {"teaspoon", 4.928922, 5e-7, "NIST SP 811, appendix B.8 (from memory)"},
        {"pint", 473.1765, 5e-5, "NIST SP 811, appendix B.8 (from memory)"},
        {"quart", 946.3529, 5e-5, "NIST SP 811, appendix B.8 (from memory)"},
        {"gallon", 3785.411784, 0, "NIST Handbook 44, appendix C: 231 cubic inches, exact"},
        {"imperial fluid ounce", 28.41306, 5e-6, "NIST SP 811, appendix B.8 (from memory)"},
        {"imperial gallon", 4546.09, 0, "UK Weights and Measures Act 1985 (from memory), exact"},
        {"imperial pint", 568.26125, 0, "an eighth of the imperial gallon"},
        {"litre", 1000, 0, "SI"},
        {"dl", 100, 0, "SI"},
        {"kg", 1000, 0, "SI"},
        {"mg", 0.001, 0, "SI"},
    };
    for (size_t i = 0; i < COUNT(rows); i++)
        same_number(rows[i].unit, size_of(rows[i].unit, CUPS_US), rows[i].size, rows[i].within);
}

/* A US gallon is 231 cubic inches and an inch 2.54 cm (NIST Handbook 44, appendix C). */
static void the_gallon_is_231_cubic_inches(void **state) {
    (void)state;
    same_number("gallon", size_of("gallon", CUPS_US), 231 * 2.54 * 2.54 * 2.54, 0);
}

static void units_divide_as_published(void **state) {
    (void)state;
    static const struct {
        const char *larger;
        double count;
        const char *smaller;
    } rows[] = {/* NIST SP 430, household weights and measures */
                {"cup", 16, "tbsp"},
                {"cup", 48, "tsp"},
                {"cup", 8, "fl oz"},
                {"tbsp", 3, "tsp"},
                {"pint", 2, "cup"},
                {"pint", 16, "fl oz"},
                {"quart", 2, "pint"},
                {"quart", 4, "cup"},
                {"gallon", 4, "quart"},
                {"gallon", 16, "cup"},
                {"lb", 16, "oz"},
                {"fl oz", 2, "tbsp"},
                /* imperial, from memory: UK Weights and Measures Act 1985 */
                {"imperial gallon", 8, "imperial pint"},
                {"imperial pint", 20, "imperial fl oz"},
                {"imperial quart", 2, "imperial pint"}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_number(rows[i].larger, size_of(rows[i].larger, CUPS_US),
                    rows[i].count * size_of(rows[i].smaller, CUPS_US), 0);
}

static void labels_have_cups_of_their_own(void **state) {
    (void)state;
    static const struct {
        const char *unit;
        double ml;
    } rows[] = {/* 21 CFR 101.9(b)(5)(viii) */
                {"teaspoon", 5},
                {"tablespoon", 15},
                {"cup", 240},
                {"fluid ounce", 30}};
    for (size_t i = 0; i < COUNT(rows); i++)
        same_number(rows[i].unit, size_of(rows[i].unit, CUPS_US_LABEL), rows[i].ml, 0);
}

/* Whole measures, the amount read too. */
static void measures_come_to_what_is_published(void **state) {
    (void)state;
    static const struct {
        const char *measure;
        cup_standard cups;
        double size, within; /* g or mL */
        const char *source;
    } rows[] = {
        {"1/3 cup", CUPS_US, 78.8627455, 5e-8, "a third of NIST Handbook 44's cup"},
        {"2 tbsp", CUPS_US, 29.5735295625, 0, "NIST Handbook 44: two tablespoons, a fluid ounce"},
        {"2 tbsp", CUPS_AUSTRALIAN, 40, 0, "the Australian tablespoon is 20 mL: common practice"},
        {"2 tbsp", CUPS_METRIC, 30, 0, "the metric tablespoon is 15 mL: common practice"},
        {"1 cup", CUPS_METRIC, 250, 0, "the metric cup: common practice"},
        {"1 cup", CUPS_US_LABEL, 236.5882365 * 1.0144, 0.02, "ratio of label and customary cup"},
        {"8 oz", CUPS_US, 226.796185, 0, "NIST SP 811: half a pound"},
        {"1 lb", CUPS_METRIC, 453.59237, 0, "a weight knows no cup"},
        {"1/4 cup", CUPS_US, 60, 1, "NIST, kitchen equivalents: 60 mL, rounded for cooking"},
        {"1/3 cup", CUPS_US, 80, 1.5, "NIST, kitchen equivalents: 80 mL, rounded for cooking"},
        {"1 quart", CUPS_US, 950, 5, "NIST, kitchen equivalents: 950 mL, rounded for cooking"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        amount_range amount = {0, 0};
        span written = span_of(rows[i].measure);
        size_t took = amount_read(written, &amount);
        const char *in = written.at + took + 1;
        same_number(rows[i].measure, amount.low * size_of(in, rows[i].cups), rows[i].size,
                    rows[i].within);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(units_are_those_of_the_handbooks),
        cmocka_unit_test(the_gallon_is_231_cubic_inches),
        cmocka_unit_test(units_divide_as_published),
        cmocka_unit_test(labels_have_cups_of_their_own),
        cmocka_unit_test(measures_come_to_what_is_published),
    };
    return cmocka_run_group_tests_name("published units", tests, NULL, NULL);
}
