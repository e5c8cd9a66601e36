/* Every sentence the pages say beside what the site and its theme hold, by name; their words are in
 * the language's file (src/reference/language-en.yaml).
 *
 *     PLAIN(ABOUT, "about", 1, "amount")      how many places, and their names
 *     COUNTED(RECIPES, "recipes", 1, "count") with a form for each way of counting; the first place
 *                                             is the count and may be left out of a form */
#ifndef BASE_SENTENCES_H
#define BASE_SENTENCES_H

#define SENTENCES(PLAIN, COUNTED)                                                                  \
    /* figures */                                                                                  \
    PLAIN(UNCHANGED, "unchanged", 0, "")                                                           \
    PLAIN(ABOUT, "about", 1, "amount")                                                             \
    PLAIN(ABOUT_WITH_MEASURE, "about-with-measure", 2, "weight measure")                           \
    PLAIN(WITH_MEASURE, "with-measure", 2, "weight measure")                                       \
    PLAIN(FROM_TO, "from-to", 2, "low high")                                                       \
    PLAIN(PERCENT, "percent", 1, "number")                                                         \
    PLAIN(AT_LEAST, "at-least", 1, "figure")                                                       \
    PLAIN(LESS_THAN, "less-than", 1, "figure")                                                     \
    /* times and dates */                                                                          \
    PLAIN(MINUTES, "minutes", 1, "minutes")                                                        \
    PLAIN(HOURS, "hours", 1, "hours")                                                              \
    PLAIN(HOURS_AND_MINUTES, "hours-and-minutes", 2, "hours minutes")                              \
    PLAIN(DATE, "date", 3, "day month year")                                                       \
    /* lists */                                                                                    \
    PLAIN(LIST_BETWEEN, "list-between", 0, "")                                                     \
    PLAIN(LIST_LAST, "list-last", 0, "")                                                           \
    /* menu and pages */                                                                           \
    PLAIN(MENU_RECIPES, "menu-recipes", 0, "")                                                     \
    PLAIN(MENU_SEARCH, "menu-search", 0, "")                                                       \
    PLAIN(MENU_BAKE_WITH, "menu-bake-with", 0, "")                                                 \
    PLAIN(MENU_SWAPS, "menu-swaps", 0, "")                                                         \
    PLAIN(MENU_INGREDIENTS, "menu-ingredients", 0, "")                                             \
    PLAIN(CAUTION_ESTIMATES, "caution-estimates", 0, "")                                           \
    PLAIN(CAUTION_ALLERGENS, "caution-allergens", 0, "")                                           \
    PLAIN(SEARCH_TITLE, "search-title", 0, "")                                                     \
    PLAIN(SEARCH_SUMMARY, "search-summary", 0, "")                                                 \
    PLAIN(ALL_RECIPES, "all-recipes", 0, "")                                                       \
    PLAIN(RECIPES_BY_KIND, "recipes-by-kind", 0, "")                                               \
    PLAIN(RECIPES_BY_TAG, "recipes-by-tag", 0, "")                                                 \
    PLAIN(LIST_SUMMARY, "list-summary", 2, "heading recipes")                                      \
    PLAIN(NOT_FOUND, "not-found", 0, "")                                                           \
    PLAIN(INGREDIENTS_TITLE, "ingredients-title", 0, "")                                           \
    PLAIN(INGREDIENTS_SUMMARY, "ingredients-summary", 0, "")                                       \
    PLAIN(CUPBOARD_TITLE, "cupboard-title", 0, "")                                                 \
    PLAIN(CUPBOARD_SUMMARY, "cupboard-summary", 0, "")                                             \
    PLAIN(BAKE_TITLE, "bake-title", 1, "ingredient")                                               \
    COUNTED(BAKE_SUMMARY, "bake-summary", 2, "count ingredient")                                   \
    PLAIN(CHART_TITLE, "chart-title", 0, "")                                                       \
    PLAIN(CHART_SUMMARY, "chart-summary", 0, "")                                                   \
    PLAIN(CHART_POWDERS, "chart-powders", 0, "")                                                   \
    PLAIN(CHART_FLOURS, "chart-flours", 0, "")                                                     \
    PLAIN(CHART_BUTTERS, "chart-butters", 0, "")                                                   \
    PLAIN(CHART_CELL, "chart-cell", 5, "new old verdict recipes all")                              \
    /* an ingredient */                                                                            \
    PLAIN(UPTAKE, "uptake", 3, "grams low high")                                                   \
    PLAIN(WITH_RANGE, "with-range", 3, "figure low high")                                          \
    PLAIN(WHERE_IT_ANSWERS, "where-it-answers", 2, "kinds recipes")                                \
    PLAIN(DOES_SET_FIRM, "does-set-firm", 0, "")                                                   \
    PLAIN(DOES_SET_SOFTLY, "does-set-softly", 0, "")                                               \
    PLAIN(DOES_DRINK, "does-drink", 0, "")                                                         \
    PLAIN(DOES_DRY, "does-dry", 0, "")                                                             \
    PLAIN(DOES_SHORTEN, "does-shorten", 0, "")                                                     \
    PLAIN(DOES_SWEETEN, "does-sweeten", 1, "times")                                                \
    PLAIN(DOES_MOISTEN, "does-moisten", 0, "")                                                     \
    PLAIN(DOES_NEED_COOKING, "does-need-cooking", 0, "")                                           \
    /* how the water is reckoned: each figure, and behind it why it is what it is */               \
    PLAIN(WATER_TITLE, "water-title", 0, "")                                                       \
    PLAIN(WATER_SUMMARY, "water-summary", 0, "")                                                   \
    PLAIN(WATER_SHARE, "water-share", 0, "")                                                       \
    PLAIN(WATER_SHARE_WHY, "water-share-why", 0, "")                                               \
    PLAIN(WATER_SOFT, "water-soft", 0, "")                                                         \
    PLAIN(WATER_SOFT_WHY, "water-soft-why", 0, "")                                                 \
    PLAIN(WATER_PER_DRY, "water-per-dry", 0, "")                                                   \
    PLAIN(WATER_PER_DRY_WHY, "water-per-dry-why", 0, "")                                           \
    PLAIN(WATER_CHANGE, "water-change", 0, "")                                                     \
    PLAIN(WATER_CHANGE_WHY, "water-change-why", 0, "")                                             \
    PLAIN(WATER_SHORT, "water-short", 0, "")                                                       \
    PLAIN(WATER_SHORT_WHY, "water-short-why", 0, "")                                               \
    PLAIN(WATER_BOUNDS, "water-bounds", 0, "")                                                     \
    PLAIN(WATER_BOUNDS_WHY, "water-bounds-why", 0, "")                                             \
    PLAIN(WATER_HELD_BACK, "water-held-back", 0, "")                                               \
    PLAIN(WATER_HELD_BACK_WHY, "water-held-back-why", 0, "")                                       \
    PLAIN(WATER_WEIGHT, "water-weight", 0, "")                                                     \
    PLAIN(WATER_WEIGHT_WHY, "water-weight-why", 0, "")                                             \
    PLAIN(WATER_WIDENED, "water-widened", 0, "")                                                   \
    PLAIN(WATER_WIDENED_WHY, "water-widened-why", 0, "")                                           \
    PLAIN(HALF_ITS_WEIGHT, "half-its-weight", 0, "")                                               \
    PLAIN(TIMES_WHAT_GOES, "times-what-goes", 2, "low high")                                       \
    PLAIN(TIMES, "times", 1, "factor")                                                             \
    /* trials, and what they say of like recipes */                                                \
    PLAIN(ONE_FOR_OTHER, "one-for-other", 2, "new old")                                            \
    PLAIN(CAME_OUT, "came-out", 1, "texture")                                                      \
    PLAIN(WITH_LESS_LIQUID, "with-less-liquid", 2, "amounts liquid")                               \
    PLAIN(WITH_MORE_LIQUID, "with-more-liquid", 2, "amounts liquid")                               \
    PLAIN(WITH_CHANGE, "with-change", 2, "amounts change")                                         \
    PLAIN(OTHER_BAKES_HERE, "other-bakes-here", 0, "")                                             \
    COUNTED(TRIED_ELSEWHERE, "tried-elsewhere", 1, "count")                                        \
    COUNTED(TRIED_AND_AGREED, "tried-and-agreed", 2, "count agreement")                            \
    PLAIN(IT_AGREES, "it-agrees", 0, "")                                                           \
    PLAIN(IT_CAME_OUT_OTHERWISE, "it-came-out-otherwise", 0, "")                                   \
    PLAIN(ALL_AGREE, "all-agree", 0, "")                                                           \
    PLAIN(NONE_AGREES, "none-agrees", 0, "")                                                       \
    COUNTED(SOME_AGREE, "some-agree", 1, "count")                                                  \
    PLAIN(UNTRIED_HERE, "untried-here", 1, "ingredient")                                           \
    /* what becomes of the balance */                                                              \
    PLAIN(CRUMBS_IN_THE_BOWL, "crumbs-in-the-bowl", 0, "")                                         \
    PLAIN(CHANGE_UP, "change-up", 3, "word amount what")                                           \
    PLAIN(CHANGE_DOWN, "change-down", 3, "word amount what")                                       \
    PLAIN(CHANGE_OF_SETTING, "change-of-setting", 2, "word change")                                \
    PLAIN(MORE_FIRM_SETTING, "more-firm-setting", 1, "amount")                                     \
    PLAIN(LESS_FIRM_SETTING, "less-firm-setting", 1, "amount")                                     \
    PLAIN(MORE_SOFT_SETTING, "more-soft-setting", 1, "amount")                                     \
    PLAIN(LESS_SOFT_SETTING, "less-soft-setting", 1, "amount")                                     \
    PLAIN(FOR_SOFT_SETTING, "for-soft-setting", 2, "change amount")                                \
    PLAIN(FOR_FIRM_SETTING, "for-firm-setting", 2, "change amount")                                \
    PLAIN(GRAMS_FROM_TO, "grams-from-to", 2, "low high")                                           \
    PLAIN(ITS_OWN_WEIGHT, "its-own-weight", 0, "")                                                 \
    PLAIN(TIMES_ITS_WEIGHT, "times-its-weight", 1, "times")                                        \
    PLAIN(UPTAKE_OF, "uptake-of", 3, "ingredient cold heated")                                     \
    PLAIN(RUNS_AND_DRIES, "runs-and-dries", 2, "new old")                                          \
    PLAIN(STIFF_AND_MOIST, "stiff-and-moist", 2, "new old")                                        \
    PLAIN(OF_UNKNOWN_UPTAKE, "of-unknown-uptake", 0, "")                                           \
    PLAIN(TOO_LITTLE_TO_TELL, "too-little-to-tell", 0, "")                                         \
    PLAIN(NO_DIFFERENCE, "no-difference", 0, "")                                                   \
    /* amounts of ingredients */                                                                   \
    PLAIN(WATER, "water", 0, "")                                                                   \
    PLAIN(AMOUNT_OF, "amount-of", 2, "amount ingredient")                                          \
    PLAIN(MORE_OF, "more-of", 2, "amount ingredient")                                              \
    PLAIN(LESS_OF, "less-of", 2, "amount ingredient")                                              \
    PLAIN(BOTH, "both", 2, "first second")                                                         \
    /* times, oven, weights of a recipe */                                                         \
    PLAIN(TIME_PREPARE, "time-prepare", 0, "")                                                     \
    PLAIN(TIME_REST, "time-rest", 0, "")                                                           \
    PLAIN(TIME_BAKE, "time-bake", 0, "")                                                           \
    PLAIN(TIME_COOL, "time-cool", 0, "")                                                           \
    PLAIN(OVEN, "oven", 2, "celsius fahrenheit")                                                   \
    PLAIN(WEIGHED_BY, "weighed-by", 2, "way source")                                               \
    /* a swap note */                                                                              \
    PLAIN(BY_THE_AUTHOR, "by-the-author", 0, "")                                                   \
    PLAIN(BY_A_TRIAL, "by-a-trial", 1, "date")                                                     \
    PLAIN(BY_OWN_RULE, "by-own-rule", 0, "")                                                       \
    PLAIN(BY_REFERENCE, "by-reference", 0, "")                                                     \
    PLAIN(BY_NOBODY, "by-nobody", 0, "")                                                           \
    PLAIN(BASIS_COMMON_PRACTICE, "basis-common-practice", 0, "")                                   \
    PLAIN(BASIS_FROM_MEMORY, "basis-from-memory", 0, "")                                           \
    PLAIN(BASIS_TRIAL, "basis-trial", 0, "")                                                       \
    PLAIN(BASIS_PUBLISHED, "basis-published", 1, "work")                                           \
    PLAIN(ADD_LIQUID, "add-liquid", 2, "amount liquid")                                            \
    PLAIN(HOLD_BACK_LIQUID, "hold-back-liquid", 2, "amount liquid")                                \
    PLAIN(BY_FEEL, "by-feel", 2, "change range")                                                   \
    PLAIN(FROM_LESS_TO_MORE, "from-less-to-more", 2, "less more")                                  \
    PLAIN(BETWEEN, "between", 2, "amount range")                                                   \
    PLAIN(FIGURES_CANT_TELL, "figures-cant-tell", 0, "")                                           \
    PLAIN(BY_THE_FIGURES, "by-the-figures", 2, "amount ruled")                                     \
    PLAIN(NOT_COUNTED, "not-counted", 0, "")                                                       \
    PLAIN(MACROS_CHANGE, "macros-change", 2, "protein energy")                                     \
    PLAIN(COST_CHANGE, "cost-change", 1, "cost")                                                   \
    PLAIN(PAST_USUAL, "past-usual", 0, "")                                                         \
    PLAIN(PAST_USUAL_BETTER, "past-usual-better", 1, "amounts")                                    \
    PLAIN(RULED_TOO_MUCH, "ruled-too-much", 1, "ruled")                                            \
    PLAIN(TAKES_UP_TOO_MUCH, "takes-up-too-much", 0, "")                                           \
    PLAIN(LEAVES_TOO_MUCH_FREE, "leaves-too-much-free", 0, "")                                     \
    PLAIN(NOTES_TITLE, "notes-title", 1, "recipe")                                                 \
    PLAIN(NOTES_SUMMARY, "notes-summary", 1, "recipe")                                             \
    /* a recipe with a swap applied */                                                             \
    PLAIN(SWAPPED_TITLE, "swapped-title", 2, "recipe new")                                         \
    PLAIN(SWAPPED_SUMMARY, "swapped-summary", 4, "recipe new old verdict")                         \
    PLAIN(WEIGHT, "weight", 0, "")                                                                 \
    PLAIN(COST, "cost", 0, "")                                                                     \
    /* claims: the amount, and what the rule asks for */                                           \
    PLAIN(CLAIM_RULE_EU, "claim-rule-eu", 0, "")                                                   \
    PLAIN(NO_FIGURE, "no-figure", 2, "figure ingredients")                                         \
    PLAIN(AMOUNT_IN, "amount-in", 3, "amount figure what")                                         \
    PLAIN(IN_100_G, "in-100-g", 0, "")                                                             \
    PLAIN(IN_A_PORTION, "in-a-portion", 0, "")                                                     \
    PLAIN(IN_100_KCAL, "in-100-kcal", 0, "")                                                       \
    PLAIN(IN_REFERENCE_AMOUNT, "in-reference-amount", 1, "amount")                                 \
    PLAIN(IN_SMALL_AMOUNT, "in-small-amount", 1, "amount")                                         \
    PLAIN(ENERGY_UNKNOWN, "energy-unknown", 1, "ingredients")                                      \
    PLAIN(NO_ENERGY, "no-energy", 0, "")                                                           \
    PLAIN(SHARE_OF_ENERGY, "share-of-energy", 2, "share figure")                                   \
    PLAIN(NO_AMOUNT_FOR_KIND, "no-amount-for-kind", 1, "kind")                                     \
    PLAIN(NO_AMOUNT_FOR_THIS_KIND, "no-amount-for-this-kind", 0, "")                               \
    PLAIN(PROTEIN_QUALITY_UNKNOWN, "protein-quality-unknown", 0, "")                               \
    PLAIN(PROTEIN_QUALITY_OF_UNKNOWN, "protein-quality-of-unknown", 1, "ingredients")              \
    PLAIN(SHARE_OF_DAILY_VALUE, "share-of-daily-value", 2, "amount share")                         \
    PLAIN(CORRECTED_SHARE_OF_DAILY_VALUE, "corrected-share-of-daily-value", 4,                     \
          "amount corrected pdcaas share")                                                         \
    PLAIN(TRANS_FAT_UNKNOWN, "trans-fat-unknown", 0, "")                                           \
    PLAIN(RULE_ASKS_AT_LEAST, "rule-asks-at-least", 2, "amount limit")                             \
    PLAIN(RULE_ASKS_AT_MOST, "rule-asks-at-most", 2, "amount limit")                               \
    PLAIN(RULE_ASKS_LESS_THAN, "rule-asks-less-than", 2, "amount limit")                           \
    PLAIN(NO_WEIGHT_KNOWN, "no-weight-known", 1, "ingredients")                                    \
    PLAIN(NOTHING_WEIGHED, "nothing-weighed", 0, "")                                               \
    PLAIN(NOT_IN_PANTRY, "not-in-pantry", 1, "ingredient")                                         \
    PLAIN(ADDED_TO_SWEETEN, "added-to-sweeten", 1, "ingredient")                                   \
    PLAIN(HOLDS_ADDED_SUGARS, "holds-added-sugars", 1, "ingredient")                               \
    PLAIN(BRINGS_SUGARS_ENOUGH, "brings-sugars-enough", 1, "ingredient")                           \
    PLAIN(MAY_SWEETEN, "may-sweeten", 1, "ingredient")                                             \
    PLAIN(NO_FIGURE_FOR_ADDED_SUGARS, "no-figure-for-added-sugars", 1, "ingredient")               \
    PLAIN(NOTHING_SWEETENS, "nothing-sweetens", 0, "")                                             \
    /* what a recipe's figures leave open */                                                       \
    PLAIN(PROTEIN_QUALITY, "protein-quality", 2, "score amino-acid")                               \
    PLAIN(PROTEIN_QUALITY_NOT_SCORED, "protein-quality-not-scored", 1, "ingredients")              \
    PLAIN(NOT_COUNTED_UNKNOWN, "not-counted-unknown", 1, "ingredients")                            \
    PLAIN(NOT_COUNTED_TO_TASTE, "not-counted-to-taste", 1, "ingredients")                          \
    PLAIN(COUNTED_THOUGH_OPTIONAL, "counted-though-optional", 1, "ingredients")                    \
    PLAIN(COUNTED_WHOLE, "counted-whole", 1, "ingredients")                                        \
    PLAIN(NO_BAKE_LOSS_STATED, "no-bake-loss-stated", 0, "")                                       \
    PLAIN(ALCOHOL_COUNTED, "alcohol-counted", 0, "")                                               \
    PLAIN(GRIDDLE_FAT, "griddle-fat", 0, "")                                                       \
    PLAIN(FIGURE_FROM_TO, "figure-from-to", 3, "figure low high")                                  \
    PLAIN(PACKS_ARE_ROUNDED, "packs-are-rounded", 1, "figures")                                    \
    PLAIN(FAR_FROM_REFERENCE_AMOUNT, "far-from-reference-amount", 2, "portion usual")              \
    /* why two for one come to no amounts */                                                       \
    PLAIN(ONE_WITH_OTHER, "one-with-other", 2, "first second")                                     \
    PLAIN(NOT_ENOUGH_TO_MAKE_UP, "not-enough-to-make-up", 3, "ingredient what amount")             \
    PLAIN(NO_AMOUNT_KEEPS_TOO_MUCH, "no-amount-keeps-too-much", 3, "ingredient what amount")       \
    PLAIN(NO_AMOUNT_KEEPS_MISSING, "no-amount-keeps-missing", 3, "ingredient what amount")         \
    PLAIN(NO_AMOUNTS_FOUND, "no-amounts-found", 0, "")                                             \
    PLAIN(UPTAKE_NOT_KNOWN, "uptake-not-known", 1, "ingredient")                                   \
    /* kitchen measures: their names in the program behind "kitchen-" */                           \
    PLAIN(KITCHEN_PINCH, "kitchen-pinch", 0, "")                                                   \
    PLAIN(KITCHEN_EACH, "kitchen-each", 1, "amount")                                               \
    COUNTED(KITCHEN_CUP, "kitchen-cup", 1, "amount")                                               \
    COUNTED(KITCHEN_TBSP, "kitchen-tbsp", 1, "amount")                                             \
    COUNTED(KITCHEN_TSP, "kitchen-tsp", 1, "amount")                                               \
    COUNTED(KITCHEN_SMALL, "kitchen-small", 1, "amount")                                           \
    COUNTED(KITCHEN_MEDIUM, "kitchen-medium", 1, "amount")                                         \
    COUNTED(KITCHEN_LARGE, "kitchen-large", 1, "amount")                                           \
    COUNTED(KITCHEN_EXTRA_LARGE, "kitchen-extra-large", 1, "amount")                               \
    COUNTED(KITCHEN_JUMBO, "kitchen-jumbo", 1, "amount")                                           \
    COUNTED(KITCHEN_PIECE, "kitchen-piece", 1, "amount")                                           \
    COUNTED(KITCHEN_SCOOP, "kitchen-scoop", 1, "amount")                                           \
    COUNTED(KITCHEN_STICK, "kitchen-stick", 1, "amount")                                           \
    COUNTED(KITCHEN_PACKET, "kitchen-packet", 1, "amount")                                         \
    COUNTED(KITCHEN_SACHET, "kitchen-sachet", 1, "amount")                                         \
    COUNTED(KITCHEN_SQUARE, "kitchen-square", 1, "amount")                                         \
    COUNTED(KITCHEN_CUBE, "kitchen-cube", 1, "amount")                                             \
    COUNTED(KITCHEN_SLICE, "kitchen-slice", 1, "amount")                                           \
    COUNTED(KITCHEN_SHEET, "kitchen-sheet", 1, "amount")                                           \
    COUNTED(KITCHEN_LEAF, "kitchen-leaf", 1, "amount")                                             \
    COUNTED(KITCHEN_BLOCK, "kitchen-block", 1, "amount")                                           \
    COUNTED(KITCHEN_CLOVE, "kitchen-clove", 1, "amount")                                           \
    COUNTED(KITCHEN_CAN, "kitchen-can", 1, "amount")                                               \
    COUNTED(KITCHEN_DROP, "kitchen-drop", 1, "amount")                                             \
    /* counts */                                                                                   \
    COUNTED(RECIPES, "recipes", 1, "count")                                                        \
    COUNTED(MORE, "more", 1, "count")

typedef enum {
#define ENUMERATED(constant, name, count, places) SAY_##constant,
    SENTENCES(ENUMERATED, ENUMERATED)
#undef ENUMERATED
        SENTENCE_COUNT
} sentence_key;

/* How many places each has, for the compiler to check against what it is filled with. */
enum {
#define ENUMERATED(constant, name, count, places) SENTENCE_PLACES_##constant = (count),
    SENTENCES(ENUMERATED, ENUMERATED)
#undef ENUMERATED
};

/* How many values fill places: 1 to 6. They are counted, not looked at, as in a constant they have
 * to be. */
#define PLACES_FILLED(...)                       SEVENTH_OF(__VA_ARGS__, 6, 5, 4, 3, 2, 1, 0)
#define SEVENTH_OF(a, b, c, d, e, f, count, ...) (count)

#endif
