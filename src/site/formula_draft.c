#include "site/formula_draft.h"

#include "base/number.h"
#include "base/text.h"
#include "measure/kitchen.h"
#include "nutrition/lines.h"
#include "read/yaml_write.h"
#include "site/say.h"
#include "swap/balance.h"

#include <math.h>

/* A measure further off than this share is left out: the weight stands alone. */
#define MEASURE_OFF 0.05

/* "2" without a unit would take the weight behind it for that of one. */
static bool ends_in_unit(const char *measure) {
    size_t length = strlen(measure);
    return length && measure[length - 1] >= 'a' && measure[length - 1] <= 'z';
}

const char *formula_line(arena *a, const formula_part *part, double grams, cup_standard cups) {
    kitchen_measure by;
    const char *weighed = kitchen_weight(a, grams);
    const char *behind = part->note ? arena_format(a, ", %s", part->note) : "";
    bool measured = kitchen_measure_of(a, part->what, grams, cups, &by) && by.grams > 0 &&
                    fabs(by.error_g) <= MEASURE_OFF * grams && ends_in_unit(by.text);
    if (!measured || span_begins(span_of(by.text), "a "))
        return arena_format(a, "%s %s%s", weighed, part->what->name, behind);
    return arena_format(a, "%s (%s) %s%s", by.text, weighed, part->what->name, behind);
}

static void add_key(text *t, const char *key, const char *words) {
    text_format(t, "%s: ", key);
    yaml_add_scalar(t, span_of(words), false);
    text_add_char(t, '\n');
}

static void add_lines(arena *a, text *t, const formula_brief *of, const formula_answer *by,
                      cup_standard cups) {
    text_add(t, "ingredients:\n");
    for (size_t i = 0; i < of->parts.count; i++) {
        if (by->grams[i] <= 0)
            continue;
        text_add(t, "  - ");
        yaml_add_scalar(t, span_of(formula_line(a, &of->parts.items[i], by->grams[i], cups)),
                        false);
        text_add_char(t, '\n');
    }
}

static void add_some(text *t, const char *key, const char *own, const char *usual) {
    if (own || usual)
        add_key(t, key, own ? own : usual);
}

static void add_front(arena *a, const language *in, text *t, const formula_brief *of,
                      const build_norms *norms) {
    double bake_loss = of->bake_loss > 0 ? of->bake_loss : norms->bake_loss;
    add_key(t, "title", of->title);
    add_key(t, "summary", of->summary ? of->summary : "A trial by the figures, not baked yet.");
    add_key(t, "makes", say_yield(a, in, &of->makes));
    add_key(t, "portion", say_yield(a, in, &of->portion));
    add_some(t, "kind", of->kind, NULL);
    add_some(t, "oven", of->oven, norms->oven);
    add_some(t, "pan", of->pan, norms->pan);
    if (bake_loss > 0)
        text_format(t, "bake-loss: %s %%\n", number_copy(a, bake_loss * 100, 0));
}

/* Wet, or soft enough, to be whisked: what the dry things are stirred into. */
static bool is_wet(const ingredient *what) {
    const unsigned soft = 1u << FAMILY_FAT | 1u << FAMILY_NUT_BUTTER;
    bool syrup = what->in == FAMILY_SWEETENER && balance_water_per_g(what) > 0.1;
    return balance_water_per_g(what) > 0.5 || (soft >> what->in & 1u) || syrup;
}

/* The names of what is used, wet or dry; null for none. */
static const char *names_of(arena *a, const formula_brief *of, const formula_answer *by, bool wet) {
    const char **listed = ARENA_ARRAY(a, const char *, of->parts.count);
    size_t count = 0;
    for (size_t i = 0; i < of->parts.count; i++)
        if (by->grams[i] > 0 && is_wet(of->parts.items[i].what) == wet)
            listed[count++] = of->parts.items[i].what->name;
    return count ? words_joined(a, &(word_list){listed, count, count}) : NULL;
}

static void add_method(arena *a, text *t, const formula_brief *of, const formula_answer *by) {
    const char *dry = names_of(a, of, by, false), *wet = names_of(a, of, by, true);
    int step = 1;
    if (dry)
        text_format(t, "%d. Mix the %s.\n", step++, dry);
    if (wet)
        text_format(t, "%d. Whisk the %s%s.\n", step++, wet,
                    dry ? ", and stir in the dry mixture" : "");
    text_format(t, "%d. Let it stand for ten minutes, and judge the batter before you bake.\n",
                step++);
    text_format(t,
                "%d. Bake a small trial first. Weigh it before and after: the share that went "
                "is the bake loss.\n",
                step);
    text_add(t,
             "\n## Notes\n\nProposed by the figures alone: an estimate, to be baked before it is "
             "published. Write down what you change.\n");
}

const char *formula_draft(arena *a, const formula_brief *of, const formula_answer *by,
                          const build_norms *norms, saying in) {
    text t = TEXT_EMPTY;
    text_add(&t, "---\n");
    add_front(a, in.in, &t, of, norms);
    add_lines(a, &t, of, by, in.cups);
    text_add(&t, "publish: no\n---\n");
    add_method(a, &t, of, by);
    const char *draft = arena_copy(a, text_span(&t));
    text_free(&t);
    return draft;
}
