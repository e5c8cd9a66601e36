/* Reads the brief of a recipe to be developed (`crumbnote formulate`):
 *
 *     title: Egg white rounds for a crew
 *     kind: griddle cake                 the build whose balance is wanted ...
 *     set-by: egg white                  ... and what sets it; both optional, set-by a word or a
 * list makes: 8 rounds portion: 2 rounds batch: 330 g                       as mixed; where left
 * out, as heavy as the build's portions bake-loss: 12 %                    where left out, as the
 * build's recipes ingredients:
 *       - {ingredient: pea protein powder, least: 40 g, most: 90 g}
 *       - {ingredient: egg white, most: 1 cup, step: 1/4 cup}
 *       - oat flour                      as much as fits, at least a spoon
 *       - 1/4 tsp salt                   just so much
 *     targets:                           a portion
 *       protein: at least 24 g
 *       energy: 150 to 220 kcal
 *       sugars: at most 5 g
 *       cost: at most 1.20
 *
 * A target with a bare figure is met within FORMULA_ABOUT of it. */
#ifndef READ_FORMULA_BRIEF_H
#define READ_FORMULA_BRIEF_H

#include "nutrition/macros.h"
#include "pantry/pantry.h"
#include "swap/formula.h"

/* How far "24 g" may be off: a share; an estimate. */
#define FORMULA_ABOUT 0.05

/* What amounts and energy are read with. */
typedef struct {
    const pantry *shelf;
    cup_standard cups;
    energy_rule energy;
} brief_setting;

/* Reads the brief in `bytes` into `a`. Null with problems when there is an error. */
const formula_brief *formula_brief_read(arena *a, const char *file, span bytes,
                                        const brief_setting *with, problems *found);

#endif
