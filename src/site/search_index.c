#include "site/search_index.h"

#include "site/json_text.h"

enum { INDEX_VERSION = 1 };

/* The index names an ingredient once and then by its number, since a large site has millions of
 * swaps. Numbers go to the ingredients in use or offered as a swap, in the order of the pantry. */
uint16_t *index_numbers_of(arena *a, const recipe_rows *rows, const pantry *shelf) {
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
        numbers[i] = named[i] ? next++ : INDEX_NOT_NAMED;
    return numbers;
}

/* -- parts ----------------------------------------------------------------------------------- */

static void put_true(text *t, const char *key, bool holds) {
    if (!holds)
        return;
    json_put_key(t, key);
    text_add(t, "true");
}

static void open_ingredient(text *t, const language *in, const ingredient *of) {
    json_put_object(t, NULL);
    json_put_words(t, "name", of->name);
    json_put_words(t, "slug", of->slug);
    json_put_words(t, "family", in->families[of->in]);
    put_true(t, "staple", ingredient_is_staple(of));
    put_true(t, "water", ingredient_is_water(of));
}

static void add_also(text *t, const char *key, const ingredient *of) {
    json_put_list(t, key);
    for (size_t i = 0; i < of->also_count; i++)
        json_put_words(t, NULL, of->also[i]);
    json_put_list_end(t);
}

void index_add_ingredients(text *t, const page_maker *by, const uint16_t *numbers, bool with_also) {
    const pantry *shelf = &by->folder->shelf;
    json_put_list(t, "ingredients");
    for (size_t i = 0; i < shelf->count; i++) {
        if (numbers[i] == INDEX_NOT_NAMED)
            continue;
        open_ingredient(t, page_language(by), shelf->items[i]);
        if (with_also)
            add_also(t, "also", shelf->items[i]);
        json_put_object_end(t);
    }
    json_put_list_end(t);
}

void index_add_other_names(text *t, const uint16_t *numbers, const pantry *shelf) {
    json_put_list(t, "also");
    for (size_t i = 0; i < shelf->count; i++)
        if (numbers[i] != INDEX_NOT_NAMED)
            add_also(t, NULL, shelf->items[i]);
    json_put_list_end(t);
}

static void add_picture(arena *a, text *t, const page_maker *by, const recipe_row *of) {
    const site_picture *picture = picture_find(by->pictures, of->picture);
    if (!picture)
        return;
    json_put_object(t, "picture");
    json_put_words(t, "src", picture_path_smallest(a, picture));
    json_put_words(t, "alt", of->picture_text ? of->picture_text : "");
    json_put_object_end(t);
}

void index_add_shown(arena *a, text *t, const page_maker *by, const recipe_row *of) {
    json_put_words(t, "slug", of->slug);
    json_put_words(t, "title", of->title);
    json_put_words(t, "summary", of->summary);
    json_put_words(t, "kind", of->kind);
    json_put_words(t, "portion", of->portion_text);
    add_picture(a, t, by, of);
    json_put_number(t, "protein_g", of->protein_g, 1);
    json_put_number(t, "energy_kcal", of->energy_kcal, 0);
    json_put_key(t, "at_least");
    text_add(t, of->lacking ? "true" : "false");
    json_put_number(t, "minutes", of->minutes, 0);
}

static void add_more(text *t, const recipe_row *of) {
    json_put_words(t, "makes", of->makes_text);
    json_put_number(t, "fibre_g", of->fibre_g, 1);
    json_put_number(t, "sugars_g", of->sugars_g, 1);
    json_put_list(t, "tags");
    for (size_t i = 0; i < of->tag_count; i++)
        json_put_words(t, NULL, of->tags[i]);
    json_put_list_end(t);
}

static void add_sets(text *t, const language *in, const recipe_row *of) {
    json_put_list(t, "allergens");
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (of->allergens >> i & 1u)
            json_put_words(t, NULL, in->allergens[i]);
    json_put_list_end(t);
    json_put_list(t, "diets");
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (of->diets >> i & 1u)
            json_put_words(t, NULL, in->diets[i]);
    json_put_list_end(t);
}

static void add_uses(text *t, const char *key, const recipe_row *of, const uint16_t *numbers,
                     bool optional) {
    json_put_list(t, key);
    for (size_t i = 0; i < of->use_count; i++)
        if (of->uses[i].optional == optional)
            json_put_number(t, NULL, numbers[of->uses[i].what], 0);
    json_put_list_end(t);
}

void index_add_needed(text *t, const recipe_row *of, const uint16_t *numbers) {
    add_uses(t, "ingredients", of, numbers, false);
}

/* The replacements of one ingredient with one verdict: [from, to, to, …]. */
static size_t add_swap_run(text *t, const recipe_row *of, const uint16_t *numbers, size_t first) {
    const row_swap *swaps = of->swaps;
    size_t i = first;
    json_put_list(t, NULL);
    json_put_number(t, NULL, numbers[swaps[first].from], 0);
    for (; i < of->swap_count && swaps[i].from == swaps[first].from &&
           swaps[i].says == swaps[first].says;
         i++)
        json_put_number(t, NULL, numbers[swaps[i].to], 0);
    json_put_list_end(t);
    return i;
}

static void add_swaps(text *t, const recipe_row *of, const uint16_t *numbers) {
    json_put_object(t, "swaps");
    for (size_t v = 0; v < VERDICT_UNTRIED; v++) {
        json_put_list(t, verdict_word((verdict)v));
        for (size_t i = 0; i < of->swap_count;)
            i = of->swaps[i].says == v ? add_swap_run(t, of, numbers, i) : i + 1;
        json_put_list_end(t);
    }
    json_put_object_end(t);
}

void search_index_write(arena *a, const page_maker *by, const recipe_rows *rows, text *t) {
    const pantry *shelf = &by->folder->shelf;
    const uint16_t *numbers = index_numbers_of(a, rows, shelf);
    text_add_char(t, '{');
    json_put_number(t, "version", INDEX_VERSION, 0);
    index_add_ingredients(t, by, numbers, true);
    json_put_list(t, "recipes");
    for (size_t i = 0; i < rows->count; i++) {
        const recipe_row *of = &rows->items[i];
        json_put_object(t, NULL);
        index_add_shown(a, t, by, of);
        add_more(t, of);
        add_sets(t, page_language(by), of);
        index_add_needed(t, of, numbers);
        add_uses(t, "optional", of, numbers, true);
        add_swaps(t, of, numbers);
        json_put_object_end(t);
    }
    json_put_list_end(t);
    json_put_object_end(t);
}
