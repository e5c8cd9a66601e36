#include "draft/recipe_object.h"

#include "base/names.h"
#include "base/words.h"
#include "draft/duration.h"
#include "draft/linked.h"
#include "draft/plain.h"
#include "draft/steps.h"
#include "read/fields.h"

/* A Recipe being read. */
typedef struct {
    arena *home;
    const json_t *document;
    draft_parts *out;
    size_t lookups; /* left */
    names seen;     /* words of lists, so that none is there twice */
} object_reader;

typedef void read_property(object_reader *r, const char *name, const json_t *value);

static const char *line_of(const object_reader *r, const json_t *value) {
    const char *words = linked_words(r->home, value);
    return words ? plain_line(r->home, span_of(words)) : NULL;
}

static void remark(object_reader *r, const char *under, const char *words) {
    PARTS_ADD(r->home, r->out, remarks, (draft_item){under, words});
}

static void cannot_read(object_reader *r, const char *under, const char *name, const json_t *value,
                        const char *because) {
    const char *words = line_of(r, value);
    remark(r, under,
           arena_format(r->home, "could not read: %s%s%s%s, because %s", name, words ? " \"" : "",
                        words ? words : "", words ? "\"" : "", because));
}

static bool is_nothing(const json_t *value) {
    const char *words = json_string_value(value);
    return json_is_null(value) || json_is_false(value) ||
           (words && span_trim(span_of(words)).length == 0) ||
           (json_is_array(value) && json_array_size(value) == 0) ||
           (json_is_object(value) && json_object_size(value) == 0);
}

/* -- words and dates --------------------------------------------------------------------------- */

static void read_title(object_reader *r, const char *name, const json_t *value) {
    enum { BYTES_MOST = 300 };
    const char *words = line_of(r, value);
    if (words && strlen(words) > BYTES_MOST) {
        cannot_read(r, "title", name, value, "it is too long for a title");
        return;
    }
    if (words && strcmp(name, "headline") == 0 && r->out->title)
        return;
    if (words)
        r->out->title = words;
}

static void read_summary(object_reader *r, const char *name, const json_t *value) {
    (void)name;
    r->out->summary = line_of(r, value);
}

static void read_category(object_reader *r, const char *name, const json_t *value) {
    const char **out = strcmp(name, "recipeCuisine") == 0 ? &r->out->cuisine : &r->out->category;
    *out = line_of(r, value);
}

static bool is_address(const char *words) {
    return words &&
           (span_begins(span_of(words), "https://") || span_begins(span_of(words), "http://"));
}

static void read_address(object_reader *r, const char *name, const json_t *value) {
    const char *words = line_of(r, value);
    if (!words && json_is_object(value))
        words = json_string_value(json_object_get(value, "@id"));
    if (is_address(words) && (!r->out->address || strcmp(name, "url") == 0))
        r->out->address = plain_line(r->home, span_of(words));
}

/* A day, or a moment of one: "2025-06-01T08:30:00+02:00". */
static bool is_date(span s) {
    bool day_alone = s.length <= 10 || s.at[10] == 'T' || s.at[10] == ' ';
    return day_alone && field_is_day(span_first(s, 10));
}

static void read_date(object_reader *r, const char *name, const json_t *value) {
    bool changed = strcmp(name, "dateModified") == 0;
    const char *words = line_of(r, value);
    if (!words || !is_date(span_of(words)))
        cannot_read(r, changed ? "changed" : "date", name, value,
                    "it is no day written YYYY-MM-DD");
    else
        *(changed ? &r->out->changed : &r->out->date) = arena_copy(r->home, (span){words, 10});
}

/* -- times ------------------------------------------------------------------------------------- */

static void read_time(object_reader *r, const char *name, const json_t *value) {
    draft_parts *out = r->out;
    const struct {
        const char *name;
        double *minutes;
    } rows[] = {{"prepTime", &out->prepare_min},
                {"cookTime", &out->cook_min},
                {"performTime", &out->cook_min},
                {"totalTime", &out->total_min}};
    const char *words = line_of(r, json_is_object(value) && linked_get(value, "maxValue")
                                       ? linked_get(value, "maxValue")
                                       : value);
    double minutes;
    if (!words || !duration_read(span_of(words), &minutes)) {
        cannot_read(r, "minutes", name, value, "it is no duration such as PT1H30M");
        return;
    }
    for (size_t i = 0; i < COUNT(rows); i++)
        if (strcmp(name, rows[i].name) == 0 && *rows[i].minutes <= 0)
            *rows[i].minutes = minutes;
}

/* -- lists of words ---------------------------------------------------------------------------- */

/* Adds `words` to a list of the parts unless they are in it; `which` names the list. */
static void add_unique(object_reader *r, word_list *list, const char *which, const char *words) {
    span folded = words_fold(r->home, span_of(words));
    const char *key = arena_format(r->home, "%s %.*s", which, SPAN(folded));
    if (!names_add(&r->seen, span_of(key), 0, NULL))
        return;
    if (list->count < PARTS_MOST)
        LIST_ADD(r->home, list, words);
    else
        r->out->lost++;
}

/* Cuts at commas, semicolons and line ends. */
static void add_tags(object_reader *r, span words) {
    while (words.length) {
        size_t end = 0;
        while (end < words.length && !strchr(",;\n", words.at[end]))
            end++;
        span one = span_trim(span_first(words, end));
        if (one.length)
            add_unique(r, &r->out->tags, "tag", arena_copy(r->home, one));
        words = span_from(words, end + 1);
    }
}

static void read_keywords(object_reader *r, const char *name, const json_t *value) {
    for (size_t i = 0; i < json_array_size(value); i++)
        read_keywords(r, name, json_array_get(value, i));
    const json_t *named = linked_get(value, "name"); /* a DefinedTerm */
    const char *words = json_is_array(value) ? NULL : linked_words(r->home, named ? named : value);
    if (words)
        add_tags(r, span_of(words));
}

/* Adds the words of `value`, of each of a list, or of an object's `key`. */
static void add_named(object_reader *r, const json_t *value, const char *const keys[],
                      word_list *into, const char *which) {
    for (size_t i = 0; i < json_array_size(value); i++)
        add_named(r, json_array_get(value, i), keys, into, which);
    if (json_is_array(value))
        return;
    const json_t *of = linked_resolve(r->document, value, &r->lookups);
    const char *words = json_is_object(of) ? NULL : line_of(r, of);
    for (size_t i = 0; keys[i] && !words; i++)
        words = line_of(r, json_object_get(of, keys[i]) ? json_object_get(of, keys[i])
                                                        : linked_get(of, keys[i]));
    if (words)
        add_unique(r, into, which, words);
}

static void read_author(object_reader *r, const char *name, const json_t *value) {
    static const char *const keys[] = {"name", "@value", NULL};
    (void)name;
    add_named(r, value, keys, &r->out->authors, "author");
}

static void read_picture(object_reader *r, const char *name, const json_t *value) {
    static const char *const keys[] = {"url", "contentUrl", "@id", NULL};
    (void)name;
    add_named(r, value, keys, &r->out->pictures, "picture");
}

static void read_tool(object_reader *r, const char *name, const json_t *value) {
    static const char *const keys[] = {"name", "@value", NULL};
    (void)name;
    add_named(r, value, keys, &r->out->tools, "tool");
}

/* A QuantitativeValue: {"value": 8, "unitText": "slices"}. */
static const char *quantity_words(const object_reader *r, const json_t *of) {
    const char *number = line_of(r, linked_get(of, "value"));
    const char *of_what = line_of(r, linked_get(of, "unitText"));
    return number && of_what ? arena_format(r->home, "%s %s", number, of_what) : number;
}

static void read_yield(object_reader *r, const char *name, const json_t *value) {
    for (size_t i = 0; i < json_array_size(value); i++)
        read_yield(r, name, json_array_get(value, i));
    if (json_is_array(value))
        return;
    const char *words = line_of(r, value);
    if (!words)
        words = quantity_words(r, value);
    if (words)
        PARTS_ADD(r->home, r->out, yields, words);
    else
        cannot_read(r, "makes", name, value, "it is neither a number nor words");
}

/* -- ingredients ------------------------------------------------------------------------------- */

/* {"name": "oat flour", "amount" or "requiredQuantity": "60 g" or a QuantitativeValue} */
static const char *ingredient_words(const object_reader *r, const json_t *of) {
    static const char *const amounts[] = {"requiredQuantity", "amount"};
    const char *what = line_of(r, linked_get(of, "name")), *amount = quantity_words(r, of);
    if (!what)
        return line_of(r, linked_get(of, "text"));
    for (size_t i = 0; i < COUNT(amounts) && !amount; i++) {
        const json_t *value = linked_get(of, amounts[i]);
        amount = line_of(r, value);
        if (!amount)
            amount = quantity_words(r, value);
    }
    return amount ? arena_format(r->home, "%s %s", amount, what) : what;
}

static void add_lines(object_reader *r, const char *group, span words) {
    span line;
    while (span_next_line(&words, &line))
        PARTS_ADD(r->home, r->out, ingredients, (draft_item){group, arena_copy(r->home, line)});
}

static void read_lines(object_reader *r, const char *group, const json_t *value, unsigned depth) {
    if (depth == LINKED_DEPTH_MOST)
        return;
    for (size_t i = 0; i < json_array_size(value); i++)
        read_lines(r, group, json_array_get(value, i), depth + 1);
    const json_t *list = linked_get(value, "itemListElement");
    const json_t *item = linked_get(value, "item");
    if (list) {
        read_lines(r, line_of(r, linked_get(value, "name")), list, depth + 1);
    } else if (item) {
        read_lines(r, group, item, depth + 1);
    } else if (json_is_object(value) && !json_object_get(value, "@value")) {
        const char *words = ingredient_words(r, value);
        if (words)
            add_lines(r, group, span_of(words));
        else
            cannot_read(r, "ingredients", "an ingredient", value, "it has no name");
    } else if (!json_is_array(value)) {
        add_lines(r, group, span_of(linked_words(r->home, value)));
    }
}

static void read_ingredients(object_reader *r, const char *name, const json_t *value) {
    (void)name;
    read_lines(r, NULL, value, 0);
}

static void read_method(object_reader *r, const char *name, const json_t *value) {
    (void)name;
    steps_read(r->home, value, r->out);
}

/* -- stated figures ---------------------------------------------------------------------------- */

static void read_figures(object_reader *r, const char *name, const json_t *value) {
    const char *key;
    json_t *one;
    value = linked_resolve(r->document, value, &r->lookups);
    if (json_is_array(value) && json_array_size(value))
        value = json_array_get(value, 0);
    if (!json_is_object(value)) {
        const char *words = line_of(r, value);
        if (words)
            PARTS_ADD(r->home, r->out, figures, (draft_item){name, words});
        return;
    }
    json_object_foreach((json_t *)value, key, one) {
        const char *words = linked_name(key) ? line_of(r, one) : NULL;
        if (!words)
            continue;
        if (strcmp(linked_name(key), "servingSize") == 0)
            r->out->serving = words;
        PARTS_ADD(r->home, r->out, figures,
                  (draft_item){plain_line(r->home, span_of(linked_name(key))), words});
    }
}

static void read_diet(object_reader *r, const char *name, const json_t *value) {
    (void)name;
    for (size_t i = 0; i < json_array_size(value); i++)
        read_diet(r, name, json_array_get(value, i));
    const char *words = json_is_array(value) ? NULL : line_of(r, value);
    if (words && linked_name(words))
        PARTS_ADD(r->home, r->out, figures, (draft_item){"suitable for", linked_name(words)});
}

/* -- all of it --------------------------------------------------------------------------------- */

static const struct {
    const char *name;
    read_property *read;
} properties[] = {
    {"name", read_title},
    {"headline", read_title},
    {"description", read_summary},
    {"recipeCategory", read_category},
    {"recipeCuisine", read_category},
    {"url", read_address},
    {"mainEntityOfPage", read_address},
    {"datePublished", read_date},
    {"dateModified", read_date},
    {"prepTime", read_time},
    {"cookTime", read_time},
    {"performTime", read_time},
    {"totalTime", read_time},
    {"keywords", read_keywords},
    {"author", read_author},
    {"image", read_picture},
    {"tool", read_tool},
    {"recipeYield", read_yield},
    {"yield", read_yield},
    {"recipeIngredient", read_ingredients},
    {"ingredients", read_ingredients}, /* superseded by recipeIngredient */
    {"recipeInstructions", read_method},
    {"nutrition", read_figures},
    {"suitableForDiet", read_diet},
};

static read_property *reader_of(const char *name) {
    for (size_t i = 0; i < COUNT(properties); i++)
        if (strcmp(name, properties[i].name) == 0)
            return properties[i].read;
    return NULL;
}

void recipe_object_read(arena *a, const json_t *document, const json_t *of, draft_parts *out) {
    object_reader r = {a, document, out, LINKED_LOOKUPS_MOST, names_in(a)};
    const char *key;
    json_t *value;
    json_object_foreach((json_t *)of, key, value) {
        const char *name = linked_name(key);
        if (!name || is_nothing(value))
            continue;
        read_property *read = reader_of(name);
        if (json_string_length(value) > PLAIN_BYTES_MOST)
            cannot_read(&r, NULL, plain_line(a, span_of(name)), NULL, "it is too long");
        else if (read)
            read(&r, name, value);
        else
            add_unique(&r, &out->left_out, "left out", plain_line(a, span_of(name)));
    }
}
