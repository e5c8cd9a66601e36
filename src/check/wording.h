/* What a sentence is about, as far as single words tell: a condition, advice, a denial. */
#ifndef CHECK_WORDING_H
#define CHECK_WORDING_H

#include "measure/prose.h"

/* Any of `list` is a word of `words`, in any case. */
bool wording_has(arena *a, span words, const char *const list[], size_t count);

#define WORDING_HAS(a, words, list) wording_has((a), (words), (list), COUNT(list))

enum { ASKED_MOST = 4 };

/* The sentence that was asked of last, with the answers: a check asks of the same one at each of
 * its claims, and a paragraph without a stop would be cut and searched as often as it has words. */
typedef struct {
    arena *a; /* borrowed */
    span words;
    prose cut;
    bool is_cut;
    struct {
        const char *const *list;
        bool has;
    } asked[ASKED_MOST];
    size_t count;
} sentence;

/* Moves `to` to the sentence of `paragraph` around byte `offset` (check/passages.h). */
void sentence_move(sentence *to, span paragraph, size_t offset);

/* Its words. */
const prose *sentence_prose(sentence *of);

/* Any of `list`, which must outlive `of`, is a word of it. */
bool sentence_has(sentence *of, const char *const list[], size_t count);

#define SENTENCE_HAS(of, list) sentence_has((of), (list), COUNT(list))

/* "if", "should", "too", "another": it holds only now and then. */
bool sentence_is_conditional(sentence *of);

/* "use", "instead", "you can", "for a": what could be done, not what the recipe is. */
bool sentence_is_advice(sentence *of);

/* "gluten-free if your oats are", "a vegan option": it may be made so, and is not. */
bool sentence_is_option(sentence *of);

/* "Dairy-free?": what ends at byte `end` of `words` is asked, not said. */
bool wording_is_asked(span words, size_t end);

/* One of the three words before word `i`, in one breath with it, denies it ("not", "isn't"). */
bool wording_is_denied(const prose *all, size_t i);

#endif
