/* Amounts in the method against the list: more than the line has, or less and nothing said of the
 * rest. */
#include "check/checks.h"
#include "check/wording.h"
#include "measure/kitchen.h"

/* A spoon is never quite level (common practice, no source). */
static const double slack_share = 0.08, slack_g = 1;

/* What the method does with one line. */
typedef struct {
    double sum_g; /* of amounts and shares */
    bool open;    /* used without an amount too: the rest may be there */
    const passage *in;
    const mention *last; /* the last that states an amount; null: none does */
} line_use;

/* "If it is too thick, 1 tablespoon of milk" is beyond what the list has. */
static bool is_aside(sentence *around, const passage *in, const mention *m) {
    sentence_move(around, in->words, m->at);
    return m->more || sentence_is_conditional(around);
}

static void take_amount(const check_case *with, line_use *use, const passage *in,
                        const mention *m) {
    if (m->grams <= 0) {
        problem_note(with->found, "amounts", PROBLEM_WARNING,
                     passage_place(&with->text, in, m->amount_at),
                     "write it in the measure of the list", "\"%.*s\" of %s can't be weighed",
                     (int)m->amount_length, in->words.at + m->amount_at, m->what->name);
        use->open = true;
        return;
    }
    use->sum_g += m->grams;
    use->in = in;
    use->last = m;
}

/* It states how much of its line goes in. */
static bool is_amount(sentence *around, const passage *in, const mention *m) {
    bool pinch = m->in && m->in->sort == UNIT_PINCH;
    return (m->amount_length || m->share > 0) && !m->loose && !pinch && !is_aside(around, in, m);
}

static void take_all(const check_case *with, line_use uses[], size_t passage_index) {
    const passage *in = &with->text.items[passage_index];
    const mentions *said = &with->said[passage_index];
    sentence around = {.a = with->a};
    for (size_t i = 0; i < said->count; i++) {
        const mention *m = &said->items[i];
        if (m->line == MENTION_NO_LINE || !m->what)
            continue;
        if (is_amount(&around, in, m))
            take_amount(with, &uses[m->line], in, m);
        else
            uses[m->line].open = true;
    }
}

static void report(const check_case *with, size_t line, const line_use *use, double wanted_g,
                   const char *hint) {
    problem_note(with->found, "amounts", PROBLEM_WARNING,
                 passage_place(&with->text, use->in, use->last->at), hint,
                 "the method takes %s of %s in all, but the list has %s",
                 kitchen_weight(with->a, use->sum_g), with->of->lines.items[line].name,
                 kitchen_weight(with->a, wanted_g));
}

static void compare(const check_case *with, size_t line, const line_use *use) {
    const weight *listed = &with->of->weights[line];
    if (!use->last || listed->grams <= 0)
        return;
    if (use->sum_g > listed->high_g * (1 + slack_share) + slack_g)
        report(with, line, use, listed->grams, "mend the one that is wrong");
    else if (!use->open && use->sum_g < listed->low_g * (1 - slack_share) - slack_g)
        report(with, line, use, listed->grams,
               "mend the one that is wrong, or say where the rest goes");
}

void check_amounts(check_case *with) {
    size_t lines = with->of->lines.count;
    line_use *uses = ARENA_ARRAY(with->a, line_use, lines);
    for (size_t i = 0; i < with->text.count; i++)
        if (with->text.items[i].sort == PASSAGE_METHOD)
            take_all(with, uses, i);
    for (size_t i = 0; i < lines; i++)
        compare(with, i, &uses[i]);
}
