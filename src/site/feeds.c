#include "site/feeds.h"

enum { ENTRIES_MOST = 20 };

/* A site without a dated recipe still needs a valid `updated`. */
#define NO_DATE "1970-01-01"

static const char *last_change(const recipe_row *of) {
    if (of->changed && (!of->date || strcmp(of->changed, of->date) > 0))
        return of->changed;
    return of->date;
}

/* Newest change first; equal ones by slug. */
static int compare_newest(const void *left, const void *right) {
    const recipe_row *const *a = left, *const *b = right;
    int order = strcmp(last_change(*b), last_change(*a));
    return order ? order : strcmp((*a)->slug, (*b)->slug);
}

static void add_element(text *out, const char *name, const char *words) {
    text_format(out, "<%s>", name);
    text_add_html(out, span_of(words));
    text_format(out, "</%s>\n", name);
}

static void add_attribute(text *out, const char *name, const char *words) {
    if (!words)
        return;
    text_format(out, " %s=\"", name);
    text_add_html(out, span_of(words));
    text_add_char(out, '"');
}

static void add_link(text *out, const char *rel, const char *address) {
    text_format(out, "<link rel=\"%s\"", rel);
    add_attribute(out, "href", address);
    text_add(out, "/>\n");
}

/* The picture of the recipe, as what comes with the entry (RFC 4287, 4.2.7.2). */
static void add_picture(arena *a, const page_maker *by, const recipe_row *of, text *out) {
    const site_picture *picture = picture_find(by->pictures, of->picture);
    const char *type = picture ? picture_type_largest(picture) : NULL;
    if (!type)
        return;
    const picture_size *size = picture_size_largest(picture);
    text_format(out, "<link rel=\"enclosure\" type=\"%s\"", type);
    if (size)
        text_format(out, " length=\"%llu\"", (unsigned long long)size->bytes);
    add_attribute(out, "title", of->picture_text);
    add_attribute(out, "href", page_address(a, by->folder, picture_path_largest(a, picture)));
    text_add(out, "/>\n");
}

static void add_date(text *out, const char *name, const char *date) {
    text_format(out, "<%s>%sT00:00:00Z</%s>\n", name, date, name);
}

static void add_author(text *out, const char *name) {
    text_add(out, "<author>\n");
    add_element(out, "name", name);
    text_add(out, "</author>\n");
}

static void add_entry(arena *a, const page_maker *by, const recipe_row *of, text *out) {
    const char *address = page_address(a, by->folder, path_of_recipe(a, of->slug));
    text_add(out, "<entry>\n");
    add_element(out, "title", of->title);
    add_link(out, "alternate", address);
    add_picture(a, by, of, out);
    add_element(out, "id", address);
    add_date(out, "published", of->date ? of->date : last_change(of));
    add_date(out, "updated", last_change(of));
    if (of->author)
        add_author(out, of->author);
    if (of->summary)
        add_element(out, "summary", of->summary);
    text_add(out, "</entry>\n");
}

static void add_head(arena *a, const page_maker *by, const char *updated, text *out) {
    const site_settings *site = &by->folder->settings;
    text_add(out, "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n"
                  "<feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"");
    text_add_html(out, span_of(site->language));
    text_add(out, "\">\n");
    add_element(out, "title", site->title);
    if (site->summary)
        add_element(out, "subtitle", site->summary);
    add_element(out, "id", site->address);
    add_link(out, "alternate", site->address);
    add_link(out, "self", page_address(a, by->folder, "feed.xml"));
    add_date(out, "updated", updated);
    add_author(out, site->author ? site->author : site->title);
}

void feed_write(arena *a, const page_maker *by, const recipe_rows *rows, text *out) {
    const recipe_row **dated = ARENA_ARRAY(a, const recipe_row *, rows->count);
    size_t count = 0;
    for (size_t i = 0; i < rows->count; i++)
        if (last_change(&rows->items[i]))
            dated[count++] = &rows->items[i];
    if (count > 1)
        qsort(dated, count, sizeof *dated, compare_newest);
    add_head(a, by, count ? last_change(dated[0]) : NO_DATE, out);
    for (size_t i = 0; i < count && i < ENTRIES_MOST; i++)
        add_entry(a, by, dated[i], out);
    text_add(out, "</feed>\n");
}

void sitemap_write(arena *a, const site_folder *of, const char *const *paths, size_t count,
                   text *out) {
    text_add(out, "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n"
                  "<urlset xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">\n");
    for (size_t i = 0; i < count; i++) {
        text_add(out, "<url>");
        text_add(out, "<loc>");
        text_add_html(out, span_of(page_address(a, of, paths[i])));
        text_add(out, "</loc></url>\n");
    }
    text_add(out, "</urlset>\n");
}

void robots_write(arena *a, const site_folder *of, text *out) {
    text_format(out, "User-agent: *\nAllow: /\nSitemap: %s\n", page_address(a, of, "sitemap.xml"));
}
