#include "draft/written.h"

#include "base/number.h"
#include "base/words.h"
#include "draft/plain.h"
#include "draft/stated_line.h"
#include "draft/stated_oven.h"
#include "draft/stated_yield.h"
#include "read/kinds.h"
#include "read/recipe_lines.h"

/* A recipe file being written. */
typedef struct {
    arena *home;
    const draft_parts *from;
    const draft_request *asked;
    draft *out;
    text page;
} recipe_writer;

/* -- YAML -------------------------------------------------------------------------------------- */

/* What may begin a plain scalar without being taken for something else. */
static bool begins_plainly(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           (unsigned char)c >= 0x80 || c == '(' || c == '/' || c == '.' || c == '+';
}

static bool is_null_word(span s) {
    static const char *const words[] = {"null", "Null", "NULL", "~"};
    return words_index(s, words, COUNT(words)) < COUNT(words);
}

/* YAML 1.1, 9.1.3. `in_list`: between the brackets of a list on one line. */
static bool is_plain(span s, bool in_list) {
    bool plain = s.length > 0 && begins_plainly(s.at[0]) && !span_ends(s, ":") &&
                 !span_ends(s, " ") && span_find(s, ": ") == s.length &&
                 span_find(s, " #") == s.length && !is_null_word(s);
    for (size_t i = 0; i < s.length && plain && in_list; i++)
        plain = !strchr("[]{},:", s.at[i]);
    return plain;
}

static void add_scalar(text *t, const char *words, bool in_list) {
    span s = span_of(words);
    if (is_plain(s, in_list)) {
        text_add_span(t, s);
        return;
    }
    text_add_char(t, '"');
    for (size_t i = 0; i < s.length; i++) {
        if (s.at[i] == '"' || s.at[i] == '\\')
            text_add_char(t, '\\');
        text_add_char(t, s.at[i] == '\n' ? ' ' : s.at[i]);
    }
    text_add_char(t, '"');
}

static void add_key(recipe_writer *w, const char *key, const char *words) {
    if (!words || !words[0])
        return;
    text_format(&w->page, "%s: ", key);
    add_scalar(&w->page, words, false);
    text_add_char(&w->page, '\n');
}

static void add_list(recipe_writer *w, const char *key, const word_list *list) {
    if (list->count == 0)
        return;
    text_format(&w->page, "%s: [", key);
    for (size_t i = 0; i < list->count; i++) {
        text_add(&w->page, i ? ", " : "");
        add_scalar(&w->page, list->items[i], true);
    }
    text_add(&w->page, "]\n");
}

/* -- remarks ----------------------------------------------------------------------------------- */

/* A comment on a line of its own, cut where it is long. */
static void add_comment(recipe_writer *w, const char *indent, const char *words) {
    enum { BYTES_MOST = 500 };
    span s = span_of(words);
    size_t length = s.length;
    if (length > BYTES_MOST)
        for (length = BYTES_MOST; length > 0 && ((unsigned char)s.at[length] & 0xc0) == 0x80;)
            length--;
    text_format(&w->page, "%s# ", indent);
    for (size_t i = 0; i < length; i++)
        text_add_char(&w->page, s.at[i] == '\n' ? ' ' : s.at[i]);
    text_add(&w->page, length < s.length ? " \u2026\n" : "\n");
}

/* A comment that the author should look at. */
static void add_remark(recipe_writer *w, const char *indent, const char *words) {
    LIST_ADD(w->home, &w->out->remarks, words);
    add_comment(w, indent, words);
}

static bool same_key(const char *one, const char *other) {
    return one && other ? strcmp(one, other) == 0 : one == other;
}

static void add_remarks_of(recipe_writer *w, const char *key) {
    for (size_t i = 0; i < w->from->remarks.count; i++)
        if (same_key(w->from->remarks.items[i].under, key))
            add_remark(w, "", w->from->remarks.items[i].words);
}

static const char *joined(arena *a, const word_list *list, const char *joint) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < list->count; i++) {
        text_add(&t, i ? joint : "");
        text_add(&t, list->items[i]);
    }
    const char *words = arena_copy(a, text_span(&t));
    text_free(&t);
    return words;
}

/* -- the front matter, key by key -------------------------------------------------------------- */

/* The name of the file, where it may stand in a comment. */
static const char *file_name(arena *a, const char *path) {
    const char *slash = strrchr(path, '/');
    span name = span_of(slash ? slash + 1 : path);
    return words_are_utf8(name, NULL) ? plain_line(a, name) : "a file";
}

static void write_head(recipe_writer *w, const char *drafted_from) {
    const draft_parts *from = w->from;
    const char *where = from->address ? from->address : file_name(w->home, w->asked->file);
    add_comment(
        w, "",
        arena_format(w->home,
                     "Drafted from %s, %s. What is left for you stands in remarks like this one.",
                     drafted_from, where));
    add_remarks_of(w, NULL);
    if (from->lost)
        add_remark(w, "",
                   arena_format(w->home,
                                "could not read: %zu more things, because no recipe has so "
                                "many of them",
                                from->lost));
    add_remarks_of(w, "title");
    if (!from->title)
        add_remark(w, "", "no name is stated: what is it called?");
    add_key(w, "title", w->out->title);
    add_key(w, "summary", from->summary);
    if (!from->summary)
        add_remark(w, "", "summary: one sentence; it stands in lists and in search results");
}

static void write_yield(recipe_writer *w) {
    stated_yield said = yield_stated(w->home, &w->from->yields);
    const char *portion = portion_stated(w->home, said.makes, w->from->serving);
    add_remarks_of(w, "makes");
    if (said.remark)
        add_remark(w, "", said.remark);
    add_key(w, "makes", said.makes);
    add_key(w, "portion", portion);
    const char *asked = portion ? NULL : portion_asked(w->home, said.makes, &w->from->yields);
    if (asked)
        add_remark(w, "", asked);
}

/* "8 muffins" may be muffins, and "6 rice cakes" no cake: asked, not taken. */
static const char *kind_asked(recipe_writer *w) {
    const word_list all = recipe_kinds();
    const char *category = w->from->category;
    stated_yield said = yield_stated(w->home, &w->from->yields);
    const char *noun = strchr(said.makes, ' ');
    const char *near = noun ? recipe_kind_of(w->home, noun + 1) : NULL;
    if (!near && w->from->title)
        near = recipe_kind_in(w->home, w->from->title);
    return arena_format(w->home, "kind: %s%s%s%s%s%s", near ? near : "",
                        near ? "? Or one of: " : "which of ", joined(w->home, &all, ", "),
                        category ? "? Stated is \"" : "?", category ? category : "",
                        category ? "\"" : "");
}

static void write_kind(recipe_writer *w) {
    const char *kind = w->from->category ? recipe_kind_of(w->home, w->from->category) : NULL;
    add_key(w, "kind", kind);
    if (!kind)
        add_remark(w, "", kind_asked(w));
}

/* Longer than this the reader of recipe files refuses. */
static bool is_sane(double minutes) {
    return minutes <= 7 * 24 * 60;
}

static void write_minutes(recipe_writer *w) {
    const draft_parts *from = w->from;
    bool sane = is_sane(from->prepare_min) && is_sane(from->cook_min);
    double named = from->prepare_min + from->cook_min;
    add_remarks_of(w, "minutes");
    if (named > 0 && sane) {
        text_add(&w->page, "minutes: {");
        if (from->prepare_min > 0) {
            text_add(&w->page, "prepare: ");
            number_add(&w->page, from->prepare_min, 2);
        }
        if (from->cook_min > 0) {
            text_add(&w->page, from->prepare_min > 0 ? ", bake: " : "bake: ");
            number_add(&w->page, from->cook_min, 2);
        }
        text_add(&w->page, "}\n");
    }
    if (!sane)
        add_remark(w, "", "could not read: the times, because one is longer than a week");
    double rest = from->total_min - named;
    if (from->total_min > 0 && (rest >= 1 || rest <= -1))
        add_remark(w, "",
                   arena_format(w->home, "minutes: stated are %s in all%s",
                                number_copy(w->home, from->total_min, 2),
                                named > 0
                                    ? ", not the sum of these; there may be rest and cool too"
                                    : "; share them out: {prepare: , rest: , bake: , cool: }"));
}

static void write_oven(recipe_writer *w) {
    const char *oven = oven_stated(w->home, &w->from->steps);
    if (oven)
        text_format(&w->page, "oven: %s # from the method\n", oven);
}

/* -- ingredients ------------------------------------------------------------------------------- */

static void add_line(recipe_writer *w, const stated_line *line, const char *indent) {
    for (size_t i = 0; i < line->remarks.count; i++)
        add_remark(w, indent, line->remarks.items[i]);
    if (line->sort == STATED_UNREADABLE)
        return;
    text_format(&w->page, "%s- ", indent);
    add_scalar(&w->page, line->words, false);
    text_add_char(&w->page, '\n');
    if (line->sort == STATED_UNKNOWN)
        LIST_ADD(w->home, &w->out->unknown, line->words);
}

static void begin_group(recipe_writer *w, const char *name) {
    text_add(&w->page, "  - group: ");
    add_scalar(&w->page, name, false);
    text_add(&w->page, "\n    lines:\n");
}

/* Lines of a group are indented; an empty group must not be begun. */
static void write_lines(recipe_writer *w) {
    const char *group = NULL, *open = NULL;
    size_t written = 0;
    for (size_t i = 0; i < w->from->ingredients.count; i++) {
        const draft_item *one = &w->from->ingredients.items[i];
        stated_line line = line_stated(w->home, one->words, w->asked->shelf, w->asked->cups);
        if (line.sort == STATED_HEADING) {
            group = line.words;
            continue;
        }
        if (one->under && one->under[0])
            group = one->under;
        bool is_line = line.sort != STATED_UNREADABLE;
        if (is_line && written == RECIPE_LINES_MOST) {
            add_remark(w, "  ",
                       "could not read: the lines from here on, because a recipe has no "
                       "more than this: split it in two");
            return;
        }
        if (is_line && group && !same_key(group, open)) {
            begin_group(w, group);
            open = group;
        }
        add_line(w, &line, open ? "      " : "  ");
        written += is_line;
    }
    if (written == 0)
        text_add(&w->page, "  []\n");
}

static void write_ingredients(recipe_writer *w) {
    add_remarks_of(w, "ingredients");
    if (w->from->ingredients.count == 0)
        add_remark(w, "", "no ingredients are stated");
    text_add(&w->page, "ingredients:\n");
    write_lines(w);
}

/* -- the rest ---------------------------------------------------------------------------------- */

static void write_tags(recipe_writer *w) {
    word_list tags = {0};
    const char *category = w->from->category;
    if (category && recipe_kind_of(w->home, category))
        category = NULL;
    const char *more[] = {category, w->from->cuisine};
    for (size_t i = 0; i < w->from->tags.count; i++)
        LIST_ADD(w->home, &tags, w->from->tags.items[i]);
    for (size_t i = 0; i < COUNT(more); i++)
        if (more[i])
            LIST_ADD(w->home, &tags, more[i]);
    add_list(w, "tags", &tags);
}

static bool is_after(const char *one, const char *other) {
    return one && (!other || strcmp(one, other) >= 0);
}

static void write_people_and_dates(recipe_writer *w) {
    const draft_parts *from = w->from;
    add_remarks_of(w, "date");
    add_key(w, "date", from->date);
    add_remarks_of(w, "changed");
    if (is_after(from->changed, from->date))
        add_key(w, "changed", from->changed);
    if (from->authors.count)
        add_key(w, "author", joined(w->home, &from->authors, ", "));
    for (size_t i = 0; i < from->pictures.count; i++)
        add_comment(w, "", arena_format(w->home, "picture: stated is %s", from->pictures.items[i]));
    if (from->pictures.count)
        add_comment(w, "",
                    "put your own into pictures/ and name it: picture, and picture-text for "
                    "those who can't see it");
}

static void write_what_is_stated(recipe_writer *w) {
    const draft_parts *from = w->from;
    if (from->tools.count)
        add_comment(w, "",
                    arena_format(w->home, "tools stated: %s", joined(w->home, &from->tools, ", ")));
    if (from->figures.count)
        add_comment(w, "", "figures as stated, to compare with what crumbnote macros works out:");
    for (size_t i = 0; i < from->figures.count; i++)
        add_comment(w, "",
                    arena_format(w->home, "  %s: %s", from->figures.items[i].under,
                                 from->figures.items[i].words));
    if (from->left_out.count)
        add_comment(w, "",
                    arena_format(w->home, "left out, as a recipe file has no place for it: %s",
                                 joined(w->home, &from->left_out, ", ")));
}

/* -- the method -------------------------------------------------------------------------------- */

static bool is_word_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

/* CommonMark 0.30, 2.4: a backslash before punctuation makes it plain. */
static void add_markdown(text *t, span s) {
    for (size_t i = 0; i < s.length; i++) {
        char c = s.at[i];
        char next = i + 1 < s.length ? s.at[i + 1] : ' ';
        bool begins_block = i == 0 && strchr("#>-+=~|:", c);
        bool begins_entity = c == '&' && (is_word_byte(next) || next == '#');
        bool begins_tag = c == '<' && (is_word_byte(next) || strchr("/!?", next));
        if (c == '\n') {
            text_add_char(t, ' ');
            continue;
        }
        if (begins_block || begins_entity || begins_tag || strchr("\\*_`[]", c))
            text_add_char(t, '\\');
        text_add_char(t, c);
    }
}

/* "12. Sept" at the front of an item would begin a list in it. */
static void add_item(text *t, const char *words) {
    size_t digits = strspn(words, "0123456789");
    bool numbered = digits && (words[digits] == '.' || words[digits] == ')');
    text_add_span(t, numbered ? span_first(span_of(words), digits) : (span){0});
    text_add(t, numbered ? "\\" : "");
    add_markdown(t, span_from(span_of(words), numbered ? digits : 0));
    text_add_char(t, '\n');
}

static void write_method(recipe_writer *w) {
    const draft_items *steps = &w->from->steps, *notes = &w->from->notes;
    const char *section = NULL;
    for (size_t i = 0; i < steps->count; i++) {
        text_format(&w->page, "%zu. ", i + 1);
        if (steps->items[i].under && !same_key(steps->items[i].under, section)) {
            text_add(&w->page, "**");
            add_markdown(&w->page, span_of(steps->items[i].under));
            text_add(&w->page, ":** ");
        }
        section = steps->items[i].under;
        add_item(&w->page, steps->items[i].words);
    }
    if (notes->count)
        text_add(&w->page, steps->count ? "\n## Notes\n\n" : "## Notes\n\n");
    for (size_t i = 0; i < notes->count; i++) {
        text_add(&w->page, "- ");
        add_item(&w->page, notes->items[i].words);
    }
}

void written_recipe(arena *a, const draft_parts *from, const draft_request *asked,
                    const char *drafted_from, draft *out) {
    recipe_writer w = {a, from, asked, out, TEXT_EMPTY};
    out->title = from->title ? from->title : "A recipe without a name";
    out->slug = words_slug(a, span_of(out->title));
    text_add(&w.page, "---\n");
    write_head(&w, drafted_from);
    write_yield(&w);
    write_kind(&w);
    write_minutes(&w);
    write_oven(&w);
    write_ingredients(&w);
    write_tags(&w);
    write_people_and_dates(&w);
    text_add(&w.page,
             "publish: no # take this line out when it is finished and yours to publish\n");
    write_what_is_stated(&w);
    add_remarks_of(&w, "method");
    if (from->steps.count == 0)
        add_remark(&w, "", "no method is stated");
    text_add(&w.page, "---\n");
    write_method(&w);
    out->recipe = arena_copy(a, text_span(&w.page));
    text_free(&w.page);
}
