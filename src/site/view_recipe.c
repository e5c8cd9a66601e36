#include "site/view_recipe.h"

#include "base/number.h"
#include "base/words.h"
#include "site/json_ld.h"
#include "site/phrase.h"
#include "site/say.h"
#include "site/swap_data.h"
#include "site/view_picks.h"
#include "site/view_trials.h"

static void put_head(arena *a, view *to, const recipe *of, const page_maker *by) {
    const char *kind = language_kind(page_language(by), of->kind);
    view_put_text(a, to, "title", of->title);
    view_put_text(a, to, "summary", of->summary);
    view_put_text(a, to, "slug", of->slug);
    view_put_text(a, to, "kind", kind);
    view_put_text(a, to, "kind_href", kind ? path_of_kind(a, kind) : NULL);
    view_put_text(a, to, "author", of->author ? of->author : by->folder->settings.author);
    view_put_text(a, to, "date", of->date);
    view_put_text(a, to, "date_text", say_date(a, page_language(by), of->date));
    view_put_text(a, to, "changed_text", say_date(a, page_language(by), of->changed));
    picture_put(a, to, "picture", by->pictures, of->picture, of->picture_text);
}

void view_put_yield(arena *a, const language *in, view *to, const recipe *of) {
    view_put_text(a, to, "makes_text", say_yield(a, in, &of->makes));
    view_put_text(a, to, "portion_text", say_yield(a, in, &of->portion));
    view_put_number(a, to, "portions", of->portions, 2);
    view_put_text(a, to, "portions_text", say_figure(a, in, of->portions, 1));
    view_put_text(a, to, "portion_weight_text", say_weight(a, in, of->baked_g / of->portions));
    view_put_text(a, to, "batch_text", say_weight(a, in, of->batch_g));
    if (of->bake_loss <= 0)
        return;
    view_put_text(a, to, "baked_text", say_weight(a, in, of->baked_g));
    view_put_text(a, to, "bake_loss_text", say_percent(a, in, of->bake_loss, 0));
}

static void put_minutes(arena *a, const language *in, view *to, const minutes_of *times) {
    const struct {
        const char *word;
        double minutes;
    } rows[] = {{SAID(in, TIME_PREPARE), times->prepare},
                {SAID(in, TIME_REST), times->rest},
                {SAID(in, TIME_BAKE), times->bake},
                {SAID(in, TIME_COOL), times->cool}};
    double total = 0;
    view *list = view_put_list(a, to, "minutes");
    for (size_t i = 0; i < COUNT(rows); i++) {
        if (rows[i].minutes <= 0)
            continue;
        total += rows[i].minutes;
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "word", rows[i].word);
        view_put_text(a, put, "text", say_minutes(a, in, rows[i].minutes));
        view_put_text(a, put, "iso", phrase_minutes_iso(a, rows[i].minutes));
    }
    if (total <= 0)
        return;
    view *put = view_put_object(a, to, "total");
    view_put_text(a, put, "text", say_minutes(a, in, total));
    view_put_text(a, put, "iso", phrase_minutes_iso(a, total));
}

/* A pan whose floor can be measured, so that another can be reckoned against it. */
static void put_pan(arena *a, view *to, const pan *of) {
    static const char *const shapes[] = {[PAN_ROUND] = "round",
                                         [PAN_SQUARE] = "square",
                                         [PAN_RECTANGLE] = "rectangle",
                                         [PAN_LOAF] = "loaf"};
    view_put_text(a, to, "pan_text", of->text);
    if ((size_t)of->shape >= COUNT(shapes) || !shapes[of->shape])
        return;
    view *put = view_put_object(a, to, "pan");
    view_put_text(a, put, "shape", shapes[of->shape]);
    view_put_number(a, put, "length_cm", of->length_cm, 1);
    view_put_number(a, put, "width_cm", of->width_cm, 1);
    if (of->depth_cm > 0)
        view_put_number(a, put, "depth_cm", of->depth_cm, 1);
}

static void put_oven(arena *a, const language *in, view *to, const recipe *of) {
    if (of->oven_c <= 0)
        return;
    /* F = C x 9/5 + 32, to the nearest five as dials have it. */
    double fahrenheit = number_round(of->oven_c * 9 / 5 + 32, 5);
    view_put_text(
        a, to, "oven_text",
        SAY(a, in, OVEN, say_figure(a, in, of->oven_c, 0), say_figure(a, in, fahrenheit, 0)));
    view_put_number(a, to, "oven_c", of->oven_c, 0);
    view_put_number(a, to, "oven_f", fahrenheit, 0);
}

/* The amount in kitchen measures: what the author wrote when it is a measure, else the nearest
 * one; null when only scales will do. */
static const char *amount_text(arena *a, saying by, const recipe_line *line,
                               const weight *weighed) {
    if (!line->has_amount)
        return NULL;
    if (weighed->way == WEIGHT_WRITTEN) {
        kitchen_measure in_kitchen;
        bool measured =
            line->what && kitchen_measure_of(a, line->what, weighed->grams, by.cups, &in_kitchen);
        return measured ? say_measure(a, by.in, &in_kitchen) : NULL;
    }
    text t = TEXT_EMPTY;
    amount_add(&t, line->quantity.low, 0.001);
    if (line->quantity.high > line->quantity.low) {
        text_add(&t, "\u2013");
        amount_add(&t, line->quantity.high, 0.001);
    }
    if (line->unit_written)
        text_format(&t, " %s", line->unit_written);
    const char *put = say_figures(a, by.in, arena_copy(a, text_span(&t)));
    text_free(&t);
    return put;
}

static const char *weight_source(arena *a, const language *in, const weight *of) {
    const char *way = in->weight_ways[of->way];
    if (!of->source || strcmp(of->source, weight_way_word(of->way)) == 0)
        return way;
    return SAY(a, in, WEIGHED_BY, way, of->source);
}

static void put_weight(arena *a, view *to, const recipe_line *line, const weight *of, saying by) {
    const language *in = by.in;
    bool weighed = of->way != WEIGHT_UNKNOWN && of->way != WEIGHT_NONE;
    view_put_text(a, to, "amount_text", amount_text(a, by, line, of));
    view_put_text(a, to, "grams_text", weighed ? say_weight(a, in, of->grams) : NULL);
    if (weighed)
        view_put_number(a, to, "grams", of->grams, 2);
    bool is_range = weighed && of->high_g - of->low_g > 0.05 * of->grams;
    view_put_bool(a, to, "is_range", is_range);
    if (is_range) {
        view_put_text(a, to, "range_text", say_grams_range(a, in, of->low_g, of->high_g));
        view_put_text(a, to, "low_text", say_weight(a, in, of->low_g));
        view_put_text(a, to, "high_text", say_weight(a, in, of->high_g));
    }
    view_put_text(a, to, "weight_from", weighed ? weight_source(a, in, of) : NULL);
}

/* What comes in pieces that are not cut finer than in halves: eggs, cloves, slices. A scoop or a
 * stick is measured as well by spoons. */
static bool is_counted(const recipe_line *line) {
    static const char *const divided[] = {"scoop", "stick"};
    if (!line->has_amount || line->more_count)
        return false;
    return !line->in ||
           (line->in->sort == UNIT_COUNT &&
            words_index(span_of(line->in->name), divided, COUNT(divided)) == COUNT(divided));
}

static void put_line(arena *a, view *lines, const recipe_line *line, const weight *of, saying by) {
    cup_standard cups = by.cups;
    view *put = view_put_object(a, lines, NULL);
    view_put_text(a, put, "written", line->written);
    put_weight(a, put, line, of, by);
    view_put_text(a, put, "name", line->name);
    view_put_text(a, put, "href", line->what ? path_of_ingredient(a, line->what) : NULL);
    view_put_text(a, put, "preparation", line->preparation);
    view_put_bool(a, put, "optional", line->optional);
    view_put_bool(a, put, "to_taste", line->to_taste);
    view_put_bool(a, put, "unknown", line->what == NULL);
    view_put_bool(a, put, "counted", is_counted(line));
    range room;
    const range *cup = line->what ? ingredient_measure(line->what, span_of("cup"), &room) : NULL;
    if (cup)
        view_put_number(a, put, "cup_g", cup->typical * cup_ml(cups) / cup_ml(CUPS_US), 2);
    const range *each = line->what && !cup ? &room : NULL;
    each = each ? ingredient_measure(line->what, span_of("large"), &room) : NULL;
    if (each)
        view_put_number(a, put, "each_g", each->typical, 1);
}

void view_put_groups(arena *a, view *to, const recipe *of, saying by) {
    view *groups = view_put_list(a, to, "groups");
    for (size_t g = 0; g < of->groups.count; g++) {
        const line_group *group = &of->groups.items[g];
        view *put = view_put_object(a, groups, NULL);
        view_put_text(a, put, "heading", group->heading);
        view *lines = view_put_list(a, put, "lines");
        for (size_t i = group->first; i < group->first + group->count; i++)
            put_line(a, lines, &of->lines.items[i], &of->weights[i], by);
    }
}

void view_put_steps(arena *a, view *to, const method *how) {
    view *steps = view_put_list(a, to, "steps");
    for (size_t i = 0; i < how->step_count; i++)
        view_put_text(a, steps, NULL, how->steps[i]);
}

static void put_body(arena *a, view *to, const method *how) {
    bool noted = how->notes_html[0] != '\0';
    view_put_text(a, to, "body_html",
                  noted ? arena_format(a, "%s%s", how->steps_html, how->notes_html)
                        : how->steps_html);
    view_put_steps(a, to, how);
}

static void put_tags(arena *a, view *to, const recipe *of) {
    view *tags = view_put_list(a, to, "tags");
    for (size_t i = 0; i < of->tags.count; i++) {
        view *tag = view_put_object(a, tags, NULL);
        view_put_text(a, tag, "name", of->tags.items[i]);
        view_put_text(a, tag, "href", path_of_tag(a, of->tags.items[i]));
    }
    view_put_bool(a, to, "has_tags", tags->count > 0);
}

void view_put_times(arena *a, const language *in, view *to, const recipe *of) {
    put_minutes(a, in, to, &of->minutes);
    put_oven(a, in, to, of);
    put_pan(a, to, &of->baked_in);
}

view *view_of_recipe(arena *a, const whole_recipe *of) {
    view *put = view_object(a);
    put_head(a, put, of->of, of->by);
    view_put_yield(a, of->words.in, put, of->of);
    view_put_times(a, of->words.in, put, of->of);
    view_put_groups(a, put, of->of, note_saying(&of->words));
    put_body(a, put, &of->how);
    view_put_figures(a, put, of->figures);
    put_tags(a, put, of->of);
    view_put_trials(a, put, of->by, of->of);
    view_put(put, "figures", view_of_macros(a, of->figures));
    return put;
}

view *view_of_recipe_document(arena *a, const whole_recipe *of, const view *alone) {
    view *document = view_object(a);
    view_put_swap_data(a, document, &of->words, of->notes);
    view_put_picking(a, document, of);
    view_put_all(document, alone);
    return document;
}

view *view_of_recipe_page(arena *a, const whole_recipe *of, const view *alone, const view *swaps) {
    const recipe *from = of->of;
    const char *path = path_of_recipe(a, from->slug);
    view *page = page_view(a, of->by, "recipe", path, from->title, from->summary);
    page_put_image(a, of->by, page, from->picture, from->picture_text);
    view_put_text(a, page, "json_ld", json_ld_of(a, of->by, of->figures, &of->how));
    view_put_shared(a, page, "swaps", swaps);
    view_put_all(page, alone);
    return page;
}
