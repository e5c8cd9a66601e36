/* Verdicts and sets of allergens on pages, said the same way everywhere. */
#ifndef SITE_VIEW_VERDICT_H
#define SITE_VIEW_VERDICT_H

#include "nutrition/allergens.h"
#include "read/language.h"
#include "site/view.h"
#include "swap/rule.h"

/* Puts the verdict's word, sentence and sign on `to`, and one of is_works, is_adjust,
 * is_different, is_avoid, is_untried: never colour alone. */
void view_put_verdict(arena *a, const language *in, view *to, verdict says);

/* "milk and almond", in the arena; null for the empty set. */
const char *allergen_words(arena *a, const language *in, allergen_set set);

/* The foods of `set` as `law` names them (allergen_statement); empty when it lists none. */
const char *say_allergens(arena *a, const language *in, allergen_set set, label_law law);

#endif
