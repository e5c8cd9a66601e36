#include "site/row.h"

#include "base/words.h"
#include "site/say.h"

static const char *kept(arena *keep, const char *words) {
    return words ? arena_copy(keep, span_of(words)) : NULL;
}

static void keep_tags(arena *keep, const recipe *of, recipe_row *row) {
    row->tag_count = of->tags.count;
    row->tags = ARENA_ARRAY(keep, const char *, of->tags.count);
    for (size_t i = 0; i < of->tags.count; i++)
        row->tags[i] = kept(keep, of->tags.items[i]);
}

/* One entry an ingredient: lines of the same ingredient are summed. */
static void keep_uses(arena *keep, const recipe *of, const pantry *shelf, recipe_row *row) {
    row_use *uses = ARENA_ARRAY(keep, row_use, of->lines.count);
    row->uses = uses;
    for (size_t i = 0; i < of->lines.count; i++) {
        const recipe_line *line = &of->lines.items[i];
        if (!line->what)
            continue;
        uint16_t what = (uint16_t)pantry_index(shelf, line->what);
        size_t at = 0;
        while (at < row->use_count && row->uses[at].what != what)
            at++;
        if (at == row->use_count)
            uses[row->use_count++] = (row_use){what, true, 0};
        uses[at].grams += (float)of->weights[i].grams;
        uses[at].optional = uses[at].optional && line->optional;
    }
}

/* Answered, one for one. */
static bool is_kept(const swap_note *note) {
    return note->says != VERDICT_UNTRIED && note->second_line == SIZE_MAX && !note->also_to;
}

static void keep_swaps(arena *keep, const recipe *of, const swap_notes *notes, const pantry *shelf,
                       recipe_row *row) {
    size_t count = 0;
    for (size_t i = 0; i < notes->count; i++)
        count += is_kept(&notes->items[i]);
    row_swap *swaps = ARENA_ARRAY(keep, row_swap, count);
    row->swaps = swaps;
    for (size_t i = 0; i < notes->count; i++) {
        const swap_note *note = &notes->items[i];
        if (!is_kept(note))
            continue;
        swaps[row->swap_count++] =
            (row_swap){(uint16_t)pantry_index(shelf, of->lines.items[note->line].what),
                       (uint16_t)pantry_index(shelf, note->to), (uint16_t)note->says};
    }
}

static void keep_figures(const recipe_macros *figures, energy_rule energy, recipe_row *row) {
    static const unsigned shown = 1u << NUTRIENT_PROTEIN | 1u << NUTRIENT_FAT |
                                  1u << NUTRIENT_CARBOHYDRATE | 1u << NUTRIENT_FIBRE;
    const double *of = figures->portion.of.of;
    row->energy_kcal = of[energy_nutrient(energy)];
    row->protein_g = of[NUTRIENT_PROTEIN];
    row->fat_g = of[NUTRIENT_FAT];
    row->carbohydrate_g = of[NUTRIENT_CARBOHYDRATE];
    row->fibre_g = of[NUTRIENT_FIBRE];
    row->sugars_g = of[NUTRIENT_SUGARS];
    row->lacking = figures->portion.lacking & (shown | 1u << energy_nutrient(energy));
}

recipe_row row_of(arena *keep, const recipe *of, const recipe_macros *figures,
                  const swap_notes *notes, const site_folder *by) {
    const char *kind = language_kind(by->settings.in, of->kind);
    recipe_row row = {
        .slug = kept(keep, of->slug),
        .title = kept(keep, of->title),
        .summary = kept(keep, of->summary),
        .kind = kept(keep, kind),
        .kind_slug = kind ? words_slug(keep, span_of(kind)) : NULL,
        .date = kept(keep, of->date),
        .changed = kept(keep, of->changed),
        .author = kept(keep, of->author),
        .picture = kept(keep, of->picture),
        .picture_text = kept(keep, of->picture_text),
        .makes_text = say_yield(keep, by->settings.in, &of->makes),
        .portion_text = say_yield(keep, by->settings.in, &of->portion),
        .portions = of->portions,
        .minutes = of->minutes.prepare + of->minutes.rest + of->minutes.bake + of->minutes.cool,
        .allergens = allergens_of(of),
        .diets = diets_of(of),
    };
    keep_tags(keep, of, &row);
    keep_uses(keep, of, &by->shelf, &row);
    keep_swaps(keep, of, notes, &by->shelf, &row);
    keep_figures(figures, by->settings.energy, &row);
    return row;
}

static int compare_rows(const void *left, const void *right) {
    const recipe_row *a = left, *b = right;
    return strcmp(a->slug, b->slug);
}

void rows_sort(recipe_rows *rows) {
    if (rows->count > 1)
        qsort(rows->items, rows->count, sizeof rows->items[0], compare_rows);
}
