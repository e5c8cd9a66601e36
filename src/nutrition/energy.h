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

/* Fills what follows from the figures of a pantry entry, called once, when a pantry is read:
 * - noughts that can't be otherwise: no saturates without fat; no fibre, sugars or polyols without
 *   carbohydrate; no added sugars without sugars, nor, where the entry states none, in a food sold
 *   plain (flour, meal, grain, legume, nut, egg, vegetable, fat, leavener, starch, gum, salt) or
 *   in any entry of the reference pantry but a sweetener; no cholesterol in what is of a plant or
 *   a mineral and carries no milk, egg, fish or shellfish;
 * - available carbohydrate (carbohydrate less fibre), where the entry does not state it;
 * - the worked-out energies, where protein, fat, carbohydrate (and for the EU fibre) are known. */
void energy_fill(ingredient *of);

/* Warns in `found`, at the entry's place, where its figures contradict each other: macros over
 * 100 g, sugars over carbohydrate, saturates over fat, stated energy and macros more than 15 %
 * and 15 kcal apart. What rounding on a pack can explain is let pass, and so is stated energy
 * between the sum with fibre at 0 and with fibre at 4 kcal. Published tables use factors of each
 * food's own, down to 1.8 kcal a gram of cocoa protein (USDA SR28, table of factors): an entry of
 * the reference pantry that is certain by publication is not warned about its energy. */
void energy_check(const ingredient *of, problems *found);

/* Where the energy of some amount of food comes from, by the EU's factors: shares that add up to
 * 1, all 0 when there is no energy. Carbohydrate is without fibre and polyols. */
typedef struct {
    double protein, fat, carbohydrate, fibre, polyols, alcohol;
} energy_shares;

/* The shares of `of`; unknown amounts count as nothing, so look at what is lacking first. `of`
 * must have its EU energy worked out (polyols count as what it leaves over). */
energy_shares energy_shares_of(const nutrients *of);

#endif
