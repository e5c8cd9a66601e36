#include "read/formula_brief.h"

#include "base/number.h"
#include "base/words.h"
#include "measure/step.h"
#include "measure/weigh.h"
#include "read/baking.h"
#include "read/fields.h"
#include "read/recipe_lines.h"
#include "read/yield.h"

#include <math.h>

static const char *const keys[] = {"oven",  "pan",       "title",       "summary",
                                   "kind",  "set-by",    "makes",       "portion",
                                   "batch", "bake-loss", "ingredients", "targets"};

/* A brief being read. */
typedef struct {
    arena *home;
    const yaml_node *top;
    const brief_setting *with;
    formula_brief *out;
    problems *found;
} brief_reader;

/* -- what is to be made ----------------------------------------------------------------------- */

static void read_words(const brief_reader *r) {
    if (fields_need(r->top, "title", "a brief", r->found))
        (void)field_text(r->top, "title", &r->out->title, r->found);
    (void)field_text(r->top, "summary", &r->out->summary, r->found);
    (void)field_text(r->top, "kind", &r->out->kind, r->found);
}

/* Only passed on to the draft, but what is wrong there should be said here. */
static void read_baking(const brief_reader *r) {
    located written;
    double oven_c;
    pan baked_in = {0};
    if (field_located(r->top, "oven", &written, r->found) && oven_read(written, &oven_c, r->found))
        r->out->oven = written.bytes.at;
    if (field_located(r->top, "pan", &written, r->found) && pan_read(written, &baked_in, r->found))
        r->out->pan = baked_in.text;
}

static void read_settings(const brief_reader *r) {
    static const char *const words[] = {
#define SETTING(constant, word) word,
        SETTING_LIST(SETTING)
#undef SETTING
    };
    field_list list = {0};
    (void)field_words(r->top, "set-by", &list, r->found);
    for (size_t i = 0; i < list.count; i++) {
        size_t which;
        if (field_word_index(list.items[i]->scalar, FIELD_CHOICES(words), &which, r->found->home))
            r->out->settings |= 1u << which;
        else
            field_add_unknown(yaml_located(list.items[i]), "what sets a bake", FIELD_CHOICES(words),
                              r->found);
    }
}

static void read_yields(const brief_reader *r) {
    located written;
    formula_brief *out = r->out;
    if (!fields_need(r->top, "makes", "a brief", r->found) ||
        !field_located(r->top, "makes", &written, r->found) ||
        !yield_read(r->home, written, &out->makes, r->found))
        return;
    out->portion = (yield){out->makes.count < 1 ? out->makes.count : 1, out->makes.noun};
    if (field_located(r->top, "portion", &written, r->found))
        (void)portion_read(r->home, written, &out->makes, &out->portion, r->found);
    out->portions = out->makes.count / out->portion.count;
}

/* A quantity of `key` that must lie within; 0 where it is not there. */
static double bounded(const brief_reader *r, const char *key, const char *in, double most) {
    double value = 0;
    if (!field_quantity(r->top, key, in, &value, r->found))
        return 0;
    if (value > 0 && value < most)
        return value;
    problem_add(r->found, yaml_get(r->top, key)->at, NULL, "\"%s\" can't be as much", key);
    return 0;
}

static void read_sizes(const brief_reader *r) {
    enum { BATCH_MOST_G = 100000 };
    r->out->batch_g = bounded(r, "batch", "g", BATCH_MOST_G);
    r->out->bake_loss = bounded(r, "bake-loss", "%", 1);
    if (r->out->batch_g > 0)
        r->out->batch_at = yaml_get(r->top, "batch")->at;
}

/* -- ingredients ------------------------------------------------------------------------------ */

static bool grams_of(const brief_reader *r, const recipe_line *line, double *grams) {
    weight weighed;
    if (!weigh_line(line, r->with->cups, &weighed, r->found))
        return false;
    *grams = weighed.grams;
    return true;
}

/* Reads the amount under `key` of `item`, of the ingredient named there; `*grams` untouched where
 * there is none. */
static void read_amount(const brief_reader *r, const yaml_node *item, const char *key,
                        double *grams) {
    located name, amount;
    recipe_line line;
    if (!field_located(item, key, &amount, r->found))
        return;
    if (span_is(span_trim(amount.bytes), "0")) {
        *grams = 0;
        return;
    }
    if (field_located(item, "ingredient", &name, r->found) &&
        line_read_parts(r->home, name, amount, NULL, false, r->with->shelf, &line, r->found) &&
        line.what)
        (void)grams_of(r, &line, grams);
}

static void check_bounds(const brief_reader *r, const yaml_node *item, const formula_part *part) {
    if (part->least_g > part->most_g)
        problem_add(r->found, item->at, "\"least\" is the smaller of the two",
                    "no amount of %s is so much and so little", part->what->name);
}

static void read_bounds(const brief_reader *r, const yaml_node *item, formula_part *part) {
    double fixed_g = -1, least_g = -1;
    read_amount(r, item, "amount", &fixed_g);
    read_amount(r, item, "least", &least_g);
    read_amount(r, item, "most", &part->most_g);
    read_amount(r, item, "step", &part->step_g);
    part->least_g = least_g >= 0 ? least_g : fmin(part->least_g, part->most_g);
    if (fixed_g >= 0)
        part->least_g = part->most_g = fixed_g;
    check_bounds(r, item, part);
}

/* What goes by the pinch: less of it than a spoon is an amount too. */
static bool goes_by_the_pinch(const ingredient *what) {
    const unsigned pinches =
        1u << FAMILY_LEAVENER | 1u << FAMILY_SALT | 1u << FAMILY_FLAVOUR | 1u << FAMILY_GUM;
    enum { INTENSELY_SWEET = 5 };
    return pinches >> what->in & 1u || what->sweetness > INTENSELY_SWEET;
}

/* As much as fits, at least a tablespoon, or a quarter teaspoon of what goes by the pinch. */
static formula_part free_part(const ingredient *what, place at) {
    enum { MUCH_G = 1000 };
    double least_g = goes_by_the_pinch(what) ? step_fine_g(what, 0) : step_handy_g(what, MUCH_G);
    return (formula_part){.what = what, .least_g = least_g, .most_g = INFINITY, .at = at};
}

static void add_part(const brief_reader *r, const formula_part *part) {
    for (size_t i = 0; i < r->out->parts.count; i++)
        if (r->out->parts.items[i].what == part->what) {
            problem_add(r->found, part->at, "name each once", "%s is listed twice",
                        part->what->name);
            return;
        }
    LIST_ADD(r->home, &r->out->parts, *part);
}

static void read_named_part(const brief_reader *r, const yaml_node *item) {
    static const char *const known[] = {"ingredient", "amount", "least", "most", "step", "note"};
    located name;
    fields_known(item, known, COUNT(known), "an ingredient", r->found);
    if (!fields_need(item, "ingredient", "an ingredient", r->found) ||
        !field_located(item, "ingredient", &name, r->found))
        return;
    recipe_line line;
    if (!line_read_parts(r->home, name, (located){span_of(""), name.at}, NULL, false,
                         r->with->shelf, &line, r->found) ||
        !line.what)
        return;
    formula_part part = free_part(line.what, item->at);
    (void)field_text(item, "note", &part.note, r->found);
    read_bounds(r, item, &part);
    add_part(r, &part);
}

/* "oat flour", "1/4 tsp salt": an amount written is meant. */
static void read_line_part(const brief_reader *r, const yaml_node *item) {
    recipe_line line;
    if (!line_read(r->home, yaml_located(item), r->with->shelf, &line, r->found) || !line.what)
        return;
    formula_part part = free_part(line.what, item->at);
    part.note = line.preparation;
    if (line.has_amount && grams_of(r, &line, &part.least_g))
        part.most_g = part.least_g;
    add_part(r, &part);
}

static void read_parts(const brief_reader *r) {
    const yaml_node *list = NULL;
    if (fields_need(r->top, "ingredients", "a brief", r->found))
        list = field_node(r->top, "ingredients", YAML_SEQUENCE, r->found);
    for (size_t i = 0; list && i < list->count; i++) {
        const yaml_node *item = list->items[i];
        if (field_is_empty(item) || item->sort == YAML_SEQUENCE)
            problem_add(r->found, item->at, "for example: - oat flour",
                        "an ingredient is its name, or {ingredient:, least:, most:}");
        else if (item->sort == YAML_MAPPING)
            read_named_part(r, item);
        else
            read_line_part(r, item);
    }
    if (list && list->count > RECIPE_LINES_MOST)
        problem_add(r->found, list->at, NULL, "a recipe has %d ingredient lines at the most",
                    RECIPE_LINES_MOST);
}

/* -- targets
 * --------------------------------------------------------------------------------------- */

static const formula_target figures[] = {
    {.key = "protein", .unit = "g", .which = NUTRIENT_PROTEIN, .times = 1},
    {.key = "energy", .unit = "kcal", .which = NUTRIENT_ENERGY, .times = 1},
    {.key = "fat", .unit = "g", .which = NUTRIENT_FAT, .times = 1},
    {.key = "saturates", .unit = "g", .which = NUTRIENT_SATURATES, .times = 1},
    {.key = "carbohydrate", .unit = "g", .which = NUTRIENT_CARBOHYDRATE, .times = 1},
    {.key = "fibre", .unit = "g", .which = NUTRIENT_FIBRE, .times = 1},
    {.key = "sugars", .unit = "g", .which = NUTRIENT_SUGARS, .times = 1},
    {.key = "added-sugars", .unit = "g", .which = NUTRIENT_ADDED_SUGARS, .times = 1},
    /* salt is sodium x 2.5 (Regulation (EU) 1169/2011, Annex I) */
    {.key = "salt", .unit = "g", .which = NUTRIENT_SODIUM, .times = 0.0025},
    {.key = "cost", .unit = "", .is_cost = true},
};

/* Cuts `words` and the spaces after it off the front. */
static bool cut(span *rest, const char *words) {
    if (!span_begins(*rest, words))
        return false;
    *rest = span_trim(span_from(*rest, strlen(words)));
    return true;
}

/* "24", "24 g", "150 to 220 kcal", with nothing behind. */
static bool read_figures(span rest, const char *in, double *low, double *high) {
    size_t used = number_read(rest, low);
    if (!used)
        return false;
    rest = span_trim(span_from(rest, used));
    *high = *low;
    if (cut(&rest, "to") || cut(&rest, "-") || cut(&rest, "\u2013")) {
        used = number_read(rest, high);
        rest = span_trim(span_from(rest, used));
        if (!used)
            return false;
    }
    bool has_unit = in[0] && cut(&rest, in);
    (void)has_unit;
    return rest.length == 0 && *low >= 0 && *low <= *high;
}

static bool read_target(located written, formula_target *out) {
    span rest = span_trim(written.bytes);
    bool least = cut(&rest, "at least"), most = !least && cut(&rest, "at most");
    double low, high;
    (void)cut(&rest, "about");
    if (!read_figures(rest, out->unit, &low, &high) || ((least || most) && low < high))
        return false;
    double about = low < high || least || most ? 0 : FORMULA_ABOUT;
    out->least = most ? -INFINITY : low * (1 - about);
    out->most = least ? INFINITY : high * (1 + about);
    return true;
}

static void read_one_target(const brief_reader *r, const yaml_node *targets,
                            const formula_target *figure) {
    located written;
    formula_target one = *figure;
    if (!field_located(targets, figure->key, &written, r->found))
        return;
    one.at = written.at;
    if (one.which == NUTRIENT_ENERGY && !one.is_cost && strcmp(one.key, "energy") == 0)
        one.which = energy_nutrient(r->with->energy);
    if (read_target(written, &one))
        LIST_ADD(r->home, &r->out->targets, one);
    else
        problem_add(r->found, written.at,
                    arena_format(r->found->home, "for example: %s: at least 5%s%s", one.key,
                                 one.unit[0] ? " " : "", one.unit),
                    "can't read the target \"%.*s\"", SPAN(written.bytes));
}

static void read_targets(const brief_reader *r) {
    const char *known[COUNT(figures)];
    const yaml_node *targets = field_node(r->top, "targets", YAML_MAPPING, r->found);
    for (size_t i = 0; i < COUNT(figures); i++)
        known[i] = figures[i].key;
    if (!targets)
        return;
    fields_known(targets, known, COUNT(known), "the targets of a portion", r->found);
    for (size_t i = 0; i < COUNT(figures); i++)
        read_one_target(r, targets, &figures[i]);
}

const formula_brief *formula_brief_read(arena *a, const char *file, span bytes,
                                        const brief_setting *with, problems *found) {
    size_t before = found->errors;
    const yaml_node *top = fields_read_keys(a, (located){bytes, {file, 1, 1}}, "a brief", found);
    if (!top)
        return NULL;
    formula_brief *out = ARENA_NEW(a, formula_brief);
    const brief_reader r = {a, top, with, out, found};
    fields_known(top, keys, COUNT(keys), "a brief", found);
    read_words(&r);
    read_settings(&r);
    read_yields(&r);
    read_sizes(&r);
    read_baking(&r);
    read_parts(&r);
    read_targets(&r);
    if (found->errors == before && !out->parts.count)
        problem_add(found, top->at, "for example: ingredients: [oat flour, egg white]",
                    "the brief names no ingredient");
    return found->errors == before ? out : NULL;
}
