#include "site/view_water.h"

#include "base/number.h"
#include "pantry/borrowed.h"
#include "site/say.h"
#include "site/view_balance.h"
#include "site/view_ingredient.h"
#include "swap/balance_best.h"
#include "swap/balance_quantities.h"

#include <math.h>
#include <stdint.h>

/* -- what is reckoned with ------------------------------------------------------------------- */

static const char *percent(arena *a, const language *in, double share) {
    return say_percent(a, in, share, 1);
}

static const char *figure(arena *a, const language *in, double value) {
    return say_figure(a, in, value, 3);
}

/* `name` says what the figure is of, `why` how it is known: sentences without places. */
static void put_figure(arena *a, const language *in, view *list, sentence_key name,
                       const char *value) {
    const sentence_key why = name + 1; /* stands behind it in base/sentences.h */
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", say(a, in, name, NULL));
    view_put_text(a, put, "text", value);
    view_put_text(a, put, "because", say(a, in, why, NULL));
}

static void put_constants(arena *a, const language *in, view *page) {
    view *list = view_put_list(a, page, "constants");
    put_figure(a, in, list, SAY_WATER_SHARE,
               SAY(a, in, WITH_RANGE, figure(a, in, UPTAKE_IN_BATTER),
                   figure(a, in, UPTAKE_IN_BATTER_LOW), figure(a, in, UPTAKE_IN_BATTER_HIGH)));
    put_figure(a, in, list, SAY_WATER_SOFT, SAID(in, HALF_ITS_WEIGHT));
    put_figure(a, in, list, SAY_WATER_PER_DRY,
               arena_format(a, "%s g", figure(a, in, FREE_PER_DRY_MOST)));
    put_figure(a, in, list, SAY_WATER_CHANGE, percent(a, in, LIQUID_RESCUES_MOST));
    put_figure(a, in, list, SAY_WATER_SHORT, percent(a, in, LIQUID_SHORT_MOST));
    put_figure(a, in, list, SAY_WATER_BOUNDS,
               SAY(a, in, TIMES_WHAT_GOES, figure(a, in, BEST_LEAST), figure(a, in, BEST_MOST)));
    put_figure(a, in, list, SAY_WATER_HELD_BACK, percent(a, in, BEST_HELD_BACK_MOST));
    put_figure(a, in, list, SAY_WATER_WEIGHT, figure(a, in, BEST_WATER_WEIGHT));
    put_figure(a, in, list, SAY_WATER_WIDENED, SAY(a, in, TIMES, figure(a, in, BORROWED_WIDENED)));
}

static void put_quantities(arena *a, const language *in, view *page) {
    view *list = view_put_list(a, page, "steps");
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++) {
        const quantity_facts *facts = balance_quantity_facts(q);
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "name", in->quantities[q]);
        view_put_text(a, put, "step_text", percent(a, in, facts->step));
        view_put_text(a, put, "own_text",
                      facts->step_own > 0 ? percent(a, in, facts->step_own) : NULL);
        view_put_text(a, put, "weight_text", figure(a, in, facts->weight));
        view_put_text(a, put, "because", in->quantity_reasons[q]);
    }
}

/* -- what takes up water --------------------------------------------------------------------- */

static const char *uptake_text(arena *a, const language *in, range of) {
    return SAY(a, in, WITH_RANGE, say_figure(a, in, of.typical, 2), say_figure(a, in, of.low, 2),
               say_figure(a, in, of.high, 2));
}

static void put_family(arena *a, view *groups, const page_maker *by, family which) {
    const language *in = page_language(by);
    const pantry *shelf = &by->folder->shelf;
    view *group = view_object(a);
    view_put_text(a, group, "name", in->families[which]);
    view *items = view_put_list(a, group, "items");
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *what = shelf->items[i];
        if (what->in != which || !what->has_uptake)
            continue;
        view *put = view_put_object(a, items, NULL);
        view_put_text(a, put, "name", what->name);
        view_put_text(a, put, "cold_text", uptake_text(a, in, what->cold_uptake));
        view_put_text(a, put, "heated_text", uptake_text(a, in, what->heated_uptake));
        view_put_text(a, put, "sets_text", in->heat_sets[what->sets]);
        view_put_source(a, in, put, "source", &what->uptake_source);
    }
    if (items->count)
        view_put(groups, NULL, group);
}

/* -- one swap worked through ----------------------------------------------------------------- */

static bool is_whey(const ingredient *what) {
    return kind_matches("whey", what->kind);
}

bool water_example_in(const recipe_row *row, const pantry *shelf, size_t *from, size_t *to) {
    for (size_t i = 0; i < row->swap_count; i++) {
        const ingredient *goes = shelf->items[row->swaps[i].from];
        const ingredient *comes = shelf->items[row->swaps[i].to];
        bool powders = goes->in == FAMILY_PROTEIN_POWDER && comes->in == FAMILY_PROTEIN_POWDER;
        bool other = (is_whey(goes) && comes->from == ORIGIN_PLANT) ||
                     (is_whey(comes) && goes->from == ORIGIN_PLANT);
        if (!powders || !other)
            continue;
        *from = row->swaps[i].from;
        *to = row->swaps[i].to;
        return true;
    }
    return false;
}

/* "75 g pea protein isolate, 3 times its weight", and what that makes in the bowl. */
static void put_taker(arena *a, const language *in, view *list, const ingredient *what,
                      double grams) {
    balance one = balance_of_ingredient(what, grams);
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", what->name);
    view_put_text(a, put, "grams_text", say_weight(a, in, grams));
    view_put_text(a, put, "uptake_text", say_figure(a, in, what->cold_uptake.typical, 2));
    view_put_text(a, put, "taken_text", say_weight(a, in, one.taken_cold_g.typical));
}

static void put_takers(arena *a, const language *in, view *to, const water_example *shown) {
    view *list = view_put_list(a, to, "takers");
    for (size_t i = 0; i < shown->of->lines.count; i++) {
        const ingredient *what = shown->of->lines.items[i].what;
        double grams = shown->of->weights[i].grams;
        if (what && balance_cold_uptake(what).typical > 0 && grams > 0)
            put_taker(a, in, list, what, grams);
    }
}

static size_t line_of(const recipe *of, const ingredient *what) {
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what == what && of->weights[i].grams > 0)
            return i;
    return SIZE_MAX;
}

static void put_sums(arena *a, const language *in, view *to, const swap_note *note) {
    double free_g = balance_free_cold_g(&note->before).typical;
    view_put_text(a, to, "water_text", say_weight(a, in, note->before.water_g));
    view_put_text(a, to, "taken_text", say_weight(a, in, note->before.taken_cold_g.typical));
    view_put_text(a, to, "free_text", arena_format(a, "%s g", say_figure(a, in, free_g, 0)));
    view_put_text(a, to, "dry_text", say_weight(a, in, note->before.dry_g));
    view_put_text(a, to, "per_dry_text",
                  say_figure(a, in, liquid_free_per_dry(fmax(free_g, 0), note->before.dry_g), 2));
}

static void put_example(arena *a, view *page, const page_maker *by, const water_example *shown) {
    const site_folder *folder = by->folder;
    const language *in = page_language(by);
    const recipe *of = shown->of;
    size_t line = line_of(of, shown->from);
    if (line == SIZE_MAX)
        return;
    recipe_facts about = facts_of(a, of, &folder->shelf);
    swap_note note = note_of(a, &folder->book, &about, line, shown->to);
    const note_words words = {
        .in = in, .of = of, .book = &folder->book, .cups = folder->settings.cups};
    view *put = view_put_object(a, page, "example");
    view_put_text(a, put, "title", of->title);
    view_put_text(a, put, "href", path_of_recipe(a, of->slug));
    view_put_text(a, put, "from", shown->from->name);
    view_put_text(a, put, "to", shown->to->name);
    view_put_text(a, put, "share_text", figure(a, in, UPTAKE_IN_BATTER));
    put_takers(a, in, put, shown);
    put_sums(a, in, put, &note);
    view_put_balance(a, put, "balance", &words, &about, &note);
}

view *view_of_water(arena *a, const page_maker *by, const water_example *shown) {
    const language *in = page_language(by);
    view *page =
        page_view(a, by, "water", WATER_PATH, SAID(in, WATER_TITLE), SAID(in, WATER_SUMMARY));
    put_constants(a, in, page);
    put_quantities(a, in, page);
    view *groups = view_put_list(a, page, "groups");
    for (size_t i = 0; i < FAMILY_COUNT; i++)
        put_family(a, groups, by, (family)i);
    if (shown)
        put_example(a, page, by, shown);
    return page;
}
