#include "publish/record_row.h"

#include "base/list.h"

#include <stddef.h>

/* The fields by their kind. What is added to a row is added here too, or an unchanged recipe
 * would lose it; the size below is there to remind. */
static const size_t texts[] = {
    offsetof(recipe_row, slug),       offsetof(recipe_row, title),
    offsetof(recipe_row, summary),    offsetof(recipe_row, kind),
    offsetof(recipe_row, kind_slug),  offsetof(recipe_row, date),
    offsetof(recipe_row, changed),    offsetof(recipe_row, author),
    offsetof(recipe_row, picture),    offsetof(recipe_row, picture_text),
    offsetof(recipe_row, makes_text), offsetof(recipe_row, portion_text)};

static const size_t figures[] = {
    offsetof(recipe_row, portions),    offsetof(recipe_row, minutes),
    offsetof(recipe_row, energy_kcal), offsetof(recipe_row, protein_g),
    offsetof(recipe_row, fat_g),       offsetof(recipe_row, carbohydrate_g),
    offsetof(recipe_row, fibre_g),     offsetof(recipe_row, sugars_g)};

_Static_assert(sizeof(void *) != 8 || sizeof(recipe_row) == 224,
               "a field was added to the row: write and read it here too");
/* Written as they lie in memory, so they must not have holes. */
_Static_assert(sizeof(row_use) == 8 && sizeof(row_swap) == 6, "a row_use or row_swap has holes");

static const char **text_field(recipe_row *row, size_t i) {
    return (const char **)(void *)((char *)row + texts[i]);
}

static double *figure_field(recipe_row *row, size_t i) {
    return (double *)(void *)((char *)row + figures[i]);
}

static void add_bits(text *to, const recipe_row *row) {
    packed_add_number(to, row->lacking);
    packed_add_number(to, row->allergens);
    packed_add_number(to, row->diets);
}

void record_add_row(text *to, const recipe_row *row) {
    recipe_row copy = *row;
    for (size_t i = 0; i < COUNT(texts); i++)
        packed_add_text(to, *text_field(&copy, i));
    packed_add_number(to, row->tag_count);
    for (size_t i = 0; i < row->tag_count; i++)
        packed_add_text(to, row->tags[i]);
    for (size_t i = 0; i < COUNT(figures); i++)
        packed_add_array(to, figure_field(&copy, i), sizeof(double));
    add_bits(to, row);
    packed_add_number(to, row->use_count);
    packed_add_array(to, row->uses, row->use_count * sizeof *row->uses);
    packed_add_number(to, row->swap_count);
    packed_add_array(to, row->swaps, row->swap_count * sizeof *row->swaps);
}

static void take_tags(arena *a, packed_reader *from, recipe_row *row) {
    row->tag_count = packed_count(from, sizeof(uint64_t));
    row->tags = ARENA_ARRAY(a, const char *, row->tag_count);
    for (size_t i = 0; i < row->tag_count; i++)
        row->tags[i] = packed_text(from);
}

static void take_figures(packed_reader *from, recipe_row *row) {
    for (size_t i = 0; i < COUNT(figures); i++) {
        const void *bytes = packed_array(from, sizeof(double));
        if (bytes)
            memcpy(figure_field(row, i), bytes, sizeof(double));
    }
}

const recipe_row *record_row(arena *a, packed_reader *from) {
    recipe_row *row = ARENA_NEW(a, recipe_row);
    for (size_t i = 0; i < COUNT(texts); i++)
        *text_field(row, i) = packed_text(from);
    take_tags(a, from, row);
    take_figures(from, row);
    row->lacking = packed_number(from) != 0;
    row->allergens = (allergen_set)packed_number(from);
    row->diets = (diet_set)packed_number(from);
    row->use_count = packed_count(from, sizeof *row->uses);
    row->uses = packed_array(from, row->use_count * sizeof *row->uses);
    row->swap_count = packed_count(from, sizeof *row->swaps);
    row->swaps = packed_array(from, row->swap_count * sizeof *row->swaps);
    from->broken = from->broken || !row->slug || !row->title;
    return row;
}

digest record_row_digest(const recipe_row *row) {
    text bytes = TEXT_EMPTY;
    record_add_row(&bytes, row);
    digest all = digest_of(text_span(&bytes));
    text_free(&bytes);
    return all;
}
