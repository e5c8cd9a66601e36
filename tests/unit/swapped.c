/* swap/swapped.h: the lines of a recipe with a swap applied. Its figures: swap_properties.c. */
#include "unit/support/cmocka_rows.h"

#include "base/number.h"
#include "base/text.h"
#include "swap/swapped.h"
#include "unit/support/build_swaps.h"

#include <stdint.h>

enum { PEA, EGG_WHITE, WATER, PEA_AGAIN, SYRUP, LINES };

/* 100 g pea in two lines, the second of them on top; `headed`: with a group for the last two. */
static recipe *rounds(larder *l) {
    static const portion_of lines[] = {{"pea protein isolate", 60},
                                       {"egg white", 140},
                                       {"water", 50},
                                       {"pea protein isolate", 40},
                                       {"maple syrup", 20}};
    recipe *r = larder_recipe(l, "griddle cake", lines, LINES);
    r->groups = (line_groups){0};
    LIST_ADD(l->a, &r->groups, (line_group){NULL, 0, 3});
    LIST_ADD(l->a, &r->groups, (line_group){"On top", 3, 2});
    return r;
}

static const struct {
    const char *name;
    double from_g, to_g, liquid_g;
    size_t liquid_line, second;
    double second_g;
    const char *lines;  /* grams, name and the line it was (new: none) */
    const char *groups; /* lines in each */
} rows[] = {
    {"what comes stands where the first went", 100, 90, 0, SIZE_MAX, SIZE_MAX, 0,
     "90 whey protein isolate new, 140 egg white 1, 50 water 2, 20 maple syrup 4", "3+1"},
    {"liquid is held back from its line", 100, 90, -15, WATER, SIZE_MAX, 0,
     "90 whey protein isolate new, 140 egg white 1, 35 water 2, 20 maple syrup 4", "3+1"},
    {"and added to it", 100, 90, 15, WATER, SIZE_MAX, 0,
     "90 whey protein isolate new, 140 egg white 1, 65 water 2, 20 maple syrup 4", "3+1"},
    {"a line that is held back whole stays", 100, 90, -50, WATER, SIZE_MAX, 0,
     "90 whey protein isolate new, 140 egg white 1, 0 water 2, 20 maple syrup 4", "3+1"},
    {"where no line can take it, water follows", 100, 90, 15, SIZE_MAX, SIZE_MAX, 0,
     "90 whey protein isolate new, 15 water new, 140 egg white 1, 50 water 2, 20 maple syrup 4",
     "4+1"},
    {"a part goes off the first line", 30, 30, 0, SIZE_MAX, SIZE_MAX, 0,
     "30 pea protein isolate 0, 30 whey protein isolate new, 140 egg white 1, 50 water 2, "
     "40 pea protein isolate 3, 20 maple syrup 4",
     "4+2"},
    {"two that go, one of them in part", 100, 90, 0, SIZE_MAX, EGG_WHITE, 40,
     "90 whey protein isolate new, 100 egg white 1, 50 water 2, 20 maple syrup 4", "3+1"},
    {"a group without lines is gone", 100, 90, 0, SIZE_MAX, SYRUP, 20,
     "90 whey protein isolate new, 140 egg white 1, 50 water 2", "3"},
};

static const char *lines_text(arena *a, const recipe *of, const size_t *was) {
    text t = TEXT_EMPTY;
    for (size_t i = 0; i < of->lines.count; i++) {
        text_add(&t, i ? ", " : "");
        number_add(&t, of->weights[i].grams, 2);
        text_format(&t, " %s ", of->lines.items[i].what->name);
        if (was[i] == SIZE_MAX)
            text_add(&t, "new");
        else
            number_add(&t, (double)was[i], 0);
    }
    const char *copy = arena_copy(a, text_span(&t));
    text_free(&t);
    return copy;
}

static const char *groups_text(arena *a, const recipe *of) {
    const char *counts = "";
    size_t next = 0;
    for (size_t i = 0; i < of->groups.count; i++) {
        assert_int_equal(of->groups.items[i].first, next);
        next += of->groups.items[i].count;
        counts = arena_format(a, "%s%s%zu", counts, i ? "+" : "", of->groups.items[i].count);
    }
    assert_int_equal(next, of->lines.count);
    return counts;
}

static void lines_change_in_their_places(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *of = rounds(l);
    for (size_t i = 0; i < COUNT(rows); i++) {
        swap_note note = {.line = PEA,
                          .second_line = rows[i].second,
                          .to = larder_find(l, "whey protein isolate"),
                          .from_g = rows[i].from_g,
                          .second_from_g = rows[i].second_g,
                          .to_g = rows[i].to_g,
                          .liquid_change_g = rows[i].liquid_g,
                          .liquid_line = rows[i].liquid_line};
        const size_t *was;
        const recipe *to = recipe_swapped_lines(l->a, of, &note, larder_find(l, "water"), &was);
        expect_text(rows[i].name, lines_text(l->a, to, was), rows[i].lines);
        expect_text(rows[i].name, groups_text(l->a, to), rows[i].groups);
        double went_g = rows[i].from_g + rows[i].second_g;
        expect_near(rows[i].name, to->batch_g,
                    of->batch_g - went_g + rows[i].to_g + rows[i].liquid_g, 1e-9);
    }
    larder_free(l);
}

/* Half a cup is no longer half a cup when some of it is held back. */
static void changed_lines_are_written_in_grams(void **state) {
    (void)state;
    larder *l = larder_new();
    const recipe *of = rounds(l);
    recipe_line *water = &of->lines.items[WATER];
    water->written = "1/4 cup + 1 tbsp water, warm";
    water->preparation = "warm";
    water->unit_written = "cup";
    water->quantity = (amount_range){0.25, 0.25};
    water->more_count = 1;
    swap_note note = {.line = PEA,
                      .second_line = SIZE_MAX,
                      .to = larder_find(l, "whey protein isolate"),
                      .from_g = 100,
                      .to_g = 90.25,
                      .liquid_change_g = -15,
                      .liquid_line = WATER};
    const size_t *was;
    const recipe *to = recipe_swapped_lines(l->a, of, &note, NULL, &was);
    expect_text("new", to->lines.items[0].written, "90 g whey protein isolate");
    expect_text("less", to->lines.items[2].written, "35 g water, warm");
    expect_text("its unit", to->lines.items[2].unit_written, "g");
    expect_near("its amount", to->lines.items[2].quantity.low, 35, 1e-9);
    assert_int_equal(to->lines.items[2].more_count, 0);
    expect_text("the others", to->lines.items[1].written, of->lines.items[EGG_WHITE].written);
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(lines_change_in_their_places),
                                       cmocka_unit_test(changed_lines_are_written_in_grams)};
    return cmocka_run_group_tests_name("swapped", tests, NULL, NULL);
}
