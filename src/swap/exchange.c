#include "swap/exchange.h"

#include "swap/spread.h"

bool exchange_known(const exchange *made) {
    for (size_t i = 0; i < made->goes_count; i++)
        if (!balance_known(made->goes[i].what))
            return false;
    return balance_known(made->comes.what) &&
           (!made->also_comes.what || balance_known(made->also_comes.what));
}

static void take(balance *from, const part *goes) {
    balance moved = balance_of_ingredient(goes->what, goes->grams);
    *from = balance_difference(from, &moved);
}

static void add(balance *to, const part *comes) {
    balance moved = balance_of_ingredient(comes->what, comes->grams);
    *to = balance_sum(to, &moved);
}

balance exchange_balance(const exchange *made, const ingredient *liquid, double liquid_g) {
    balance after = *made->before;
    const part wet = {liquid, fabs(liquid_g)};
    for (size_t i = 0; i < made->goes_count; i++)
        take(&after, &made->goes[i]);
    add(&after, &made->comes);
    if (made->also_comes.what)
        add(&after, &made->also_comes);
    if (liquid_g < 0)
        take(&after, &wet);
    else
        add(&after, &wet);
    after.lost_g = made->before->batch_g > 0
                       ? made->before->lost_g / made->before->batch_g * after.batch_g
                       : 0;
    return after;
}

/* -- how far a difference is known ----------------------------------------------------------- */

enum { GOES_FIRST, GOES_SECOND, COMES, ALSO_COMES, IN_BATTER, UNCERTAIN };

typedef struct {
    double certain_g;        /* of the change: the water itself */
    double grams[IN_BATTER]; /* that come (+) and go (-) */
    range uncertain[UNCERTAIN];
} grounds;

static double change_at(const void *grounds_given, const double at[]) {
    const grounds *on = grounds_given;
    double uptake_g = 0;
    for (size_t i = 0; i < IN_BATTER; i++)
        uptake_g += on->grams[i] * at[i];
    return on->certain_g - at[IN_BATTER] * uptake_g;
}

static void set_part(grounds *on, size_t which, const part *moved, double sign, bool heated) {
    if (!moved->what || !moved->what->has_uptake)
        return;
    on->grams[which] = sign * moved->grams;
    on->uncertain[which] = heated ? moved->what->heated_uptake : moved->what->cold_uptake;
}

range exchange_free_change_g(const exchange *made, const balance *after, bool heated) {
    double at[UNCERTAIN];
    grounds on = {.uncertain = {[IN_BATTER] = {UPTAKE_IN_BATTER_LOW, UPTAKE_IN_BATTER,
                                               UPTAKE_IN_BATTER_HIGH}}};
    range was = heated ? balance_free_heated_g(made->before) : balance_free_cold_g(made->before);
    range is = heated ? balance_free_heated_g(after) : balance_free_cold_g(after);
    for (size_t i = 0; i < made->goes_count; i++)
        set_part(&on, GOES_FIRST + i, &made->goes[i], -1, heated);
    set_part(&on, COMES, &made->comes, 1, heated);
    set_part(&on, ALSO_COMES, &made->also_comes, 1, heated);
    for (size_t i = 0; i < UNCERTAIN; i++)
        at[i] = on.uncertain[i].typical;
    on.certain_g = is.typical - was.typical - change_at(&on, at);
    return spread_over(change_at, &on, on.uncertain, UNCERTAIN);
}
