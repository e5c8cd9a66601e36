/* Links within the site that lead nowhere, and pictures that say nothing. */
#include "base/words.h"
#include "check/checks.h"
#include "site/page.h"

enum { SEGMENTS_MOST = 16 };

/* A path of the site cut into its parts: "recipes", "rounds". */
typedef struct {
    span items[SEGMENTS_MOST];
    size_t count;
    bool outside; /* it leads above the top of the site */
} site_path;

static void add_segments(site_path *to, span path) {
    while (path.length) {
        size_t slash = span_find(path, "/");
        span piece = span_first(path, slash);
        path = span_from(path, slash + 1);
        if (piece.length == 0 || span_is(piece, "."))
            continue;
        if (!span_is(piece, "..")) {
            if (to->count < SEGMENTS_MOST)
                to->items[to->count++] = piece;
        } else if (to->count) {
            to->count--;
        } else {
            to->outside = true;
        }
    }
}

/* "mailto:", "https:": it leads elsewhere. */
static bool has_scheme(span target) {
    size_t colon = span_find(target, ":"), slash = span_find(target, "/");
    return colon < target.length && colon < slash;
}

/* The path on the site that `target` on the page at `path` leads to; false when it leads
 * elsewhere. */
static bool path_of_target(const check_case *with, span target, site_path *out) {
    const char *address = with->site->folder->settings.address;
    *out = (site_path){0};
    if (address && span_begins(target, address))
        target = span_from(target, strlen(address));
    else if (has_scheme(target) || span_begins(target, "/"))
        return false;
    else
        add_segments(out, span_of(with->path));
    target = span_first(target, span_find(target, "#"));
    add_segments(out, span_first(target, span_find(target, "?")));
    return true;
}

/* -- what there is ---------------------------------------------------------------------------- */

/* A recipe with `publish: no` has a file and no page. */
static bool is_published(const check_case *with, size_t index) {
    const site_folder *folder = with->site->folder;
    span bytes;
    int why;
    const char *path = path_join(with->a, path_join(with->a, folder->settings.folder, "recipes"),
                                 folder->recipe_files.items[index].name);
    if (!file_read(with->a, path, &bytes, &why))
        return true;
    return span_find(bytes, "\npublish: no") == bytes.length;
}

static bool has_recipe(const check_case *with, const site_path *to) {
    size_t index;
    if (to->count < 2)
        return true;
    if (!names_find(&with->site->recipe_slugs, to->items[1], &index))
        return false;
    /* Below its page there are only those of its swaps: "y/" for "../y/" leads nowhere. */
    bool below = to->count < 3 || span_begins(to->items[2], "with-") ||
                 span_is(to->items[2], "swaps") || span_is(to->items[2], "index.html") ||
                 span_is(to->items[2], "recipe.json");
    return below && is_published(with, index);
}

static bool has_page(const check_case *with, const site_path *to) {
    size_t index;
    return to->count >= 2 && names_find(&with->site->page_slugs, to->items[1], &index);
}

static bool has_picture(const check_case *with, const site_path *to) {
    size_t index;
    return to->count >= 2 && names_find(&with->site->pictures, to->items[to->count - 1], &index);
}

static bool has_ingredient(const check_case *with, const site_path *to) {
    const pantry *shelf = &with->site->folder->shelf;
    for (size_t i = 0; to->count >= 2 && i < shelf->count; i++)
        if (span_is(to->items[1], shelf->items[i]->slug))
            return true;
    return to->count < 2;
}

static bool has_anything(const check_case *with, const site_path *to) {
    (void)with;
    (void)to;
    return true;
}

/* What stands at the top of a site. Tags and kinds come of all recipes together, so that any is
 * let stand. */
static const struct {
    const char *first;
    bool (*has)(const check_case *with, const site_path *to);
} tops[] = {
    {"recipes", has_recipe},         {"pages", has_page},           {"pictures", has_picture},
    {"ingredients", has_ingredient}, {"kinds", has_anything},       {"tags", has_anything},
    {"swaps", has_anything},         {"balance", has_anything},     {"bake-with", has_anything},
    {"search", has_anything},        {"theme", has_anything},       {"index.html", has_anything},
    {"feed.xml", has_anything},      {"sitemap.xml", has_anything}, {"robots.txt", has_anything},
    {"404.html", has_anything}};

static bool leads_somewhere(const check_case *with, const site_path *to) {
    if (to->outside)
        return false;
    for (size_t i = 0; i < COUNT(tops) && to->count; i++)
        if (span_is(to->items[0], tops[i].first))
            return tops[i].has(with, to);
    return to->count == 0;
}

/* -- reporting --------------------------------------------------------------------------------- */

/* The recipe's or page's slug that is nearest to the last part of the path; null: none. */
static const char *nearest(const check_case *with, span last) {
    const site_folder *folder = with->site->folder;
    size_t count = folder->recipe_files.count, all = count + folder->page_count;
    const char **slugs = ARENA_ARRAY(with->a, const char *, all + 1);
    for (size_t i = 0; i < count; i++)
        slugs[i] = page_slug(with->a, folder->recipe_files.items[i].name);
    for (size_t i = 0; i < folder->page_count; i++)
        slugs[count + i] = folder->pages[i]->slug;
    const char *slug =
        words_nearest(span_of(page_slug(with->a, arena_copy(with->a, last))), slugs, all);
    if (!slug)
        return NULL;
    size_t index;
    bool is_recipe = names_find(&with->site->recipe_slugs, span_of(slug), &index);
    return arena_format(with->a, "%s%s/%s/", page_root(with->a, with->path),
                        is_recipe ? "recipes" : "pages", slug);
}

static const char *hint_for(const check_case *with, const prose_link *link, const site_path *to) {
    if (link->picture || (to->count && span_is(to->items[0], "pictures")))
        return "put the file into pictures/, and write ../../pictures/ before its name";
    size_t index;
    if (to->count == 2 && names_find(&with->site->recipe_slugs, to->items[1], &index))
        return "that recipe has \"publish: no\", so it has no page";
    const char *near = to->count ? nearest(with, to->items[to->count - 1]) : NULL;
    return near ? arena_format(with->a, "write %s", near)
                : "recipes stand at ../../recipes/name/, pages at ../../pages/name/";
}

static void check_target(check_case *with, const prose_link *link) {
    site_path to;
    if (!path_of_target(with, link->target, &to) || leads_somewhere(with, &to))
        return;
    problem_note(with->found, "link", PROBLEM_ERROR, passages_place(&with->text, link->at),
                 hint_for(with, link, &to), "%s \"%.*s\" leads nowhere",
                 link->picture ? "the picture" : "the link", SPAN(link->target));
}

void check_links(check_case *with) {
    if (!with->site->folder->settings.folder)
        return; /* a recipe without a site */
    for (size_t i = 0; i < with->text.links.count; i++) {
        const prose_link *link = &with->text.links.items[i];
        check_target(with, link);
        if (link->picture && span_trim(link->text).length == 0)
            problem_note(with->found, "picture-text", PROBLEM_WARNING,
                         passages_place(&with->text, link->at),
                         "write what it shows in the square brackets, for those who can't see it",
                         "the picture \"%.*s\" has no text", SPAN(link->target));
    }
}
