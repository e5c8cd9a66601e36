#include "nutrition/quality.h"

#include "nutrition/lines.h"
#include "nutrition/rounding.h"

#include <math.h>

/* FAO Food and Nutrition Paper 51 (1991), from memory: child of 2 to 5 years. */
const double quality_pattern_1991[AMINO_COUNT] = {1.9, 2.8, 6.6, 5.8, 2.5, 6.3, 3.4, 1.1, 3.5};
/* FAO Food and Nutrition Paper 92 (2013), table 5, from memory: older child, adolescent, adult. */
const double quality_pattern_2013[AMINO_COUNT] = {1.6, 3.0, 6.1, 4.8, 2.3, 4.1, 2.5, 0.66, 4.0};

/* What a batch brings, in g. */
typedef struct {
    double protein;             /* all of it */
    double profiled;            /* with profile and digestibility */
    double digested;            /* of the profiled */
    double amino[AMINO_COUNT];  /* of the profiled */
    double having[AMINO_COUNT]; /* profiled protein for which this amino acid is known */
    bool unclear;               /* a line may bring protein that nobody knows of */
} protein_sum;

/* Share of the protein that an ingredient without a profile must bring to be named. */
#define WORTH_NAMING 0.01

static bool is_profiled(const ingredient *what) {
    return what->has_amino_acids[AMINO_LYSINE] && what->has_amino_acids[AMINO_SULPHUR] &&
           what->has_amino_acids[AMINO_THREONINE] && what->digestibility > 0;
}

static void add_profiled(protein_sum *sum, const ingredient *what, double protein_g) {
    sum->profiled += protein_g;
    sum->digested += protein_g * what->digestibility;
    for (size_t i = 0; i < AMINO_COUNT; i++)
        if (what->has_amino_acids[i]) {
            sum->amino[i] += protein_g * what->amino_acids_g[i] / 100;
            sum->having[i] += protein_g;
        }
}

static bool has_protein_figure(const ingredient *what) {
    return nutrient_known(&what->per_100_g, NUTRIENT_PROTEIN);
}

static double protein_in(const ingredient *what, double grams) {
    return what->per_100_g.of[NUTRIENT_PROTEIN] * grams / 100;
}

static void add_ingredient(protein_sum *sum, const ingredient *what, double grams) {
    if (!has_protein_figure(what)) {
        sum->unclear = true;
        return;
    }
    sum->protein += protein_in(what, grams);
    if (is_profiled(what))
        add_profiled(sum, what, protein_in(what, grams));
}

/* Lowest ratio to `pattern` among the amino acids that are scored. */
static double score_against(const double pattern[AMINO_COUNT], const protein_sum *sum,
                            unsigned unscored, amino_acid *limiting) {
    double lowest = HUGE_VAL;
    for (size_t i = 0; i < AMINO_COUNT; i++) {
        if (unscored >> i & 1u)
            continue;
        double ratio = sum->amino[i] / sum->having[i] * 100 / pattern[i];
        if (ratio < lowest) {
            lowest = ratio;
            *limiting = (amino_acid)i;
        }
    }
    return lowest;
}

static unsigned unscored_in(const protein_sum *sum) {
    unsigned unscored = 0;
    for (size_t i = 0; i < AMINO_COUNT; i++)
        if (sum->having[i] < QUALITY_COVER * sum->profiled)
            unscored |= 1u << i;
    return unscored;
}

static protein_quality quality_of_sum(const protein_sum *sum) {
    protein_quality q = {0};
    if (sum->protein <= 0 || sum->profiled <= 0)
        return q;
    amino_acid limiting_2013;
    q.covered = sum->profiled / sum->protein;
    q.unscored = unscored_in(sum);
    q.digestibility = sum->digested / sum->profiled;
    q.score = score_against(quality_pattern_1991, sum, q.unscored, &q.limiting);
    q.score_2013 = score_against(quality_pattern_2013, sum, q.unscored, &limiting_2013);
    q.pdcaas = fmin(1, q.score * q.digestibility);
    q.known = !sum->unclear && q.covered >= QUALITY_COVER;
    return q;
}

static protein_sum sum_of(const recipe *of) {
    protein_sum sum = {0};
    for (size_t i = 0; i < of->lines.count; i++) {
        if (line_is_weighed(of, i))
            add_ingredient(&sum, of->lines.items[i].what, of->weights[i].grams);
        else if (line_counts(of, i))
            sum.unclear = true;
    }
    return sum;
}

/* True when line `i` is a reason why not all of `protein_g` is scored. */
static bool is_without(const recipe *of, size_t i, double protein_g) {
    const ingredient *what = of->lines.items[i].what;
    if (!line_is_weighed(of, i) || !has_protein_figure(what))
        return line_counts(of, i);
    double own_g = protein_in(what, of->weights[i].grams);
    return !is_profiled(what) && own_g > WORTH_NAMING * protein_g;
}

protein_quality quality_of(arena *a, const recipe *of) {
    protein_sum sum = sum_of(of);
    protein_quality q = quality_of_sum(&sum);
    for (size_t i = 0; i < of->lines.count; i++)
        if (is_without(of, i, sum.protein))
            word_add_once(a, &q.without, line_name(of, i));
    return q;
}

protein_quality quality_of_ingredient(arena *a, const ingredient *what) {
    protein_sum sum = {0};
    add_ingredient(&sum, what, 100);
    protein_quality q = quality_of_sum(&sum);
    if (!q.known && (sum.unclear || sum.protein > 0))
        word_add_once(a, &q.without, what->name);
    return q;
}

double quality_corrected_g(const protein_quality *of, double protein_g) {
    return of->known ? protein_g * of->pdcaas : 0;
}

const char *quality_daily_value(arena *a, const protein_quality *of, double protein_g) {
    if (!of->known)
        return NULL;
    return label_daily_value(a, NUTRIENT_PROTEIN, quality_corrected_g(of, protein_g));
}
