#include "swap/recipe_build.h"

recipe_build build_of(const recipe_facts *about) {
    return (recipe_build){.kind = about->kind ? about->kind : "",
                          .sets = about->sets,
                          .moistened = about->moistened,
                          .leavened = about->leavened,
                          .baked = about->baked,
                          .beside = about->is_beside};
}

static bool same_kind(const recipe_build *one, const recipe_build *other) {
    return one->kind[0] && strcmp(one->kind, other->kind) == 0;
}

bool builds_alike(const recipe_build *one, const recipe_build *other) {
    if (one->baked != other->baked || one->beside != other->beside || one->sets != other->sets)
        return false;
    return same_kind(one, other) ||
           (one->moistened == other->moistened && one->leavened == other->leavened);
}
