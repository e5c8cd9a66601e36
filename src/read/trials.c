#include "read/trials.h"

#include "base/words.h"
#include "read/fields.h"
#include "read/rules.h"

static const char *const keys[] = {"recipe",  "replace",  "with",     "liquid",  "date", "verdict",
                                   "texture", "measured", "pictures", "remarks", "by"};

/* A side of a trial: an ingredient line, its amount optional. */
static bool read_line(arena *a, const yaml_node *node, const char *key, const pantry *shelf,
                      recipe_line *out, problems *found) {
    located written;
    return fields_need(node, key, "a trial", found) && field_located(node, key, &written, found) &&
           line_read(a, written, shelf, out, found) && out->what;
}

static void read_measured(const yaml_node *node, trial *out, problems *found) {
    static const char *const known[] = {"height", "spread", "weight"};
    const yaml_node *group = field_node(node, "measured", YAML_MAPPING, found);
    if (!group)
        return;
    fields_known(group, known, COUNT(known), "\"measured\"", found);
    (void)field_quantity(group, "height", "mm", &out->height_mm, found);
    (void)field_quantity(group, "spread", "mm", &out->spread_mm, found);
    (void)field_quantity(group, "weight", "g", &out->weight_g, found);
    if (out->height_mm < 0 || out->spread_mm < 0 || out->weight_g < 0)
        problem_add(found, group->at, "leave out what was not measured",
                    "nothing measures less than 0");
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

static bool read_trial(arena *a, const yaml_node *node, const pantry *shelf, trial *out,
                       problems *found) {
    size_t before = found->errors;
    if (!fields_are_keys(node, "a trial", found))
        return false;
    fields_known(node, keys, COUNT(keys), "a trial", found);
    read_recipe(a, node, &out->recipe, found);
    bool sides = read_line(a, node, "replace", shelf, &out->replaced, found);
    sides = read_line(a, node, "with", shelf, &out->with, found) && sides;
    out->has_amounts = sides && out->replaced.has_amount && out->with.has_amount;
    (void)field_quantity(node, "liquid", "g", &out->liquid_g, found);
    if (fields_need(node, "date", "a trial", found))
        (void)field_date(node, "date", &out->date, found);
    (void)verdict_read(node, "a trial", &out->outcome, found);
    read_texture(a, node, &out->texture, found);
    read_measured(node, out, found);
    read_pictures(node, out, found);
    (void)field_text(node, "remarks", &out->remarks, found);
    (void)field_text(node, "by", &out->by, found);
    return found->errors == before;
}

void trials_read(arena *a, const char *file, span bytes, const pantry *shelf, trials *into,
                 problems *found) {
    const yaml_node *list = fields_read_list(a, file, bytes, "a trial", found);
    for (size_t i = 0; list && i < list->count; i++) {
        trial one = {.at = list->items[i]->at};
        if (read_trial(a, list->items[i], shelf, &one, found))
            LIST_ADD(a, into, one);
    }
}
