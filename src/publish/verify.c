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

#include <assert.h>
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
    const bool *known; /* one a file: a page that need not be parsed; null: none */
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

static bool is_index(span path) {
    return span_begins(path, "search/") && span_ends(path, ".json");
}

/* "" and "top" mean the top of any page (HTML, section 7.4.6.3). */
static bool is_top(const char *fragment) {
    return !fragment[0] || strcmp(fragment, "top") == 0;
}

static void add_anchors(page_checker *by, arena *a, const char *path, const page_links *of) {
    for (size_t i = 0; i < of->anchors.count; i++)
        LIST_ADD(by->keep, &by->anchors, anchor_hash(a, path, of->anchors.items[i]));
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
    add_anchors(by, a, path, of);
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
        bool known = by->shared->known && by->shared->known[i];
        if (known || !span_ends(span_of(path), ".html"))
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

/* -- what the earlier site tells
 * ------------------------------------------------------------------------- */

/* A page that is the earlier site's own file was verified with it. It still holds together unless
 * something that was there is gone: a file, or an anchor of a page that changed. */
typedef struct {
    const char *folder; /* of the earlier site; null when there is none */
    file_list files;
    bool *known; /* one a file of the site now */
} earlier_site;

/* Not the program's own notes, nor files compressed ahead, which are made after this, nor parts of
 * the search index, which come and go with the words on the pages; no page leads to them. */
static bool is_linked_to(const char *path) {
    span name = span_of(path);
    return path[0] != '.' && !is_index(name) && !span_ends(name, ".gz") && !span_ends(name, ".br");
}

static earlier_site earlier_of(arena *a, const char *folder, const char *earlier,
                               const file_list *files, const names *paths) {
    earlier_site out = {0};
    size_t at;
    int why;
    if (!earlier || !folder_walk(a, earlier, &out.files, &why))
        return out;
    for (size_t i = 0; i < out.files.count; i++)
        if (is_linked_to(out.files.items[i].name) &&
            !names_find(paths, span_of(out.files.items[i].name), &at))
            return out;
    out.folder = earlier;
    out.known = ARENA_ARRAY(a, bool, files->count + 1);
    for (size_t i = 0; i < files->count; i++) {
        const char *name = files->items[i].name;
        out.known[i] = span_ends(span_of(name), ".html") &&
                       file_is_same(path_join(a, folder, name), path_join(a, earlier, name));
    }
    return out;
}

static bool holds_hash(const hash_list *of, uint64_t hash) {
    return of->count && bsearch(&hash, of->items, of->count, sizeof hash, compare_hashes);
}

/* True when the earlier version of page `path` had an anchor that is not in `now`. */
static bool lost_anchor(const earlier_site *of, const char *path, const hash_list *now,
                        problems *found) {
    arena *a = arena_new();
    span bytes;
    bool lost = false;
    if (!file_exists(path_join(a, of->folder, path))) {
        arena_free(a);
        return false;
    }
    if (!see_file(a, of->folder, path, &bytes, found)) {
        arena_free(a);
        return true;
    }
    page_links was = page_links_of(a, bytes);
    for (size_t i = 0; i < was.anchors.count && !lost; i++)
        lost = !holds_hash(now, anchor_hash(a, path, was.anchors.items[i]));
    file_unmap(bytes);
    arena_free(a);
    return lost;
}

static bool lost_any(const earlier_site *of, const file_list *files, const hash_list *now,
                     problems *found) {
    for (size_t i = 0; i < files->count; i++) {
        const char *name = files->items[i].name;
        if (!of->known[i] && span_ends(span_of(name), ".html") && lost_anchor(of, name, now, found))
            return true;
    }
    return false;
}

/* -- the whole
 * ------------------------------------------------------------------------------------------- */

static void sort_hashes(hash_list *of) {
    if (of->count > 1)
        qsort(of->items, of->count, sizeof of->items[0], compare_hashes);
}

/* Parses all pages but those known; what was found is joined in by[0]. */
static void parse_pages(page_checker by[], shared_pages *shared, unsigned workers) {
    unsigned threads = workers_for(workers, WORKERS_MOST);
    assert(threads > 0);
    atomic_store(&shared->next, 0);
    for (unsigned i = 0; i < threads; i++)
        checker_start(&by[i], shared);
    for (unsigned i = 0; i < threads; i++)
        checker_join(&by[0], &by[i]);
    sort_hashes(&by[0].anchors);
}

/* Adds the anchors of the known pages that a parsed one refers to an anchor of. */
static void add_known_anchors(arena *a, page_checker *all, const shared_pages *shared,
                              const names *paths, problems *found) {
    arena *page = arena_new();
    names seen = names_in(a);
    for (size_t i = 0; i < all->wanted.count; i++) {
        const destination *to = &all->wanted.items[i].leads_to;
        size_t at;
        span bytes;
        if (to->to != LEADS_INSIDE || !to->fragment || !names_find(paths, span_of(to->path), &at) ||
            !shared->known[at] || !names_add(&seen, span_of(to->path), at, NULL) ||
            !see_file(page, shared->folder, to->path, &bytes, found))
            continue;
        page_links of = page_links_of(page, bytes);
        add_anchors(all, page, to->path, &of);
        file_unmap(bytes);
        arena_reset(page);
    }
    arena_free(page);
    sort_hashes(&all->anchors);
}

/* Parses what must be: all pages, or those that changed where that tells enough. */
static void parse_needed(arena *a, page_checker by[], shared_pages *shared,
                         const verify_request *asked, const names *paths) {
    earlier_site was = earlier_of(a, asked->folder, asked->earlier, shared->files, paths);
    shared->known = was.known;
    parse_pages(by, shared, asked->workers);
    if (!was.known || by[0].failed)
        return;
    problems unsaid = problems_in(a);
    if (!lost_any(&was, shared->files, &by[0].anchors, &unsaid)) {
        add_known_anchors(a, &by[0], shared, paths, &by[0].found);
        return;
    }
    arena_free(by[0].keep);
    shared->known = NULL;
    parse_pages(by, shared, asked->workers);
}

bool verify_site(const verify_request *asked, verify_report *out, problems *found) {
    page_checker by[WORKERS_MOST];
    arena *a = arena_new();
    file_list files;
    int why = 0;
    bool good = folder_walk(a, asked->folder, &files, &why);
    if (!good)
        problem_add(found, (place){asked->folder, 0, 0}, NULL, "can't be read: %s", strerror(why));
    shared_pages shared = {.folder = asked->folder, .address = asked->address, .files = &files};
    names paths = names_in(a);
    for (size_t i = 0; i < files.count; i++)
        (void)names_add(&paths, span_of(files.items[i].name), i, NULL);
    parse_needed(a, by, &shared, asked, &paths);
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
