#include "check/checks.h"

#include "check/list.h"

#include "read/recipe_files.h"
#include "site/page.h"

const check checks[] = {
#define CHECK(name, finds, work, on_pages) {name, finds, work, on_pages},
    CHECK_LIST(CHECK)
#undef CHECK
};
const size_t checks_count = COUNT(checks);

static const char *const check_names[] = {
#define CHECK(name, finds, work, on_pages) name,
    CHECK_LIST(CHECK)
#undef CHECK
};

check_site check_site_of(arena *home, const site_folder *folder) {
    check_site site = {.folder = folder,
                       .recipe_slugs = recipe_slugs_of(home, folder),
                       .page_slugs = names_in(home),
                       .pictures = names_in(home),
                       .names = check_names};
    for (size_t i = 0; i < folder->page_count; i++)
        (void)names_add(&site.page_slugs, span_of(folder->pages[i]->slug), i, NULL);
    for (size_t i = 0; i < folder->pictures.count; i++)
        (void)names_add(&site.pictures, span_of(folder->pictures.items[i].name), i, NULL);
    return site;
}

static void run_all(check_case *with) {
    for (size_t i = 0; i < COUNT(checks); i++)
        if (checks[i].work && (with->of || checks[i].on_pages))
            checks[i].work(with);
}

/* A tag has no place of its own: it is looked for behind the key. */
static void add_tags(passages *to, const recipe *of) {
    for (size_t i = 0; i < of->tags.count; i++)
        passages_add_value(to, PASSAGE_TAG, of->tags.items[i], of->tags_at);
}

static passages passages_of_recipe(arena *a, const recipe *of) {
    passages all = passages_in(a, of->file, of->source);
    passages_add_value(&all, PASSAGE_TITLE, of->title, of->title_at);
    passages_add_value(&all, PASSAGE_SUMMARY, of->summary, of->summary_at);
    add_tags(&all, of);
    passages_add_markdown(&all, of->body);
    return all;
}

void check_recipe(const check_site *site, arena *a, const recipe *of, const recipe_facts *about,
                  problems *found) {
    check_case with = {
        .a = a,
        .site = site,
        .path = path_of_recipe(a, of->slug),
        .of = of,
        .about = about,
        .figures = macros_of(of),
        .text = passages_of_recipe(a, of),
        .called = mention_names_of(a, of, &site->folder->shelf, site->folder->settings.cups),
        .found = found};
    with.said = ARENA_ARRAY(a, mentions, with.text.count);
    for (size_t i = 0; i < with.text.count; i++)
        with.said[i] = mentions_in(a, &with.called, with.text.items[i].words);
    run_all(&with);
}

void check_page(const check_site *site, arena *a, const plain_page *of, problems *found) {
    check_case with = {.a = a,
                       .site = site,
                       .path = arena_format(a, "pages/%s/", of->slug),
                       .text = passages_in(a, of->file, of->source),
                       .found = found};
    passages_add_markdown(&with.text, of->body);
    run_all(&with);
}

void check_pages(const check_site *site, problems *found) {
    arena *a = arena_new();
    for (size_t i = 0; i < site->folder->page_count; i++)
        check_page(site, a, site->folder->pages[i], found);
    arena_free(a);
}
