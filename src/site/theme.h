/* The theme: compiled templates, its own words, and the files that are copied as they are.
 *
 * Read once, constant after, shared by all workers. Some are compiled in, `plain` is the
 * default; a site may name a folder of its own. */
#ifndef SITE_THEME_H
#define SITE_THEME_H

#include "base/digest.h"
#include "reference/reference.h"
#include "site/template.h"

typedef struct {
    template_set *templates;
    view *words;                  /* the theme's words: an object of texts */
    const reference_file *assets; /* name and bytes */
    size_t asset_count;
    digest content; /* of a site's own theme: names and bytes of its files; 0 if compiled in */
} theme;

/* The theme `name` with its words in the language `tag` (of "de-CH" without words, "de"): the
 * folder of that name in the site folder `site` (which may be null) where it holds templates, else
 * the one compiled in. So no theme that a later program brings takes the place of somebody's own,
 * and a folder of other things takes the place of none. Everything is in `home`. False, with
 * problems, when a template is broken or missing, when there are no words for the language, or a
 * template asks for a word that is not among them. */
bool theme_read(arena *home, const char *name, const char *site, const char *tag, theme *out,
                problems *found);

/* The names of the templates a theme must have: home, recipe, list, … */
extern const char *const theme_pages[];
extern const size_t theme_page_count;

#endif
