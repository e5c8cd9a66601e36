#include "checks.h"

#include "base/names.h"

static void finds_what_was_added(void **state) {
    (void)state;
    enum { MANY = 3000 };
    arena *a = arena_new();
    names table = names_in(a);
    size_t value = 99;
    assert_false(names_find(&table, span_of("oat"), &value));
    for (size_t i = 0; i < MANY; i++)
        assert_true(names_add(&table, span_of(arena_format(a, "name %zu", i)), i, NULL));
    for (size_t i = 0; i < MANY; i++) {
        assert_true(names_find(&table, span_of(arena_format(a, "name %zu", i)), &value));
        assert_int_equal(value, i);
    }
    assert_false(names_find(&table, span_of("name"), &value));
    assert_false(names_find(&table, span_of("name 3000"), &value));
    assert_int_equal(table.count, MANY);
    arena_free(a);
}

static void keeps_the_earlier_of_two(void **state) {
    (void)state;
    arena *a = arena_new();
    names table = names_in(a);
    size_t earlier = 99, value;
    assert_true(names_add(&table, span_of("oat"), 1, &earlier));
    assert_int_equal(earlier, 99);
    assert_false(names_add(&table, span_of("oat"), 2, &earlier));
    assert_int_equal(earlier, 1);
    assert_false(names_add(&table, span_of("oat"), 2, NULL));
    assert_true(names_find(&table, span_of("oat"), &value));
    assert_int_equal(value, 1);
    arena_free(a);
}

static void copies_its_keys(void **state) {
    (void)state;
    arena *a = arena_new();
    names table = names_in(a);
    char key[] = "oat";
    size_t value;
    assert_true(names_add(&table, span_of(key), 1, NULL));
    key[0] = 'x';
    assert_true(names_find(&table, span_of("oat"), &value));
    assert_false(names_find(&table, span_of(key), &value));
    assert_true(names_add(&table, (span){NULL, 0}, 5, NULL));
    assert_true(names_find(&table, span_of(""), &value));
    assert_int_equal(value, 5);
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(finds_what_was_added),
        cmocka_unit_test(keeps_the_earlier_of_two),
        cmocka_unit_test(copies_its_keys),
    };
    return cmocka_run_group_tests_name("names", tests, NULL, NULL);
}
