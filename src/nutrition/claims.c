#include "nutrition/claims.h"

#include <assert.h>

#include "nutrition/claim_rules.h"
#include "nutrition/lines.h"
#include "nutrition/rounding.h"
#include "nutrition/sweetening.h"

typedef struct {
    arena *a;
    const recipe *of;
    const recipe_macros *figures;
    const protein_quality *quality;
    double reference_g; /* US reference amount; 0 when there is none */
    bool brief;         /* outcomes alone are asked for, no reasons */
} claim_case;

/* What stands for the reasons of a brief answer. */
static const message unsaid = {0};

/* A reason; a brief answer goes without. */
#define REASON(about, ...)         ((about)->brief ? &unsaid : MESSAGE((about)->a, __VA_ARGS__))
#define PLAIN_REASON(about, which) ((about)->brief ? &unsaid : MESSAGE_PLAIN((about)->a, which))

/* An amount as a condition measures it: `open` says why it can't be, and is null when it can. */
typedef struct {
    double value;
    const message *words; /* 5.2 g of fibre in 100 g */
    const message *open;
} measured;

/* In this order: of conditions that must all hold the lowest decides, of alternatives the
 * highest. */
typedef enum { FAILS, OPEN, HOLDS } outcome;

typedef struct {
    outcome is;
    const message *because;
} judgement;

static message_value value_names(const word_list *list) {
    return value_list(list->items, list->count);
}

static message_value value_nutrient(nutrient which) {
    return value_word(WORD_NUTRIENT, which);
}

static const message *lacking_words(const claim_case *about, nutrient which) {
    if (about->brief)
        return &unsaid;
    word_list without = macros_lacking(about->a, about->of, which);
    return REASON(about, NO_FIGURE, value_nutrient(which), value_names(&without));
}

static measured amount_in(const claim_case *about, nutrient which, double amount,
                          const message *in) {
    int decimals = nutrient_unit(which)[0] == 'm' ? 0 : 2; /* mg */
    return (measured){.value = amount,
                      .words = REASON(about, AMOUNT_IN,
                                      value_number(amount, decimals, nutrient_unit(which)),
                                      value_nutrient(which), value_inner(in))};
}

static measured per_100_g(const claim_case *about, const condition *asked) {
    return amount_in(about, asked->which, about->figures->per_100_g.of.of[asked->which],
                     PLAIN_REASON(about, IN_100_G));
}

static measured per_portion(const claim_case *about, const condition *asked) {
    return amount_in(about, asked->which, about->figures->portion.of.of[asked->which],
                     PLAIN_REASON(about, IN_A_PORTION));
}

static bool is_lacking(const claim_case *about, nutrient which) {
    return about->figures->batch.lacking >> which & 1u;
}

/* Energy of the batch; 0 when it is not wholly known, which `*open` then says. */
static double energy_of_batch(const claim_case *about, nutrient energy, const message **open) {
    *open = NULL;
    if (is_lacking(about, energy)) {
        word_list without = macros_lacking(about->a, about->of, energy);
        *open = REASON(about, ENERGY_UNKNOWN, value_names(&without));
    } else if (about->figures->batch.of.of[energy] <= 0) {
        *open = PLAIN_REASON(about, NO_ENERGY);
    }
    return *open ? 0 : about->figures->batch.of.of[energy];
}

static measured per_100_kcal(const claim_case *about, const condition *asked) {
    const message *open;
    double kcal = energy_of_batch(about, NUTRIENT_ENERGY_EU, &open);
    if (open)
        return (measured){.open = open};
    double amount = about->figures->batch.of.of[asked->which] / kcal * 100;
    return amount_in(about, asked->which, amount, PLAIN_REASON(about, IN_100_KCAL));
}

/* `per_g` is the energy of 1 g of what is asked: kJ (EU, Annex XIV) or kcal (21 CFR
 * 101.9(c)(1)(i)(B)). */
static measured energy_share(const claim_case *about, const condition *asked, nutrient energy,
                             double per_g) {
    const message *open;
    double whole = energy_of_batch(about, energy, &open);
    if (open)
        return (measured){.open = open};
    double share = about->figures->batch.of.of[asked->which] * per_g / whole * 100;
    return (measured){.value = share,
                      .words = REASON(about, SHARE_OF_ENERGY, value_number(share, 1, "%"),
                                      value_nutrient(asked->which))};
}

static measured share_of_eu_energy(const claim_case *about, const condition *asked) {
    return energy_share(about, asked, NUTRIENT_ENERGY_EU_KJ,
                        asked->which == NUTRIENT_PROTEIN ? 17 : 37);
}

static measured share_of_us_energy(const claim_case *about, const condition *asked) {
    return energy_share(about, asked, NUTRIENT_ENERGY_ATWATER, 9); /* only asked of saturates */
}

static const message *no_reference_amount(const claim_case *about) {
    return about->of->kind ? REASON(about, NO_AMOUNT_FOR_KIND, value_text(about->of->kind))
                           : PLAIN_REASON(about, NO_AMOUNT_FOR_THIS_KIND);
}

/* `in` says in what amount that is. */
static measured per_grams(const claim_case *about, nutrient which, double grams,
                          const message *in) {
    if (about->reference_g <= 0)
        return (measured){.open = no_reference_amount(about)};
    return amount_in(about, which, about->figures->per_100_g.of.of[which] * grams / 100, in);
}

static const message *in_reference_amount(const claim_case *about) {
    return REASON(about, IN_REFERENCE_AMOUNT, value_number(about->reference_g, 0, "g"));
}

static measured per_reference_amount(const claim_case *about, const condition *asked) {
    return per_grams(about, asked->which, about->reference_g, in_reference_amount(about));
}

static measured per_small_reference_amount(const claim_case *about, const condition *asked) {
    bool small = about->reference_g <= 30; /* 21 CFR 101.61(b), 101.62(b) */
    return per_grams(about, asked->which, small ? 50 : about->reference_g,
                     small ? REASON(about, IN_SMALL_AMOUNT, value_number(50, 0, "g"))
                           : in_reference_amount(about));
}

static const message *quality_unknown_words(const claim_case *about) {
    if (about->quality->without.count == 0)
        return PLAIN_REASON(about, PROTEIN_QUALITY_UNKNOWN);
    return REASON(about, PROTEIN_QUALITY_OF_UNKNOWN, value_names(&about->quality->without));
}

static measured daily_value_per_reference_amount(const claim_case *about, const condition *asked) {
    measured m = per_reference_amount(about, asked);
    bool corrected = asked->which == NUTRIENT_PROTEIN;
    if (m.open)
        return m;
    if (corrected && !about->quality->known)
        return (measured){.open = quality_unknown_words(about)};
    double amount = corrected ? quality_corrected_g(about->quality, m.value) : m.value;
    double percent = amount / daily_value_of(asked->which) * 100;
    const message *words = corrected ? REASON(about, CORRECTED_SHARE_OF_DAILY_VALUE,
                                              value_inner(m.words), value_number(amount, 2, "g"),
                                              value_number(about->quality->pdcaas, 2, NULL),
                                              value_number(percent, 1, "%"))
                                     : REASON(about, SHARE_OF_DAILY_VALUE, value_inner(m.words),
                                              value_number(percent, 1, "%"));
    return (measured){.value = percent, .words = words};
}

static measured trans_fat_too(const claim_case *about, const condition *asked) {
    (void)asked;
    return (measured){.open = PLAIN_REASON(about, TRANS_FAT_UNKNOWN)};
}

static judgement judge_sweetening(const claim_case *about) {
    static const outcome by_sweetening[] = {
        [SWEETENING_NONE] = HOLDS, [SWEETENING_UNCLEAR] = OPEN, [SWEETENING_SUGARS] = FAILS};
    judgement j = {.because = &unsaid};
    j.is = by_sweetening[sweetening_of(about->a, about->of, about->brief ? NULL : &j.because)];
    return j;
}

static const struct {
    measured (*measure)(const claim_case *about, const condition *asked);
    bool percent;
} bases[BASIS_COUNT] = {
    [PER_100_G] = {per_100_g, false},
    [PER_100_KCAL] = {per_100_kcal, false},
    [SHARE_OF_EU_ENERGY] = {share_of_eu_energy, true},
    [SHARE_OF_US_ENERGY] = {share_of_us_energy, true},
    [PER_REFERENCE_AMOUNT] = {per_reference_amount, false},
    [PER_SMALL_REFERENCE_AMOUNT] = {per_small_reference_amount, false},
    [PER_PORTION] = {per_portion, false},
    [DAILY_VALUE_PER_REFERENCE_AMOUNT] = {daily_value_per_reference_amount, true},
    [TRANS_FAT_TOO] = {trans_fat_too, false},
};

/* In the order of the comparisons. */
static const sentence_key comparisons[] = {SAY_RULE_ASKS_AT_LEAST, SAY_RULE_ASKS_AT_MOST,
                                           SAY_RULE_ASKS_LESS_THAN};

/* Decimals of sums miss a limit by a hair: a hair is not a difference. */
static bool meets(double value, const condition *asked) {
    double hair = asked->limit * 1e-9;
    if (asked->is == AT_LEAST)
        return value >= asked->limit - hair;
    return asked->is == AT_MOST ? value <= asked->limit + hair : value < asked->limit - hair;
}

/* The value is a lower bound when an ingredient lacks the figure: more can only help "at least"
 * and only hurt the others. */
static outcome compare(double value, const condition *asked, bool lower_bound) {
    bool meets_limit = meets(value, asked);
    bool could_turn = asked->is == AT_LEAST ? !meets_limit : meets_limit;
    if (lower_bound && could_turn)
        return OPEN;
    return meets_limit ? HOLDS : FAILS;
}

static judgement judge_condition(const claim_case *about, const condition *asked) {
    if (asked->per == NOTHING_SWEETENS)
        return judge_sweetening(about);
    measured m = bases[asked->per].measure(about, asked);
    if (m.open)
        return (judgement){OPEN, m.open};
    judgement j = {.is = compare(m.value, asked, is_lacking(about, asked->which))};
    if (j.is == OPEN) {
        j.because = lacking_words(about, asked->which);
        return j;
    }
    const char *in = bases[asked->per].percent ? "%" : nutrient_unit(asked->which);
    const message_value values[] = {value_inner(m.words), value_number(asked->limit, 2, in)};
    j.because = about->brief ? &unsaid
                             : message_new(about->a, comparisons[asked->is], values, COUNT(values));
    return j;
}

static judgement judge_rule(const claim_case *about, const claim_rule *rule) {
    judgement decides = judge_condition(about, &rule->conditions[0]);
    for (size_t i = 1; i < rule->count; i++) {
        judgement next = judge_condition(about, &rule->conditions[i]);
        if (rule->any ? next.is > decides.is : next.is < decides.is)
            decides = next;
    }
    return decides;
}

/* Why nothing at all can be measured; null when it can. */
static const message *nothing_measured_words(const claim_case *about) {
    word_list without = {0};
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (about->of->weights[i].way == WEIGHT_UNKNOWN)
            word_add_once(about->a, &without, line_name(about->of, i));
    if (without.count)
        return REASON(about, NO_WEIGHT_KNOWN, value_names(&without));
    return about->of->baked_g > 0 ? NULL : PLAIN_REASON(about, NOTHING_WEIGHED);
}

static bool takes_weights(const claim_rule *rule) {
    return rule->conditions[0].per != NOTHING_SWEETENS;
}

static claims judged(const claim_case *about, label_law law) {
    const message *nothing = nothing_measured_words(about);
    size_t count;
    const claim_rule *rules = claim_rules_of(law, &count);
    claims all = {.items = ARENA_ARRAY(about->a, claim, count), .count = count, .capacity = count};
    for (size_t i = 0; i < count; i++) {
        judgement j = nothing && takes_weights(&rules[i]) ? (judgement){OPEN, nothing}
                                                          : judge_rule(about, &rules[i]);
        all.items[i] = (claim){.claim = rules[i].name,
                               .rule = rules[i].rule,
                               .holds = j.is == HOLDS,
                               .tested = j.is != OPEN,
                               .because = j.because};
    }
    return all;
}

claims claims_of(arena *a, const recipe *of, const recipe_macros *figures,
                 const protein_quality *quality, label_law law) {
    claim_case about = {a, of, figures, quality, reference_amount_of(of), false};
    return judged(&about, law);
}

claims claims_brief_of(arena *a, const recipe *of, const recipe_macros *figures,
                       const protein_quality *quality, label_law law) {
    claim_case about = {a, of, figures, quality, reference_amount_of(of), true};
    return judged(&about, law);
}

word_list claims_gained(arena *a, const claims *then, const claims *now) {
    word_list gained = {0};
    assert(then->count == now->count); /* the rules of one law, in their order */
    for (size_t i = 0; i < now->count; i++)
        if (now->items[i].holds && !then->items[i].holds)
            LIST_ADD(a, &gained, now->items[i].claim);
    return gained;
}
