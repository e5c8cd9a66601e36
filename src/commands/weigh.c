/* crumbnote weigh: one line to grams and to kitchen measures. */
#include "commands/command.h"

#include "base/number.h"
#include "commands/setting.h"
#include "measure/kitchen.h"

enum { MEASURES_SHOWN = 4 };

typedef struct {
    recipe_line line;
    weight weighed;
    kitchen_measure measures[MEASURES_SHOWN];
    size_t measure_count;
} weighed_line;

static view *document_of(arena *a, const weighed_line *of) {
    bool weighed = of->weighed.way != WEIGHT_UNKNOWN && of->weighed.way != WEIGHT_NONE;
    view *put = view_object(a);
    view_put_text(a, put, "line", of->line.written);
    if (of->line.has_amount)
        view_put_number(a, put, "amount", amount_middle(of->line.quantity), 6);
    else
        view_put_text(a, put, "amount", NULL);
    view_put_text(a, put, "unit", of->line.in ? of->line.in->name : of->line.unit_written);
    view_put_text(a, put, "ingredient", of->line.what ? of->line.what->name : NULL);
    if (weighed) {
        view_put_number(a, put, "grams", of->weighed.grams, 3);
        view_put_number(a, put, "grams_low", of->weighed.low_g, 3);
        view_put_number(a, put, "grams_high", of->weighed.high_g, 3);
    } else {
        view_put_text(a, put, "grams", NULL);
        view_put_text(a, put, "grams_low", NULL);
        view_put_text(a, put, "grams_high", NULL);
    }
    view_put_text(a, put, "source",
                  of->weighed.source ? of->weighed.source : weight_way_word(of->weighed.way));
    view *list = view_put_list(a, put, "measures");
    for (size_t i = 0; i < of->measure_count; i++) {
        view *one = view_put_object(a, list, NULL);
        view_put_text(a, one, "text", of->measures[i].text);
        view_put_number(a, one, "grams", of->measures[i].grams, 2);
    }
    return put;
}

static exit_code say(arena *a, const weighed_line *of) {
    text t = TEXT_EMPTY;
    const weight *w = &of->weighed;
    if (w->way == WEIGHT_NONE) {
        text_format(&t, "nothing to weigh%s\n", of->line.to_taste ? ": to taste" : "");
    } else {
        text_format(&t, "%s %s", kitchen_weight(a, w->grams), of->line.what->name);
        if (w->high_g - w->low_g > 0.01 * w->grams)
            text_format(&t, ", between %s and %s", kitchen_weight(a, w->low_g),
                        kitchen_weight(a, w->high_g));
        text_format(&t, "\n  by %s\n", w->source ? w->source : weight_way_word(w->way));
        for (size_t i = 0; i < of->measure_count; i++)
            text_format(&t, "  %s (%s)\n", of->measures[i].text,
                        kitchen_weight(a, of->measures[i].grams));
    }
    exit_code code = command_say(t.bytes, EXIT_FINE);
    text_free(&t);
    return code;
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    command_setting at;
    if (!setting_read(a, ".", &at, &found))
        return setting_failed(&at, &found);
    weighed_line of = {0};
    located written = {span_of(given->words[0]), {"line", 1, 1}};
    size_t errors = found.errors;
    bool good = line_read(a, written, &at.site.shelf, &of.line, &found) && of.line.what &&
                weigh_line(&of.line, at.site.settings.cups, &of.weighed, &found);
    command_report(&found);
    if (!good || found.errors > errors)
        return EXIT_CONTENT;
    if (of.weighed.way != WEIGHT_NONE)
        of.measure_count = kitchen_measures_of(a, of.line.what, of.weighed.grams,
                                               at.site.settings.cups, of.measures, MEASURES_SHOWN);
    return given->json ? command_print(document_of(a, &of), EXIT_FINE) : say(a, &of);
}

const command command_weigh = {
    .name = "weigh",
    .usage = "weigh LINE",
    .summary = "one ingredient line to grams and to kitchen measures",
    .help = "LINE is written as in a recipe: \"1/2 cup oat flour\". Inside a site folder her own\n"
            "pantry and cups count; elsewhere the reference alone serves.",
    .least = 1,
    .most = 1,
    .run = run,
};
