#include "site/view_ingredient.h"

#include "base/number.h"
#include "site/say.h"
#include "site/view_bake.h"
#include "site/view_verdict.h"

enum { RECIPES_LISTED = 200 };

use_table use_table_of(arena *a, const recipe_rows *rows, const pantry *shelf) {
    use_table table = {ARENA_ARRAY(a, uint32_t *, shelf->count),
                       ARENA_ARRAY(a, size_t, shelf->count)};
    for (size_t i = 0; i < rows->count; i++)
        for (size_t u = 0; u < rows->items[i].use_count; u++)
            table.counts[rows->items[i].uses[u].what]++;
    for (size_t i = 0; i < shelf->count; i++) {
        table.rows[i] = ARENA_ARRAY(a, uint32_t, table.counts[i]);
        table.counts[i] = 0;
    }
    for (size_t i = 0; i < rows->count; i++)
        for (size_t u = 0; u < rows->items[i].use_count; u++) {
            size_t what = rows->items[i].uses[u].what;
            table.rows[what][table.counts[what]++] = (uint32_t)i;
        }
    return table;
}

ingredient_tables ingredient_tables_of(arena *a, const recipe_rows *rows, const pantry *shelf) {
    return (ingredient_tables){rows, use_table_of(a, rows, shelf), swap_table_of(a, rows),
                               bake_table_of(a, rows, shelf)};
}

bool ingredient_has_page(const ingredient_tables *from, size_t which) {
    return from->uses.counts[which] || swap_table_pairs(&from->swaps, which, SIDE_TO).count;
}

void view_put_source(arena *a, const language *in, view *to, const char *key,
                     const source_note *of) {
    if (!of->text)
        return;
    view *put = view_put_object(a, to, key);
    view_put_text(a, put, "text", of->text);
    view_put_text(a, put, "certainty",
                  of->sure == CERTAINTY_UNSTATED ? NULL : in->certainties[of->sure]);
}

static void put_figures(arena *a, const language *in, view *page, const ingredient *of) {
    view *list = view_put_list(a, page, "figures");
    for (size_t i = 0; i <= NUTRIENT_VITAMIN_D; i++) {
        if (!nutrient_known(&of->per_100_g, (nutrient)i))
            continue;
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", in->nutrients[i]);
        view_put_text(a, one, "text",
                      say_amount(a, in, of->per_100_g.of[i], nutrient_unit((nutrient)i)));
    }
    view_put_source(a, in, page, "composition_source", &of->composition_source);
}

static void put_measures(arena *a, const language *in, view *page, const ingredient *of) {
    view *list = view_put_list(a, page, "measures");
    for (size_t i = 0; i < of->measures.count; i++) {
        const household_measure *m = &of->measures.items[i];
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "unit", say_unit(a, in, m->unit));
        const char *typical = say_weight(a, in, m->grams.typical);
        bool spread = m->grams.high > m->grams.low;
        view_put_text(a, one, "text",
                      spread ? SAY(a, in, WITH_MEASURE, typical,
                                   say_grams_range(a, in, m->grams.low, m->grams.high))
                             : typical);
    }
    view_put_source(a, in, page, "measures_source", &of->measures_source);
}

static const char *uptake_text(arena *a, const language *in, const range *of) {
    return SAY(a, in, UPTAKE, say_figure(a, in, of->typical, 1), say_figure(a, in, of->low, 1),
               say_figure(a, in, of->high, 1));
}

static void put_uptake(arena *a, const language *in, view *page, const ingredient *of) {
    if (!of->has_uptake)
        return;
    view *put = view_put_object(a, page, "uptake");
    view_put_text(a, put, "cold_text", uptake_text(a, in, &of->cold_uptake));
    view_put_text(a, put, "heated_text", uptake_text(a, in, &of->heated_uptake));
    view_put_source(a, in, put, "source", &of->uptake_source);
}

/* What it does in a bake, read off its figures. The limits are common practice, no source. */
static void put_does(arena *a, const language *in, view *page, const ingredient *of) {
    view *list = view_put_list(a, page, "does");
    const nutrients *n = &of->per_100_g;
    if (of->sets == HEAT_SET_FIRM)
        view_put_text(a, list, NULL, SAID(in, DOES_SET_FIRM));
    if (of->sets == HEAT_SET_SOFT)
        view_put_text(a, list, NULL, SAID(in, DOES_SET_SOFTLY));
    if (of->has_uptake && of->cold_uptake.typical >= 2)
        view_put_text(a, list, NULL, SAID(in, DOES_DRINK));
    if (of->has_uptake && of->heated_uptake.typical > 2 * of->cold_uptake.typical + 1)
        view_put_text(a, list, NULL, SAID(in, DOES_DRY));
    if (nutrient_known(n, NUTRIENT_FAT) && n->of[NUTRIENT_FAT] >= 40)
        view_put_text(a, list, NULL, SAID(in, DOES_SHORTEN));
    if (of->sweetness > 0)
        view_put_text(a, list, NULL, SAY(a, in, DOES_SWEETEN, say_figure(a, in, of->sweetness, 2)));
    if (of->in == FAMILY_FRUIT_PUREE)
        view_put_text(a, list, NULL, SAID(in, DOES_MOISTEN));
    if (of->raw == RAW_EGG || of->raw == RAW_FLOUR)
        view_put_text(a, list, NULL, SAID(in, DOES_NEED_COOKING));
    view_put_bool(a, page, "has_does", list->count > 0);
}

/* Sentences of rules that are shown; most say the same. */
enum { REASONS_SHOWN = 6 };

/* True when one of `side` means this ingredient, by its name or kind, not just its family. */
static bool is_meant(const selectors *side, const ingredient *of, const pantry *shelf) {
    enum { RANK_OF_A_KIND = 4 };
    for (size_t i = 0; i < side->count; i++)
        if (!side->items[i].same_kind && selector_rank(&side->items[i]) >= RANK_OF_A_KIND &&
            selector_fits(&side->items[i], of, shelf))
            return true;
    return false;
}

static bool is_listed(const view *list, const char *words) {
    for (const view *one = list->first; one; one = one->next)
        if (span_is(one->bytes, words))
            return true;
    return false;
}

/* Why rules that speak of it say what they say, hers before the reference. */
static void put_reasons(arena *a, view *page, const page_maker *by, const ingredient *of) {
    const swap_rules *rules = &by->folder->book.rules;
    const pantry *shelf = &by->folder->shelf;
    view *list = view_put_list(a, page, "reasons");
    for (size_t i = 0; i < rules->count && list->count < REASONS_SHOWN; i++) {
        const swap_rule *rule = &rules->items[i];
        if (rule->because && !is_listed(list, rule->because) &&
            (is_meant(&rule->with, of, shelf) || is_meant(&rule->replace, of, shelf)))
            view_put_text(a, list, NULL, rule->because);
    }
    view_put_bool(a, page, "has_reasons", list->count > 0);
}

static void put_recipes(arena *a, const language *in, view *page, size_t which,
                        const recipe_rows *rows, const use_table *uses) {
    view *list = view_put_list(a, page, "recipes");
    for (size_t i = 0; i < uses->counts[which] && i < RECIPES_LISTED; i++) {
        const recipe_row *row = &rows->items[uses->rows[which][i]];
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "title", row->title);
        view_put_text(a, one, "href", path_of_recipe(a, row->slug));
        for (size_t u = 0; u < row->use_count; u++)
            if (row->uses[u].what == which && row->uses[u].grams > 0)
                view_put_text(a, one, "grams_text", say_weight(a, in, (double)row->uses[u].grams));
    }
    view_put_bool(a, page, "has_recipes", list->count > 0);
    if (uses->counts[which] > RECIPES_LISTED)
        view_put_number(a, page, "recipes_more", (double)(uses->counts[which] - RECIPES_LISTED), 0);
}

static const char *note_href(arena *a, const page_maker *by, const pair_answer *of, verdict says,
                             const recipe_rows *rows) {
    const pantry *shelf = &by->folder->shelf;
    return path_of_note(a, rows->items[of->row[says]].slug, shelf->items[of->from],
                        shelf->items[of->to]);
}

/* What an ingredient answers for another with one verdict, whatever the kind of recipe. */
typedef struct {
    const pair_answer *shown; /* the first that says so: where the link leads */
    size_t recipes;
    word_list kinds;
} pair_group;

static void gather_pair(arena *a, pair_group *group, const pair_answer *of, verdict says) {
    if (!group->shown)
        group->shown = of;
    group->recipes += of->says[says];
    if (of->kind)
        LIST_ADD(a, &group->kinds, of->kind);
}

static void put_group(arena *a, view *list, const page_maker *by, const ingredient *other,
                      const pair_group *of, verdict says, const recipe_rows *rows) {
    const language *in = page_language(by);
    view *one = view_put_object(a, list, NULL);
    view_put_text(a, one, "to", other->name);
    view_put_text(a, one, "to_href", path_of_ingredient(a, other));
    view_put_verdict(a, in, one, says);
    const char *recipes = SAY_NUMBER(a, in, RECIPES, of->recipes);
    const char *kinds = say_list(a, in, of->kinds.items, of->kinds.count);
    view_put_text(a, one, "where",
                  of->kinds.count ? SAY(a, in, WHERE_IT_ANSWERS, kinds, recipes) : recipes);
    view_put_text(a, one, "href", note_href(a, by, of->shown, says, rows));
}

/* The pairs of ingredient `which` on one side (SIDE_FROM: it is replaced), by verdict, best first,
 * then in the order of the pantry. */
static void put_pairs(arena *a, view *list, const page_maker *by, size_t which, pair_side side,
                      const recipe_rows *rows, const swap_table *swaps) {
    const pantry *shelf = &by->folder->shelf;
    pair_group *groups = ARENA_ARRAY(a, pair_group, shelf->count * VERDICT_COUNT);
    pair_places pairs = swap_table_pairs(swaps, which, side);
    for (size_t i = 0; i < pairs.count; i++) {
        const pair_answer *one = &swaps->items[pairs.items[i]];
        size_t other = side == SIDE_FROM ? one->to : one->from;
        for (size_t says = 0; says < VERDICT_UNTRIED; says++)
            if (one->says[says])
                gather_pair(a, &groups[says * shelf->count + other], one, (verdict)says);
    }
    for (size_t says = 0; says < VERDICT_UNTRIED; says++)
        for (size_t other = 0; other < shelf->count; other++) {
            const pair_group *group = &groups[says * shelf->count + other];
            if (group->shown)
                put_group(a, list, by, shelf->items[other], group, (verdict)says, rows);
        }
}

static void put_swaps(arena *a, view *page, const page_maker *by, size_t which,
                      const recipe_rows *rows, const swap_table *swaps) {
    view *stands_in = view_put_list(a, page, "stands_in");
    view *replaces = view_put_list(a, page, "replaces");
    put_pairs(a, stands_in, by, which, SIDE_FROM, rows, swaps);
    put_pairs(a, replaces, by, which, SIDE_TO, rows, swaps);
    view_put_bool(a, page, "has_stands_in", stands_in->count > 0);
    view_put_bool(a, page, "has_replaces", replaces->count > 0);
}

view *view_of_ingredient(arena *a, const page_maker *by, size_t which,
                         const ingredient_tables *from) {
    const ingredient *of = by->folder->shelf.items[which];
    const language *in = page_language(by);
    view *page = page_view(a, by, "ingredient", path_of_ingredient(a, of), of->name, of->about);
    view_put_text(a, page, "name", of->name);
    view_put_text(a, page, "also_text",
                  of->also_count ? say_list(a, in, of->also, of->also_count) : NULL);
    view_put_text(a, page, "family", in->families[of->in]);
    view_put_text(a, page, "kind", of->kind[0] ? language_kind(in, of->kind) : NULL);
    view_put_text(a, page, "origin", in->origins[of->from]);
    view_put_text(a, page, "about", of->about);
    view_put_bool(a, page, "hers", of->hers);
    put_figures(a, in, page, of);
    put_measures(a, in, page, of);
    put_uptake(a, in, page, of);
    view_put_text(a, page, "heat_set_text", in->heat_sets[of->sets]);
    put_does(a, in, page, of);
    view_put_text(a, page, "allergens_text", allergen_words(a, in, of->allergens));
    put_reasons(a, page, by, of);
    if (bake_count(&from->bakes, which))
        view_put_text(a, page, "bake_href", path_of_bake(a, of));
    put_recipes(a, in, page, which, from->rows, &from->uses);
    put_swaps(a, page, by, which, from->rows, &from->swaps);
    return page;
}

static void put_family(arena *a, view *groups, const page_maker *by, family which,
                       const use_table *uses) {
    const pantry *shelf = &by->folder->shelf;
    view *group = view_object(a);
    view_put_text(a, group, "name", page_language(by)->families[which]);
    view *items = view_put_list(a, group, "items");
    for (size_t i = 0; i < shelf->count; i++) {
        if (shelf->items[i]->in != which || !uses->counts[i])
            continue;
        view *one = view_put_object(a, items, NULL);
        view_put_text(a, one, "name", shelf->items[i]->name);
        view_put_text(a, one, "href", path_of_ingredient(a, shelf->items[i]));
        view_put_number(a, one, "count", (double)uses->counts[i], 0);
    }
    if (items->count)
        view_put(groups, NULL, group);
}

view *view_of_ingredients(arena *a, const page_maker *by, const use_table *uses) {
    const char *title = SAID(page_language(by), INGREDIENTS_TITLE);
    view *page = page_view(a, by, "ingredients", "ingredients/", title,
                           SAID(page_language(by), INGREDIENTS_SUMMARY));
    view_put_text(a, page, "heading", title);
    view *groups = view_put_list(a, page, "groups");
    for (size_t i = 0; i < FAMILY_COUNT; i++)
        put_family(a, groups, by, (family)i, uses);
    return page;
}
