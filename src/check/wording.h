/* What a sentence is about, as far as single words tell: a condition, advice, a denial. */
#ifndef CHECK_WORDING_H
#define CHECK_WORDING_H

#include "measure/prose.h"

/* Any of `list` is a word of `sentence`, in any case. */
bool wording_has(arena *a, span sentence, const char *const list[], size_t count);

#define WORDING_HAS(a, sentence, list) wording_has((a), (sentence), (list), COUNT(list))

/* "if", "should", "too", "another": it holds only now and then. */
bool wording_is_conditional(arena *a, span sentence);

/* "use", "instead", "you can", "for a": what could be done, not what the recipe is. */
bool wording_is_advice(arena *a, span sentence);

/* "gluten-free if your oats are", "a vegan option": it may be made so, and is not. */
bool wording_is_option(arena *a, span sentence);

/* "Dairy-free?": what ends at byte `end` of `words` is asked, not said. */
bool wording_is_asked(span words, size_t end);

/* One of the three words before word `i`, in one breath with it, denies it ("not", "isn't"). */
bool wording_is_denied(const prose *all, size_t i);

#endif
