/* One Mustache template read into a flat list of nodes, ready to be filled (site/template.h).
 *
 * After the open specification: interpolation, sections, inverted sections, partials, comments
 * and set delimiters; dotted names; tags that stand alone on their line take the line with them.
 *
 *     Hi {{#you}}{{name}}{{/you}}!     TEXT "Hi "   SECTION you, past 3   VALUE name   TEXT "!"
 *                                                      \______ its body ______/ ^ past */
#ifndef SITE_MUSTACHE_H
#define SITE_MUSTACHE_H

#include "base/problems.h"
#include "site/view.h"

typedef enum {
    NODE_TEXT,     /* bytes as they are */
    NODE_VALUE,    /* {{name}}, escaped for HTML */
    NODE_RAW,      /* {{{name}}} and {{&name}} */
    NODE_SECTION,  /* {{#name}}: the nodes up to `past`, for each element */
    NODE_INVERTED, /* {{^name}}: the nodes up to `past`, when there is none */
    NODE_PARTIAL   /* {{>name}} */
} mustache_sort;

typedef struct {
    mustache_sort sort;
    bool starts_line;  /* TEXT: begins a line of the template: where an indentation goes */
    bool stands_alone; /* PARTIAL: alone on its line; `indent` is what stands before it */
    span bytes;        /* TEXT: what to add; otherwise the whole name */
    span indent;
    const view_key *parts; /* the name cut at its dots; none for the implicit iterator "." */
    size_t part_count;
    size_t past;   /* SECTION, INVERTED: index of the first node behind the body */
    size_t offset; /* where the tag begins in the source, in bytes */
} mustache_node;

typedef struct {
    mustache_node *items;
    size_t count, capacity;
} mustache_nodes;

enum { MUSTACHE_NESTING_MOST = 64 }; /* sections in sections of one template */

/* Reads `source` into `out`, in `home`. The nodes borrow from `source`. `file` names the template
 * in problems: tags and sections left open, closed wrongly, without a name, bad delimiters, too
 * much nesting. False when there are some; `out` is then not to be used. */
bool mustache_read(arena *home, const char *file, span source, mustache_nodes *out,
                   problems *found);

/* Line and column of the byte at `offset`. */
place mustache_place(const char *file, span source, size_t offset);

#endif
