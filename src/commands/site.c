/* crumbnote site: writes the whole site. */
#include "commands/command.h"

#include "commands/terminal.h"
#include "publish/build.h"
#include "read/site_folder.h"
#include "site/phrase.h"

enum { OPTION_OUT, OPTION_WORKERS, OPTION_VIEWS };

static view *document_of(arena *a, const build_report *report, const problems *found,
                         const char *out) {
    view *put = view_object(a);
    view_put_text(a, put, "site", out);
    view_put_number(a, put, "recipes", (double)report->recipes, 0);
    view_put_number(a, put, "made", (double)report->made, 0);
    view_put_number(a, put, "written", (double)report->written, 0);
    view_put_number(a, put, "files", (double)report->files, 0);
    view_put_number(a, put, "errors", (double)found->errors, 0);
    view_put_number(a, put, "warnings", (double)found->warnings, 0);
    return put;
}

static exit_code code_of(const build_report *report, const problems *found) {
    if (report->machine_failed)
        return EXIT_MACHINE;
    return found->errors ? EXIT_CONTENT : EXIT_FINE;
}

static exit_code run(arena *a, const arguments *given) {
    const char *folder = given->count ? given->words[0] : ".";
    const char *out = argument_option(given, OPTION_OUT);
    build_request asked = {.folder = folder, .out = out ? out : "build/site"};
    asked.show_views = argument_option(given, OPTION_VIEWS) != NULL;
    if (!option_count(given, OPTION_WORKERS, WORKERS_MOST, &asked.workers))
        return command_misused("--workers wants a whole number from 1 to %d", WORKERS_MOST);
    if (site_folder_is_content(a, folder, asked.out))
        return command_misused("%s holds the content; the site is written elsewhere", asked.out);
    problems found = problems_in(a);
    progress seen = {0};
    progress_line *line = progress_show(&seen, "weighing and writing");
    asked.seen = &seen;
    build_report report = build_site(&asked, &found);
    progress_hide(line);
    command_report(&found);
    exit_code code = code_of(&report, &found);
    if (given->json)
        return command_print(document_of(a, &report, &found, asked.out), code);
    bool held_back = found.errors == 0 && report.written < report.recipes;
    return command_say(arena_format(a, "%zu of %s%s, %zu files in %s\n", report.written,
                                    phrase_count(a, report.recipes, "recipe"),
                                    held_back ? " (the others say publish: no)" : "", report.files,
                                    asked.out),
                       code);
}

const command command_site = {
    .name = "site",
    .usage = "site [FOLDER] [--out DIR] [--workers N] [--views]",
    .summary = "write the whole site",
    .help =
        "Reads the site folder FOLDER (the current one when left out), works out every recipe\n"
        "and writes the site to DIR (build/site when left out). What an earlier time left there\n"
        "is done again only where something changed; pages of recipes that are gone are\n"
        "removed; files that crumbnote did not write are never touched. A recipe with errors is "
        "reported and\n"
        "left out, and its page of an earlier time stays as it was.",
    .options = {{"--out", "DIR", "where the site is written"},
                {"--workers", "N", "recipes worked on at a time"},
                {"--views", NULL, "each page's JSON beside it, as view.json, for theme makers"}},
    .most = 1,
    .run = run,
};
