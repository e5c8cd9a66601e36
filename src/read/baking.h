/* How a recipe is baked: the oven's heat and the pan. */
#ifndef READ_BAKING_H
#define READ_BAKING_H

#include "measure/recipe.h"

/* Reads "180 C", "180 °C" or "350 F" into °C (F: (F - 32) x 5/9). False with a problem when it
 * can't be read or no oven has it (40 to 320 °C). */
bool oven_read(located written, double *celsius, problems *found);

/* Reads "round 20 cm", "square 20 cm", "loaf 23 x 13 cm", "tray 30 x 20 cm", "griddle",
 * "waffle iron", "muffin tin 12"; inside sizes in cm, mm or in, a depth may follow. False with a
 * problem when it can't be read; `out->text` is set all the same. */
bool pan_read(located written, pan *out, problems *found);

#endif
