#include "check/report.h"

#include "base/words.h"
#include "check/checks.h"

static const char reading[] = "reading";

static const char *name_of(const problem *p) {
    return p->check ? p->check : reading;
}

/* -- the JSON document ------------------------------------------------------------------------ */

static void put_problem(arena *a, view *list, const problem *of) {
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "file", of->at.file);
    view_put_number(a, put, "line", of->at.line, 0);
    view_put_number(a, put, "column", of->at.column, 0);
    view_put_text(a, put, "level", problem_level_word(of->level));
    view_put_text(a, put, "check", name_of(of));
    view_put_text(a, put, "message", of->message);
    view_put_text(a, put, "hint", of->hint);
}

view *report_document(arena *a, const check_report *report, const problems *found) {
    view *put = view_object(a);
    view *list = view_put_list(a, put, "problems");
    for (size_t i = 0; i < found->count; i++)
        put_problem(a, list, &found->items[i]);
    view_put_number(a, put, "errors", (double)found->errors, 0);
    view_put_number(a, put, "warnings", (double)found->warnings, 0);
    view_put_number(a, put, "recipes", (double)report->recipes, 0);
    return put;
}

/* -- files from where the command was called
 * ------------------------------------------------------- */

/* The path of `file`, which is relative to the site folder `folder`. */
static void add_path(text *t, const char *folder, const char *file) {
    span before = span_of(folder);
    while (span_begins(before, "./"))
        before = span_from(before, 2);
    while (before.length > 1 && span_ends(before, "/"))
        before.length--;
    if (before.length && !span_is(before, ".")) {
        text_add_span(t, before);
        if (!span_ends(before, "/"))
            text_add_char(t, '/');
    }
    text_add(t, file ? file : "site.yaml");
}

/* -- SARIF ------------------------------------------------------------------------------------ */

static bool is_plain_in_uri(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           strchr("-._~/", c) != NULL;
}

/* RFC 3986: an absolute path becomes a file: address, a relative one a reference. */
static const char *uri_of(arena *a, const char *folder, const char *file) {
    text path = TEXT_EMPTY, uri = TEXT_EMPTY;
    add_path(&path, folder, file);
    if (path.bytes[0] == '/')
        text_add(&uri, "file://");
    for (size_t i = 0; i < path.length; i++)
        if (is_plain_in_uri(path.bytes[i]))
            text_add_char(&uri, path.bytes[i]);
        else
            text_format(&uri, "%%%02X", (unsigned char)path.bytes[i]);
    const char *copy = arena_copy(a, text_span(&uri));
    text_free(&path);
    text_free(&uri);
    return copy;
}

/* {text: …} under `key`. */
static void put_message(arena *a, view *to, const char *key, const char *words) {
    view_put_text(a, view_put_object(a, to, key), "text", words);
}

static void put_rule(arena *a, view *list, const char *name, const char *finds) {
    view *rule = view_put_object(a, list, NULL);
    view_put_text(a, rule, "id", name);
    put_message(a, rule, "shortDescription", finds);
}

static void put_driver(arena *a, view *run) {
    view *driver = view_put_object(a, view_put_object(a, run, "tool"), "driver");
    view_put_text(a, driver, "name", "crumbnote");
    view *rules = view_put_list(a, driver, "rules");
    put_rule(a, rules, reading, "what can't be read, or is left out of a recipe");
    for (size_t i = 0; i < checks_count; i++)
        put_rule(a, rules, checks[i].name, checks[i].finds);
}

static size_t rule_index(const problem *p) {
    size_t i = 0;
    while (p->check && i < checks_count && strcmp(checks[i].name, p->check) != 0)
        i++;
    return p->check ? i + 1 : 0;
}

static void put_location(arena *a, view *result, const char *folder, const problem *p) {
    view *location = view_put_object(a, view_put_list(a, result, "locations"), NULL);
    view *physical = view_put_object(a, location, "physicalLocation");
    view_put_text(a, view_put_object(a, physical, "artifactLocation"), "uri",
                  uri_of(a, folder, p->at.file));
    if (!p->at.line)
        return;
    view *region = view_put_object(a, physical, "region");
    view_put_number(a, region, "startLine", p->at.line, 0);
    if (p->at.column)
        view_put_number(a, region, "startColumn", p->at.column, 0);
}

static void put_result(arena *a, view *list, const char *folder, const problem *p) {
    view *result = view_put_object(a, list, NULL);
    view_put_text(a, result, "ruleId", name_of(p));
    view_put_number(a, result, "ruleIndex", (double)rule_index(p), 0);
    view_put_text(a, result, "level", problem_level_word(p->level));
    put_message(a, result, "message",
                p->hint ? arena_format(a, "%s\nhint: %s", p->message, p->hint) : p->message);
    put_location(a, result, folder, p);
}

view *report_sarif(arena *a, const char *folder, const problems *found) {
    view *log = view_object(a);
    view_put_text(a, log, "$schema",
                  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/"
                  "sarif-schema-2.1.0.json");
    view_put_text(a, log, "version", "2.1.0");
    view *run = view_put_object(a, view_put_list(a, log, "runs"), NULL);
    put_driver(a, run);
    view_put_text(a, run, "columnKind", "unicodeCodePoints");
    view *results = view_put_list(a, run, "results");
    for (size_t i = 0; i < found->count; i++)
        put_result(a, results, folder, &found->items[i]);
    return log;
}

/* -- annotations
 * ----------------------------------------------------------------------------------- */

static const struct {
    char c;
    const char *written;
    bool in_property; /* there alone */
} escapes[] = {{'%', "%25", false},
               {'\r', "%0D", false},
               {'\n', "%0A", false},
               {':', "%3A", true},
               {',', "%2C", true}};

static void add_escaped(text *t, const char *words, bool property) {
    for (const char *c = words; *c; c++) {
        size_t i = 0, unseen = words_unseen(c);
        while (i < COUNT(escapes) && (escapes[i].c != *c || (escapes[i].in_property && !property)))
            i++;
        if (i < COUNT(escapes))
            text_add(t, escapes[i].written);
        else
            text_add_char(t, unseen ? ' ' : *c);
        c += unseen > 1 ? unseen - 1 : 0;
    }
}

static void add_file(text *t, const char *folder, const char *file) {
    text path = TEXT_EMPTY;
    add_path(&path, folder, file);
    add_escaped(t, path.bytes, true);
    text_free(&path);
}

static void add_annotation(text *t, const char *folder, const problem *p) {
    text_format(t, "::%s file=", problem_level_word(p->level));
    add_file(t, folder, p->at.file);
    if (p->at.line)
        text_format(t, ",line=%u", p->at.line);
    if (p->at.line && p->at.column)
        text_format(t, ",col=%u", p->at.column);
    text_add(t, ",title=");
    add_escaped(t, name_of(p), true);
    text_add(t, "::");
    add_escaped(t, p->message, false);
    if (p->hint) {
        text_add(t, "%0Ahint: ");
        add_escaped(t, p->hint, false);
    }
    text_add_char(t, '\n');
}

void report_annotations(const char *folder, const problems *found, text *out) {
    for (size_t i = 0; i < found->count; i++)
        add_annotation(out, folder, &found->items[i]);
}
