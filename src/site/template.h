/* Mustache templates as the open specification has them (interpolation, sections, inverted
 * sections, partials, comments, set delimiters), compiled once and filled from a view.
 *
 * A theme is a set of named templates; partials find each other in the set. Compiled templates
 * are constant and shared by all workers. */
#ifndef SITE_TEMPLATE_H
#define SITE_TEMPLATE_H

#include "base/problems.h"
#include "site/view.h"

typedef struct template_set template_set;

enum {
    TEMPLATE_DEPTH_MOST = 64, /* partials in partials, and contexts in contexts */
    /* Partials of a page that lie deeper than a theme nests them: more, and one calls itself
     * without end. A list may call one as often as it has lines. */
    TEMPLATE_DEEP = 12,
    TEMPLATE_DEEP_MOST = 2000,
    TEMPLATE_STEPS_MOST = 10 * 1000 * 1000, /* nodes of a page: a list in itself, again and again */
    TEMPLATE_BYTES_MOST = 256 * 1024 * 1024 /* of a page */
};

/* An empty set in `home`, which must outlive it. */
template_set *template_set_new(arena *home);

/* Compiles `bytes` as the template `name` (without .mustache). `file` is for problems: unclosed
 * sections and tags with file, line and column. False when there are some. `bytes` is borrowed. */
bool template_add(template_set *set, const char *name, const char *file, span bytes,
                  problems *found);

/* There is a template of that name. */
bool template_has(const template_set *set, const char *name);

/* Checks that every partial a template names is in the set, and that none calls itself whatever the
 * view has. */
void template_check(const template_set *set, problems *found);

/* An object that every page has under `name`, and the file it is from. */
typedef struct {
    const char *name;
    const view *of;
    const char *file;
} template_names;

/* Checks that whatever a template asks for inside that object ("words.portions") is there. */
void template_check_names(const template_set *set, const template_names *known, problems *found);

/* Adds template `name`, filled from `page`, to `out`. False when there is none of that name, and
 * when it does not end within the limits above: what was added till then is then part of a page. A
 * name that is not in the view, or is null there, adds nothing; a section is left out for what is
 * missing, null, false, 0, an empty text or an empty list. Borrows all. */
bool template_fill(const template_set *set, const char *name, const view *page, text *out);

#endif
