#include "swap/balance_quantities.h"

#include <math.h>

/* Why so much of each is noticed is said in the languages' files. */
static const quantity_facts quantities[BALANCE_QUANTITIES] = {
    [BALANCE_BOWL] = {"free_water_bowl", 0.03, 0, 1, false},
    [BALANCE_BAKE] = {"free_water_bake", 0.03, 0, 0.5, true},
    [BALANCE_SETTING] = {"setting_protein", 0.01, 0, 0.1, true},
    [BALANCE_BULK] = {"bulk", 0.03, 0, 0.5, false},
    [BALANCE_FAT] = {"fat", 0.02, 0, 0.25, false},
    [BALANCE_SWEETNESS] = {"sweetness", 0.01, 0.15, 0.25, false},
};

const quantity_facts *balance_quantity_facts(balance_quantity which) {
    return &quantities[which];
}

static range exactly(double grams) {
    return (range){grams, grams, grams};
}

range balance_quantity_g(const balance *of, balance_quantity which) {
    switch (which) {
    case BALANCE_BOWL:
        return balance_free_cold_g(of);
    case BALANCE_BAKE:
        return balance_free_heated_g(of);
    case BALANCE_SETTING:
        return exactly(of->setting_g);
    case BALANCE_BULK:
        return exactly(of->dry_g);
    case BALANCE_FAT:
        return exactly(of->fat_g);
    case BALANCE_SWEETNESS:
    case BALANCE_QUANTITIES:
        break;
    }
    return exactly(of->sweetness_g);
}

double balance_step_g(const balance *before, balance_quantity which) {
    const quantity_facts *facts = &quantities[which];
    double own_g = fabs(balance_quantity_g(before, which).typical);
    return fmax(facts->step * before->batch_g, facts->step_own * own_g);
}

double balance_change_g(const balance *before, const balance *after, balance_quantity which) {
    return balance_quantity_g(after, which).typical - balance_quantity_g(before, which).typical;
}

/* Steps of `which` between the two, signed. */
static double steps(const balance *before, const balance *after, balance_quantity which) {
    double step_g = balance_step_g(before, which);
    return step_g > 0 ? balance_change_g(before, after, which) / step_g : 0;
}

bool balance_noticed(const balance *before, const balance *after, balance_quantity which) {
    return fabs(steps(before, after, which)) >= 1;
}

two_faces balance_faces(const balance *before, const balance *after) {
    double bowl = steps(before, after, BALANCE_BOWL), bake = steps(before, after, BALANCE_BAKE);
    if (bowl >= 1 && bake <= -1)
        return FACES_RUNS_AND_DRIES;
    return bowl <= -1 && bake >= 1 ? FACES_STIFF_AND_MOIST : FACES_ALIKE;
}
