/* Units of weight and volume, with the source of each value. */
#ifndef MEASURE_UNITS_H
#define MEASURE_UNITS_H

#include "base/span.h"

typedef enum {
    UNIT_MASS,   /* `size` in grams */
    UNIT_VOLUME, /* `size` in millilitres */
    UNIT_COUNT,  /* a count: the word is looked up among the ingredient's measures */
    UNIT_PINCH   /* a pinch, a dash: a little, taken as `size` teaspoons (common practice) */
} unit_sort;

typedef struct {
    const char *name; /* "tbsp": as pantry files and --json have it */
    unit_sort sort;
    double size;
} unit;

/* Which cup and spoons a site measures with: site.yaml `cups`. US customary 236.588 mL and
 * 14.787 mL; US label 240 and 15; metric 250 and 15 (20 in Australia, UNITS_AUSTRALIAN). */
typedef enum { CUPS_US, CUPS_US_LABEL, CUPS_METRIC, CUPS_AUSTRALIAN } cup_standard;

double cup_ml(cup_standard which);
double tablespoon_ml(cup_standard which);
double teaspoon_ml(cup_standard which);

/* The unit written at the front of `s` ("tablespoons", "T", "g", "fl oz", "large"), the longest
 * that fits and ends at a word's end, a full stop after it allowed; `*used` is its length in
 * bytes. Case does not count, but for t (teaspoon) and T (tablespoon). Null when none is. Volumes
 * of cup, tbsp, tsp are of the US customary standard here; use unit_ml for another. Pint, quart
 * and gallon are the US ones unless UK or imperial is written before them. */
const unit *unit_read(span s, size_t *used);

/* Millilitres of one volume unit (a pinch too) by the site's standard; 0 for mass and count. */
double unit_ml(const unit *of, cup_standard which);

/* The nearest spelling of a unit of weight to `word`, for a hint; null when none is near. */
const char *unit_nearest_weight(span word);

/* A size that says which one is counted: small, medium, large, extra large, jumbo. */
bool unit_is_size(const unit *of);

/* The unit called just `name` ("cup"); null when there is none. */
const unit *unit_named(const char *name);

#endif
