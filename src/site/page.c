#include "site/page.h"

#include "base/words.h"
#include "site/say.h"

#include <stdint.h>

char *page_root(arena *a, const char *path) {
    text t = TEXT_EMPTY;
    for (const char *c = path; *c; c++)
        if (*c == '/')
            text_add(&t, "../");
    char *root = arena_copy(a, text_span(&t));
    text_free(&t);
    return root;
}

char *path_of_recipe(arena *a, const char *slug) {
    return arena_format(a, "recipes/%s/", slug);
}

char *path_of_ingredient(arena *a, const ingredient *of) {
    return arena_format(a, "ingredients/%s/", of->slug);
}

char *path_of_kind(arena *a, const char *kind) {
    return arena_format(a, "kinds/%s/", words_slug(a, span_of(kind)));
}

char *path_of_tag(arena *a, const char *tag) {
    return arena_format(a, "tags/%s/", words_slug(a, span_of(tag)));
}

char *path_of_notes(arena *a, const char *slug) {
    return arena_format(a, "recipes/%s/swaps/", slug);
}

char *path_of_note(arena *a, const char *slug, const ingredient *from, const ingredient *to) {
    return arena_format(a, "recipes/%s/swaps/#swap-%s-%s", slug, from->slug, to->slug);
}

char *path_of_swapped(arena *a, const recipe *of, const swap_note *note) {
    const recipe_line *lines = of->lines.items;
    if (note->second_line == SIZE_MAX)
        return arena_format(a, "recipes/%s/with-%s/", of->slug, note->to->slug);
    return arena_format(a, "recipes/%s/with-%s-for-%s-and-%s/", of->slug, note->to->slug,
                        lines[note->line].what->slug, lines[note->second_line].what->slug);
}

char *page_address(arena *a, const site_folder *of, const char *path) {
    return arena_format(a, "%s%s", of->settings.address, path);
}

static void put_site(arena *a, const site_settings *of, view *page) {
    view *site = view_put_object(a, page, "site");
    view_put_text(a, site, "title", of->title);
    view_put_text(a, site, "summary", of->summary);
    view_put_text(a, site, "author", of->author);
    view_put_text(a, site, "address", of->address);
    view_put_text(a, site, "language", of->language);
    view_put_text(a, site, "currency", of->currency);
}

static void put_menu_item(arena *a, view *menu, const char *title, const char *href,
                          const char *path) {
    view *item = view_put_object(a, menu, NULL);
    view_put_text(a, item, "title", title);
    view_put_text(a, item, "href", href);
    view_put_bool(a, item, "here", strcmp(href, path) == 0);
}

static void put_menu(arena *a, const page_maker *by, view *page, const char *path) {
    const language *in = page_language(by);
    const char *const fixed[][2] = {{SAID(in, MENU_RECIPES), "recipes/"},
                                    {SAID(in, MENU_SEARCH), "search/"},
                                    {SAID(in, MENU_BAKE_WITH), "bake-with/"},
                                    {SAID(in, MENU_SWAPS), "swaps/"},
                                    {SAID(in, MENU_INGREDIENTS), "ingredients/"}};
    view *menu = view_put_list(a, page, "menu");
    for (size_t i = 0; i < COUNT(fixed); i++)
        put_menu_item(a, menu, fixed[i][0], fixed[i][1], path);
    for (size_t i = 0; i < by->folder->page_count; i++) {
        const plain_page *p = by->folder->pages[i];
        if (p->in_menu)
            put_menu_item(a, menu, p->title, arena_format(a, "pages/%s/", p->slug), path);
    }
}

/* Said on every page: what the figures are and what they are not. */
static void put_cautions(arena *a, const site_settings *of, view *page) {
    view *list = view_put_list(a, page, "cautions_general");
    view_put_text(a, list, NULL, SAID(of->in, CAUTION_ESTIMATES));
    view_put_text(a, list, NULL, SAID(of->in, CAUTION_ALLERGENS));
    for (size_t i = 0; i < of->cautions.count; i++)
        view_put_text(a, list, NULL, of->cautions.items[i]);
}

view *page_view(arena *a, const page_maker *by, const char *kind, const char *path,
                const char *title, const char *summary) {
    view *page = view_object(a);
    put_site(a, &by->folder->settings, page);
    /* 404.html is served for any address, at any depth: its links begin at the site's address. */
    bool anywhere = strcmp(kind, "missing") == 0;
    view_put_text(a, page, "root", anywhere ? by->folder->settings.address : page_root(a, path));
    view *about = view_put_object(a, page, "page");
    view_put_text(a, about, "title", title);
    view_put_text(a, about, "summary", summary ? summary : by->folder->settings.summary);
    view_put_text(a, about, "path", path);
    view_put_text(a, about, "canonical", page_address(a, by->folder, path));
    view_put_text(a, about, "kind", kind);
    put_menu(a, by, page, path);
    view_put_shared(a, page, "words", by->look->words);
    put_cautions(a, &by->folder->settings, page);
    return page;
}

static void put_image(arena *a, const page_maker *by, view *about, const site_picture *of) {
    const char *type = picture_type_largest(of);
    const picture_size *size = picture_size_largest(of);
    view_put_text(a, about, "image", page_address(a, by->folder, picture_path_largest(a, of)));
    if (type)
        view_put_text(a, about, "image_type", type);
    if (size) {
        view_put_number(a, about, "image_width", size->width, 0);
        view_put_number(a, about, "image_height", size->height, 0);
    }
}

void page_put_image(arena *a, const page_maker *by, view *page, const char *picture,
                    const char *words) {
    const site_picture *of = picture_find(by->pictures, picture);
    for (view *about = page->first; of && about; about = about->next)
        if (about->key.bytes && strcmp(about->key.bytes, "page") == 0) {
            put_image(a, by, about, of);
            if (words)
                view_put_text(a, about, "image_alt", words);
        }
}

void page_fill(const page_maker *by, const char *template, const view *page, text *out,
               problems *found) {
    text_clear(out);
    if (!template_fill(by->look->templates, template, page, out))
        problem_add(found, (place){"site.yaml", 0, 0},
                    "let a partial call itself only for what lies deeper in the view",
                    "the template %s of the theme \"%s\" does not end", template,
                    by->folder->settings.theme);
}
