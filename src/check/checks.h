/* The copy editor: reads a recipe or a page as a careful reader would, and says what its words and
 * its figures contradict.
 *
 * One small file a check; the table in checks.c names them all. What they find are problems with a
 * name (base/problems.h): errors where the page says what is not so and somebody may rely on it,
 * warnings elsewhere. A comment in the file can allow one (read/silence.h). Run only by
 * `crumbnote check`, never when a site is built.
 *
 *     check_site about = check_site_of(home, &folder);                  once a site
 *     check_recipe(&about, a, recipe, &facts, &found);                  once a recipe
 */
#ifndef CHECK_CHECKS_H
#define CHECK_CHECKS_H

#include "check/passages.h"
#include "measure/mention.h"
#include "nutrition/macros.h"
#include "read/site_folder.h"
#include "swap/facts.h"

/* What the checks ask of a whole site. Constant once made; shared by workers. */
typedef struct {
    const site_folder *folder; /* borrowed */
    names recipe_slugs;        /* to the index of its file */
    names page_slugs, pictures;
    const char *const *names; /* of all checks, checks_count of them */
} check_site;

check_site check_site_of(arena *home, const site_folder *folder);

/* A recipe or a page being checked: what all checks work from. */
typedef struct {
    arena *a;
    const check_site *site;
    const char *path;          /* where its page goes: "recipes/rounds/" */
    const recipe *of;          /* null: a plain page */
    const recipe_facts *about; /* null for a page */
    recipe_macros figures;
    passages text;
    mention_names called;
    mentions *said; /* of each passage; null for a page */
    problems *found;
} check_case;

/* Runs every check on a weighed recipe. `a` is for scratch. */
void check_recipe(const check_site *site, arena *a, const recipe *of, const recipe_facts *about,
                  problems *found);

/* The checks that a plain page can break: links and pictures. */
void check_page(const check_site *site, arena *a, const plain_page *of, problems *found);

/* The same for all pages of the site. */
void check_pages(const check_site *site, problems *found);

/* One check: its name, what it finds in one sentence, and what runs it (null: it is found in
 * reading, or by another's work). */
typedef struct {
    const char *name, *finds;
    void (*work)(check_case *with);
    bool on_pages;
} check;

extern const check checks[];
extern const size_t checks_count;

/* -- the checks, a file each ------------------------------------------------------------------- */

void check_amounts(check_case *with);       /* amounts.c */
void check_bake_loss(check_case *with);     /* bake_loss.c */
void check_used(check_case *with);          /* used.c */
void check_claim_figures(check_case *with); /* claim_figures.c */
void check_claim_words(check_case *with);   /* claim_words.c */
void check_freedom(check_case *with);       /* freedom.c */
void check_links(check_case *with);         /* links.c */
void check_swap_advice(check_case *with);   /* swap_advice.c */

#endif
