#include "measure/mention.h"

#include "base/words.h"
#include "measure/prose.h"

#include <assert.h>

/* -- names ------------------------------------------------------------------------------------- */

/* A run of words that names something. */
typedef struct {
    size_t from, to; /* words; to == from: nothing */
    line_set lines;
    name_nearness near;
    const ingredient *what;
} name_found;

static bool is_one(line_set lines) {
    return lines != 0 && (lines & (lines - 1)) == 0;
}

static int line_of(line_set lines) {
    int line = 0;
    if (!is_one(lines))
        return MENTION_NO_LINE;
    while (!(lines >> line & 1))
        line++;
    return line;
}

static const ingredient *only_ingredient(const mention_names *called, line_set lines) {
    int line = line_of(lines);
    return line == MENTION_NO_LINE ? NULL : called->of->lines.items[line].what;
}

/* True when `words` are an alias of `it`, not its name in either number. */
static bool is_alias(span words, const ingredient *it) {
    return !span_is(words, it->name) && !span_is(words, it->plural);
}

/* A loose word that names another food means that food: "almonds" are not the almond butter. But
 * "whey protein" is the isolate where that is what the recipe has, and "flax" its flaxseed meal
 * though whole seeds are called so too. */
static bool means_other(const mention_names *called, const name_found *own, span words,
                        const ingredient *it) {
    if (own->near != NAMED_LOOSE || !it)
        return false;
    for (size_t i = 0; i < called->of->lines.count && own->lines >> i; i++) {
        const ingredient *what = called->of->lines.items[i].what;
        bool meant = own->lines >> i & 1 && what;
        if (meant && (what->in == it->in ||
                      (is_alias(words, it) && span_ends(span_of(it->kind), what->kind))))
            return false;
    }
    return !is_one(own->lines) || only_ingredient(called, own->lines) != NULL;
}

static name_found name_of_run(const mention_names *called, const prose *all, size_t from,
                              size_t to) {
    span words = prose_run(all, from, to);
    name_found found = {from, from, 0, NAMED_WHOLE, NULL};
    const called_lines *by = mention_names_find(called, words);
    const ingredient *it = pantry_find_folded(called->shelf, words);
    if (by) {
        while (found.near < NAMED_LOOSE && !by->lines[found.near])
            found.near++;
        found.lines = by->lines[found.near];
        if (means_other(called, &found, words, it))
            found.lines = 0;
    }
    if (!found.lines)
        found.near = NAMED_WHOLE;
    if (found.lines || it)
        found.to = to;
    found.what = found.lines ? only_ingredient(called, found.lines) : it;
    return found;
}

/* What is done to a thing in the kitchen, though a pantry may also list it so done. */
static const char *const done_to[] = {"mashed", "frozen", "melted", "chopped",
                                      "grated", "beaten", "cooked", "sliced",
                                      "diced",  "peeled", "thawed", "softened"};

/* "mashed bananas" where the recipe lists bananas, to be mashed: leave the first word to the
 * adjectives. */
static bool is_own_done(const mention_names *called, const prose *all, size_t from, size_t to) {
    if (to - from < 2 || !IS_WORD(all, from, done_to))
        return false;
    const called_lines *by = mention_names_find(called, prose_run(all, from + 1, to));
    return by && (by->lines[NAMED_WHOLE] || by->lines[NAMED_SHORT]);
}

/* The longest name that begins at word `from`. */
static name_found name_at(const mention_names *called, const prose *all, size_t from) {
    size_t most = called->longest_words > called->shelf->longest_words
                      ? called->longest_words
                      : called->shelf->longest_words;
    size_t end = from + 1;
    while (end < all->count && end - from < most &&
           (prose_goes_on(all, end) || all->items[end].bound))
        end++;
    for (; end > from; end--) {
        name_found found = name_of_run(called, all, from, end);
        if (found.to > from && (found.lines || !is_own_done(called, all, from, end)))
            return found;
    }
    return (name_found){from, from, 0, NAMED_WHOLE, NULL};
}

/* -- what only looks like a name -------------------------------------------------------------- */

static const char *const joints[] = {"and", "or",   "in",   "into", "with", "to", "over", "on",
                                     "for", "then", "from", "at",   "by",   "if", "until"};

/* "butter the tin", "oil it well", "flour and line": a verb, unless something before makes it a
 * thing. */
static bool is_verb(const prose *all, const name_found *name) {
    static const char *const verbs[] = {"butter", "oil",    "flour", "salt",  "sugar",
                                        "water",  "season", "spice", "cream", "zest",
                                        "juice",  "egg",    "whey"};
    static const char *const objects[] = {"the",  "a",    "an",   "it",     "them",
                                          "your", "each", "both", "lightly"};
    static const char *const then[] = {"line", "flour", "dust", "grease", "paper"};
    if (name->to - name->from != 1 || !IS_WORD(all, name->from, verbs))
        return false;
    bool starts =
        name->from == 0 || all->items[name->from].cut || IS_WORD(all, name->from - 1, joints);
    bool object = prose_goes_on(all, name->to) && IS_WORD(all, name->to, objects);
    bool pair = prose_goes_on(all, name->to) && span_is(prose_word(all, name->to), "and") &&
                IS_WORD(all, name->to + 1, then);
    return starts && (object || pair);
}

/* "the dry", "the wet": only before a joint or a stop; "until white", "squeeze dry" are no
 * ingredients. */
static bool is_adjective(const prose *all, const name_found *name) {
    static const char *const words[] = {"dry", "wet", "liquid"};
    if (name->to - name->from != 1)
        return false;
    size_t at = name->from;
    span written = {all->text.at + all->items[at].at, all->items[at].end - all->items[at].at};
    if (span_is(prose_word(all, at), "white"))
        return !span_ends(written, "s");
    if (!IS_WORD(all, at, words))
        return false;
    bool the = at > 0 && !all->items[at].cut && span_is(prose_word(all, at - 1), "the");
    bool alone = !prose_goes_on(all, at + 1) || IS_WORD(all, at + 1, joints);
    return !(the && alone);
}

/* "egg-free", "flour-dusted", "oil-based", "hemp's": part of another word. */
static bool is_bound(const prose *all, const name_found *name) {
    bool before = all->items[name->from].bound;
    bool after = name->to < all->count && all->items[name->to].bound;
    return before || after;
}

/* Behind a name these make it something mixed or baked already. */
static bool is_made_of(const prose *all, const name_found *name) {
    static const char *const heads[] = {
        "base",  "batter",  "blend",  "bread",    "brownie", "brownies", "cake",
        "cakes", "coating", "cookie", "cookies",  "cream",   "crumb",    "crumbs",
        "crust", "custard", "dough",  "filling",  "foam",    "glaze",    "icing",
        "layer", "loaf",    "mass",   "meringue", "mix",     "mixture",  "muffins",
        "paste", "rounds",  "sauce",  "slurry",   "sponge",  "topping",  "waffles"};
    return prose_goes_on(all, name->to) && IS_WORD(all, name->to, heads);
}

static bool is_thing(const prose *all, const name_found *name) {
    return name->to > name->from && !is_bound(all, name) && !is_verb(all, name) &&
           !is_adjective(all, name);
}

/* -- amounts ----------------------------------------------------------------------------------- */

/* What stands before a name, as it is read word by word. */
typedef struct {
    const mention_names *called;
    const prose *all;
    size_t next;  /* the word to read */
    mention into; /* what was understood */
    bool spoilt;  /* something in it makes the number unsafe to change: a heaped spoon, brackets */
    bool begun;   /* what follows must stand in the same breath */
} lead;

/* There is a word to read, and no stop before it. */
static bool stands_next(const lead *l) {
    return l->next < l->all->count && (!l->begun || prose_goes_on(l->all, l->next));
}

static bool lead_word(lead *l, const char *const list[], size_t count) {
    if (!stands_next(l) || !prose_word_among(l->all, l->next, list, count))
        return false;
    l->next++;
    l->begun = true;
    return true;
}

#define LEAD_WORD(l, list) lead_word((l), (list), COUNT(list))

static const char *const rests[] = {"rest",  "remaining", "remainder", "last",
                                    "other", "others",    "reserved",  "leftover"};
static const char *const mores[] = {"more", "extra", "further", "additional"};
static const char *const ofs[] = {"of"};

/* The word that begins at byte `at` or behind it. */
static size_t word_from(const prose *all, size_t from, size_t at) {
    while (from < all->count && all->items[from].at < at)
        from++;
    return from;
}

/* "C" and "c" are degrees in a method, not cups; a stop behind a unit may end the sentence. */
static const unit *unit_in_words(span s, size_t *used) {
    const unit *in = unit_read(s, used);
    if (!in || span_is(span_first(s, *used), "C") || span_is(span_first(s, *used), "c"))
        return NULL;
    assert(s.at); /* a unit was read */
    if (s.at[*used - 1] != '.')
        return in;
    span rest = span_trim(span_from(s, *used));
    return rest.length && rest.at[0] >= 'a' && rest.at[0] <= 'z' ? in : NULL;
}

/* Blanks, or one hyphen, between a number and its unit. */
static size_t blanks(span s) {
    size_t i = 0;
    while (i < s.length && (s.at[i] == ' ' || s.at[i] == '\n'))
        i++;
    if (span_begins(span_from(s, i), "\u00a0"))
        i += strlen("\u00a0");
    return i == 0 && s.length && s.at[0] == '-' ? 1 : i;
}

/* Fillings and "more" between the number and the unit: "2 heaped tablespoons". */
static size_t fillings(lead *l, span s) {
    static const char *const words[] = {"heaped", "heaping", "rounded",  "level", "scant",
                                        "good",   "large",   "generous", "big",   "small"};
    size_t took = blanks(s);
    span rest = span_from(s, took), word = span_next_word(&rest);
    size_t used;
    bool more = words_index(word, mores, COUNT(mores)) < COUNT(mores);
    if (!more && words_index(word, words, COUNT(words)) == COUNT(words))
        return took;
    span after = span_from(s, took + word.length);
    if (!unit_in_words(span_from(after, blanks(after)), &used))
        return took;
    l->into.more = l->into.more || more;
    l->spoilt = l->spoilt || !more;
    return took + word.length + blanks(after);
}

/* A figure, or one of the words that amount_read takes for one. Most words are neither, and it is
 * asked at each. */
static bool may_be_number(const prose *all, size_t i) {
    static const char *const words[] = {"a",       "an",       "one",   "two",    "three", "four",
                                        "five",    "six",      "seven", "eight",  "nine",  "ten",
                                        "eleven",  "twelve",   "half",  "halves", "third", "thirds",
                                        "quarter", "quarters", "dozen", "couple"};
    unsigned char first = (unsigned char)all->text.at[all->items[i].at];
    return first < 'A' || first >= 0x80 || IS_WORD(all, i, words);
}

/* NUMBER UNIT, or a bare number, at word `next`. */
static void read_number(lead *l) {
    const prose *all = l->all;
    if (!stands_next(l) || !may_be_number(all, l->next))
        return;
    size_t at = all->items[l->next].at, used = 0;
    span from = span_from(all->text, at);
    size_t took = amount_read(from, &l->into.quantity);
    if (!took || (at && all->text.at[at - 1] == '.'))
        return;
    size_t gap = fillings(l, span_from(from, took));
    const unit *in = unit_in_words(span_from(from, took + gap), &used);
    l->into.in = in;
    l->into.amount_at = at;
    l->into.number_length = took;
    l->into.amount_length = in ? took + gap + used : took;
    l->begun = true;
    l->next = word_from(all, l->next, at + l->into.amount_length);
}

/* "another tablespoon": one, with no number to change. */
static void read_another(lead *l) {
    size_t used = 0;
    if (!l->into.more || l->into.amount_length || !stands_next(l))
        return;
    size_t at = l->all->items[l->next].at;
    l->into.in = unit_in_words(span_from(l->all->text, at), &used);
    if (!l->into.in)
        return;
    l->spoilt = true;
    l->into.quantity = (amount_range){1, 1};
    l->into.amount_at = at;
    l->into.amount_length = used;
    l->next = word_from(l->all, l->next, at + used);
}

/* A bracket that closes further off holds more than an amount; nor is each of many open ones to be
 * looked for to the end of the text. */
enum { BRACKET_MOST = 200 };

/* "(30 g)" behind a unit says the same twice: both would have to change. */
static void read_bracket(lead *l) {
    const prose *all = l->all;
    size_t end = l->into.amount_at + l->into.amount_length;
    span rest = span_from(all->text, end);
    size_t open = blanks(rest);
    if (!l->into.amount_length || !span_begins(span_from(rest, open), "("))
        return;
    span near = span_first(rest, BRACKET_MOST);
    size_t close = span_find(near, ")");
    if (close == near.length)
        return;
    l->spoilt = true;
    l->next = word_from(all, l->next, end + close);
    if (l->next < all->count) /* what stands between is the bracket */
        all->items[l->next].cut = !prose_gap_is_blank(
            (span){rest.at + close + 1, all->items[l->next].at - end - close - 1});
}

static const char *const adjectives[] = {
    "cold",   "warm",   "hot",     "cool",   "lukewarm", "boiling", "soft",     "melted",
    "sifted", "fresh",  "freshly", "finely", "coarsely", "roughly", "softened", "toasted",
    "beaten", "grated", "chopped", "ground", "mashed",   "whisked", "dry",      "plain",
    "thick",  "thin",   "ripe",    "raw",    "cooled",   "ready",   "white",    "whole"};

/* The words between the amount and the name: "of the remaining". */
static void read_joint(lead *l) {
    static const char *const determiners[] = {"the", "your", "that", "this", "those", "these"};
    (void)LEAD_WORD(l, ofs);
    (void)LEAD_WORD(l, determiners);
    l->into.rest = LEAD_WORD(l, rests) || l->into.rest;
    l->into.more = LEAD_WORD(l, mores) || l->into.more;
    (void)LEAD_WORD(l, ofs);
    (void)LEAD_WORD(l, determiners);
}

/* The name after at most two adjectives; a name may begin with one itself. */
static name_found read_name(lead *l) {
    for (size_t tried = 0; tried < 3; tried++) {
        if (!stands_next(l))
            break;
        name_found name = name_at(l->called, l->all, l->next);
        if (is_thing(l->all, &name))
            return name;
        if (!LEAD_WORD(l, adjectives))
            break;
    }
    return (name_found){0};
}

/* -- one mention ------------------------------------------------------------------------------- */

/* Counted by itself ("3 eggs") or by a word ("2 large"). */
static bool is_counted(const recipe_line *of) {
    return of->has_amount && (!of->in || of->in->sort == UNIT_COUNT);
}

/* A bare number before a name: a share where it is a part, a count where the line is one; else it
 * counts something else ("the 2 flour sacks"). */
static void settle_bare(mention *m, const recipe_line *line) {
    bool part = m->quantity.high < 1;
    if (part)
        m->share = amount_middle(m->quantity);
    if (part || !line || !is_counted(line)) {
        m->quantity = (amount_range){0, 0};
        m->amount_length = m->number_length = 0;
    }
}

/* Grams of the amount: by the line where it is measured alike, so that the author's own weight
 * counts, else by the pantry. */
static double grams_of(arena *a, const mention_names *called, const mention *m) {
    const recipe_line *line = &called->of->lines.items[m->line];
    const weight *whole = called->of->weights ? &called->of->weights[m->line] : NULL;
    double amount = amount_middle(m->quantity);
    if (m->share > 0)
        return whole ? m->share * whole->grams : 0;
    bool alike = line->in == m->in || (!m->in && is_counted(line));
    if (whole && line->has_amount && line->more_count == 0 && alike && whole->grams > 0)
        return whole->grams * amount / amount_middle(line->quantity);
    recipe_line part = *line;
    part.quantity = m->quantity;
    part.in = m->in;
    part.has_own_weight = false;
    part.more_count = 0;
    weight out = {0};
    problems none = problems_in(a);
    return weigh_line(&part, called->cups, &out, &none) ? out.grams : 0;
}

static bool is_changeable(const lead *l, const mention *m, const name_found *name) {
    static const double drops_ml = 1;
    bool measured = m->in ? m->in->sort != UNIT_PINCH : m->amount_length > 0;
    if (m->in && m->in->sort == UNIT_VOLUME)
        measured = m->in->size >= drops_ml;
    return m->amount_length && measured && m->line != MENTION_NO_LINE && !m->share && !l->spoilt &&
           name->near != NAMED_LOOSE;
}

static void settle(arena *a, lead *l, const name_found *name) {
    mention *m = &l->into;
    const prose *all = l->all;
    m->lines = name->lines;
    m->line = line_of(name->lines);
    m->loose = name->near == NAMED_LOOSE;
    m->what = name->what;
    m->name_at = all->items[name->from].at;
    m->name_length = all->items[name->to - 1].end - m->name_at;
    const recipe_line *line =
        m->line == MENTION_NO_LINE ? NULL : &l->called->of->lines.items[m->line];
    if (m->amount_length && !m->in)
        settle_bare(m, line);
    if (is_made_of(all, name)) {
        m->amount_length = m->number_length = 0;
        m->share = 0;
        m->loose = true;
    }
    if (!m->amount_length) {
        m->in = NULL;
        m->quantity = (amount_range){0, 0};
    }
    m->changeable = is_changeable(l, m, name);
    if (line && line->what && name->near != NAMED_LOOSE && (m->amount_length || m->share > 0))
        m->grams = grams_of(a, l->called, m);
}

/* A mention that begins at word `from`, amount and all; false when none does. `*next` is the word
 * behind it. */
static bool mention_at(arena *a, const mention_names *called, const prose *all, size_t from,
                       mention *out, size_t *next) {
    static const char *const another[] = {"another"};
    static const char *const the[] = {"the", "your"};
    lead l = {.called = called, .all = all, .next = from};
    (void)LEAD_WORD(&l, the);
    l.into.rest = LEAD_WORD(&l, rests);
    l.into.more = LEAD_WORD(&l, another) || LEAD_WORD(&l, mores);
    if (l.into.rest)
        (void)LEAD_WORD(&l, ofs);
    read_number(&l);
    read_another(&l);
    read_bracket(&l);
    read_joint(&l);
    name_found name = read_name(&l);
    if (name.to == name.from)
        return false;
    settle(a, &l, &name);
    bool said = l.into.amount_length || l.into.share > 0 || l.into.rest || l.into.more;
    l.into.at = said ? all->items[from].at : l.into.name_at;
    l.into.length = l.into.name_at + l.into.name_length - l.into.at;
    *out = l.into;
    *next = name.to;
    return true;
}

mentions mentions_in(arena *a, const mention_names *called, span words) {
    mentions found = {0};
    prose all = prose_of(a, words);
    for (size_t i = 0; i < all.count;) {
        mention one;
        size_t next;
        if (mention_at(a, called, &all, i, &one, &next)) {
            LIST_ADD(a, &found, one);
            i = next;
        } else {
            i++;
        }
    }
    return found;
}

size_t mentions_from(const mentions *all, size_t at) {
    size_t low = 0, high = all->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        const mention *m = &all->items[middle];
        if (m->name_at + m->name_length > at)
            high = middle;
        else
            low = middle + 1;
    }
    return low;
}
