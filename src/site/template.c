#include "site/template.h"

#include "base/list.h"
#include "base/names.h"
#include "base/number.h"
#include "site/mustache.h"

/* A template, or a name that some partial tag uses and that may be added later. */
typedef struct entry {
    const char *name;
    const char *file; /* null until it is added */
    span source;
    mustache_nodes nodes;
    struct entry **partials; /* for each node the entry it names, or null */
    enum { NOT_FOLLOWED, BEING_FOLLOWED, FOLLOWED } state; /* by check_end */
} entry;

struct template_set {
    arena *home;
    names by_name;
    struct {
        entry **items;
        size_t count, capacity;
    } all;
};

template_set *template_set_new(arena *home) {
    template_set *set = ARENA_NEW(home, template_set);
    set->home = home;
    set->by_name = names_in(home);
    return set;
}

/* The entry called `name`, made when it is new. */
static entry *entry_of(template_set *set, span name) {
    size_t index;
    if (names_find(&set->by_name, name, &index))
        return set->all.items[index];
    entry *one = ARENA_NEW(set->home, entry);
    one->name = arena_copy(set->home, name);
    names_add(&set->by_name, name, set->all.count, NULL);
    LIST_ADD(set->home, &set->all, one);
    return one;
}

bool template_add(template_set *set, const char *name, const char *file, span bytes,
                  problems *found) {
    entry *one = entry_of(set, span_of(name));
    one->file = file;
    one->source = bytes;
    one->nodes = (mustache_nodes){0};
    if (!mustache_read(set->home, file, bytes, &one->nodes, found)) {
        one->nodes.count = 0;
        return false;
    }
    one->partials = ARENA_ARRAY(set->home, entry *, one->nodes.count + 1);
    for (size_t i = 0; i < one->nodes.count; i++)
        if (one->nodes.items[i].sort == NODE_PARTIAL)
            one->partials[i] = entry_of(set, one->nodes.items[i].bytes);
    return true;
}

bool template_has(const template_set *set, const char *name) {
    size_t index;
    return names_find(&set->by_name, span_of(name), &index) && set->all.items[index]->file;
}

static void check_entry(const entry *one, problems *found) {
    for (size_t i = 0; i < one->nodes.count; i++) {
        const mustache_node *node = &one->nodes.items[i];
        if (node->sort == NODE_PARTIAL && !one->partials[i]->file)
            problem_add(found, mustache_place(one->file, one->source, node->offset),
                        "add it to the theme, or take the tag out", "there is no template \"%.*s\"",
                        SPAN(node->bytes));
    }
}

/* Follows the partials outside of any section, which are always called. */
static void check_end(entry *one, size_t depth, problems *found) {
    one->state = BEING_FOLLOWED;
    for (size_t i = 0; i < one->nodes.count; i++) {
        const mustache_node *node = &one->nodes.items[i];
        if (node->sort == NODE_SECTION || node->sort == NODE_INVERTED) {
            i = node->past - 1;
            continue;
        }
        entry *next = node->sort == NODE_PARTIAL ? one->partials[i] : NULL;
        if (next && (next->state == BEING_FOLLOWED || depth == TEMPLATE_DEPTH_MOST))
            problem_add(found, mustache_place(one->file, one->source, node->offset),
                        "put it inside a section that some day is left out",
                        "the template \"%.*s\" calls itself without end", SPAN(node->bytes));
        else if (next && next->state == NOT_FOLLOWED)
            check_end(next, depth + 1, found);
    }
    one->state = FOLLOWED;
}

void template_check(const template_set *set, problems *found) {
    for (size_t i = 0; i < set->all.count; i++)
        check_entry(set->all.items[i], found);
    for (size_t i = 0; i < set->all.count; i++)
        if (set->all.items[i]->state == NOT_FOLLOWED)
            check_end(set->all.items[i], 0, found);
}

/* True when `node` asks for something inside the object that is not there. */
static bool asks_in_vain(const mustache_node *node, const template_names *known) {
    return node->part_count > 1 && node->sort != NODE_PARTIAL &&
           span_is((span){node->parts[0].bytes, node->parts[0].length}, known->name) &&
           !view_get(known->of, node->parts[1]);
}

void template_check_names(const template_set *set, const template_names *known, problems *found) {
    for (size_t i = 0; i < set->all.count; i++) {
        const entry *one = set->all.items[i];
        for (size_t n = 0; n < one->nodes.count; n++) {
            const mustache_node *node = &one->nodes.items[n];
            if (asks_in_vain(node, known))
                problem_add(found, mustache_place(one->file, one->source, node->offset),
                            arena_format(found->home, "add it to %s", known->file),
                            "there is no word \"%.*s\"",
                            SPAN(((span){node->parts[1].bytes, node->parts[1].length})));
        }
    }
}

/* -- filling ---------------------------------------------------------------------------------- */

typedef struct {
    const view *stack[TEMPLATE_DEPTH_MOST + 1]; /* the context; the page first */
    size_t height;
    size_t partials; /* how many are open */
    size_t deep;     /* how many were opened below TEMPLATE_DEEP */
    size_t steps;    /* nodes worked on */
    bool endless;    /* a limit was met, and nothing more is added */
    text indents;    /* of the partials open now, end to end */
    size_t indent_from;
    text *out;
} filler;

static span indent_of(const filler *f) {
    return span_from(text_span(&f->indents), f->indent_from);
}

/* Each line that begins in `bytes` gets the indentation, but for empty lines. */
static void add_indented(filler *f, const mustache_node *node) {
    span rest = node->bytes, indent = indent_of(f);
    bool starts_line = node->starts_line;
    do {
        size_t length = span_find(rest, "\n");
        if (starts_line && (rest.length == 0 || length > 0))
            text_add_span(f->out, indent);
        span line = span_first(rest, length + 1);
        text_add_span(f->out, line);
        rest = span_from(rest, line.length);
        starts_line = true;
    } while (rest.length);
}

static void add_text(filler *f, const mustache_node *node) {
    if (f->indents.length > f->indent_from)
        add_indented(f, node);
    else
        text_add_span(f->out, node->bytes);
}

/* What a name stands for: its first part in the nearest context that has it, the others inside
 * what was found. Null when some part is missing. */
static const view *look_up(const filler *f, const mustache_node *node) {
    if (node->part_count == 0)
        return f->stack[f->height - 1];
    const view *hit = NULL;
    const view_key *name = &node->parts[0];
    uint64_t bit = view_key_bit(name); /* contexts are many, and most do not have it */
    for (size_t i = f->height; i > 0 && !hit; i--)
        if (f->stack[i - 1]->marks & bit)
            hit = view_find(f->stack[i - 1], name);
    for (size_t i = 1; i < node->part_count && hit; i++)
        hit = view_get(hit, node->parts[i]);
    return hit;
}

static void add_value(filler *f, const mustache_node *node) {
    const view *value = look_up(f, node);
    if (!value)
        return;
    if (value->sort == VIEW_TEXT && node->sort == NODE_VALUE)
        text_add_html(f->out, value->bytes);
    else if (value->sort == VIEW_TEXT)
        text_add_span(f->out, value->bytes);
    else if (value->sort == VIEW_NUMBER)
        number_add(f->out, value->number, value->decimals);
    else if (value->sort == VIEW_TRUE || value->sort == VIEW_FALSE)
        text_add(f->out, value->sort == VIEW_TRUE ? "true" : "false");
}

/* Nothing, false, 0, the empty text and the empty list leave a section out. */
static bool is_falsy(const view *value) {
    if (!value)
        return true;
    switch (value->sort) {
    case VIEW_NULL:
    case VIEW_FALSE:
        return true;
    case VIEW_NUMBER:
        return value->number == 0;
    case VIEW_TEXT:
        return value->bytes.length == 0;
    case VIEW_LIST:
        return value->first == NULL;
    case VIEW_TRUE:
    case VIEW_OBJECT:
        return false;
    }
    return true;
}

static void fill_nodes(filler *f, const entry *one, size_t from, size_t to);

static void fill_with(filler *f, const entry *one, size_t section, const view *context) {
    f->endless = f->endless || f->height == COUNT(f->stack);
    if (f->endless)
        return;
    f->stack[f->height++] = context;
    fill_nodes(f, one, section + 1, one->nodes.items[section].past);
    f->height--;
}

static void fill_section(filler *f, const entry *one, size_t section) {
    const view *value = look_up(f, &one->nodes.items[section]);
    if (is_falsy(value))
        return;
    if (value->sort != VIEW_LIST) {
        fill_with(f, one, section, value);
        return;
    }
    for (const view *child = value->first; child; child = child->next)
        fill_with(f, one, section, child);
}

static void fill_inverted(filler *f, const entry *one, size_t section) {
    const mustache_node *node = &one->nodes.items[section];
    if (is_falsy(look_up(f, node)))
        fill_nodes(f, one, section + 1, node->past);
}

/* A partial alone on its line is indented as its tag is; any other starts without. */
static void fill_partial(filler *f, const entry *one, size_t index) {
    const mustache_node *node = &one->nodes.items[index];
    const entry *partial = one->partials[index];
    f->deep += f->partials >= TEMPLATE_DEEP;
    f->endless = f->partials == TEMPLATE_DEPTH_MOST || f->deep > TEMPLATE_DEEP_MOST;
    if (f->endless)
        return;
    size_t from = f->indent_from, length = f->indents.length;
    if (!node->stands_alone)
        f->indent_from = length;
    text_add_span(&f->indents, node->indent);
    f->partials++;
    fill_nodes(f, partial, 0, partial->nodes.count);
    f->partials--;
    text_cut(&f->indents, length);
    f->indent_from = from;
}

static void fill_nodes(filler *f, const entry *one, size_t from, size_t to) {
    for (size_t i = from; i < to && !f->endless; i++) {
        const mustache_node *node = &one->nodes.items[i];
        f->steps++;
        f->endless = f->steps > TEMPLATE_STEPS_MOST || f->out->length > TEMPLATE_BYTES_MOST;
        switch (node->sort) {
        case NODE_TEXT:
            add_text(f, node);
            break;
        case NODE_VALUE:
        case NODE_RAW:
            add_value(f, node);
            break;
        case NODE_PARTIAL:
            fill_partial(f, one, i);
            break;
        case NODE_SECTION:
            fill_section(f, one, i);
            i = node->past - 1;
            break;
        case NODE_INVERTED:
            fill_inverted(f, one, i);
            i = node->past - 1;
            break;
        }
    }
}

bool template_fill(const template_set *set, const char *name, const view *page, text *out) {
    size_t index;
    if (!template_has(set, name) || !names_find(&set->by_name, span_of(name), &index))
        return false;
    arena *a = arena_new();
    view indexed = *page; /* what a note lacks is looked for in the page, which has many keys */
    view_index_children(a, &indexed);
    filler f = {.stack = {&indexed}, .height = 1, .indents = TEXT_EMPTY, .out = out};
    const entry *one = set->all.items[index];
    fill_nodes(&f, one, 0, one->nodes.count);
    text_free(&f.indents);
    arena_free(a);
    return !f.endless;
}
