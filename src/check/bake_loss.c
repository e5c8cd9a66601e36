#include "check/checks.h"

#include "nutrition/cautions.h"

void check_bake_loss(check_case *with) {
    if (with->of->bake_loss_stated || !recipe_is_cooked(with->of))
        return;
    problem_note(with->found, "bake-loss", PROBLEM_WARNING, with->of->makes_at,
                 "weigh the batch before and after: bake-loss: 12 %",
                 "no \"bake-loss\" is stated: figures per 100 g are of the mix, not as baked");
}
