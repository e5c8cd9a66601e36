/* site/search_words.h: which words recipes are found by, and with what weight. */
#include "support/cmocka_rows.h"

#include "site/search_words.h"
#include "small_shelf.h"

static const indexed_word *find(const indexed_words *all, const char *word) {
    for (size_t i = 0; i < all->count; i++)
        if (span_is(all->items[i].word, word))
            return &all->items[i];
    return NULL;
}

/* "8: 0 2; 1: 1" */
static const char *places(arena *a, const indexed_words *all, const char *word) {
    static const unsigned weights[] = {8, 5, 4, 1};
    const indexed_word *of = find(all, word);
    uint32_t rows[16];
    text t = TEXT_EMPTY;
    for (size_t w = 0; of && w < WEIGHT_COUNT; w++) {
        size_t count = search_word_rows(of, (word_weight)w, rows);
        if (count)
            text_format(&t, "%s%u:", t.length ? "; " : "", weights[w]);
        for (size_t i = 0; i < count; i++)
            text_format(&t, " %u", rows[i]);
    }
    const char *put = arena_copy(a, text_span(&t));
    text_free(&t);
    return put;
}

static void each_recipe_stands_once_in_its_weightiest_place(void **state) {
    (void)state;
    arena *a = arena_new();
    pantry shelf = small_shelf(a);
    uint16_t whey = (uint16_t)pantry_index(&shelf, pantry_find(&shelf, span_of("whey isolate"), a)),
             egg = (uint16_t)pantry_index(&shelf, pantry_find(&shelf, span_of("egg white"), a));
    row_use uses[] = {{whey, false, 30}, {egg, true, 60}};
    const char *tags[] = {"for the crew", "Weekday"};
    recipe_row all[] = {{.slug = "a",
                         .title = "Brownies, Øl & crème-brûlée",
                         .kind = "brownie",
                         .summary = "Whey brownies for a weekday.",
                         .tags = tags,
                         .tag_count = COUNT(tags),
                         .uses = uses,
                         .use_count = COUNT(uses)},
                        {.slug = "b", .title = "Rounds", .summary = "Not brownies."},
                        {.slug = "c", .title = "Brownies again"}};
    recipe_rows rows = {all, COUNT(all), COUNT(all)};
    indexed_words words = search_words_of(a, &rows, &shelf);
    static const struct {
        const char *word, *places;
    } cases[] = {{"brownies", "8: 0 2; 1: 1"},
                 {"brownie", "5: 0"},
                 {"weekday", "5: 0"},
                 {"whey", "4: 0"},
                 {"isolate", "4: 0"},
                 {"creme", "8: 0"},
                 {"brulee", "8: 0"},
                 {"øl", "8: 0"},
                 {"egg", ""},
                 {"Brownies", ""},
                 {"rounds", "8: 1"}};
    for (size_t i = 0; i < COUNT(cases); i++)
        expect_text(cases[i].word, places(a, &words, cases[i].word), cases[i].places);
    for (size_t i = 1; i < words.count; i++)
        assert_true(span_compare(words.items[i - 1].word, words.items[i].word) < 0);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_recipe_stands_once_in_its_weightiest_place),
    };
    return cmocka_run_group_tests_name("search_words", tests, NULL, NULL);
}
