#include "site/theme.h"

#include "base/files.h"
#include "base/list.h"
#include "site/view_json.h"

const char *const theme_pages[] = {"home",        "recipe", "swapped", "list",  "ingredient",
                                   "ingredients", "chart",  "search",  "plain", "missing",
                                   "cupboard",    "bake",   "water"};
const size_t theme_page_count = COUNT(theme_pages);

typedef struct {
    reference_file *items;
    size_t count, capacity;
} theme_files;

static void add_file(arena *home, reference_file file, theme *out, theme_files *assets,
                     problems *found) {
    span name = span_of(file.name);
    if (span_ends(name, ".mustache")) {
        span stem = span_first(name, name.length - strlen(".mustache"));
        const char *shown = arena_format(home, "theme/%s", file.name);
        (void)template_add(out->templates, arena_copy(home, stem), shown, file.bytes, found);
    } else if (span_is(name, "words-en.json")) {
        out->words = view_read_json(home, file.name, file.bytes, found);
    } else if (!span_ends(name, ".json")) {
        LIST_ADD(home, assets, file);
    }
}

static bool read_embedded(arena *home, const char *name, theme *out, theme_files *assets,
                          problems *found) {
    const char *start = arena_format(home, "%s/", name);
    bool any = false;
    for (size_t i = 0; i < reference_themes_count; i++) {
        reference_file file = reference_themes[i];
        if (!span_begins(span_of(file.name), start))
            continue;
        file.name += strlen(start);
        add_file(home, file, out, assets, found);
        any = true;
    }
    return any;
}

static bool holds_templates(arena *home, const char *site, const char *folder) {
    file_list listed;
    int why;
    return folder_exists(folder) && path_leads_inside(site, folder) &&
           file_list_folder(home, folder, ".mustache", &listed, &why) && listed.count > 0;
}

static bool read_folder(arena *home, const char *site, const char *folder, theme *out,
                        theme_files *assets, problems *found) {
    file_list listed;
    int why;
    if (!holds_templates(home, site, folder) ||
        !file_list_folder(home, folder, NULL, &listed, &why))
        return false;
    for (size_t i = 0; i < listed.count; i++) {
        reference_file file = {.name = listed.items[i].name};
        if (!file_read(home, path_join(home, folder, file.name), &file.bytes, &why)) {
            problem_add(found, (place){file.name, 0, 0}, NULL, "this theme file can't be read");
            continue;
        }
        out->content = digest_join_words(out->content, file.name);
        out->content = digest_join(out->content, digest_of(file.bytes));
        add_file(home, file, out, assets, found);
    }
    return true;
}

bool theme_read(arena *home, const char *name, const char *site, theme *out, problems *found) {
    size_t errors = found->errors;
    theme_files assets = {0};
    *out = (theme){.templates = template_set_new(home), .words = view_object(home)};
    bool own = site && path_is_plain(span_of(name)) &&
               read_folder(home, site, path_join(home, site, name), out, &assets, found);
    if (!own && !read_embedded(home, name, out, &assets, found))
        problem_add(
            found, (place){"site.yaml", 0, 0},
            "`plain` and `paper` are there; or name a folder of templates in the site folder",
            "there is no theme \"%s\"", name);
    template_check(out->templates, found);
    text probe = TEXT_EMPTY;
    for (size_t i = 0; i < theme_page_count && found->errors == errors; i++) {
        if (!template_fill(out->templates, theme_pages[i], view_object(home), &probe))
            problem_add(found, (place){"site.yaml", 0, 0}, NULL,
                        "the theme \"%s\" has no template %s.mustache", name, theme_pages[i]);
        text_clear(&probe);
    }
    text_free(&probe);
    out->assets = assets.items;
    out->asset_count = assets.count;
    if (!out->words)
        out->words = view_object(home);
    view_index_fill(&out->words_index, out->words);
    return found->errors == errors;
}
