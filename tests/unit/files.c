#include "checks.h"

#include "base/files.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
    arena *a;
    char *folder;
} room;

static int set_up(void **state) {
    arena *a = arena_new();
    const char *base = getenv("TMPDIR");
    room *r = ARENA_NEW(a, room);
    r->a = a;
    r->folder = path_join(a, base && base[0] ? base : "/tmp", "files-test-XXXXXX");
    *state = r;
    return mkdtemp(r->folder) ? 0 : -1;
}

/* Takes away what the tests made: two levels at the most, and names they chose. */
static int tear_down(void **state) {
    static const char *const made[] = {"one.md",     "two.md",    "three.txt",  ".hidden.md",
                                       "outside.md", "inside.md", "pipe",       "copy.md",
                                       "deep/er/f",  "deep/er",   "deep",       "taken",
                                       "big",        "empty",     "folder.md/", "new.md"};
    room *r = *state;
    for (size_t i = 0; i < COUNT(made); i++)
        remove(path_join(r->a, r->folder, made[i]));
    int left = rmdir(r->folder);
    arena_free(r->a);
    return left;
}

static const char *inside(const room *r, const char *name) {
    return path_join(r->a, r->folder, name);
}

static void put(const room *r, const char *name, const char *bytes) {
    int why = 0;
    if (!file_write(inside(r, name), span_of(bytes), &why))
        fail_msg("%s: %s", name, strerror(why));
}

static void writes_and_reads(void **state) {
    const room *r = *state;
    span got;
    int why = 0;
    put(r, "deep/er/f", "bytes");
    assert_true(file_read(r->a, inside(r, "deep/er/f"), &got, &why));
    same_span("read back", got, "bytes");
    assert_int_equal(got.at[got.length], '\0');
    put(r, "deep/er/f", "other");
    assert_true(file_read(r->a, inside(r, "deep/er/f"), &got, &why));
    same_span("written over", got, "other");
    put(r, "empty", "");
    assert_true(file_read(r->a, inside(r, "empty"), &got, &why));
    assert_int_equal(got.length, 0);
    assert_true(file_copy(inside(r, "deep/er/f"), inside(r, "copy.md"), &why));
    assert_true(file_read(r->a, inside(r, "copy.md"), &got, &why));
    same_span("copied", got, "other");
}

static void leaves_equal_bytes_alone(void **state) {
    const room *r = *state;
    struct stat before, after;
    put(r, "one.md", "same");
    assert_int_equal(stat(inside(r, "one.md"), &before), 0);
    put(r, "one.md", "same");
    assert_int_equal(stat(inside(r, "one.md"), &after), 0);
    assert_int_equal(before.st_ino, after.st_ino);
    put(r, "one.md", "sane");
    assert_int_equal(stat(inside(r, "one.md"), &after), 0);
    assert_true(before.st_ino != after.st_ino);
}

static void refuses_what_is_no_plain_file(void **state) {
    const room *r = *state;
    span got;
    int why = 0;
    assert_int_equal(mkfifo(inside(r, "pipe"), 0600), 0);
    assert_false(file_read(r->a, inside(r, "pipe"), &got, &why));
    assert_int_equal(why, EINVAL);
    assert_false(file_read(r->a, r->folder, &got, &why));
    assert_int_equal(why, EINVAL);
    assert_false(file_read(r->a, inside(r, "not there"), &got, &why));
    assert_int_equal(why, ENOENT);
    put(r, "big", "");
    assert_int_equal(truncate(inside(r, "big"), FILE_BYTES_MOST + 1), 0);
    assert_false(file_read(r->a, inside(r, "big"), &got, &why));
    assert_int_equal(why, EFBIG);
    assert_false(file_copy(inside(r, "big"), inside(r, "copy.md"), &why));
    assert_int_equal(why, EFBIG);
}

/* A write that fails leaves nothing beside its place. */
static void a_failed_write_leaves_no_trace(void **state) {
    const room *r = *state;
    int why = 0;
    file_list left;
    put(r, "taken", "a file where a folder is wanted");
    assert_false(file_write(inside(r, "taken/f"), span_of("x"), &why));
    assert_int_equal(why, ENOTDIR);
    assert_true(folder_make(inside(r, "deep/er"), &why));
    assert_false(file_write(inside(r, "deep"), span_of("x"), &why));
    assert_true(why != 0);
    assert_true(file_list_folder(r->a, r->folder, NULL, &left, &why));
    for (size_t i = 0; i < left.count; i++)
        if (span_find(span_of(left.items[i].name), ".new-") < strlen(left.items[i].name))
            fail_msg("%s is left", left.items[i].name);
}

static void lists_in_byte_order_what_is_inside(void **state) {
    const room *r = *state;
    file_list got;
    int why = 0;
    put(r, "two.md", "");
    put(r, "one.md", "");
    put(r, "three.txt", "");
    put(r, ".hidden.md", "");
    assert_true(folder_make(inside(r, "folder.md"), &why));
    assert_int_equal(symlink("/etc/hostname", inside(r, "outside.md")), 0);
    assert_int_equal(symlink("two.md", inside(r, "inside.md")), 0);
    static const char *const wanted[] = {"inside.md", "one.md", "two.md"};
    assert_true(file_list_folder(r->a, r->folder, ".md", &got, &why));
    for (size_t i = 0; i < got.count && i < COUNT(wanted); i++)
        same_text("listed", got.items[i].name, wanted[i]);
    same_count("listed", got.count, COUNT(wanted));
    assert_true(file_list_folder(r->a, inside(r, "not there"), NULL, &got, &why));
    same_count("not there", got.count, 0);
    assert_false(file_list_folder(r->a, inside(r, "one.md"), NULL, &got, &why));
    assert_int_equal(why, ENOTDIR);
}

static void makes_folders(void **state) {
    const room *r = *state;
    int why = 0;
    assert_true(folder_make(inside(r, "deep/er"), &why));
    assert_true(folder_make(inside(r, "deep/er/"), &why));
    assert_true(folder_exists(inside(r, "deep/er")));
    assert_false(file_exists(inside(r, "deep/er")));
    put(r, "taken", "");
    assert_true(file_exists(inside(r, "taken")));
    assert_false(folder_exists(inside(r, "taken")));
    assert_false(folder_make(inside(r, "taken"), &why));
    assert_int_equal(why, ENOTDIR);
    assert_false(folder_make("", &why));
    assert_int_equal(why, ENOENT);
}

static void joins_and_parts_paths(void **state) {
    (void)state;
    static const struct {
        const char *folder, *name, *joined;
    } joins[] = {
        {"a", "b", "a/b"}, {"a/", "b", "a/b"}, {"", "b", "b"}, {NULL, "b", "b"}, {"/", "b", "/b"}};
    static const struct {
        const char *path, *folder, *name;
    } parts[] = {{"a/b", "a", "b"},
                 {"b", ".", "b"},
                 {"/b", "/", "b"},
                 {"a/b/c", "a/b", "c"},
                 {"a/", "a", ""}};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(joins); i++)
        same_text(joins[i].joined, path_join(a, joins[i].folder, joins[i].name), joins[i].joined);
    for (size_t i = 0; i < COUNT(parts); i++) {
        same_text(parts[i].path, path_folder(a, parts[i].path), parts[i].folder);
        same_text(parts[i].path, path_name(parts[i].path), parts[i].name);
    }
    arena_free(a);
}

static void tells_plain_paths(void **state) {
    (void)state;
    static const struct {
        const char *path;
        bool plain;
    } rows[] = {{"a.jpg", true}, {"a/b.jpg", true}, {"", false},     {"/a", false}, {"..", false},
                {"../a", false}, {"a/../b", false}, {"a//b", false}, {"a/", false}, {".a", false},
                {"a/.b", false}, {"a\\b", false},   {"a..b", true}};
    for (size_t i = 0; i < COUNT(rows); i++)
        if (path_is_plain(span_of(rows[i].path)) != rows[i].plain)
            fail_msg("%s", rows[i].path);
    assert_false(path_is_plain((span){"a\0b", 3}));
}

#define IN_ROOM(test) cmocka_unit_test_setup_teardown(test, set_up, tear_down)

/* -- replacing what somebody keeps by hand --------------------------------------------------- */

static unsigned mode_of(const char *path) {
    struct stat about;
    return lstat(path, &about) == 0 ? (unsigned)about.st_mode & 07777 : 0;
}

static void replaces_and_keeps_the_mode(void **state) {
    const room *r = *state;
    const char *path = inside(r, "one.md");
    span got;
    int why = 0;
    assert_true(file_replace(path, span_of(""), span_of("new"), &why));
    assert_true(file_replace(path, span_of("new"), span_of("newer"), &why));
    assert_int_equal(chmod(path, 0600), 0);
    assert_true(file_replace(path, span_of("newer"), span_of("newest"), &why));
    assert_true(file_read(r->a, path, &got, &why));
    same_span("replaced", got, "newest");
    assert_int_equal(mode_of(path), 0600);
}

static void replaces_only_what_was_read(void **state) {
    const room *r = *state;
    const char *path = inside(r, "one.md");
    span got;
    int why = 0;
    put(r, "one.md", "hers");
    assert_false(file_replace(path, span_of("older"), span_of("new"), &why));
    assert_int_equal(why, ESTALE);
    assert_false(file_replace(path, span_of(""), span_of("new"), &why));
    assert_int_equal(why, ESTALE);
    assert_true(file_read(r->a, path, &got, &why));
    same_span("left alone", got, "hers");
    assert_false(file_replace(inside(r, "two.md"), span_of("gone"), span_of("new"), &why));
    assert_false(file_exists(inside(r, "two.md")));
}

static void replaces_behind_a_link(void **state) {
    const room *r = *state;
    span got;
    int why = 0;
    put(r, "two.md", "old");
    assert_int_equal(symlink("two.md", inside(r, "one.md")), 0);
    assert_true(file_replace(inside(r, "one.md"), span_of("old"), span_of("new"), &why));
    struct stat about;
    assert_int_equal(lstat(inside(r, "one.md"), &about), 0);
    assert_true(S_ISLNK(about.st_mode));
    assert_true(file_read(r->a, inside(r, "two.md"), &got, &why));
    same_span("the file that the link leads to", got, "new");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        IN_ROOM(writes_and_reads),
        IN_ROOM(replaces_and_keeps_the_mode),
        IN_ROOM(replaces_only_what_was_read),
        IN_ROOM(replaces_behind_a_link),
        IN_ROOM(leaves_equal_bytes_alone),
        IN_ROOM(refuses_what_is_no_plain_file),
        IN_ROOM(a_failed_write_leaves_no_trace),
        IN_ROOM(lists_in_byte_order_what_is_inside),
        IN_ROOM(makes_folders),
        cmocka_unit_test(joins_and_parts_paths),
        cmocka_unit_test(tells_plain_paths),
    };
    return cmocka_run_group_tests_name("files", tests, NULL, NULL);
}
