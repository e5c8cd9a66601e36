#include "site/view_evidence.h"

#include "site/page.h"
#include "site/say.h"
#include "site/view_trials.h"
#include "site/view_verdict.h"

/* -- in words -------------------------------------------------------------------------------- */

static const char *agreement(arena *a, const language *in, const evidence *of) {
    if (of->recipes == 1)
        return of->agree ? SAID(in, IT_AGREES) : SAID(in, IT_CAME_OUT_OTHERWISE);
    if (of->agree == of->recipes)
        return SAID(in, ALL_AGREE);
    if (of->agree == 0)
        return SAID(in, NONE_AGREES);
    return SAY_NUMBER(a, in, SOME_AGREE, of->agree);
}

const char *evidence_text(arena *a, const language *in, const evidence *of, verdict says) {
    if (!of->count)
        return NULL;
    if (!of->recipes)
        return SAID(in, OTHER_BAKES_HERE);
    if (says == VERDICT_UNTRIED)
        return SAY_NUMBER(a, in, TRIED_ELSEWHERE, of->recipes);
    return SAY_COUNT(a, in, TRIED_AND_AGREED, of->recipes,
                     say_figure(a, in, (double)of->recipes, 0), agreement(a, in, of));
}

/* -- on the page ----------------------------------------------------------------------------- */

/* What was tried in the stead of what; the replaced one only where it differs from `from`. */
static const char *pair_text(arena *a, const language *in, const trial *bake,
                             const ingredient *from) {
    const char *to = bake->with.what->name;
    if (bake->replaced.what == from)
        return to;
    return SAY(a, in, ONE_FOR_OTHER, to, bake->replaced.what->name);
}

static void put_bake(arena *a, view *list, const evidence_item *item, const note_words *by,
                     const ingredient *from) {
    const language *in = by->in;
    const recipe *here = by->of;
    const trial *bake = item->bake;
    bool ours = strcmp(bake->recipe, here->slug) == 0;
    view *one = view_put_object(a, list, NULL);
    view_put_text(a, one, "recipe", ours ? here->title : bake->title);
    if (ours || bake->published)
        view_put_text(a, one, "href",
                      arena_format(a, "%s#%s", path_of_recipe(a, bake->recipe), trial_id(a, bake)));
    view_put_text(a, one, "pair_text", pair_text(a, in, bake, from));
    view_put_text(a, one, "date_text", say_date(a, in, bake->date));
    view_put_bool(a, one, "counts", item->counts);
    view_put_text(a, one, "verdict", verdict_word(bake->outcome));
    view_put_text(a, one, "verdict_word", in->verdicts[bake->outcome]);
    view_put_text(a, one, "verdict_sign", verdict_sign(bake->outcome));
}

/* What is shown first: what came out otherwise, what agrees, what a later bake goes before. */
static int order_of(const evidence_item *item) {
    return !item->counts ? 2 : item->agrees;
}

/* A page stays readable when a swap was tried everywhere. */
enum { BAKES_SHOWN = 5 };

static void put_tried(arena *a, view *tried, const note_words *by, const evidence *of,
                      const swap_note *note) {
    view_put_text(a, tried, "text", evidence_text(a, by->in, of, note->says));
    view *list = view_put_list(a, tried, "bakes");
    for (int order = 0; order <= 2; order++)
        for (size_t i = 0; i < of->count && list->count < BAKES_SHOWN; i++)
            if (order_of(&of->items[i]) == order)
                put_bake(a, list, &of->items[i], by, by->of->lines.items[note->line].what);
    if (of->count > BAKES_SHOWN)
        view_put_text(a, tried, "more_text", SAY_NUMBER(a, by->in, MORE, of->count - BAKES_SHOWN));
}

static bool holds(const evidence *all, const trial *bake) {
    for (size_t i = 0; i < all->count; i++)
        if (all->items[i].bake == bake)
            return true;
    return false;
}

/* One recipe of the evidence, when notes are looked at together. */
static bool is_counted(const evidence *all, const trial *bake) {
    for (size_t i = 0; i < all->count; i++)
        if (all->items[i].counts && strcmp(all->items[i].bake->recipe, bake->recipe) == 0)
            return true;
    return false;
}

/* True when all that counts of the recipe agrees. */
static bool all_agree(const evidence *all, const trial *bake) {
    for (size_t i = 0; i < all->count; i++)
        if (all->items[i].counts && !all->items[i].agrees &&
            strcmp(all->items[i].bake->recipe, bake->recipe) == 0)
            return false;
    return true;
}

/* The trials of all the notes, each once; a recipe counts once. */
static evidence together(arena *a, const swap_note *const notes[], size_t count) {
    evidence all = {0}, seen = {0};
    for (size_t i = 0; i < count; i++)
        for (size_t k = 0; k < notes[i]->tried.count; k++)
            if (!holds(&all, notes[i]->tried.items[k].bake))
                LIST_ADD(a, &all, notes[i]->tried.items[k]);
    for (size_t i = 0; i < all.count; i++) {
        const evidence_item *item = &all.items[i];
        if (!item->counts || is_counted(&seen, item->bake))
            continue;
        LIST_ADD(a, &seen, *item);
        all.recipes++;
        all.agree += all_agree(&all, item->bake);
    }
    return all;
}

void view_put_tried(arena *a, view *group, const note_words *by, const swap_note *const notes[],
                    size_t count) {
    size_t tried = 0;
    for (size_t i = 0; i < count; i++)
        tried += notes[i]->tried.count;
    if (!tried)
        return;
    evidence all = together(a, notes, count);
    put_tried(a, view_put_object(a, group, "tried"), by, &all, notes[0]);
}

void view_put_tried_untried(arena *a, view *line, const note_words *by, const swap_note *first,
                            size_t count) {
    view *list = NULL;
    for (size_t i = 0; i < count; i++) {
        if (!first[i].tried.count)
            continue;
        list = list ? list : view_put_list(a, line, "tried_untried");
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "to", first[i].to->name);
        view_put_text(a, one, "untried_here", SAY(a, by->in, UNTRIED_HERE, first[i].to->name));
        put_tried(a, one, by, &first[i].tried, &first[i]);
    }
}

/* -- for programs ---------------------------------------------------------------------------- */

void view_put_evidence(arena *a, view *to, const evidence *of) {
    view *put = view_put_object(a, to, "evidence");
    view_put_number(a, put, "recipes", (double)of->recipes, 0);
    view_put_number(a, put, "agree", (double)of->agree, 0);
    view *list = view_put_list(a, put, "trials");
    for (size_t i = 0; i < of->count; i++) {
        const trial *bake = of->items[i].bake;
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "recipe", bake->recipe);
        view_put_text(a, one, "from", bake->replaced.what->name);
        view_put_text(a, one, "to", bake->with.what->name);
        view_put_text(a, one, "date", bake->date);
        view_put_text(a, one, "verdict", verdict_word(bake->outcome));
        view_put_bool(a, one, "counts", of->items[i].counts);
        view_put_bool(a, one, "agrees", of->items[i].agrees);
    }
}
