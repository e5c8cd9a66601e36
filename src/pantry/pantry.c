#include "pantry/pantry.h"

#include "base/words.h"

pantry pantry_in(arena *home) {
    return (pantry){.home = home, .by_name = names_in(home), .by_form = names_in(home)};
}

/* -- plural and singular ----------------------------------------------------------------------- */

typedef struct {
    const char *ending;
    size_t cut; /* bytes taken off the end */
    const char *add;
} ending_rule;

/* The first row that fits counts. English grammar; the words at the top are its exceptions. */
static const ending_rule plural_rules[] = {
    {"tomato", 0, "es"}, {"potato", 0, "es"}, {"leaf", 1, "ves"}, {"loaf", 1, "ves"},
    {"half", 1, "ves"},  {"ay", 0, "s"},      {"ey", 0, "s"},     {"oy", 0, "s"},
    {"uy", 0, "s"},      {"y", 1, "ies"},     {"ss", 0, "es"},    {"s", 0, ""},
    {"x", 0, "es"},      {"z", 0, "es"},      {"ch", 0, "es"},    {"sh", 0, "es"},
    {"", 0, "s"}};

/* Every row that fits gives a form: a wrong one ("cooky" of "cookies") is never asked for. */
static const ending_rule singular_rules[] = {
    {"ies", 3, "y"}, {"ves", 3, "f"}, {"es", 2, ""}, {"s", 1, ""}};

static const char *with_ending(arena *a, span name, const ending_rule *by) {
    return arena_format(a, "%.*s%s", SPAN(span_first(name, name.length - by->cut)), by->add);
}

const char *pantry_plural(arena *home, const char *name) {
    span written = span_of(name);
    const ending_rule *by = plural_rules;
    while (!span_ends(written, by->ending))
        by++;
    return with_ending(home, written, by);
}

/* -- adding ------------------------------------------------------------------------------------ */

static size_t words_in(span folded) {
    size_t count = folded.length > 0;
    for (size_t i = 0; i < folded.length; i++)
        count += folded.at[i] == ' ';
    return count;
}

static void note_length(pantry *shelf, span folded) {
    size_t count = words_in(folded);
    if (count > shelf->longest_words)
        shelf->longest_words = count;
}

static void add_form(pantry *shelf, const char *form, size_t index) {
    span folded = words_fold(shelf->home, span_of(form));
    note_length(shelf, folded);
    (void)names_add(&shelf->by_form, folded, index, NULL);
}

/* The other number of `name`: whichever of the two it is written in. */
static void add_forms(pantry *shelf, const char *name, size_t index) {
    span written = span_of(name);
    add_form(shelf, pantry_plural(shelf->home, name), index);
    for (size_t i = 0; i < COUNT(singular_rules); i++)
        if (written.length > 3 && span_ends(written, singular_rules[i].ending))
            add_form(shelf, with_ending(shelf->home, written, &singular_rules[i]), index);
}

/* A stated name of the entry at `index`, with its other number. */
static void add_name(pantry *shelf, const char *name, size_t index, problems *found) {
    const ingredient *entry = shelf->items[index];
    span folded = words_fold(shelf->home, span_of(name));
    size_t earlier = index;
    note_length(shelf, folded);
    if (!names_add(&shelf->by_name, folded, index, &earlier) && earlier != index)
        problem_add(
            found, entry->at, "a name leads to one ingredient: take it out of one of the two",
            "\"%s\" of %s is already a name of %s", name, entry->name, shelf->items[earlier]->name);
    else
        add_forms(shelf, name, index);
}

/* True when `entry`, called `folded`, may stand in the place of `old`. */
static bool overrides(pantry *shelf, const ingredient *entry, span folded, const ingredient *old) {
    return entry->hers && !old->hers &&
           span_equal(folded, words_fold(shelf->home, span_of(old->name)));
}

/* Where `entry` was put; false, with a problem, when its name is taken or none. */
static bool place_entry(pantry *shelf, const ingredient *entry, size_t *index, problems *found) {
    span folded = words_fold(shelf->home, span_of(entry->name));
    ingredient *old = NULL;
    if (folded.length == 0) {
        problem_add(found, entry->at, "write `name: oat flour`", "an ingredient needs a name");
        return false;
    }
    if (!names_find(&shelf->by_name, folded, index)) {
        *index = shelf->count;
        LIST_ADD(shelf->home, shelf, ARENA_NEW(shelf->home, ingredient));
    } else if (!overrides(shelf, entry, folded, shelf->items[*index])) {
        problem_add(found, entry->at, "give it another name",
                    "the ingredient \"%s\" is there already: it is a name of %s", entry->name,
                    shelf->items[*index]->name);
        return false;
    } else {
        old = ARENA_NEW(shelf->home, ingredient);
        *old = *shelf->items[*index];
    }
    *shelf->items[*index] = *entry;
    shelf->items[*index]->replaces = old;
    return true;
}

void pantry_add(pantry *shelf, const ingredient *entry, problems *found) {
    size_t index;
    if (!place_entry(shelf, entry, &index, found))
        return;
    ingredient *kept = shelf->items[index];
    kept->index = index;
    kept->slug = words_slug(shelf->home, span_of(kept->name));
    add_name(shelf, kept->name, index, found);
    if (kept->plural)
        add_name(shelf, kept->plural, index, found);
    else
        kept->plural = pantry_plural(shelf->home, kept->name);
    for (size_t i = 0; i < kept->also_count; i++)
        add_name(shelf, kept->also[i], index, found);
}

void pantry_need_water(pantry *shelf, problems *found) {
    static const ingredient plain = {
        .name = "water",
        .plural = "water",
        .kind = "water",
        .in = FAMILY_LIQUID,
        .from = ORIGIN_MINERAL,
        .per_100_g = {.of = {[NUTRIENT_WATER] = 100}, .known = (1u << NUTRIENT_COUNT) - 1u}};
    if (pantry_find_folded(shelf, span_of("water")))
        return;
    for (size_t i = 0; i < shelf->count; i++)
        if (ingredient_is_water(shelf->items[i])) {
            add_name(shelf, "water", i, found);
            return;
        }
    pantry_add(shelf, &plain, found);
}

/* -- finding ----------------------------------------------------------------------------------- */

const ingredient *pantry_find_folded(const pantry *shelf, span folded) {
    size_t index;
    if (names_find(&shelf->by_name, folded, &index) || names_find(&shelf->by_form, folded, &index))
        return shelf->items[index];
    return NULL;
}

const ingredient *pantry_find(const pantry *shelf, span name, arena *scratch) {
    return pantry_find_folded(shelf, words_fold(scratch, name));
}

/* A run of words in a folded line, and the ingredient it names. */
typedef struct {
    const ingredient *what; /* null: none found */
    size_t start, end;      /* bytes */
    size_t words;
} name_run;

static size_t word_end(span folded, size_t from) {
    while (from < folded.length && folded.at[from] != ' ')
        from++;
    return from;
}

/* The longest name that starts at byte `start`. */
static name_run run_from(const pantry *shelf, span folded, size_t start) {
    name_run best = {NULL, start, start, 0};
    size_t end = start;
    for (size_t count = 1; count <= shelf->longest_words && end < folded.length; count++) {
        end = word_end(folded, count == 1 ? start : end + 1);
        span words = {folded.at + start, end - start};
        const ingredient *what = pantry_find_folded(shelf, words);
        if (what)
            best = (name_run){what, start, end, count};
    }
    return best;
}

static const char *const joining_words[] = {"for",  "with", "without", "or",   "and", "plus",
                                            "from", "to",   "in",      "into", "as",  "on"};

static bool is_joining(span word) {
    for (size_t i = 0; i < COUNT(joining_words); i++)
        if (span_is(word, joining_words[i]))
            return true;
    return false;
}

const ingredient *pantry_find_longest(const pantry *shelf, span folded, span *before, span *after) {
    name_run best = {NULL, 0, 0, 0};
    for (size_t start = 0; start < folded.length;) {
        size_t end = word_end(folded, start);
        if (best.what && is_joining((span){folded.at + start, end - start}))
            break;
        name_run here = run_from(shelf, folded, start);
        if (here.words > best.words)
            best = here;
        start = end + 1;
    }
    *before = span_trim(span_first(folded, best.start));
    *after = span_trim(span_from(folded, best.end));
    return best.what;
}

/* -- hints ------------------------------------------------------------------------------------- */

typedef struct {
    const char **items;
    size_t count, capacity;
} name_list;

static name_list all_names(const pantry *shelf, arena *scratch) {
    name_list all = {0};
    for (size_t i = 0; i < shelf->count; i++) {
        const ingredient *entry = shelf->items[i];
        LIST_ADD(scratch, &all, entry->name);
        for (size_t k = 0; k < entry->also_count; k++)
            LIST_ADD(scratch, &all, entry->also[k]);
    }
    return all;
}

/* The first name that begins with all of `folded`: "lemon juice" for "lemon". */
static const char *begun_by(const name_list *all, span folded, arena *scratch) {
    const char *start = arena_format(scratch, "%.*s ", SPAN(folded));
    for (size_t i = 0; i < all->count; i++)
        if (span_begins(span_of(all->items[i]), start))
            return all->items[i];
    return NULL;
}

const char *pantry_nearest(const pantry *shelf, span name, arena *scratch) {
    enum { WORDS_TRIED = 6, SHORT_WORD = 4 };
    name_list all = all_names(shelf, scratch);
    span rest = words_fold(scratch, name);
    const char *begun = rest.length ? begun_by(&all, rest, scratch) : NULL;
    if (begun && rest.length <= SHORT_WORD) /* "pea" is no pear, but the half of a name */
        return begun;
    for (size_t tried = 0; rest.length && tried < WORDS_TRIED; tried++) {
        const char *near = words_nearest(rest, all.items, all.count);
        if (near)
            return near;
        rest = span_from(rest, word_end(rest, 0) + 1);
    }
    return begun;
}

/* A short name has near neighbours that are other foods ("hot milk" is no oat milk), so it may be
 * one letter off, a longer one two; the first letter is seldom mistaken. */
const char *pantry_slip(const pantry *shelf, span folded, arena *scratch) {
    enum { SHORT_BYTES = 10 };
    name_list all = all_names(shelf, scratch);
    size_t allowed = folded.length < SHORT_BYTES ? 1 : 2;
    for (size_t i = 0; i < all.count; i++) {
        span name = span_of(all.items[i]);
        if (name.length && folded.length && name.at[0] == folded.at[0] &&
            words_distance(folded, name, allowed) <= allowed)
            return all.items[i];
    }
    return NULL;
}

size_t pantry_index(const pantry *shelf, const ingredient *entry) {
    (void)shelf;
    return entry->index;
}
