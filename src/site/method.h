/* The method of a recipe: its body from Markdown to HTML, with what its steps say of the
 * ingredients marked, so that a script can change amounts in place, or changed already, for a
 * recipe with a swap applied.
 *
 *     <data value="62" data-line="6">4 tablespoons</data> of the <span data-line="6">milk</span>
 *
 * and how long things take, so that a script can count it down (measure/step_time.h):
 *
 *     bake <time datetime="PT3300S">55 to 58 minutes</time>
 *
 * `data-line` counts the lines of the ingredient list from 0; `value` is grams. Marks stand in
 * numbered lists alone, and not at what begins a sentence or does something itself: what else a
 * body says (how it keeps, that almond meal clumps) is said of the recipe as it is written. */
#ifndef SITE_METHOD_H
#define SITE_METHOD_H

#include "measure/mention.h"
#include "read/language.h"
#include "site/pictures.h"
#include "site/view.h"

/* What a line of the recipe as written is in the recipe that is shown. */
typedef struct {
    size_t line;              /* its line there; SIZE_MAX: it is gone */
    double times;             /* grams now for each gram as written */
    const ingredient *now;    /* what stands in its place; null: itself */
    const ingredient *joined; /* what comes beside it; null: nothing */
} line_change;

typedef struct {
    const mention_names *called;   /* of the recipe as written */
    const line_change *changes;    /* one a line; null: shown as written */
    const view *words;             /* the theme's: was, now, left_out, and */
    const char *up;                /* goes before relative addresses */
    const site_pictures *pictures; /* what its words show; may be null */

    /* The method of the same body as written, whose mentions need not be found again; or null. */
    const struct method *as_written;
    const language *in; /* amounts are said in */
} method_words;

/* What each piece of plain words in the numbered lists mentions, in order. */
typedef struct {
    mentions *items;
    size_t count, capacity;
} mentions_list;

typedef struct method {
    const char *steps_html; /* up to the last numbered list; all of it where there is none */
    const char *notes_html; /* what follows; may be empty */
    const char **steps;     /* the items of the first numbered list as plain words; where there is
                               none, the paragraphs up to the next heading */
    size_t step_count;
    mentions_list said;
} method;

/* The method that `body` (Markdown) is. All is in `a`; arguments are borrowed. */
method method_of(arena *a, const method_words *by, span body);

#endif
