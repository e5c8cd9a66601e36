/* What every page's view has in common, and where pages go. */
#ifndef SITE_PAGE_H
#define SITE_PAGE_H

#include "read/language.h"
#include "read/site_folder.h"
#include "site/pictures.h"
#include "site/theme.h"
#include "swap/note.h"

/* All that pages are made from: constant while they are. */
typedef struct {
    const site_folder *folder;
    const theme *look;
    bool show_views;               /* write each page's view beside it, for who makes a theme */
    const site_pictures *pictures; /* null: none */
} page_maker;

/* The language of the pages. */
static inline const language *page_language(const page_maker *by) {
    return by->folder->settings.in;
}

/* A new view for the page at `path` ("recipes/rounds/"; "" is the home page) with site, root,
 * page, menu, words and cautions filled in. `kind`: home, recipe, notes, swapped, list, ingredient,
 * chart, search, plain or missing. `summary` may be null. All in `a`; arguments are borrowed. */
view *page_view(arena *a, const page_maker *by, const char *kind, const char *path,
                const char *title, const char *summary);

/* "../../" for "recipes/rounds/": from a page at `path` to the top of the site. */
char *page_root(arena *a, const char *path);

/* Paths within the site, in the arena. */
char *path_of_recipe(arena *a, const char *slug);         /* recipes/<slug>/ */
char *path_of_ingredient(arena *a, const ingredient *of); /* ingredients/<slug>/ */
char *path_of_kind(arena *a, const char *kind);           /* kinds/<slug>/ */
char *path_of_tag(arena *a, const char *tag);             /* tags/<slug>/ */

/* recipes/<slug>/swaps/, the page of its notes; and of the note of one swap there. */
char *path_of_notes(arena *a, const char *slug);
char *path_of_note(arena *a, const char *slug, const ingredient *from, const ingredient *to);

/* recipes/<slug>/with-<slug of what comes>/, for two that go with -for-<one>-and-<other>. */
char *path_of_swapped(arena *a, const recipe *of, const swap_note *note);

/* The site's address followed by `path`. */
char *page_address(arena *a, const site_folder *of, const char *path);

/* Fills `template` of the theme from `page` into `out`, emptied before. A template that does not
 * end is a problem in `found`, and the page is cut short there. */
void page_fill(const page_maker *by, const char *template, const view *page, text *out,
               problems *found);

/* Names the picture that stands for the page elsewhere, by its whole address, with its size and
 * `words` (what it shows, may be null); nothing where the site has none of that name, which may be
 * null. */
void page_put_image(arena *a, const page_maker *by, view *page, const char *picture,
                    const char *words);

#endif
