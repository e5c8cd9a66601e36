#include "publish/ground.h"

#include "swap/evidence.h"
#include "swap/recipe_build.h"

#include <cmark.h>
#include <utf8proc.h>

enum { PROGRAM_BYTES_MOST = 256 * 1024 * 1024 };

digest ground_program(void) {
    arena *a = arena_new();
    span bytes;
    int why;
    digest program = 0;
    if (file_read_up_to(a, "/proc/self/exe", PROGRAM_BYTES_MOST, &bytes, &why)) {
        program = digest_join_words(digest_of(bytes), cmark_version_string());
        program = digest_join_words(program, utf8proc_version());
    }
    arena_free(a);
    return program;
}

/* Names decide how lines are read; families, kinds and origins which rules fit. */
static digest names_digest(const pantry *shelf) {
    digest all = shelf->count;
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *of = shelf->items[i];
        all = digest_join_words(digest_join_words(all, of->name), of->plural);
        for (size_t k = 0; k < of->also_count; k++)
            all = digest_join_words(all, of->also[k]);
        all = digest_join_words(all, of->kind);
        all = digest_join(all, (digest)of->in << 8 | of->from);
    }
    return all;
}

/* What the menu on every page is made of. */
static digest menu_digest(const site_folder *of) {
    digest all = 0;
    for (size_t i = 0; i < of->page_count; i++)
        if (of->pages[i]->in_menu)
            all =
                digest_join_words(digest_join_words(all, of->pages[i]->title), of->pages[i]->slug);
    return all;
}

/* All that a trial says, and what is known of the recipe it is of, by which it counts in others. */
static digest trial_digest(const trial *bake) {
    const recipe_build *build = bake->build;
    digest all = digest_join_words(digest_join(bake->words, bake->published), bake->title);
    all = digest_join_words(all, build ? build->kind : NULL);
    if (!build)
        return all;
    return digest_join(all, (digest)build->sets << 16 | (digest)build->moistened << 8 |
                                (digest)build->leavened << 2 | (digest)build->baked << 1 |
                                build->beside);
}

digest bakes_of_recipe(const trials *log, const char *slug) {
    digest all = 0;
    for (size_t i = 0; i < log->count; i++)
        if (strcmp(log->items[i].recipe, slug) == 0)
            all = digest_join(all, trial_digest(&log->items[i]));
    return all;
}

static digest trials_digest(const site_folder *of) {
    digest all = of->digests.trials;
    for (size_t i = 0; i < of->book.log.count; i++)
        all = digest_join(all, trial_digest(&of->book.log.items[i]));
    return all;
}

static bool fits_any(const selectors *side, const ingredient *what, const pantry *shelf) {
    for (size_t i = 0; i < side->count; i++)
        if (selector_fits(&side->items[i], what, shelf))
            return true;
    return false;
}

/* Joins the trials of replacing what is like an ingredient (swap/evidence.h), in the order of the
 * log, which decides between equal ones. */
static void add_trials(const site_folder *of, standing *items) {
    const trials *log = &of->book.log;
    for (size_t t = 0; t < log->count; t++)
        for (size_t i = 0; log->items[t].replaced.what && i < of->shelf.count; i++)
            if (ingredients_alike(log->items[t].replaced.what, of->shelf.items[i]))
                items[i].rules = digest_join(items[i].rules, trial_digest(&log->items[t]));
}

/* Adds up her rules that replace an ingredient: their order does not matter, nor here. */
static void add_rules(const site_folder *of, standing *items) {
    const swap_rules *rules = &of->book.rules;
    for (size_t r = 0; r < rules->count; r++)
        for (size_t i = 0; rules->items[r].words && i < of->shelf.count; i++)
            if (fits_any(&rules->items[r].replace, of->shelf.items[i], &of->shelf))
                items[i].rules += rules->items[r].words;
}

ground ground_of(arena *a, const page_maker *by) {
    const site_folder *of = by->folder;
    standing *items = ARENA_ARRAY(a, standing, of->shelf.count);
    for (size_t i = 0; i < of->shelf.count; i++)
        items[i].figures = of->shelf.items[i]->says;
    add_rules(of, items);
    add_trials(of, items);
    ground all = {.program = ground_program(), .items = items, .count = of->shelf.count};
    const digest common[] = {all.program,       of->digests.settings,
                             by->look->content, names_digest(&of->shelf),
                             menu_digest(of),   (digest)by->show_views};
    const digest tables[] = {of->digests.pantry, of->digests.rules, of->digests.pages,
                             trials_digest(of)};
    all.common = digest_of((span){(const char *)common, sizeof common});
    all.tables = digest_join(all.common, digest_of((span){(const char *)tables, sizeof tables}));
    return all;
}

/* -- change ---------------------------------------------------------------------------------- */

/* What a rule lets `what` stand in for, and its whole family. */
static void touch_replaced(const site_folder *of, const ingredient *what, bool *touched) {
    const pantry *shelf = &of->shelf;
    for (size_t i = 0; i < shelf->count; i++)
        touched[i] = touched[i] || shelf->items[i]->in == what->in;
    for (size_t r = 0; r < of->book.rules.count; r++) {
        const swap_rule *rule = &of->book.rules.items[r];
        if (!fits_any(&rule->with, what, shelf))
            continue;
        for (size_t i = 0; i < shelf->count; i++)
            touched[i] = touched[i] || fits_any(&rule->replace, shelf->items[i], shelf);
    }
}

static void touch_all(bool *touched, size_t count) {
    for (size_t i = 0; i < count; i++)
        touched[i] = true;
}

ground_change ground_changes(arena *a, const ground *now, const standing *earlier,
                             const site_folder *of) {
    bool *touched = ARENA_ARRAY(a, bool, now->count);
    ground_change change = {.touched = touched};
    for (size_t i = 0; i < now->count; i++) {
        if (now->items[i].rules != earlier[i].rules)
            touched[i] = true;
        if (now->items[i].figures == earlier[i].figures)
            continue;
        change.any_figures = true;
        touch_replaced(of, of->shelf.items[i], touched);
        if (ingredient_is_water(of->shelf.items[i]))
            touch_all(touched, now->count);
    }
    return change;
}
