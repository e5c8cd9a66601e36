#include "site/search_index.h"

#include "base/number.h"

#include <math.h>

enum { INDEX_VERSION = 1 };

/* The index names an ingredient once and then by its number, since a large site has millions of
 * swaps. Numbers, as they are written, go to the ingredients in use or offered as a swap, in the
 * order of the pantry; the others have null. */
static const char **ingredient_numbers(arena *a, const recipe_rows *rows, const pantry *shelf) {
    const char **numbers = ARENA_ARRAY(a, const char *, shelf->count);
    bool *named = ARENA_ARRAY(a, bool, shelf->count);
    for (size_t i = 0; i < rows->count; i++) {
        for (size_t u = 0; u < rows->items[i].use_count; u++)
            named[rows->items[i].uses[u].what] = true;
        for (size_t s = 0; s < rows->items[i].swap_count; s++)
            named[rows->items[i].swaps[s].to] = true;
    }
    unsigned next = 0;
    for (size_t i = 0; i < shelf->count; i++)
        if (named[i])
            numbers[i] = arena_format(a, "%u", next++);
    return numbers;
}

/* -- JSON, written as it comes: a tree of it would be larger than all rows --------------------- */

static void add_key(text *t, const char *key) {
    char before = t->bytes[t->length - 1];
    if (before != '{' && before != '[')
        text_add_char(t, ',');
    if (!key)
        return;
    text_add_json(t, span_of(key));
    text_add_char(t, ':');
}

static void add_words(text *t, const char *key, const char *words) {
    add_key(t, key);
    if (words)
        text_add_json(t, span_of(words));
    else
        text_add(t, "null");
}

static void add_number(text *t, const char *key, double value, int decimals) {
    add_key(t, key);
    if (isfinite(value))
        number_add(t, value, decimals);
    else
        text_add(t, "null");
}

static void add_digits(text *t, const char *digits) {
    add_key(t, NULL);
    text_add(t, digits ? digits : "null");
}

static void open_list(text *t, const char *key) {
    add_key(t, key);
    text_add_char(t, '[');
}

static void close_list(text *t) {
    text_add_char(t, ']');
}

static void open_object(text *t, const char *key) {
    add_key(t, key);
    text_add_char(t, '{');
}

static void close_object(text *t) {
    text_add_char(t, '}');
}

/* -- parts ----------------------------------------------------------------------------------- */

static void add_ingredients(text *t, const char *const *numbers, const pantry *shelf) {
    open_list(t, "ingredients");
    for (size_t i = 0; i < shelf->count; i++) {
        if (!numbers[i])
            continue;
        const ingredient *of = shelf->items[i];
        open_object(t, NULL);
        add_words(t, "name", of->name);
        add_words(t, "slug", of->slug);
        add_words(t, "family", family_word(of->in));
        open_list(t, "also");
        for (size_t k = 0; k < of->also_count; k++)
            add_words(t, NULL, of->also[k]);
        close_list(t);
        close_object(t);
    }
    close_list(t);
}

static void add_about(arena *a, text *t, const page_maker *by, const recipe_row *of) {
    add_words(t, "slug", of->slug);
    add_words(t, "title", of->title);
    add_words(t, "summary", of->summary);
    add_words(t, "kind", of->kind);
    add_words(t, "makes", of->makes_text);
    add_words(t, "portion", of->portion_text);
    open_list(t, "tags");
    for (size_t i = 0; i < of->tag_count; i++)
        add_words(t, NULL, of->tags[i]);
    close_list(t);
    const site_picture *picture = picture_find(by->pictures, of->picture);
    if (!picture)
        return;
    open_object(t, "picture");
    add_words(t, "src", picture_path_smallest(a, picture));
    add_words(t, "alt", of->picture_text ? of->picture_text : "");
    close_object(t);
}

static void add_figures(text *t, const recipe_row *of) {
    add_number(t, "protein_g", of->protein_g, 1);
    add_number(t, "energy_kcal", of->energy_kcal, 0);
    add_number(t, "fibre_g", of->fibre_g, 1);
    add_number(t, "sugars_g", of->sugars_g, 1);
    add_key(t, "at_least");
    text_add(t, of->lacking ? "true" : "false");
    add_number(t, "minutes", of->minutes, 0);
}

static void add_sets(text *t, const recipe_row *of) {
    open_list(t, "allergens");
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (of->allergens >> i & 1u)
            add_words(t, NULL, allergen_word((allergen)i));
    close_list(t);
    open_list(t, "diets");
    for (size_t i = 0; i < DIET_COUNT; i++)
        if (of->diets >> i & 1u)
            add_words(t, NULL, diet_word((diet)i));
    close_list(t);
}

static void add_uses(text *t, const char *key, const recipe_row *of, const char *const *numbers,
                     bool optional) {
    open_list(t, key);
    for (size_t i = 0; i < of->use_count; i++)
        if (of->uses[i].optional == optional)
            add_digits(t, numbers[of->uses[i].what]);
    close_list(t);
}

/* The replacements of one ingredient with one verdict: [from, to, to, …]. */
static size_t add_swap_run(text *t, const recipe_row *of, const char *const *numbers,
                           size_t first) {
    const row_swap *swaps = of->swaps;
    size_t i = first;
    open_list(t, NULL);
    add_digits(t, numbers[swaps[first].from]);
    for (; i < of->swap_count && swaps[i].from == swaps[first].from &&
           swaps[i].says == swaps[first].says;
         i++)
        add_digits(t, numbers[swaps[i].to]);
    close_list(t);
    return i;
}

static void add_swaps(text *t, const recipe_row *of, const char *const *numbers) {
    open_object(t, "swaps");
    for (size_t v = 0; v < VERDICT_UNTRIED; v++) {
        open_list(t, verdict_word((verdict)v));
        for (size_t i = 0; i < of->swap_count;)
            i = of->swaps[i].says == v ? add_swap_run(t, of, numbers, i) : i + 1;
        close_list(t);
    }
    close_object(t);
}

void search_index_write(arena *a, const page_maker *by, const recipe_rows *rows, text *t) {
    const pantry *shelf = &by->folder->shelf;
    const char *const *numbers = ingredient_numbers(a, rows, shelf);
    text_add_char(t, '{');
    add_number(t, "version", INDEX_VERSION, 0);
    add_ingredients(t, numbers, shelf);
    open_list(t, "recipes");
    for (size_t i = 0; i < rows->count; i++) {
        const recipe_row *of = &rows->items[i];
        open_object(t, NULL);
        add_about(a, t, by, of);
        add_figures(t, of);
        add_sets(t, of);
        add_uses(t, "ingredients", of, numbers, false);
        add_uses(t, "optional", of, numbers, true);
        add_swaps(t, of, numbers);
        close_object(t);
    }
    close_list(t);
    close_object(t);
}
