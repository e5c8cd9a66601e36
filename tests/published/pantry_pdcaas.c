/* The reference pantry's profiles and digestibilities, scored, against published PDCAAS: within
 * 0.1, as laboratories differ by that much. Phillips is Nutrition and Metabolism 2016, table 1,
 * after Rutherfurd et al. 2015. */
#include "reference_shelf.h"

#include "nutrition/quality.h"

static const struct {
    const char *name;
    double low, high;
} rows[] = {
    {"whey protein concentrate", 1.00, 1.00}, /* Phillips */
    {"whey protein isolate", 1.00, 1.00},     /* Phillips */
    {"micellar casein", 1.00, 1.00},          /* widely repeated (FAO/WHO 1991) */
    {"skim milk powder", 1.00, 1.00},         /* widely repeated */
    {"egg white powder", 1.00, 1.00},         /* widely repeated */
    {"soy protein isolate", 0.98, 1.00},      /* Phillips */
    {"pea protein isolate", 0.89, 0.89},      /* Phillips */
    {"rice protein powder", 0.42, 0.42},      /* Phillips */
    {"hemp protein powder", 0.46, 0.51},      /* House, Neufeld and Leson 2010, abstract: meal */
    {"rolled oats", 0.46, 0.67},              /* three papers */
    {"almond butter", 0.44, 0.48},            /* House et al., Food Sci. Nutr. 2019 7:2932-2938 */
    {"peanut butter", 0.51, 0.52},            /* widely repeated */
    {"chickpea flour", 0.71, 0.78},           /* FAO/WHO 1991 and later */
    {"whole wheat flour", 0.38, 0.45},        /* Sarwar 1984, abstract */
    {"all-purpose flour", 0.25, 0.40},        /* widely repeated */
};

static void published_scores(void **state) {
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        protein_quality q = quality_of_ingredient(shelf->home, on_shelf(shelf, rows[i].name));
        if (!q.known)
            fail_msg("%s: no profile", rows[i].name);
        if (q.pdcaas < rows[i].low - 0.1 || q.pdcaas > rows[i].high + 0.1)
            fail_msg("%s: %.3f, published %.2f to %.2f", rows[i].name, q.pdcaas, rows[i].low,
                     rows[i].high);
    }
}

/* Gelatine and collagen have no tryptophan at all, so PDCAAS is 0: no claim can rest on them. */
static void collagen_scores_nothing(void **state) {
    const pantry *shelf = *state;
    protein_quality q = quality_of_ingredient(shelf->home, on_shelf(shelf, "collagen peptides"));
    if (q.known && q.pdcaas > 0)
        fail_msg("collagen: %.3f", q.pdcaas);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_scores),
        cmocka_unit_test(collagen_scores_nothing),
    };
    return cmocka_run_group_tests_name("published: the pantry's protein", tests, shelf_up,
                                       shelf_down);
}
