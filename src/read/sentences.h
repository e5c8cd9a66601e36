/* Every sentence the pages say beside what the site and its theme hold, by name; their words are in
 * the language's file (src/reference/language-en.yaml).
 *
 *     PLAIN(ABOUT, "about", 1, "amount")      how many places, and their names
 *     COUNTED(RECIPES, "recipes", 1, "count") with a form for each way of counting; the first place
 *                                             is the count and may be left out of a form */
#ifndef READ_SENTENCES_H
#define READ_SENTENCES_H

#define SENTENCES(PLAIN, COUNTED)                                                                  \
    /* figures */                                                                                  \
    PLAIN(UNCHANGED, "unchanged", 0, "")                                                           \
    PLAIN(ABOUT, "about", 1, "amount")                                                             \
    PLAIN(ABOUT_WITH_MEASURE, "about-with-measure", 2, "weight measure")                           \
    PLAIN(WITH_MEASURE, "with-measure", 2, "weight measure")                                       \
    PLAIN(FROM_TO, "from-to", 2, "low high")                                                       \
    PLAIN(PERCENT, "percent", 1, "number")                                                         \
    PLAIN(AT_LEAST, "at-least", 1, "figure")                                                       \
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
#define ENUMERATED(constant, name, count, places) SENTENCE_PLACES_##constant = count,
    SENTENCES(ENUMERATED, ENUMERATED)
#undef ENUMERATED
};

#endif
