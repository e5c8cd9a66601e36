/* What a baker judges a batch by, quantity by quantity, and what of a difference is noticed.
 *
 * A quantity is a figure of the balance in g. The step that is noticed is a share of the batch:
 * below it the difference is lost in the scales and the oven. Differences of unlike things are
 * compared in such steps, also when the best amounts are looked for (swap/balance_best.h), where
 * each quantity has a weight besides. Steps and weights are estimates (common practice, no
 * source); the reasons stand in the table of the .c and on the site's page of assumptions. */
#ifndef SWAP_BALANCE_QUANTITIES_H
#define SWAP_BALANCE_QUANTITIES_H

#include "swap/balance.h"

typedef enum {
    BALANCE_BOWL,    /* free water in the bowl */
    BALANCE_BAKE,    /* free water in the bake */
    BALANCE_SETTING, /* heat-setting protein, soft counted half */
    BALANCE_BULK,    /* dry solids */
    BALANCE_FAT,
    BALANCE_SWEETNESS, /* as sugar */
    BALANCE_QUANTITIES
} balance_quantity;

typedef struct {
    const char *key; /* "free_water_bowl": what its words are found by */
    double step;     /* noticed from here on: share of the batch weight */
    double step_own; /* and share of what there is of it; the larger of the two counts */
    double weight;   /* in the best amounts */
    bool of_heat;    /* says nothing of what is never baked */
} quantity_facts;

const quantity_facts *balance_quantity_facts(balance_quantity which);

/* g of the quantity; a range for the two waters, else three equal figures. */
range balance_quantity_g(const balance *of, balance_quantity which);

/* The least difference in g that is noticed in a batch as `before`. */
double balance_step_g(const balance *before, balance_quantity which);

/* after - before in g, typical. */
double balance_change_g(const balance *before, const balance *after, balance_quantity which);

/* True when that difference is noticed. */
bool balance_noticed(const balance *before, const balance *after, balance_quantity which);

/* The two faces of a swap: it loosens the bowl and yet dries the bake (whey for a plant powder),
 * or stiffens the bowl and yet moistens the bake (a plant powder for whey). Liquid mends one and
 * worsens the other. */
typedef enum { FACES_ALIKE, FACES_RUNS_AND_DRIES, FACES_STIFF_AND_MOIST } two_faces;

two_faces balance_faces(const balance *before, const balance *after);

#endif
