#include "site/theme.h"

#include "base/files.h"
#include "base/list.h"
#include "site/view_json.h"

const char *const theme_pages[] = {"home",       "recipe",      "notes", "swapped", "list",
                                   "ingredient", "ingredients", "chart", "search",  "plain",
                                   "missing",    "cupboard",    "bake",  "water"};
const size_t theme_page_count = COUNT(theme_pages);

typedef struct {
    reference_file *items;
    size_t count, capacity;
} theme_files;

/* What is read of a theme before its words are chosen. */
typedef struct {
    theme *out;
    theme_files assets, words; /* words: a file a language */
} theme_parts;

static void add_file(arena *home, reference_file file, theme_parts *of, problems *found) {
    span name = span_of(file.name);
    if (span_ends(name, ".mustache")) {
        span stem = span_first(name, name.length - strlen(".mustache"));
        const char *shown = arena_format(home, "theme/%s", file.name);
        (void)template_add(of->out->templates, arena_copy(home, stem), shown, file.bytes, found);
    } else if (span_begins(name, "words-") && span_ends(name, ".json")) {
        LIST_ADD(home, &of->words, file);
    } else if (!span_ends(name, ".json")) {
        LIST_ADD(home, &of->assets, file);
    }
}

static bool read_embedded(arena *home, const char *name, theme_parts *of, problems *found) {
    const char *start = arena_format(home, "%s/", name);
    bool any = false;
    for (size_t i = 0; i < reference_themes_count; i++) {
        reference_file file = reference_themes[i];
        if (!span_begins(span_of(file.name), start))
            continue;
        file.name += strlen(start);
        add_file(home, file, of, found);
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

static bool read_folder(arena *home, const char *site, const char *folder, theme_parts *of,
                        problems *found) {
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
        digest *content = &of->out->content;
        *content = digest_join_words(*content, file.name);
        *content = digest_join(*content, digest_of(file.bytes));
        add_file(home, file, of, found);
    }
    return true;
}

/* -- words ------------------------------------------------------------------------------------ */

static const reference_file *words_of(arena *home, const theme_files *words, span tag) {
    const char *name = arena_format(home, "words-%.*s.json", SPAN(tag));
    for (size_t i = 0; i < words->count; i++)
        if (strcmp(words->items[i].name, name) == 0)
            return &words->items[i];
    return NULL;
}

static void add_no_words(const char *name, span tag, const theme_files *words, problems *found) {
    const char *all = "none";
    for (size_t i = 0; i < words->count; i++)
        all = i ? arena_format(found->home, "%s, %s", all, words->items[i].name)
                : words->items[i].name;
    problem_add(found, (place){"site.yaml", 0, 0},
                arena_format(found->home, "it has: %s; translate one of them to words-%.*s.json",
                             all, SPAN(tag)),
                "the theme \"%s\" has no words in the language \"%.*s\"", name, SPAN(tag));
}

/* Chooses the words in the language `tag` and checks that each one a template asks for is there. */
static void read_words(arena *home, const char *name, span tag, theme_parts *of, problems *found) {
    theme *out = of->out;
    span primary = span_first(tag, span_find(tag, "-"));
    const reference_file *file = words_of(home, &of->words, tag);
    file = file ? file : words_of(home, &of->words, primary);
    if (!file) {
        add_no_words(name, tag, &of->words, found);
        return;
    }
    view *words = view_read_json(home, file->name, file->bytes, found);
    if (!words)
        return;
    out->words = words;
    template_check_names(out->templates, &(template_names){"words", words, file->name}, found);
}

/* -- the whole -------------------------------------------------------------------------------- */

/* Adds an error for each page that has no template. */
static void check_pages(const char *name, const theme *of, problems *found) {
    for (size_t i = 0; i < theme_page_count; i++)
        if (!template_has(of->templates, theme_pages[i]))
            problem_add(found, (place){"site.yaml", 0, 0}, NULL,
                        "the theme \"%s\" has no template %s.mustache", name, theme_pages[i]);
}

bool theme_read(arena *home, const char *name, const char *site, const char *tag, theme *out,
                problems *found) {
    size_t errors = found->errors;
    theme_parts parts = {.out = out};
    *out = (theme){.templates = template_set_new(home), .words = view_object(home)};
    bool own = site && path_is_plain(span_of(name)) &&
               read_folder(home, site, path_join(home, site, name), &parts, found);
    bool there = own || read_embedded(home, name, &parts, found);
    if (!there)
        problem_add(
            found, (place){"site.yaml", 0, 0},
            "`plain` and `paper` are there; or name a folder of templates in the site folder",
            "there is no theme \"%s\"", name);
    template_check(out->templates, found);
    if (found->errors == errors)
        check_pages(name, out, found);
    if (there)
        read_words(home, name, span_of(tag), &parts, found);
    out->assets = parts.assets.items;
    out->asset_count = parts.assets.count;
    view_index_children(home, out->words);
    return found->errors == errors;
}
