/* publish/record.h: what was written comes back whole; a damaged record is as good as none. */
#include "support/cmocka_rows.h"

#include "publish/record.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
    arena *a;
    char folder[64];
} fixture;

static int open_folder(void **state) {
    fixture *f = calloc(1, sizeof *f);
    f->a = arena_new();
    snprintf(f->folder, sizeof f->folder, "%s", "/tmp/crumbnote-record-XXXXXX");
    *state = f;
    return mkdtemp(f->folder) ? 0 : -1;
}

static int close_folder(void **state) {
    fixture *f = *state;
    char command[128];
    snprintf(command, sizeof command, "rm -rf '%s'", f->folder);
    int code = system(command);
    arena_free(f->a);
    free(f);
    return code;
}

static const char *tags[] = {"breakfast", "no oven"};
static const row_use uses[] = {{3, 0, 60.5f}, {7, 1, 0}};
static const row_swap swaps[] = {{3, 4, VERDICT_WORKS}, {3, 9, VERDICT_AVOID}};
static const recipe_row row = {.slug = "rounds",
                               .title = "Rounds",
                               .kind = "griddle cake",
                               .kind_slug = "griddle-cake",
                               .makes_text = "8 rounds",
                               .portion_text = "",
                               .tags = tags,
                               .tag_count = COUNT(tags),
                               .portions = 4,
                               .protein_g = 12.25,
                               .sugars_g = -0.0,
                               .lacking = true,
                               .uses = uses,
                               .use_count = COUNT(uses),
                               .swaps = swaps,
                               .swap_count = COUNT(swaps),
                               .allergens = 5,
                               .diets = 2};

static written_file page[] = {{"recipes/rounds/index.html", {10, 20, 30, 40}, 50}};
static written_file home_page[] = {{"feed.xml", {1, 2, 3, 4}, 5}, {"index.html", {0}, 6}};
static made recipes[] = {
    {.name = "broken.md", .stamp = {1, 1, 1, 1}, .content = 2, .troubled = true},
    {.name = "rounds.md",
     .stamp = {5, 6, 7, 8},
     .content = 9,
     .bakes = 10,
     .shows = true,
     .asks_all = true,
     .files = {page, 1, 1},
     .listed = 77,
     .row = &row}};
static made pictures[] = {{.name = "a.jpg", .stamp = {1, 2, 3, 4}, .content = 5}};
static const standing ground[] = {{1, 2}, {0, 3}};
static const record whole = {.program = 11,
                             .common = 12,
                             .whole = 13,
                             .started_ns = 14,
                             .settled_ns = 15,
                             .ground = ground,
                             .ground_count = COUNT(ground),
                             .recipes = {recipes, COUNT(recipes), COUNT(recipes)},
                             .pictures = {pictures, 1, 1},
                             .files = {home_page, COUNT(home_page), COUNT(home_page)}};

static void expect_row(const recipe_row *got) {
    expect_text("title", got->title, "Rounds");
    assert_null(got->summary);
    expect_text("an empty text", got->portion_text, "");
    assert_int_equal(got->tag_count, 2);
    expect_text("tag", got->tags[1], "no oven");
    assert_memory_equal(got->uses, uses, sizeof uses);
    assert_memory_equal(got->swaps, swaps, sizeof swaps);
    expect_bool("protein", got->protein_g > 12.24 && got->protein_g < 12.26, true);
    expect_bool("lacking", got->lacking, true);
    assert_int_equal(got->allergens, 5);
    assert_int_equal(got->diets, 2);
}

static void what_is_written_comes_back(void **state) {
    fixture *f = *state;
    record got;
    int why;
    assert_true(record_write(&whole, f->folder, &why));
    assert_true(record_read(f->a, f->folder, whole.program, &got, NULL));
    assert_int_equal(got.common, 12);
    assert_int_equal(got.whole, 13);
    assert_int_equal(got.started_ns, 14);
    assert_int_equal(got.settled_ns, 15);
    assert_memory_equal(got.ground, ground, sizeof ground);
    assert_int_equal(got.files.count, 2);
    assert_non_null(written_find(&got.files, "index.html"));
    assert_null(written_find(&got.files, "index"));
    const made *of = made_find(&got.recipes, "rounds.md");
    assert_non_null(of);
    assert_true(made_equal(of, &recipes[1]));
    assert_int_equal(of->content, 9);
    assert_int_equal(of->files.items[0].content, 50);
    expect_bool("asks all", of->asks_all, true);
    expect_bool("troubled", made_find(&got.recipes, "broken.md")->troubled, true);
    expect_row(of->row);
    assert_null(made_find(&got.recipes, "round.md"));
    assert_non_null(made_find(&got.pictures, "a.jpg"));
}

/* Larger than the pieces it is written in. */
static void a_large_one_comes_back_too(void **state) {
    enum { MANY = 20000 };
    fixture *f = *state;
    record large = whole, got;
    int why;
    made *many = ARENA_ARRAY(f->a, made, MANY);
    for (size_t i = 0; i < MANY; i++) {
        many[i] = recipes[1];
        many[i].name = arena_format(f->a, "%05u.md", (unsigned)i);
        many[i].content = i;
    }
    large.recipes = (made_list){many, MANY, MANY};
    assert_true(record_write(&large, f->folder, &why));
    assert_true(record_read(f->a, f->folder, whole.program, &got, NULL));
    assert_int_equal(got.recipes.count, MANY);
    for (size_t i = 0; i < MANY; i++) {
        assert_int_equal(made_find(&got.recipes, many[i].name)->content, i);
        expect_row(got.recipes.items[i].row);
    }
    const char *path = path_join(f->a, f->folder, RECORD_NAME);
    span bytes;
    assert_true(file_read(f->a, path, &bytes, &why));
    for (size_t at = 0; at < bytes.length; at += bytes.length / 40) {
        char *damaged = arena_copy(f->a, bytes);
        damaged[at] ^= 1;
        assert_true(file_write(path, (span){damaged, bytes.length}, &why));
        expect_bool("damage is seen", record_read(f->a, f->folder, whole.program, &got, NULL),
                    false);
    }
}

static void another_program_gets_no_rows(void **state) {
    fixture *f = *state;
    record got;
    int why;
    assert_true(record_write(&whole, f->folder, &why));
    assert_true(record_read(f->a, f->folder, whole.program + 1, &got, NULL));
    const made *of = made_find(&got.recipes, "rounds.md");
    assert_null(of->row);
    assert_int_equal(of->files.count, 1);
}

static void one_that_is_not_there_is_none(void **state) {
    fixture *f = *state;
    record got;
    assert_false(record_read(f->a, f->folder, 1, &got, NULL));
}

/* Each byte changed in turn, and each length it may be cut to. */
static void damage_anywhere_is_seen(void **state) {
    fixture *f = *state;
    span bytes;
    int why;
    assert_true(record_write(&whole, f->folder, &why));
    const char *path = path_join(f->a, f->folder, RECORD_NAME);
    assert_true(file_read(f->a, path, &bytes, &why));
    for (size_t i = 0; i < bytes.length; i++) {
        arena *a = arena_new();
        record got;
        char *damaged = arena_copy(a, bytes);
        damaged[i] = (char)(damaged[i] ^ (1 << i % 8));
        assert_true(file_write(path, (span){damaged, bytes.length}, &why));
        if (record_read(a, f->folder, whole.program, &got, NULL))
            fail_msg("byte %zu changed was not seen", i);
        assert_true(file_write(path, span_first(bytes, i), &why));
        if (record_read(a, f->folder, whole.program, &got, NULL))
            fail_msg("cut to %zu bytes was not seen", i);
        arena_free(a);
    }
}

#define FOLDER_TEST(name) cmocka_unit_test_setup_teardown(name, open_folder, close_folder)

int main(void) {
    const struct CMUnitTest tests[] = {
        FOLDER_TEST(what_is_written_comes_back), FOLDER_TEST(a_large_one_comes_back_too),
        FOLDER_TEST(another_program_gets_no_rows), FOLDER_TEST(one_that_is_not_there_is_none),
        FOLDER_TEST(damage_anywhere_is_seen)};
    return cmocka_run_group_tests_name("record", tests, NULL, NULL);
}
