/* Protein quality of a batch: amino-acid score and PDCAAS (FAO/WHO 1991), also scored against the
 * FAO 2013 pattern. A mix is scored on its summed amino acids, not by averaging scores, since
 * proteins complement each other: rice is short of lysine, pea of methionine.
 *
 * Amino acids and protein are taken as the pantry has them. Profiles are per 100 g of nitrogen x
 * 6.25; where a table states protein by a factor of the food's own (almond 5.18), its share of a
 * mix is a little understated. */
#ifndef NUTRITION_QUALITY_H
#define NUTRITION_QUALITY_H

#include "measure/recipe.h"

typedef struct {
    bool known;           /* profiles cover enough of the protein (see QUALITY_COVER) */
    double covered;       /* share of the batch's protein that has profile and digestibility */
    double score;         /* lowest ratio to the pattern, uncut */
    double pdcaas;        /* score x digestibility, cut at 1 */
    double digestibility; /* protein-weighted */
    amino_acid limiting;
    double score_2013; /* against FAO 2013, older child and adult */
    word_list without; /* ingredients that bring protein (a hundredth of it and more) and have no
                        * profile, or of which nobody knows what they bring */
    unsigned unscored; /* bit 1u << amino_acid: known for too little of the protein to be scored
                        * (tryptophan is often not measured); it might limit, too */
} protein_quality;

/* Share of the protein that must have a profile before a score is shown: 0.9. Our choice; the
 * same share must have an amino acid for it to be scored. */
#define QUALITY_COVER 0.9

/* Scores the protein of `of`. `without` is in the arena. A profile serves when at least lysine,
 * the sulphur amino acids and threonine, which limit most foods, are in it, and digestibility is
 * stated. Not known either when a line has no weight, no known ingredient or no figure for
 * protein: `without` names it. */
protein_quality quality_of(arena *a, const recipe *of);

/* The same for one ingredient alone. Not known without a profile or protein. */
protein_quality quality_of_ingredient(arena *a, const ingredient *what);

/* Protein corrected for its quality, g: what US claims and the US percent go by; 0 while the
 * quality is not known. 21 CFR 101.9(c)(7)(ii). */
double quality_corrected_g(const protein_quality *of, double protein_g);

/* Percent of the US daily value (50 g) for `protein_g`, corrected, to 1 %: "17 %"; null while the
 * quality is not known. In the arena. 21 CFR 101.9(c)(7)(iii). */
const char *quality_daily_value(arena *a, const protein_quality *of, double protein_g);

/* The reference pattern in g per 100 g protein: FAO/WHO 1991, 2-5 years (21 CFR 101.9(c)(7)), and
 * FAO 2013, 3 years and over. */
extern const double quality_pattern_1991[AMINO_COUNT];
extern const double quality_pattern_2013[AMINO_COUNT];

#endif
