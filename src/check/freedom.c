/* "Gluten-free", "no egg", "vegan" over an ingredient that is not: an error, since somebody may
 * rely on it. Where an ingredient only may contain it, or holds it only when an optional line is
 * taken, a warning. That nothing is found says nothing: packs and kitchens decide. */
#include "base/words.h"
#include "check/checks.h"
#include "check/wording.h"

#include "nutrition/allergens.h"

#define BIT(n) (1u << (n))

enum {
    GLUTEN_GRAINS =
        BIT(ALLERGEN_WHEAT) | BIT(ALLERGEN_SPELT) | BIT(ALLERGEN_RYE) | BIT(ALLERGEN_BARLEY),
    TREE_NUTS = BIT(ALLERGEN_ALMOND) | BIT(ALLERGEN_HAZELNUT) | BIT(ALLERGEN_WALNUT) |
                BIT(ALLERGEN_CASHEW) | BIT(ALLERGEN_PECAN) | BIT(ALLERGEN_BRAZIL_NUT) |
                BIT(ALLERGEN_PISTACHIO) | BIT(ALLERGEN_MACADAMIA) | BIT(ALLERGEN_PINE_NUT)
};

/* What a recipe may be said to be free of: by allergens, or by a diet that is ruled out. */
typedef struct {
    const char *thing; /* as it is written before "-free", singular */
    allergen_set allergens;
    int diet;          /* or DIET_COUNT: by allergens alone */
    const char *holds; /* "gluten", behind the ingredient's name */
} freedom;

static const freedom freedoms[] = {
    {"gluten", GLUTEN_GRAINS, DIET_COUNT, "gluten"},
    {"wheat", BIT(ALLERGEN_WHEAT) | BIT(ALLERGEN_SPELT), DIET_COUNT, "wheat"},
    {"dairy", BIT(ALLERGEN_MILK), DIET_NO_DAIRY, "milk"},
    {"milk", BIT(ALLERGEN_MILK), DIET_NO_DAIRY, "milk"},
    {"egg", BIT(ALLERGEN_EGG), DIET_NO_EGG, "egg"},
    {"nut", TREE_NUTS | BIT(ALLERGEN_PEANUT), DIET_COUNT, "nuts"},
    {"peanut", BIT(ALLERGEN_PEANUT), DIET_COUNT, "peanut"},
    {"almond", BIT(ALLERGEN_ALMOND), DIET_COUNT, "almond"},
    {"soy", BIT(ALLERGEN_SOY), DIET_COUNT, "soy"},
    {"soya", BIT(ALLERGEN_SOY), DIET_COUNT, "soy"},
    {"sesame", BIT(ALLERGEN_SESAME), DIET_COUNT, "sesame"},
    {"lupin", BIT(ALLERGEN_LUPIN), DIET_COUNT, "lupin"},
    {"vegan", 0, DIET_VEGAN, "not vegan"},
    {"vegetarian", 0, DIET_VEGETARIAN, "not vegetarian"},
};

/* -- what holds it ---------------------------------------------------------------------------- */

static bool is_ruled_out(const freedom *f, const ingredient *what) {
    if (what->allergens & f->allergens)
        return true;
    if (f->allergens == GLUTEN_GRAINS && what->has_gluten == GLUTEN_YES)
        return true;
    return f->diet != DIET_COUNT && !(diets_of_ingredient(what) & BIT(f->diet));
}

/* Oats on sale are mostly mixed with wheat or barley. */
static bool is_in_doubt(const freedom *f, const ingredient *what) {
    bool oats = f->allergens == GLUTEN_GRAINS && what->has_gluten == GLUTEN_OATS;
    return oats || (what->may_contain & f->allergens) != 0;
}

/* A claim where it stands. */
typedef struct {
    const passage *in;
    size_t at, length; /* bytes */
    const freedom *of;
} freedom_claim;

static place claim_place(const check_case *with, const freedom_claim *c) {
    return passage_place(&with->text, c->in, c->at);
}

/* The line that contradicts it most: one that must be there before an optional one. */
static const recipe_line *contradiction(const check_case *with, const freedom *f, bool doubt) {
    const recipe_line *optional = NULL;
    for (size_t i = 0; i < with->of->lines.count; i++) {
        const recipe_line *of = &with->of->lines.items[i];
        if (!of->what || !(doubt ? is_in_doubt(f, of->what) : is_ruled_out(f, of->what)))
            continue;
        if (!of->optional)
            return of;
        optional = of;
    }
    return optional;
}

static void judge(const check_case *with, const freedom_claim *c) {
    const recipe_line *by = contradiction(with, c->of, false);
    const char *words = c->in->words.at + c->at;
    if (by) {
        problem_note(with->found, "free-of", by->optional ? PROBLEM_WARNING : PROBLEM_ERROR,
                     claim_place(with, c), "take the words out, or change the ingredient",
                     "\"%.*s\", but the list has %s (%s)", (int)c->length, words, by->name,
                     c->of->holds);
        return;
    }
    by = contradiction(with, c->of, true);
    if (by)
        problem_note(with->found, "free-of", PROBLEM_WARNING, claim_place(with, c),
                     "say so beside it: somebody may rely on the words",
                     "\"%.*s\", but the list has %s: what is on sale may hold traces",
                     (int)c->length, words, by->name);
}

/* -- the words --------------------------------------------------------------------------------- */

static span singular(span word) {
    return span_ends(word, "s") ? span_first(word, word.length - 1) : word;
}

static bool is_called(const freedom *f, span word) {
    if (f->thing[0] != word.at[0]) /* most words differ in their first letter */
        return false;
    return span_is(word, f->thing) || span_is(singular(word), f->thing);
}

static const freedom *freedom_of(span word) {
    for (size_t i = 0; i < COUNT(freedoms) && word.length; i++)
        if (is_called(&freedoms[i], word))
            return &freedoms[i];
    return NULL;
}

static bool follows(const prose *all, size_t i) {
    return i < all->count && (prose_goes_on(all, i) || all->items[i].bound);
}

/* A freedom told at word `i`; the words it takes, 0: none. `brief`: a title, a summary, a tag,
 * where "no egg" is said of the whole. */
static size_t told_at(const prose *all, size_t i, bool brief, const freedom **of) {
    static const char *const nones[] = {"no", "without"};
    static const char *const whole[] = {"vegan", "vegetarian"};
    *of = freedom_of(prose_word(all, i));
    if (*of && IS_WORD(all, i, whole))
        return 1;
    if (*of && follows(all, i + 1) && span_is(prose_word(all, i + 1), "free"))
        return 2;
    if (span_is(prose_word(all, i), "eggless")) {
        *of = freedom_of(span_of("egg"));
        return 1;
    }
    *of = follows(all, i + 1) ? freedom_of(prose_word(all, i + 1)) : NULL;
    return *of && brief && IS_WORD(all, i, nones) && !IS_WORD(all, i + 1, whole) ? 2 : 0;
}

/* "gluten-free oats" is a word on the oats. */
static bool is_of_ingredient(const mentions *said, size_t end) {
    size_t i = mentions_from(said, end + 1);
    return i < said->count && said->items[i].name_at == end + 1 && !said->items[i].loose;
}

/* "no almond meal": the thing is an ingredient's first word. */
static bool names_more(const mentions *said, size_t end) {
    size_t i = mentions_from(said, end);
    return i < said->count && said->items[i].name_at < end;
}

/* What may be, not what is. */
static bool is_offered(sentence *around, const freedom_claim *c, bool brief) {
    sentence_move(around, c->in->words, c->at);
    return sentence_is_option(around) || (!brief && sentence_is_advice(around));
}

/* The first freedom told from word `*i` on that is said of the whole; `*i` moves behind it. */
static bool next_claim(sentence *around, const prose *all, const mentions *said, size_t *i,
                       freedom_claim *out) {
    bool brief = out->in->sort <= PASSAGE_TAG;
    while (*i < all->count) {
        size_t at = *i, words = told_at(all, at, brief, &out->of);
        *i += words ? words : 1;
        if (!words)
            continue;
        size_t end = all->items[at + words - 1].end;
        out->at = all->items[at].at;
        out->length = end - out->at;
        if (!wording_is_asked(out->in->words, end) && !is_offered(around, out, brief) &&
            !wording_is_denied(all, at) && !is_of_ingredient(said, end) && !names_more(said, end))
            return true;
    }
    return false;
}

static void search(const check_case *with, size_t passage_index) {
    const passage *in = &with->text.items[passage_index];
    prose all = prose_of(with->a, in->words);
    freedom_claim c = {.in = in};
    sentence around = {.a = with->a};
    for (size_t i = 0; next_claim(&around, &all, &with->said[passage_index], &i, &c);)
        judge(with, &c);
}

/* The site's own cautions stand on every page: "We bake without nuts." */
static void search_caution(const check_case *with, const char *caution) {
    passage in = {.sort = PASSAGE_SUMMARY, .words = span_of(caution)};
    prose all = prose_of(with->a, in.words);
    mentions said = mentions_in(with->a, &with->called, in.words);
    freedom_claim c = {.in = &in};
    sentence around = {.a = with->a};
    for (size_t i = 0; next_claim(&around, &all, &said, &i, &c);) {
        const recipe_line *by = contradiction(with, c.of, false);
        if (by)
            problem_note(with->found, "free-of", PROBLEM_ERROR, by->at,
                         "mend the caution, or change the ingredient",
                         "a caution of site.yaml says \"%.*s\", but this line has %s (%s)",
                         (int)c.length, caution + c.at, by->name, c.of->holds);
    }
}

void check_freedom(check_case *with) {
    const word_list *cautions = &with->site->folder->settings.cautions;
    for (size_t i = 0; i < with->text.count; i++)
        search(with, i);
    for (size_t i = 0; i < cautions->count; i++)
        search_caution(with, cautions->items[i]);
}
