/* Writes of a site only what its search needs: the search page, its index and the theme's files, by
 * the code that a whole build runs. The pages of a hundred thousand recipes would be tens of
 * gigabytes, of which a search reads none.
 *
 *     search_site FOLDER OUT     (FOLDER: a site folder, say of generate) */
#include <stdio.h>

#include "publish/outputs.h"
#include "site/search_index.h"
#include "site/search_shards.h"
#include "site/view_figures.h"

typedef struct {
    arena *a;
    site_folder folder;
    theme look;
    page_maker by;
    outputs to;
    problems found;
} writer;

static void take_piece(const char *path, span json, void *state) {
    writer *w = state;
    output_write(&w->to, path, json, &w->found);
}

static void add_row(writer *w, arena *a, const char *name, recipe_rows *rows) {
    bool failed = false;
    const recipe *of = site_folder_recipe(a, &w->folder, name, &w->found, &failed);
    if (!of)
        return;
    recipe_facts about = facts_of(a, of, &w->folder.shelf);
    recipe_figures figures = figures_of(a, of, &w->folder.settings);
    swap_notes notes = notes_of(a, &w->folder.book, &about, true);
    LIST_ADD(w->a, rows, row_of(w->a, of, &figures.macros, &notes, &w->folder));
}

static recipe_rows rows_of(writer *w) {
    recipe_rows rows = {0};
    arena *a = arena_new();
    for (size_t i = 0; i < w->folder.recipe_files.count; i++) {
        arena_reset(a);
        add_row(w, a, w->folder.recipe_files.items[i].name, &rows);
    }
    arena_free(a);
    rows_sort(&rows);
    return rows;
}

static void write_index(writer *w, const recipe_rows *rows) {
    if (rows->count >= SHARDS_FROM) {
        for (size_t i = 0; i < SHARD_PARTS; i++)
            search_shards_make(&w->by, rows, i, take_piece, w);
        return;
    }
    text t = TEXT_EMPTY;
    search_index_write(w->a, &w->by, rows, &t);
    take_piece("search/index.json", text_span(&t), w);
    text_free(&t);
}

static void write_page(writer *w) {
    text t = TEXT_EMPTY;
    const view *page = page_view(w->a, &w->by, "search", "search/", "Search", NULL);
    if (template_fill(w->look.templates, "search", page, &t))
        take_piece("search/index.html", text_span(&t), w);
    text_free(&t);
    for (size_t i = 0; i < w->look.asset_count; i++)
        take_piece(arena_format(w->a, "theme/%s", w->look.assets[i].name), w->look.assets[i].bytes,
                   w);
}

static bool read_site(writer *w, const char *folder) {
    bool failed = false;
    return site_folder_read(w->a, folder, &w->folder, &w->found, &failed) && !failed &&
           site_folder_speak(&w->folder, &w->found) &&
           theme_read(w->a, w->folder.settings.theme, folder, w->folder.settings.language, &w->look,
                      &w->found);
}

static void print_problems(const problems *found) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < found->count; i++)
        problem_print(&found->items[i], &t);
    fputs(t.length ? t.bytes : "", stderr);
    text_free(&t);
}

int main(int count, char **words) {
    if (count != 3) {
        fputs("usage: search_site FOLDER OUT\n", stderr);
        return 2;
    }
    arena *a = arena_new();
    writer w = {.a = a, .found = problems_in(a)};
    if (read_site(&w, words[1])) {
        w.by = (page_maker){.folder = &w.folder, .look = &w.look};
        w.to = (outputs){.home = a, .folder = words[2], .at = folder_open(words[2])};
        recipe_rows rows = rows_of(&w);
        write_index(&w, &rows);
        write_page(&w);
        folder_close(w.to.at);
        printf("%zu recipes, %zu files in %s\n", rows.count, w.to.files.count, words[2]);
    }
    print_problems(&w.found);
    int failed = w.found.errors > 0 || w.to.failed;
    arena_free(a);
    return failed;
}
