#include "publish/site_pages.h"

#include "base/number.h"
#include "site/feeds.h"
#include "site/search_index.h"
#include "site/view_bake.h"
#include "site/view_chart.h"
#include "site/view_ingredient.h"
#include "site/view_lists.h"
#include "site/view_water.h"

const made *water_example_of(const made_list *recipes, const pantry *shelf) {
    size_t from, to;
    for (size_t i = 0; i < recipes->count; i++)
        if (recipes->items[i].row && water_example_in(recipes->items[i].row, shelf, &from, &to))
            return &recipes->items[i];
    return NULL;
}

/* What the steps share. The arena is emptied after each page; `lasting` is not. */
typedef struct {
    const page_maker *by;
    const recipe_rows *rows;
    const made_list *recipes;
    outputs *to;
    problems *found;
    arena *a, *lasting;
    text page;
} maker;

static void write_page(maker *with, const char *template, const char *path, const view *page) {
    if (with->by->show_views) {
        text_clear(&with->page);
        view_write_json(page, false, &with->page);
        output_write(with->to, arena_format(with->a, "%sview.json", path), text_span(&with->page),
                     with->found);
    }
    text_clear(&with->page);
    (void)template_fill(with->by->look->templates, template, page, &with->page);
    const char *file = arena_format(with->a, "%sindex.html", path);
    output_write(with->to, file, text_span(&with->page), with->found);
    arena_reset(with->a);
}

static void make_groups(maker *with, const char *folder, const row_groups *groups) {
    for (size_t i = 0; i < groups->count; i++) {
        const char *path = arena_format(with->a, "%s/%s/", folder, groups->items[i].slug);
        write_page(with, "list", path,
                   view_of_group(with->a, with->by, path, with->rows, &groups->items[i]));
    }
}

static void make_lists(maker *with) {
    row_groups kinds = groups_by_kind(with->lasting, with->rows);
    row_groups tags = groups_by_tag(with->lasting, with->rows);
    write_page(with, "home", "", view_of_home(with->a, with->by, with->rows, &kinds, &tags));
    write_page(with, "list", "recipes/",
               view_of_groups(with->a, with->by, "recipes/", "All recipes", with->rows, &kinds));
    write_page(with, "list", "kinds/",
               view_of_groups(with->a, with->by, "kinds/", "Recipes by kind", with->rows, &kinds));
    write_page(with, "list", "tags/",
               view_of_groups(with->a, with->by, "tags/", "Recipes by tag", with->rows, &tags));
    make_groups(with, "kinds", &kinds);
    make_groups(with, "tags", &tags);
}

static void make_ingredients(maker *with, const ingredient_tables *from) {
    const pantry *shelf = &with->by->folder->shelf;
    write_page(with, "ingredients", "ingredients/",
               view_of_ingredients(with->a, with->by, &from->uses));
    for (size_t i = 0; i < shelf->count; i++)
        if (ingredient_has_page(from, i))
            write_page(with, "ingredient", path_of_ingredient(with->a, shelf->items[i]),
                       view_of_ingredient(with->a, with->by, i, from));
    write_page(with, "chart", "swaps/", view_of_chart(with->a, with->by, with->rows, &from->swaps));
}

static void make_bakes(maker *with, const bake_table *bakes) {
    const pantry *shelf = &with->by->folder->shelf;
    write_page(with, "cupboard", "bake-with/", view_of_cupboard(with->a, with->by, bakes));
    for (size_t i = 0; i < shelf->count; i++)
        if (bake_count(bakes, i))
            write_page(with, "bake", path_of_bake(with->a, shelf->items[i]),
                       view_of_bake(with->a, with->by, i, with->rows, bakes));
}

static void make_search(maker *with) {
    write_page(with, "search", "search/",
               page_view(with->a, with->by, "search", "search/", "Search",
                         "Find a recipe by what is in the cupboard."));
    text_clear(&with->page);
    view_write_json(search_index_of(with->a, with->by, with->rows), false, &with->page);
    output_write(with->to, "search/index.json", text_span(&with->page), with->found);
    arena_reset(with->a);
}

/* The page of assumptions, with the first recipe that has a swap to work through. */
static void make_water(maker *with) {
    const site_folder *folder = with->by->folder;
    const made *shown = water_example_of(with->recipes, &folder->shelf);
    size_t from = 0, to = 0;
    bool failed = false;
    problems told = problems_in(with->a); /* when its own pages were made */
    water_example example = {0};
    if (shown && water_example_in(shown->row, &folder->shelf, &from, &to)) {
        example.of = site_folder_recipe(with->a, folder, shown->name, &told, &failed);
        example.from = folder->shelf.items[from];
        example.to = folder->shelf.items[to];
    }
    write_page(with, "water", WATER_PATH,
               view_of_water(with->a, with->by, example.of ? &example : NULL));
}

static void make_plain_pages(maker *with) {
    for (size_t i = 0; i < with->by->folder->page_count; i++) {
        const plain_page *of = with->by->folder->pages[i];
        write_page(with, "plain", arena_format(with->a, "pages/%s/", of->slug),
                   view_of_plain(with->a, with->by, of));
    }
}

static void make_missing(maker *with) {
    view *page = page_view(with->a, with->by, "missing", "404.html", "Page not found", NULL);
    text_clear(&with->page);
    (void)template_fill(with->by->look->templates, "missing", page, &with->page);
    output_write(with->to, "404.html", text_span(&with->page), with->found);
    arena_reset(with->a);
}

static int compare_paths(const void *left, const void *right) {
    return strcmp(*(const char *const *)left, *(const char *const *)right);
}

/* Adds the addresses of those of `files` that are a folder's page. */
static void add_addresses(maker *with, const written_files *files, word_list *to) {
    static const char name[] = "index.html";
    for (size_t i = 0; i < files->count; i++) {
        span path = span_of(files->items[i].path);
        if (strcmp(path_name(path.at), name) == 0)
            LIST_ADD(with->lasting, to,
                     arena_copy(with->lasting, span_first(path, path.length - strlen(name))));
    }
}

/* The addresses of all pages. */
static word_list addresses(maker *with) {
    word_list all = {0};
    add_addresses(with, &with->to->files, &all);
    for (size_t i = 0; i < with->recipes->count; i++)
        add_addresses(with, &with->recipes->items[i].files, &all);
    qsort(all.items, all.count, sizeof all.items[0], compare_paths);
    return all;
}

static void make_feeds(maker *with) {
    word_list paths = addresses(with);
    text_clear(&with->page);
    sitemap_write(with->a, with->by->folder, paths.items, paths.count, &with->page);
    output_write(with->to, "sitemap.xml", text_span(&with->page), with->found);
    text_clear(&with->page);
    feed_write(with->a, with->by, with->rows, &with->page);
    output_write(with->to, "feed.xml", text_span(&with->page), with->found);
    text_clear(&with->page);
    robots_write(with->a, with->by->folder, &with->page);
    output_write(with->to, "robots.txt", text_span(&with->page), with->found);
}

static void copy_theme(maker *with) {
    const theme *look = with->by->look;
    for (size_t i = 0; i < look->asset_count; i++)
        output_write(with->to, arena_format(with->a, "theme/%s", look->assets[i].name),
                     look->assets[i].bytes, with->found);
}

void site_pages_make(const page_maker *by, const recipe_rows *rows, const made_list *recipes,
                     outputs *to, problems *found) {
    if (!to->folder)
        return;
    maker with = {.by = by,
                  .rows = rows,
                  .recipes = recipes,
                  .to = to,
                  .found = found,
                  .a = arena_new(),
                  .lasting = arena_new(),
                  .page = TEXT_EMPTY};
    make_lists(&with);
    ingredient_tables tables = ingredient_tables_of(with.lasting, rows, &by->folder->shelf);
    make_ingredients(&with, &tables);
    make_bakes(&with, &tables.bakes);
    make_search(&with);
    make_water(&with);
    make_plain_pages(&with);
    make_missing(&with);
    make_feeds(&with);
    copy_theme(&with);
    text_free(&with.page);
    arena_free(with.a);
    arena_free(with.lasting);
}
