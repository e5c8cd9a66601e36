#include "base/plural.h"

#include "base/list.h"

const char *const plural_names[PLURAL_FORMS] = {"zero", "one", "two", "few", "many", "other"};

typedef struct {
    size_t from, to;
} interval;

struct plural_relation {
    bool alternative; /* begins behind an "or" */
    bool counts;      /* its operand is the count, else 0 */
    bool differs;     /* != */
    size_t divisor;   /* 0: none */
    struct {
        interval *items;
        size_t count, capacity;
    } among;
};

/* -- reading --------------------------------------------------------------------------------- */

typedef struct {
    arena *a;
    span rest;
} rule_reader;

static void skip_blanks(rule_reader *r) {
    while (r->rest.length && r->rest.at[0] == ' ')
        r->rest = span_from(r->rest, 1);
}

/* True, and past it, where `word` stands next. */
static bool takes(rule_reader *r, const char *word) {
    skip_blanks(r);
    if (!span_begins(r->rest, word))
        return false;
    r->rest = span_from(r->rest, strlen(word));
    return true;
}

static bool takes_number(rule_reader *r, size_t *out) {
    enum { DIGITS_ALLOWED = 9 };
    size_t digits = 0, value = 0;
    skip_blanks(r);
    for (; digits < r->rest.length && r->rest.at[digits] >= '0' && r->rest.at[digits] <= '9';
         digits++)
        value = value * 10 + (size_t)(r->rest.at[digits] - '0');
    if (digits == 0 || digits > DIGITS_ALLOWED)
        return false;
    r->rest = span_from(r->rest, digits);
    *out = value;
    return true;
}

static bool takes_operand(rule_reader *r, bool *counts) {
    skip_blanks(r);
    if (!r->rest.length || !strchr("nivwftce", r->rest.at[0]))
        return false;
    *counts = r->rest.at[0] == 'n' || r->rest.at[0] == 'i';
    r->rest = span_from(r->rest, 1);
    return true;
}

static bool takes_intervals(rule_reader *r, plural_relation *out) {
    do {
        interval one;
        if (!takes_number(r, &one.from))
            return false;
        one.to = one.from;
        if (takes(r, "..") && !takes_number(r, &one.to))
            return false;
        LIST_ADD(r->a, &out->among, one);
    } while (takes(r, ","));
    return true;
}

static bool takes_relation(rule_reader *r, plural_relation *out) {
    if (!takes_operand(r, &out->counts))
        return false;
    if (takes(r, "%") && (!takes_number(r, &out->divisor) || out->divisor == 0))
        return false;
    out->differs = takes(r, "!=");
    return (out->differs || takes(r, "=")) && takes_intervals(r, out);
}

bool plural_rule_read(arena *a, span words, plural_rule *out, size_t *offset) {
    struct {
        plural_relation *items;
        size_t count, capacity;
    } all = {0};
    rule_reader r = {a, words};
    bool more = true, fine = true, alternative = false;
    while (more && fine) {
        plural_relation one = {.alternative = alternative};
        fine = takes_relation(&r, &one);
        LIST_ADD(a, &all, one);
        alternative = takes(&r, "or");
        more = alternative || takes(&r, "and");
    }
    skip_blanks(&r);
    *offset = words.length - r.rest.length;
    if (!fine || r.rest.length)
        return false;
    *out = (plural_rule){all.items, all.count};
    return true;
}

/* -- choosing -------------------------------------------------------------------------------- */

static bool relation_holds(const plural_relation *of, size_t count) {
    size_t value = of->counts ? count : 0;
    bool within = false;
    if (of->divisor)
        value %= of->divisor;
    for (size_t i = 0; i < of->among.count && !within; i++)
        within = value >= of->among.items[i].from && value <= of->among.items[i].to;
    return within != of->differs;
}

static bool rule_takes(const plural_rule *of, size_t count) {
    bool holds = of->count > 0;
    for (size_t i = 0; i < of->count; i++) {
        if (of->items[i].alternative && holds)
            return true;
        holds = (holds || of->items[i].alternative) && relation_holds(&of->items[i], count);
    }
    return holds;
}

plural_form plural_of(const plural_rules *rules, size_t count) {
    plural_form form = PLURAL_ZERO;
    while (form < PLURAL_OTHER && !rule_takes(&rules->of[form], count))
        form++;
    return form;
}
