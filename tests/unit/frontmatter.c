/* Cutting a Markdown file into front matter and body. */
#include "reading.h"

#include "read/frontmatter.h"

static const struct {
    const char *name, *file, *front, *body;
    unsigned body_line;
} cuts[] = {
    {"plain", "---\na: 1\n---\nBody\n", "a: 1\n", "Body\n", 4},
    {"CRLF", "---\r\na: 1\r\n---\r\nBody\r\n", "a: 1\r\n", "Body\r\n", 4},
    {"byte-order mark", "\xEF\xBB\xBF---\na: 1\n---\nBody", "a: 1\n", "Body", 4},
    {"closed by full stops", "---\na: 1\n...\nBody", "a: 1\n", "Body", 4},
    {"white space after the marks", "--- \na: 1\n---\t\nBody", "a: 1\n", "Body", 4},
    {"empty body", "---\na: 1\n---\n", "a: 1\n", "", 4},
    {"no line end after the closing line", "---\na: 1\n---", "a: 1\n", "", 4},
    {"empty front", "---\n---\nBody", "", "Body", 3},
    {"a rule in the body stays", "---\na: 1\n---\nx\n\n---\ny\n", "a: 1\n", "x\n\n---\ny\n", 4},
    {"four hyphens do not close", "---\na: |\n  x\n----\n---\n", "a: |\n  x\n----\n", "", 6},
};

static void test_cuts(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(cuts); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        front_matter cut;
        if (!front_matter_cut("f", span_of(cuts[i].file), &cut, &found))
            fail_msg("%s: %s", cuts[i].name, printed(a, &found));
        expect_words(cuts[i].name, arena_copy(a, cut.front), cuts[i].front);
        expect_words(cuts[i].name, arena_copy(a, cut.body), cuts[i].body);
        if (cut.front_line != 2 || cut.body_line != cuts[i].body_line)
            fail_msg("%s: front at %u, body at %u", cuts[i].name, cut.front_line, cut.body_line);
        arena_free(a);
    }
}

static const char no_front[] =
    "f:1:1: error: there is no front matter\n"
    "  hint: begin the file with a line ---, then \"title: \u2026\", then a line ---\n";

static const struct {
    const char *name, *file, *report;
} faults[] = {
    {"empty file", "", no_front},
    {"Markdown alone", "# Rounds\n", no_front},
    {"empty lines first", "\n\n---\na: 1\n---\n",
     "f:1:1: error: the front matter must begin on the first line\n"
     "  hint: take out the empty lines before it\n"},
    {"not closed", "---\na: 1\nBody\n",
     "f:1:1: error: the front matter that begins here is not closed\n"
     "  hint: close it with a line ---, before the method\n"},
    {"Latin-1 in the body",
     "---\na: 1\n---\nPur\xE9"
     "e\n",
     "f:4:4: error: byte E9 is not UTF-8\n"
     "  hint: save the file as UTF-8 (some editors call it Unicode)\n"},
    {"UTF-16", "\xFF\xFE-",
     "f:1:1: error: byte FF is not UTF-8\n"
     "  hint: save the file as UTF-8 (some editors call it Unicode)\n"},
    {"cut in the middle of a character", "---\na: 1\n---\n\u00e9\u00e9\xC3",
     "f:4:3: error: byte C3 is not UTF-8\n"
     "  hint: save the file as UTF-8 (some editors call it Unicode)\n"},
};

static void test_faults(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        arena *a = arena_new();
        problems found = problems_in(a);
        front_matter cut;
        if (front_matter_cut("f", span_of(faults[i].file), &cut, &found))
            fail_msg("%s: was cut", faults[i].name);
        expect_words(faults[i].name, printed(a, &found), faults[i].report);
        arena_free(a);
    }
}

static void test_nul(void **state) {
    (void)state;
    arena *a = arena_new();
    problems found = problems_in(a);
    front_matter cut;
    assert_false(front_matter_cut("f", (span){"---\na: \0\n---\n", 13}, &cut, &found));
    expect_words("a NUL", printed(a, &found),
                 "f:2:4: error: there is a NUL byte here, which no text holds\n"
                 "  hint: is it a text file? write it with a text editor\n");
    arena_free(a);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_cuts),
        cmocka_unit_test(test_faults),
        cmocka_unit_test(test_nul),
    };
    return cmocka_run_group_tests_name("frontmatter", tests, NULL, NULL);
}
