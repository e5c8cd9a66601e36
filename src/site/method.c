#include "site/method.h"

#include "base/number.h"
#include "measure/kitchen.h"
#include "measure/step_time.h"
#include "site/markdown_tree.h"
#include "site/say.h"

#include <math.h>
#include <stdint.h>

/* Nearer than this, an amount is what it was. */
#define SAME_TIMES 1e-6

/* "A drop of water" stays a drop. */
#define NOTICED_G 0.5

/* -- nodes ------------------------------------------------------------------------------------- */

/* The words of one text node, being taken apart: what is made of them goes before it. */
typedef struct {
    arena *a;
    const method_words *by;
    cmark_node *before;
    span words;
    size_t done; /* bytes of `words` that are put already */
} marking;

static cmark_node *text_node(span words) {
    cmark_node *node = markdown_node(CMARK_NODE_TEXT);
    text t = TEXT_EMPTY;
    text_add_span(&t, words);
    cmark_node_set_literal(node, t.bytes);
    text_free(&t);
    return node;
}

static void put_words(marking *m, span words) {
    if (words.length)
        cmark_node_insert_before(m->before, text_node(words));
}

static void put_element(marking *m, const char *enter, span words, const char *exit) {
    cmark_node *element = markdown_node(CMARK_NODE_CUSTOM_INLINE);
    cmark_node_set_on_enter(element, enter);
    cmark_node_set_on_exit(element, exit);
    cmark_node_append_child(element, text_node(words));
    cmark_node_insert_before(m->before, element);
}

/* Puts what stands before byte `at`. */
static void put_up_to(marking *m, size_t at) {
    put_words(m, span_first(span_from(m->words, m->done), at - m->done));
    m->done = at;
}

/* Puts the rest, and takes away the node that the words were in. */
static void put_rest(marking *m) {
    if (m->done == 0)
        return;
    put_up_to(m, m->words.length);
    cmark_node_unlink(m->before);
    cmark_node_free(m->before);
}

static const char *word_called(const marking *m, const char *key) {
    const view *word = m->by->words ? view_get(m->by->words, view_key_named(key)) : NULL;
    return word && word->sort == VIEW_TEXT ? arena_copy(m->a, word->bytes) : key;
}

/* -- amounts ----------------------------------------------------------------------------------- */

static const line_change *change_of(const marking *m, int line) {
    static const line_change none = {.times = 1};
    return m->by->changes && line != MENTION_NO_LINE ? &m->by->changes[line] : &none;
}

static const ingredient *now_of(const marking *m, const mention *of) {
    const line_change *change = change_of(m, of->line);
    return change->now ? change->now : of->what;
}

/* In the kind of unit that the step has, where the ingredient can be measured so. */
static const char *amount_now(const marking *m, const mention *of, double grams) {
    kitchen_measure measured;
    bool weighed = of->in && of->in->sort == UNIT_MASS;
    if (!weighed && kitchen_measure_of(m->a, now_of(m, of), grams, m->by->called->cups, &measured))
        return say_measure(m->a, m->by->in, &measured);
    return say_weight(m->a, m->by->in, grams);
}

static bool same_amount(const marking *m, int line) {
    return fabs(change_of(m, line)->times - 1) < SAME_TIMES;
}

static void put_amount(marking *m, const mention *of) {
    const line_change *change = change_of(m, of->line);
    size_t line = m->by->changes ? change->line : (size_t)of->line;
    span words = span_first(span_from(m->words, of->amount_at), of->amount_length);
    if (!of->changeable || of->grams <= 0 || line == SIZE_MAX)
        return;
    put_up_to(m, of->amount_at);
    double grams = of->grams * change->times;
    if (!same_amount(m, of->line))
        words = span_of(amount_now(m, of, grams));
    put_element(m,
                arena_format(m->a, "<data value=\"%s\" data-line=\"%zu\">",
                             number_copy(m->a, grams, 2), line),
                words, "</data>");
    m->done = of->amount_at + of->amount_length;
}

/* -- names ------------------------------------------------------------------------------------- */

static void put_aside(marking *m, const char *words) {
    put_words(m, span_of(" "));
    put_element(m, "<span class=\"aside\">", span_of(words), "</span>");
}

/* A word that is less than the name stays, since it may mean a part of it, "whites (now egg
 * substitute)"; and so does one behind an article, which may not fit another: "an oat flour". */
static bool name_stays(const marking *m, const mention *of) {
    span before = span_first(m->words, of->name_at);
    return of->loose || span_ends(before, " a ") || span_ends(before, " an ");
}

/* "brown rice protein (was pea protein powder)". */
static void put_other_name(marking *m, const mention *of, span name, const ingredient *now) {
    if (name_stays(m, of)) {
        put_words(m, name);
        put_aside(m, arena_format(m->a, "(%s %s)", word_called(m, "now"), now->name));
        return;
    }
    put_element(m, "<ins>", span_of(now->name), "</ins>");
    put_aside(m, arena_format(m->a, "(%s %.*s)", word_called(m, "was"), SPAN(name)));
}

/* An amount that can't be changed where it stands: "half a cup of the milk (now 107 g)". */
static void put_amount_aside(marking *m, const mention *of) {
    double grams = of->grams * change_of(m, of->line)->times;
    if (of->changeable || !of->amount_length || fabs(grams - of->grams) < NOTICED_G)
        return;
    put_aside(m, arena_format(m->a, "(%s %s)", word_called(m, "now"),
                              say_weight(m->a, m->by->in, grams)));
}

static void put_changed_name(marking *m, const mention *of, span name) {
    const line_change *change = change_of(m, of->line);
    if (change->now) {
        put_other_name(m, of, name, change->now);
    } else if (change->line == SIZE_MAX) {
        put_words(m, name);
        put_aside(m, arena_format(m->a, "(%s)", word_called(m, "left_out")));
    } else {
        put_words(m, name);
    }
    put_amount_aside(m, of);
    if (change->joined) {
        put_words(m, span_of(" "));
        put_element(
            m, "<ins>",
            span_of(arena_format(m->a, "%s %s", word_called(m, "and"), change->joined->name)),
            "</ins>");
    }
}

static void put_name(marking *m, const mention *of) {
    span name = span_first(span_from(m->words, of->name_at), of->name_length);
    put_up_to(m, of->name_at);
    if (m->by->changes)
        put_changed_name(m, of, name);
    else
        put_element(m,
                    arena_format(m->a, "<span data-line=\"%d\"%s>", of->line,
                                 name_stays(m, of) ? " data-loose" : ""),
                    name, "</span>");
    m->done = of->name_at + of->name_length;
}

/* -- the body ---------------------------------------------------------------------------------- */

static bool is_linked(cmark_node *node) {
    for (; node; node = cmark_node_parent(node))
        if (cmark_node_get_type(node) == CMARK_NODE_LINK ||
            cmark_node_get_type(node) == CMARK_NODE_IMAGE)
            return true;
    return false;
}

/* What `words`, the next piece, mention. */
static mentions next_mentions(arena *a, const method_words *by, span words, mentions_list *said) {
    mentions all = by->as_written && said->count < by->as_written->said.count
                       ? by->as_written->said.items[said->count]
                       : mentions_in(a, by->called, words);
    LIST_ADD(a, said, all);
    return all;
}

static bool begins_paragraph(cmark_node *node) {
    while (!cmark_node_previous(node) && cmark_node_get_type(node) != CMARK_NODE_PARAGRAPH)
        node = cmark_node_parent(node);
    return cmark_node_get_type(node) == CMARK_NODE_PARAGRAPH;
}

static bool begins_sentence(const marking *m, size_t at) {
    while (at > 0 && m->words.at[at - 1] == ' ')
        at--;
    return at > 0 ? strchr(".!?:;", m->words.at[at - 1]) != NULL : begins_paragraph(m->before);
}

/* "the whey goes", "casein stiffens": a word that ends as a verb of one thing does follows. */
static bool does_something(const marking *m, size_t end) {
    enum { SHORTEST_VERB = 4 };
    span rest = span_from(m->words, end), word;
    if (!span_begins(rest, " "))
        return false;
    word = span_next_word(&rest);
    while (word.length > 0 && strchr(".,;:!?)", word.at[word.length - 1]))
        word.length--;
    return word.length >= SHORTEST_VERB && span_ends(word, "s") && !span_ends(word, "ss") &&
           !span_is(word, "plus");
}

/* "Almond meal clumps" is said of almond meal, whatever stands in its place: steps begin with what
 * is to be done, and what they do a thing to does nothing itself. */
static bool is_said_of_it(const marking *m, const mention *of) {
    return of->amount_length == 0 &&
           (begins_sentence(m, of->at) || does_something(m, of->name_at + of->name_length));
}

static void put_mention(marking *m, const mention *of) {
    if (is_said_of_it(m, of))
        return;
    if (of->amount_length && of->amount_at < of->name_at)
        put_amount(m, of);
    put_name(m, of);
}

static span words_in(arena *a, cmark_node *node) {
    return arena_copy_span(a, span_of(cmark_node_get_literal(node)));
}

static void mark_text(arena *a, const method_words *by, cmark_node *node, mentions_list *said) {
    span words = words_in(a, node);
    mentions all = next_mentions(a, by, words, said);
    marking m = {a, by, node, words, 0};
    for (size_t i = 0; i < all.count; i++) {
        const mention *of = &all.items[i];
        if (of->line != MENTION_NO_LINE && of->name_length > 0)
            put_mention(&m, of);
    }
    put_rest(&m);
}

static void mark_times(arena *a, cmark_node *node) {
    marking m = {a, NULL, node, words_in(a, node), 0};
    step_time found;
    while (step_time_next(m.words, m.done, &found)) {
        put_up_to(&m, found.at);
        put_element(&m, arena_format(a, "<time datetime=\"PT%luS\">", (unsigned long)found.seconds),
                    span_first(span_from(m.words, found.at), found.length), "</time>");
        m.done = found.at + found.length;
    }
    put_rest(&m);
}

typedef struct {
    cmark_node **items;
    size_t count, capacity;
} node_list;

static node_list texts_in(arena *a, cmark_node *list) {
    node_list texts = {0};
    cmark_iter *walk = cmark_iter_new(list);
    while (cmark_iter_next(walk) != CMARK_EVENT_DONE) {
        cmark_node *at = cmark_iter_get_node(walk);
        if (cmark_node_get_type(at) == CMARK_NODE_TEXT && !is_linked(at))
            LIST_ADD(a, &texts, at);
    }
    cmark_iter_free(walk);
    return texts;
}

static void mark_list(arena *a, const method_words *by, cmark_node *list, mentions_list *said) {
    node_list texts = texts_in(a, list);
    for (size_t i = 0; i < texts.count; i++)
        mark_text(a, by, texts.items[i], said);
    texts = texts_in(a, list);
    for (size_t i = 0; i < texts.count; i++)
        mark_times(a, texts.items[i]);
}

/* Marks the numbered lists; returns the last of them, or null. */
static cmark_node *mark_lists(arena *a, const method_words *by, cmark_node *document,
                              mentions_list *said) {
    cmark_node *last = NULL;
    for (cmark_node *n = cmark_node_first_child(document); n; n = cmark_node_next(n)) {
        if (!markdown_is_numbered(n))
            continue;
        mark_list(a, by, n, said);
        last = n;
    }
    return last;
}

static const char *html_of(arena *a, cmark_node *document) {
    text html = TEXT_EMPTY;
    markdown_write(document, &html);
    const char *copy = arena_copy(a, text_span(&html));
    text_free(&html);
    return copy;
}

/* Takes what follows `last` out of its document. */
static const char *notes_html(arena *a, cmark_node *last) {
    cmark_node *rest = markdown_node(CMARK_NODE_DOCUMENT);
    while (last && cmark_node_next(last)) {
        cmark_node *next = cmark_node_next(last);
        cmark_node_unlink(next);
        cmark_node_append_child(rest, next);
    }
    const char *html = html_of(a, rest);
    cmark_node_free(rest);
    return html;
}

static void add_step(arena *a, cmark_node *of, word_list *steps) {
    text words = TEXT_EMPTY;
    markdown_plain(of, &words);
    if (words.length)
        LIST_ADD(a, steps, arena_copy(a, text_span(&words)));
    text_free(&words);
}

static void add_items(arena *a, cmark_node *list, word_list *steps) {
    for (cmark_node *n = cmark_node_first_child(list); n; n = cmark_node_next(n))
        add_step(a, n, steps);
}

/* A method without a numbered list: its paragraphs and lists up to the next heading. */
static void add_paragraphs(arena *a, cmark_node *document, word_list *steps) {
    for (cmark_node *n = cmark_node_first_child(document); n; n = cmark_node_next(n)) {
        cmark_node_type type = cmark_node_get_type(n);
        if (type == CMARK_NODE_HEADING && steps->count)
            return;
        if (type == CMARK_NODE_PARAGRAPH)
            add_step(a, n, steps);
        else if (type == CMARK_NODE_LIST)
            add_items(a, n, steps);
    }
}

static void read_steps(arena *a, cmark_node *document, method *out) {
    word_list steps = {0};
    cmark_node *list = cmark_node_first_child(document);
    while (list && !markdown_is_numbered(list))
        list = cmark_node_next(list);
    if (list)
        add_items(a, list, &steps);
    else
        add_paragraphs(a, document, &steps);
    out->steps = steps.items;
    out->step_count = steps.count;
}

method method_of(arena *a, const method_words *by, span body) {
    method out = {0};
    cmark_node *document = markdown_read(body);
    cmark_consolidate_text_nodes(document);
    cmark_node *last = mark_lists(a, by, document, &out.said);
    markdown_show_pictures(document, by->pictures);
    if (by->up[0])
        markdown_lead_up(document, by->up);
    read_steps(a, document, &out);
    out.notes_html = notes_html(a, last);
    out.steps_html = html_of(a, document);
    cmark_node_free(document);
    return out;
}
