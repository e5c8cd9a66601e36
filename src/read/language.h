/* A language: the words that pages are made of beside what the site and its theme hold. Its file is
 * `language-<tag>.yaml` in the site folder, over the one compiled in (src/reference), of which
 * there is one a language: so a site changes a sentence by a file of that sentence alone, and
 * brings a language of its own by a whole file.
 *
 * Read once, constant after, shared by all workers. Sentences are cut into pieces when they are
 * read and found by number (base/sentences.h). */
#ifndef READ_LANGUAGE_H
#define READ_LANGUAGE_H

#include "base/digest.h"
#include "base/plural.h"
#include "base/problems.h"
#include "base/sentence.h"
#include "base/sentences.h"
#include "nutrition/cautions.h"
#include "nutrition/claims.h"
#include "nutrition/diets.h"
#include "nutrition/label.h"
#include "swap/balance_quantities.h"
#include "swap/rule.h"

/* Words for what an enumeration has: field, name in the file, type, how many, and what the program
 * calls each: the key in the file. */
#define WORD_LISTS(LIST)                                                                           \
    LIST(months, "months", size_t, LANGUAGE_MONTHS, month_key)                                     \
    LIST(verdicts, "verdicts", verdict, VERDICT_COUNT, verdict_word)                               \
    LIST(verdict_sentences, "verdict-sentences", verdict, VERDICT_COUNT, verdict_word)             \
    LIST(allergens, "allergens", allergen, ALLERGEN_COUNT, allergen_word)                          \
    LIST(allergens_us, "allergens-us", allergen, ALLERGEN_COUNT, allergen_us_key)                  \
    LIST(allergens_eu, "allergens-eu", allergen, ALLERGEN_COUNT, allergen_eu_key)                  \
    LIST(allergens_uk, "allergens-uk", allergen, ALLERGEN_COUNT, allergen_uk_key)                  \
    LIST(label_us, "label-us", size_t, LABEL_US_ROWS, label_us_key)                                \
    LIST(label_eu, "label-eu", size_t, LABEL_EU_ROWS, label_eu_key)                                \
    LIST(label_plain, "label-plain", size_t, LABEL_PLAIN_ROWS, label_plain_key)                    \
    LIST(claims_us, "claims-us", size_t, CLAIMS_US, claim_us_key)                                  \
    LIST(claims_eu, "claims-eu", size_t, CLAIMS_EU, claim_eu_key)                                  \
    LIST(facts, "facts", first_fact, FACT_COUNT, fact_key)                                         \
    LIST(diets, "diets", diet, DIET_COUNT, diet_word)                                              \
    LIST(nutrients, "nutrients", nutrient, NUTRIENT_COUNT, nutrient_name)                          \
    LIST(amino_acids, "amino-acids", amino_acid, AMINO_COUNT, amino_acid_key)                      \
    LIST(families, "families", family, FAMILY_COUNT, family_word)                                  \
    LIST(origins, "origins", origin, ORIGIN_COUNT, origin_word)                                    \
    LIST(heat_sets, "heat-set", heat_set, HEAT_SET_COUNT, heat_set_word)                           \
    LIST(certainties, "certainties", certainty, CERTAINTY_COUNT, certainty_name)                   \
    LIST(weight_ways, "weight-ways", weight_way, WEIGHT_DENSITY + 1, weight_way_word)              \
    LIST(quantities, "quantities", balance_quantity, BALANCE_QUANTITIES, balance_quantity_key)     \
    LIST(quantity_reasons, "quantity-reasons", balance_quantity, BALANCE_QUANTITIES,               \
         balance_quantity_key)                                                                     \
    LIST(quantities_up, "quantities-up", balance_quantity, BALANCE_QUANTITIES,                     \
         balance_quantity_key)                                                                     \
    LIST(quantities_down, "quantities-down", balance_quantity, BALANCE_QUANTITIES,                 \
         balance_quantity_key)                                                                     \
    LIST(quantities_changed, "quantities-changed", balance_quantity, BALANCE_QUANTITIES,           \
         balance_quantity_key)                                                                     \
    LIST(kept, "kept", kept_thing, KEPT_COUNT, kept_word)                                          \
    LIST(cautions, "cautions", caution_cause, CAUTION_COUNT, caution_key)                          \
    LIST(points, "points", size_t, LANGUAGE_POINTS, balance_row_key)                               \
    LIST(measured, "measured", size_t, LANGUAGE_MEASURED, measured_key)

/* The figures that a reader looks for first. */
typedef enum {
    FACT_PROTEIN,
    FACT_ENERGY,
    FACT_FAT,
    FACT_CARBOHYDRATE,
    FACT_FIBRE,
    FACT_SUGARS,
    FACT_COUNT
} first_fact;

enum { LANGUAGE_MONTHS = 12, LANGUAGE_MEASURED = 3, LANGUAGE_POINTS = 4 };

/* Words for kinds of recipes and of ingredients, as far as a language has any: kinds are what
 * whoever writes a site makes of them. */
typedef struct {
    const char *kind, *word;
} kind_word;

typedef struct {
    kind_word *items;
    size_t count, capacity;
} kind_words;

typedef struct language {
    const char *tag;             /* "en" */
    const char *decimal, *group; /* marks in numbers; group: empty for none */
    bool measures_plainly;       /* kitchen measures are said as the program writes them */
    bool writes_plainly;         /* as the program does: a point, no groups */
    plural_rules plurals;
    cut_sentence said[SENTENCE_COUNT][PLURAL_FORMS]; /* those of one form have it as `other` */
#define LISTED(field, name, type, count, key) const char *field[count];
    WORD_LISTS(LISTED)
#undef LISTED
    kind_words kinds;
    digest own; /* of the site's own file; 0 where there is none */
} language;

/* English, as compiled in, in `home`: what the program says on a terminal. */
const language *language_english(arena *home);

/* The language `tag` (RFC 5646; of "de-CH" without a file, "de") of the site in `folder` (null: the
 * compiled in alone), in `home`. False with problems when there is none, or its file lacks
 * something or has what nobody asks for; `*out` is then English where it is nothing else. */
bool language_read(arena *home, const char *folder, const char *tag, language *out,
                   problems *found);

/* The word for a kind of recipe or of ingredient; `kind` itself, which may be null, where the
 * language has none. */
const char *language_kind(const language *in, const char *kind);

#endif
