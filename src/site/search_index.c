#include "site/search_index.h"

enum { INDEX_VERSION = 1 };

/* Which ingredients the index names: those used or offered as a swap. */
static bool *named_ingredients(arena *a, const recipe_rows *rows, const pantry *shelf) {
    bool *named = ARENA_ARRAY(a, bool, shelf->count);
    for (size_t i = 0; i < rows->count; i++) {
        for (size_t u = 0; u < rows->items[i].use_count; u++)
            named[rows->items[i].uses[u].what] = true;
        for (size_t s = 0; s < rows->items[i].swap_count; s++)
            named[rows->items[i].swaps[s].to] = true;
    }
    return named;
}

static void put_ingredients(arena *a, view *index, const bool *named, const pantry *shelf) {
    view *list = view_put_list(a, index, "ingredients");
    for (size_t i = 0; i < shelf->count; i++) {
        if (!named[i])
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

static void put_words(arena *a, view *to, const recipe_row *of) {
    view_put_text(a, to, "slug", of->slug);
    view_put_text(a, to, "title", of->title);
    view_put_text(a, to, "summary", of->summary);
    view_put_text(a, to, "kind", of->kind);
    view_put_text(a, to, "makes", of->makes_text);
    view_put_text(a, to, "portion", of->portion_text);
    view *tags = view_put_list(a, to, "tags");
    for (size_t i = 0; i < of->tag_count; i++)
        view_put_text(a, tags, NULL, of->tags[i]);
    if (!of->picture)
        return;
    view *picture = view_put_object(a, to, "picture");
    view_put_text(a, picture, "src", arena_format(a, "pictures/%s", of->picture));
    view_put_text(a, picture, "alt", of->picture_text ? of->picture_text : "");
}

static void put_numbers(arena *a, view *to, const recipe_row *of) {
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

static void put_uses(arena *a, view *to, const recipe_row *of, const pantry *shelf) {
    view *used = view_put_list(a, to, "ingredients");
    view *optional = view_put_list(a, to, "optional");
    for (size_t i = 0; i < of->use_count; i++)
        view_put_text(a, of->uses[i].optional ? optional : used, NULL,
                      shelf->items[of->uses[i].what]->name);
    view *swaps = view_put_list(a, to, "swaps");
    for (size_t i = 0; i < of->swap_count; i++) {
        view *one = view_put_object(a, swaps, NULL);
        view_put_text(a, one, "from", shelf->items[of->swaps[i].from]->name);
        view_put_text(a, one, "to", shelf->items[of->swaps[i].to]->name);
        view_put_text(a, one, "verdict", verdict_word((verdict)of->swaps[i].says));
    }
}

view *search_index_of(arena *a, const recipe_rows *rows, const pantry *shelf) {
    view *index = view_object(a);
    view_put_number(a, index, "version", INDEX_VERSION, 0);
    put_ingredients(a, index, named_ingredients(a, rows, shelf), shelf);
    view *recipes = view_put_list(a, index, "recipes");
    for (size_t i = 0; i < rows->count; i++) {
        view *one = view_put_object(a, recipes, NULL);
        put_words(a, one, &rows->items[i]);
        put_numbers(a, one, &rows->items[i]);
        put_sets(a, one, &rows->items[i]);
        put_uses(a, one, &rows->items[i], shelf);
    }
    return index;
}
