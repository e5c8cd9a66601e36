#include "nutrition/claims.h"

#include <assert.h>

#include "base/number.h"
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
    bool brief;         /* outcomes alone are asked for, no reasons in words */
} claim_case;

/* A reason in words; they cost most of the work, so a brief answer goes without. */
#define SAID(about, ...) ((about)->brief ? "" : arena_format((about)->a, __VA_ARGS__))

/* An amount as a condition measures it: `open` says why it can't be, and is null when it can. */
typedef struct {
    double value;
    const char *words; /* "5.2 g of fibre in 100 g" */
    const char *open;
} measured;

/* In this order: of conditions that must all hold the lowest decides, of alternatives the
 * highest. */
typedef enum { FAILS, OPEN, HOLDS } outcome;

typedef struct {
    outcome is;
    const char *because;
} judgement;

static const char *lacking_words(const claim_case *about, nutrient which) {
    if (about->brief)
        return "";
    word_list without = macros_lacking(about->a, about->of, which);
    return SAID(about, "no figure for %s of %s", nutrient_key(which),
                words_joined(about->a, &without));
}

static measured amount_in(const claim_case *about, nutrient which, double amount, const char *in) {
    int decimals = nutrient_unit(which)[0] == 'm' ? 0 : 2; /* mg */
    return (measured){.value = amount,
                      .words =
                          SAID(about, "%s %s of %s in %s", number_copy(about->a, amount, decimals),
                               nutrient_unit(which), nutrient_key(which), in)};
}

static measured per_100_g(const claim_case *about, const condition *asked) {
    return amount_in(about, asked->which, about->figures->per_100_g.of.of[asked->which], "100 g");
}

static measured per_portion(const claim_case *about, const condition *asked) {
    return amount_in(about, asked->which, about->figures->portion.of.of[asked->which], "a portion");
}

static bool is_lacking(const claim_case *about, nutrient which) {
    return about->figures->batch.lacking >> which & 1u;
}

/* Energy of the batch; 0 when it is not wholly known, which `*open` then says. */
static double energy_of_batch(const claim_case *about, nutrient energy, const char *name,
                              const char **open) {
    *open = NULL;
    if (is_lacking(about, energy)) {
        word_list without = macros_lacking(about->a, about->of, energy);
        *open =
            SAID(about, "the %s of %s can't be worked out", name, words_joined(about->a, &without));
    } else if (about->figures->batch.of.of[energy] <= 0) {
        *open = "it has no energy";
    }
    return *open ? 0 : about->figures->batch.of.of[energy];
}

static measured per_100_kcal(const claim_case *about, const condition *asked) {
    const char *open;
    double kcal = energy_of_batch(about, NUTRIENT_ENERGY_EU, "energy", &open);
    if (open)
        return (measured){.open = open};
    double amount = about->figures->batch.of.of[asked->which] / kcal * 100;
    return amount_in(about, asked->which, amount, "100 kcal");
}

/* `per_g` is the energy of 1 g of what is asked: kJ (EU, Annex XIV) or kcal (21 CFR
 * 101.9(c)(1)(i)(B)). */
static measured energy_share(const claim_case *about, const condition *asked, nutrient energy,
                             double per_g) {
    const char *open;
    double whole = energy_of_batch(about, energy, "energy", &open);
    if (open)
        return (measured){.open = open};
    double share = about->figures->batch.of.of[asked->which] * per_g / whole * 100;
    return (measured){.value = share,
                      .words = SAID(about, "%s %% of the energy is from %s",
                                    number_copy(about->a, share, 1), nutrient_key(asked->which))};
}

static measured share_of_eu_energy(const claim_case *about, const condition *asked) {
    return energy_share(about, asked, NUTRIENT_ENERGY_EU_KJ,
                        asked->which == NUTRIENT_PROTEIN ? 17 : 37);
}

static measured share_of_us_energy(const claim_case *about, const condition *asked) {
    return energy_share(about, asked, NUTRIENT_ENERGY_ATWATER, 9); /* only asked of saturates */
}

static measured per_grams(const claim_case *about, nutrient which, double grams, const char *name) {
    if (about->reference_g <= 0)
        return (measured){
            .open = SAID(about, "US law has no reference amount in grams for this kind%s%s",
                         about->of->kind ? ": " : "", about->of->kind ? about->of->kind : "")};
    double amount = about->figures->per_100_g.of.of[which] * grams / 100;
    const char *in = SAID(about, "%s of %s g", name, number_copy(about->a, grams, 0));
    return amount_in(about, which, amount, in);
}

static measured per_reference_amount(const claim_case *about, const condition *asked) {
    return per_grams(about, asked->which, about->reference_g, "the reference amount");
}

static measured per_small_reference_amount(const claim_case *about, const condition *asked) {
    bool small = about->reference_g <= 30; /* 21 CFR 101.61(b), 101.62(b) */
    return per_grams(about, asked->which, small ? 50 : about->reference_g,
                     small ? "the amount for small portions" : "the reference amount");
}

static const char *quality_unknown_words(const claim_case *about) {
    if (about->quality->without.count == 0)
        return "the quality of the protein is not known";
    return SAID(about, "the quality of the protein of %s is not known",
                words_joined(about->a, &about->quality->without));
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
    const char *correction = corrected
                                 ? SAID(about, ", %s g when corrected for its quality (PDCAAS %s),",
                                        number_copy(about->a, amount, 2),
                                        number_copy(about->a, about->quality->pdcaas, 2))
                                 : "";
    return (measured){.value = percent,
                      .words = SAID(about, "%s%s is %s %% of the daily value", m.words, correction,
                                    number_copy(about->a, percent, 1))};
}

static measured trans_fat_too(const claim_case *about, const condition *asked) {
    (void)about;
    (void)asked;
    return (measured){.open = "the rule counts trans fat too, which the pantry does not know"};
}

static judgement judge_sweetening(const claim_case *about) {
    static const outcome by_sweetening[] = {
        [SWEETENING_NONE] = HOLDS, [SWEETENING_UNCLEAR] = OPEN, [SWEETENING_SUGARS] = FAILS};
    judgement j = {.because = ""};
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

static const char *const comparison_words[] = {"at least", "at most", "less than"};

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
    j.because = SAID(about, "%s; the rule asks for %s %s %s", m.words, comparison_words[asked->is],
                     number_copy(about->a, asked->limit, 2),
                     bases[asked->per].percent ? "%" : nutrient_unit(asked->which));
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
static const char *nothing_measured_words(const claim_case *about) {
    word_list without = {0};
    for (size_t i = 0; i < about->of->lines.count; i++)
        if (about->of->weights[i].way == WEIGHT_UNKNOWN)
            word_add_once(about->a, &without, line_name(about->of, i));
    if (without.count)
        return SAID(about, "no weight is known for %s", words_joined(about->a, &without));
    return about->of->baked_g > 0 ? NULL : "nothing in it is weighed";
}

static bool takes_weights(const claim_rule *rule) {
    return rule->conditions[0].per != NOTHING_SWEETENS;
}

static claims judged(const claim_case *about, label_law law) {
    const char *nothing = nothing_measured_words(about);
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
