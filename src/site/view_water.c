#include "site/view_water.h"

#include "base/number.h"
#include "pantry/borrowed.h"
#include "site/phrase.h"
#include "site/view_balance.h"
#include "site/view_ingredient.h"
#include "swap/balance_best.h"
#include "swap/balance_quantities.h"

#include <math.h>
#include <stdint.h>

/* -- what is reckoned with ------------------------------------------------------------------- */

static const char *percent(arena *a, double share) {
    return arena_format(a, "%s %%", number_copy(a, share * 100, 1));
}

static const char *figure(arena *a, double value) {
    return number_copy(a, value, 3);
}

static void put_figure(arena *a, view *list, const char *name, const char *value, const char *why) {
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", name);
    view_put_text(a, put, "text", value);
    view_put_text(a, put, "because", why);
}

static void put_constants(arena *a, view *page) {
    view *list = view_put_list(a, page, "constants");
    put_figure(a, list, "Share of a published uptake that counts in a batter",
               arena_format(a, "%s (%s to %s)", figure(a, UPTAKE_IN_BATTER),
                            figure(a, UPTAKE_IN_BATTER_LOW), figure(a, UPTAKE_IN_BATTER_HIGH)),
               "Uptakes are measured in plenty of water. In a batter flour, sugar and egg compete "
               "for it; with this share the spoons of liquid a scoop come out as bakers have them. "
               "An estimate.");
    put_figure(a, list, "Soft-setting protein counts as", "half its weight",
               "Pea and soy gel weaker than egg white or whey. An estimate.");
    put_figure(a, list, "Most free water that a gram of dry asks for",
               arena_format(a, "%s g", figure(a, FREE_PER_DRY_MOST)),
               "In a custard what is dry is carried, not wetted. An estimate.");
    put_figure(a, list, "Most change of the water, of the batch weight",
               percent(a, LIQUID_RESCUES_MOST),
               "Past it no liquid is said to rescue a swap. Common practice, no source.");
    put_figure(a, list, "Most that may be missing to hold back, of the batch weight",
               percent(a, LIQUID_SHORT_MOST),
               "Where no line has as much liquid to give. An estimate.");
    put_figure(a, list, "Bounds of the closest amount",
               arena_format(a, "%s to %s times the weight of what goes", figure(a, BEST_LEAST),
                            figure(a, BEST_MOST)),
               "Dried egg white stands for eight times its weight of the liquid one, and the other "
               "way round.");
    put_figure(a, list, "Most that the closest amounts hold back of a line",
               percent(a, BEST_HELD_BACK_MOST),
               "A batter without its milk is another batter. An estimate.");
    put_figure(a, list, "Weight of all the water of the batch", figure(a, BEST_WATER_WEIGHT),
               "The less a second line changes the better.");
    put_figure(a, list, "Ranges taken from another entry are widened by",
               arena_format(a, "%s times", figure(a, BORROWED_WIDENED)),
               "For a product whose uptake nobody states: it is that kind of powder, not that "
               "powder. An estimate.");
}

static void put_quantities(arena *a, view *page) {
    view *list = view_put_list(a, page, "steps");
    for (balance_quantity q = 0; q < BALANCE_QUANTITIES; q++) {
        const quantity_facts *facts = balance_quantity_facts(q);
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "name", facts->name);
        view_put_text(a, put, "step_text", percent(a, facts->step));
        view_put_text(a, put, "own_text", facts->step_own > 0 ? percent(a, facts->step_own) : NULL);
        view_put_text(a, put, "weight_text", figure(a, facts->weight));
        view_put_text(a, put, "because", facts->since);
    }
}

/* -- what takes up water --------------------------------------------------------------------- */

static const char *uptake_text(arena *a, range of) {
    return arena_format(a, "%s (%s to %s)", number_copy(a, of.typical, 2),
                        number_copy(a, of.low, 2), number_copy(a, of.high, 2));
}

static void put_family(arena *a, view *groups, const pantry *shelf, family in) {
    view *group = view_object(a);
    view_put_text(a, group, "name", family_word(in));
    view *items = view_put_list(a, group, "items");
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *what = shelf->items[i];
        if (what->in != in || !what->has_uptake)
            continue;
        view *put = view_put_object(a, items, NULL);
        view_put_text(a, put, "name", what->name);
        view_put_text(a, put, "cold_text", uptake_text(a, what->cold_uptake));
        view_put_text(a, put, "heated_text", uptake_text(a, what->heated_uptake));
        view_put_text(a, put, "sets_text", heat_set_word(what->sets));
        view_put_source(a, put, "source", &what->uptake_source);
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
static void put_taker(arena *a, view *list, const ingredient *what, double grams) {
    balance one = balance_of_ingredient(what, grams);
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "name", what->name);
    view_put_text(a, put, "grams_text", kitchen_weight(a, grams));
    view_put_text(a, put, "uptake_text", number_copy(a, what->cold_uptake.typical, 2));
    view_put_text(a, put, "taken_text", kitchen_weight(a, one.taken_cold_g.typical));
}

static void put_takers(arena *a, view *to, const water_example *shown) {
    view *list = view_put_list(a, to, "takers");
    for (size_t i = 0; i < shown->of->lines.count; i++) {
        const ingredient *what = shown->of->lines.items[i].what;
        double grams = shown->of->weights[i].grams;
        if (what && balance_cold_uptake(what).typical > 0 && grams > 0)
            put_taker(a, list, what, grams);
    }
}

static size_t line_of(const recipe *of, const ingredient *what) {
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what == what && of->weights[i].grams > 0)
            return i;
    return SIZE_MAX;
}

static void put_sums(arena *a, view *to, const swap_note *note) {
    double free_g = balance_free_cold_g(&note->before).typical;
    view_put_text(a, to, "water_text", kitchen_weight(a, note->before.water_g));
    view_put_text(a, to, "taken_text", kitchen_weight(a, note->before.taken_cold_g.typical));
    view_put_text(a, to, "free_text", arena_format(a, "%s g", number_copy(a, free_g, 0)));
    view_put_text(a, to, "dry_text", kitchen_weight(a, note->before.dry_g));
    view_put_text(a, to, "per_dry_text",
                  number_copy(a, liquid_free_per_dry(fmax(free_g, 0), note->before.dry_g), 2));
}

static void put_example(arena *a, view *page, const page_maker *by, const water_example *shown) {
    const site_folder *folder = by->folder;
    const recipe *of = shown->of;
    size_t line = line_of(of, shown->from);
    if (line == SIZE_MAX)
        return;
    recipe_facts about = facts_of(a, of, &folder->shelf);
    swap_note note = note_of(a, &folder->book, &about, line, shown->to);
    const note_words words = {.of = of, .book = &folder->book, .cups = folder->settings.cups};
    view *put = view_put_object(a, page, "example");
    view_put_text(a, put, "title", of->title);
    view_put_text(a, put, "href", path_of_recipe(a, of->slug));
    view_put_text(a, put, "from", shown->from->name);
    view_put_text(a, put, "to", shown->to->name);
    view_put_text(a, put, "share_text", figure(a, UPTAKE_IN_BATTER));
    put_takers(a, put, shown);
    put_sums(a, put, &note);
    view_put_balance(a, put, "balance", &words, &about, &note);
}

view *view_of_water(arena *a, const page_maker *by, const water_example *shown) {
    view *page = page_view(a, by, "water", WATER_PATH, "How the water is reckoned",
                           "What the swap notes assume of water, in the bowl and in the bake, with "
                           "every figure they rest on.");
    put_constants(a, page);
    put_quantities(a, page);
    view *groups = view_put_list(a, page, "groups");
    for (size_t i = 0; i < FAMILY_COUNT; i++)
        put_family(a, groups, &by->folder->shelf, (family)i);
    if (shown)
        put_example(a, page, by, shown);
    return page;
}
