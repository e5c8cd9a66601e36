#include "site/search_index.h"

enum { INDEX_VERSION = 1 };

enum { NOT_NAMED = UINT16_MAX };

/* The index names an ingredient once and then by its number, since a large site has millions of
 * swaps. Numbers go to the ingredients in use or offered as a swap, in the order of the pantry. */
static uint16_t *ingredient_numbers(arena *a, const recipe_rows *rows, const pantry *shelf) {
    uint16_t *numbers = ARENA_ARRAY(a, uint16_t, shelf->count);
    bool *named = ARENA_ARRAY(a, bool, shelf->count);
    for (size_t i = 0; i < rows->count; i++) {
        for (size_t u = 0; u < rows->items[i].use_count; u++)
            named[rows->items[i].uses[u].what] = true;
        for (size_t s = 0; s < rows->items[i].swap_count; s++)
            named[rows->items[i].swaps[s].to] = true;
    }
    uint16_t next = 0;
    for (size_t i = 0; i < shelf->count; i++)
        numbers[i] = named[i] ? next++ : NOT_NAMED;
    return numbers;
}

static void put_ingredients(arena *a, view *index, const uint16_t *numbers, const pantry *shelf) {
    view *list = view_put_list(a, index, "ingredients");
    for (size_t i = 0; i < shelf->count; i++) {
        if (numbers[i] == NOT_NAMED)
            continue;
        const ingredient *of = shelf->items[i];
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", of->name);
        view_put_text(a, one, "slug", of->slug);
        view_put_text(a, one, "family", family_word(of->in));
        view *also = view_put_list(a, one, "also");
        for (size_t k = 0; k < of->also_count; k++)
            view_put_text(a, also, NULL, of->also[k]);
    }
}

static void put_words(arena *a, view *to, const page_maker *by, const recipe_row *of) {
    view_put_text(a, to, "slug", of->slug);
    view_put_text(a, to, "title", of->title);
    view_put_text(a, to, "summary", of->summary);
    view_put_text(a, to, "kind", of->kind);
    view_put_text(a, to, "makes", of->makes_text);
    view_put_text(a, to, "portion", of->portion_text);
    view *tags = view_put_list(a, to, "tags");
    for (size_t i = 0; i < of->tag_count; i++)
        view_put_text(a, tags, NULL, of->tags[i]);
    const site_picture *picture = picture_find(by->pictures, of->picture);
    if (!picture)
        return;
    view *put = view_put_object(a, to, "picture");
    view_put_text(a, put, "src", picture_path_smallest(a, picture));
    view_put_text(a, put, "alt", of->picture_text ? of->picture_text : "");
}

static void put_figures(arena *a, view *to, const recipe_row *of) {
    view_put_number(a, to, "protein_g", of->protein_g, 1);
    view_put_number(a, to, "energy_kcal", of->energy_kcal, 0);
    view_put_number(a, to, "fibre_g", of->fibre_g, 1);
    view_put_number(a, to, "sugars_g", of->sugars_g, 1);
    view_put_bool(a, to, "at_least", of->lacking);
    view_put_number(a, to, "minutes", of->minutes, 0);
}

static void put_sets(arena *a, view *to, const recipe_row *of) {
    view *allergens = view_put_list(a, to, "allergens");
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (of->allergens >> i & 1u)
            view_put_text(a, allergens, NULL, allergen_word((allergen)i));
    view *diets = view_put_list(a, to, "diets");
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (of->diets >> i & 1u)
            view_put_text(a, diets, NULL, diet_word((diet)i));
}

static void put_numbers_of(arena *a, view *to, const char *key, const recipe_row *of,
                           const uint16_t *numbers, bool optional) {
    view *list = view_put_list(a, to, key);
    for (size_t i = 0; i < of->use_count; i++)
        if (of->uses[i].optional == optional)
            view_put_number(a, list, NULL, numbers[of->uses[i].what], 0);
}

/* The replacements of one ingredient with one verdict: [from, to, to, …]. */
static size_t put_swap_run(arena *a, view *list, const recipe_row *of, const uint16_t *numbers,
                           size_t first) {
    view *run = view_put_list(a, list, NULL);
    view_put_number(a, run, NULL, numbers[of->swaps[first].from], 0);
    size_t i = first;
    for (; i < of->swap_count && of->swaps[i].from == of->swaps[first].from &&
           of->swaps[i].says == of->swaps[first].says;
         i++)
        view_put_number(a, run, NULL, numbers[of->swaps[i].to], 0);
    return i;
}

static void put_swaps(arena *a, view *to, const recipe_row *of, const uint16_t *numbers) {
    view *swaps = view_put_object(a, to, "swaps");
    for (size_t v = 0; v < VERDICT_UNTRIED; v++) {
        view *list = view_put_list(a, swaps, verdict_word((verdict)v));
        for (size_t i = 0; i < of->swap_count;)
            if (of->swaps[i].says == v)
                i = put_swap_run(a, list, of, numbers, i);
            else
                i++;
    }
}

view *search_index_of(arena *a, const page_maker *by, const recipe_rows *rows) {
    const pantry *shelf = &by->folder->shelf;
    const uint16_t *numbers = ingredient_numbers(a, rows, shelf);
    view *index = view_object(a);
    view_put_number(a, index, "version", INDEX_VERSION, 0);
    put_ingredients(a, index, numbers, shelf);
    view *recipes = view_put_list(a, index, "recipes");
    for (size_t i = 0; i < rows->count; i++) {
        const recipe_row *of = &rows->items[i];
        view *one = view_put_object(a, recipes, NULL);
        put_words(a, one, by, of);
        put_figures(a, one, of);
        put_sets(a, one, of);
        put_numbers_of(a, one, "ingredients", of, numbers, false);
        put_numbers_of(a, one, "optional", of, numbers, true);
        put_swaps(a, one, of, numbers);
    }
    return index;
}
