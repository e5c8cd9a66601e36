/* Protein quality of a batch: amino-acid score and PDCAAS (FAO/WHO 1991), also scored against the
 * FAO 2013 pattern. A mix is scored on its summed amino acids, not by averaging scores, since
 * proteins complement each other. */
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
    word_list without; /* ingredients that bring protein and have no profile */
} protein_quality;

/* Share of the protein that must have a profile before a score is shown: 0.9. */
#define QUALITY_COVER 0.9

/* Scores the protein of `of`. `without` is in the arena. */
protein_quality quality_of(arena *a, const recipe *of);

/* The reference pattern in g per 100 g protein: FAO/WHO 1991, 2-5 years (21 CFR 101.9(c)(7)), and
 * FAO 2013, 3 years and over. */
extern const double quality_pattern_1991[AMINO_COUNT];
extern const double quality_pattern_2013[AMINO_COUNT];

#endif
