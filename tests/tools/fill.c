/* Prints a template filled from JSON: for the suites that compare and for work on a theme.
 *
 *     fill FOLDER NAME VIEW.json...   the templates of a theme's folder; the views' keys together
 *     fill --case                     {"template", "data", "partials"?} from standard input
 */
#include "base/files.h"
#include "base/list.h"
#include "site/template.h"

#include <jansson.h>
#include <stdio.h>

static const view *view_of(arena *a, json_t *value);

static view *view_of_parts(arena *a, json_t *value) {
    bool object = json_is_object(value);
    view *all = object ? view_object(a) : view_list(a);
    const char *key;
    size_t index;
    json_t *part;
    if (object)
        json_object_foreach(value, key, part)
            view_put_shared(a, all, arena_copy(a, span_of(key)), view_of(a, part));
    else
        json_array_foreach(value, index, part) view_put_shared(a, all, NULL, view_of(a, part));
    return all;
}

static const view *view_of(arena *a, json_t *value) {
    if (json_is_object(value) || json_is_array(value))
        return view_of_parts(a, value);
    view *holder = view_list(a);
    if (json_is_string(value)) {
        span words = {json_string_value(value), json_string_length(value)};
        return view_put_span(a, holder, NULL, arena_copy_span(a, words));
    }
    if (json_is_number(value))
        return view_put_number(a, holder, NULL, json_number_value(value), 6);
    if (json_is_boolean(value))
        return view_put_bool(a, holder, NULL, json_is_true(value));
    return view_put_text(a, holder, NULL, NULL);
}

static int finish(template_set *set, const char *name, const view *page, problems *found) {
    template_check(set, found);
    text out = TEXT_EMPTY;
    for (size_t i = 0; i < found->count; i++)
        problem_print(&found->items[i], &out);
    fputs(out.bytes, stderr);
    text_clear(&out);
    bool filled = template_fill(set, name, page, &out);
    fwrite(out.bytes, 1, out.length, stdout);
    text_free(&out);
    return filled ? 0 : 1;
}

static void add_text(template_set *set, const char *name, json_t *bytes, problems *found) {
    span source = {json_string_value(bytes), json_string_length(bytes)};
    template_add(set, name, name, source, found);
}

static int fill_case(arena *a) {
    json_error_t error;
    json_t *all = json_loadf(stdin, 0, &error);
    if (!all) {
        fprintf(stderr, "standard input:%d: %s\n", error.line, error.text);
        return 1;
    }
    problems found = problems_in(a);
    template_set *set = template_set_new(a);
    const char *name;
    json_t *partial;
    json_object_foreach(json_object_get(all, "partials"), name, partial)
        add_text(set, name, partial, &found);
    add_text(set, "", json_object_get(all, "template"), &found);
    problems ignored = problems_in(a); /* a missing partial is the empty text there */
    int code = found.count ? 1 : 0;
    if (code == 0)
        finish(set, "", view_of(a, json_object_get(all, "data")), &ignored);
    json_decref(all);
    return code;
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
}

static bool add_view(arena *a, view *page, const char *path) {
    json_error_t error;
    json_t *all = json_load_file(path, 0, &error);
    if (!all) {
        fprintf(stderr, "%s:%d: %s\n", path, error.line, error.text);
        return false;
    }
    const char *key;
    json_t *part;
    json_object_foreach(all, key, part)
        view_put_shared(a, page, arena_copy(a, span_of(key)), view_of(a, part));
    json_decref(all);
    return true;
}

static int fill_theme(arena *a, int count, char **words) {
    problems found = problems_in(a);
    template_set *set = template_set_new(a);
    add_folder(a, set, words[0], &found);
    view *page = view_object(a);
    for (int i = 2; i < count; i++)
        if (!add_view(a, page, words[i]))
            return 1;
    int code = finish(set, words[1], page, &found);
    return found.errors ? 1 : code;
}

int main(int count, char **words) {
    bool one_case = count == 2 && strcmp(words[1], "--case") == 0;
    if (!one_case && count < 4) {
        fputs("fill FOLDER NAME VIEW.json...\nfill --case\n", stderr);
        return 2;
    }
    arena *a = arena_new();
    int code = one_case ? fill_case(a) : fill_theme(a, count - 1, words + 1);
    arena_free(a);
    return code;
}
