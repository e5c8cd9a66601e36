/* crumbnote release: builds, verifies and switches the published site in one step. */
#include "commands/command.h"

#include "base/number.h"
#include "commands/terminal.h"
#include "publish/release.h"
#include "publish/workers.h"
#include "site/phrase.h"

enum { OPTION_TO, OPTION_KEEP, OPTION_BACK, OPTION_GZIP, OPTION_BROTLI, OPTION_WORKERS };
enum { KEEP_USUAL = 3, KEEP_MOST = 1000 };

static void say_waiting(void) {
    fputs("another release is under way; waiting for it\n", stderr);
}

static char *release_name(arena *a, unsigned number) {
    return number ? arena_format(a, "release-%04u", number) : NULL;
}

static view *document_of(arena *a, const release_request *asked, const release_report *report,
                         const problems *found) {
    view *put = view_object(a);
    view_put_text(a, put, "site", arena_format(a, "%s/live", asked->to));
    view_put_bool(a, put, "switched", report->switched);
    view_put_text(a, put, "live", release_name(a, report->live));
    view_put_text(a, put, "before", release_name(a, report->before));
    view_put_number(a, put, "recipes", (double)report->recipes, 0);
    view_put_number(a, put, "files", (double)report->files, 0);
    view_put_number(a, put, "shared", (double)report->shared, 0);
    view_put_number(a, put, "pages", (double)report->pages, 0);
    view_put_number(a, put, "links", (double)report->links, 0);
    view_put_number(a, put, "removed", (double)report->removed, 0);
    view_put_number(a, put, "errors", (double)found->errors, 0);
    view_put_number(a, put, "warnings", (double)found->warnings, 0);
    return put;
}

static char *words_of(arena *a, const release_request *asked, const release_report *report,
                      const problems *found) {
    const char *live = release_name(a, report->live);
    if (found->errors)
        return live ? arena_format(a, "nothing was published; %s stays live\n", live)
                    : arena_format(a, "nothing was published\n");
    if (!report->switched)
        return arena_format(a, "nothing changed; %s stays live\n", live);
    if (!report->recipes && !report->files)
        return arena_format(a, "%s/live is %s again\n", asked->to, live);
    return arena_format(a, "%s/live is now %s: %s, %s, %zu of them unchanged, %s followed\n",
                        asked->to, live, phrase_count(a, report->recipes, "recipe"),
                        phrase_count(a, report->files, "file"), report->shared,
                        phrase_count(a, report->links, "link"));
}

static release_report work(const release_request *asked, bool back, problems *found) {
    if (back)
        return release_back(asked, found);
    progress seen = {0};
    release_request watched = *asked;
    watched.seen = &seen;
    progress_line *line = progress_show(&seen, "weighing and writing");
    release_report report = release_site(&watched, found);
    progress_hide(line);
    return report;
}

static exit_code release(arena *a, const release_request *asked, bool back, bool json) {
    problems found = problems_in(a);
    release_report report = work(asked, back, &found);
    command_report(&found);
    exit_code code = report.machine_failed ? EXIT_MACHINE : found.errors ? EXIT_CONTENT : EXIT_FINE;
    if (json)
        return command_print(document_of(a, asked, &report, &found), code);
    return command_say(words_of(a, asked, &report, &found), code);
}

static exit_code run(arena *a, const arguments *given) {
    release_request asked = {.folder = given->count ? given->words[0] : ".",
                             .to = argument_option(given, OPTION_TO),
                             .keep = KEEP_USUAL,
                             .gzip = argument_option(given, OPTION_GZIP) != NULL,
                             .brotli = argument_option(given, OPTION_BROTLI) != NULL,
                             .waiting = say_waiting};
    bool back = argument_option(given, OPTION_BACK) != NULL;
    if (!asked.to || !asked.to[0])
        return command_misused("release wants --to DIR, the folder of releases");
    if (back && given->count)
        return command_misused("--back builds nothing, so it takes no site folder");
    if (!option_count(given, OPTION_KEEP, KEEP_MOST, &asked.keep))
        return command_misused("--keep wants a whole number from 1 to %d", KEEP_MOST);
    if (!option_count(given, OPTION_WORKERS, WORKERS_MOST, &asked.workers))
        return command_misused("--workers wants a whole number from 1 to %d", WORKERS_MOST);
    return release(a, &asked, back, given->json);
}

const command command_release = {
    .name = "release",
    .usage = "release [FOLDER] --to DIR [--keep N] [--back]",
    .summary = "publish the site in one step",
    .help =
        "Builds the site of FOLDER (the current one when left out) into a new folder inside DIR,\n"
        "follows every link on it, and only then points DIR/live at it, in one step. Let the web\n"
        "server serve DIR/live. With errors in the content, a link to nothing, a full disk or a\n"
        "crash the live site stays as it was. Files that did not change are shared with the\n"
        "release before; files that crumbnote did not write are never touched.\n"
        "\n"
        "With --back nothing is built: DIR/live is the release before again.",
    .options = {{"--to", "DIR", "the folder of releases; DIR/live is the site"},
                {"--keep", "N", "earlier releases kept to go back to (3 when left out)"},
                {"--back", NULL, "return to the release before the live one"},
                {"--gzip", NULL, "x.gz beside each text file where it is smaller"},
                {"--brotli", NULL, "x.br likewise"},
                {"--workers", "N", "recipes and pages worked on at a time"}},
    .most = 1,
    .run = run,
};
