#include "draft/draft.h"

#include "base/words.h"
#include "draft/html.h"
#include "draft/json_text.h"
#include "draft/linked.h"
#include "draft/microdata.h"
#include "draft/plain.h"
#include "draft/recipe_object.h"
#include "draft/typed.h"
#include "draft/western.h"
#include "draft/written.h"
#include "read/encoding.h"

/* What is drafted from. */
typedef struct {
    arena *home;
    const draft_request *asked;
    json_t *document;         /* owned: all that was read, in a list */
    const char *drafted_from; /* "the JSON-LD in it" */
    word_list faults;         /* of what could not be read */
} draft_source;

static void add_take(draft_source *from, json_t *one) {
    json_array_append_new(from->document, one);
}

/* -- the three forms --------------------------------------------------------------------------- */

static void read_json(draft_source *from, span bytes) {
    const char *why;
    json_t *got = json_text_read(from->home, bytes, &why);
    if (got)
        add_take(from, got);
    else
        LIST_ADD(from->home, &from->faults, arena_format(from->home, "JSON-LD, because %s", why));
}

static bool is_json_script(arena *a, const html_node *at) {
    const char *type = html_is(at, "script") ? html_attribute(at, "type") : NULL;
    return type && span_begins(words_fold(a, span_of(type)), "application/ld+json");
}

/* Takes the recipes of `list` (taken too) for the document when there are any. */
static bool found_any_take(draft_source *from, json_t *list, const char *drafted_from) {
    bool any = json_array_size(list) > 0;
    if (any) {
        json_array_extend(from->document, list);
        from->drafted_from = drafted_from;
    }
    json_decref(list);
    return any;
}

static bool holds_recipe(const json_t *document) {
    linked_recipes all;
    linked_find(document, &all);
    return all.count > 0;
}

static void read_page(draft_source *from, const html_node *page) {
    for (const html_node *at = page; at; at = html_next(at, page))
        if (is_json_script(from->home, at))
            read_json(from, html_script(at));
    if (!holds_recipe(from->document) &&
        !found_any_take(from, microdata_recipes(page), "the microdata of a page"))
        (void)found_any_take(from, class_recipes(page), "the h-recipe classes of a page");
}

static const char *canonical_address(arena *a, const html_node *page) {
    for (const html_node *at = page; at; at = html_next(at, page))
        if (html_is(at, "link") && html_has_word(at, "rel", "canonical"))
            return html_attribute(at, "href") ? plain_line(a, span_of(html_attribute(at, "href")))
                                              : NULL;
    return NULL;
}

static bool looks_like_json(span s) {
    s = span_trim(s);
    return s.length && (s.at[0] == '{' || s.at[0] == '[');
}

static bool looks_like_html(span s) {
    return span_begins(span_trim(s), "<") || span_find(s, "</") < s.length;
}

/* Reads what there is; `*address` is the page's own, where it says so. */
static void read_source(draft_source *from, span bytes, const char **address) {
    if (looks_like_json(bytes)) {
        read_json(from, bytes);
    } else if (looks_like_html(bytes)) {
        const html_node *page = html_read(from->home, bytes);
        if (page) {
            *address = canonical_address(from->home, page);
            read_page(from, page);
        } else {
            LIST_ADD(from->home, &from->faults,
                     "the page, because it is too long or holds too much");
        }
    } else {
        json_t *typed = typed_recipe(from->home, bytes);
        from->drafted_from = "the text";
        if (typed)
            add_take(from, typed);
    }
}

/* -- choosing and writing ---------------------------------------------------------------------- */

static bool complain(const draft_source *from, problems *found) {
    place at = {from->asked->file, 0, 0};
    const char *hint =
        "it may be JSON-LD, a page that holds it, microdata or h-recipe, or plain text "
        "with the title first and one ingredient a line";
    for (size_t i = 0; i < from->faults.count; i++)
        problem_add(found, at, NULL, "could not read %s", from->faults.items[i]);
    problem_add(found, at, hint, "no recipe was found in it");
    return false;
}

static bool choose(const draft_source *from, linked_recipes *all, problems *found) {
    size_t which = from->asked->which;
    linked_find(from->document, all);
    if (all->count == 0)
        return complain(from, found);
    if (which >= 1 && which <= all->count)
        return true;
    problem_add(found, (place){from->asked->file, 0, 0}, NULL,
                "it holds %zu recipes: there is no number %zu", all->count, which);
    return false;
}

static void name_others(const draft_source *from, const linked_recipes *all, draft_parts *parts,
                        draft *out) {
    arena *a = from->home;
    for (size_t i = 0; i < all->count; i++) {
        const char *name = linked_words(a, linked_get(all->items[i], "name"));
        LIST_ADD(a, &out->others, name ? plain_line(a, span_of(name)) : "one without a name");
    }
    if (all->count > 1)
        LIST_ADD(a, &parts->remarks,
                 (draft_item){NULL, arena_format(a,
                                                 "number %zu of %zu recipes in it: --number "
                                                 "chooses another",
                                                 from->asked->which, all->count)});
}

static bool draft_from(draft_source *from, const char *address, draft *out, problems *found) {
    linked_recipes all;
    draft_parts parts = {0};
    if (!choose(from, &all, found))
        return false;
    for (size_t i = 0; i < from->faults.count; i++)
        LIST_ADD(from->home, &parts.remarks,
                 (draft_item){
                     NULL, arena_format(from->home, "could not read: %s", from->faults.items[i])});
    name_others(from, &all, &parts, out);
    recipe_object_read(from->home, from->document, all.items[from->asked->which - 1], &parts);
    if (!parts.address)
        parts.address = address;
    written_recipe(from->home, &parts, from->asked, from->drafted_from, out);
    return true;
}

bool draft_make(arena *a, const draft_request *asked, draft *out, problems *found) {
    draft_source from = {.home = a, .asked = asked, .drafted_from = "JSON-LD"};
    const char *address = NULL;
    span bytes = encoding_skip_mark(asked->bytes);
    *out = (draft){0};
    if (!words_are_utf8(bytes, NULL) && looks_like_html(bytes) && western_is_declared(a, bytes))
        bytes = western_to_utf8(a, bytes);
    if (!encoding_check(asked->file, bytes, 1, found))
        return false;
    from.document = json_array();
    read_source(&from, bytes, &address);
    bool good = draft_from(&from, address, out, found);
    json_decref(from.document);
    return good;
}
