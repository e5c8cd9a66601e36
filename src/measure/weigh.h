/* Turns what a baker writes ("1/2 cup oat flour") into grams, with the range the kitchen can
 * really hit and where the conversion is from. Pure: reads the entry it is given, opens nothing. */
#ifndef MEASURE_WEIGH_H
#define MEASURE_WEIGH_H

#include "measure/line.h"

typedef enum {
    WEIGHT_UNKNOWN,  /* no way from the unit to grams */
    WEIGHT_NONE,     /* nothing to weigh: "to taste" */
    WEIGHT_WRITTEN,  /* the line gives a weight: 60 g, 2 oz */
    WEIGHT_AUTHOR,   /* the author's own weight in brackets */
    WEIGHT_MEASURED, /* through the pantry's household weight */
    WEIGHT_DENSITY   /* a volume through the cup weight */
} weight_way;

typedef struct {
    weight_way way;
    double grams, low_g, high_g; /* low and high: the written range and the measure's own */
    const char *source;          /* "USDA SR28 20132", "the author's own weight", "as written" */
} weight;

/* Weighs `line` with the site's cups. False when no weight can be had: a problem that names the
 * missing measure was added (none for an ingredient that is not in the pantry: reading the line
 * added that) and `*out` is WEIGHT_UNKNOWN. A line without amount ("to taste") is WEIGHT_NONE and
 * true, with a warning when nothing in it says that none is meant. Optional lines are weighed
 * like others. A bare count ("2 eggs") takes the entry's weight of each, large or medium, in this
 * order, else its only count. A pinch, a dash, a smidgen may weigh from half to twice its figure
 * where the entry states none. */
bool weigh_line(const recipe_line *line, cup_standard cups, weight *out, problems *found);

/* The entry's weight of one that a bare count means, and its word in `*called`; null when it has
 * none, or several and none of these. */
const range *weigh_one(const ingredient *what, const char **called);

/* "as written" and the like, for `way`; the measure's own source where there is one. */
const char *weight_way_word(weight_way way);

#endif
