#include "checks.h"

#include "base/text.h"

static void grows_and_stays_terminated(void **state) {
    (void)state;
    text t = TEXT_EMPTY;
    assert_string_equal(t.bytes, "");
    for (int i = 0; i < 1000; i++) {
        text_add(&t, "ab");
        text_add_char(&t, 'c');
        assert_int_equal(t.length, strlen(t.bytes));
    }
    assert_int_equal(t.length, 3000);
    text_cut(&t, 4);
    assert_string_equal(t.bytes, "abca");
    text_cut(&t, 100);
    assert_string_equal(t.bytes, "abca");
    size_t room = t.room;
    text_clear(&t);
    assert_string_equal(t.bytes, "");
    assert_int_equal(t.room, room);
    text_add_span(&t, (span){NULL, 0});
    assert_int_equal(t.length, 0);
    text_free(&t);
    text_add(&t, "again");
    assert_string_equal(t.bytes, "again");
    text_free(&t);
    text_free(&t);
}

static void formats_longer_than_its_room(void **state) {
    (void)state;
    text t = TEXT_EMPTY;
    text_format(&t, "%s", "");
    assert_string_equal(t.bytes, "");
    text_format(&t, "%0500d|", 7);
    assert_int_equal(t.length, 501);
    text_format(&t, "%s", "end");
    assert_true(span_ends(text_span(&t), "7|end"));
    text_free(&t);
}

static void writes_html_references(void **state) {
    (void)state;
    static const char *const rows[][2] = {{"", ""},
                                          {"plain", "plain"},
                                          {"<b>", "&lt;b&gt;"},
                                          {"salt & \"pepper\"", "salt &amp; &quot;pepper&quot;"},
                                          {"it's", "it&#39;s"},
                                          {"&amp;", "&amp;amp;"},
                                          {"\u00bd", "\u00bd"}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        text t = TEXT_EMPTY;
        text_add_html(&t, span_of(rows[i][0]));
        same_text(rows[i][0], t.bytes, rows[i][1]);
        text_free(&t);
    }
}

static void writes_json_strings(void **state) {
    (void)state;
    static const char *const rows[][2] = {{"", "\"\""},
                                          {"a \"b\" \\", "\"a \\\"b\\\" \\\\\""},
                                          {"line\nend\t", "\"line\\nend\\u0009\""},
                                          {"</script>", "\"\\u003c/script\\u003e\""},
                                          {"a & b", "\"a \\u0026 b\""},
                                          {"\x7f", "\"\\u007f\""},
                                          {"\u00bd cup", "\"\u00bd cup\""}};
    for (size_t i = 0; i < COUNT(rows); i++) {
        text t = TEXT_EMPTY;
        text_add_json(&t, span_of(rows[i][0]));
        same_text(rows[i][0], t.bytes, rows[i][1]);
        text_free(&t);
    }
}

/* Bytes are looked at several at a time: each mark is seen at each place of each length. */
static void sees_marks_wherever_they_stand(void **state) {
    (void)state;
    static const char marks[] = "&<>\"'\\\n\x7f\x1f";
    char bytes[40];
    text html = TEXT_EMPTY, json = TEXT_EMPTY;
    for (size_t length = 1; length <= sizeof bytes; length++)
        for (size_t at = 0; at < length * strlen(marks); at++) {
            char mark = marks[at / length];
            memset(bytes, 'a', length);
            bytes[at % length] = mark;
            text_clear(&html);
            text_clear(&json);
            text_add_html(&html, (span){bytes, length});
            text_add_json(&json, (span){bytes, length});
            bool in_html = strchr("&<>\"'", mark) != NULL;
            if ((html.length > length) != in_html || (json.length > length + 2) != (mark != '\''))
                fail_msg("0x%02x at %zu of %zu bytes", (unsigned)mark, at % length, length);
        }
    text_free(&html);
    text_free(&json);
}

static void begins_in_borrowed_room(void **state) {
    (void)state;
    char room[8];
    text t = text_on(room, sizeof room);
    text_add(&t, "1234567");
    assert_ptr_equal(t.bytes, room);
    text_add(&t, "89");
    assert_ptr_not_equal(t.bytes, room);
    assert_string_equal(t.bytes, "123456789");
    text_free(&t);
    assert_string_equal(t.bytes, "");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(grows_and_stays_terminated),
        cmocka_unit_test(formats_longer_than_its_room),
        cmocka_unit_test(writes_html_references),
        cmocka_unit_test(writes_json_strings),
        cmocka_unit_test(sees_marks_wherever_they_stand),
        cmocka_unit_test(begins_in_borrowed_room),
    };
    return cmocka_run_group_tests_name("text", tests, NULL, NULL);
}
