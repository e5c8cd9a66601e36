/* Combined swaps that the trade has rules for, asked of the reference pantry's figures: household
 * weights of SR28, the rules common practice or from memory as said beside each. Nothing in the
 * program knows these rules; the amounts follow from fat, solids, water and weight. */
#include "reference_shelf.h"

#include "swap/combined.h"

typedef struct {
    const char *name, *from;
    double from_g;
    const char *to, *also;
    unsigned keeps;
    double to_g, also_g, off; /* off: share that ours may differ by */
} row;

static const row rows[] = {
    /* 3 tbsp cocoa (5.4 g each, 19165) and 1 tbsp fat (butter 14.2 g, 01145) for an ounce of
     * unsweetened chocolate: common practice, on cocoa packs for generations */
    {"an ounce of chocolate", "unsweetened chocolate", 28.35, "cocoa powder", "butter",
     1u << KEPT_FAT | 1u << KEPT_BULK, 16.2, 14.2, 0.15},
    /* 5 tbsp nonfat dry milk (23 g, 01091) and water to a cup (245 g, 01085): from memory, the rule
     * of the packs */
    {"a cup of milk", "skim milk", 245, "skim milk powder", "water",
     1u << KEPT_WEIGHT | 1u << KEPT_BULK, 23, 222, 0.08},
    /* 1 1/2 whites (33 g each, 01124) and a teaspoon of oil (4.5 g, 04582) for an egg: from memory
     */
    {"an egg", "egg", 50, "egg white", "canola oil", 1u << KEPT_FREE_WATER | 1u << KEPT_FAT, 49.5,
     4.5, 0.15},
    /* 1 1/4 cups sugar (200 g each, 19335) and 1/4 cup water (59 g) for a cup of honey (339 g,
     * 19296): common practice */
    {"a cup of honey", "honey", 339, "sugar", "water", 1u << KEPT_BULK | 1u << KEPT_FREE_WATER, 250,
     59, 0.15},
};

static void the_trades_amounts_follow(void **state) {
    const pantry *shelf = *state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const row *r = &rows[i];
        const combination of = {.keeps = r->keeps,
                                .goes = {{on_shelf(shelf, r->from), r->from_g}},
                                .to = {on_shelf(shelf, r->to), on_shelf(shelf, r->also)},
                                .goes_count = 1,
                                .comes_count = 2,
                                .batch_g = 10 * r->from_g,
                                .exactly = true};
        combined_amounts by = combined_amounts_of(shelf->home, &of);
        if (!by.possible)
            fail_msg("%s: %s", r->name, by.in_the_way);
        same_number(r->name, by.comes_g[0].typical, r->to_g, r->off * r->to_g);
        same_number(r->name, by.comes_g[1].typical, r->also_g, r->off * r->also_g);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_trades_amounts_follow),
    };
    return cmocka_run_group_tests_name("combined swaps", tests, shelf_up, shelf_down);
}
