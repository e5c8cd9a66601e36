/* What the list has and the method never uses, and the other way round. */
#include "base/words.h"
#include "check/checks.h"
#include "check/wording.h"

/* -- listed, never used ------------------------------------------------------------------------ */

/* "the dry mixture" is what was mixed before, not a way to name what goes in. */
static bool is_result(const passage *in, const mention *m) {
    span name = {in->words.at + m->name_at, m->name_length};
    return m->line == MENTION_NO_LINE && !span_ends(name, "ingredients") &&
           !span_ends(name, "ingredient") && !span_ends(name, "verything") &&
           (span_begins(name, "dry") || span_begins(name, "wet") || span_begins(name, "liquid"));
}

/* The lines that passages of this sort speak of. */
static line_set lines_used(const check_case *with, passage_sort sort) {
    line_set used = 0;
    for (size_t i = 0; i < with->text.count; i++) {
        const passage *in = &with->text.items[i];
        for (size_t k = 0; in->sort == sort && k < with->said[i].count; k++)
            if (!is_result(in, &with->said[i].items[k]))
                used |= with->said[i].items[k].lines;
    }
    return used;
}

/* What is put beside a bake is seldom spoken of, and neither is what is left to taste. */
static bool needs_no_step(const check_case *with, size_t line) {
    static const char *const beside[] = {"serve",   "serving", "taste",    "top",     "dust",
                                         "dusting", "grease",  "greasing", "garnish", "decorate"};
    const recipe_line *of = &with->of->lines.items[line];
    bool said = of->preparation && WORDING_HAS(with->a, span_of(of->preparation), beside);
    for (size_t i = 0; i < with->of->groups.count && !said; i++) {
        const line_group *group = &with->of->groups.items[i];
        if (group->heading && line >= group->first && line < group->first + group->count)
            said = WORDING_HAS(with->a, span_of(group->heading), beside);
    }
    return said || of->optional || of->to_taste || !of->what;
}

static void report_unused(const check_case *with, line_set used) {
    enum { LINES_MOST = 64 };
    for (size_t i = 0; i < with->of->lines.count && i < LINES_MOST; i++) {
        const recipe_line *of = &with->of->lines.items[i];
        if (!(used >> i & 1) && !needs_no_step(with, i))
            problem_note(with->found, "unused", PROBLEM_WARNING, of->at,
                         "say where it goes in, or take the line out", "the method never uses %s",
                         of->name);
    }
}

/* -- used, never listed ------------------------------------------------------------------------ */

/* For the tin, for the bench, or from the tap. */
static bool is_at_hand(sentence *around, const mention *m) {
    static const char *const greasing[] = {
        "grease",  "oil",     "oiled", "brush",   "tin",      "tins",  "pan",     "tray",
        "griddle", "iron",    "dust",  "dusted",  "line",     "lined", "floured", "bench",
        "board",   "surface", "paper", "greased", "buttered", "hands"};
    static const char *const always[] = {"water", "salt", "ice", "black pepper"};
    if (words_index(span_of(m->what->name), always, COUNT(always)) < COUNT(always))
        return m->amount_length == 0 || (m->in && m->in->sort == UNIT_PINCH);
    bool greases = m->what->in == FAMILY_FAT || m->what->in == FAMILY_FLOUR;
    return greases && SENTENCE_HAS(around, greasing);
}

/* Likened, served beside, advised: anything but put in. */
static bool is_put_in(sentence *around) {
    static const char *const adding[] = {
        "add",  "stir",     "fold",    "mix",      "whisk", "beat",    "blend",  "pour",
        "sift", "sprinkle", "scatter", "rub",      "knead", "melt",    "cream",  "combine",
        "toss", "spread",   "work",    "dissolve", "grate", "crumble", "drizzle"};
    static const char *const others[] = {
        "like", "as",    "than",  "serve",  "serving", "eat",   "instead", "swap",
        "use",  "if",    "can",   "not",    "never",   "no",    "without", "place",
        "or",   "looks", "smell", "smells", "taste",   "tastes"};
    return SENTENCE_HAS(around, adding) && !SENTENCE_HAS(around, others);
}

/* A line of that family that the method never uses: what is probably meant. */
static const recipe_line *meant_line(const check_case *with, line_set used, family in) {
    for (size_t i = 0; i < with->of->lines.count && i < 64; i++) {
        const recipe_line *of = &with->of->lines.items[i];
        if (!(used >> i & 1) && of->what && of->what->in == in)
            return of;
    }
    return NULL;
}

static void report_unlisted(const check_case *with, const passage *in, const mention *m,
                            line_set used) {
    const recipe_line *meant = meant_line(with, used, m->what->in);
    const char *hint = "add it to the ingredients, or take it out of the step";
    if (meant)
        hint = arena_format(with->a, "the list has %s: is that meant?", meant->name);
    problem_note(with->found, "unlisted", PROBLEM_WARNING,
                 passage_place(&with->text, in, m->name_at), hint,
                 "the method takes %.*s, but the list has none", (int)m->name_length,
                 in->words.at + m->name_at);
}

/* What a passage of the method takes, and the list has not. */
static void search_unlisted(const check_case *with, size_t passage_index, line_set used) {
    const passage *in = &with->text.items[passage_index];
    const mentions *said = &with->said[passage_index];
    sentence around = {.a = with->a};
    for (size_t i = 0; i < said->count; i++) {
        const mention *m = &said->items[i];
        if (m->lines || !m->what || m->loose)
            continue;
        sentence_move(&around, in->words, m->at);
        if (!is_at_hand(&around, m) && is_put_in(&around))
            report_unlisted(with, in, m, used);
    }
}

void check_used(check_case *with) {
    line_set used = lines_used(with, PASSAGE_METHOD);
    if (!used) /* "Mix and bake": all of it is meant */
        return;
    used |= lines_used(with, PASSAGE_NOTE);
    report_unused(with, used);
    for (size_t i = 0; i < with->text.count; i++)
        if (with->text.items[i].sort == PASSAGE_METHOD)
            search_unlisted(with, i, used);
}
