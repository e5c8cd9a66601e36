#include "site/view_recipe.h"

#include "base/number.h"
#include "base/words.h"
#include "site/json_ld.h"
#include "site/phrase.h"
#include "site/swap_data.h"
#include "site/view_picks.h"
#include "site/view_trials.h"

static void put_head(arena *a, view *to, const recipe *of, const page_maker *by) {
    view_put_text(a, to, "title", of->title);
    view_put_text(a, to, "summary", of->summary);
    view_put_text(a, to, "slug", of->slug);
    view_put_text(a, to, "kind", of->kind);
    view_put_text(a, to, "kind_href", of->kind ? path_of_kind(a, of->kind) : NULL);
    view_put_text(a, to, "author", of->author ? of->author : by->folder->settings.author);
    view_put_text(a, to, "date", of->date);
    view_put_text(a, to, "date_text", phrase_date(a, of->date));
    view_put_text(a, to, "changed_text", phrase_date(a, of->changed));
    picture_put(a, to, "picture", by->pictures, of->picture, of->picture_text);
}

void view_put_yield(arena *a, view *to, const recipe *of) {
    view_put_text(a, to, "makes_text", phrase_yield(a, &of->makes));
    view_put_text(a, to, "portion_text", phrase_yield(a, &of->portion));
    view_put_number(a, to, "portions", of->portions, 2);
    view_put_text(a, to, "portions_text", number_copy(a, of->portions, 1));
    view_put_text(a, to, "portion_weight_text", kitchen_weight(a, of->baked_g / of->portions));
    view_put_text(a, to, "batch_text", kitchen_weight(a, of->batch_g));
    if (of->bake_loss <= 0)
        return;
    view_put_text(a, to, "baked_text", kitchen_weight(a, of->baked_g));
    view_put_text(a, to, "bake_loss_text",
                  arena_format(a, "%s %%", number_copy(a, of->bake_loss * 100, 0)));
}

static void put_minutes(arena *a, view *to, const minutes_of *times) {
    const struct {
        const char *word;
        double minutes;
    } rows[] = {{"prepare", times->prepare},
                {"rest", times->rest},
                {"bake", times->bake},
                {"cool", times->cool}};
    double total = 0;
    view *list = view_put_list(a, to, "minutes");
    for (size_t i = 0; i < COUNT(rows); i++) {
        if (rows[i].minutes <= 0)
            continue;
        total += rows[i].minutes;
        view *put = view_put_object(a, list, NULL);
        view_put_text(a, put, "word", rows[i].word);
        view_put_text(a, put, "text", phrase_minutes(a, rows[i].minutes));
        view_put_text(a, put, "iso", phrase_minutes_iso(a, rows[i].minutes));
    }
    if (total <= 0)
        return;
    view *put = view_put_object(a, to, "total");
    view_put_text(a, put, "text", phrase_minutes(a, total));
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

static void put_oven(arena *a, view *to, const recipe *of) {
    if (of->oven_c <= 0)
        return;
    /* F = C x 9/5 + 32, to the nearest five as dials have it. */
    double fahrenheit = number_round(of->oven_c * 9 / 5 + 32, 5);
    view_put_text(a, to, "oven_text",
                  arena_format(a, "%s \u00b0C (%s \u00b0F)", number_copy(a, of->oven_c, 0),
                               number_copy(a, fahrenheit, 0)));
    view_put_number(a, to, "oven_c", of->oven_c, 0);
    view_put_number(a, to, "oven_f", fahrenheit, 0);
}

/* The amount in kitchen measures: what the author wrote when it is a measure, else the nearest
 * one; null when only scales will do. */
static const char *amount_text(arena *a, const recipe_line *line, const weight *weighed,
                               cup_standard cups) {
    if (!line->has_amount)
        return NULL;
    if (weighed->way == WEIGHT_WRITTEN) {
        kitchen_measure by;
        bool measured = line->what && kitchen_measure_of(a, line->what, weighed->grams, cups, &by);
        return measured ? by.text : NULL;
    }
    text t = TEXT_EMPTY;
    amount_add(&t, line->quantity.low, 0.001);
    if (line->quantity.high > line->quantity.low) {
        text_add(&t, "\u2013");
        amount_add(&t, line->quantity.high, 0.001);
    }
    if (line->unit_written)
        text_format(&t, " %s", line->unit_written);
    const char *put = arena_copy(a, text_span(&t));
    text_free(&t);
    return put;
}

static const char *weight_source(arena *a, const weight *of) {
    const char *way = weight_way_word(of->way);
    if (!of->source || strcmp(of->source, way) == 0)
        return way;
    return arena_format(a, "%s: %s", way, of->source);
}

static void put_weight(arena *a, view *to, const recipe_line *line, const weight *of,
                       cup_standard cups) {
    bool weighed = of->way != WEIGHT_UNKNOWN && of->way != WEIGHT_NONE;
    view_put_text(a, to, "amount_text", amount_text(a, line, of, cups));
    view_put_text(a, to, "grams_text", weighed ? kitchen_weight(a, of->grams) : NULL);
    if (weighed)
        view_put_number(a, to, "grams", of->grams, 2);
    bool is_range = weighed && of->high_g - of->low_g > 0.05 * of->grams;
    view_put_bool(a, to, "is_range", is_range);
    if (is_range) {
        view_put_text(a, to, "range_text", phrase_grams_range(a, of->low_g, of->high_g));
        view_put_text(a, to, "low_text", kitchen_weight(a, of->low_g));
        view_put_text(a, to, "high_text", kitchen_weight(a, of->high_g));
    }
    view_put_text(a, to, "weight_from", weighed ? weight_source(a, of) : NULL);
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

static void put_line(arena *a, view *lines, const recipe_line *line, const weight *of,
                     cup_standard cups) {
    view *put = view_put_object(a, lines, NULL);
    view_put_text(a, put, "written", line->written);
    put_weight(a, put, line, of, cups);
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

void view_put_groups(arena *a, view *to, const recipe *of, cup_standard cups) {
    view *groups = view_put_list(a, to, "groups");
    for (size_t g = 0; g < of->groups.count; g++) {
        const line_group *group = &of->groups.items[g];
        view *put = view_put_object(a, groups, NULL);
        view_put_text(a, put, "heading", group->heading);
        view *lines = view_put_list(a, put, "lines");
        for (size_t i = group->first; i < group->first + group->count; i++)
            put_line(a, lines, &of->lines.items[i], &of->weights[i], cups);
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

void view_put_times(arena *a, view *to, const recipe *of) {
    put_minutes(a, to, &of->minutes);
    put_oven(a, to, of);
    put_pan(a, to, &of->baked_in);
}

view *view_of_recipe(arena *a, const whole_recipe *of) {
    const site_settings *settings = &of->by->folder->settings;
    view *put = view_object(a);
    put_head(a, put, of->of, of->by);
    view_put_yield(a, put, of->of);
    view_put_times(a, put, of->of);
    view_put_groups(a, put, of->of, settings->cups);
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
