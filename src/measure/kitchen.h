/* Grams back to what a kitchen can measure: cups 1, 3/4, 2/3, 1/2, 1/3, 1/4; tablespoons;
 * teaspoons 1, 1/2, 1/4, 1/8; whole or half eggs. Never "0.4583 cup". */
#ifndef MEASURE_KITCHEN_H
#define MEASURE_KITCHEN_H

#include "measure/units.h"
#include "pantry/ingredient.h"

/* An amount of one vessel or count: 1/3 of "cup", 2 of "large". */
typedef struct {
    double amount;
    const char *of;
} kitchen_part;

enum { KITCHEN_PARTS_MOST = 4 };

typedef struct {
    const char *text;                       /* "1/3 cup + 1 tbsp", in the arena */
    double grams;                           /* what that amount weighs */
    double error_g;                         /* grams - what was asked for */
    kitchen_part parts[KITCHEN_PARTS_MOST]; /* what `text` says; none: a pinch */
    size_t part_count;
} kitchen_measure;

/* The nearest sensible combination (two units, a third only where two come no nearer than 5 %) for
 * `grams` of `what`: the fewest scoops among those within 3 % (or a quarter of 1/8 tsp), else the
 * nearest. Sweeps cups down to 1/4, then tablespoons, then teaspoons; "a pinch" under 1/8 tsp.
 * Counted things come in wholes and halves when the entry has a count and no cup; eggs also where
 * that is within 10 %, unless one or two vessels come nearer. The text reads back as the amount
 * and unit of an ingredient line; a count of `each` is a bare number. False when there is nothing
 * to measure, or the entry has no household weight, or only a count that is off by more than a
 * quarter: weigh it. */
bool kitchen_measure_of(arena *a, const ingredient *what, double grams, cup_standard cups,
                        kitchen_measure *out);

/* Up to `most` ways to measure it out: first what kitchen_measure_of gives, then those in one
 * kind of vessel (cups, tablespoons, teaspoons, count) that are within 10 %, best first. Returns
 * how many. */
size_t kitchen_measures_of(arena *a, const ingredient *what, double grams, cup_standard cups,
                           kitchen_measure out[], size_t most);

/* The nearest amount in the one vessel that a hand would take, for a figure that is itself rough:
 * quarters and thirds of cups from a quarter cup on, half tablespoons from one on, half teaspoons;
 * halves where the entry has a count and no cup. False when there is none. */
bool kitchen_rough_measure_of(arena *a, const ingredient *what, double grams, cup_standard cups,
                              kitchen_measure *out);

/* A weight as scales show it: "0.25 g" under 1 g, "4.5 g" under 10 g, "46 g", "1.25 kg" from 1 kg
 * on. */
char *kitchen_weight(arena *a, double grams);

#endif
