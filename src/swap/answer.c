#include "swap/answer.h"

#include "nutrition/lines.h"
#include "swap/balance_best.h"
#include "swap/combined.h"

#include <math.h>
#include <stdint.h>

/* -- what leaves ----------------------------------------------------------------------------- */

/* All lines of the ingredient of line `line`. */
static part all_of(const recipe *of, size_t line) {
    part sum = {.what = of->lines.items[line].what};
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what == sum.what)
            sum.grams += of->weights[i].grams;
    return sum;
}

static bool leaves(const leaving *out, const ingredient *what) {
    return what == out->goes[0].what || (out->count == 2 && what == out->goes[1].what);
}

static void keep_the_others(leaving *out) {
    const recipe_lines *lines = &out->about->of->lines;
    out->kept_diets = ~0u;
    for (size_t i = 0; i < lines->count; i++) {
        const ingredient *what = lines->items[i].what;
        if (leaves(out, what))
            continue;
        out->kept_allergens |= what ? what->allergens : 0;
        out->kept_diets &= what ? diets_of_ingredient(what) : 0;
    }
}

/* The balance of the lines that `about` is of. */
static balance balance_of_part(const recipe_facts *about) {
    balance sum = {0};
    for (size_t i = 0; i < about->of->lines.count; i++) {
        if (!facts_at(about, i))
            continue;
        balance line = balance_of_ingredient(facts_at(about, i), about->of->weights[i].grams);
        sum = balance_sum(&sum, &line);
    }
    sum.batch_g = about->part_g;
    sum.lost_g = about->is_beside ? 0 : about->of->bake_loss * about->part_g;
    return sum;
}

/* An ingredient may stand in the dough and on top: only what is in the dough changes its water. */
static void look_at_the_part(leaving *out) {
    double in_part_g = 0, all_g = 0;
    out->part = facts_for(out->about, out->replaced);
    out->part_before = out->about->beside ? balance_of_part(out->part) : out->before;
    for (size_t i = 0; i < out->about->of->lines.count; i++) {
        if (!leaves(out, out->about->of->lines.items[i].what))
            continue;
        all_g += out->about->of->weights[i].grams;
        in_part_g += facts_at(out->part, i) ? out->about->of->weights[i].grams : 0;
    }
    out->share_in_part = all_g > 0 ? in_part_g / all_g : 1;
}

leaving leaving_of(const recipe_facts *about, size_t first, size_t second) {
    leaving out = {.about = about,
                   .lines = {first, second},
                   .count = second == SIZE_MAX ? 1 : 2,
                   .before = balance_of(about->of),
                   .allergens = allergens_of(about->of),
                   .diets = diets_of(about->of)};
    for (size_t i = 0; i < out.count; i++) {
        out.goes[i] = all_of(about->of, out.lines[i]);
        out.replaced |= facts_same_lines(about, out.lines[i]);
    }
    keep_the_others(&out);
    look_at_the_part(&out);
    return out;
}

/* -- amounts --------------------------------------------------------------------------------- */

/* Grams of a trial's line; `otherwise` where it states none. */
static double tried_g(arena *a, const recipe_line *line, double otherwise) {
    weight grams;
    problems none = problems_in(a);
    bool weighed = line->has_amount && weigh_line(line, CUPS_US, &grams, &none);
    return weighed && grams.grams > 0 ? grams.grams : otherwise;
}

/* What went and came in a bake, scaled to this recipe: how many times it replaces as much. */
static double bake_times(arena *a, const trial *bake, double goes_g) {
    return goes_g / tried_g(a, &bake->replaced, goes_g);
}

static bool is_combined(const exchange *made) {
    return made->goes_count == 2 || made->also_comes.what;
}

/* Sets the amounts of a combined swap; false, and why, when there are none. */
static bool amounts_combined(arena *a, const swap_rule *rule, exchange *made, range *comes_g,
                             const message **in_the_way) {
    bool split = made->also_comes.what != NULL;
    const combination both = {.keeps = rule->keeps,
                              .goes = {made->goes[0], made->goes[1]},
                              .most = {rule->most[0], rule->most[1]},
                              .to = {made->comes.what, made->also_comes.what},
                              .goes_count = made->goes_count,
                              .comes_count = split ? 2 : 1,
                              .batch_g = made->about->part_g};
    combined_amounts by = combined_amounts_of(a, &both);
    *in_the_way = by.in_the_way;
    if (!by.possible)
        return false;
    for (size_t i = 0; i < made->goes_count; i++)
        made->goes[i].grams = by.goes_g[i];
    *comes_g = by.comes_g[0];
    made->also_comes.grams = by.comes_g[1].typical;
    return true;
}

/* Sets the amounts that `by` promises; false when it promises none, or `*in_the_way` says why there
 * are none. */
static bool promise(arena *a, decision by, exchange *made, range *comes_g,
                    const message **in_the_way) {
    if (decision_says(by) > VERDICT_DIFFERENT)
        return false;
    if (by.rule && by.rule->amount == AMOUNT_MATCH_BALANCE && is_combined(made))
        return amounts_combined(a, by.rule, made, comes_g, in_the_way);
    if (by.rule)
        return amount_in_place(by.rule->amount, by.rule->ratio, made->goes, made->goes_count,
                               made->comes.what, comes_g);
    double goes_g = made->goes[0].grams, times = bake_times(a, by.bake, goes_g);
    double to_g = tried_g(a, &by.bake->with, tried_g(a, &by.bake->replaced, goes_g)) * times;
    *comes_g = (range){to_g, to_g, to_g};
    return true;
}

static double goes_g(const exchange *made) {
    return made->goes[0].grams + (made->goes_count == 2 ? made->goes[1].grams : 0);
}

/* -- liquid ---------------------------------------------------------------------------------- */

static const liquid_change liquid_kept = {.line = SIZE_MAX, .rescues = true};

/* The first line of `what` that stays; SIZE_MAX where there is none. */
static size_t line_of(const exchange *made, const ingredient *what) {
    const recipe_lines *lines = &made->about->of->lines;
    for (size_t i = 0; i < lines->count; i++)
        if (lines->items[i].what == what && !(i < FACTS_LINES_MOST && made->replaced >> i & 1u))
            return i;
    return SIZE_MAX;
}

/* What was added or held back in the bake, in proportion. */
static liquid_change liquid_tried(arena *a, const exchange *made, const trial *bake) {
    double grams = bake->liquid_g * bake_times(a, bake, made->goes[0].grams);
    size_t line = bake->liquid ? line_of(made, bake->liquid)
                               : liquid_line(made->about, made->replaced, grams);
    if (grams == 0 || (grams < 0 && line == SIZE_MAX))
        return liquid_kept;
    return (liquid_change){
        .grams = {grams, grams, grams}, .needed_g = grams, .line = line, .rescues = true};
}

/* The exchange as far as it takes place in the part that is judged. */
static exchange in_part(const exchange *made, const leaving *what) {
    exchange inside = *made;
    inside.before = &what->part_before;
    inside.comes.grams *= what->share_in_part;
    inside.also_comes.grams *= what->share_in_part;
    for (size_t i = 0; i < inside.goes_count; i++)
        inside.goes[i].grams *= what->share_in_part;
    return inside;
}

/* A combined swap has kept fat and bulk, wherever they come from, so free water a gram of dry stays
 * what it was when free water does. */
static liquid_change liquid_combined(const exchange *made) {
    balance after = exchange_balance(made, liquid_at(made->about, SIZE_MAX), 0);
    range free_g = exchange_free_change_g(made, &after, false);
    double water_g = -free_g.typical;
    liquid_change change = {.line = liquid_line(made->about, made->replaced, water_g)};
    double wets = balance_water_per_g(liquid_at(made->about, change.line));
    double least_g = change.line == SIZE_MAX ? 0 : -made->about->of->weights[change.line].grams;
    change.needed_g = water_g / wets;
    change.grams = (range){fmax(-free_g.high / wets, least_g), fmax(change.needed_g, least_g),
                           fmax(-free_g.low / wets, least_g)};
    change.rescues =
        fabs(water_g) <= LIQUID_RESCUES_MOST * made->before->batch_g &&
        change.grams.typical - change.needed_g <= LIQUID_SHORT_MOST * made->before->batch_g;
    return change;
}

static bool keeps_free_water(const swap_rule *rule) {
    return rule->amount == AMOUNT_MATCH_BALANCE && (rule->keeps >> KEPT_FREE_WATER & 1u);
}

static liquid_change liquid_by(arena *a, decision by, const exchange *made, const leaving *what,
                               bool promised) {
    if (promised && by.bake)
        return liquid_tried(a, made, by.bake);
    if (promised && (by.rule->keep_liquid || keeps_free_water(by.rule)))
        return liquid_kept;
    if (what->part->is_beside) /* nobody thins a topping to keep a batter */
        return liquid_kept;
    exchange inside = in_part(made, what);
    if (promised && by.rule->amount == AMOUNT_MATCH_BALANCE)
        return exchange_known(&inside) ? liquid_combined(&inside) : liquid_kept;
    liquid_change change = liquid_rebalanced(&inside);
    if (!promised) {
        change.grams = (range){0};
        change.line = SIZE_MAX;
    }
    return change;
}

/* -- what changes ---------------------------------------------------------------------------- */

/* Swapped less written, per portion as baked: the bake loss, a share of the weight, is water. */
static macros macros_change(const exchange *made, const ingredient *liquid, double liquid_g) {
    const recipe *of = made->about->of;
    macros come = macros_of_ingredient(made->comes.what, made->comes.grams), go, moved;
    go = macros_of_ingredient(made->goes[0].what, made->goes[0].grams);
    if (made->goes_count == 2) {
        moved = macros_of_ingredient(made->goes[1].what, made->goes[1].grams);
        go = macros_sum(&go, &moved);
    }
    if (made->also_comes.what) {
        moved = macros_of_ingredient(made->also_comes.what, made->also_comes.grams);
        come = macros_sum(&come, &moved);
    }
    if (liquid_g != 0) {
        macros *side = liquid_g > 0 ? &come : &go;
        moved = macros_of_ingredient(liquid, fabs(liquid_g));
        *side = macros_sum(side, &moved);
    }
    macros change = macros_difference(&come, &go);
    double lost_g = of->bake_loss * change.weight_g;
    change.weight_g -= lost_g;
    change.of.of[NUTRIENT_WATER] -= lost_g;
    return macros_times(&change, 1 / (of->portions > 0 ? of->portions : 1));
}

/* Of the old, what does not go whole keeps its allergens in the recipe. */
static void set_foods(swap_note *note, const leaving *what, const exchange *made) {
    allergen_set after = what->kept_allergens | note->to->allergens;
    diet_set diets_after = what->kept_diets & diets_of_ingredient(note->to);
    if (note->also_to) {
        after |= note->also_to->allergens;
        diets_after &= diets_of_ingredient(note->also_to);
    }
    if (note->liquid_apart) {
        after |= note->liquid_apart->allergens;
        diets_after &= diets_of_ingredient(note->liquid_apart);
    }
    for (size_t i = 0; i < what->count; i++) {
        if (made->goes[i].grams >= what->goes[i].grams)
            continue;
        after |= what->goes[i].what->allergens;
        diets_after &= diets_of_ingredient(what->goes[i].what);
    }
    note->gained = after & ~what->allergens;
    note->lost = what->allergens & ~after;
    note->diets_lost = what->diets & ~diets_after;
    note->diets_gained = diets_after & ~what->diets;
}

/* -- words ----------------------------------------------------------------------------------- */

/* "Came out rubbery and dry. Thin batter, ran over the griddle." */
static const char *expected_of(arena *a, const trial *bake) {
    if (!bake->texture.count)
        return bake->remarks;
    const char *texture = words_joined(a, &bake->texture);
    return arena_format(a, "Came out %s.%s%s", texture, bake->remarks ? " " : "",
                        bake->remarks ? bake->remarks : "");
}

static void set_words(arena *a, swap_note *note) {
    const swap_rule *rule = note->by.rule;
    if (note->by.bake) {
        note->expect = expected_of(a, note->by.bake);
        note->basis = "trial";
    } else if (rule && note->in_the_way) { /* what to expect of it is not to be had */
        note->basis = rule->basis;
    } else if (rule) {
        note->expect = rule->expect;
        note->because = rule->because;
        note->also = rule->also;
        note->also_asks = rule->also_asks;
        note->basis = rule->basis;
    }
}

/* -- the whole ------------------------------------------------------------------------------- */

static void set_amounts(swap_note *note, const exchange *made, range comes_g,
                        const liquid_change *liquid) {
    const trial *bake = note->by.bake;
    if (bake && bake->liquid && liquid->line == SIZE_MAX && liquid->grams.typical > 0)
        note->liquid_apart = bake->liquid;
    const ingredient *wet =
        note->liquid_apart ? note->liquid_apart : liquid_at(made->about, liquid->line);
    note->from_g = made->goes[0].grams;
    note->second_from_g = made->goes_count == 2 ? made->goes[1].grams : 0;
    note->to_g = comes_g.typical;
    note->also_to_g = comes_g.typical > 0 ? made->also_comes.grams : 0;
    note->to_low_g = comes_g.low;
    note->to_high_g = comes_g.high;
    note->liquid_change_g = liquid->grams.typical;
    note->liquid_low_g = liquid->grams.low;
    note->liquid_high_g = liquid->grams.high;
    note->liquid_needed_g = liquid->needed_g;
    note->liquid_line = liquid->line;
    note->past_rescue = !liquid->rescues && !note->in_the_way;
    note->heated = made->about->baked;
    note->uptake_known = exchange_known(made);
    note->before = *made->before;
    note->after = exchange_balance(made, wet, liquid->grams.typical);
    note->change = macros_change(made, wet, liquid->grams.typical);
}

/* Where a rule meant for many recipes asks more of this one than it bears: see FIGURES_DIFFER. */
static void take_figures(swap_note *note, const leaving *what, exchange *made, range *comes_g,
                         liquid_change *liquid) {
    best_amounts best;
    exchange equal = in_part(made, what);
    equal.comes.grams = goes_g(&equal);
    const swap_rule *rule = note->by.by == SAID_BY_REFERENCE ? note->by.rule : NULL;
    bool general = rule && (rule->amount == AMOUNT_WEIGHT || rule->amount == AMOUNT_VOLUME);
    if (!general || liquid->rescues || is_combined(made) || !balance_best(&equal, &best))
        return;
    double share = what->share_in_part;
    range figures_g = {best.comes_g.low / share, best.comes_g.typical / share,
                       best.comes_g.high / share};
    double times = figures_g.typical / comes_g->typical;
    if (fabs(times - 1) <= FIGURES_DIFFER || times > FIGURES_MOST || times < 1 / FIGURES_MOST)
        return;
    note->ruled_g = comes_g->typical;
    *comes_g = figures_g;
    made->comes.grams = figures_g.typical;
    liquid->grams = best.liquid_g;
    liquid->line = best.line;
}

/* Nothing is promised: looked at as if equal weight came. */
static void take_equal_weight(exchange *made) {
    double each_g = goes_g(made) / (made->also_comes.what ? 2 : 1);
    made->comes.grams = each_g;
    made->also_comes.grams = made->also_comes.what ? each_g : 0;
}

swap_note answer_of(arena *a, const leaving *what, const decided *said) {
    swap_note note = {.line = what->lines[0],
                      .second_line = what->lines[1],
                      .to = said->to,
                      .also_to = said->also,
                      .says = decision_says(said->by),
                      .by = said->by};
    exchange made = {.about = what->part,
                     .replaced = what->replaced,
                     .before = &what->before,
                     .goes = {what->goes[0], what->goes[1]},
                     .goes_count = what->count,
                     .comes = {said->to, 0},
                     .also_comes = {said->also, 0}};
    range comes_g = {0};
    bool promised = promise(a, said->by, &made, &comes_g, &note.in_the_way);
    if (note.in_the_way)
        note.says = VERDICT_AVOID;
    if (promised)
        made.comes.grams = comes_g.typical;
    else
        take_equal_weight(&made);
    liquid_change liquid = liquid_by(a, said->by, &made, what, promised);
    if (promised)
        take_figures(&note, what, &made, &comes_g, &liquid);
    set_amounts(&note, &made, comes_g, &liquid);
    set_foods(&note, what, &made);
    set_words(a, &note);
    return note;
}
