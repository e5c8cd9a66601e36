#include "measure/mention_names.h"

#include "base/words.h"

enum { KEY_BYTES_MOST = 96, WORDS_MOST = 8, LINES_MOST = 64 };

/* -- keys -------------------------------------------------------------------------------------- */

/* The plural ending of a word, if it may be one. Both sides of a comparison lose it, so that a
 * wrong singular ("radis") does no harm. */
static size_t plural_length(span word) {
    static const char *const long_ones[] = {"ches", "shes", "sses", "xes", "oes", "zes"};
    if (word.length < 4 || !span_ends(word, "s") || span_ends(word, "ss"))
        return 0;
    for (size_t i = 0; i < COUNT(long_ones); i++)
        if (span_ends(word, long_ones[i]))
            return 2;
    return 1;
}

/* `words` without the plural of the last: what is looked up. `room` holds it. */
static span key_of(span words, char room[KEY_BYTES_MOST]) {
    if (span_ends(words, "ies") && words.length > 4 && words.length < KEY_BYTES_MOST) {
        memcpy(room, words.at, words.length);
        room[words.length - 3] = 'y';
        return (span){room, words.length - 2};
    }
    return span_first(words, words.length - plural_length(words));
}

const called_lines *mention_names_find(const mention_names *of, span words) {
    char room[KEY_BYTES_MOST];
    size_t index;
    return names_find(&of->by_key, key_of(words, room), &index) ? &of->items[index] : NULL;
}

/* -- what names nothing alone ----------------------------------------------------------------- */

static bool is_among(span word, const char *const list[], size_t count) {
    return words_index(word, list, count) < count;
}

/* How it is made, grown or sold; or the colour of half the kitchen. */
static const char *const describing[] = {
    "active", "all",    "baking", "black",   "brown",      "caster",  "coarse",   "cold",
    "cooked", "dark",   "dried",  "dry",     "extra",      "fat",     "fine",     "flaked",
    "fresh",  "frozen", "full",   "galley",  "granulated", "green",   "ground",   "instant",
    "large",  "light",  "low",    "mashed",  "medium",     "milled",  "mixed",    "natural",
    "of",     "pale",   "plain",  "purpose", "raw",        "ready",   "red",      "roasted",
    "rolled", "rough",  "salted", "silken",  "skim",       "skimmed", "small",    "smooth",
    "soft",   "sour",   "strong", "sweet",   "thick",      "toasted", "unsalted", "unsweetened",
    "vital",  "warm",   "white",  "whole",   "wild",       "yellow"};

/* What is left out once the list is read: "the cocoa", "the vanilla", "pea powder". */
static const char *const generic[] = {"concentrate", "essence", "extract", "husk",
                                      "isolate",     "meal",    "paste",   "powder",
                                      "protein",     "seeds",   "seed",    "kernels"};

static bool all_among(span words, const char *const list[], size_t count) {
    bool all = true;
    for (span word = span_next_word(&words); word.length && all; word = span_next_word(&words))
        all = is_among(word, list, count);
    return all;
}

/* "butter" alone is never almond butter. */
static bool misleads(span words, const ingredient *what) {
    return what && what->in == FAMILY_NUT_BUTTER && span_is(words, "butter");
}

/* -- adding ------------------------------------------------------------------------------------ */

static size_t words_in(span words) {
    size_t count = 0;
    while (span_next_word(&words).length)
        count++;
    return count;
}

static void add(mention_names *to, span words, line_set lines, name_nearness near) {
    char room[KEY_BYTES_MOST];
    span key = key_of(words, room);
    size_t index = to->count, count = words_in(words);
    if (key.length == 0 || lines == 0)
        return;
    if (names_add(&to->by_key, key, index, &index))
        LIST_ADD(to->home, to, (called_lines){{0}});
    to->items[index].lines[near] |= lines;
    if (count > to->longest_words)
        to->longest_words = count;
}

/* A name cut into its words. */
typedef struct {
    span all, items[WORDS_MOST];
    size_t count;
} name_words;

static name_words words_of(span folded) {
    name_words of = {.all = folded};
    span rest = folded;
    for (span word = span_next_word(&rest); word.length && of.count < WORDS_MOST;
         word = span_next_word(&rest))
        of.items[of.count++] = word;
    return of;
}

/* From word `from` to the end. */
static span tail_of(const name_words *of, size_t from) {
    return span_from(of->all, (size_t)(of->items[from].at - of->all.at));
}

/* The first `count` words. */
static span head_of(const name_words *of, size_t count) {
    span last = of->items[count - 1];
    return span_first(of->all, (size_t)(last.at + last.length - of->all.at));
}

static void add_tails(mention_names *to, const name_words *of, line_set line,
                      const ingredient *what) {
    for (size_t i = 1; i < of->count; i++) {
        span tail = tail_of(of, i);
        bool whites = span_is(tail, "whites") || span_is(tail, "white");
        if ((whites || !all_among(tail, describing, COUNT(describing))) && !misleads(tail, what))
            add(to, tail, line, NAMED_SHORT);
    }
}

/* "pea powder" of "pea protein powder" */
static void add_ends(mention_names *to, const name_words *of, line_set line) {
    if (of->count < 3 || is_among(of->items[0], describing, COUNT(describing)) ||
        !span_is(of->items[1], "protein"))
        return;
    span first = of->items[0], last = of->items[of->count - 1];
    add(to, span_of(arena_format(to->home, "%.*s %.*s", SPAN(first), SPAN(last))), line,
        NAMED_SHORT);
}

/* "cocoa" of "cocoa powder", "whey" of "whey protein isolate" */
static void add_heads(mention_names *to, const name_words *of, line_set line) {
    for (size_t i = 1; i < of->count; i++) {
        span head = head_of(of, i);
        if (all_among(tail_of(of, i), generic, COUNT(generic)) &&
            !all_among(head, describing, COUNT(describing)))
            add(to, head, line, NAMED_LOOSE);
    }
}

static void add_name(mention_names *to, const char *name, line_set line, const ingredient *what) {
    name_words of = words_of(words_fold(to->home, span_of(name)));
    if (of.count == 0)
        return;
    add(to, of.all, line, NAMED_WHOLE);
    add_tails(to, &of, line, what);
    add_ends(to, &of, line);
    add_heads(to, &of, line);
}

/* -- families ---------------------------------------------------------------------------------- */

static const struct {
    family in;
    const char *word;
    name_nearness near;
} family_names[] = {
    {FAMILY_PROTEIN_POWDER, "powder", NAMED_FAMILY},
    {FAMILY_PROTEIN_POWDER, "protein powder", NAMED_FAMILY},
    {FAMILY_PROTEIN_POWDER, "protein", NAMED_LOOSE},
    {FAMILY_FLOUR, "flour", NAMED_FAMILY},
    {FAMILY_NUT_BUTTER, "nut butter", NAMED_FAMILY},
    {FAMILY_FRUIT_PUREE, "puree", NAMED_FAMILY},
    {FAMILY_NUT, "nut", NAMED_LOOSE},
    {FAMILY_NUT, "seed", NAMED_LOOSE},
    {FAMILY_FRUIT, "fruit", NAMED_LOOSE},
    {FAMILY_FRUIT, "berry", NAMED_LOOSE},
    {FAMILY_VEGETABLE, "vegetable", NAMED_LOOSE},
    {FAMILY_FLAVOUR, "spice", NAMED_LOOSE},
    {FAMILY_FLAVOUR, "herb", NAMED_LOOSE},
    {FAMILY_FLAVOUR, "seasoning", NAMED_LOOSE},
    {FAMILY_SALT, "seasoning", NAMED_LOOSE},
    {FAMILY_LEAVENER, "leavening", NAMED_LOOSE},
    {FAMILY_LEAVENER, "raising agent", NAMED_LOOSE},
    {FAMILY_SWEETENER, "sweetener", NAMED_LOOSE},
    {FAMILY_FAT, "fat", NAMED_LOOSE},
    {FAMILY_GRAIN, "grain", NAMED_LOOSE},
};

static void add_family(mention_names *to, line_set line, const ingredient *what) {
    for (size_t i = 0; i < COUNT(family_names); i++)
        if (family_names[i].in == what->in)
            add(to, span_of(family_names[i].word), line, family_names[i].near);
}

/* "whey", "whey concentrate" of the kind "whey concentrate"; "flax" of the kind "flax" */
static void add_kind(mention_names *to, line_set line, const ingredient *what) {
    name_words of = words_of(words_fold(to->home, span_of(what->kind)));
    if (of.count == 0 || is_among(of.items[0], describing, COUNT(describing)))
        return;
    add(to, of.all, line, NAMED_LOOSE);
    add(to, of.items[0], line, NAMED_LOOSE);
}

static void add_egg_parts(mention_names *to, line_set line) {
    static const char *const parts[] = {"egg white", "egg yolk", "white", "yolk"};
    for (size_t i = 0; i < COUNT(parts); i++)
        add(to, span_of(parts[i]), line, NAMED_LOOSE);
}

static void add_line(mention_names *to, const recipe_line *of, line_set line) {
    add_name(to, of->name, line, of->what);
    const ingredient *what = of->what;
    if (!what)
        return;
    add_name(to, what->name, line, what);
    add(to, words_fold(to->home, span_of(what->plural)), line, NAMED_WHOLE);
    for (size_t i = 0; i < what->also_count; i++) {
        name_words also = words_of(words_fold(to->home, span_of(what->also[i])));
        add(to, also.all, line, NAMED_WHOLE);
        add_heads(to, &also, line);
    }
    add_family(to, line, what);
    add_kind(to, line, what);
    if (span_is(span_of(what->name), "egg"))
        add_egg_parts(to, line);
}

/* -- lines together ---------------------------------------------------------------------------- */

/* What goes into the bowl dry: under 16 % water, and neither fat nor paste. */
static bool is_dry(const ingredient *what) {
    static const family wet[] = {FAMILY_NUT_BUTTER, FAMILY_FAT, FAMILY_EGG, FAMILY_LIQUID};
    for (size_t i = 0; i < COUNT(wet); i++)
        if (what->in == wet[i] && what->per_100_g.of[NUTRIENT_WATER] == 0)
            return false;
    bool paste = what->in == FAMILY_NUT_BUTTER || what->in == FAMILY_FAT;
    return !paste && what->per_100_g.of[NUTRIENT_WATER] < 16;
}

static void add_sets(mention_names *to, line_set dry, line_set wet) {
    static const char *const things[] = {"ingredient", "mixture", "mix", "part"};
    for (size_t i = 0; i < COUNT(things); i++) {
        add(to, span_of(arena_format(to->home, "dry %s", things[i])), dry, NAMED_LOOSE);
        add(to, span_of(arena_format(to->home, "wet %s", things[i])), wet, NAMED_LOOSE);
    }
    add(to, span_of("dry"), dry, NAMED_LOOSE);
    add(to, span_of("wet"), wet, NAMED_LOOSE);
    add(to, span_of("liquid"), wet, NAMED_LOOSE);
    add(to, span_of("all the ingredient"), dry | wet, NAMED_LOOSE);
    add(to, span_of("all ingredient"), dry | wet, NAMED_LOOSE);
    add(to, span_of("everything"), dry | wet, NAMED_LOOSE);
}

mention_names mention_names_of(arena *a, const recipe *of, const pantry *shelf, cup_standard cups) {
    mention_names all = {.home = a, .by_key = names_in(a), .of = of, .shelf = shelf, .cups = cups};
    line_set dry = 0, wet = 0;
    for (size_t i = 0; i < of->lines.count && i < LINES_MOST; i++) {
        const ingredient *what = of->lines.items[i].what;
        line_set line = (line_set)1 << i;
        add_line(&all, &of->lines.items[i], line);
        if (what && is_dry(what))
            dry |= line;
        else
            wet |= line;
    }
    add_sets(&all, dry, wet);
    return all;
}
