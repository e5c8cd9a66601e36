/* The steps that a kitchen measures in: no baker weighs out 37.3 g of flour in spoons. */
#ifndef MEASURE_STEP_H
#define MEASURE_STEP_H

#include "pantry/ingredient.h"

/* Grams of the finest step for about `grams` of `what`: teaspoons, quarters of one for less than
 * two; where it has no household weight, whole grams, from 50 g on five at a time. */
double step_fine_g(const ingredient *what, double grams);

/* The same for who makes up a recipe: tablespoons from four on, and whole eggs. */
double step_handy_g(const ingredient *what, double grams);

#endif
