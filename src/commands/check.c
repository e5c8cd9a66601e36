/* crumbnote check: reads everything, reports every problem, writes nothing. */
#include "commands/command.h"

#include "base/files.h"
#include "base/words.h"
#include "check/list.h"
#include "check/report.h"
#include "check/run.h"
#include "commands/terminal.h"
#include "site/phrase.h"

enum { OPTION_AS, OPTION_STDIN };

typedef enum { AS_TEXT, AS_JSON, AS_ANNOTATIONS, AS_SARIF, AS_COUNT } form;

static const char *const form_words[AS_COUNT] = {"text", "json", "annotations", "sarif"};

/* The form asked for; false, with a word on standard error, when it is none. */
static bool form_read(const arguments *given, form *out) {
    const char *as = argument_option(given, OPTION_AS);
    *out = given->json ? AS_JSON : AS_TEXT;
    if (!as)
        return true;
    size_t which = words_index(span_of(as), form_words, AS_COUNT);
    bool clash = given->json && which != AS_JSON;
    if (which == AS_COUNT)
        command_misused("--as takes text, json, annotations or sarif, not \"%s\"", as);
    else if (clash)
        command_misused("--json and --as %s ask for two forms", as);
    else
        *out = (form)which;
    return which < AS_COUNT && !clash;
}

/* All of standard input; false when it can't be read or is too much. */
static bool read_input(text *out) {
    char bytes[65536];
    size_t got;
    while ((got = fread(bytes, 1, sizeof bytes, stdin)) > 0 && out->length <= FILE_BYTES_MOST)
        text_add_span(out, (span){bytes, got});
    return !ferror(stdin) && out->length <= FILE_BYTES_MOST;
}

/* What stands before "recipes/x.md" or "pages/x.md" in `path`. */
static const char *folder_around(arena *a, const char *path) {
    return path_folder(a, path_folder(a, path));
}

static exit_code print_report(arena *a, form as, const char *folder, const check_report *report,
                              const problems *found, exit_code code) {
    text lines = TEXT_EMPTY;
    switch (as) {
    case AS_JSON:
        return command_print(report_document(a, report, found), code);
    case AS_SARIF:
        return command_print(report_sarif(a, folder, found), code);
    case AS_ANNOTATIONS:
        report_annotations(folder, found, &lines);
        code = command_say(lines.bytes, code);
        text_free(&lines);
        return code;
    default:
        return command_say(arena_format(a, "%s, %s, %s\n",
                                        phrase_count(a, report->recipes, "recipe"),
                                        phrase_count(a, found->errors, "error"),
                                        phrase_count(a, found->warnings, "warning")),
                           code);
    }
}

static exit_code finish(arena *a, form as, const char *folder, const check_report *report,
                        problems *found) {
    exit_code code = report->machine_failed ? EXIT_MACHINE
                     : found->errors        ? EXIT_CONTENT
                                            : EXIT_FINE;
    command_report(found);
    return print_report(a, as, folder, report, found, code);
}

static exit_code check_input(arena *a, form as, const char *path) {
    problems found = problems_in(a);
    text input = TEXT_EMPTY;
    if (!check_takes(path))
        return command_misused("--stdin takes the name of a recipe or page: recipes/rounds.md");
    check_report report = {.machine_failed = !read_input(&input)};
    if (report.machine_failed)
        problem_add(&found, (place){path, 0, 0}, NULL, "standard input can't be read");
    else
        report = check_text(path, text_span(&input), &found);
    exit_code code = finish(a, as, folder_around(a, path), &report, &found);
    text_free(&input);
    return code;
}

static exit_code run(arena *a, const arguments *given) {
    form as;
    const char *path = argument_option(given, OPTION_STDIN);
    if (!form_read(given, &as))
        return EXIT_USAGE;
    if (path && given->count)
        return command_misused("--stdin checks one file: leave the folder out");
    if (path)
        return check_input(a, as, path);
    const char *folder = given->count ? given->words[0] : ".";
    problems found = problems_in(a);
    progress seen = {0};
    progress_line *line = progress_show(&seen, "checking");
    check_report report = check_folder(folder, 0, &seen, &found);
    progress_hide(line);
    return finish(a, as, folder, &report, &found);
}

#define HELP_LINE(name, finds, work, on_pages) "  " name ": " finds "\n"
#define HELP_CHECKS                            CHECK_LIST(HELP_LINE)

static const char help[] =
    "Reads the site folder FOLDER (the current one when left out) as a copy editor would, and\n"
    "reports every problem as file:line:column, with a hint, on standard error. The checks\n"
    "that have a name print it behind the message:\n"
    "\n" HELP_CHECKS "\n"
    "A comment allows one, on the line or alone on the line above it, with a reason:\n"
    "\n"
    "  portion: 3 rounds   # crumbnote: allow portion because the cook eats the last two\n"
    "  <!-- crumbnote: allow claim-figure because a laboratory measured it -->\n"
    "\n"
    "FORM says what goes to standard output: text (the counts), json, annotations (lines\n"
    "that a hosted runner shows beside the file), sarif (SARIF 2.1.0).\n"
    "\n"
    "With --stdin an editor checks a recipe or page as it is typed: the text comes on\n"
    "standard input, FILE says where it stands (recipes/rounds.md in its site folder).\n"
    "\n"
    "An editor that knows JSON Schema completes the keys and explains them. The schemas are\n"
    "in share/crumbnote/schemas where the program is installed, in src/schemas in its\n"
    "sources. Tell the editor which is for which: recipe and page for the front matter of\n"
    "recipes/*.md and pages/*.md, pantry, rules and trials for the files in the folders of\n"
    "these names, site for site.yaml, brief for what crumbnote formulate reads.";

const command command_check = {
    .name = "check",
    .usage = "check [FOLDER] [--as FORM]",
    .summary = "report every problem, write nothing",
    .help = help,
    .options = {[OPTION_AS] = {"--as", "FORM", "text, json, annotations or sarif"},
                [OPTION_STDIN] = {"--stdin", "FILE", "check standard input as FILE"}},
    .most = 1,
    .run = run,
};
