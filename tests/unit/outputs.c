/* publish/outputs.h: what is written, kept and taken away in an output folder. */
#include "support/cmocka_rows.h"

#include "publish/outputs.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
    arena *a;
    char folder[64];
    problems found;
} fixture;

static int open_folder(void **state) {
    fixture *f = calloc(1, sizeof *f);
    f->a = arena_new();
    f->found = problems_in(f->a);
    snprintf(f->folder, sizeof f->folder, "%s", "/tmp/crumbnote-outputs-XXXXXX");
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

static bool there(const fixture *f, const char *path) {
    return file_exists(path_join(f->a, f->folder, path));
}

static void write_all(fixture *f, const char *const paths[], size_t count) {
    outputs to = {.home = f->a, .folder = f->folder};
    for (size_t i = 0; i < count; i++)
        output_write(&to, paths[i], span_of("page"), &f->found);
    outputs_settle(&to, &f->found);
    assert_false(to.failed);
}

static void what_is_gone_goes_and_what_is_not_ours_stays(void **state) {
    fixture *f = *state;
    static const char *const first[] = {"a/index.html", "b/index.html", "c.txt"};
    static const char *const second[] = {"b/index.html"};
    int why;
    write_all(f, first, COUNT(first));
    assert_true(file_write(path_join(f->a, f->folder, "a/hers.txt"), span_of("x"), &why));
    write_all(f, second, COUNT(second));
    expect_bool("a/index.html", there(f, "a/index.html"), false);
    expect_bool("c.txt", there(f, "c.txt"), false);
    expect_bool("b/index.html", there(f, "b/index.html"), true);
    expect_bool("a file that was put there by hand", there(f, "a/hers.txt"), true);
}

static void what_is_kept_below_a_folder_stays(void **state) {
    fixture *f = *state;
    static const char *const first[] = {"r/a/index.html", "r/a/with-b/index.html",
                                        "r/ab/index.html", "r/a/gone.json"};
    write_all(f, first, COUNT(first));
    assert_int_equal(unlink(path_join(f->a, f->folder, "r/a/gone.json")), 0);
    outputs to = {.home = f->a, .folder = f->folder};
    output_keep_earlier(&to, "r/a/");
    assert_int_equal(to.written.count, 2);
    outputs_settle(&to, &f->found);
    expect_bool("its page", there(f, "r/a/index.html"), true);
    expect_bool("a page below it", there(f, "r/a/with-b/index.html"), true);
    expect_bool("a folder whose name begins alike", there(f, "r/ab/index.html"), false);
}

static void a_record_that_leads_out_is_not_followed(void **state) {
    fixture *f = *state;
    int why;
    char outside[96];
    snprintf(outside, sizeof outside, "%s-outside", f->folder);
    assert_true(file_write(outside, span_of("x"), &why));
    const char *lines = arena_format(f->a, "../%s\n%s\n", path_name(outside), outside);
    assert_true(file_write(path_join(f->a, f->folder, RECORD_NAME), span_of(lines), &why));
    static const char *const now[] = {"index.html"};
    write_all(f, now, COUNT(now));
    expect_bool("a file outside", file_exists(outside), true);
    unlink(outside);
}

static void what_is_kept_is_not_taken_away(void **state) {
    fixture *f = *state;
    static const char *const first[] = {"recipes/a/index.html"};
    write_all(f, first, COUNT(first));
    outputs to = {.home = f->a, .folder = f->folder};
    output_keep(&to, "recipes/a/index.html");
    outputs_settle(&to, &f->found);
    expect_bool("kept", there(f, "recipes/a/index.html"), true);
}

static void a_refusal_is_a_problem_with_the_path(void **state) {
    fixture *f = *state;
    int why;
    assert_true(file_write(path_join(f->a, f->folder, "a"), span_of("a file"), &why));
    outputs to = {.home = f->a, .folder = f->folder};
    output_write(&to, "a/index.html", span_of("page"), &f->found);
    assert_true(to.failed);
    assert_int_equal(f->found.errors, 1);
    expect_text("path", f->found.items[0].at.file, "a/index.html");
}

static void nothing_is_written_without_a_folder(void **state) {
    fixture *f = *state;
    outputs to = {.home = f->a};
    output_write(&to, "index.html", span_of("page"), &f->found);
    outputs_settle(&to, &f->found);
    assert_int_equal(to.written.count, 0);
    assert_false(to.failed);
}

#define FOLDER_TEST(name) cmocka_unit_test_setup_teardown(name, open_folder, close_folder)

int main(void) {
    const struct CMUnitTest tests[] = {FOLDER_TEST(what_is_gone_goes_and_what_is_not_ours_stays),
                                       FOLDER_TEST(what_is_kept_below_a_folder_stays),
                                       FOLDER_TEST(what_is_kept_below_a_folder_stays),
                                       FOLDER_TEST(a_record_that_leads_out_is_not_followed),
                                       FOLDER_TEST(what_is_kept_is_not_taken_away),
                                       FOLDER_TEST(a_refusal_is_a_problem_with_the_path),
                                       FOLDER_TEST(nothing_is_written_without_a_folder)};
    return cmocka_run_group_tests_name("outputs", tests, NULL, NULL);
}
