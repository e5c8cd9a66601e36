#include "nutrition/sweetening.h"

/* g in 100 g. A trace of sugars is below what US and EU law call free of sugars. */
#define TRACE_G       0.5
#define SWEETENING_G  20.0
#define MAY_SWEETEN_G 5.0

static double figure_or(const ingredient *what, nutrient which, double otherwise) {
    return nutrient_known(&what->per_100_g, which) ? what->per_100_g.of[which] : otherwise;
}

static bool has_sugars_known(const ingredient *what) {
    return nutrient_known(&what->per_100_g, NUTRIENT_SUGARS);
}

static bool is_unknown(const ingredient *what) {
    return !what;
}

static bool is_sugary_sweetener(const ingredient *what) {
    return what->in == FAMILY_SWEETENER && figure_or(what, NUTRIENT_SUGARS, 0) > TRACE_G;
}

static bool holds_added_sugars(const ingredient *what) {
    return figure_or(what, NUTRIENT_ADDED_SUGARS, 0) > TRACE_G;
}

static bool is_fruit(const ingredient *what) {
    return what->in == FAMILY_FRUIT || what->in == FAMILY_FRUIT_PUREE;
}

static bool is_sweet_fruit(const ingredient *what) {
    return is_fruit(what) && figure_or(what, NUTRIENT_SUGARS, 0) >= SWEETENING_G;
}

static bool is_sweet_moisture(const ingredient *what) {
    return (what->in == FAMILY_FRUIT_PUREE || what->in == FAMILY_LIQUID) &&
           figure_or(what, NUTRIENT_SUGARS, MAY_SWEETEN_G) >= MAY_SWEETEN_G;
}

/* A sweetener without sugars adds none, whatever its entry leaves out. */
static bool is_unstated(const ingredient *what) {
    if (what->in == FAMILY_SWEETENER || is_fruit(what))
        return !has_sugars_known(what);
    return !nutrient_known(&what->per_100_g, NUTRIENT_ADDED_SUGARS);
}

/* In the order asked: the surest first. */
static const struct {
    bool (*fits)(const ingredient *what);
    sweetening means;
    sentence_key because;
} rows[] = {
    {is_unknown, SWEETENING_UNCLEAR, SAY_NOT_IN_PANTRY},
    {is_sugary_sweetener, SWEETENING_SUGARS, SAY_ADDED_TO_SWEETEN},
    {holds_added_sugars, SWEETENING_SUGARS, SAY_HOLDS_ADDED_SUGARS},
    {is_sweet_fruit, SWEETENING_SUGARS, SAY_BRINGS_SUGARS_ENOUGH},
    {is_sweet_moisture, SWEETENING_UNCLEAR, SAY_MAY_SWEETEN},
    {is_unstated, SWEETENING_UNCLEAR, SAY_NO_FIGURE_FOR_ADDED_SUGARS},
};

static sweetening sweetening_of_line(arena *a, const recipe_line *line, const message **because) {
    for (size_t i = 0; i < COUNT(rows); i++) {
        if (!rows[i].fits(line->what))
            continue;
        if (because)
            *because = message_new(
                a, rows[i].because,
                (const message_value[]){value_text(line->what ? line->what->name : line->name)}, 1);
        return rows[i].means;
    }
    return SWEETENING_NONE;
}

sweetening sweetening_of(arena *a, const recipe *of, const message **because) {
    sweetening most = SWEETENING_NONE;
    if (because)
        *because = MESSAGE_PLAIN(a, NOTHING_SWEETENS);
    for (size_t i = 0; i < of->lines.count; i++) {
        const message *why;
        sweetening one = sweetening_of_line(a, &of->lines.items[i], because ? &why : NULL);
        if (one > most && because)
            *because = why;
        if (one > most)
            most = one;
    }
    return most;
}
