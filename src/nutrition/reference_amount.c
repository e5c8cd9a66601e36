#include "nutrition/reference_amount.h"

#include "base/number.h"

static const struct {
    const char *kind;
    double grams;
} rows[] = {
    {"griddle cake", 110}, /* pancakes; from memory */
    {"waffle", 85},        /* from memory */
    {"muffin", 110},       /* 55 before 2016 */
    {"cake", 80},          /* medium weight: chemically leavened */
    {"cupcake", 80},       {"brownie", 40},   {"cookie", 30}, /* from memory */
    {"bar", 40},  /* grain-based bars, filled or not; from memory */
    {"loaf", 50}, /* breads other than sweet quick breads */
    {"bread", 50},         {"flatbread", 50}, {"cracker", 30}, /* eaten as snacks; from memory */
    {"granola", 60}, /* ready-to-eat cereals of 43 g a cup and more; from memory */
};

double reference_amount_g(const char *kind) {
    for (size_t i = 0; i < COUNT(rows); i++)
        if (kind && kind[0] == rows[i].kind[0] && strcmp(kind, rows[i].kind) == 0)
            return rows[i].grams;
    return 0;
}

/* Pie crust: "the allowable declaration closest to an 8 square inch surface area"; 101.12(b), from
 * memory. A sixth of an 8-inch crust and an eighth of a 9-inch one come to that. */
#define CRUST_CM2 (8 * 2.54 * 2.54)
#define PI        3.14159265358979

static double pan_bottom_cm2(const pan *of) {
    if (of->shape == PAN_ROUND)
        return PI * of->length_cm * of->length_cm / 4;
    if (of->shape == PAN_SQUARE || of->shape == PAN_RECTANGLE)
        return of->length_cm * (of->width_cm > 0 ? of->width_cm : of->length_cm);
    return 0;
}

double reference_amount_of(const recipe *of) {
    if (!span_is(span_of(of->kind), "crust"))
        return reference_amount_g(of->kind);
    double bottom_cm2 = pan_bottom_cm2(&of->baked_in);
    return bottom_cm2 > 0 ? of->baked_g * CRUST_CM2 / bottom_cm2 : 0;
}

const message *reference_amount_hint(arena *a, const recipe *of, double portion_g) {
    double usual_g = reference_amount_of(of);
    if (usual_g <= 0 || portion_g <= 0 || (portion_g >= usual_g / 2 && portion_g <= usual_g * 2))
        return NULL;
    return MESSAGE(a, FAR_FROM_REFERENCE_AMOUNT, value_number(portion_g, 0, "g"),
                   value_number(usual_g, 0, "g"));
}
