/* Figures as the pages say them: weights, changes, times, dates, lists of words. Everything is in
 * the arena; nothing here knows a locale. */
#ifndef SITE_PHRASE_H
#define SITE_PHRASE_H

#include "measure/kitchen.h"
#include "measure/recipe.h"

/* "+2.1 g", "\u22124 kcal" with a true minus sign, "unchanged" when it rounds to nothing. */
char *phrase_change(arena *a, double value, int decimals, const char *in);

/* "24 g", "0.4 g": one decimal under 10, none above. */
char *phrase_amount(arena *a, double value, const char *in);

/* "16\u201333 g", or "16 g" when both ends round to the same. */
char *phrase_grams_range(arena *a, double low_g, double high_g);

/* The ends of a range as far as its width lets them be told: "30\u201365 g", to 5 g from 20 g of
 * width on. */
char *phrase_wide_range(arena *a, double low_g, double high_g);

/* An amount in the words of phrase_about, apart. */
typedef struct {
    bool is_about;
    const char *weight;  /* "45 g" */
    const char *measure; /* "3 tbsp"; null: it has no household weight */
} amount_words;

amount_words phrase_amount_words(arena *a, const ingredient *what, range grams, cup_standard cups);

/* An amount no more exactly than its range: "46 g (3 tbsp)" where the range is narrow, else "about
 * 45 g (3 tbsp)": what one vessel holds, where that is nearly it and within the range. */
char *phrase_about(arena *a, const ingredient *what, range grams, cup_standard cups);

/* "1 h 20 min" and "PT1H20M" (ISO 8601). */
char *phrase_minutes(arena *a, double minutes);
char *phrase_minutes_iso(arena *a, double minutes);

/* "2 May 2026" from "2026-05-02"; what it can't read it returns as it is. Null stays null. */
const char *phrase_date(arena *a, const char *date);

/* "46 g (1/2 cup)"; just the weight when the ingredient has no household weight. */
char *phrase_weighed(arena *a, const ingredient *what, double grams, cup_standard cups);

/* "8 rounds", "1 1/2 loaves", "1/12 loaf". */
char *phrase_yield(arena *a, const yield *of);

/* "Griddle cake" from "griddle cake"; only ASCII letters change. */
char *phrase_capitalised(arena *a, const char *words);

/* "a, b and c". */
char *phrase_list(arena *a, const char *const *words, size_t count);

/* "1 recipe", "3 recipes": `count` and the noun, an s added unless it is one. */
char *phrase_count(arena *a, size_t count, const char *noun);

#endif
