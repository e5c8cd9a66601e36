/* Something that takes place in a batch: parts of it go and others come. */
#ifndef SWAP_EXCHANGE_H
#define SWAP_EXCHANGE_H

#include "swap/amounts.h"
#include "swap/balance.h"
#include "swap/facts.h"

typedef struct {
    const recipe_facts *about;   /* of the part of the recipe in which it does */
    unsigned long long replaced; /* bits of the lines that go: no liquid is taken from them */
    const balance *before;       /* of that part as written */
    part goes[2];
    size_t goes_count;
    part comes;
    part also_comes; /* `what` null: nothing */
} exchange;

/* True when every uptake that a liquid change rests on is known. */
bool exchange_known(const exchange *made);

/* The balance of what is `before` once the exchange is made and `liquid_g` (+ or -) of `liquid` is
 * added or held back. The bake loss stays the same share of the weight. */
balance exchange_balance(const exchange *made, const ingredient *liquid, double liquid_g);

/* How much more (+) or less free water there is `after` than before, in the bowl or, `heated`, in
 * the bake. Only the uptakes of what goes and comes and UPTAKE_IN_BATTER are uncertain in it, since
 * what stays takes up the same before and after. */
range exchange_free_change_g(const exchange *made, const balance *after, bool heated);

#endif
