/* A swap answered: the whole of what a page, `crumbnote swap` and the index say about replacing
 * one ingredient of a recipe by another. */
#ifndef SWAP_NOTE_H
#define SWAP_NOTE_H

#include "base/message.h"
#include "nutrition/allergens.h"
#include "nutrition/macros.h"
#include "swap/balance.h"
#include "swap/evidence.h"
#include "swap/liquid.h"
#include "swap/match_combined.h"

typedef struct {
    size_t line;        /* of the recipe: what is replaced (the first, of two) */
    size_t second_line; /* SIZE_MAX unless two are replaced */
    const ingredient *to;
    const ingredient *also_to; /* the second that comes; null unless two do */
    verdict says;
    decision by;
    double from_g; /* what goes: all lines of that ingredient, or a part of them in a two-for-one */
    double to_g, to_low_g, to_high_g; /* amount of the new one; 0 when nothing is promised: to be
                                         avoided, untried, or a figure it takes is not known */
    double second_from_g;             /* of the second replaced ingredient, the part that goes */
    double also_to_g;                 /* of the second that comes */
    const message *in_the_way;        /* a combined swap that no amounts make possible: why; such a
                                        one is to be avoided, whatever the rule says */
    double liquid_change_g, liquid_low_g, liquid_high_g; /* to add (+) or hold back (-) */
    double liquid_needed_g; /* what it would take to keep the free water (+ or -), also where
                               nothing is promised or no line can give as much */
    size_t liquid_line; /* the line it is added to or held back from; SIZE_MAX: water is added */
    const ingredient
        *liquid_apart;     /* a liquid that a bake names and the recipe has not; else null */
    double ruled_g;        /* above 0: the amounts are the figures' own, not this one of the rule */
    bool past_rescue;      /* more liquid than the batch can take: no amount rescues it */
    bool heated;           /* it is baked: what happens in the bake counts */
    bool uptake_known;     /* false: a water uptake is missing, so no liquid is worked out */
    balance before, after; /* of the batch as written and swapped, liquid change included; where
                              nothing is promised, swapped at equal weight */
    macros change;         /* per portion, swapped less written */
    allergen_set gained, lost;
    diet_set diets_lost, diets_gained;
    evidence tried; /* bakes of recipes like this one; none for a combined swap */
    const char *expect, *because, *basis, *also; /* borrowed or in the arena; may be null */
    bool also_asks; /* `also` asks for more or less of something, which no figure here counts */
} swap_note;

typedef struct {
    swap_note *items;
    size_t count, capacity;
} swap_notes;

/* Where a reference rule gives a weight or a measure for many recipes at once, and in this one that
 * is past rescue, the amounts that come closest by the figures (swap/balance_best.h) stand in, if
 * they differ by more than FIGURES_DIFFER of it and are no less than half and no more than twice
 * as much, which would be another recipe (estimates). The verdict stays the rule's; what somebody
 * baked or says stays as it is. */
#define FIGURES_DIFFER 0.1
#define FIGURES_MOST   2.0

/* Answers replacing line `from` (an index with a known ingredient and a weight) by `to`. Always
 * an answer: VERDICT_UNTRIED when nothing decides. */
swap_note note_of(arena *a, const rule_book *book, const recipe_facts *about, size_t from,
                  const ingredient *to);

/* Answers a combined swap, two by one or one by two: lines and ingredients of `asked`, whose
 * decision is not looked at. */
swap_note note_of_combined(arena *a, const rule_book *book, const recipe_facts *about,
                           const decided *asked);

/* Every known note of the recipe: for each line (each ingredient once), the replacements that
 * something decides on, most asked-for lines first (protein powders, flours and meals, nut
 * butters, eggs, then the rest), verdicts best first, then by name; combined ones after, 60 at the
 * most. The untried ones of the same family, and of any that was tried in recipes like this one,
 * too when `untried`. */
swap_notes notes_of(arena *a, const rule_book *book, const recipe_facts *about, bool untried);

/* Adds an error, at the rule that decides, for each two rules of equal rank that disagree on some
 * replacement in this recipe; the first such replacement is named. */
void notes_check(arena *a, const rule_book *book, const recipe_facts *about, problems *found);

#endif
