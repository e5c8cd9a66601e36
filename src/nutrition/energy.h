/* Energy from macros by the general Atwater factors and by the EU's, and whether a food's stated
 * figures agree with each other. */
#ifndef NUTRITION_ENERGY_H
#define NUTRITION_ENERGY_H

#include "pantry/ingredient.h"

/* kcal from protein 4, fat 9, carbohydrate by difference 4, alcohol 7 (FAO Food and Nutrition
 * Paper 77, general factors). Sets `*kcal`; false when protein, fat or carbohydrate is unknown.
 * Sugar alcohols are counted by their own US factors (21 CFR 101.9(c)(1)(i)(F)) as `which`. */
bool energy_atwater(const nutrients *of, polyol which, double *kcal);

/* kcal and kJ by Regulation (EU) 1169/2011, Annex XIV: available carbohydrate 4/17, polyols
 * 2.4/10, erythritol 0/0, protein 4/17, fat 9/37, fibre 2/8, alcohol 7/29; the two are summed
 * apart, never converted. False when protein, fat, carbohydrate or fibre is unknown. */
bool energy_eu(const nutrients *of, polyol which, double *kcal, double *kj);

/* Fills the worked-out energies of a pantry entry where its figures allow. Called once, when a
 * pantry is read. */
void energy_fill(ingredient *of);

/* Warns in `found`, at the entry's place, where its figures contradict each other: macros over
 * 100 g, sugars over carbohydrate, saturates over fat, stated energy and macros more than 15 %
 * and 15 kcal apart. */
void energy_check(const ingredient *of, problems *found);

#endif
