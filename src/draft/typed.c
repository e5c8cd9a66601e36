#include "draft/typed.h"

#include "base/list.h"
#include "base/text.h"
#include "base/words.h"
#include "draft/plain.h"
#include "measure/amount.h"

/* Where in the recipe the lines stand. */
typedef enum { PART_TOP, PART_INGREDIENTS, PART_METHOD, PART_NOTES } part;

/* Headings, folded. */
static const struct {
    const char *word;
    part begins;
} headings[] = {
    {"ingredients", PART_INGREDIENTS},
    {"ingredient list", PART_INGREDIENTS},
    {"you need", PART_INGREDIENTS},
    {"you will need", PART_INGREDIENTS},
    {"what you need", PART_INGREDIENTS},
    {"what i need", PART_INGREDIENTS},
    {"what goes in", PART_INGREDIENTS},
    {"method", PART_METHOD},
    {"directions", PART_METHOD},
    {"instructions", PART_METHOD},
    {"preparation", PART_METHOD},
    {"steps", PART_METHOD},
    {"procedure", PART_METHOD},
    {"how", PART_METHOD},
    {"how to", PART_METHOD},
    {"how to make it", PART_METHOD},
    {"how to do it", PART_METHOD},
    {"how i make it", PART_METHOD},
    {"how it is made", PART_METHOD},
    {"what you do", PART_METHOD},
    {"what to do", PART_METHOD},
    {"the method", PART_METHOD},
    {"to make", PART_METHOD},
    {"making", PART_METHOD},
    {"making it", PART_METHOD},
    {"notes", PART_NOTES},
    {"note", PART_NOTES},
    {"tips", PART_NOTES},
    {"remarks", PART_NOTES},
};

/* What stands before a value on a line of its own, folded, and the property it is. `whole`: the
 * word is a part of the value. */
static const struct {
    const char *word, *property;
    bool whole;
} values[] = {
    {"makes ", "recipeYield", true},    {"serves ", "recipeYield", true},
    {"yield:", "recipeYield", false},   {"yields ", "recipeYield", true},
    {"servings:", "recipeYield", true}, {"prep time:", "prepTime", false},
    {"prep:", "prepTime", false},       {"preparation time:", "prepTime", false},
    {"cook time:", "cookTime", false},  {"cooking time:", "cookTime", false},
    {"bake time:", "cookTime", false},  {"baking time:", "cookTime", false},
    {"bake:", "cookTime", false},       {"total time:", "totalTime", false},
    {"total:", "totalTime", false},     {"time:", "totalTime", false},
    {"author:", "author", false},       {"source:", "url", false},
    {"tags:", "keywords", false},
};

/* A typed recipe being read. */
typedef struct {
    arena *home;
    json_t *object, *lines, *steps, *notes;
    part in;
    text summary, step; /* step: the one being put together */
    bool blank_before, numbered, paragraphs;
} typed_reader;

/* -- lines ------------------------------------------------------------------------------------- */

/* The bytes of "# ", "- ", "* ", "• " and the like at the front. */
static size_t mark_length(span s) {
    static const char *const marks[] = {"#",      "- ",     "* ",      "+ ",  "\u2022", "\u25a2",
                                        "\u2610", "\u00b7", "\u2013 ", "[ ]", "_"};
    for (size_t i = 0; i < COUNT(marks); i++)
        if (span_begins(s, marks[i]))
            return strlen(marks[i]);
    return 0;
}

static span without_marks(span line) {
    size_t length;
    line = span_trim(line);
    while ((length = mark_length(line)) > 0)
        line = span_trim(span_from(line, length));
    while (span_begins(line, "**") || span_begins(line, "__"))
        line = span_from(line, 2);
    while (span_ends(line, "**") || span_ends(line, "__"))
        line.length -= 2;
    return span_trim(line);
}

static span without_colon(span line) {
    return span_ends(line, ":") ? span_trim(span_first(line, line.length - 1)) : line;
}

static bool is_heading(const typed_reader *r, span line, part *begins) {
    span folded = words_fold(r->home, without_colon(line));
    for (size_t i = 0; i < COUNT(headings); i++)
        if (span_is(folded, headings[i].word)) {
            *begins = headings[i].begins;
            return true;
        }
    return false;
}

static bool begins_with_amount(span line) {
    amount_range amount;
    size_t used = amount_read(line, &amount);
    bool number_of_step = used < line.length && strchr(".)", line.at[used]);
    return used > 0 && used < line.length && !number_of_step;
}

/* "3. ", "3) " */
static size_t step_number(span line) {
    size_t i = 0;
    while (i < line.length && line.at[i] >= '0' && line.at[i] <= '9')
        i++;
    bool marked = i > 0 && i + 1 < line.length && strchr(".)", line.at[i]);
    return marked && line.at[i + 1] == ' ' ? i + 2 : 0;
}

/* -- the object -------------------------------------------------------------------------------- */

static void append(json_t *list, span words) {
    json_array_append_new(list, json_stringn(words.at, words.length));
}

static void set(const typed_reader *r, const char *property, span words) {
    if (!json_object_get(r->object, property))
        json_object_set_new(r->object, property, json_stringn(words.at, words.length));
}

static bool take_value(const typed_reader *r, span line) {
    span folded = words_fold(r->home, line);
    for (size_t i = 0; i < COUNT(values); i++) {
        if (!span_begins(folded, values[i].word))
            continue;
        size_t colon = span_find(line, ":");
        set(r, values[i].property,
            values[i].whole || colon == line.length ? line : span_trim(span_from(line, colon + 1)));
        return true;
    }
    return false;
}

static void end_step(typed_reader *r) {
    if (r->step.length)
        append(r->steps, text_span(&r->step));
    text_clear(&r->step);
}

static void add_to_step(typed_reader *r, span line) {
    size_t number = step_number(line);
    bool joined = r->numbered ? number == 0 : r->paragraphs && !r->blank_before;
    if (!joined)
        end_step(r);
    if (r->step.length)
        text_add_char(&r->step, ' ');
    text_add_span(&r->step, span_from(line, number));
}

/* -- reading ----------------------------------------------------------------------------------- */

/* Without a heading the method begins where, behind ingredients, a step is numbered or a line is
 * a sentence. */
static bool begins_method(const typed_reader *r, span line) {
    enum { SENTENCE_BYTES = 60 };
    return json_array_size(r->lines) > 0 && r->blank_before && !begins_with_amount(line) &&
           (step_number(line) ||
            (line.length >= SENTENCE_BYTES && span_find(line, ".") < line.length));
}

static void add_summary(typed_reader *r, span line) {
    if (r->summary.length)
        text_add_char(&r->summary, ' ');
    text_add_span(&r->summary, line);
}

static void read_body_line(typed_reader *r, span line) {
    /* "A dense loaf" is no ingredient: ahead of a heading for them the amount must be a figure. */
    if (r->in == PART_TOP && amount_is_meant(line) && begins_with_amount(line))
        r->in = PART_INGREDIENTS;
    if (r->in == PART_INGREDIENTS && begins_method(r, line)) {
        r->in = PART_METHOD;
        r->paragraphs = true;
    }
    if (r->in == PART_TOP)
        add_summary(r, line);
    else if (r->in == PART_INGREDIENTS)
        append(r->lines, line);
    else if (r->in == PART_METHOD)
        add_to_step(r, line);
    else
        append(r->notes, line);
}

static void read_line(typed_reader *r, span line) {
    part begins;
    line = r->in == PART_METHOD && step_number(span_trim(line)) ? span_trim(line)
                                                                : without_marks(line);
    if (line.length == 0) {
        r->blank_before = true;
        return;
    }
    if (is_heading(r, line, &begins)) {
        end_step(r);
        r->in = begins;
    } else if (!json_object_get(r->object, "name")) {
        set(r, "name", line);
    } else if (r->in > PART_INGREDIENTS || !take_value(r, line)) {
        read_body_line(r, line);
    }
    r->blank_before = false;
}

/* How the steps are told apart: by numbers, by empty lines, else one a line. */
static void look_ahead(typed_reader *r, span words) {
    span line;
    part begins, in = PART_TOP;
    bool words_before = false, blank = false;
    while (span_next_line(&words, &line)) {
        line = span_trim(line);
        if (line.length == 0) {
            blank = true;
            continue;
        }
        if (is_heading(r, without_marks(line), &begins)) {
            in = begins;
            words_before = false;
        } else if (in == PART_METHOD || step_number(line)) {
            r->numbered = r->numbered || step_number(line);
            r->paragraphs = r->paragraphs || (words_before && blank);
            words_before = true;
        }
        blank = false;
    }
}

static json_t *finish(typed_reader *r) {
    end_step(r);
    for (size_t i = 0; i < json_array_size(r->notes); i++) {
        json_t *tip = json_object();
        json_object_set_new(tip, "@type", json_string("HowToTip"));
        json_object_set(tip, "text", json_array_get(r->notes, i));
        json_array_append_new(r->steps, tip);
    }
    if (r->summary.length)
        set(r, "description", text_span(&r->summary));
    json_object_set(r->object, "recipeIngredient", r->lines);
    json_object_set(r->object, "recipeInstructions", r->steps);
    bool any = json_array_size(r->lines) > 0;
    json_decref(r->lines);
    json_decref(r->steps);
    json_decref(r->notes);
    text_free(&r->summary);
    text_free(&r->step);
    if (any)
        return r->object;
    json_decref(r->object);
    return NULL;
}

json_t *typed_recipe(arena *a, span words) {
    typed_reader r = {.home = a,
                      .object = json_object(),
                      .lines = json_array(),
                      .steps = json_array(),
                      .notes = json_array(),
                      .summary = TEXT_EMPTY,
                      .step = TEXT_EMPTY};
    span line;
    json_object_set_new(r.object, "@type", json_string("Recipe"));
    look_ahead(&r, words);
    while (span_next_line(&words, &line))
        read_line(&r, line);
    return finish(&r);
}
