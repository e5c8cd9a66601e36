/* The foods that trigger allergies, as an ingredient carries them, and what the two label laws
 * call them.
 *
 * An ingredient carries the specific food (almond, wheat, milk); the US nine (FALCPA 2004, FASTER
 * Act 2021, FDA guidance of January 2025) and the EU fourteen (Regulation 1169/2011, Annex II)
 * are read off this table. Coconut and chestnut are carried so that they can be named, though
 * neither law lists them. */
#ifndef PANTRY_ALLERGEN_H
#define PANTRY_ALLERGEN_H

#include <stdbool.h>
#include <stddef.h>

/* ALLERGEN(constant, word, US group or null, EU group or null) */
#define ALLERGEN_LIST(ALLERGEN)                                                                    \
    ALLERGEN(MILK, "milk", "milk", "milk")                                                         \
    ALLERGEN(EGG, "egg", "egg", "eggs")                                                            \
    ALLERGEN(WHEAT, "wheat", "wheat", "cereals containing gluten")                                 \
    ALLERGEN(SPELT, "spelt", "wheat", "cereals containing gluten")                                 \
    ALLERGEN(RYE, "rye", NULL, "cereals containing gluten")                                        \
    ALLERGEN(BARLEY, "barley", NULL, "cereals containing gluten")                                  \
    ALLERGEN(OATS, "oats", NULL, "cereals containing gluten")                                      \
    ALLERGEN(SOY, "soy", "soybeans", "soybeans")                                                   \
    ALLERGEN(PEANUT, "peanut", "peanuts", "peanuts")                                               \
    ALLERGEN(ALMOND, "almond", "tree nuts", "nuts")                                                \
    ALLERGEN(HAZELNUT, "hazelnut", "tree nuts", "nuts")                                            \
    ALLERGEN(WALNUT, "walnut", "tree nuts", "nuts")                                                \
    ALLERGEN(CASHEW, "cashew", "tree nuts", "nuts")                                                \
    ALLERGEN(PECAN, "pecan", "tree nuts", "nuts")                                                  \
    ALLERGEN(BRAZIL_NUT, "brazil nut", "tree nuts", "nuts")                                        \
    ALLERGEN(PISTACHIO, "pistachio", "tree nuts", "nuts")                                          \
    ALLERGEN(MACADAMIA, "macadamia", "tree nuts", "nuts")                                          \
    ALLERGEN(PINE_NUT, "pine nut", "tree nuts", NULL)                                              \
    ALLERGEN(COCONUT, "coconut", NULL, NULL)                                                       \
    ALLERGEN(CHESTNUT, "chestnut", NULL, NULL)                                                     \
    ALLERGEN(SESAME, "sesame", "sesame", "sesame")                                                 \
    ALLERGEN(LUPIN, "lupin", NULL, "lupin")                                                        \
    ALLERGEN(FISH, "fish", "fish", "fish")                                                         \
    ALLERGEN(CRUSTACEAN, "crustacean", "crustacean shellfish", "crustaceans")                      \
    ALLERGEN(MOLLUSC, "mollusc", NULL, "molluscs")                                                 \
    ALLERGEN(CELERY, "celery", NULL, "celery")                                                     \
    ALLERGEN(MUSTARD, "mustard", NULL, "mustard")                                                  \
    ALLERGEN(SULPHITES, "sulphites", NULL, "sulphur dioxide and sulphites")

typedef enum {
#define ALLERGEN(constant, word, us, eu) ALLERGEN_##constant,
    ALLERGEN_LIST(ALLERGEN)
#undef ALLERGEN
        ALLERGEN_COUNT
} allergen;

typedef unsigned allergen_set; /* bit 1u << allergen */

/* The UK kept the EU's fourteen and calls the nuts "tree nuts" (Food Standards Agency, list of
 * allergens; from memory). */
typedef enum { LAW_US, LAW_EU, LAW_UK } label_law;

/* "brazil nut" and the like. */
const char *allergen_word(allergen which);

/* The group that `law` puts it in ("tree nuts"), or null when that law does not list it. */
const char *allergen_group(allergen which, label_law law);

/* Sets `*out` to the allergen called `word` (its exact lower-case word); false when there is
 * none. */
bool allergen_named(const char *word, size_t length, allergen *out);

#endif
