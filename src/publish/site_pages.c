#include "publish/site_pages.h"

#include "publish/workers.h"
#include "site/feeds.h"
#include "site/say.h"
#include "site/search_index.h"
#include "site/search_shards.h"
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

/* What the pages are made from, worked out once and constant after. */
typedef struct {
    const site_pages *from;
    row_groups kinds, tags;
    ingredient_tables tables;
    recipe_items items;
} shared_tables;

/* What one worker has. The arena is emptied after each page. */
typedef struct {
    const shared_tables *of;
    const page_maker *by;
    const recipe_rows *rows;
    outputs to;
    problems found;
    arena *a, *lasting;
    text page;
} maker;

static void write_text(maker *with, const char *file) {
    output_write(&with->to, file, text_span(&with->page), &with->found);
}

static void write_page(maker *with, const char *template, const char *path, const view *page) {
    if (with->by->show_views) {
        text_clear(&with->page);
        view_write_json(page, false, &with->page);
        write_text(with, arena_format(with->a, "%sview.json", path));
    }
    page_fill(with->by, template, page, &with->page, &with->found);
    write_text(with, arena_format(with->a, "%sindex.html", path));
}

/* -- one page each --------------------------------------------------------------------------- */

static void take_shard(const char *path, span json, void *state) {
    maker *with = state;
    output_write(&with->to, path, json, &with->found);
}

static size_t search_index_parts(const recipe_rows *rows) {
    return rows->count >= SHARDS_FROM ? SHARD_PARTS : 1;
}

static void make_search_index(maker *with, size_t which) {
    if (with->rows->count >= SHARDS_FROM) {
        search_shards_make(with->by, with->rows, which, take_shard, with);
        return;
    }
    text_clear(&with->page);
    search_index_write(with->a, with->by, with->rows, &with->page);
    write_text(with, "search/index.json");
}

static void make_search(maker *with, size_t unused) {
    (void)unused;
    const language *in = page_language(with->by);
    write_page(with, "search", "search/",
               page_view(with->a, with->by, "search", "search/", SAID(in, SEARCH_TITLE),
                         SAID(in, SEARCH_SUMMARY)));
}

static void make_home(maker *with, size_t unused) {
    (void)unused;
    write_page(with, "home", "",
               view_of_home(with->a, with->by, with->rows, &with->of->kinds, &with->of->tags));
}

/* All recipes, in groups. */
static const struct {
    const char *path;
    sentence_key heading;
    bool by_tag;
} group_pages[] = {{"recipes/", SAY_ALL_RECIPES, false},
                   {"kinds/", SAY_RECIPES_BY_KIND, false},
                   {"tags/", SAY_RECIPES_BY_TAG, true}};

static void make_groups(maker *with, size_t which) {
    const char *path = group_pages[which].path;
    const char *heading = say(with->a, page_language(with->by), group_pages[which].heading, NULL);
    write_page(with, "list", path,
               view_of_groups(with->a, with->by, path, heading, &with->of->items,
                              group_pages[which].by_tag ? &with->of->tags : &with->of->kinds));
}

static void make_group(maker *with, const char *folder, const row_group *of) {
    const char *path = arena_format(with->a, "%s/%s/", folder, of->slug);
    write_page(with, "list", path, view_of_group(with->a, with->by, path, &with->of->items, of));
}

static void make_kind(maker *with, size_t which) {
    make_group(with, "kinds", &with->of->kinds.items[which]);
}

static void make_tag(maker *with, size_t which) {
    make_group(with, "tags", &with->of->tags.items[which]);
}

static void make_ingredients(maker *with, size_t unused) {
    (void)unused;
    write_page(with, "ingredients", "ingredients/",
               view_of_ingredients(with->a, with->by, &with->of->tables.uses));
}

static void make_ingredient(maker *with, size_t which) {
    if (ingredient_has_page(&with->of->tables, which))
        write_page(with, "ingredient",
                   path_of_ingredient(with->a, with->by->folder->shelf.items[which]),
                   view_of_ingredient(with->a, with->by, which, &with->of->tables));
}

static void make_chart(maker *with, size_t unused) {
    (void)unused;
    write_page(with, "chart", "swaps/",
               view_of_chart(with->a, with->by, with->rows, &with->of->tables.swaps));
}

static void make_cupboard(maker *with, size_t unused) {
    (void)unused;
    write_page(with, "cupboard", "bake-with/",
               view_of_cupboard(with->a, with->by, &with->of->tables.bakes));
}

static void make_bake(maker *with, size_t which) {
    const bake_table *bakes = &with->of->tables.bakes;
    if (bake_count(bakes, which))
        write_page(with, "bake", path_of_bake(with->a, with->by->folder->shelf.items[which]),
                   view_of_bake(with->a, with->by, which, with->rows, bakes));
}

/* The page of assumptions, with the first recipe that has a swap to work through. */
static void make_water(maker *with, size_t unused) {
    (void)unused;
    const site_folder *folder = with->by->folder;
    const made *shown = water_example_of(with->of->from->recipes, &folder->shelf);
    size_t from = 0, to = 0;
    bool failed = false;
    problems told = problems_in(with->a); /* when its own pages were made */
    water_example example = {0};
    if (shown && water_example_in(shown->row, &folder->shelf, &from, &to)) {
        example.of = site_folder_recipe(with->a, folder, shown->name, &told, &failed);
        example.from = folder->shelf.items[from];
        example.to = folder->shelf.items[to];
    }
    if (failed) { /* the page stays as it was */
        problems_join(&with->found, &told);
        with->to.failed = true;
        output_keep(&with->to, WATER_PATH "index.html");
        return;
    }
    write_page(with, "water", WATER_PATH,
               view_of_water(with->a, with->by, example.of ? &example : NULL));
}

static void make_plain_page(maker *with, size_t which) {
    const plain_page *of = with->by->folder->pages[which];
    write_page(with, "plain", arena_format(with->a, "pages/%s/", of->slug),
               view_of_plain(with->a, with->by, of));
}

static void make_missing(maker *with, size_t unused) {
    (void)unused;
    view *page = page_view(with->a, with->by, "missing", "404.html",
                           SAID(page_language(with->by), NOT_FOUND), NULL);
    page_fill(with->by, "missing", page, &with->page, &with->found);
    write_text(with, "404.html");
}

static void copy_asset(maker *with, size_t which) {
    const reference_file *asset = &with->by->look->assets[which];
    output_write(&with->to, arena_format(with->a, "theme/%s", asset->name), asset->bytes,
                 &with->found);
}

static void make_feed(maker *with, size_t unused) {
    (void)unused;
    text_clear(&with->page);
    feed_write(with->a, with->by, with->rows, &with->page);
    write_text(with, "feed.xml");
}

static void make_robots(maker *with, size_t unused) {
    (void)unused;
    text_clear(&with->page);
    robots_write(with->a, with->by->folder, &with->page);
    write_text(with, "robots.txt");
}

/* -- the sitemap, once all pages are written --------------------------------------------------- */

static int compare_paths(const void *left, const void *right) {
    return strcmp(*(const char *const *)left, *(const char *const *)right);
}

/* Adds the addresses of those of `files` that are a folder's page. The notes of a recipe are left
 * out: they are the small print of a page that is there. */
static void add_addresses(arena *a, const written_files *files, word_list *to) {
    static const char name[] = "index.html";
    for (size_t i = 0; i < files->count; i++) {
        span path = span_of(files->items[i].path);
        bool of_notes = span_begins(path, "recipes/") && span_ends(path, "/swaps/index.html");
        if (strcmp(path_name(path.at), name) == 0 && !of_notes)
            LIST_ADD(a, to, arena_copy(a, span_first(path, path.length - strlen(name))));
    }
}

static void make_sitemap(maker *with, const outputs *to) {
    word_list all = {0};
    const made_list *recipes = with->of->from->recipes;
    add_addresses(with->a, &to->files, &all);
    for (size_t i = 0; i < recipes->count; i++)
        add_addresses(with->a, &recipes->items[i].files, &all);
    if (all.count)
        qsort(all.items, all.count, sizeof all.items[0], compare_paths);
    text_clear(&with->page);
    sitemap_write(with->a, with->by->folder, all.items, all.count, &with->page);
    write_text(with, "sitemap.xml");
}

/* -- the whole ------------------------------------------------------------------------------- */

/* A kind of page, and how many there are of it. */
typedef struct {
    void (*make)(maker *with, size_t which);
    size_t count;
} page_kind;

enum { KINDS_MOST = 20 };

/* What the workers share; each has one of the makers. */
typedef struct {
    page_kind kinds[KINDS_MOST]; /* the large ones first, so that no worker is left with one */
    maker *makers;
} page_work;

/* A list of all recipes may be large; its room is not held for the small pages behind it. */
enum { ROOM_KEPT = 1024 * 1024 };

static void make_piece(void *state, unsigned worker, size_t piece) {
    page_work *work = state;
    const page_kind *kind = work->kinds;
    for (; piece >= kind->count; kind++)
        piece -= kind->count;
    maker *with = &work->makers[worker];
    kind->make(with, piece);
    arena_reset(with->a);
    if (with->page.room > ROOM_KEPT)
        text_free(&with->page);
}

static maker maker_open(const shared_tables *of, const outputs *to) {
    arena *lasting = arena_new();
    maker with = {.of = of,
                  .by = of->from->by,
                  .rows = of->from->rows,
                  .to = *to,
                  .found = problems_in(lasting),
                  .a = arena_new(),
                  .lasting = lasting,
                  .page = TEXT_EMPTY};
    with.to.home = lasting;
    with.to.files = (written_files){0};
    return with;
}

static void maker_close(maker *with, outputs *to, problems *found) {
    outputs_join(to, &with->to);
    problems_join(found, &with->found);
    text_free(&with->page);
    arena_free(with->a);
    arena_free(with->lasting);
}

static size_t pieces_of(const page_work *work) {
    size_t pieces = 0;
    for (size_t i = 0; i < KINDS_MOST; i++)
        pieces += work->kinds[i].count;
    return pieces;
}

static void make_all(page_work *work, const shared_tables *of, unsigned workers, outputs *to,
                     problems *found) {
    maker makers[WORKERS_MOST];
    size_t pieces = pieces_of(work);
    unsigned count = workers_for(workers, pieces);
    for (unsigned i = 0; i < count; i++)
        makers[i] = maker_open(of, to);
    work->makers = makers;
    workers_run(count, pieces, make_piece, work);
    for (unsigned i = 0; i < count; i++)
        maker_close(&makers[i], to, found);
}

void site_pages_make(const site_pages *from, unsigned workers, outputs *to, problems *found) {
    arena *a = arena_new();
    const site_folder *folder = from->by->folder;
    const shared_tables of = {from, groups_by_kind(a, from->rows), groups_by_tag(a, from->rows),
                              ingredient_tables_of(a, from->rows, &folder->shelf),
                              recipe_items_of(a, from->by, from->rows)};
    page_work work = {.kinds = {{make_search_index, search_index_parts(from->rows)},
                                {make_groups, COUNT(group_pages)},
                                {make_kind, of.kinds.count},
                                {make_tag, of.tags.count},
                                {make_chart, 1},
                                {make_cupboard, 1},
                                {make_home, 1},
                                {make_ingredients, 1},
                                {make_ingredient, folder->shelf.count},
                                {make_bake, folder->shelf.count},
                                {make_plain_page, folder->page_count},
                                {make_water, 1},
                                {make_search, 1},
                                {make_missing, 1},
                                {make_feed, 1},
                                {make_robots, 1},
                                {copy_asset, from->by->look->asset_count}}};
    make_all(&work, &of, workers, to, found);
    maker last = maker_open(&of, to);
    if (to->failed) /* it would miss what could not be written */
        output_keep(&last.to, "sitemap.xml");
    else
        make_sitemap(&last, to);
    maker_close(&last, to, found);
    arena_free(a);
}
