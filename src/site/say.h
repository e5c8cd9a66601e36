/* What pages say, in the site's language: sentences filled in, and figures as people read them:
 * weights, changes, times, dates, lists of words. Everything is in the arena; no locale is asked.
 *
 * What programs read (JSON numbers, data attributes, durations, dates in ISO 8601) is not said. */
#ifndef SITE_SAY_H
#define SITE_SAY_H

#include "base/message.h"
#include "measure/kitchen.h"
#include "measure/recipe.h"
#include "read/language.h"

/* The words of a sentence without places; `which` is its name without SAY_. */
#define SAID(in, which) ((in)->said[SAY_##which][PLURAL_OTHER].pieces[0].words.at)

/* 0; does not compile when sentence `which` has another number of places than values are given. */
#define SAY_CHECKED(which, ...)                                                                    \
    (0 * sizeof(struct {                                                                           \
         _Static_assert(PLACES_FILLED(__VA_ARGS__) == SENTENCE_PLACES_##which,                     \
                        "as many values as the sentence has places");                              \
         char unused;                                                                              \
     }))

/* The sentence `which` with the values, texts, in its places in the order of base/sentences.h. */
#define SAY(a, in, which, ...)                                                                     \
    say((a), (in), SAY_##which + SAY_CHECKED(which, __VA_ARGS__),                                  \
        (const char *const[]){__VA_ARGS__})

/* The same in the form that `number` takes; the number itself is the first of the values. */
#define SAY_COUNT(a, in, which, number, ...)                                                       \
    say_counted((a), (in), SAY_##which + SAY_CHECKED(which, __VA_ARGS__), (number),                \
                (const char *const[]){__VA_ARGS__})

/* The same for a sentence that is chosen when the program runs: `values` must be as many as it has
 * places. */
const char *say(arena *a, const language *in, size_t which, const char *const values[]);
const char *say_counted(arena *a, const language *in, size_t which, size_t number,
                        const char *const values[]);

/* What a pure room has to say (base/message.h); null stays null. */
const char *say_message(arena *a, const language *in, const message *of);

/* A count and its noun or sentence, which has no other place: "1 recipe", "3 recipes". */
#define SAY_NUMBER(a, in, which, number)                                                           \
    SAY_COUNT((a), (in), which, (number), say_figure((a), (in), (double)(number), 0))

/* "1.5": up to so many decimals, with the marks of the language. */
const char *say_figure(arena *a, const language *in, double value, int decimals);

/* `plain`, which has figures as the program writes them ("1.25 kg", "1214 kJ / 290 kcal"), with
 * the marks of the language. Where it writes as the program does, `plain` itself. */
const char *say_figures(arena *a, const language *in, const char *plain);

/* "12 %" of 0.12. */
const char *say_percent(arena *a, const language *in, double share, int decimals);

/* "0.25 g", "46 g", "1.25 kg": as kitchen_weight has it. */
const char *say_weight(arena *a, const language *in, double grams);

/* "+2.1 g", "\u22124 kcal" with a true minus sign, "unchanged" when it rounds to nothing. */
const char *say_change(arena *a, const language *in, double value, int decimals, const char *what);

/* "24 g", "0.4 g": one decimal under 10, none above. */
const char *say_amount(arena *a, const language *in, double value, const char *what);

/* "16\u201333 g", or "16 g" when both ends round to the same. */
const char *say_grams_range(arena *a, const language *in, double low_g, double high_g);

/* The ends of a range as far as its width lets them be told: "30\u201365 g", to 5 g from 20 g of
 * width on. */
const char *say_wide_range(arena *a, const language *in, double low_g, double high_g);

/* One of a household measure of the pantry: "cup", or "1 Tasse" where the language has words of its
 * own for kitchen measures; a word of the site's own pantry as it is. */
const char *say_unit(arena *a, const language *in, const char *name);

/* "1/3 cup + 1 tbsp". */
const char *say_measure(arena *a, const language *in, const kitchen_measure *of);

/* How pages measure: the language, and what a cup is. */
typedef struct {
    const language *in;
    cup_standard cups;
} saying;

/* "46 g (1/2 cup)"; just the weight when the ingredient has no household weight. */
const char *say_weighed(arena *a, saying by, const ingredient *what, double grams);

/* An amount no more exactly than its range, in parts. */
typedef struct {
    bool is_about;
    const char *weight;  /* "45 g" */
    const char *measure; /* "3 tbsp"; null: it has no household weight */
} said_amount;

said_amount say_amount_parts(arena *a, saying by, const ingredient *what, range grams);

/* An amount no more exactly than its range: "46 g (3 tbsp)" where the range is narrow, else "about
 * 45 g (3 tbsp)": what one vessel holds, where that is nearly it and within the range. */
const char *say_about(arena *a, saying by, const ingredient *what, range grams);

/* True where say_about would say "about". */
bool say_is_about(range grams);

/* "1 h 20 min". */
const char *say_minutes(arena *a, const language *in, double minutes);

/* "2 May 2026" from "2026-05-02"; what it can't read it returns as it is. Null stays null. */
const char *say_date(arena *a, const language *in, const char *date);

/* "8 rounds", "1 1/2 loaves", "1/12 loaf". */
const char *say_yield(arena *a, const language *in, const yield *of);

/* "a, b and c". */
const char *say_list(arena *a, const language *in, const char *const *words, size_t count);

#endif
