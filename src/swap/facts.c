#include "swap/facts.h"

#include "base/words.h"
#include "swap/moisture.h"
#include "swap/setting.h"

/* -- mixed, or beside the mix ---------------------------------------------------------------- */

/* Words of a group's heading by which its lines are put beside the mix, not into it. */
static const char *const beside_words[] = {"serve",   "serving", "top",    "topping",  "toppings",
                                           "finish",  "garnish", "icing",  "frosting", "decoration",
                                           "drizzle", "glaze",   "dusting"};

static bool is_beside(arena *a, const char *heading) {
    span rest = words_fold(a, span_of(words_slug(a, span_of(heading)))); /* no punctuation */
    for (span word = span_next_word(&rest); word.length; word = span_next_word(&rest))
        for (size_t i = 0; i < COUNT(beside_words); i++)
            if (span_is(word, beside_words[i]))
                return true;
    return false;
}

static unsigned long long lines_beside(arena *a, const recipe *of) {
    unsigned long long lines = 0;
    for (size_t g = 0; g < of->groups.count; g++) {
        const line_group *group = &of->groups.items[g];
        if (is_beside(a, group->heading))
            for (size_t i = 0; i < group->count && group->first + i < FACTS_LINES_MOST; i++)
                lines |= 1ull << (group->first + i);
    }
    return lines;
}

static bool has_bit(unsigned long long set, size_t line) {
    return line < FACTS_LINES_MOST && (set >> line & 1u);
}

static bool is_in_part(const recipe_facts *about, size_t line) {
    return has_bit(about->apart, line) == about->is_beside;
}

const ingredient *facts_at(const recipe_facts *about, size_t line) {
    return is_in_part(about, line) ? about->of->lines.items[line].what : NULL;
}

const recipe_facts *facts_for(const recipe_facts *about, unsigned long long replaced) {
    bool all_beside = replaced && !(replaced & ~about->apart);
    return about->beside && all_beside ? about->beside : about;
}

/* -- the facts ------------------------------------------------------------------------------- */

bool facts_is_a(const ingredient *what, family in, const char *kind) {
    return what->in == in && (!kind || (what->kind && kind_matches(kind, what->kind)));
}

/* Kinds that are baked though the recipe states neither oven nor minutes. */
static const char *const baked_kinds[] = {"griddle cake", "cake",    "crust",     "brownie",
                                          "cookie",       "muffin",  "cracker",   "loaf",
                                          "waffle",       "cupcake", "flatbread", "granola"};

/* What is leavened is put to heat too. */
static bool is_baked(const recipe_facts *about) {
    const recipe *of = about->of;
    if (strcmp(about->kind, "no bake") == 0)
        return false;
    for (size_t i = 0; i < COUNT(baked_kinds); i++)
        if (strcmp(about->kind, baked_kinds[i]) == 0)
            return true;
    return about->leavened || of->oven_c > 0 || of->minutes.bake > 0 ||
           of->baked_in.shape == PAN_GRIDDLE;
}

/* Cream of tartar alone lifts nothing; self-raising flour brings its own powder. */
static bool leavens(const ingredient *what) {
    return (what->in == FAMILY_LEAVENER && !facts_is_a(what, FAMILY_LEAVENER, "acid")) ||
           facts_is_a(what, FAMILY_FLOUR, "wheat self-raising");
}

/* Fills in what follows from the lines of the part. */
static void work_out(recipe_facts *about) {
    for (size_t i = 0; i < about->of->lines.count; i++) {
        if (is_in_part(about, i))
            about->part_g += about->of->weights[i].grams;
        if (facts_at(about, i) && leavens(facts_at(about, i)))
            about->leavened = true;
    }
    about->baked = !about->is_beside && is_baked(about);
    about->moistened = moisture_of(about); /* fills water_by, which gels ask for */
    about->sets = setting_of(about);
}

recipe_facts facts_of(arena *a, const recipe *of, const pantry *shelf) {
    recipe_facts about = {.of = of, .shelf = shelf, .apart = lines_beside(a, of)};
    about.kind = words_fold(a, span_of(of->kind)).at;
    work_out(&about);
    if (about.apart) {
        recipe_facts *beside = ARENA_NEW(a, recipe_facts);
        *beside = (recipe_facts){
            .of = of, .shelf = shelf, .apart = about.apart, .is_beside = true, .kind = ""};
        work_out(beside);
        about.beside = beside;
    }
    return about;
}

unsigned long long facts_same_lines(const recipe_facts *about, size_t line) {
    const recipe_lines *lines = &about->of->lines;
    unsigned long long same = 0;
    for (size_t i = 0; i < lines->count && i < FACTS_LINES_MOST; i++)
        if (lines->items[i].what == lines->items[line].what)
            same |= 1ull << i;
    return same;
}

bool facts_first_of(const recipe_facts *about, size_t line) {
    const recipe_lines *lines = &about->of->lines;
    size_t i = 0;
    while (lines->items[i].what != lines->items[line].what)
        i++;
    return i == line && lines->items[line].what;
}

/* Grams as a share of the part. */
static double share_of(const recipe_facts *about, double grams) {
    return about->part_g > 0 ? grams / about->part_g : 0;
}

double facts_share(const recipe_facts *about, const selector *by) {
    double grams = 0;
    for (size_t i = 0; i < about->of->lines.count; i++) {
        const ingredient *what = facts_at(about, i);
        if (what && selector_fits(by, what, about->shelf))
            grams += about->of->weights[i].grams;
    }
    return share_of(about, grams);
}

/* -- conditions ------------------------------------------------------------------------------ */

static bool kind_holds(const word_span_list *kinds, const char *kind) {
    for (size_t i = 0; i < kinds->count; i++)
        if (span_is(kinds->items[i], kind))
            return true;
    return kinds->count == 0;
}

static bool has_other(const recipe_facts *about, const selector *by, unsigned long long replaced) {
    for (size_t i = 0; i < about->of->lines.count; i++) {
        const ingredient *what = facts_at(about, i);
        if (what && !has_bit(replaced, i) && selector_fits(by, what, about->shelf))
            return true;
    }
    return false;
}

static bool answer_holds(answer wanted, bool fact) {
    return wanted == ANSWER_ANY || (wanted == ANSWER_YES) == fact;
}

/* Bounds are strict. 0 and 1 stand for bounds that are not stated: nothing at all is under 20 %,
 * and a batch of one thing is over 20 %; but "over 0 %" alone asks that there be some. */
static bool share_within(double share, double over, double under) {
    bool floor = over > 0 || under >= 1;
    return (!floor || share > over) && (under >= 1 || share < under);
}

static double replaced_share(const recipe_facts *about, unsigned long long replaced) {
    double grams = 0;
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (has_bit(replaced, i) && is_in_part(about, i))
            grams += about->of->weights[i].grams;
    return share_of(about, grams);
}

static bool company_holds(const conditions *when, const recipe_facts *about,
                          unsigned long long replaced) {
    for (size_t i = 0; i < when->has.count; i++)
        if (!has_other(about, &when->has.items[i], replaced))
            return false;
    for (size_t i = 0; i < when->lacks.count; i++)
        if (has_other(about, &when->lacks.items[i], replaced))
            return false;
    return true;
}

static bool shares_hold(const conditions *when, const recipe_facts *about,
                        unsigned long long replaced) {
    for (size_t i = 0; i < when->shares.count; i++) {
        const share_condition *asked = &when->shares.items[i];
        if (!share_within(facts_share(about, &asked->of), asked->over, asked->under))
            return false;
    }
    return !when->has_replaced_share ||
           share_within(replaced_share(about, replaced), when->replaced_over, when->replaced_under);
}

bool conditions_hold(const conditions *when, const recipe_facts *about,
                     unsigned long long replaced) {
    const recipe_facts *of = facts_for(about, replaced);
    if (when->settings && !(when->settings >> of->sets & 1u))
        return false;
    if (when->moistures && !(when->moistures >> of->moistened & 1u))
        return false;
    return answer_holds(when->leavened, of->leavened) && answer_holds(when->baked, of->baked) &&
           kind_holds(&when->kinds, of->kind) && company_holds(when, of, replaced) &&
           shares_hold(when, of, replaced);
}
