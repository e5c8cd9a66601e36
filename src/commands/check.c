/* crumbnote check: reads everything, reports every problem, writes nothing. */
#include "commands/command.h"

#include "publish/build.h"

static void put_problem(arena *a, view *list, const problem *of) {
    view *put = view_put_object(a, list, NULL);
    view_put_text(a, put, "file", of->at.file);
    view_put_number(a, put, "line", of->at.line, 0);
    view_put_number(a, put, "column", of->at.column, 0);
    view_put_text(a, put, "level", problem_level_word(of->level));
    view_put_text(a, put, "check", of->check ? of->check : "reading");
    view_put_text(a, put, "message", of->message);
    view_put_text(a, put, "hint", of->hint);
}

static view *document_of(arena *a, const build_report *report, const problems *found) {
    view *put = view_object(a);
    view *list = view_put_list(a, put, "problems");
    for (size_t i = 0; i < found->count; i++)
        put_problem(a, list, &found->items[i]);
    view_put_number(a, put, "errors", (double)found->errors, 0);
    view_put_number(a, put, "warnings", (double)found->warnings, 0);
    view_put_number(a, put, "recipes", (double)report->recipes, 0);
    return put;
}

static exit_code run(arena *a, const arguments *given) {
    problems found = problems_in(a);
    build_request asked = {.folder = given->count ? given->words[0] : "."};
    build_report report = build_site(&asked, &found);
    command_report(&found);
    exit_code code = report.machine_failed ? EXIT_MACHINE : found.errors ? EXIT_CONTENT : EXIT_FINE;
    if (given->json)
        return command_print(document_of(a, &report, &found), code);
    return command_say(arena_format(a, "%zu recipes, %zu errors, %zu warnings\n", report.recipes,
                                    found.errors, found.warnings),
                       code);
}

const command command_check = {
    .name = "check",
    .usage = "check [FOLDER]",
    .summary = "report every problem, write nothing",
    .help = "Reads the site folder FOLDER (the current one when left out) and reports every\n"
            "problem as file:line:column, with a hint, on standard error.",
    .most = 1,
    .run = run,
};
