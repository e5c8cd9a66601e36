#include "read/recipe.h"

#include "base/words.h"
#include "read/baking.h"
#include "read/fields.h"
#include "read/frontmatter.h"
#include "read/kinds.h"
#include "read/page.h"
#include "read/recipe_lines.h"
#include "read/rules.h"
#include "read/yield.h"

static const char *const keys[] = {"title",   "summary",      "makes",  "portion",   "kind",
                                   "minutes", "oven",         "pan",    "bake-loss", "ingredients",
                                   "swaps",   "tags",         "date",   "changed",   "author",
                                   "picture", "picture-text", "publish"};

/* A recipe being read. */
typedef struct {
    arena *home;
    const yaml_node *front;
    recipe *out;
    problems *found;
} recipe_reader;

static place place_of(const yaml_node *front, const char *key) {
    const yaml_node *value = yaml_get(front, key);
    return value ? value->at : front->at;
}

/* -- words
 * ------------------------------------------------------------------------------------------ */

static void read_places(const recipe_reader *r) {
    r->out->title_at = place_of(r->front, "title");
    r->out->summary_at = place_of(r->front, "summary");
    r->out->makes_at = place_of(r->front, "makes");
    r->out->portion_at = place_of(r->front, "portion");
    r->out->kind_at = place_of(r->front, "kind");
    r->out->tags_at = place_of(r->front, "tags");
    r->out->picture_at = place_of(r->front, "picture");
    r->out->date_at = place_of(r->front, "date");
}

static void read_words(const recipe_reader *r) {
    if (fields_need(r->front, "title", "a recipe", r->found))
        (void)field_text(r->front, "title", &r->out->title, r->found);
    (void)field_text(r->front, "summary", &r->out->summary, r->found);
    (void)field_text(r->front, "kind", &r->out->kind, r->found);
    (void)field_text(r->front, "author", &r->out->author, r->found);
    (void)field_date(r->front, "date", &r->out->date, r->found);
    (void)field_date(r->front, "changed", &r->out->changed, r->found);
    (void)field_picture(r->front, "picture", &r->out->picture, r->found);
    (void)field_text(r->front, "picture-text", &r->out->picture_text, r->found);
    (void)field_answer(r->front, "publish", &r->out->publish, r->found);
}

static void read_tags(const recipe_reader *r) {
    field_list list;
    if (!field_words(r->front, "tags", &list, r->found))
        return;
    for (size_t i = 0; i < list.count; i++)
        LIST_ADD(r->home, &r->out->tags, list.items[i]->scalar.at);
}

/* What readers miss when it is not there, though the recipe can be published without. */
static const struct {
    const char *key, *hint, *message;
} wanted[] = {
    {"summary", "one sentence: it stands in lists and in search results",
     "the recipe has no \"summary\""},
    {"kind", "for example: kind: griddle cake; swap rules and the index go by it",
     "the recipe has no \"kind\""},
};

static void warn_of_missing(const recipe_reader *r) {
    for (size_t i = 0; i < COUNT(wanted); i++) {
        const yaml_node *value = yaml_get(r->front, wanted[i].key);
        if (!value || field_is_empty(value))
            problem_note(r->found, "missing", PROBLEM_WARNING, r->front->at, wanted[i].hint, "%s",
                         wanted[i].message);
    }
    const char *meant = r->out->kind ? recipe_kind_meant(r->home, r->out->kind) : NULL;
    if (meant)
        problem_note(r->found, "kind", PROBLEM_WARNING, r->out->kind_at,
                     arena_format(r->home, "did you mean \"%s\"?", meant),
                     "no rule of the reference knows the kind \"%s\"", r->out->kind);
    if (r->out->picture && !r->out->picture_text)
        problem_note(r->found, "picture-text", PROBLEM_WARNING, r->out->picture_at,
                     "say what it shows, for those who can't see it",
                     "the picture has no \"picture-text\"");
    if (r->out->date && r->out->changed && strcmp(r->out->changed, r->out->date) < 0)
        problem_note(r->found, "dates", PROBLEM_WARNING, place_of(r->front, "changed"),
                     "are the two the wrong way round?", "\"changed\" is before \"date\"");
}

/* -- how much, how long, how hot
 * -------------------------------------------------------------------- */

static void read_yields(const recipe_reader *r) {
    located written;
    recipe *out = r->out;
    out->makes = out->portion = (yield){1, "batch"};
    out->portions = 1;
    if (!fields_need(r->front, "makes", "a recipe", r->found) ||
        !field_located(r->front, "makes", &written, r->found) ||
        !yield_read(r->home, written, &out->makes, r->found))
        return;
    /* Of half a loaf, the half is a portion where none is stated. */
    out->portion = (yield){out->makes.count < 1 ? out->makes.count : 1, out->makes.noun};
    if (field_located(r->front, "portion", &written, r->found))
        (void)portion_read(r->home, written, &out->makes, &out->portion, r->found);
    out->portions = out->makes.count / out->portion.count;
}

static void read_minutes(const recipe_reader *r) {
    static const char *const known[] = {"prepare", "rest", "bake", "cool"};
    minutes_of *m = &r->out->minutes;
    double *const out[] = {&m->prepare, &m->rest, &m->bake, &m->cool};
    const yaml_node *group = field_node(r->front, "minutes", YAML_MAPPING, r->found);
    if (!group)
        return;
    fields_known(group, known, COUNT(known), "\"minutes\"", r->found);
    for (size_t i = 0; i < COUNT(known); i++) {
        double minutes;
        if (!field_quantity(group, known[i], "min", &minutes, r->found))
            continue;
        if (minutes < 0 || minutes > 7 * 24 * 60)
            problem_add(r->found, yaml_get(group, known[i])->at, "minutes, or hours as \"2 h\"",
                        "\"%s\" must be between nothing and a week", known[i]);
        else
            *out[i] = minutes;
    }
}

/* Griddle cakes lose a tenth, crackers a third; past a half, or under a hundredth, it is mostly a
 * slip of the pen (common practice, no source). */
static void read_bake_loss(const recipe_reader *r) {
    double loss;
    if (!field_quantity(r->front, "bake-loss", "%", &loss, r->found))
        return;
    place at = place_of(r->front, "bake-loss");
    if (loss < 0 || loss >= 1) {
        problem_add(r->found, at, "for example: bake-loss: 12 %",
                    "\"bake-loss\" must be at least 0 and under 100 %%");
        return;
    }
    if (loss > 0.5 || (loss > 0 && loss < 0.01))
        problem_note(r->found, "bake-loss", PROBLEM_WARNING, at,
                     "weigh the batch before and after: it is the share that went",
                     "this is an unusual \"bake-loss\"");
    r->out->bake_loss = loss;
    r->out->bake_loss_stated = true;
}

static void read_baking(const recipe_reader *r) {
    located written;
    if (field_located(r->front, "oven", &written, r->found) &&
        oven_read(written, &r->out->oven_c, r->found))
        r->out->oven = written.bytes.at;
    if (field_located(r->front, "pan", &written, r->found))
        (void)pan_read(written, &r->out->baked_in, r->found);
    read_minutes(r);
    read_bake_loss(r);
}

/* -- ingredients and swaps
 * ------------------------------------------------------------------------------ */

static void read_ingredients(const recipe_reader *r, const pantry *shelf, cup_standard cups) {
    const yaml_node *list = NULL;
    if (fields_need(r->front, "ingredients", "a recipe", r->found))
        list = field_node(r->front, "ingredients", YAML_SEQUENCE, r->found);
    if (list && list->count == 0)
        problem_add(r->found, list->at, "for example: ingredients: [60 g pea protein powder]",
                    "the list of ingredients is empty");
    if (list)
        recipe_lines_read(r->home, list, shelf, r->out, r->found);
    recipe_lines_weigh(r->home, cups, r->out, r->found);
    r->out->baked_g = r->out->batch_g * (1 - r->out->bake_loss);
}

static bool has_ingredient(const recipe *of, span folded, arena *scratch) {
    for (size_t i = 0; i < of->lines.count; i++) {
        const ingredient *what = of->lines.items[i].what;
        if (what && span_equal(words_fold(scratch, span_of(what->name)), folded))
            return true;
    }
    return false;
}

static void check_replaced(const recipe_reader *r, const swap_rule *own) {
    for (size_t i = 0; i < own->replace.count; i++) {
        span replaced = own->replace.items[i].names.items[0];
        if (!has_ingredient(r->out, replaced, r->found->home))
            problem_note(r->found, "swap-of-nothing", PROBLEM_WARNING, own->at,
                         "take the swap out, or correct its \"replace\"",
                         "the recipe has no %.*s to replace", SPAN(replaced));
    }
}

static void read_swaps(const recipe_reader *r, const pantry *shelf) {
    const yaml_node *list = field_node(r->front, "swaps", YAML_SEQUENCE, r->found);
    if (!list || list->count == 0)
        return;
    swap_rules *own = ARENA_NEW(r->home, swap_rules);
    rules_read_own(r->home, list, shelf, own, r->found);
    for (size_t i = 0; i < own->count; i++)
        check_replaced(r, &own->items[i]);
    if (own->count)
        r->out->own_swaps = own;
}

recipe *recipe_read(arena *a, const char *file, span bytes, const pantry *shelf, cup_standard cups,
                    problems *found) {
    front_matter cut;
    if (!front_matter_cut(file, bytes, &cut, found))
        return NULL;
    const yaml_node *front =
        fields_read_keys(a, front_matter_located(file, &cut), "a recipe", found);
    if (!front)
        return NULL;
    recipe *out = ARENA_NEW(a, recipe);
    *out = (recipe){.file = file,
                    .slug = page_slug(a, file),
                    .publish = true,
                    .source = bytes,
                    .body = cut.body,
                    .body_line = cut.body_line};
    recipe_reader r = {a, front, out, found};
    fields_known(front, keys, COUNT(keys), "a recipe", found);
    read_places(&r);
    read_words(&r);
    read_tags(&r);
    read_yields(&r);
    read_baking(&r);
    read_ingredients(&r, shelf, cups);
    read_swaps(&r, shelf);
    warn_of_missing(&r);
    return out->title && out->lines.count ? out : NULL;
}
