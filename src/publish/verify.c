#include "publish/verify.h"

#include "base/folders.h"
#include "base/list.h"
#include "base/mapped.h"
#include "base/names.h"
#include "publish/address.h"
#include "publish/page_links.h"
#include "publish/workers.h"
#include "publish/xml_text.h"
#include "site/view_json.h"

#include <pthread.h>
#include <stdatomic.h>
#include <xxhash.h>

/* Something that pages refer to. `key` tells it from others; the place is that of its first
 * mention, in the order of the files. */
typedef struct {
    span key;             /* path, or path#fragment */
    destination leads_to; /* to.path names no folder: "recipes/" is "recipes/index.html" */
    span href;
    size_t page; /* its number in the list of files */
    unsigned line, column;
    size_t pages; /* how many refer to it */
} reference;

typedef struct {
    reference *items;
    size_t count, capacity;
    names by_key;
} reference_list;

typedef struct {
    uint64_t *items;
    size_t count, capacity;
} hash_list;

/* What all threads share, constant but for the counter. */
typedef struct {
    const char *folder, *address;
    const file_list *files;
    atomic_size_t next;
} shared_pages;

/* One thread's part. */
typedef struct {
    shared_pages *shared;
    arena *keep;
    reference_list wanted;
    hash_list anchors; /* of "path#id": every anchor of every page in eight bytes */
    problems found;
    size_t pages, links;
    bool failed, started;
    pthread_t thread;
} page_checker;

/* -- gathering
 * ------------------------------------------------------------------------------------------- */

static uint64_t anchor_hash(arena *a, const char *path, span anchor) {
    const char *whole = arena_format(a, "%s#%.*s", path, SPAN(anchor));
    return XXH3_64bits(whole, strlen(whole));
}

static void refer(arena *keep, reference_list *list, const reference *to) {
    size_t i;
    if (names_find(&list->by_key, to->key, &i)) {
        reference *known = &list->items[i];
        known->pages += to->pages;
        if (to->page < known->page) {
            known->page = to->page;
            known->line = to->line;
            known->column = to->column;
        }
        return;
    }
    reference copy = *to;
    copy.key = arena_copy_span(keep, to->key);
    copy.href = arena_copy_span(keep, to->href);
    if (to->leads_to.path)
        copy.leads_to.path = arena_copy(keep, span_of(to->leads_to.path));
    if (to->leads_to.fragment)
        copy.leads_to.fragment = arena_copy(keep, span_of(to->leads_to.fragment));
    (void)names_add(&list->by_key, copy.key, list->count, NULL);
    LIST_ADD(keep, list, copy);
}

/* The file that a host sends for `path`. */
static const char *file_of(arena *a, const char *path) {
    bool folder = !path[0] || span_ends(span_of(path), "/");
    return folder ? arena_format(a, "%sindex.html", path) : path;
}

/* "" and "top" mean the top of any page (HTML, section 7.4.6.3). */
static bool is_top(const char *fragment) {
    return !fragment[0] || strcmp(fragment, "top") == 0;
}

/* One page's references: each counted once a page. */
static void gather(page_checker *by, arena *a, size_t page, const page_links *of) {
    const char *path = by->shared->files->items[page].name;
    names seen = names_in(a);
    for (size_t i = 0; i < of->links.count; i++) {
        const page_link *link = &of->links.items[i];
        reference one = {.href = link->href, .page = page, .line = link->line, .pages = 1};
        one.column = link->column;
        one.leads_to = destination_of(a, by->shared->address, path, link->href);
        if (one.leads_to.to == LEADS_ELSEWHERE)
            continue;
        by->links++;
        one.key = link->href;
        if (one.leads_to.to == LEADS_INSIDE) {
            one.leads_to.path = file_of(a, one.leads_to.path);
            if (one.leads_to.fragment && is_top(one.leads_to.fragment))
                one.leads_to.fragment = NULL;
            const char *fragment = one.leads_to.fragment;
            one.key = span_of(arena_format(a, "%s%s%s", one.leads_to.path, fragment ? "#" : "",
                                           fragment ? fragment : ""));
        }
        if (names_add(&seen, one.key, 0, NULL))
            refer(by->keep, &by->wanted, &one);
    }
    for (size_t i = 0; i < of->anchors.count; i++)
        LIST_ADD(by->keep, &by->anchors, anchor_hash(a, path, of->anchors.items[i]));
}

/* Maps the file `path` of the site; the caller unmaps it. */
static bool see_file(arena *a, const char *folder, const char *path, span *bytes, problems *found) {
    int why = 0;
    if (file_map(path_join(a, folder, path), bytes, &why))
        return true;
    problem_add(found, (place){path, 0, 0}, NULL, "can't be read: %s", strerror(why));
    return false;
}

static void *check_pages(void *state) {
    page_checker *by = state;
    arena *a = arena_new();
    for (;;) {
        size_t i = atomic_fetch_add(&by->shared->next, 1);
        if (i >= by->shared->files->count)
            break;
        const char *path = by->shared->files->items[i].name;
        span bytes;
        if (!span_ends(span_of(path), ".html"))
            continue;
        arena_reset(a);
        if (!see_file(a, by->shared->folder, path, &bytes, &by->found)) {
            by->failed = true;
            continue;
        }
        page_links of = page_links_of(a, bytes);
        gather(by, a, i, &of);
        file_unmap(bytes);
        by->pages++;
    }
    arena_free(a);
    return NULL;
}

/* -- threads
 * --------------------------------------------------------------------------------------------- */

static void checker_start(page_checker *by, shared_pages *shared) {
    *by = (page_checker){.shared = shared, .keep = arena_new()};
    by->wanted.by_key = names_in(by->keep);
    by->found = problems_in(by->keep);
    by->started = pthread_create(&by->thread, NULL, check_pages, by) == 0;
    if (!by->started)
        check_pages(by);
}

/* Joins what `by` found to the first thread's part. */
static void checker_join(page_checker *first, page_checker *by) {
    if (by->started)
        pthread_join(by->thread, NULL);
    if (by == first)
        return;
    for (size_t i = 0; i < by->wanted.count; i++)
        refer(first->keep, &first->wanted, &by->wanted.items[i]);
    for (size_t i = 0; i < by->anchors.count; i++)
        LIST_ADD(first->keep, &first->anchors, by->anchors.items[i]);
    problems_join(&first->found, &by->found);
    first->pages += by->pages;
    first->links += by->links;
    first->failed = first->failed || by->failed;
    arena_free(by->keep);
}

static int compare_hashes(const void *left, const void *right) {
    uint64_t a = *(const uint64_t *)left, b = *(const uint64_t *)right;
    return (a > b) - (a < b);
}

/* -- judging
 * --------------------------------------------------------------------------------------------- */

static void complain(const reference *of, const file_list *files, const char *what,
                     problems *found) {
    place at = {files->items[of->page].name, of->line, of->column};
    arena *a = arena_new();
    const char *hint = of->pages > 1 ? arena_format(a, "%zu pages refer to it", of->pages) : NULL;
    problem_add(found, at, hint, "\"%.*s\" %s", SPAN(of->href), what);
    arena_free(a);
}

static bool is_there(arena *a, const names *paths, const char *path) {
    size_t value;
    return names_find(paths, span_of(path), &value) ||
           names_find(paths, span_of(path_join(a, path, "index.html")), &value);
}

static void judge(arena *a, page_checker *all, const file_list *files, const names *paths,
                  problems *found) {
    const hash_list *anchors = &all->anchors;
    if (anchors->count > 1)
        qsort(anchors->items, anchors->count, sizeof anchors->items[0], compare_hashes);
    for (size_t i = 0; i < all->wanted.count; i++) {
        const reference *of = &all->wanted.items[i];
        const destination *to = &of->leads_to;
        if (to->to == LEADS_NOWHERE) {
            complain(of, files, "is no address: mind its % escapes", found);
        } else if (!is_there(a, paths, to->path)) {
            complain(of, files, "leads to no file of the site", found);
        } else if (to->fragment && span_ends(span_of(to->path), ".html")) {
            uint64_t hash = anchor_hash(a, to->path, span_of(to->fragment));
            if (!bsearch(&hash, anchors->items, anchors->count, sizeof hash, compare_hashes))
                complain(of, files, "leads to no anchor of that page", found);
        }
    }
}

/* -- index, feed, sitemap
 * -------------------------------------------------------------------------------- */

static bool is_index(span path) {
    return span_begins(path, "search/") && span_ends(path, ".json");
}

/* Every address in the sitemap is a page of the site. */
static void judge_sitemap(arena *a, const char *address, const xml_texts *of, const names *paths,
                          problems *found) {
    for (size_t i = 0; i < of->count; i++) {
        const xml_text *loc = &of->items[i];
        destination to = destination_of(a, address, "sitemap.xml", loc->words);
        if (to.to != LEADS_INSIDE || !is_there(a, paths, file_of(a, to.path)))
            problem_add(found, (place){"sitemap.xml", loc->line, loc->column}, NULL,
                        "\"%.*s\" is no page of the site", SPAN(loc->words));
    }
}

static bool check_document(arena *a, const shared_pages *of, const char *path, const names *paths,
                           problems *found) {
    span bytes;
    bool index = is_index(span_of(path)), xml = span_ends(span_of(path), ".xml");
    if (!index && !xml)
        return true;
    if (!see_file(a, of->folder, path, &bytes, found))
        return false;
    xml_texts locations = {0};
    if (index)
        (void)view_read_json(a, path, bytes, found);
    else if (xml_read(a, path, bytes, "loc", &locations, found) && strcmp(path, "sitemap.xml") == 0)
        judge_sitemap(a, of->address, &locations, paths, found);
    file_unmap(bytes);
    return true;
}

/* What every site has, whatever its theme. */
static void check_complete(const names *paths, problems *found) {
    static const char *const wanted[] = {"index.html", "404.html", "search/index.json", "feed.xml",
                                         "sitemap.xml"};
    for (size_t i = 0; i < COUNT(wanted); i++) {
        size_t value;
        if (!names_find(paths, span_of(wanted[i]), &value))
            problem_add(found, (place){wanted[i], 0, 0}, NULL, "the site lacks this file");
    }
}

bool verify_site(const char *folder, const char *address, unsigned workers, verify_report *out,
                 problems *found) {
    page_checker by[WORKERS_MOST];
    arena *a = arena_new();
    file_list files;
    int why = 0;
    unsigned threads = workers_for(workers, WORKERS_MOST);
    bool good = folder_walk(a, folder, &files, &why);
    if (!good)
        problem_add(found, (place){folder, 0, 0}, NULL, "can't be read: %s", strerror(why));
    shared_pages shared = {.folder = folder, .address = address, .files = &files};
    for (unsigned i = 0; i < threads; i++)
        checker_start(&by[i], &shared);
    for (unsigned i = 0; i < threads; i++)
        checker_join(&by[0], &by[i]);
    names paths = names_in(a);
    for (size_t i = 0; i < files.count; i++)
        (void)names_add(&paths, span_of(files.items[i].name), i, NULL);
    problems_join(found, &by[0].found);
    judge(a, &by[0], &files, &paths, found);
    check_complete(&paths, found);
    for (size_t i = 0; i < files.count; i++)
        good = check_document(a, &shared, files.items[i].name, &paths, found) && good;
    *out = (verify_report){files.count, by[0].pages, by[0].links};
    good = good && !by[0].failed;
    arena_free(by[0].keep);
    arena_free(a);
    return good;
}
