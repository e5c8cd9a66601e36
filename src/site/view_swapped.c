#include "site/view_swapped.h"

#include "site/json_ld.h"
#include "site/view_balance.h"
#include "site/view_combined.h"
#include "site/view_recipe.h"
#include "site/view_trials.h"
#include "swap/swapped.h"

#include <math.h>
#include <stdint.h>

/* One page in the making. */
typedef struct {
    const whole_recipe *as_written;
    const swap_note *note;
    recipe_figures now;
    const size_t *was; /* for each line now: its line as written */
} swapping;

static const recipe_line *line_as_written(const swapping *s, size_t i) {
    return &s->as_written->of->lines.items[i];
}

/* "60 g (1/2 cup) pea protein powder", of two that go with the other behind it. */
static const char *instead_text(arena *a, const swapping *s) {
    return note_from_amounts(a, &s->as_written->words, s->note);
}

/* What a swap adds, such as water, may be in no recipe of the site: then it has no page. */
static void drop_link(view *line) {
    for (view *child = line->first; child; child = child->next)
        if (strcmp(child->key.bytes, "href") == 0)
            child->sort = VIEW_NULL;
}

/* Marks the line `i` of the swapped recipe when it is new or has another amount. */
static void mark_line(arena *a, view *line, const swapping *s, size_t i) {
    size_t was = s->was[i];
    double now_g = s->now.of->weights[i].grams;
    if (was == SIZE_MAX && s->now.of->lines.items[i].what == s->note->to) {
        view_put_text(a, line, "instead_text", instead_text(a, s));
    } else if (was == SIZE_MAX) {
        drop_link(line);
        view_put_bool(a, line, "is_added", true);
    } else if (fabs(now_g - s->as_written->of->weights[was].grams) > 1e-6) {
        const ingredient *what = line_as_written(s, was)->what;
        view_put_text(a, line, "was_text",
                      say_weighed(a, note_saying(&s->as_written->words), what,
                                  s->as_written->of->weights[was].grams));
    }
}

static void put_lines(arena *a, view *page, const swapping *s) {
    view_put_groups(a, page, s->now.of, note_saying(&s->as_written->words));
    size_t i = 0;
    for (view *group = page->last->first; group; group = group->next)
        for (view *line = group->last->first; line; line = line->next)
            mark_line(a, line, s, i++);
}

/* -- what changes ------------------------------------------------------------------------------ */

static void put_row(arena *a, view *rows, const char *name, const char *was, const char *now) {
    view *row = view_put_object(a, rows, NULL);
    view_put_text(a, row, "name", name);
    view_put_text(a, row, "was", was);
    view_put_text(a, row, "now", now);
    view_put_bool(a, row, "same", strcmp(was, now) == 0);
}

static const char *figure_text(arena *a, const language *in, const macros *of, nutrient which,
                               int decimals) {
    if (!nutrient_known(&of->of, which))
        return NULL;
    const char *amount = arena_format(a, "%s %s", say_figure(a, in, of->of.of[which], decimals),
                                      nutrient_unit(which));
    bool lacking = of->lacking >> which & 1u;
    return lacking ? SAY(a, in, AT_LEAST, amount) : amount;
}

static void put_cost_row(arena *a, view *rows, const swapping *s) {
    const recipe_figures *was = s->as_written->figures, *now = &s->now;
    if (was->cost <= 0 || now->cost <= 0 || was->cost_lacking || now->cost_lacking)
        return;
    const note_words *by = &s->as_written->words;
    const char *before = money_text(a, was->cost / was->of->portions, by->currency);
    const char *after = money_text(a, now->cost / now->of->portions, by->currency);
    put_row(a, rows, SAID(by->in, COST), say_figures(a, by->in, before),
            say_figures(a, by->in, after));
}

/* Both recipes side by side, a portion each. */
static void put_compared(arena *a, view *page, const swapping *s) {
    const language *in = s->as_written->words.in;
    const struct {
        const char *name;
        nutrient which;
        int decimals;
    } figures[] = {{in->facts[FACT_ENERGY], energy_nutrient(s->as_written->words.energy), 0},
                   {in->facts[FACT_PROTEIN], NUTRIENT_PROTEIN, 1},
                   {in->facts[FACT_FAT], NUTRIENT_FAT, 1},
                   {in->facts[FACT_CARBOHYDRATE], NUTRIENT_CARBOHYDRATE, 1},
                   {in->facts[FACT_FIBRE], NUTRIENT_FIBRE, 1},
                   {in->facts[FACT_SUGARS], NUTRIENT_SUGARS, 1}};
    const macros *was = &s->as_written->figures->macros.portion, *now = &s->now.macros.portion;
    view *rows = view_put_list(a, page, "compared");
    put_row(a, rows, SAID(in, WEIGHT), say_weight(a, in, was->weight_g),
            say_weight(a, in, now->weight_g));
    for (size_t i = 0; i < COUNT(figures); i++) {
        const char *before = figure_text(a, in, was, figures[i].which, figures[i].decimals);
        const char *after = figure_text(a, in, now, figures[i].which, figures[i].decimals);
        if (before && after)
            put_row(a, rows, figures[i].name, before, after);
    }
    put_cost_row(a, rows, s);
}

/* -- the page ---------------------------------------------------------------------------------- */

static void put_swap(arena *a, view *page, const swapping *s) {
    note_words brief = s->as_written->words;
    brief.claims = NULL; /* both recipes' claims are at hand: not worked out once more */
    view *swap = view_put_object(a, page, "swap");
    view_put_text(a, swap, "from_text", instead_text(a, s));
    view_put_text(a, swap, "from_names", note_from_names(a, s->as_written->of, s->note));
    view_put_note(a, swap, &brief, s->note);
    note_claims changes = note_claims_between(a, &s->as_written->figures->claims, &s->now.claims);
    view_put_claim_changes(a, swap, &brief, &changes);
}

static void put_head(arena *a, view *page, const swapping *s) {
    const recipe *of = s->as_written->of;
    view_put_text(a, page, "title", s->now.of->title);
    view_put_text(a, page, "slug", arena_format(a, "%s with %s", of->slug, s->note->to->slug));
    view_put_text(a, page, "recipe_title", of->title);
    view_put_text(a, page, "recipe_href", path_of_recipe(a, of->slug));
    view_put_text(a, page, "author",
                  of->author ? of->author : s->as_written->by->folder->settings.author);
    view_put_text(a, page, "changed_text",
                  say_date(a, s->as_written->words.in, of->changed ? of->changed : of->date));
}

/* -- the method -------------------------------------------------------------------------------- */

static size_t line_now(const swapping *s, size_t was) {
    for (size_t i = 0; i < s->now.of->lines.count; i++)
        if (s->was[i] == was)
            return i;
    return SIZE_MAX;
}

static size_t line_of_new(const swapping *s) {
    size_t i = 0;
    while (s->was[i] != SIZE_MAX)
        i++;
    return i;
}

static bool goes(const swapping *s, size_t i, size_t first) {
    return first != SIZE_MAX && line_as_written(s, i)->what &&
           line_as_written(s, i)->what == line_as_written(s, first)->what;
}

/* What the line `i` as written is now. */
static line_change change_of(const swapping *s, size_t i) {
    const swap_note *note = s->note;
    line_change change = {.line = line_now(s, i), .times = 1};
    double was_g = s->as_written->of->weights[i].grams;
    if (change.line != SIZE_MAX && was_g > 0)
        change.times = s->now.of->weights[change.line].grams / was_g;
    if (change.line != SIZE_MAX && goes(s, i, note->line))
        change.joined = note->to;
    if (change.line != SIZE_MAX || !goes(s, i, note->line))
        return change;
    return (line_change){
        .line = line_of_new(s), .times = note->to_g / note->from_g, .now = note->to};
}

static method method_now(arena *a, const swapping *s) {
    const recipe *of = s->as_written->of;
    line_change *changes = ARENA_ARRAY(a, line_change, of->lines.count);
    for (size_t i = 0; i < of->lines.count; i++)
        changes[i] = change_of(s, i);
    method_words how = {&s->as_written->called,         changes,
                        s->as_written->by->look->words, "../",
                        s->as_written->by->pictures,    &s->as_written->how,
                        s->as_written->words.in};
    return method_of(a, &how, of->body);
}

/* -- the whole --------------------------------------------------------------------------------- */

static void put_method(arena *a, view *page, const method *how) {
    view_put_text(a, page, "body_html", how->steps_html);
    view_put_text(a, page, "notes_html", how->notes_html);
    view_put_steps(a, page, how);
}

/* The page's title is the recipe's with what came; everything else of it is as it was. */
static void apply_swap(arena *a, swapping *s) {
    const recipe *written = s->as_written->of;
    const pantry *shelf = s->as_written->words.book->shelf;
    recipe *of = recipe_swapped_lines(a, written, s->note,
                                      pantry_find_folded(shelf, span_of("water")), &s->was);
    const language *in = s->as_written->words.in;
    of->title = SAY(a, in, SWAPPED_TITLE, written->title, s->note->to->name);
    of->summary = SAY(a, in, SWAPPED_SUMMARY, written->title, s->note->to->name, instead_text(a, s),
                      in->verdict_sentences[s->note->says]);
    of->picture = NULL; /* it shows the recipe as written */
    s->now = figures_of(a, of, &s->as_written->by->folder->settings);
}

view *view_of_swapped_page(arena *a, const whole_recipe *of, const swap_note *note) {
    swapping s = {.as_written = of, .note = note};
    apply_swap(a, &s);
    const recipe *now = s.now.of;
    const char *path = path_of_swapped(a, of->of, note);
    method how = method_now(a, &s);
    view *page = page_view(a, of->by, "swapped", path, now->title, now->summary);
    view_put_text(a, page, "json_ld", json_ld_of_swapped(a, of->by, &s.now, &how, path));
    put_head(a, page, &s);
    put_swap(a, page, &s);
    view_put_yield(a, of->words.in, page, now);
    view_put_times(a, of->words.in, page, now);
    put_lines(a, page, &s);
    put_method(a, page, &how);
    put_compared(a, page, &s);
    view_put_trials_with(a, page, of->by, of->of, note);
    view_put_balance(a, page, "balance", &of->words, of->about, note);
    view_put_figures(a, page, &s.now);
    return page;
}
