#include "publish/recipe_pages.h"

#include "base/words.h"
#include "publish/swapped_pages.h"
#include "site/view_recipe.h"

recipe_maker recipe_maker_new(const page_maker *by, arena *a, arena *keep, outputs *to,
                              problems *found) {
    return (recipe_maker){
        .by = by, .a = a, .keep = keep, .to = to, .found = found, .page = TEXT_EMPTY};
}

void recipe_maker_free(recipe_maker *of) {
    text_free(&of->page);
}

static const char *file_in(arena *a, const char *path, const char *name) {
    return arena_format(a, "%s%s", path, name);
}

/* The files of a recipe that can't be made now stay as they are. */
static void keep_earlier(recipe_maker *with, const char *name) {
    if (!with->to->folder)
        return;
    span stem = span_of(name);
    stem.length -= strlen(".md");
    output_keep_earlier(with->to, path_of_recipe(with->a, words_slug(with->a, stem)));
}

static void check_picture(const recipe_maker *with, const recipe *of) {
    if (!of->picture)
        return;
    const site_folder *folder = with->by->folder;
    for (size_t i = 0; i < folder->pictures.count; i++)
        if (strcmp(folder->pictures.items[i].name, of->picture) == 0)
            return;
    problem_add(with->found, of->picture_at, "put the file into pictures/, or mend the name",
                "there is no picture \"%s\" in pictures/", of->picture);
}

/* Two files whose names make one slug would write one page over the other. */
static void check_slug(const recipe_maker *with, const recipe *of, const char *name) {
    const file_list *files = &with->by->folder->recipe_files;
    for (size_t i = 0; i < files->count && strcmp(files->items[i].name, name) != 0; i++) {
        span stem = span_of(files->items[i].name);
        stem.length -= strlen(".md");
        if (stem.length && strcmp(words_slug(with->a, stem), of->slug) == 0)
            problem_add(with->found, (place){of->file, 1, 1}, "rename one of the two files",
                        "recipes/%s has the same page, recipes/%s/", files->items[i].name,
                        of->slug);
    }
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
    text_clear(&with->page);
    (void)template_fill(with->by->look->templates, template, page, &with->page);
    output_write(with->to, file_in(with->a, path, "index.html"), text_span(&with->page),
                 with->found);
}

static void write_pages(recipe_maker *with, const whole_recipe *of) {
    const char *path = path_of_recipe(with->a, of->of->slug);
    view *alone = view_of_recipe(with->a, of);
    recipe_write_view(with, path, "recipe.json", view_of_recipe_document(with->a, of, alone));
    recipe_write_page(with, path, "recipe", view_of_recipe_page(with->a, of, alone));
    swapped_pages_make(with, of);
}

void recipe_make(recipe_maker *with, const char *name, recipe_rows *rows) {
    const site_folder *folder = with->by->folder;
    size_t errors = with->found->errors;
    bool failed = false;
    recipe *of = site_folder_recipe(with->a, folder, name, with->found, &failed);
    with->machine_failed = with->machine_failed || failed;
    if (of) {
        check_picture(with, of);
        check_slug(with, of, name);
    }
    if (!of || with->found->errors > errors) {
        keep_earlier(with, name);
        return;
    }
    recipe_facts about = facts_of(with->a, of, &folder->shelf);
    if (!with->to->folder) {
        notes_check(with->a, &folder->book, &about, with->found);
        return;
    }
    if (!of->publish)
        return;
    recipe_figures figures = figures_of(with->a, of, &folder->settings);
    swap_notes notes = notes_of(with->a, &folder->book, &about, true);
    whole_recipe whole = whole_recipe_of(with->a, with->by, &about, &figures, &notes);
    write_pages(with, &whole);
    recipe_row row =
        row_of(with->keep, of, &figures.macros, &notes, &folder->shelf, folder->settings.energy);
    LIST_ADD(with->keep, rows, row);
}
