#include "swap/evidence.h"

#include "base/names.h"
#include "swap/recipe_build.h"

/* A trial with the two sides as numbers: ingredients like each other have the same. */
typedef struct {
    size_t from, to;
    const trial *bake;
} filed_trial;

struct evidence_index {
    const size_t *alike; /* the number of each ingredient, by its place in the pantry */
    filed_trial *items;  /* by from, to, recipe, the latest first */
    size_t count;
};

/* -- what is like what ----------------------------------------------------------------------- */

/* Words at the end of a kind that change little of what it does in a bake. A hydrolysate is left
 * out on purpose: its protein no longer sets. */
static const char *const closing[] = {" isolate", " concentrate", " salted"};

static span kind_stem(const ingredient *what) {
    span kind = span_of(what->kind);
    for (size_t i = 0; i < COUNT(closing); i++)
        if (span_ends(kind, closing[i]))
            return span_first(kind, kind.length - strlen(closing[i]));
    return kind;
}

bool ingredients_alike(const ingredient *one, const ingredient *other) {
    if (one == other)
        return true;
    span kind = kind_stem(one);
    return one->in == other->in && kind.length && span_equal(kind, kind_stem(other));
}

bool verdicts_contradict(verdict one, verdict other) {
    int steps = (int)one - (int)other;
    return one != VERDICT_UNTRIED && other != VERDICT_UNTRIED && (steps >= 2 || steps <= -2);
}

/* Each ingredient's number: that of the first one like it. */
static const size_t *number_alike(arena *a, const pantry *shelf) {
    size_t *alike = ARENA_ARRAY(a, size_t, shelf->count + 1);
    names stems = names_in(a);
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *what = shelf->items[i];
        span stem = kind_stem(what);
        size_t first;
        alike[i] = i;
        if (stem.length &&
            !names_add(&stems, span_of(arena_format(a, "%d %.*s", (int)what->in, SPAN(stem))), i,
                       &first))
            alike[i] = first;
    }
    return alike;
}

/* -- filing ---------------------------------------------------------------------------------- */

static int compare_sizes(size_t a, size_t b) {
    return (a > b) - (a < b);
}

static int compare_filed(const void *left, const void *right) {
    const filed_trial *a = left, *b = right;
    int order = compare_sizes(a->from, b->from);
    if (!order)
        order = compare_sizes(a->to, b->to);
    return order ? order : trial_compare(a->bake, b->bake);
}

void evidence_file(arena *a, rule_book *book) {
    struct evidence_index *index = ARENA_NEW(a, struct evidence_index);
    index->alike = number_alike(a, book->shelf);
    index->items = ARENA_ARRAY(a, filed_trial, book->log.count + 1);
    for (size_t i = 0; i < book->log.count; i++) {
        const trial *bake = &book->log.items[i];
        if (bake->replaced.what && bake->with.what)
            index->items[index->count++] =
                (filed_trial){index->alike[pantry_index(book->shelf, bake->replaced.what)],
                              index->alike[pantry_index(book->shelf, bake->with.what)], bake};
    }
    qsort(index->items, index->count, sizeof *index->items, compare_filed);
    book->evidence = index;
}

/* -- asking ---------------------------------------------------------------------------------- */

/* The first trial of the pair or past it. */
static size_t first_of_pair(const struct evidence_index *index, size_t from, size_t to) {
    size_t low = 0, high = index->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        const filed_trial *at = &index->items[middle];
        if (at->from < from || (at->from == from && at->to < to))
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static bool same_recipe(const trial *one, const trial *other) {
    return strcmp(one->recipe, other->recipe) == 0;
}

static bool is_of(const trial *bake, const recipe_facts *about) {
    return about->of->slug && strcmp(bake->recipe, about->of->slug) == 0;
}

static void add_item(arena *a, evidence *sum, const trial *bake, bool counts, verdict says) {
    bool agrees = bake->outcome == says;
    LIST_ADD(a, sum, (evidence_item){bake, counts, agrees});
    sum->recipes += counts;
    sum->agree += counts && agrees;
    sum->contradict += counts && verdicts_contradict(bake->outcome, says);
}

/* True when a bake of a like pair counts for what `about` is of, whose build is `here`. */
static bool speaks_here(const trial *bake, const recipe_facts *about, const recipe_build *here) {
    return is_of(bake, about) || (bake->build && builds_alike(here, bake->build));
}

evidence evidence_of(arena *a, const rule_book *book, const recipe_facts *about,
                     const decided *said) {
    evidence sum = {0};
    const struct evidence_index *index = book->evidence;
    const ingredient *old = about->of->lines.items[said->first].what;
    size_t from = index->alike[pantry_index(book->shelf, old)];
    size_t to = index->alike[pantry_index(book->shelf, said->to)];
    recipe_build here = build_of(about);
    for (size_t i = first_of_pair(index, from, to); i < index->count; i++) {
        const filed_trial *at = &index->items[i];
        if (at->from != from || at->to != to)
            break;
        if (at->bake == said->by.bake || !speaks_here(at->bake, about, &here))
            continue;
        bool later_seen = sum.count && same_recipe(sum.items[sum.count - 1].bake, at->bake);
        /* the deciding trial speaks for this recipe */
        bool decided_here = said->by.bake && is_of(at->bake, about);
        add_item(a, &sum, at->bake, !later_seen && !decided_here, decision_says(said->by));
    }
    return sum;
}

static bool holds(const tried_list *list, const ingredient *what) {
    for (size_t i = 0; i < list->count; i++)
        if (list->items[i] == what)
            return true;
    return false;
}

tried_list evidence_tried(arena *a, const rule_book *book, const recipe_facts *about,
                          const ingredient *from) {
    tried_list tried = {0};
    const struct evidence_index *index = book->evidence;
    size_t old = index->alike[pantry_index(book->shelf, from)];
    recipe_build here = build_of(about);
    for (size_t i = first_of_pair(index, old, 0); i < index->count; i++) {
        const filed_trial *at = &index->items[i];
        if (at->from != old)
            break;
        if (speaks_here(at->bake, about, &here) && !holds(&tried, at->bake->with.what))
            LIST_ADD(a, &tried, at->bake->with.what);
    }
    return tried;
}
