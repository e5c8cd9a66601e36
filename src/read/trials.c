#include "read/trials.h"

#include "base/words.h"
#include "read/fields.h"
#include "read/rules.h"

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
    (void)field_quantity(r->node, "liquid", "g", &out->liquid_g, r->found);
    if (fields_need(r->node, "date", "a trial", r->found))
        (void)field_date(r->node, "date", &out->date, r->found);
    (void)verdict_read(r->node, "a trial", &out->outcome, r->found);
    read_texture(r->home, r->node, &out->texture, r->found);
    read_measured(r->node, out, r->found);
    read_pictures(r->node, out, r->found);
    (void)field_text(r->node, "remarks", &out->remarks, r->found);
    (void)field_text(r->node, "by", &out->by, r->found);
    return r->found->errors == before;
}

void trials_read(arena *a, const char *file, span bytes, const pantry *shelf, trials *into,
                 problems *found) {
    const yaml_node *list = fields_read_list(a, file, bytes, "a trial", found);
    for (size_t i = 0; list && i < list->count; i++) {
        trial one = {.at = list->items[i]->at};
        if (read_trial(&(trial_reader){a, shelf, list->items[i], found}, &one))
            LIST_ADD(a, into, one);
    }
}
