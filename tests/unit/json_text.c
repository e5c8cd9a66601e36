/* JSON that is not quite JSON. */
#include "checks.h"

#include "draft/json_text.h"

static void reads_what_can_not_be_misread(void **state) {
    (void)state;
    static const struct {
        const char *written, *read;
    } rows[] = {
        {"{\"a\":1}", "{\"a\":1}"},
        {"\xef\xbb\xbf{\"a\":1}", "{\"a\":1}"},
        {"<!--\n{\"a\":1}\n-->", "{\"a\":1}"},
        {"<!-- {\"a\":1} //-->", "{\"a\":1}"},
        {"//<![CDATA[\n{\"a\":1}\n//]]>", "{\"a\":1}"},
        {"/* <![CDATA[ */{\"a\":1}/* ]]> */", "{\"a\":1}"},
        {"{\"a\":1};", "{\"a\":1}"},
        {"{\"a\":1,}", "{\"a\":1}"},
        {"[1,2, ]", "[1,2]"},
        {"{\"a\":[1 ,\n],\n}", "{\"a\":[1]}"},
        {"{\"a\":\"x\ny\"}", "{\"a\":\"x\\ny\"}"},
        {"{\"a\":\"x\ty\"}", "{\"a\":\"x\\ty\"}"},
        {"{\"a\":\",}\"}", "{\"a\":\",}\"}"},
        {"{\"a\":\"\\\",]\"}", "{\"a\":\"\\\",]\"}"},
        {"{\"a\":\"x\\u0000y\"}", "{\"a\":\"x\\u0000y\"}"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        const char *why = "";
        json_t *got = json_text_read(a, span_of(rows[i].written), &why);
        if (!got)
            fail_msg("%s: %s", rows[i].written, why);
        char *dumped = json_dumps(got, JSON_COMPACT);
        same_text(rows[i].written, dumped, rows[i].read);
        free(dumped);
        json_decref(got);
        arena_free(a);
    }
}

static void refuses_the_rest(void **state) {
    (void)state;
    static const char *const rows[] = {
        "",           "{",      "{'a':1}",      "{a:1}",    "{\"a\":1 2}",
        "{\"a\":\"x", "[1,,2]", "{\"a\":1} {}", "nonsense", "[NaN]",
        "{\"a\":\\}"};
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        const char *why = NULL;
        json_t *got = json_text_read(a, span_of(rows[i]), &why);
        if (got || !why || !why[0])
            fail_msg("%s: read, or refused without a reason", rows[i]);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_what_can_not_be_misread),
        cmocka_unit_test(refuses_the_rest),
    };
    return cmocka_run_group_tests_name("json_text", tests, NULL, NULL);
}
