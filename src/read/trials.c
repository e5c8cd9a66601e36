#include "read/trials.h"

#include "base/words.h"
#include "measure/weigh.h"
#include "read/fields.h"
#include "read/rules.h"
#include "read/yaml_digest.h"

#include <math.h>

static const char *const keys[] = {"recipe",  "replace",  "with",     "liquid",  "date", "verdict",
                                   "texture", "measured", "pictures", "remarks", "by"};

/* A trial being read. */
typedef struct {
    arena *home;
    const pantry *shelf;
    const yaml_node *node;
    problems *found;
} trial_reader;

/* A side of a trial: an ingredient line, its amount optional. */
static bool read_side(const trial_reader *r, const char *key, recipe_line *out) {
    located written;
    return fields_need(r->node, key, "a trial", r->found) &&
           field_located(r->node, key, &written, r->found) &&
           line_read(r->home, written, r->shelf, out, r->found) && out->what;
}

/* The bytes of a sign at the front of `s`; `*sign` is -1 for a minus. */
static size_t sign_length(span s, int *sign) {
    static const struct {
        const char *written;
        int sign;
    } signs[] = {{"+", 1}, {"-", -1}, {"\u2212", -1}};
    *sign = 1;
    for (size_t i = 0; i < COUNT(signs); i++)
        if (span_begins(s, signs[i].written)) {
            *sign = signs[i].sign;
            return strlen(signs[i].written);
        }
    return 0;
}

/* "15 g" and nothing else: no liquid is named. */
static bool is_bare(span words) {
    span rest = words;
    (void)span_next_word(&rest);
    (void)span_next_word(&rest);
    return span_trim(rest).length == 0;
}

/* "-15 g", or with the liquid named: "+2 tbsp milk". */
static void read_liquid(const trial_reader *r, trial *out) {
    located written;
    int sign;
    recipe_line line = {0};
    weight grams;
    if (!yaml_get(r->node, "liquid"))
        return;
    if (!field_located(r->node, "liquid", &written, r->found))
        return;
    span words = span_trim(written.bytes);
    size_t signed_by = sign_length(words, &sign);
    words = span_trim(span_from(words, signed_by));
    if (is_bare(words)) {
        (void)field_quantity(r->node, "liquid", "g", &out->liquid_g, r->found);
        return;
    }
    written.at.column += (unsigned)signed_by;
    if (!line_read(r->home, (located){words, written.at}, r->shelf, &line, r->found) ||
        !line.what || !weigh_line(&line, CUPS_US, &grams, r->found))
        return;
    if (grams.grams <= 0)
        problem_add(r->found, written.at, "for example: liquid: +30 g milk",
                    "\"liquid\" must say how much");
    out->liquid_g = sign * grams.grams;
    out->liquid = line.what;
}

/* As much of the new as of the old: in the measure they are written in, or by weight. */
static bool is_as_much(arena *a, const trial *bake) {
    const double alike = 0.1; /* a tenth: within what two cups of one flour differ by */
    const recipe_line *old = &bake->replaced, *new = &bake->with;
    weight old_g, new_g;
    problems none = problems_in(a);
    if (!bake->has_amounts ||
        (old->in == new->in && !old->has_own_weight && !new->has_own_weight &&
         old->quantity.low == new->quantity.low && old->quantity.high == new->quantity.high))
        return true;
    return !weigh_line(old, CUPS_US, &old_g, &none) || !weigh_line(new, CUPS_US, &new_g, &none) ||
           fabs(new_g.grams - old_g.grams) <= alike * old_g.grams;
}

/* "works" is the promise that one takes the other's place and changes nothing else. */
static void doubt_verdict(const trial_reader *r, const trial *bake) {
    const yaml_node *said = yaml_get(r->node, "verdict");
    bool as_it_is = bake->liquid_g == 0 && is_as_much(r->home, bake);
    if (bake->outcome == VERDICT_WORKS && said && !as_it_is)
        problem_note(r->found, "trial-works", PROBLEM_WARNING, said->at,
                     "say adjust: it works with the changes stated",
                     "\"works\" means as it is, and here %s changed",
                     bake->liquid_g != 0 ? "the liquid is" : "the amount is");
}

static void read_measures(const yaml_node *group, bake_measures *out, problems *found) {
    (void)field_quantity(group, "height", "mm", &out->height_mm, found);
    (void)field_quantity(group, "spread", "mm", &out->spread_mm, found);
    (void)field_quantity(group, "weight", "g", &out->weight_g, found);
    if (out->height_mm < 0 || out->spread_mm < 0 || out->weight_g < 0)
        problem_add(found, group->at, "leave out what was not measured",
                    "nothing measures less than 0");
}

static void read_measured(const yaml_node *node, trial *out, problems *found) {
    static const char *const known[] = {"height", "spread", "weight", "as-written"};
    const yaml_node *group = field_node(node, "measured", YAML_MAPPING, found);
    if (!group)
        return;
    fields_known(group, known, COUNT(known), "\"measured\"", found);
    read_measures(group, &out->swapped, found);
    const yaml_node *written = field_node(group, "as-written", YAML_MAPPING, found);
    if (!written)
        return;
    fields_known(written, known, COUNT(known) - 1, "\"as-written\"", found);
    read_measures(written, &out->as_written, found);
}

static void read_pictures(const yaml_node *node, trial *out, problems *found) {
    static const char *const known[] = {"as-written", "swapped"};
    const yaml_node *group = field_node(node, "pictures", YAML_MAPPING, found);
    if (!group)
        return;
    fields_known(group, known, COUNT(known), "\"pictures\"", found);
    (void)field_picture(group, "as-written", &out->picture_as_written, found);
    (void)field_picture(group, "swapped", &out->picture_swapped, found);
}

static void read_texture(arena *a, const yaml_node *node, word_list *out, problems *found) {
    field_list list;
    if (!field_words(node, "texture", &list, found))
        return;
    for (size_t i = 0; i < list.count; i++)
        LIST_ADD(a, out, list.items[i]->scalar.at);
}

static void read_recipe(arena *a, const yaml_node *node, const char **out, problems *found) {
    located name;
    if (!fields_need(node, "recipe", "a trial", found) ||
        !field_located(node, "recipe", &name, found))
        return;
    if (span_ends(name.bytes, ".md"))
        name.bytes.length -= strlen(".md");
    *out = words_slug(a, name.bytes);
}

static bool read_trial(const trial_reader *r, trial *out) {
    size_t before = r->found->errors;
    if (!fields_are_keys(r->node, "a trial", r->found))
        return false;
    fields_known(r->node, keys, COUNT(keys), "a trial", r->found);
    read_recipe(r->home, r->node, &out->recipe, r->found);
    bool sides = read_side(r, "replace", &out->replaced);
    sides = read_side(r, "with", &out->with) && sides;
    out->has_amounts = sides && out->replaced.has_amount && out->with.has_amount;
    read_liquid(r, out);
    if (fields_need(r->node, "date", "a trial", r->found))
        (void)field_date(r->node, "date", &out->date, r->found);
    (void)verdict_read(r->node, "a trial", &out->outcome, r->found);
    read_texture(r->home, r->node, &out->texture, r->found);
    read_measured(r->node, out, r->found);
    read_pictures(r->node, out, r->found);
    (void)field_text(r->node, "remarks", &out->remarks, r->found);
    (void)field_text(r->node, "by", &out->by, r->found);
    doubt_verdict(r, out);
    return r->found->errors == before;
}

void trials_read(arena *a, const char *file, span bytes, const pantry *shelf, trials *into,
                 problems *found) {
    const yaml_node *list = fields_read_list(a, file, bytes, "a trial", found);
    for (size_t i = 0; list && i < list->count; i++) {
        trial one = {.at = list->items[i]->at, .words = yaml_digest(list->items[i])};
        if (read_trial(&(trial_reader){a, shelf, list->items[i], found}, &one))
            LIST_ADD(a, into, one);
    }
}
