#include "site/view_formula.h"

#include "base/number.h"
#include "nutrition/lines.h"
#include "site/formula_draft.h"
#include "site/phrase.h"
#include "site/say.h"
#include "site/view_verdict.h"

#include <math.h>

/* -- words
 * ----------------------------------------------------------------------------------------- */

/* "24 g", "1.20 EUR". */
static const char *figure_text(arena *a, const site_settings *by, const formula_target *target,
                               double value) {
    if (target->is_cost)
        return money_text(a, value, by->currency);
    return say_amount(a, by->in, value, target->unit);
}

/* "at least 24 g", "150 to 220 kcal". */
static const char *asked_text(arena *a, const site_settings *by, const formula_target *target) {
    const char *least = figure_text(a, by, target, target->least);
    const char *most = figure_text(a, by, target, target->most);
    if (target->most >= INFINITY)
        return arena_format(a, "at least %s", least);
    if (target->least <= -INFINITY)
        return arena_format(a, "at most %s", most);
    return arena_format(a, "%s to %s", least, most);
}

static const char *part_obstacle(arena *a, const formula_part *part, double by) {
    const char *off = kitchen_weight(a, fabs(by));
    if (by > 0)
        return arena_format(a, "It would take %s more %s than the %s that may be used.", off,
                            part->what->name, kitchen_weight(a, part->most_g));
    return arena_format(a, "It would take %s less %s than the %s that must be used.", off,
                        part->what->name, kitchen_weight(a, part->least_g));
}

const char *formula_obstacle_text(arena *a, const formula_report *report,
                                  const formula_obstacle *what) {
    const formula_brief *of = report->of;
    const formula_answer *by = report->by;
    if (what->sort == OBSTACLE_PART)
        return part_obstacle(a, &of->parts.items[what->which], what->by);
    if (what->sort == OBSTACLE_BATCH)
        return arena_format(a, "The batch would have to weigh %s %s than %s.",
                            kitchen_weight(a, fabs(what->by)), what->by > 0 ? "more" : "less",
                            kitchen_weight(a, what->by > 0 ? by->batch_most_g : by->batch_least_g));
    if (what->sort == OBSTACLE_WATER)
        return arena_format(a, "It would be far %s than the batters or doughs of this build.",
                            what->by > 0 ? "wetter" : "drier");
    const formula_target *target = &of->targets.items[what->which];
    return arena_format(a, "No amounts of these ingredients reach %s of %s: they stay %s %s.",
                        target->key, asked_text(a, report->settings, target),
                        figure_text(a, report->settings, target, fabs(what->by)),
                        what->by > 0 ? "over" : "short");
}

static bool is_held(const formula_target *target, double reached) {
    double slack = 1e-6 + 1e-6 * fabs(reached);
    return reached >= target->least - slack && reached <= target->most + slack;
}

static const char *ratio_text(arena *a, build_quantity which, double ratio) {
    if (build_quantity_is_share(which))
        return arena_format(a, "%s %%", number_copy(a, ratio * 100, 1));
    return number_copy(a, ratio, 2);
}

/* "3 recipes of this build: A, B and C", and what is thin about that. */
static const char *rests_on(arena *a, const formula_report *report) {
    const build_norms *norms = report->norms;
    if (!norms->count)
        return "No recipe of this build is there to learn its balance from: the amounts rest on "
               "the "
               "targets and bounds alone.";
    const char *listed = say_list(a, report->settings->in, norms->titles, norms->count);
    return arena_format(
        a, "Its balance is learned from %s%s: %s.%s", phrase_count(a, norms->count, "recipe"),
        norms->any_setting ? " of the kind, since too few are set by this" : "", listed,
        norms->count < BUILD_FEW ? " That is few: take the balance as a hint." : "");
}

/* Names of the used parts that lack the target's figure. */
static word_list lacking(arena *a, const formula_report *report, const formula_target *target) {
    word_list listed = {0};
    for (size_t i = 0; i < report->of->parts.count; i++)
        if (report->by->grams[i] > 0 && formula_lacks(target, report->of->parts.items[i].what))
            LIST_ADD(a, &listed, report->of->parts.items[i].what->name);
    return listed;
}

static const char *bounds_text(arena *a, const formula_part *part) {
    if (part->least_g >= part->most_g)
        return "fixed";
    const char *least = kitchen_weight(a, part->least_g);
    return part->most_g < INFINITY
               ? arena_format(a, "%s to %s", least, kitchen_weight(a, part->most_g))
               : arena_format(a, "from %s", least);
}

/* -- for people
 * ------------------------------------------------------------------------------------- */

static void add_amounts(arena *a, text *t, const formula_report *report) {
    for (size_t i = 0; i < report->of->parts.count; i++) {
        const formula_part *part = &report->of->parts.items[i];
        text_format(t, "  %-44s %s\n",
                    report->by->grams[i] > 0
                        ? formula_line(a, part, report->by->grams[i], report->settings->cups)
                        : arena_format(a, "no %s", part->what->name),
                    bounds_text(a, part));
    }
    text_format(t, "  %-44s %s to %s\n",
                arena_format(a, "%s as mixed", kitchen_weight(a, report->by->batch_g)),
                kitchen_weight(a, report->by->batch_least_g),
                kitchen_weight(a, report->by->batch_most_g));
}

static void add_targets(arena *a, text *t, const formula_report *report) {
    const site_settings *by = report->settings;
    if (report->of->targets.count)
        text_add(t, "\n  A portion\n");
    for (size_t i = 0; i < report->of->targets.count; i++) {
        const formula_target *target = &report->of->targets.items[i];
        double reached = report->by->reached[i];
        word_list without = lacking(a, report, target);
        text_format(t, "    %-14s %10s   %s: %s\n", target->key,
                    figure_text(a, by, target, reached), asked_text(a, by, target),
                    !is_held(target, reached) ? "not met"
                    : without.count           ? "met as far as is known"
                                              : "met");
        if (without.count)
            text_format(t, "      no figure for %s\n", words_joined(a, &without));
    }
}

static void add_balance(arena *a, text *t, const formula_report *report) {
    if (!report->norms->count)
        return;
    text_format(t, "\n  %-46s %8s   of %s\n", "Balance", "here",
                phrase_count(a, report->norms->count, "recipe"));
    for (build_quantity q = 0; q < BUILD_QUANTITIES; q++) {
        const range *r = &report->norms->ratio[q];
        double here = report->by->ratio[q];
        bool inside = build_is_usual(report->norms, q, here);
        text_format(t, "    %-44s %8s   %s (%s to %s)%s\n", build_quantity_name(q),
                    ratio_text(a, q, here), ratio_text(a, q, r->typical), ratio_text(a, q, r->low),
                    ratio_text(a, q, r->high), inside ? "" : ", outside");
    }
}

/* "Dairy is 59 % of the batch; the recipe with most of it has 32 %." */
static const char *beyond_text(arena *a, const formula_report *report, family in) {
    const build_norms *norms = report->norms;
    double here = formula_share(report->of, report->by, in);
    if (!norms->count || here <= formula_share_most(norms, in) + 0.005)
        return NULL;
    return arena_format(a, "%s is %s %% of the batch; %s has %s %%.",
                        phrase_capitalised(a, family_word(in)), number_copy(a, here * 100, 0),
                        norms->count == 1 ? "the one recipe it is learned from"
                                          : "of those recipes the one with most of it",
                        number_copy(a, norms->share_most[in] * 100, 0));
}

static void add_beyond(arena *a, text *t, const formula_report *report) {
    for (size_t in = 0; in < FAMILY_COUNT; in++) {
        const char *sentence = beyond_text(a, report, (family)in);
        if (sentence)
            text_format(t, "  %s\n", sentence);
    }
}

static void add_figures(arena *a, text *t, const recipe_figures *of) {
    const double *portion = of->macros.portion.of.of;
    static const nutrient shown[] = {NUTRIENT_PROTEIN, NUTRIENT_FAT, NUTRIENT_CARBOHYDRATE,
                                     NUTRIENT_FIBRE, NUTRIENT_SUGARS};
    const char *contains = say_allergens(a, of->by->in, of->allergens, of->by->law);
    text_format(t, "\n  A portion: %s",
                say_amount(a, of->by->in, portion[energy_nutrient(of->by->energy)], "kcal"));
    for (size_t i = 0; i < COUNT(shown); i++)
        text_format(t, ", %s %s", nutrient_key(shown[i]),
                    say_amount(a, of->by->in, portion[shown[i]], "g"));
    text_format(t, "\n  Contains: %s\n",
                contains[0] ? contains : "no listed allergen by its ingredients; read every label");
    if (of->cost > 0)
        text_format(t, "  Cost: %s a portion%s\n",
                    money_text(a, of->cost / of->of->portions, of->by->currency),
                    of->cost_lacking ? ", some prices unknown" : "");
    caution_set given = cautions_of(of->of, portion[NUTRIENT_PROTEIN]);
    for (size_t i = 0; i < CAUTION_COUNT; i++)
        if (given >> i & 1u)
            text_format(t, "  %s\n", of->by->in->cautions[i]);
}

/* Null where it is set by what was asked for. */
static const char *set_otherwise(arena *a, const formula_report *report) {
    if (!report->of->settings || report->of->settings >> report->sets & 1u)
        return NULL;
    return arena_format(a, "By its figures it is set by %s, not by what the brief asks for.",
                        setting_word(report->sets));
}

static const char caution[] = "An estimate from tables: bake a trial before you publish it.";

void formula_add_words(arena *a, text *t, const formula_report *report) {
    const formula_brief *of = report->of;
    text_format(t, "%s: makes %s, a portion is %s\n  %s\n\n", of->title,
                say_yield(a, report->settings->in, &of->makes),
                say_yield(a, report->settings->in, &of->portion), rests_on(a, report));
    for (size_t i = 0; i < report->by->obstacle_count; i++)
        text_format(t, "  %s\n", formula_obstacle_text(a, report, &report->by->obstacles[i]));
    if (!report->by->found) {
        text_add(t, "  No amounts were found that keep the bounds.\n");
        return;
    }
    if (!report->by->met)
        text_add(t, "  Within the bounds, this comes nearest:\n\n");
    add_amounts(a, t, report);
    add_beyond(a, t, report);
    add_targets(a, t, report);
    add_balance(a, t, report);
    add_figures(a, t, report->figures);
    const char *otherwise = set_otherwise(a, report);
    if (otherwise)
        text_format(t, "  %s\n", otherwise);
    text_format(t, "  %s\n", caution);
}

/* -- for programs
 * ----------------------------------------------------------------------------------- */

static void put_bound(arena *a, view *to, const char *key, double value) {
    if (fabs(value) < INFINITY)
        view_put_number(a, to, key, value, 2);
    else
        view_put_text(a, to, key, NULL);
}

static void put_amounts(arena *a, view *to, const formula_report *report) {
    view *list = view_put_list(a, to, "ingredients");
    for (size_t i = 0; report->by->found && i < report->of->parts.count; i++) {
        const formula_part *part = &report->of->parts.items[i];
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "ingredient", part->what->name);
        view_put_number(a, one, "grams", report->by->grams[i], 2);
        put_bound(a, one, "least_g", part->least_g);
        put_bound(a, one, "most_g", part->most_g);
        view_put_text(a, one, "line",
                      formula_line(a, part, report->by->grams[i], report->settings->cups));
    }
}

static void put_targets(arena *a, view *to, const formula_report *report) {
    view *list = view_put_list(a, to, "targets");
    for (size_t i = 0; report->by->found && i < report->of->targets.count; i++) {
        const formula_target *target = &report->of->targets.items[i];
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "figure", target->key);
        put_bound(a, one, "least", target->least);
        put_bound(a, one, "most", target->most);
        view_put_number(a, one, "reached", report->by->reached[i], 2);
        view_put_bool(a, one, "met", is_held(target, report->by->reached[i]));
        word_list without = lacking(a, report, target);
        view *listed = view_put_list(a, one, "no_figure_for");
        for (size_t k = 0; k < without.count; k++)
            view_put_text(a, listed, NULL, without.items[k]);
    }
}

static void put_balance(arena *a, view *to, const formula_report *report) {
    view *list = view_put_list(a, to, "balance");
    for (build_quantity q = 0; report->norms->count && q < BUILD_QUANTITIES; q++) {
        const range *r = &report->norms->ratio[q];
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "quantity", build_quantity_key(q));
        view_put_number(a, one, "here", report->by->ratio[q], 4);
        view_put_number(a, one, "median", r->typical, 4);
        view_put_number(a, one, "low", r->low, 4);
        view_put_number(a, one, "high", r->high, 4);
        view_put_bool(a, one, "usual", build_is_usual(report->norms, q, report->by->ratio[q]));
    }
}

static void put_rest(arena *a, view *to, const formula_report *report) {
    view *list = view_put_list(a, to, "learned_from");
    for (size_t i = 0; i < report->norms->count; i++)
        view_put_text(a, list, NULL, report->norms->titles[i]);
    view_put_bool(a, to, "of_any_setting", report->norms->any_setting);
    list = view_put_list(a, to, "beyond");
    for (size_t in = 0; report->by->found && in < FAMILY_COUNT; in++)
        if (beyond_text(a, report, (family)in))
            view_put_text(a, list, NULL, beyond_text(a, report, (family)in));
    list = view_put_list(a, to, "in_the_way");
    for (size_t i = 0; i < report->by->obstacle_count; i++)
        view_put_text(a, list, NULL, formula_obstacle_text(a, report, &report->by->obstacles[i]));
}

view *view_of_formula(arena *a, const formula_report *report) {
    view *to = view_object(a);
    view_put_text(a, to, "title", report->of->title);
    view_put_text(a, to, "kind", report->of->kind);
    view_put_text(a, to, "set_by", report->figures ? setting_word(report->sets) : NULL);
    view_put_bool(a, to, "met", report->by->met);
    put_rest(a, to, report);
    put_amounts(a, to, report);
    view_put_number(a, to, "batch_g", report->by->batch_g, 1);
    put_targets(a, to, report);
    put_balance(a, to, report);
    view_put(to, "figures", report->figures ? view_of_macros(a, report->figures) : view_object(a));
    view_put_text(a, to, "caution", caution);
    view_put_text(a, to, "recipe", report->draft);
    return to;
}
