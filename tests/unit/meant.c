#include "unit/support/cmocka_rows.h"

#include "swap/meant.h"
#include "unit/support/build_swaps.h"

static const portion_of muffins[] = {{"pea protein isolate", 60}, {"whey protein isolate", 30},
                                     {"oat flour", 80},           {"coconut flour", 20},
                                     {"egg white", 140},          {"oat flour", 10}};

/* The names of the lines meant, behind each other. */
static const char *meant_text(larder *l, const recipe *of, const char *words) {
    text t = TEXT_EMPTY;
    meant_lines lines = meant_in(l->a, of, &l->shelf, words);
    for (size_t i = 0; i < lines.count; i++)
        text_format(&t, "%s%s", i ? ", " : "", of->lines.items[lines.items[i]].what->name);
    const char *put = arena_copy(l->a, text_span(&t));
    text_free(&t);
    return put;
}

static void words_mean_lines(void **state) {
    (void)state;
    static const struct {
        const char *words, *means;
    } rows[] = {
        {"oat flour", "oat flour"},
        {"Oat Flours", "oat flour"},
        {"whey", "whey protein isolate"},
        {"protein powder", "pea protein isolate, whey protein isolate"},
        {"protein", "pea protein isolate, whey protein isolate"},
        {"flour", "oat flour, coconut flour"},
        {"pea", "pea protein isolate"},
        {"egg", "egg white"},
        {"rice", ""},
        {"at flour", ""},
        {"moon dust", ""},
        {"", ""},
    };
    larder *l = larder_new();
    const recipe *of = larder_recipe(l, "muffin", muffins, COUNT(muffins));
    for (size_t i = 0; i < COUNT(rows); i++)
        if (strcmp(meant_text(l, of, rows[i].words), rows[i].means) != 0)
            fail_msg("%s means %s", rows[i].words, meant_text(l, of, rows[i].words));
    larder_free(l);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(words_mean_lines)};
    return cmocka_run_group_tests_name("meant", tests, NULL, NULL);
}
