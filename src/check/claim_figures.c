/* Figures in the words ("30 g protein a portion", "under 200 kcal") against those worked out. */
#include "base/number.h"
#include "base/words.h"
#include "check/checks.h"
#include "check/wording.h"

#include <assert.h>

/* All figures are estimates, and words are rounded: a tenth either way is let stand, and a unit or
 * two of the small ones (common practice, no source). */
static const double slack_share = 0.10, slack_g = 1.5, slack_kcal = 15;

typedef enum { SAYS_ABOUT, SAYS_MORE, SAYS_LESS } comparison_said;

typedef struct {
    const passage *in;
    size_t at, length; /* bytes: "30 g protein" */
    amount_range value;
    nutrient of;
    comparison_said says;
    size_t word; /* of the passage: the one behind the claim */
} figure_claim;

/* What the figures of a sentence are said of. */
typedef struct {
    const macros *of;
    double times;      /* of those figures */
    const char *words; /* "a portion"; null: not known yet */
} claim_base;

static const struct {
    const char *word;
    nutrient of;
    bool food; /* it is an ingredient too */
} nutrient_names[] = {
    {"protein", NUTRIENT_PROTEIN, false},
    {"fat", NUTRIENT_FAT, true},
    {"fibre", NUTRIENT_FIBRE, false},
    {"fiber", NUTRIENT_FIBRE, false},
    {"carbohydrate", NUTRIENT_CARBOHYDRATE, false},
    {"carbohydrates", NUTRIENT_CARBOHYDRATE, false},
    {"carbs", NUTRIENT_CARBOHYDRATE, false},
    {"sugar", NUTRIENT_SUGARS, true},
    {"sugars", NUTRIENT_SUGARS, false},
};

/* -- finding ----------------------------------------------------------------------------------- */

/* "protein powder" is no protein. */
static bool is_food_after(const prose *all, size_t i) {
    static const char *const foods[] = {"powder", "isolate", "concentrate", "blend", "bar",
                                        "bars",   "shake",   "free",        "meal",  "rich"};
    return i < all->count && (prose_goes_on(all, i) || all->items[i].bound) &&
           IS_WORD(all, i, foods);
}

static bool nutrient_at(const prose *all, size_t i, bool step, figure_claim *out) {
    static const char *const of[] = {"of"};
    if (prose_goes_on(all, i) && IS_WORD(all, i, of))
        i++;
    for (size_t k = 0; prose_goes_on(all, i) && k < COUNT(nutrient_names); k++)
        if (span_is(prose_word(all, i), nutrient_names[k].word)) {
            out->of = nutrient_names[k].of;
            out->word = i + 1;
            return !is_food_after(all, i + 1) && !(step && nutrient_names[k].food);
        }
    return false;
}

static size_t word_from(const prose *all, size_t i, size_t byte) {
    while (i < all->count && all->items[i].at < byte)
        i++;
    return i;
}

static comparison_said comparison_before(const prose *all, size_t i) {
    static const char *const less[] = {"under", "below",   "less", "fewer",
                                       "most",  "maximum", "only"};
    static const char *const denials[] = {"not", "no", "never"};
    static const char *const more[] = {"over", "above", "more", "least", "minimum"};
    for (size_t back = 1; back <= 3 && back <= i; back++) {
        if (all->items[i - back + 1].cut)
            break;
        bool low = IS_WORD(all, i - back, less);
        bool denied = i > back && IS_WORD(all, i - back - 1, denials);
        if (low || IS_WORD(all, i - back, more))
            return low != denied ? SAYS_LESS : SAYS_MORE;
    }
    return SAYS_ABOUT;
}

/* The letters behind a number, blanks and hyphens passed over: its unit. */
static span unit_behind(span s) {
    size_t from = 0, to;
    while (from < s.length && (s.at[from] == ' ' || s.at[from] == '-'))
        from++;
    to = from;
    while (to < s.length &&
           ((s.at[to] >= 'a' && s.at[to] <= 'z') || (s.at[to] >= 'A' && s.at[to] <= 'Z')))
        to++;
    return (span){s.at + from, to - from};
}

/* "1,900 kcal": no kitchen counts energy in thousandths, so the comma parts thousands. */
static bool parts_thousands(span number) {
    size_t comma = span_find(number, ",");
    return comma > 0 && comma <= 3 && comma + 4 == number.length && number.at[0] != '0';
}

static void read_thousands(amount_range *value, span number) {
    if (!parts_thousands(number))
        return;
    value->low *= 1000;
    value->high *= 1000;
}

/* NUMBER g [of] NUTRIENT, or NUMBER kcal, at word `i`. */
static bool claim_at(const check_case *with, const prose *all, size_t i, const passage *in,
                     figure_claim *out) {
    static const char *const grams[] = {"g", "gram", "grams"};
    static const char *const energies[] = {"kcal", "calories", "calorie", "kilocalories"};
    span from = span_from(all->text, all->items[i].at);
    assert(from.length);                                                 /* a word begins there */
    bool letter = from.at[0] >= 'A' && (unsigned char)from.at[0] < 0x80; /* no figure, in short */
    size_t took = !letter && amount_is_meant(from) ? amount_read(from, &out->value) : 0;
    span in_unit = unit_behind(span_from(from, took));
    out->word = word_from(all, i, (size_t)(in_unit.at + in_unit.length - all->text.at));
    if (took && words_index(in_unit, energies, COUNT(energies)) < COUNT(energies)) {
        out->of = energy_nutrient(with->site->folder->settings.energy);
        read_thousands(&out->value, span_first(from, took));
    } else if (!took || words_index(in_unit, grams, COUNT(grams)) == COUNT(grams) ||
               !nutrient_at(all, out->word, in->sort == PASSAGE_METHOD, out)) {
        return false;
    }
    out->in = in;
    out->at = all->items[i].at;
    out->length = all->items[out->word - 1].end - out->at;
    out->says = comparison_before(all, i);
    return true;
}

/* -- what it is said of ------------------------------------------------------------------------ */

static bool says_each(const prose *all, size_t i, const char *const nouns[], size_t count) {
    static const char *const each[] = {"per", "a", "an", "each", "every", "the", "one"};
    return i > 0 && IS_WORD(all, i - 1, each) && prose_word_among(all, i, nouns, count);
}

static bool sentence_says_each(sentence *around, const char *const nouns[], size_t count) {
    const prose *all = sentence_prose(around);
    for (size_t i = 0; i < all->count; i++)
        if (says_each(all, i, nouns, count))
            return true;
    return false;
}

/* "round" of "8 rounds", as the figures of one are asked for. */
static const char *one_of(const check_case *with) {
    span noun = words_fold(with->a, span_of(with->of->makes.noun));
    span last = noun, rest = noun;
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest))
        last = word;
    size_t plural = span_ends(last, "ves") || !span_ends(last, "s") ? 0 : 1;
    return arena_copy(with->a, span_first(last, last.length - plural));
}

/* A portion, unless the sentence speaks of 100 g, of the batch, or of one piece. */
static claim_base base_of(const check_case *with, sentence *around) {
    static const char *const portions[] = {"portion", "serving"};
    static const char *const wholes[] = {"batch", "altogether", "total"};
    const recipe *of = with->of;
    const char *const pieces[] = {"piece", "pieces", one_of(with)};
    if (span_find(around->words, "100 g") < around->words.length)
        return (claim_base){&with->figures.per_100_g, 1, "100 g"};
    if (sentence_says_each(around, portions, COUNT(portions)))
        return (claim_base){&with->figures.portion, 1, "a portion"};
    if (SENTENCE_HAS(around, wholes))
        return (claim_base){&with->figures.batch, 1, "the batch"};
    if (of->makes.count > 1 && sentence_says_each(around, pieces, COUNT(pieces)))
        return (claim_base){&with->figures.batch, 1 / of->makes.count,
                            arena_format(with->a, "one %s", pieces[2])};
    return (claim_base){&with->figures.portion, 1, "a portion"};
}

/* -- judging ----------------------------------------------------------------------------------- */

static bool is_borne_out(const figure_claim *c, double figure, bool lower_bound) {
    bool energy = nutrient_unit(c->of)[0] == 'k';
    double slack = c->value.high * slack_share;
    if (slack < (energy ? slack_kcal : slack_g))
        slack = energy ? slack_kcal : slack_g;
    bool enough = figure >= c->value.low - slack || lower_bound;
    bool little = figure <= c->value.high + slack;
    return (c->says == SAYS_LESS || enough) && (c->says == SAYS_MORE || little);
}

static void judge(const check_case *with, const figure_claim *c, claim_base base) {
    bool lacking = base.of->lacking >> c->of & 1u;
    double figure = base.of->of.of[c->of] * base.times;
    if (with->of->unweighed || !nutrient_known(&base.of->of, c->of) ||
        is_borne_out(c, figure, lacking))
        return;
    const char *worked_out =
        arena_format(with->a, "%s %s", number_copy(with->a, figure, 0), nutrient_unit(c->of));
    problem_note(
        with->found, "claim-figure", PROBLEM_WARNING, passage_place(&with->text, c->in, c->at),
        arena_format(with->a, "write %s, say what it is of, or mend the recipe", worked_out),
        "\"%.*s\", but %s has %s%s", (int)c->length, c->in->words.at + c->at, base.words,
        lacking ? "at least " : "", worked_out);
}

static void search(const check_case *with, const passage *in) {
    prose all = prose_of(with->a, in->words);
    sentence around = {.a = with->a};
    claim_base base = {0};
    span said_in = {0};
    for (size_t i = 0; i < all.count; i++) {
        figure_claim claim = {0};
        if (!claim_at(with, &all, i, in, &claim))
            continue;
        sentence_move(&around, in->words, claim.at);
        if (!base.words || around.words.at != said_in.at)
            base = base_of(with, &around);
        said_in = around.words;
        judge(with, &claim, base);
        i = claim.word - 1;
    }
}

void check_claim_figures(check_case *with) {
    for (size_t i = 0; i < with->text.count; i++)
        search(with, &with->text.items[i]);
}
