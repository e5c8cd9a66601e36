#include "site/view_verdict.h"

#include "site/say.h"

void view_put_verdict(arena *a, const language *in, view *to, verdict says) {
    static const char *const flags[VERDICT_COUNT] = {"is_works", "is_adjust", "is_different",
                                                     "is_avoid", "is_untried"};
    view_put_text(a, to, "verdict", verdict_word(says));
    view_put_text(a, to, "verdict_word", in->verdicts[says]);
    view_put_text(a, to, "verdict_sentence", in->verdict_sentences[says]);
    view_put_text(a, to, "verdict_sign", verdict_sign(says));
    view_put_bool(a, to, flags[says], true);
}

const char *allergen_words(arena *a, const language *in, allergen_set set) {
    const char *listed[ALLERGEN_COUNT];
    size_t count = 0;
    for (size_t i = 0; i < ALLERGEN_COUNT; i++)
        if (set >> i & 1u)
            listed[count++] = in->allergens[i];
    return count ? say_list(a, in, listed, count) : NULL;
}

const char *say_allergens(arena *a, const language *in, allergen_set set, label_law law) {
    const char *const *const groups[] = {
        [LAW_US] = in->allergens_us, [LAW_EU] = in->allergens_eu, [LAW_UK] = in->allergens_uk};
    return allergen_statement_called(a, set, law, &(allergen_names){in->allergens, groups[law]});
}
