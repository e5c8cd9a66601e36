/* The build of a recipe: what a baker means by "recipes like this one".
 *
 * Two recipes are alike in build when what happens to a swap in one of them may be expected in
 * the other:
 *
 *   - both are baked, or neither is;
 *   - the same thing sets them: an egg white that holds a batter is why a powder fails in it; and
 *   - they are of one kind (two cookies), or, whatever they are called, the same thing moistens
 *     them and both are leavened or neither is (a muffin and a cake of one batter).
 *
 * What stands beside the mix (an icing) is like another thing beside a mix, never like a mix.
 * Common practice, no source. */
#ifndef SWAP_RECIPE_BUILD_H
#define SWAP_RECIPE_BUILD_H

#include "swap/facts.h"

typedef struct recipe_build {
    const char *kind; /* folded; empty when the recipe states none */
    setting sets;
    moisture moistened;
    bool leavened, baked, beside;
} recipe_build;

/* The build of what `about` is of; borrows its kind. */
recipe_build build_of(const recipe_facts *about);

bool builds_alike(const recipe_build *one, const recipe_build *other);

#endif
