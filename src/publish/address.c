#include "publish/address.h"

#include "base/percent.h"
#include "base/text.h"

#include <strings.h>

/* Cuts the part before the next slash off the front of `*rest`, the slash too. */
static span next_part(span *rest, bool *last) {
    size_t slash = span_find(*rest, "/");
    span part = span_first(*rest, slash);
    *last = slash == rest->length;
    *rest = span_from(*rest, slash + 1);
    return part;
}

/* Takes the last part off `kept` ("a/b/" becomes "a/"). False when there is none. */
static bool drop_part(text *kept) {
    if (kept->length == 0)
        return false;
    size_t end = kept->length - 1;
    while (end > 0 && kept->bytes[end - 1] != '/')
        end--;
    text_cut(kept, end);
    return true;
}

char *path_without_dots(arena *a, span path, bool *above) {
    text kept = TEXT_EMPTY;
    bool last = false;
    *above = false;
    if (span_begins(path, "/"))
        path = span_from(path, 1);
    while (!last) {
        span part = next_part(&path, &last);
        if (span_is(part, ".."))
            *above = !drop_part(&kept) || *above;
        else if (!span_is(part, ".")) {
            text_add_span(&kept, part);
            text_add(&kept, last ? "" : "/");
        }
    }
    char *out = arena_copy(a, text_span(&kept));
    text_free(&kept);
    return out;
}

/* Cuts `s` at the first `mark`: what stood before it stays in `s`, what followed is returned;
 * `at` null when there was no mark. */
static span cut_at(span *s, const char *mark) {
    size_t found = span_find(*s, mark);
    span rest = found < s->length ? span_from(*s, found + 1) : (span){NULL, 0};
    *s = span_first(*s, found);
    return rest;
}

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Length of the scheme of `href` with its colon ("https:"), 0 when it has none. */
static size_t scheme_length(span href) {
    size_t i = 0;
    SPAN_HOLDS(href);
    while (i < href.length &&
           (is_letter(href.at[i]) || (i > 0 && strchr("0123456789+-.", href.at[i]))))
        i++;
    return i > 0 && i < href.length && href.at[i] == ':' ? i + 1 : 0;
}

/* The host part of `address` with its two slashes; `*path` is what follows, from its slash on. */
static span host_of(span address, span *path) {
    size_t slash = 2 + span_find(span_from(address, 2), "/");
    *path = slash < address.length ? span_from(address, slash) : (span){"/", 1};
    return span_first(address, slash);
}

/* "/kitchen/recipes/x/" of "/kitchen/recipes/x/index.html". */
static span folder_of(span path) {
    while (path.length && path.at[path.length - 1] != '/')
        path.length--;
    return path;
}

static bool same_host(span one, span other) {
    if (one.length != other.length)
        return false;
    SPAN_HOLDS(one);
    SPAN_HOLDS(other);
    return one.length == 0 || strncasecmp(one.at, other.at, one.length) == 0;
}

/* The path of `href` on the site's host; false when it leads to another host. `base` is where the
 * page itself is. */
static bool path_on_host(arena *a, span site, span base, span href, span *path) {
    size_t scheme = scheme_length(href);
    if (scheme) {
        if (!same_host(span_first(href, scheme), span_first(site, scheme_length(site))))
            return false;
        href = span_from(href, scheme);
    }
    if (span_begins(href, "//")) {
        span site_path, host = host_of(span_from(site, scheme_length(site)), &site_path);
        return same_host(host_of(href, path), host);
    }
    if (scheme)
        return false; /* mailto:, data:, "https:x" */
    if (span_begins(href, "/"))
        *path = href;
    else if (href.length == 0)
        *path = base;
    else
        *path = span_of(arena_format(a, "%.*s%.*s", SPAN(folder_of(base)), SPAN(href)));
    return true;
}

destination destination_of(arena *a, const char *address, const char *page, span href) {
    destination out = {.to = LEADS_NOWHERE};
    span site = span_of(address), site_path, path, decoded;
    bool above;
    href = span_trim(href);
    span fragment = cut_at(&href, "#");
    (void)cut_at(&href, "?");
    (void)host_of(span_from(site, scheme_length(site)), &site_path);
    span base = span_of(arena_format(a, "%.*s%s", SPAN(site_path), page));
    if (fragment.at) {
        if (!percent_decode(a, fragment, &decoded))
            return out;
        out.fragment = decoded.at;
    }
    if (!path_on_host(a, site, base, href, &path))
        return (destination){.to = LEADS_ELSEWHERE};
    if (!percent_decode(a, path, &decoded))
        return out;
    const char *clean = path_without_dots(a, decoded, &above);
    const char *top = path_without_dots(a, site_path, &above);
    if (!span_begins(span_of(clean), top))
        return (destination){.to = LEADS_ELSEWHERE};
    out.to = LEADS_INSIDE;
    out.path = clean + strlen(top);
    return out;
}
