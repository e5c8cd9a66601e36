#include "site/view_picks.h"

#include "measure/kitchen.h"
#include "site/say.h"
#include "site/view_combined.h"
#include "site/view_verdict.h"

#include <math.h>
#include <stdint.h>

bool note_may_be_picked(const recipe *of, const swap_note *note) {
    return note->says <= VERDICT_DIFFERENT && note->to_g > 0 && !note_is_combined(note) &&
           main_swaps_asked_for(of->lines.items[note->line].what->in);
}

/* -- what one swap changes -------------------------------------------------------------------- */

static void put_words(arena *a, view *to, const char *key, const word_list *list) {
    view *put = list->count ? view_put_list(a, to, key) : NULL;
    for (size_t i = 0; i < list->count; i++)
        view_put_text(a, put, NULL, list->items[i]);
}

static word_list words_of_allergens(arena *a, allergen_set set) {
    word_list list = {0};
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (set >> i & 1u)
            LIST_ADD(a, &list, allergen_word((allergen)i));
    return list;
}

static word_list words_of_diets(arena *a, diet_set set) {
    word_list list = {0};
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (set >> i & 1u)
            LIST_ADD(a, &list, diet_word((diet)i));
    return list;
}

/* Of a set the words that the page's language has for its members. */
static word_list words_said(arena *a, unsigned set, const char *const words[], size_t count) {
    word_list list = {0};
    for (size_t i = 0; i < count; i++)
        if (set >> i & 1u)
            LIST_ADD(a, &list, words[i]);
    return list;
}

static void put_foods(arena *a, view *to, const swap_note *note) {
    const struct {
        const char *key;
        word_list words;
    } rows[] = {{"allergens_added", words_of_allergens(a, note->gained)},
                {"allergens_removed", words_of_allergens(a, note->lost)},
                {"diets_lost", words_of_diets(a, note->diets_lost)},
                {"diets_gained", words_of_diets(a, note->diets_gained)}};
    for (size_t i = 0; i < COUNT(rows); i++)
        put_words(a, to, rows[i].key, &rows[i].words);
}

static void put_claims(arena *a, view *to, const note_words *by, const swap_note *note) {
    if (!by->claims)
        return;
    const note_claims *changes = &by->claims[note - by->first];
    put_words(a, to, "claims_gained", &changes->gained);
    put_words(a, to, "claims_lost", &changes->lost);
    put_words(a, to, "claims_open", &changes->open);
    if (changes->cautions)
        view_put_cautions(a, by->in, to, changes->cautions);
}

/* Grams to a hundredth, kcal, mg and \u00b5g to a tenth: finer than a page shows sums of a few. */
static int places_of(const label_line *line) {
    const char *in = nutrient_unit(line->behind);
    if (line->is_salt || strcmp(in, "g") == 0)
        return 2;
    return 1;
}

static void put_figures(arena *a, view *to, const note_words *by, const swap_note *note) {
    const nutrition_label *label = &by->figures->label;
    view *changes = view_put_list(a, to, "changes");
    view_put_number(a, changes, NULL, note->change.weight_g, 1);
    for (size_t i = 0; i < label->count; i++)
        if (label->lines[i].known)
            view_put_number(a, changes, NULL, label_change(&label->lines[i], &note->change),
                            places_of(&label->lines[i]));
}

void view_put_lines_that_go(arena *a, view *to, const recipe *of, const swap_note *note) {
    const ingredient *what = of->lines.items[note->line].what;
    view *lines = view_put_list(a, to, "lines");
    for (size_t i = 0; i < of->lines.count; i++)
        if (of->lines.items[i].what == what)
            view_put_number(a, lines, NULL, (double)i, 0);
    view_put_bool(a, to, "asked", main_swaps_asked_for(what->in));
}

void view_put_changes_data(arena *a, view *to, const note_words *by, const swap_note *note) {
    bool liquid = fabs(note->liquid_change_g) > 0 && note->liquid_line != SIZE_MAX;
    if (liquid)
        view_put_number(a, to, "liquid_line", (double)note->liquid_line, 0);
    put_figures(a, to, by, note);
    put_foods(a, to, note);
    put_claims(a, to, by, note);
    double cost = note_cost_change(by, note);
    if (cost != 0)
        view_put_number(a, to, "cost_change", cost, 2);
    if (!note_may_be_picked(by->of, note))
        return;
    kitchen_measure measured;
    view_put_text(a, to, "id", note_id(a, by->of, note));
    if (kitchen_measure_of(a, note->to, note->to_g, by->cups, &measured))
        view_put_text(a, to, "measure", say_measure(a, by->in, &measured));
}

/* -- what adding up takes --------------------------------------------------------------------- */

static void put_portion(arena *a, view *to, const recipe_figures *of) {
    view *keys = view_put_list(a, to, "figures"), *portion = view_put_list(a, to, "portion");
    for (size_t i = 0; i < of->label.count; i++) {
        const label_line *line = &of->label.lines[i];
        if (!line->known)
            continue;
        view_put_text(a, keys, NULL, line->key);
        view_put_number(a, portion, NULL, line->portion, 2);
    }
    view_put_number(a, to, "portion_g", of->macros.portion.weight_g, 2);
}

static void put_food(arena *a, view *foods, const note_words *by, const ingredient *what) {
    const language *in = by->in;
    range room;
    view *food = view_put_object(a, foods, what->name);
    word_list allergens = words_said(a, what->allergens, in->allergens, ALLERGEN_COUNT);
    word_list may = words_said(a, what->may_contain, in->allergens, ALLERGEN_COUNT);
    word_list rules_out = words_said(a, ~diets_of_ingredient(what), in->diets, DIET_COUNT);
    put_words(a, food, "allergens", &allergens);
    put_words(a, food, "may_contain", &may);
    put_words(a, food, "rules_out", &rules_out);
    const range *cup = ingredient_measure(what, span_of("cup"), &room);
    if (cup)
        view_put_number(a, food, "cup_g", cup->typical * cup_ml(by->cups) / cup_ml(CUPS_US), 2);
}

/* Each ingredient of the recipe and each that may be picked, once. */
static allergen_set put_all_foods(arena *a, view *to, const whole_recipe *of) {
    const pantry *shelf = &of->by->folder->shelf;
    bool *seen = ARENA_ARRAY(a, bool, shelf->count);
    allergen_set all = 0;
    for (size_t i = 0; i < of->of->lines.count; i++)
        if (of->of->lines.items[i].what)
            seen[pantry_index(shelf, of->of->lines.items[i].what)] = true;
    for (size_t i = 0; i < of->notes->count; i++)
        if (note_may_be_picked(of->of, &of->notes->items[i]))
            seen[pantry_index(shelf, of->notes->items[i].to)] = true;
    const ingredient *water = pantry_find_folded(shelf, span_of("water"));
    view_put_text(a, to, "water", water ? water->name : NULL);
    if (water)
        seen[pantry_index(shelf, water)] = true;
    view *foods = view_put_object(a, to, "foods");
    for (size_t i = 0; i < shelf->count; i++) {
        if (!seen[i])
            continue;
        put_food(a, foods, &of->words, shelf->items[i]);
        all |= shelf->items[i]->allergens | shelf->items[i]->may_contain;
    }
    return all;
}

/* How the law names each allergen, in the order of allergens; null where it does not list it. */
static void put_contains(arena *a, view *to, allergen_set set, const note_words *by) {
    view *contains = view_put_object(a, to, "contains");
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (set >> i & 1u)
            view_put_text(a, contains, by->in->allergens[i],
                          allergen_group((allergen)i, by->law)
                              ? say_allergens(a, by->in, (allergen_set)1 << i, by->law)
                              : NULL);
}

void view_put_picking(arena *a, view *document, const whole_recipe *of) {
    view *picking = view_put_object(a, document, "picking");
    put_portion(a, picking, of->figures);
    view *lines = view_put_list(a, picking, "lines");
    for (size_t i = 0; i < of->of->lines.count; i++) {
        const ingredient *what = of->of->lines.items[i].what;
        view_put_text(a, lines, NULL, what ? what->name : NULL);
    }
    allergen_set all = put_all_foods(a, picking, of);
    put_contains(a, picking, all, &of->words);
    word_list diets = words_said(a, ~0u, of->words.in->diets, DIET_COUNT);
    put_words(a, picking, "diets", &diets);
}
