/* Problems as annotations and as SARIF: what is escaped, how files are named. The whole form of
 * SARIF is held to the standard's schema in tests/site/check.test. */
#include "reading.h"

#include "check/report.h"

static problems one_problem(arena *a, place at, const char *hint, const char *message) {
    problems found = problems_in(a);
    problem_note(&found, "link", PROBLEM_ERROR, at, hint, "%s", message);
    return found;
}

/* The escapes of workflow commands: % as %25, CR and LF as %0D and %0A; in properties : and , too
 * (documentation of the hosted runner, from memory). */
static void writes_annotations(void **state) {
    (void)state;
    static const struct {
        const char *folder;
        place at;
        const char *hint, *message, *line;
    } rows[] = {
        {".",
         {"recipes/x.md", 3, 4},
         NULL,
         "bad",
         "::error file=recipes/x.md,line=3,col=4,title=link::bad\n"},
        {"./content/",
         {"recipes/x.md", 3, 4},
         "mend it",
         "bad",
         "::error file=content/recipes/x.md,line=3,col=4,title=link::bad%0Ahint: mend it\n"},
        {"/a:b",
         {"recipes/50 %, or so.md", 3, 0},
         NULL,
         "12 %: a, b\r\nc",
         "::error file=/a%3Ab/recipes/50 %25%2C or so.md,line=3,title=link::12 %25: a, b%0D%0Ac\n"},
        {"content", {NULL, 0, 0}, NULL, "no", "::error file=content/site.yaml,title=link::no\n"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        text out = TEXT_EMPTY;
        problems found = one_problem(a, rows[i].at, rows[i].hint, rows[i].message);
        report_annotations(rows[i].folder, &found, &out);
        expect_words(rows[i].message, out.bytes, rows[i].line);
        text_free(&out);
        arena_free(a);
    }
}

static void names_files_as_addresses(void **state) {
    (void)state;
    static const struct {
        const char *folder, *file, *uri;
    } rows[] = {
        {".", "recipes/x.md", "recipes/x.md"},
        {"content/", "recipes/x.md", "content/recipes/x.md"},
        {"my site", "recipes/cr\u00e8me 50%.md", "my%20site/recipes/cr%C3%A8me%2050%25.md"},
        {"/srv/galley", "site.yaml", "file:///srv/galley/site.yaml"},
        {"/", "site.yaml", "file:///site.yaml"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        arena *a = arena_new();
        text out = TEXT_EMPTY;
        problems found = one_problem(a, (place){rows[i].file, 1, 1}, NULL, "bad");
        view_write_json(report_sarif(a, rows[i].folder, &found), false, &out);
        const char *wanted = arena_format(a, "{\"uri\":\"%s\"}", rows[i].uri);
        if (span_find(text_span(&out), wanted) == out.length)
            fail_msg("%s: no %s in %s", rows[i].folder, wanted, out.bytes);
        text_free(&out);
        arena_free(a);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(writes_annotations),
        cmocka_unit_test(names_files_as_addresses),
    };
    return cmocka_run_group_tests_name("check_report", tests, NULL, NULL);
}
