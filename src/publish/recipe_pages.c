#include "publish/recipe_pages.h"

#include "publish/ground.h"
#include "publish/record_row.h"
#include "publish/swapped_pages.h"
#include "read/recipe_files.h"
#include "read/silence.h"
#include "site/view_recipe.h"
#include "site/view_swaps.h"

static const char *file_in(arena *a, const char *path, const char *name) {
    return arena_format(a, "%s%s", path, name);
}

/* The files of a recipe that can't be made now stay as they are. */
static void keep_earlier(recipe_maker *with, const char *name, const made *earlier) {
    static const char *const usual[] = {"index.html", "recipe.json", "swaps/index.html"};
    const char *path = path_of_recipe(with->a, page_slug(with->a, name));
    for (size_t i = 0; !earlier && i < COUNT(usual); i++)
        output_keep(with->to, file_in(with->a, path, usual[i]));
    for (size_t i = 0; earlier && i < earlier->files.count; i++)
        output_keep(with->to, earlier->files.items[i].path);
}

void recipe_write_view(recipe_maker *with, const char *path, const char *name, const view *of) {
    text_clear(&with->page);
    view_write_json(of, false, &with->page);
    output_write(with->to, file_in(with->a, path, name), text_span(&with->page), with->found);
}

void recipe_write_page(recipe_maker *with, const char *path, const char *template,
                       const view *page) {
    if (with->by->show_views)
        recipe_write_view(with, path, "view.json", page);
    page_fill(with->by, template, page, &with->page, with->found);
    output_write(with->to, file_in(with->a, path, "index.html"), text_span(&with->page),
                 with->found);
}

static void write_pages(recipe_maker *with, const whole_recipe *of) {
    const char *path = path_of_recipe(with->a, of->of->slug);
    arena_mark before = arena_here(with->a); /* the pages are large: one at a time */
    view *alone = view_of_recipe(with->a, of);
    recipe_write_view(with, path, "recipe.json", view_of_recipe_document(with->a, of, alone));
    view *swaps = view_of_swaps(with->a, &of->words, of->notes);
    recipe_write_page(with, path, "recipe", view_of_recipe_page(with->a, of, alone, swaps));
    if (of->notes->count)
        recipe_write_page(with, path_of_notes(with->a, of->of->slug), "notes",
                          view_of_notes_page(with->a, of, swaps));
    arena_back(with->a, before);
    swapped_pages_make(with, of);
}

/* The recipe in `file`, or null where it has errors. */
static recipe *read_recipe(recipe_maker *with, const char *name) {
    size_t errors = with->found->errors;
    bool failed = false;
    recipe *of = site_folder_recipe(with->a, with->by->folder, name, with->found, &failed);
    with->machine_failed = with->machine_failed || failed;
    if (of) {
        recipe_files_check(with->by->folder, with->slugs, of, name, with->found);
        silence_apply(with->a, of->file, of->source, NULL, with->found);
    }
    return with->found->errors > errors ? NULL : of;
}

/* Writes the pages of a good recipe and notes its row. */
static void publish(recipe_maker *with, const recipe *of, const recipe_facts *about, made *into) {
    const site_folder *folder = with->by->folder;
    recipe_figures figures = figures_of(with->a, of, &folder->settings);
    swap_notes notes = notes_of(with->a, &folder->book, about, true);
    whole_recipe whole = whole_recipe_of(with->a, with->by, about, &figures, &notes);
    write_pages(with, &whole);
    recipe_row *row = ARENA_NEW(with->keep, recipe_row);
    *row = row_of(with->keep, of, &figures.macros, &notes, folder);
    into->row = row;
}

static void make(recipe_maker *with, const made *earlier, made *into) {
    recipe *of = read_recipe(with, into->name);
    if (!of) {
        keep_earlier(with, into->name, earlier);
        return;
    }
    into->content = of->content;
    into->asks_all = of->own_swaps != NULL;
    into->shows = span_find(of->body, "pictures/") < of->body.length;
    into->bakes = bakes_of_recipe(&with->by->folder->book.log, of->slug);
    recipe_facts about = facts_of(with->a, of, &with->by->folder->shelf);
    if (of->publish)
        publish(with, of, &about, into);
}

/* Of what the pages that need all recipes show of this one: its row, and its pages' addresses. */
static digest listed_digest(const made *of) {
    digest all = of->row ? record_row_digest(of->row) : 0;
    for (size_t i = 0; i < of->files.count; i++)
        all = digest_join_words(all, of->files.items[i].path);
    return all;
}

made recipe_make(recipe_maker *with, const file_entry *file, const made *earlier) {
    made now = {.name = file->name, .stamp = file->stamp};
    size_t problems_before = with->found->count;
    with->to->earlier = earlier ? &earlier->files : NULL;
    with->to->files = (written_files){0};
    make(with, earlier, &now);
    now.troubled = now.troubled || with->found->count > problems_before || with->to->failed;
    now.files = with->to->files;
    written_sort(&now.files);
    now.listed = listed_digest(&now);
    return now;
}
