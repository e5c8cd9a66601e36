/* Folders that come to be whole or not at all. */
#include "checks.h"

#include "base/fresh_folder.h"

#include <errno.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

static span bytes_of(const char *words) {
    return span_of(words);
}

/* A new folder for one test. */
static char *room(arena *a) {
    const char *base = getenv("TMPDIR");
    char *path = path_join(a, base && base[0] ? base : "/tmp", "fresh-test-XXXXXX");
    assert_non_null(mkdtemp(path));
    return path;
}

static void is_whole_at_the_end(void **state) {
    (void)state;
    arena *a = arena_new();
    const char *path = path_join(a, room(a), "deep/galley");
    fresh_folder made;
    int why = 0;
    assert_true(fresh_folder_begin(a, path, &made, &why));
    assert_true(fresh_folder_write(&made, "a/one.txt", bytes_of("1"), &why));
    assert_true(fresh_folder_write(&made, "hook", bytes_of("#!/bin/sh\n"), &why));
    assert_false(folder_exists(path));
    assert_true(fresh_folder_finish(&made, &why));
    assert_true(file_exists(path_join(a, path, "a/one.txt")));
    assert_int_equal(access(path_join(a, path, "hook"), X_OK), 0);
    assert_int_not_equal(access(path_join(a, path, "a/one.txt"), X_OK), 0);
    assert_false(folder_exists(made.stage));
    arena_free(a);
}

static void abandoning_leaves_nothing(void **state) {
    (void)state;
    arena *a = arena_new();
    const char *home = room(a);
    fresh_folder made;
    int why = 0;
    assert_true(fresh_folder_begin(a, path_join(a, home, "galley"), &made, &why));
    assert_true(fresh_folder_write(&made, "a/b/one.txt", bytes_of("1"), &why));
    assert_true(fresh_folder_write(&made, "a/two.txt", bytes_of("2"), &why));
    fresh_folder_abandon(&made);
    assert_int_equal(rmdir(home), 0); /* it was empty again */
    arena_free(a);
}

/* Something came to the place between begin and finish. */
static void nothing_is_moved_over(void **state) {
    (void)state;
    arena *a = arena_new();
    const char *home = room(a), *path = path_join(a, home, "galley");
    fresh_folder made;
    int why = 0;
    assert_true(fresh_folder_begin(a, path, &made, &why));
    assert_true(fresh_folder_write(&made, "one.txt", bytes_of("1"), &why));
    assert_true(file_write(path_join(a, path, "hers.txt"), bytes_of("hers"), &why));
    assert_false(fresh_folder_finish(&made, &why));
    assert_int_equal(why, EEXIST);
    fresh_folder_abandon(&made);
    assert_false(file_exists(path_join(a, path, "one.txt")));
    assert_true(file_exists(path_join(a, path, "hers.txt")));
    assert_false(folder_exists(made.stage));
    arena_free(a);
}

static void entries_go_back_when_one_is_in_the_way(void **state) {
    (void)state;
    arena *a = arena_new();
    const char *home = room(a);
    fresh_folder made;
    int why = 0;
    assert_true(fresh_folder_begin(a, home, &made, &why)); /* empty, and there */
    assert_true(made.exists);
    assert_true(fresh_folder_write(&made, "a.txt", bytes_of("1"), &why));
    assert_true(fresh_folder_write(&made, "b.txt", bytes_of("2"), &why));
    assert_true(file_write(path_join(a, home, "b.txt"), bytes_of("hers"), &why));
    assert_false(fresh_folder_finish(&made, &why));
    assert_false(file_exists(path_join(a, home, "a.txt")));
    fresh_folder_abandon(&made);
    assert_int_equal(unlink(path_join(a, home, "b.txt")), 0);
    assert_int_equal(rmdir(home), 0);
    arena_free(a);
}

static void says_why_not(void **state) {
    (void)state;
    arena *a = arena_new();
    const char *home = room(a);
    fresh_folder made;
    int why = 0;
    assert_true(file_write(path_join(a, home, "full/x"), bytes_of("x"), &why));
    assert_false(fresh_folder_begin(a, path_join(a, home, "full"), &made, &why));
    assert_int_equal(why, ENOTEMPTY);
    assert_false(fresh_folder_begin(a, path_join(a, home, "full/x"), &made, &why));
    assert_int_equal(why, EEXIST);
    assert_false(fresh_folder_begin(a, path_join(a, home, "full/x/y"), &made, &why));
    assert_int_equal(why, ENOTDIR);
    assert_int_equal(symlink("nowhere", path_join(a, home, "link")), 0);
    assert_false(fresh_folder_begin(a, path_join(a, home, "link"), &made, &why));
    assert_int_equal(why, EEXIST);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(is_whole_at_the_end),
        cmocka_unit_test(abandoning_leaves_nothing),
        cmocka_unit_test(nothing_is_moved_over),
        cmocka_unit_test(entries_go_back_when_one_is_in_the_way),
        cmocka_unit_test(says_why_not),
    };
    return cmocka_run_group_tests_name("fresh_folder", tests, NULL, NULL);
}
