/* Protein quality against published scores. Profiles are g per 100 g protein (nitrogen x 6.25) in
 * the order of the FAO/WHO pattern: histidine, isoleucine, leucine, lysine, methionine + cystine,
 * phenylalanine + tyrosine, threonine, tryptophan, valine; -1: not measured.
 *
 * "USDA 17" is the report of release 17 (2004) of the USDA National Nutrient Database with its
 * code; "Gorissen" is Amino Acids 2018 50:1685-1695, table 1, divided by the powder's protein. */
#include "unit/support/cmocka_rows.h"

#include "nutrition/quality.h"
#include "unit/support/build_recipe.h"

typedef struct {
    const char *name;
    double profile[AMINO_COUNT];
    double digestibility;
    double published_low, published_high; /* PDCAAS */
    amino_acid limiting;
} protein_row;

/* Phillips is Nutrition and Metabolism 2016, table 1, after Rutherfurd et al. 2015. */
static const protein_row proteins[] = {
    /* USDA 17 01115; Phillips 1.00 */
    {"sweet whey",
     {1.87, 5.68, 9.36, 8.13, 3.9, 6.08, 6.45, 1.62, 5.5},
     0.97,
     1,
     1,
     AMINO_AROMATIC},
    /* Gorissen; Phillips 1.00 */
    {"whey concentrate", {1.8, 4.9, 11, 9.1, 3.3, 6.3, 6.9, -1, 4.5}, 0.97, 1, 1, AMINO_HISTIDINE},
    /* Gorissen; 1.00 widely repeated (FAO/WHO 1991) */
    {"caseinate", {2.6, 3.5, 9.1, 6.9, 2.7, 10, 4.1, -1, 4.4}, 0.99, 1, 1, AMINO_SULPHUR},
    /* USDA 17 01091; 1.00 widely repeated */
    {"skim milk powder",
     {2.77, 6.18, 10, 8.1, 3.5, 9.86, 4.61, 1.44, 6.83},
     0.95,
     1,
     1,
     AMINO_TRYPTOPHAN},
    /* USDA 17 01173; 1.00 widely repeated */
    {"dried egg white",
     {2.26, 5.65, 8.43, 6.8, 6.03, 9.73, 4.54, 1.23, 6.37},
     0.97,
     1,
     1,
     AMINO_TRYPTOPHAN},
    /* USDA 17 16122; Phillips 0.98 and 1.00 */
    {"soy isolate",
     {2.61, 4.82, 7.68, 6.03, 2.46, 8.85, 3.55, 1.26, 4.64},
     0.95,
     0.98,
     1,
     AMINO_SULPHUR},
    /* Babault et al., J. Int. Soc. Sports Nutrition 2015 (from memory); Phillips 0.89 */
    {"pea", {2.5, 4.7, 8.2, 7.1, 2.1, 9.3, 3.8, 1.0, 5.0}, 0.98, 0.89, 0.89, AMINO_SULPHUR},
    /* Gorissen; Phillips 0.42 */
    {"brown rice", {1.9, 2.5, 7.3, 2.4, 3.3, 9.1, 2.9, 1.4, 3.5}, 0.93, 0.42, 0.42, AMINO_LYSINE},
    /* Gorissen; House, Neufeld and Leson 2010, abstract */
    {"hemp", {2.2, 2.0, 5.1, 2.75, 2.4, 6.1, 2.5, -1, 2.5}, 0.94, 0.46, 0.51, AMINO_LYSINE},
    /* USDA 17 20038; 0.46 to 0.67 in three papers */
    {"oats",
     {2.24, 3.83, 7.09, 3.87, 3.98, 8.11, 3.18, 1.29, 5.17},
     0.86,
     0.46,
     0.67,
     AMINO_LYSINE},
    /* USDA 17 12061; House et al., Food Sci. Nutr. 2019 7:2932-2938, abstract */
    {"almond",
     {2.31, 2.69, 5.73, 2.34, 1.83, 6.54, 2.64, 0.75, 3.11},
     0.88,
     0.44,
     0.48,
     AMINO_LYSINE},
    /* USDA 17 16087; 0.52 widely repeated */
    {"peanut",
     {2.21, 3.07, 5.66, 3.14, 2.19, 8.08, 2.99, 0.85, 3.66},
     0.94,
     0.51,
     0.52,
     AMINO_LYSINE},
    /* USDA 17 16056; 0.71 to 0.78 */
    {"chickpea",
     {2.75, 4.29, 7.12, 6.69, 2.65, 7.84, 3.71, 0.96, 4.19},
     0.87,
     0.71,
     0.78,
     AMINO_TRYPTOPHAN},
    /* USDA 17 20080; 0.38 to 0.45 (Sarwar 1984 abstract, and widely repeated) */
    {"whole wheat",
     {2.16, 3.46, 6.3, 2.57, 3.6, 7.12, 2.69, 1.44, 4.21},
     0.86,
     0.38,
     0.45,
     AMINO_LYSINE},
    /* USDA 17 20481; 0.25 gluten, about 0.40 flour, widely repeated */
    {"white wheat flour",
     {2.03, 3.15, 6.27, 2.01, 3.55, 7.35, 2.48, 1.12, 3.66},
     0.96,
     0.25,
     0.40,
     AMINO_LYSINE},
};

static ingredient *protein_named(arena *a, const char *name) {
    for (size_t i = 0; i < COUNT(proteins); i++)
        if (strcmp(proteins[i].name, name) == 0) {
            ingredient *one = food(a, name, FAMILY_PROTEIN_POWDER, "", ORIGIN_PLANT);
            food_holds(one, 100, 0, 0, 0);
            food_amino_acids(one, proteins[i].profile, proteins[i].digestibility);
            return one;
        }
    fail_msg("no protein %s", name);
    return NULL;
}

static void single_proteins_within_a_tenth(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(proteins); i++) {
        const protein_row *row = &proteins[i];
        protein_quality q = quality_of_ingredient(a, protein_named(a, row->name));
        expect_bool(row->name, q.known, true);
        if (q.pdcaas < row->published_low - 0.1 || q.pdcaas > row->published_high + 0.1)
            fail_msg("%s: %.3f, published %.2f to %.2f", row->name, q.pdcaas, row->published_low,
                     row->published_high);
        if (q.limiting != row->limiting)
            fail_msg("%s is limited by %s", row->name, amino_acid_key(q.limiting));
    }
    arena_free(a);
}

static protein_quality mix(arena *a, const char *first, double first_g, const char *second,
                           double second_g) {
    recipe *r = recipe_new(a, "bar");
    recipe_add(a, r, protein_named(a, first), first_g);
    recipe_add(a, r, protein_named(a, second), second_g);
    recipe_finish(r, 1, 0);
    return quality_of(a, r);
}

/* By hand after FAO/WHO 1991: 10 g protein of peanut (lysine 3.14, digestibility 0.94) and 10 g of
 * dried egg white (6.80, 0.97) have 4.97 g lysine in 100 g, 0.857 of the pattern; times 0.955 is
 * 0.82. The average of the two scores would be 0.75. */
static void peanut_and_egg_white(void **state) {
    (void)state;
    arena *a = arena_new();
    protein_quality q = mix(a, "peanut", 10, "dried egg white", 10);
    assert_int_equal(q.limiting, AMINO_LYSINE);
    expect_near("score", q.score, 0.857, 0.0005);
    expect_near("digestibility", q.digestibility, 0.955, 1e-9);
    expect_near("PDCAAS", q.pdcaas, 0.82, 0.005);
    arena_free(a);
}

/* Rice is short of lysine, pea of the sulphur amino acids: seven parts of pea and three of rice
 * score above both. By hand: lysine 5.69 / 5.8 = 0.981, sulphur 2.46 / 2.5 = 0.984; times
 * 0.965. */
static void rice_and_pea_complement_each_other(void **state) {
    (void)state;
    arena *a = arena_new();
    double pea = quality_of_ingredient(a, protein_named(a, "pea")).pdcaas;
    double rice = quality_of_ingredient(a, protein_named(a, "brown rice")).pdcaas;
    protein_quality q = mix(a, "pea", 70, "brown rice", 30);
    expect_near("PDCAAS", q.pdcaas, 0.981 * 0.965, 0.001);
    if (q.pdcaas <= pea || q.pdcaas <= rice)
        fail_msg("the mix scores %.3f, pea %.3f, rice %.3f", q.pdcaas, pea, rice);
    arena_free(a);
}

/* FAO Food and Nutrition Paper 92 (2013), by hand: rice lysine 2.4 / 4.8; whey histidine 1.8 / 1.6
 * (as much as its valine, 4.5 / 4.0); pea sulphur amino acids 2.1 / 2.3. */
static void scores_by_the_pattern_of_2013(void **state) {
    (void)state;
    arena *a = arena_new();
    static const struct {
        const char *name;
        double score;
    } rows[] = {{"brown rice", 0.5}, {"whey concentrate", 1.125}, {"pea", 2.1 / 2.3}};
    for (size_t i = 0; i < COUNT(rows); i++)
        expect_near(rows[i].name,
                    quality_of_ingredient(a, protein_named(a, rows[i].name)).score_2013,
                    rows[i].score, 1e-9);
    arena_free(a);
}

/* The scoring pattern of FAO/WHO 1991 for 2 to 5 years (from memory), at full digestibility,
 * scores 1 by itself: every ratio is 1. */
static void a_protein_like_the_pattern_scores_one(void **state) {
    (void)state;
    arena *a = arena_new();
    ingredient *one = food(a, "pattern", FAMILY_PROTEIN_POWDER, "", ORIGIN_PLANT);
    static const double pattern[] = {1.9, 2.8, 6.6, 5.8, 2.5, 6.3, 3.4, 1.1, 3.5};
    food_holds(one, 50, 0, 0, 0);
    food_amino_acids(one, pattern, 1);
    expect_near("score", quality_of_ingredient(a, one).score, 1, 1e-12);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(single_proteins_within_a_tenth),
        cmocka_unit_test(peanut_and_egg_white),
        cmocka_unit_test(rice_and_pea_complement_each_other),
        cmocka_unit_test(scores_by_the_pattern_of_2013),
        cmocka_unit_test(a_protein_like_the_pattern_scores_one),
    };
    return cmocka_run_group_tests_name("published: protein quality", tests, NULL, NULL);
}
