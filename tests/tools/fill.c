/* Prints a template filled from JSON: for the suites that compare and for work on a theme.
 *
 *     fill FOLDER NAME VIEW.json...   the templates of a theme's folder; the views' keys together
 *     fill --case                     {"template", "data", "partials"?} from standard input
 */
#include "base/files.h"
#include "site/template.h"
#include "site/view_json.h"

#include <stdio.h>

static void print_problems(const problems *found) {
    text out = TEXT_EMPTY;
    for (size_t i = 0; i < found->count; i++)
        problem_print(&found->items[i], &out);
    fputs(out.bytes, stderr);
    text_free(&out);
}

static bool print_filled(const template_set *set, const char *name, const view *page) {
    text out = TEXT_EMPTY;
    bool filled = template_fill(set, name, page, &out);
    fwrite(out.bytes, 1, out.length, stdout);
    text_free(&out);
    return filled;
}

static span read_input(arena *a) {
    text all = TEXT_EMPTY;
    char room[4096];
    for (size_t got; (got = fread(room, 1, sizeof room, stdin)) > 0;)
        text_add_span(&all, (span){room, got});
    span copy = arena_copy_span(a, text_span(&all));
    text_free(&all);
    return copy;
}

/* The part of a case called `key`; an empty object where there is none. */
static const view *part_of(arena *a, const view *all, const char *key) {
    const view *part = view_get(all, view_key_named(key));
    return part ? part : view_object(a);
}

static bool fill_case(arena *a, problems *found) {
    const view *all = view_read_json(a, "case", read_input(a), found);
    if (!all)
        return false;
    template_set *set = template_set_new(a);
    for (const view *one = part_of(a, all, "partials")->first; one; one = one->next)
        template_add(set, one->key.bytes, one->key.bytes, one->bytes, found);
    template_add(set, "", "template", part_of(a, all, "template")->bytes, found);
    return !found->errors && print_filled(set, "", part_of(a, all, "data"));
}

static void add_folder(arena *a, template_set *set, const char *folder, problems *found) {
    static const char suffix[] = ".mustache";
    file_list files = {0};
    int why;
    if (!file_list_folder(a, folder, suffix, &files, &why))
        return;
    for (size_t i = 0; i < files.count; i++) {
        span name = span_of(files.items[i].name), bytes;
        const char *path = path_join(a, folder, files.items[i].name);
        if (file_read(a, path, &bytes, &why))
            template_add(set, arena_copy(a, span_first(name, name.length - sizeof suffix + 1)),
                         path, bytes, found);
    }
    template_check(set, found);
}

static bool add_view(arena *a, view *page, const char *path, problems *found) {
    span bytes;
    int why;
    if (!file_read(a, path, &bytes, &why)) {
        problem_add(found, (place){path, 0, 0}, NULL, "can't be read");
        return false;
    }
    view *all = view_read_json(a, path, bytes, found);
    if (all)
        view_put_all(page, all);
    return all != NULL;
}

static bool fill_theme(arena *a, int count, char **words, problems *found) {
    template_set *set = template_set_new(a);
    add_folder(a, set, words[0], found);
    view *page = view_object(a);
    for (int i = 2; i < count; i++)
        if (!add_view(a, page, words[i], found))
            return false;
    return print_filled(set, words[1], page) && !found->errors;
}

int main(int count, char **words) {
    bool one_case = count == 2 && strcmp(words[1], "--case") == 0;
    if (!one_case && count < 4) {
        fputs("fill FOLDER NAME VIEW.json...\nfill --case\n", stderr);
        return 2;
    }
    arena *a = arena_new();
    problems found = problems_in(a);
    bool fine = one_case ? fill_case(a, &found) : fill_theme(a, count - 1, words + 1, &found);
    print_problems(&found);
    arena_free(a);
    return fine ? 0 : 1;
}
