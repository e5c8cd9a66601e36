#include "checks.h"

#include "base/list.h"

static void gives_zeroed_aligned_room(void **state) {
    (void)state;
    arena *a = arena_new();
    for (size_t size = 0; size < 3000; size += 7) {
        unsigned char *room = arena_alloc(a, size);
        assert_int_equal((uintptr_t)room % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < size; i++)
            assert_int_equal(room[i], 0);
        memset(room, 0xff, size);
    }
    unsigned char *large = arena_alloc(a, 5 * 1024 * 1024);
    assert_int_equal(large[5 * 1024 * 1024 - 1], 0);
    assert_true(arena_used(a) >= 5 * 1024 * 1024);
    arena_free(a);
    arena_free(NULL);
}

static void reset_forgets_and_gives_zeroes_again(void **state) {
    (void)state;
    arena *a = arena_new();
    for (int i = 0; i < 50; i++)
        memset(arena_alloc(a, 4000), 0xff, 4000);
    arena_reset(a);
    assert_int_equal(arena_used(a), 0);
    const unsigned char *room = arena_alloc(a, 4000);
    for (size_t i = 0; i < 4000; i++)
        assert_int_equal(room[i], 0);
    arena_free(a);
}

static void copies_and_formats(void **state) {
    (void)state;
    arena *a = arena_new();
    same_text("copy", arena_copy(a, (span){"oat flour", 3}), "oat");
    same_text("copy of nothing", arena_copy(a, (span){NULL, 0}), "");
    same_span("span", arena_copy_span(a, span_of("oat")), "oat");
    same_text("format", arena_format(a, "%s:%d", "a", 7), "a:7");
    same_count("long format", strlen(arena_format(a, "%09000d", 1)), 9000);
    arena_free(a);
}

static void lists_grow(void **state) {
    (void)state;
    struct {
        size_t *items;
        size_t count, capacity;
    } all = {0};
    arena *a = arena_new();
    for (size_t i = 0; i < 1000; i++)
        LIST_ADD(a, &all, i * i);
    assert_int_equal(all.count, 1000);
    for (size_t i = 0; i < 1000; i++)
        assert_int_equal(all.items[i], i * i);
    arena_free(a);
}

/* Small pieces and one larger than any block: what came before the mark stays, what comes after is
 * zeroed again. */
static void going_back_forgets_what_came_since(void **state) {
    (void)state;
    static const size_t sizes[] = {16, 100, 5000, 3 * 1024 * 1024};
    arena *a = arena_new();
    for (size_t i = 0; i < COUNT(sizes); i++) {
        char *kept = arena_copy(a, span_of("kept"));
        size_t used = arena_used(a);
        arena_mark before = arena_here(a);
        memset(arena_alloc(a, sizes[i]), '~', sizes[i]);
        (void)arena_format(a, "%s", "more words");
        arena_back(a, before);
        assert_int_equal(arena_used(a), used);
        assert_string_equal(kept, "kept");
        const char *again = arena_alloc(a, sizes[i]);
        for (size_t k = 0; k < sizes[i]; k++)
            assert_int_equal(again[k], 0);
        arena_back(a, before);
    }
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(gives_zeroed_aligned_room),
        cmocka_unit_test(reset_forgets_and_gives_zeroes_again),
        cmocka_unit_test(copies_and_formats),
        cmocka_unit_test(lists_grow),
        cmocka_unit_test(going_back_forgets_what_came_since),
    };
    return cmocka_run_group_tests_name("arena", tests, NULL, NULL);
}
