/* base/folders.h: whole folders walked and removed, links never followed. */
#include "support/cmocka_rows.h"

#include "base/folders.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
    arena *a;
    char top[64];
} fixture;

static const char *at(fixture *f, const char *name) {
    return path_join(f->a, f->top, name);
}

static int open_folder(void **state) {
    fixture *f = calloc(1, sizeof *f);
    int why;
    f->a = arena_new();
    snprintf(f->top, sizeof f->top, "%s", "/tmp/crumbnote-folders-XXXXXX");
    *state = f;
    bool good = mkdtemp(f->top) && file_write(at(f, "in/b/2"), span_of("x"), &why) &&
                file_write(at(f, "in/a"), span_of("x"), &why) &&
                file_write(at(f, "in/b/.hidden"), span_of("x"), &why) &&
                file_write(at(f, "out/precious"), span_of("x"), &why) &&
                folder_make(at(f, "in/empty/deep"), &why) &&
                symlink("../out", at(f, "in/way-out")) == 0 &&
                symlink("../out/precious", at(f, "in/file-out")) == 0;
    return good ? 0 : -1;
}

static int close_folder(void **state) {
    fixture *f = *state;
    int why;
    bool good = folder_remove(f->top, &why);
    arena_free(f->a);
    free(f);
    return good ? 0 : -1;
}

static void a_walk_lists_files_alone(void **state) {
    fixture *f = *state;
    file_list files;
    int why;
    static const char *const wanted[] = {"a", "b/.hidden", "b/2"};
    assert_true(folder_walk(f->a, at(f, "in"), &files, &why));
    assert_int_equal(files.count, COUNT(wanted));
    for (size_t i = 0; i < COUNT(wanted); i++)
        expect_text(wanted[i], files.items[i].name, wanted[i]);
    expect_bool("no folder", folder_walk(f->a, at(f, "none"), &files, &why), false);
    assert_int_equal(why, ENOENT);
}

static void removing_does_not_follow_links(void **state) {
    fixture *f = *state;
    int why;
    assert_true(folder_remove(at(f, "in"), &why));
    expect_bool("in", folder_exists(at(f, "in")), false);
    expect_bool("what a link led to", file_exists(at(f, "out/precious")), true);
    expect_bool("once more", folder_remove(at(f, "in"), &why), true);
}

static void only_empty_folders_go(void **state) {
    fixture *f = *state;
    expect_bool("all of it", folder_remove_empty(at(f, "in")), false);
    expect_bool("empty/deep", folder_exists(at(f, "in/empty")), false);
    expect_bool("b/2", file_exists(at(f, "in/b/2")), true);
}

static void links_are_the_same_file(void **state) {
    fixture *f = *state;
    int why;
    assert_true(file_link(at(f, "in/a"), at(f, "new/folder/a"), &why));
    expect_bool("linked", file_is_same(at(f, "in/a"), at(f, "new/folder/a")), true);
    expect_bool("equal bytes", file_is_same(at(f, "in/a"), at(f, "in/b/2")), false);
    expect_bool("taken name", file_link(at(f, "in/a"), at(f, "in/b/2"), &why), false);
    assert_int_equal(why, EEXIST);
    /* A new version is written beside and renamed: the other name keeps the old one. */
    assert_true(file_write(at(f, "new/folder/a"), span_of("y"), &why));
    expect_bool("written again", file_is_same(at(f, "in/a"), at(f, "new/folder/a")), false);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_walk_lists_files_alone, open_folder, close_folder),
        cmocka_unit_test_setup_teardown(removing_does_not_follow_links, open_folder, close_folder),
        cmocka_unit_test_setup_teardown(only_empty_folders_go, open_folder, close_folder),
        cmocka_unit_test_setup_teardown(links_are_the_same_file, open_folder, close_folder),
    };
    return cmocka_run_group_tests_name("folders", tests, NULL, NULL);
}
