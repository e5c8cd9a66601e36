#include "read/recipe_lines.h"

#include "read/fields.h"

/* A list of lines being read. */
typedef struct {
    arena *home;
    const pantry *shelf;
    recipe *out;
    problems *found;
} lines_reader;

static void add_line(const lines_reader *r, const char *heading, const recipe_line *line) {
    line_groups *groups = &r->out->groups;
    if (r->out->lines.count == RECIPE_LINES_MOST) {
        problem_add(r->found, line->at, "split the recipe in two",
                    "a recipe has %d ingredient lines at the most", RECIPE_LINES_MOST);
        return;
    }
    bool new_group = groups->count == 0 || groups->items[groups->count - 1].heading != heading;
    if (new_group)
        LIST_ADD(r->home, groups, (line_group){heading, r->out->lines.count, 0});
    groups->items[groups->count - 1].count++;
    LIST_ADD(r->home, &r->out->lines, *line);
}

/* "- 60 g flour: sifted" reads as a key and its value. */
static bool is_line_with_colon(const yaml_node *item) {
    return item->count == 1 && memchr(item->pairs[0].key.at, ' ', item->pairs[0].key.length);
}

static void read_parts(const lines_reader *r, const char *heading, const yaml_node *item) {
    static const char *const known[] = {"ingredient", "amount", "note", "optional"};
    located name, amount = {.at = item->at};
    const char *note = NULL;
    bool optional = false;
    recipe_line line;
    if (is_line_with_colon(item)) {
        problem_add(r->found, item->at, "put the whole line in double quotes",
                    "a colon and a space in a line of ingredients");
        return;
    }
    fields_known(item, known, COUNT(known), "an ingredient line", r->found);
    (void)field_located(item, "amount", &amount, r->found);
    (void)field_text(item, "note", &note, r->found);
    (void)field_answer(item, "optional", &optional, r->found);
    if (fields_need(item, "ingredient", "an ingredient line", r->found) &&
        field_located(item, "ingredient", &name, r->found) &&
        line_read_parts(r->home, name, amount, note, optional, r->shelf, &line, r->found))
        add_line(r, heading, &line);
}

static void read_line(const lines_reader *r, const char *heading, const yaml_node *item) {
    recipe_line line;
    if (field_is_empty(item))
        problem_add(r->found, item->at, "for example: - 60 g pea protein powder",
                    "this line of ingredients is empty");
    else if (item->sort == YAML_SEQUENCE)
        problem_add(r->found, item->at, "for a group write: - group: To serve, then lines: [...]",
                    "a list can't stand in the list of ingredients");
    else if (item->sort == YAML_MAPPING)
        read_parts(r, heading, item);
    else if (line_read(r->home, yaml_located(item), r->shelf, &line, r->found))
        add_line(r, heading, &line);
}

static void read_group(const lines_reader *r, const yaml_node *group) {
    static const char *const known[] = {"group", "lines"};
    const char *heading = NULL;
    fields_known(group, known, COUNT(known), "a group of ingredients", r->found);
    if (fields_need(group, "group", "a group of ingredients", r->found))
        (void)field_text(group, "group", &heading, r->found);
    if (!fields_need(group, "lines", "a group of ingredients", r->found))
        return;
    const yaml_node *lines = field_node(group, "lines", YAML_SEQUENCE, r->found);
    for (size_t i = 0; lines && i < lines->count; i++)
        read_line(r, heading, lines->items[i]);
}

void recipe_lines_read(arena *a, const yaml_node *ingredients, const pantry *shelf, recipe *out,
                       problems *found) {
    lines_reader r = {a, shelf, out, found};
    for (size_t i = 0; i < ingredients->count; i++) {
        const yaml_node *item = ingredients->items[i];
        if (yaml_get(item, "group") || yaml_get(item, "lines"))
            read_group(&r, item);
        else
            read_line(&r, NULL, item);
    }
}

void recipe_lines_weigh(arena *a, cup_standard cups, recipe *out, problems *found) {
    out->weights = ARENA_ARRAY(a, weight, out->lines.count);
    for (size_t i = 0; i < out->lines.count; i++) {
        const recipe_line *line = &out->lines.items[i];
        /* An ingredient that is not in the pantry has its problem already. */
        if (line->what && weigh_line(line, cups, &out->weights[i], found))
            out->batch_g += out->weights[i].grams;
        else
            out->unweighed += line->has_amount;
    }
}
