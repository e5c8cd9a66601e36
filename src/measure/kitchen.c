#include "measure/kitchen.h"

#include "base/list.h"
#include "base/number.h"
#include "measure/amount.h"
#include "measure/weigh.h"

#include <math.h>

/* -- vessels ----------------------------------------------------------------------------------- */

enum { CUP = VESSEL_CUP, TBSP = VESSEL_TBSP, TSP = VESSEL_TSP, VESSELS = VESSEL_COUNT };

static const char *const vessel_names[VESSELS] = {"cup", "tbsp", "tsp"};

/* Grams of one level vessel each; all 0 when the entry has no volume. */
typedef struct {
    double g[VESSELS];
} vessels;

static vessels vessels_of(const ingredient *what, cup_standard cups) {
    double (*const ml[VESSELS])(cup_standard) = {cup_ml, tablespoon_ml, teaspoon_ml};
    vessels v = {0};
    range one[VESSELS];
    if (!ingredient_vessels(what, one))
        return v;
    for (size_t i = 0; i < VESSELS; i++)
        v.g[i] = one[i].typical * ml[i](cups) / ml[i](CUPS_US);
    return v;
}

/* A way to measure something out. */
typedef struct {
    double of[VESSELS]; /* how many of each vessel */
    double count;
    const char *counted; /* the word of the count: "large"; null without one */
    bool pinch;
    double grams;
    unsigned scoops; /* times a vessel is filled */
} way;

/* What can be filled at once, and how often for each step between two whole ones. */
typedef struct {
    double size;
    unsigned scoops;
} step;

static const step cup_steps[] = {{0, 0},       {1.0 / 4, 1}, {1.0 / 3, 1},
                                 {1.0 / 2, 1}, {2.0 / 3, 1}, {3.0 / 4, 1}};
static const step tsp_steps[] = {{0, 0}, {1.0 / 8, 1}, {1.0 / 4, 1}, {1.0 / 2, 1}, {3.0 / 4, 2}};
static const step half_steps[] = {{0, 0}, {1.0 / 2, 1}};

typedef struct {
    const step *items;
    size_t count;
} steps;

#define STEPS(list) ((steps){(list), COUNT(list)})

/* -- choosing ---------------------------------------------------------------------------------- */

/* What is looked for, and the best way to it so far. */
typedef struct {
    double grams, allowed_g;
    bool any;
    way best;
} search;

static double error_g(const search *s, const way *w) {
    return fabs(w->grams - s->grams);
}

/* The fewest scoops among those near enough, else the nearest. A hair's difference in weight is
 * none: it comes of adding up in another order. */
static bool is_better(const search *s, const way *a, const way *b) {
    const double hair_g = 1e-9 * s->grams;
    bool a_near = error_g(s, a) <= s->allowed_g + hair_g;
    bool b_near = error_g(s, b) <= s->allowed_g + hair_g;
    if (a_near != b_near)
        return a_near;
    if (a_near && a->scoops != b->scoops)
        return a->scoops < b->scoops;
    double gain_g = error_g(s, b) - error_g(s, a);
    return fabs(gain_g) > hair_g ? gain_g > 0 : a->scoops < b->scoops;
}

/* A way that comes to `grams` is neither near enough nor nearer than the best so far. */
static bool is_hopeless(const search *s, double grams) {
    const double hair_g = 1e-9 * s->grams;
    double error = fabs(grams - s->grams);
    return s->any && error > s->allowed_g + hair_g && error > error_g(s, &s->best) + hair_g;
}

static void consider(search *s, way w) {
    if (w.scoops == 0 || (s->any && !is_better(s, &w, &s->best)))
        return;
    s->any = true;
    s->best = w;
}

static search search_for(double grams, double tsp_g) {
    return (search){.grams = grams, .allowed_g = fmax(0.03 * grams, tsp_g / 32)};
}

/* The multiple of a vessel just under (`up` 0) or over (`up` 1) `vessels_wanted`. */
static step neighbour(steps by, double wanted, unsigned up) {
    double whole = floor(wanted + 1e-9), part = wanted - whole;
    size_t i = 0;
    while (i + 1 < by.count && by.items[i + 1].size <= part + 1e-9)
        i++;
    if (up && ++i == by.count) {
        i = 0;
        whole++;
    }
    return (step){whole + by.items[i].size, (unsigned)whole + by.items[i].scoops};
}

/* -- volumes ----------------------------------------------------------------------------------- */

/* `so_far` with `more` of the vessel `which`. */
static way filled_up(way so_far, const vessels *v, size_t which, step more) {
    so_far.of[which] = more.size;
    so_far.grams += more.size * v->g[which];
    so_far.scoops += more.scoops;
    return so_far;
}

/* False where teaspoons can't help: `so_far` is too much already, or lacks a whole tablespoon, and
 * one more is looked at too (`more`). */
static bool teaspoons_reach(const search *s, const vessels *v, const way *so_far, bool more) {
    double missing_g = s->grams - so_far->grams;
    return missing_g >= -s->allowed_g && !(more && missing_g > v->g[TBSP] + s->allowed_g);
}

/* Teaspoons in every step that stays under a tablespoon: a coarser one may be near enough. */
static void with_teaspoons(search *s, const vessels *v, const way *so_far) {
    for (double whole = 0; whole * v->g[TSP] < v->g[TBSP] - 1e-9; whole++) {
        double least_g = so_far->grams + whole * v->g[TSP];
        double nearest_g = fmin(fmax(s->grams, least_g), least_g + v->g[TSP]);
        if (is_hopeless(s, nearest_g))
            continue;
        for (size_t i = 0; i < COUNT(tsp_steps); i++) {
            step tsp = {whole + tsp_steps[i].size, (unsigned)whole + tsp_steps[i].scoops};
            double more_g = tsp.size * v->g[TSP];
            if (more_g < v->g[TBSP] - 1e-9 && !is_hopeless(s, so_far->grams + more_g))
                consider(s, filled_up(*so_far, v, TSP, tsp));
        }
    }
}

/* Up to three tablespoons, since four are a quarter cup; teaspoons behind them while there are not
 * `terms` yet. */
static void with_tablespoons(search *s, const vessels *v, way so_far, int terms) {
    for (unsigned whole = 1; whole <= 3; whole++) {
        way w = filled_up(so_far, v, TBSP, (step){whole, whole});
        consider(s, w);
        if ((so_far.of[CUP] == 0 || terms > 2) && teaspoons_reach(s, v, &w, whole < 3))
            with_teaspoons(s, v, &w);
    }
}

/* Spoons only add, and always less than a quarter cup: where that overshoots or falls short, no
 * spoon brings `so_far` nearer than another cup measure is. */
static bool spoons_reach(const search *s, const vessels *v, const way *so_far) {
    double missing_g = s->grams - so_far->grams;
    return missing_g >= -s->allowed_g && missing_g <= v->g[CUP] / 4 + s->allowed_g;
}

/* Every cup measure that is near, filled up with spoons. Between two of them lies a quarter at the
 * most, so that what is further off than that is not the nearest. */
static void with_cups(search *s, const vessels *v, int terms) {
    double wanted = s->grams / v->g[CUP];
    for (double whole = floor(fmax(wanted - 1, 0)); whole <= floor(wanted) + 1; whole++)
        for (size_t i = 0; i < COUNT(cup_steps); i++) {
            step cups = {whole + cup_steps[i].size, (unsigned)whole + cup_steps[i].scoops};
            if (fabs(s->grams - cups.size * v->g[CUP]) > v->g[CUP] / 4 + s->allowed_g)
                continue;
            way w = filled_up((way){0}, v, CUP, cups);
            consider(s, w);
            if (spoons_reach(s, v, &w)) {
                with_tablespoons(s, v, w, terms);
                if (teaspoons_reach(s, v, &w, true))
                    with_teaspoons(s, v, &w);
            }
        }
}

/* More than this is measured by weight; it also keeps the counts within an unsigned. */
enum { MOST_FILLED = 1000 };

static bool best_volume(double grams, const vessels *v, way *out) {
    search s = search_for(grams, v->g[TSP]);
    if (v->g[CUP] <= 0 || grams > MOST_FILLED * v->g[CUP])
        return false;
    if (grams < v->g[TSP] / 8 - s.allowed_g) {
        *out = (way){.pinch = true, .grams = v->g[TSP] / 16, .scoops = 1};
        return true;
    }
    with_cups(&s, v, 2);
    if (s.any && error_g(&s, &s.best) > fmax(0.05 * grams, s.allowed_g))
        with_cups(&s, v, 3);
    *out = s.best;
    return s.any;
}

/* -- counts ------------------------------------------------------------------------------------ */

static bool best_count(double grams, const ingredient *what, way *out) {
    const char *called = NULL;
    const range *one = weigh_one(what, &called);
    if (!one || one->typical <= 0 || grams > MOST_FILLED * one->typical)
        return false;
    search s = search_for(grams, 0);
    for (unsigned up = 0; up < 2; up++) {
        step count = neighbour(STEPS(half_steps), grams / one->typical, up);
        consider(&s, (way){.count = count.size,
                           .counted = called,
                           .grams = count.size * one->typical,
                           .scoops = count.scoops});
    }
    *out = s.best;
    return s.any;
}

static bool is_within(const way *w, double grams, double share) {
    return fabs(w->grams - grams) <= share * grams;
}

/* -- words ------------------------------------------------------------------------------------- */

static void add_part(text *t, double amount, const char *name) {
    if (amount <= 0)
        return;
    if (t->length)
        text_add(t, " + ");
    amount_add(t, amount, 0.001);
    if (name[0])
        text_format(t, " %s", name);
}

/* A size has no plural, and a thing that is counted by itself needs no word. */
static const char *count_word(arena *a, const char *called, double count) {
    const unit *in = unit_named(called);
    if (strcmp(called, "each") == 0)
        return "";
    return count <= 1 || (in && unit_is_size(in)) ? called : pantry_plural(a, called);
}

static kitchen_measure measure_of(arena *a, const way *w, double grams) {
    char room[64];
    text t = text_on(room, sizeof room);
    if (w->pinch)
        text_add(&t, "a pinch");
    kitchen_measure made = {.grams = w->grams, .error_g = w->grams - grams};
    for (size_t i = 0; i < VESSELS; i++) {
        add_part(&t, w->of[i], i == CUP && w->of[i] > 1 ? "cups" : vessel_names[i]);
        if (w->of[i] > 0)
            made.parts[made.part_count++] = (kitchen_part){w->of[i], vessel_names[i]};
    }
    if (w->counted && w->count > 0) {
        add_part(&t, w->count, count_word(a, w->counted, w->count));
        made.parts[made.part_count++] = (kitchen_part){w->count, w->counted};
    }
    made.text = arena_copy(a, text_span(&t));
    text_free(&t);
    return made;
}

/* -- answers ----------------------------------------------------------------------------------- */

/* Eggs are counted where that is near enough, unless one or two vessels come nearer. */
static bool counts_rather(const way *counted, const way *volume, double grams) {
    bool nearer = fabs(volume->grams - grams) <= fabs(counted->grams - grams) + 1e-9 * grams;
    bool simple = volume->scoops <= 2 && is_within(volume, grams, 0.03);
    return is_within(counted, grams, 0.1) && !(simple && nearer);
}

static bool best_way(const ingredient *what, double grams, cup_standard cups, way *out) {
    vessels v = vessels_of(what, cups);
    way counted;
    if (!(grams > 0) || !isfinite(grams))
        return false;
    bool has_volume = best_volume(grams, &v, out);
    if ((has_volume && what->in != FAMILY_EGG) || !best_count(grams, what, &counted))
        return has_volume;
    bool counts =
        has_volume ? counts_rather(&counted, out, grams) : is_within(&counted, grams, 0.25);
    if (counts)
        *out = counted;
    return has_volume || counts;
}

bool kitchen_measure_of(arena *a, const ingredient *what, double grams, cup_standard cups,
                        kitchen_measure *out) {
    way best;
    if (!best_way(what, grams, cups, &best))
        return false;
    *out = measure_of(a, &best, grams);
    return true;
}

/* What one kind of vessel is filled to, and how many of it are still sensible. */
static const struct {
    steps by;
    double most;
} single[VESSELS] = {[CUP] = {{cup_steps, COUNT(cup_steps)}, MOST_FILLED},
                     [TBSP] = {{half_steps, COUNT(half_steps)}, 16},
                     [TSP] = {{tsp_steps, COUNT(tsp_steps)}, 16}};

static bool in_one_vessel(double grams, const vessels *v, size_t which, way *out) {
    search s = search_for(grams, v->g[TSP]);
    if (v->g[which] <= 0 || grams > single[which].most * v->g[which])
        return false;
    for (unsigned up = 0; up < 2; up++) {
        step found = neighbour(single[which].by, grams / v->g[which], up);
        consider(&s, filled_up((way){0}, v, which, found));
    }
    *out = s.best;
    return s.any && is_within(out, grams, 0.1);
}

enum { MOST_WAYS = VESSELS + 1 };

/* The ways in one kind of vessel that are near enough; returns how many. */
static size_t single_ways(const ingredient *what, double grams, const vessels *v,
                          way out[MOST_WAYS]) {
    size_t count = 0;
    for (size_t i = 0; i < VESSELS; i++)
        count += in_one_vessel(grams, v, i, &out[count]);
    count += best_count(grams, what, &out[count]) && is_within(&out[count], grams, 0.1);
    return count;
}

static void sort_ways(way ways[], size_t count, double grams, double tsp_g) {
    search s = search_for(grams, tsp_g);
    for (size_t i = 1; i < count; i++)
        for (size_t k = i; k > 0 && is_better(&s, &ways[k], &ways[k - 1]); k--) {
            way moved = ways[k];
            ways[k] = ways[k - 1];
            ways[k - 1] = moved;
        }
}

size_t kitchen_measures_of(arena *a, const ingredient *what, double grams, cup_standard cups,
                           kitchen_measure out[], size_t most) {
    way ways[MOST_WAYS];
    vessels v = vessels_of(what, cups);
    if (most == 0 || !kitchen_measure_of(a, what, grams, cups, &out[0]))
        return 0;
    size_t count = 1, others = single_ways(what, grams, &v, ways);
    sort_ways(ways, others, grams, v.g[TSP]);
    for (size_t i = 0; i < others && count < most; i++) {
        kitchen_measure next = measure_of(a, &ways[i], grams);
        if (strcmp(next.text, out[0].text) != 0)
            out[count++] = next;
    }
    return count;
}

bool kitchen_rough_measure_of(arena *a, const ingredient *what, double grams, cup_standard cups,
                              kitchen_measure *out) {
    const double nearly = 0.9; /* of the vessel's least filling */
    vessels v = vessels_of(what, cups);
    way rough;
    if (!(grams > 0) || !isfinite(grams) || grams > MOST_FILLED * fmax(v.g[CUP], 1))
        return false;
    search s = {.grams = grams};
    size_t which = grams >= nearly * v.g[CUP] / 4 ? CUP : grams >= nearly * v.g[TBSP] ? TBSP : TSP;
    for (unsigned up = 0; up < 2 && v.g[CUP] > 0; up++)
        consider(&s, filled_up((way){0}, &v, which,
                               neighbour(which == CUP ? STEPS(cup_steps) : STEPS(half_steps),
                                         grams / v.g[which], up)));
    if (s.any)
        rough = s.best;
    else if (!best_count(grams, what, &rough))
        return false;
    *out = measure_of(a, &rough, grams);
    return true;
}

char *kitchen_weight(arena *a, double grams) {
    bool kilograms = number_round(grams, 1) >= 1000;
    int decimals = kilograms || grams < 0.995 ? 2 : grams < 9.95 ? 1 : 0;
    char room[32];
    text t = text_on(room, sizeof room);
    number_add(&t, kilograms ? grams / 1000 : grams, decimals);
    text_add(&t, kilograms ? " kg" : " g");
    char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}
