#include "read/site_settings.h"

#include "base/files.h"
#include "base/number.h"
#include "read/fields.h"
#include "swap/main_swaps.h"

#include <math.h>

static const char *const keys[] = {"title",    "address",    "language", "cups",   "energy",
                                   "label",    "theme",      "currency", "author", "summary",
                                   "cautions", "swap-pages", "reference"};

/* In the order of cup_standard, energy_rule and labels. */
static const char *const cup_words[] = {"us", "us-label", "metric", "australian"};
static const char *const energy_words[] = {"source", "atwater", "eu"};
static const char *const label_words[] = {"us", "eu", "uk", "none"};

/* The United Kingdom kept the EU's regulation and has words of its own for some allergens. */
static const struct {
    label_rule rule;
    label_law law;
} labels[] = {{LABEL_US, LAW_US}, {LABEL_EU, LAW_EU}, {LABEL_EU, LAW_UK}, {LABEL_NONE, LAW_US}};

site_settings site_settings_default(void) {
    return (site_settings){.title = "Recipes",
                           .address = "http://localhost/",
                           .language = "en",
                           .theme = "plain",
                           .cups = CUPS_US,
                           .energy = ENERGY_BY_SOURCE,
                           .label = LABEL_US,
                           .swap_pages = MAIN_SWAPS_USUAL,
                           .reference = true};
}

/* The part after "http://" or "https://"; empty when there is no such start. */
static span after_scheme(span address) {
    size_t start = span_begins(address, "https://")  ? strlen("https://")
                   : span_begins(address, "http://") ? strlen("http://")
                                                     : address.length;
    return span_from(address, start);
}

/* What an address of pages may hold without escapes, RFC 3986: unreserved, the colon of a port,
 * brackets of an IPv6 host, escapes themselves; no user, no query, no fragment. */
static bool is_address_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           (c && strchr("-._~/:[]%", c));
}

static bool is_address(span address) {
    span rest = after_scheme(address);
    bool plain = rest.length > 0 && rest.at[0] != '/' && rest.at[0] != ':';
    for (size_t i = 0; i < rest.length && plain; i++)
        plain = is_address_byte(rest.at[i]);
    return plain;
}

static bool read_address(arena *a, const yaml_node *root, const char **out, problems *found) {
    located address;
    if (!fields_need(root, "address", "a site", found) ||
        !field_located(root, "address", &address, found))
        return false;
    if (!is_address(address.bytes)) {
        problem_add(found, address.at, "for example: address: https://example.org/galley/",
                    "\"%.*s\" is not an address where pages can be published", SPAN(address.bytes));
        return false;
    }
    bool slash = span_ends(address.bytes, "/");
    *out = arena_format(a, "%s%s", address.bytes.at, slash ? "" : "/");
    return true;
}

/* A language tag, RFC 5646: parts of 1 to 8 letters and digits, the first of 2 or 3 letters. */
static bool is_language(span tag) {
    size_t start = 0;
    for (size_t i = 0; i <= tag.length; i++) {
        bool ends = i == tag.length || tag.at[i] == '-';
        if (ends && (i == start || i - start > 8 || (start == 0 && (i < 2 || i > 3))))
            return false;
        char c = ends ? 'a' : tag.at[i];
        bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!letter && !(start > 0 && c >= '0' && c <= '9'))
            return false;
        start = ends ? i + 1 : start;
    }
    return true;
}

static void read_language(const yaml_node *root, const char **out, problems *found) {
    located tag;
    if (!field_located(root, "language", &tag, found))
        return;
    if (is_language(tag.bytes))
        *out = tag.bytes.at;
    else
        problem_add(found, tag.at, "for example: language: en", "\"%.*s\" is not a language tag",
                    SPAN(tag.bytes));
}

static void read_theme(const yaml_node *root, const char **out, problems *found) {
    located name;
    if (!field_located(root, "theme", &name, found))
        return;
    if (path_is_plain(name.bytes) && span_find(name.bytes, "/") == name.bytes.length)
        *out = name.bytes.at;
    else
        problem_add(found, name.at, "for example: theme: plain",
                    "\"%.*s\" is not the name of a theme", SPAN(name.bytes));
}

static void read_choices(const yaml_node *root, site_settings *out, problems *found) {
    size_t chosen;
    if (field_choice(root, "cups", FIELD_CHOICES(cup_words), &chosen, found))
        out->cups = (cup_standard)chosen;
    if (field_choice(root, "energy", FIELD_CHOICES(energy_words), &chosen, found))
        out->energy = (energy_rule)chosen;
    if (field_choice(root, "label", FIELD_CHOICES(label_words), &chosen, found)) {
        out->label = labels[chosen].rule;
        out->law = labels[chosen].law;
    }
}

static void read_cautions(arena *a, const yaml_node *root, word_list *out, problems *found) {
    field_list list;
    if (!field_words(root, "cautions", &list, found))
        return;
    for (size_t i = 0; i < list.count; i++)
        LIST_ADD(a, out, list.items[i]->scalar.at);
}

/* How many; or in a word whether there are any. */
static void read_swap_pages(const yaml_node *root, size_t *out, problems *found) {
    located written;
    double count;
    bool any;
    if (!field_located(root, "swap-pages", &written, found))
        return;
    if (!number_is(written.bytes, &count)) {
        if (field_answer(root, "swap-pages", &any, found))
            *out = any ? MAIN_SWAPS_USUAL : 0;
    } else if (count >= 0 && count <= MAIN_SWAPS_MOST && count == floor(count)) {
        *out = (size_t)count;
    } else {
        problem_add(found, written.at, "for example: swap-pages: 3",
                    "\"swap-pages\" must be a number from 0 to %d, and a whole one",
                    MAIN_SWAPS_MOST);
    }
}

bool site_settings_read(arena *a, const char *file, span bytes, site_settings *out,
                        problems *found) {
    *out = site_settings_default();
    const yaml_node *root = fields_read_keys(a, (located){bytes, {file, 1, 1}}, "a site", found);
    if (!root)
        return false;
    fields_known(root, keys, COUNT(keys), "a site", found);
    bool titled = fields_need(root, "title", "a site", found) &&
                  field_text(root, "title", &out->title, found);
    bool addressed = read_address(a, root, &out->address, found);
    (void)field_text(root, "currency", &out->currency, found);
    (void)field_text(root, "author", &out->author, found);
    (void)field_text(root, "summary", &out->summary, found);
    read_swap_pages(root, &out->swap_pages, found);
    (void)field_answer(root, "reference", &out->reference, found);
    read_language(root, &out->language, found);
    read_theme(root, &out->theme, found);
    read_choices(root, out, found);
    read_cautions(a, root, &out->cautions, found);
    return titled && addressed;
}
