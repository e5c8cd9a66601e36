#include "site/view_lists.h"

#include "base/words.h"
#include "site/markdown.h"
#include "site/phrase.h"
#include "site/say.h"
#include "site/view_bake.h"

#include <assert.h>

enum { LATEST_SHOWN = 12 };

static int compare_groups(const void *left, const void *right) {
    const row_group *a = left, *b = right;
    return strcmp(a->slug, b->slug);
}

static void group_add(arena *a, names *table, row_groups *groups, const char *name, size_t row) {
    const char *slug = words_slug(a, span_of(name));
    size_t at = groups->count;
    if (names_add(table, span_of(slug), at, &at))
        LIST_ADD(a, groups, (row_group){.name = name, .slug = slug});
    row_group *group = &groups->items[at];
    assert(groups->items); /* it is there, or was added */
    if (group->capacity == group->count)
        group->rows = list_grow(a, group->rows, sizeof *group->rows, &group->capacity);
    group->rows[group->count++] = row;
}

static row_groups sorted(row_groups groups) {
    if (groups.count > 1)
        qsort(groups.items, groups.count, sizeof groups.items[0], compare_groups);
    return groups;
}

row_groups groups_by_kind(arena *a, const recipe_rows *rows) {
    names table = names_in(a);
    row_groups groups = {0};
    for (size_t i = 0; i < rows->count; i++)
        if (rows->items[i].kind)
            group_add(a, &table, &groups, rows->items[i].kind, i);
    return sorted(groups);
}

row_groups groups_by_tag(arena *a, const recipe_rows *rows) {
    names table = names_in(a);
    row_groups groups = {0};
    for (size_t i = 0; i < rows->count; i++)
        for (size_t t = 0; t < rows->items[i].tag_count; t++)
            group_add(a, &table, &groups, rows->items[i].tags[t], i);
    return sorted(groups);
}

static const char *figure(arena *a, const language *in, double value, const char *of,
                          bool lower_bound) {
    const char *said = arena_format(a, "%s %s", say_figure(a, in, value, 0), of);
    return lower_bound ? SAY(a, in, AT_LEAST, said) : said;
}

static view *item_of(arena *a, const page_maker *by, const recipe_row *of) {
    const language *in = page_language(by);
    view *item = view_object(a);
    view_put_text(a, item, "title", of->title);
    view_put_text(a, item, "summary", of->summary);
    view_put_text(a, item, "href", path_of_recipe(a, of->slug));
    picture_put(a, item, "picture", by->pictures, of->picture, of->picture_text);
    view_put_text(a, item, "kind", of->kind);
    view_put_text(a, item, "protein_text", figure(a, in, of->protein_g, "g", of->lacking));
    view_put_text(a, item, "energy_text", figure(a, in, of->energy_kcal, "kcal", of->lacking));
    view_put_text(a, item, "portion_text", of->portion_text);
    view_put_text(a, item, "minutes_text",
                  of->minutes > 0 ? say_minutes(a, in, of->minutes) : NULL);
    view_put_text(a, item, "date_text", say_date(a, in, of->date));
    return item;
}

/* Newest first; rows without a date last; equal dates by slug. */
static int compare_newest(const void *left, const void *right) {
    const recipe_row *const *a = left, *const *b = right;
    int order = strcmp((*b)->date ? (*b)->date : "", (*a)->date ? (*a)->date : "");
    return order ? order : strcmp((*a)->slug, (*b)->slug);
}

static void put_latest(arena *a, view *page, const page_maker *by, const recipe_rows *rows) {
    const recipe_row **newest = ARENA_ARRAY(a, const recipe_row *, rows->count);
    for (size_t i = 0; i < rows->count; i++)
        newest[i] = &rows->items[i];
    if (rows->count > 1)
        qsort(newest, rows->count, sizeof *newest, compare_newest);
    view *latest = view_put_list(a, page, "latest");
    for (size_t i = 0; i < rows->count && i < LATEST_SHOWN; i++)
        view_put(latest, NULL, item_of(a, by, newest[i]));
}

static void put_names(arena *a, view *page, const char *key, const char *folder,
                      const row_groups *groups) {
    view *list = view_put_list(a, page, key);
    for (size_t i = 0; i < groups->count; i++) {
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", groups->items[i].name);
        view_put_text(a, one, "href", arena_format(a, "%s/%s/", folder, groups->items[i].slug));
        view_put_number(a, one, "count", (double)groups->items[i].count, 0);
    }
}

static void put_powders(arena *a, view *page, const page_maker *by, const recipe_rows *rows) {
    const pantry *shelf = &by->folder->shelf;
    size_t *counts = ARENA_ARRAY(a, size_t, shelf->count);
    for (size_t i = 0; i < rows->count; i++)
        for (size_t u = 0; u < rows->items[i].use_count; u++)
            counts[rows->items[i].uses[u].what]++;
    view *list = view_put_list(a, page, "powders");
    for (size_t i = 0; i < shelf->count; i++) {
        if (!counts[i] || shelf->items[i]->in != FAMILY_PROTEIN_POWDER)
            continue;
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "name", shelf->items[i]->name);
        view_put_text(a, one, "href", path_of_bake(a, shelf->items[i]));
        view_put_number(a, one, "count", (double)counts[i], 0);
    }
}

view *view_of_home(arena *a, const page_maker *by, const recipe_rows *rows, const row_groups *kinds,
                   const row_groups *tags) {
    const site_folder *folder = by->folder;
    view *page = page_view(a, by, "home", "", folder->settings.title, folder->settings.summary);
    put_latest(a, page, by, rows);
    put_names(a, page, "kinds", "kinds", kinds);
    put_names(a, page, "tags", "tags", tags);
    put_powders(a, page, by, rows);
    view *counts = view_put_object(a, page, "counts");
    view_put_number(a, counts, "recipes", (double)rows->count, 0);
    view_put_number(a, counts, "ingredients", (double)folder->shelf.count, 0);
    view_put_number(a, counts, "rules", (double)folder->book.rules.count, 0);
    view_put_number(a, counts, "trials", (double)folder->book.log.count, 0);
    return page;
}

static view *list_page(arena *a, const page_maker *by, const char *path, const char *heading,
                       size_t count) {
    const language *in = page_language(by);
    const char *summary = SAY(a, in, LIST_SUMMARY, heading, SAY_NUMBER(a, in, RECIPES, count));
    view *page = page_view(a, by, "list", path, heading, summary);
    view_put_text(a, page, "heading", heading);
    return page;
}

recipe_items recipe_items_of(arena *a, const page_maker *by, const recipe_rows *rows) {
    recipe_items shown = {ARENA_ARRAY(a, const view *, rows->count), rows->count};
    for (size_t i = 0; i < rows->count; i++)
        shown.items[i] = item_of(a, by, &rows->items[i]);
    return shown;
}

static void put_group(arena *a, view *list, const recipe_items *shown, const row_group *of,
                      const char *href) {
    view *group = view_put_object(a, list, NULL);
    if (href) {
        view_put_text(a, group, "name", of->name);
        view_put_text(a, group, "href", href);
    }
    view *items = view_put_list(a, group, "items");
    for (size_t i = 0; i < of->count; i++)
        view_put_shared(a, items, NULL, shown->items[of->rows[i]]);
}

view *view_of_groups(arena *a, const page_maker *by, const char *path, const char *heading,
                     const recipe_items *shown, const row_groups *groups) {
    view *page = list_page(a, by, path, heading, shown->count);
    view *list = view_put_list(a, page, "groups");
    const char *folder = strcmp(path, "tags/") == 0 ? "tags" : "kinds";
    for (size_t i = 0; i < groups->count; i++)
        put_group(a, list, shown, &groups->items[i],
                  arena_format(a, "%s/%s/", folder, groups->items[i].slug));
    return page;
}

view *view_of_group(arena *a, const page_maker *by, const char *path, const recipe_items *shown,
                    const row_group *of) {
    view *page = list_page(a, by, path, phrase_capitalised(a, of->name), of->count);
    put_group(a, view_put_list(a, page, "groups"), shown, of, NULL);
    return page;
}

view *view_of_plain(arena *a, const page_maker *by, const plain_page *of) {
    const char *path = arena_format(a, "pages/%s/", of->slug);
    view *page = page_view(a, by, "plain", path, of->title, of->summary);
    view_put_text(a, page, "title", of->title);
    view_put_text(a, page, "summary", of->summary);
    view_put_text(a, page, "date_text", say_date(a, page_language(by), of->date));
    text html = TEXT_EMPTY;
    markdown_html(of->body, by->pictures, &html);
    view_put_span(a, page, "body_html", arena_copy_span(a, text_span(&html)));
    text_free(&html);
    return page;
}
