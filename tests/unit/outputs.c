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
    int at;
    problems found;
} fixture;

static int open_folder(void **state) {
    fixture *f = calloc(1, sizeof *f);
    f->a = arena_new();
    f->found = problems_in(f->a);
    snprintf(f->folder, sizeof f->folder, "%s", "/tmp/crumbnote-outputs-XXXXXX");
    *state = f;
    if (!mkdtemp(f->folder))
        return -1;
    f->at = folder_open(f->folder);
    return 0;
}

static int close_folder(void **state) {
    fixture *f = *state;
    char command[128];
    snprintf(command, sizeof command, "rm -rf '%s'", f->folder);
    int code = system(command);
    folder_close(f->at);
    arena_free(f->a);
    free(f);
    return code;
}

static bool there(const fixture *f, const char *path) {
    return file_exists(path_join(f->a, f->folder, path));
}

static outputs outputs_in(fixture *f, const written_files *earlier) {
    return (outputs){.home = f->a, .folder = f->folder, .at = f->at, .earlier = earlier};
}

static written_files write_all(fixture *f, const char *const paths[], size_t count) {
    outputs to = outputs_in(f, NULL);
    for (size_t i = 0; i < count; i++)
        output_write(&to, paths[i], span_of("page"), &f->found);
    assert_false(to.failed);
    written_sort(&to.files);
    return to.files;
}

static void what_is_gone_goes_and_what_is_not_ours_stays(void **state) {
    fixture *f = *state;
    static const char *const first[] = {"a/index.html", "b/index.html", "c.txt"};
    static const char *const second[] = {"b/index.html"};
    int why;
    written_files earlier = write_all(f, first, COUNT(first));
    assert_true(file_write(path_join(f->a, f->folder, "a/hers.txt"), span_of("x"), &why));
    outputs to = outputs_in(f, NULL);
    to.files = write_all(f, second, COUNT(second));
    outputs_remove(&to, &earlier, &f->found);
    expect_bool("a/index.html", there(f, "a/index.html"), false);
    expect_bool("c.txt", there(f, "c.txt"), false);
    expect_bool("b/index.html", there(f, "b/index.html"), true);
    expect_bool("a file that was put there by hand", there(f, "a/hers.txt"), true);
}

static void a_path_that_leads_out_is_not_followed(void **state) {
    fixture *f = *state;
    int why;
    char outside[96];
    snprintf(outside, sizeof outside, "%s-outside", f->folder);
    assert_true(file_write(outside, span_of("x"), &why));
    written_file listed[] = {{.path = arena_format(f->a, "../%s", path_name(outside))},
                             {.path = outside}};
    outputs to = outputs_in(f, NULL);
    outputs_remove(&to, &(written_files){listed, COUNT(listed), COUNT(listed)}, &f->found);
    expect_bool("a file outside", file_exists(outside), true);
    unlink(outside);
}

static void what_is_kept_is_one_of_the_files(void **state) {
    fixture *f = *state;
    static const char *const first[] = {"recipes/a/index.html"};
    written_files earlier = write_all(f, first, COUNT(first));
    outputs to = outputs_in(f, NULL);
    output_keep(&to, "recipes/a/index.html");
    output_keep(&to, "recipes/a/nowhere.html");
    assert_int_equal(to.files.count, 1);
    outputs_remove(&to, &earlier, &f->found);
    expect_bool("kept", there(f, "recipes/a/index.html"), true);
}

/* What somebody does to a file between two builds, and whether the second has to write it. */
static void what_somebody_changed_is_seen(void **state) {
    fixture *f = *state;
    static const char *const paths[] = {"a.html"};
    static const struct {
        const char *name, *bytes; /* null bytes: deleted */
        bool holds;
    } rows[] = {{"nothing", "page", true},
                {"other bytes of the same length", "gape", false},
                {"longer", "page and more", false},
                {"emptied", "", false},
                {"deleted", NULL, false}};
    const char *path = path_join(f->a, f->folder, paths[0]);
    int why;
    for (size_t i = 0; i < COUNT(rows); i++) {
        written_files earlier = write_all(f, paths, COUNT(paths));
        outputs to = outputs_in(f, &earlier);
        to.settled_ns = file_clock_ns();
        assert_true(rows[i].bytes ? file_write(path, span_of(rows[i].bytes), &why)
                                  : unlink(path) == 0);
        expect_bool(rows[i].name, outputs_hold(&to, &earlier), rows[i].holds);
        output_write(&to, paths[0], span_of("page"), &f->found);
        span now;
        assert_true(file_read(f->a, path, &now, &why));
        expect_text(rows[i].name, now.at, "page");
    }
}

static void a_refusal_is_a_problem_with_the_path(void **state) {
    fixture *f = *state;
    int why;
    assert_true(file_write(path_join(f->a, f->folder, "a"), span_of("a file"), &why));
    outputs to = outputs_in(f, NULL);
    output_write(&to, "a/index.html", span_of("page"), &f->found);
    assert_true(to.failed);
    assert_int_equal(f->found.errors, 1);
    expect_text("path", f->found.items[0].at.file, "a/index.html");
}

#define FOLDER_TEST(name) cmocka_unit_test_setup_teardown(name, open_folder, close_folder)

int main(void) {
    const struct CMUnitTest tests[] = {FOLDER_TEST(what_is_gone_goes_and_what_is_not_ours_stays),
                                       FOLDER_TEST(a_path_that_leads_out_is_not_followed),
                                       FOLDER_TEST(what_is_kept_is_one_of_the_files),
                                       FOLDER_TEST(what_somebody_changed_is_seen),
                                       FOLDER_TEST(a_refusal_is_a_problem_with_the_path)};
    return cmocka_run_group_tests_name("outputs", tests, NULL, NULL);
}
